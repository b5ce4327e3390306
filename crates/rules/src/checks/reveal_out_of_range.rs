//! Whether the edges of a door stay within the place that is theirs.

use flapwright_model::acceptance::Topic;
use flapwright_model::door::{Door, DoorFit};
use flapwright_model::edges::Edge;
use flapwright_model::message::Mm;

use super::{BoxContext, Check, Run, finding};
use crate::finding::{Finding, Severity};
use crate::inspection::DoorReport;
use crate::message::{RevealOutOfRange, word};
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
            if let Some((severity, message)) = judge(context, place, door, report, edge) {
                let beyond = place.shared.at(edge).map(|it| Topic::Door(it.beyond));
                let things = [Topic::Door(door_id), Topic::Edge(edge)];
                findings.push(
                    finding(NAME, severity, message, vec![context.door_subject(door_id)])
                        .about(things.into_iter().chain(beyond)),
                );
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
) -> Option<(Severity, RevealOutOfRange)> {
    let name = word::edge(edge);
    let overlay = report.overlays.at(edge) + door.tweaks.at(edge);
    if matches!(door.fit, DoorFit::Inset { .. }) {
        let gap = -overlay;
        let message = RevealOutOfRange::NoGap {
            edge: name,
            gap: Mm(gap),
        };
        return (gap <= NOISE).then_some((Severity::Stop, message));
    }
    if overlay <= NOISE {
        let (by, overlay) = (-overlay, Mm(overlay));
        let message = if by > NOISE {
            RevealOutOfRange::Misses {
                edge: name,
                by: Mm(by),
                overlay,
            }
        } else {
            RevealOutOfRange::JustMisses {
                edge: name,
                overlay,
            }
        };
        return Some((Severity::Stop, message));
    }
    if let Some(gap) = gap_at_shelf(context, place, door, edge) {
        // Both doors see the same gap; the upper one speaks of it.
        let message = RevealOutOfRange::NoGapBelow { gap: Mm(gap) };
        return (edge == Edge::Bottom && gap <= NOISE).then_some((Severity::Stop, message));
    }
    let reveal = place.member.at(edge) - overlay;
    (reveal < -NOISE).then(|| {
        let message = RevealOutOfRange::Past {
            edge: name,
            by: Mm(-reveal),
            reveal: Mm(reveal),
        };
        (Severity::Note, message)
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
