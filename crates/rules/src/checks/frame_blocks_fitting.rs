//! Whether a face frame stands before the place where the fitting is mounted.

use flapwright_model::door::Side;
use flapwright_model::message::Mm;

use super::{BoxContext, Check, Run, finding};
use crate::finding::{Finding, Remedy, Safety, Severity};
use crate::message::{Effect, FrameBlocksFitting, RemedyKind, word};

const NAME: &str = "frame-blocks-fitting";

pub(super) const CHECK: Check = Check {
    name: NAME,
    page: "\
## What it looks at
At each side with a fitting: whether the inner edge of the face frame's stile stands further in than \
the face that the fitting is mounted on.

## Why it matters
The arms then have to pass the stile on their way to the door, and the door's bores come nearer to \
its edge than the card means.

## Severity
Caution.

## What can be done
Pack the fitting out until it is level with the stile.",
    severities: &[Severity::Caution],
    settings: &[],
    run: Run::Box(look),
};

fn look(context: &BoxContext<'_>, findings: &mut Vec<Finding>) {
    if context.wall_box.frame.is_none() {
        return;
    }
    for (door_id, door, _) in context.doors() {
        let Some(choice) = &door.fitting else {
            continue;
        };
        let Some(card) = context.card(choice) else {
            continue;
        };
        let Some(report) = context.opening_of(door_id) else {
            continue;
        };
        let mut deepest = 0.0_f64;
        let mut sides = Vec::new();
        for &tie in card.sides.ties() {
            let stands_in = match tie {
                Side::Left => report.door_opening.left - report.clear.min.x,
                Side::Right => report.clear.max.x - report.door_opening.right,
            };
            if stands_in - choice.packing > 1e-9 {
                sides.push(word::side(tie));
                deepest = deepest.max(stands_in);
            }
        }
        if sides.is_empty() {
            continue;
        }
        let before = deepest - choice.packing;
        let mut it = finding(
            NAME,
            Severity::Caution,
            FrameBlocksFitting::InFront {
                sides,
                frame_before_the_fitting: Mm(before),
            },
            vec![context.door_subject(door_id)],
        );

        let mut with = door.clone();
        if let Some(choice) = &mut with.fitting {
            choice.packing = deepest;
        }
        it.remedies.push(Remedy {
            kind: RemedyKind::PackOut,
            effects: vec![
                Effect::Packing {
                    was: Mm(choice.packing),
                    is: Mm(deepest),
                },
                Effect::BoresMoveIn { by: Mm(before) },
            ],
            safety: Safety::NeedsALook,
            edit: context.replace_door(door_id, with),
        });
        findings.push(it);
    }
}
