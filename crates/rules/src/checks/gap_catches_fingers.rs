//! Whether a gap between moving leaves, or between a leaf and the panel above it, can catch a finger.

use flapwright_model::acceptance::Topic;
use flapwright_model::card::OpeningKind;
use flapwright_model::id::DoorId;
use flapwright_model::message::{Mm, Word};
use flapwright_model::part::{LeafId, Part};
use flapwright_model::space::SectionPoint;
use flapwright_motion::outline::leaf_outline;
use flapwright_motion::sweep::corners;

use super::clear_way::{NOISE, bounding_above, moving, section};
use super::{BoxContext, Check, Run, finding};
use crate::finding::{Finding, Severity};
use crate::message::GapCatchesFingers;

const NAME: &str = "gap-catches-fingers";

pub(super) const CHECK: Check = Check {
    name: NAME,
    page: "\
## What it looks at
Over the travel of a top-hinged flap or a folding pair: the gap between the two leaves at the \
front of their joint, and the gaps between the upper or only leaf and the panel, the rail and the \
closed door above it. A gap is reported when it becomes narrower within the dangerous widths. Two \
leaves that turn by p about a joint e behind their faces, in the middle of a closed gap g, stand \
g cos(p/2) + 2 e sin(p/2) apart at the front.

The edges that close on the box last are not looked at: every door has them. A parallel-rising or \
an over-the-top door leaves the box with all its edges, so neither is looked at.

## Why it matters
A gap between 8 and 25 mm (EN 14749, EN 527-2, EN 1335-2, restated second-hand) lets a finger in \
and then closes on it. This is no judgement under any standard: the fitting's own instructions \
and the rules at the place count.

## Severity
Note.

## What can be done
Tell who uses it; a cover strip at the gap, or another opening kind where children are about.",
    severities: &[Severity::Note],
    settings: &["finger_gap"],
    run: Run::Box(look),
};

fn look(context: &BoxContext<'_>, findings: &mut Vec<Finding>) {
    let band = context.job.settings.finger_gap;
    for (door_id, door, _) in moving(context) {
        if !matches!(
            door.kind,
            Some(OpeningKind::TopHingedFlap | OpeningKind::FoldingPair)
        ) {
            continue;
        }
        let Some((motion, gaps)) = door.working_motion().zip(door.gaps()) else {
            continue;
        };
        let joint = gaps.joint(motion, &door.closed);
        let between = vec![
            Topic::Part(context.part_id(Part::Leaf {
                door: door_id,
                leaf: LeafId::Upper,
            })),
            Topic::Part(context.part_id(Part::Leaf {
                door: door_id,
                leaf: LeafId::Lower,
            })),
        ];
        let mut found = vec![(Word("between-leaves"), between, joint)];
        for (words, topic, still) in standing_above(context, door_id) {
            found.push((words, topic, gaps.to(&still, motion, &door.closed)));
        }
        for (between, topics, gap) in found {
            let Some(gap) = gap else { continue };
            if gap.widest.min(band.max) - gap.least.max(band.min) <= NOISE {
                continue;
            }
            let mut it = finding(
                NAME,
                Severity::Note,
                GapCatchesFingers::Catches {
                    between,
                    closed: Mm(gap.closed),
                    widest: Mm(gap.widest),
                    least: Mm(gap.least),
                },
                vec![context.door_subject(door_id)],
            )
            .about(topics.into_iter().chain([Topic::Door(door_id)]));
            it.because(GapCatchesFingers::Widths {
                closed: Mm(gap.closed),
                from: Mm(band.min),
                to: Mm(band.max),
            });
            it.because(GapCatchesFingers::Guard);
            findings.push(it);
        }
    }
}

/// What stands still above a door: words for the gap to it, what it is, and its outlines in the
/// section.
type Above = (Word, Vec<Topic>, Vec<[SectionPoint; 4]>);

/// What stands still above a door.
fn standing_above(context: &BoxContext<'_>, door_id: DoorId) -> Vec<Above> {
    let Some(opening) = context.opening_of(door_id) else {
        return Vec::new();
    };
    let panel = bounding_above(context, door_id)
        .iter()
        .map(|solid| corners(&section(solid)))
        .collect();
    let part = opening.around.top;
    let upper_door = context
        .report
        .openings
        .iter()
        .find(|it| it.around.bottom == part && part != Part::Top)
        .and_then(|it| it.door.as_ref());
    let door = upper_door
        .and_then(|door| door.closed.leaves.last())
        .map(leaf_outline);
    vec![
        (
            Word("below-panel"),
            vec![Topic::Part(context.part_id(part))],
            panel,
        ),
        (
            Word("below-door"),
            upper_door
                .map(|door| Topic::Door(door.id))
                .into_iter()
                .collect(),
            door.into_iter().collect(),
        ),
    ]
}
