//! Whether the bores of a door keep the distances to its edges that the card allows.

use flapwright_model::acceptance::Topic;
use flapwright_model::card::LeafEdge;
use flapwright_model::door::Side;
use flapwright_model::edges::Edge;
use flapwright_model::message::{Count, Mm};
use flapwright_model::part::{BoreId, Part, Subject};

use super::{BoxContext, Check, Run, bore_topic, finding};
use crate::finding::{Finding, Severity};
use crate::inspection::BoreOffset;
use crate::message::{EdgeDistanceOutsideCard, word};

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
                let bore = Count(number);
                let purpose = offset.purpose.clone();
                let edge_word = word::edge(edge);
                let (least, greatest) = (Mm(range.min), Mm(range.max));
                let message = if distance < range.min {
                    EdgeDistanceOutsideCard::TooNear {
                        bore,
                        purpose,
                        edge: edge_word,
                        under: Mm(range.min - distance),
                        distance: Mm(distance),
                        least,
                        greatest,
                    }
                } else {
                    EdgeDistanceOutsideCard::TooFar {
                        bore,
                        purpose,
                        edge: edge_word,
                        over: Mm(distance - range.max),
                        distance: Mm(distance),
                        least,
                        greatest,
                    }
                };
                let drilled = panel.bores.iter().find(|bore| bore.number == number);
                let topic = drilled.map_or(Topic::Part(id), |bore| bore_topic(panel, bore));
                findings.push(
                    finding(
                        NAME,
                        Severity::Stop,
                        message,
                        vec![
                            Subject::Bore(BoreId { part: id, number }),
                            Subject::Part(id),
                        ],
                    )
                    .about([topic, Topic::Edge(edge)]),
                );
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
