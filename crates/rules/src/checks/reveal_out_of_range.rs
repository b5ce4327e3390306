//! Whether the edges of a door stay within the place that is theirs.

use flapwright_model::acceptance::Topic;
use flapwright_model::door::{Door, DoorFit};
use flapwright_model::edges::Edge;

use super::{BoxContext, Check, Run, finding};
use crate::finding::{Finding, Number, Severity};
use crate::inspection::DoorReport;
use crate::placement::body::Body;
use crate::placement::opening::{OpeningPlace, openings};

const NAME: &str = "reveal-out-of-range";

pub(super) const CHECK: Check = Check {
    name: NAME,
    page: "\
## What it looks at
Each edge of each door, tweaks counted: how much of the panel an overlay door leaves uncovered, what \
gap two doors on one shelf keep, what gap an inset door has; and whether an overlay door still laps \
over its panel at all.

## Why it matters
An inset door without a gap does not go in; two doors that meet cannot both close; a door that does \
not reach its panel leaves a slot. An edge that stands past the box may be meant as a finger grip.

## Severity
Stop where doors meet, where an inset door has no gap and where an overlay door misses its panel; \
note where an edge stands past the box.

## What can be done
Correct reveal, gap or tweak.",
    severities: &[Severity::Note, Severity::Stop],
    settings: &[],
    run: Run::Box(look),
};

fn look(context: &BoxContext<'_>, findings: &mut Vec<Finding>) {
    let places = openings(context.wall_box, &Body::of(context.wall_box));
    for (door_id, door, report) in context.doors() {
        let opening = context.opening_of(door_id).map(|it| it.id);
        let Some(place) = places.iter().find(|place| Some(place.id) == opening) else {
            continue;
        };
        for edge in Edge::ALL {
            if let Some((severity, text, number)) = judge(context, place, door, report, edge) {
                let beyond = place.shared.at(edge).map(|it| Topic::Door(it.beyond));
                let mut it = finding(
                    NAME,
                    severity,
                    format!("{}: {text}", context.door_words(door_id)),
                    vec![context.door_subject(door_id)],
                );
                let things = [Topic::Door(door_id), Topic::Edge(edge)];
                it = it.about(things.into_iter().chain(beyond));
                it.numbers = vec![number];
                findings.push(it);
            }
        }
    }
}

/// Noise of the last digits, mm.
const NOISE: f64 = 1e-9;

fn judge(
    context: &BoxContext<'_>,
    place: &OpeningPlace,
    door: &Door,
    report: &DoorReport,
    edge: Edge,
) -> Option<(Severity, String, Number)> {
    let word = edge.word();
    let overlay = report.overlays.at(edge) + door.tweaks.at(edge);
    if matches!(door.fit, DoorFit::Inset { .. }) {
        let gap = -overlay;
        return (gap <= NOISE).then(|| {
            let text = format!(
                "the {word} edge has a gap of {}; it does not go in",
                context.length(gap)
            );
            (Severity::Stop, text, Number::mm("gap", gap))
        });
    }
    if overlay <= NOISE {
        let text = format!(
            "the {word} edge misses its panel by {}",
            context.length(-overlay)
        );
        return Some((Severity::Stop, text, Number::mm("overlay", overlay)));
    }
    if let Some(gap) = gap_at_shelf(context, place, door, edge) {
        // Both doors see the same gap; the upper one speaks of it.
        return (edge == Edge::Bottom && gap <= NOISE).then(|| {
            let text = format!(
                "its bottom edge and the door below keep a gap of {}; they cannot both close",
                context.length(gap)
            );
            (Severity::Stop, text, Number::mm("gap", gap))
        });
    }
    let reveal = place.member.at(edge) - overlay;
    (reveal < -NOISE).then(|| {
        let text = format!(
            "the {word} edge stands {} past its panel",
            context.length(-reveal)
        );
        (Severity::Note, text, Number::mm("reveal", reveal))
    })
}

/// The gap between two doors on one shelf or divider, tweaks of both counted, mm.
fn gap_at_shelf(
    context: &BoxContext<'_>,
    place: &OpeningPlace,
    door: &Door,
    edge: Edge,
) -> Option<f64> {
    let shared = place.shared.at(edge)?;
    let other = context.wall_box.door(shared.beyond)?;
    Some(shared.gap - door.tweaks.at(edge) - other.tweaks.at(edge.opposite()))
}
