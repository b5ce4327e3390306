//! Whether the hand reaches the handle of an open door.

use flapwright_model::message::Mm;
use flapwright_motion::statics::Grip;

use super::clear_way::{NOISE, moving};
use super::{BoxContext, Check, Run, finding};
use crate::finding::{Finding, Severity};
use crate::message::HandleOutOfReach;

const NAME: &str = "handle-out-of-reach";

pub(super) const CHECK: Check = Check {
    name: NAME,
    page: "\
## What it looks at
The place that the hand takes hold of (the handle, or the lower edge where there is none) with \
the door fully open, against the setting “highest reach”.

## Why it matters
A door that cannot be reached stays open. The limit is assumed; a shorter or seated person \
reaches less high.

## Severity
Caution.

## What can be done
Hang the box lower, choose an opening kind that stays lower, or a fitting that closes by itself.",
    severities: &[Severity::Caution],
    settings: &["highest_reach"],
    run: Run::Box(look),
};

fn look(context: &BoxContext<'_>, findings: &mut Vec<Finding>) {
    let limit = context.job.settings.highest_reach;
    for (door_id, door, _) in moving(context) {
        let Some(pose) = door.working_motion().map(|motion| motion.pose(1.0)) else {
            continue;
        };
        let Some((_, last)) = pose.leaves.last() else {
            continue;
        };
        let grip = last.apply(Grip::of(&door.closed).place);
        let height = context.wall_box.place.above_floor + grip.y;
        if height <= limit + NOISE {
            continue;
        }
        let (limit, height_of_the_grip) = (Mm(limit), Mm(height));
        let message = if door.closed.handle.is_some() {
            HandleOutOfReach::Handle {
                limit,
                height_of_the_grip,
            }
        } else {
            HandleOutOfReach::LowerEdge {
                limit,
                height_of_the_grip,
            }
        };
        findings.push(finding(
            NAME,
            Severity::Caution,
            message,
            vec![context.door_subject(door_id)],
        ));
    }
}
