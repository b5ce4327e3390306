//! Whether the doors of boxes side by side line up.

use flapwright_model::acceptance::Topic;
use flapwright_model::cabinet::WallBox;
use flapwright_model::door::DoorFit;
use flapwright_model::edges::Edge;
use flapwright_model::edit::Edit;
use flapwright_model::id::DoorId;
use flapwright_model::job::Settings;
use flapwright_model::message::Mm;
use flapwright_model::part::Subject;

use super::{Check, Run, Seen, finding};
use crate::finding::{Finding, Remedy, Safety, Severity};
use crate::inspection::BoxReport;
use crate::message::{Effect, RemedyKind, UnevenReveals, word};
use crate::placement::body::Body;
use crate::placement::opening::openings;

const NAME: &str = "uneven-reveals";

pub(super) const CHECK: Check = Check {
    name: NAME,
    page: "\
## What it looks at
Boxes that hang side by side, no more than 25 mm apart: where their tops are level the reveals \
above their top doors, where their undersides are level the reveals below their bottom doors. \
Overlay doors only; an edge that stands past its box is meant as a grip and is left out.

## Why it matters
The eye follows the line of the doors' edges from box to box and sees a step of a millimetre or \
two.

## Severity
Caution when they differ by more than the setting “uneven reveals” (default 1.6 mm, 1/16 in: the \
gap of custom casework by a trade page on AWI grades, second-hand).

## What can be done
Give both doors the reveal of the first.",
    severities: &[Severity::Caution],
    settings: &["most_uneven"],
    run: Run::Pair(look),
};

/// Boxes further apart than this are no neighbours, mm. Common practice, no source.
pub(super) const SIDE_BY_SIDE: f64 = 25.0;
/// Tops or undersides closer than this are level, mm.
const LEVEL: f64 = 0.1;

fn look(settings: &Settings, [first, second]: [Seen<'_>; 2], findings: &mut Vec<Finding>) {
    if first.report.id == second.report.id {
        return;
    }
    let start = |seen: Seen<'_>| seen.wall_box.place.along_wall;
    let (a, b) = if start(second) < start(first) {
        (second, first)
    } else {
        (first, second)
    };
    let end = start(a) + a.wall_box.width;
    if start(b) - end > SIDE_BY_SIDE || start(b) < end - LEVEL {
        return;
    }
    for edge in [Edge::Top, Edge::Bottom] {
        findings.extend(compare(settings, (a, b), edge));
    }
}

fn compare(settings: &Settings, (a, b): (Seen<'_>, Seen<'_>), edge: Edge) -> Option<Finding> {
    let (left, right) = (a.wall_box, b.wall_box);
    if (level(left, edge) - level(right, edge)).abs() > LEVEL {
        return None;
    }
    let (first, of_left) = outermost(left, a.report, edge)?;
    let (second, of_right) = outermost(right, b.report, edge)?;
    let by = (of_left - of_right).abs();
    // A billionth of a millimetre is noise, not a step.
    if by <= settings.most_uneven + 1e-9 || of_left < 0.0 || of_right < 0.0 {
        return None;
    }
    let message = UnevenReveals::Differ {
        edge: word::edge(edge),
        other: Subject::Door(left.id, first),
        own: Mm(of_right),
        others: Mm(of_left),
        difference_of_the_reveals: Mm(by),
    };
    let mut it = finding(
        NAME,
        Severity::Caution,
        message,
        vec![
            Subject::Door(right.id, second),
            Subject::Door(left.id, first),
        ],
    );
    let doors = [Topic::Door(first), Topic::Door(second)];
    it = it.about(doors.into_iter().chain([Topic::Edge(edge)]));
    it.because(UnevenReveals::Limit {
        limit: Mm(settings.most_uneven),
    });
    let mut with = right.clone();
    if let Some(door) = with.door_mut(second)
        && let DoorFit::Overlay { reveals } = &mut door.fit
    {
        *reveals.at_mut(edge) += of_left - of_right;
        it.remedies.push(Remedy {
            kind: RemedyKind::EvenReveals,
            effects: vec![Effect::Reveal {
                door: Subject::Door(right.id, second),
                edge: word::edge(edge),
                was: Mm(of_right),
                is: Mm(of_left),
            }],
            safety: Safety::Safe,
            edit: Edit::replace_box(with),
        });
    }
    Some(it)
}

/// Height of a box's top or underside above the floor, mm.
fn level(wall_box: &WallBox, edge: Edge) -> f64 {
    let underside = wall_box.place.above_floor;
    match edge {
        Edge::Top => underside + wall_box.height,
        Edge::Left | Edge::Right | Edge::Bottom => underside,
    }
}

/// The door at the top or bottom of a box and its reveal there, if it is an overlay door; tweaks
/// counted, mm.
fn outermost(wall_box: &WallBox, report: &BoxReport, edge: Edge) -> Option<(DoorId, f64)> {
    let places = openings(wall_box, &Body::of(wall_box));
    let place = match edge {
        Edge::Top => places.first()?,
        Edge::Left | Edge::Right | Edge::Bottom => places.last()?,
    };
    let door = wall_box.opening(place.id)?.door.as_ref()?;
    let DoorFit::Overlay { .. } = door.fit else {
        return None;
    };
    let overlays = report.door(door.id)?.overlays;
    let reveal = place.member.at(edge) - overlays.at(edge) - door.tweaks.at(edge);
    Some((door.id, reveal))
}
