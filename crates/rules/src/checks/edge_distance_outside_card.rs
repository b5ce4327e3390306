//! Whether the bores of a door keep the distances to its edges that the card allows.

use flapwright_model::acceptance::Topic;
use flapwright_model::card::LeafEdge;
use flapwright_model::door::Side;
use flapwright_model::edges::Edge;
use flapwright_model::part::{BoreId, Part, Subject};

use super::{BoxContext, Check, Run, bore_topic, finding};
use crate::finding::{Finding, Number, Severity};
use crate::inspection::BoreOffset;

const NAME: &str = "edge-distance-outside-card";

pub(super) const CHECK: Check = Check {
    name: NAME,
    page: "\
## What it looks at
For bores whose card states a range of distances to an edge of the leaf (a hinge cup, say): whether \
the distance at the finished edge lies in it.

## Why it matters
Outside of that range the fitting's cover, cup or arm does not sit as its maker meant it to.

## Severity
Stop.

## What can be done
Change overlay or reveal so that the edge falls within the range, or choose a card for that overlay.",
    severities: &[Severity::Stop],
    settings: &[],
    run: Run::Box(look),
};

fn look(context: &BoxContext<'_>, findings: &mut Vec<Finding>) {
    for (door_id, _, door) in context.doors() {
        for offset in &door.offsets {
            let part = Part::Leaf {
                door: door_id,
                leaf: offset.leaf,
            };
            let Some(panel) = context.report.panel(part) else {
                continue;
            };
            let Some((number, at)) = offset.drilled else {
                continue;
            };
            for range in &offset.edge_ranges {
                let edge = named_edge(offset, range.edge);
                let solid = panel.solid;
                let distance = match edge {
                    Edge::Left => at.x - solid.min.x,
                    Edge::Right => solid.max.x - at.x,
                    Edge::Top => solid.max.y - at.y,
                    Edge::Bottom => at.y - solid.min.y,
                };
                // A billionth of a millimetre is noise, not a fault.
                if distance >= range.min - 1e-9 && distance <= range.max + 1e-9 {
                    continue;
                }
                let id = context.part_id(part);
                let mut it = finding(
                    NAME,
                    Severity::Stop,
                    format!(
                        "{}: bore {number} ({}) is {} from the {} edge; the card allows {} to {}",
                        context.panel_words(panel),
                        offset.purpose,
                        context.length(distance),
                        edge.word(),
                        context.length(range.min),
                        context.length(range.max),
                    ),
                    vec![
                        Subject::Bore(BoreId { part: id, number }),
                        Subject::Part(id),
                    ],
                );
                let bore = panel.bores.iter().find(|bore| bore.number == number);
                let topic = bore.map_or(Topic::Part(id), |bore| bore_topic(panel, bore));
                it = it.about([topic, Topic::Edge(edge)]);
                it.numbers = vec![
                    Number::mm("distance", distance),
                    Number::mm("least", range.min),
                    Number::mm("greatest", range.max),
                ];
                findings.push(it);
            }
        }
    }
}

const fn named_edge(offset: &BoreOffset, edge: LeafEdge) -> Edge {
    match (edge, offset.side) {
        (LeafEdge::Top, _) => Edge::Top,
        (LeafEdge::Bottom, _) => Edge::Bottom,
        (LeafEdge::OwnSide, Side::Left) => Edge::Left,
        (LeafEdge::OwnSide, Side::Right) => Edge::Right,
    }
}
