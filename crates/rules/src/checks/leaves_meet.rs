//! Whether the two leaves of a folding pair meet each other on the way.

use flapwright_model::message::Degrees;

use super::clear_way::{degrees, moving};
use super::{BoxContext, Check, Run, finding};
use crate::finding::{Finding, Severity};
use crate::message::LeavesMeet;

const NAME: &str = "leaves-meet";

pub(super) const CHECK: Check = Check {
    name: NAME,
    page: "\
## What it looks at
The outlines of both leaves and of the handle on the lower one, as they turn about the joint. At \
an angle p from flat the edges in front of the joint have come apart by 2 e sin(p/2), e from the \
front face back to the joint; behind the joint they close up in the same way. Both leaves hang on \
one joint, so the path tolerance of the fitting has no part in it. A door of one leaf is not \
looked at.

## Why it matters
Back edges that meet lever the joint out of the leaves.

## Severity
Stop.

## What can be done
A joint further back, a larger gap between the leaves, or another fitting.",
    severities: &[Severity::Stop],
    settings: &[],
    run: Run::Box(look),
};

fn look(context: &BoxContext<'_>, findings: &mut Vec<Finding>) {
    for (door_id, door, _) in moving(context) {
        let Some(s) = door.first_touch() else {
            continue;
        };
        let at = degrees(door, s);
        findings.push(finding(
            NAME,
            Severity::Stop,
            LeavesMeet::Hit {
                met_at: Degrees(at),
            },
            vec![context.door_subject(door_id)],
        ));
    }
}
