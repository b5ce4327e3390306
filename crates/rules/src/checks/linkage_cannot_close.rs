//! Whether the fitting can carry the door from closed to open.

use flapwright_model::change::{JOINT_GAP, leaves_for};
use flapwright_model::door::{Door, Leaves};
use flapwright_model::message::Mm;

use super::{BoxContext, Check, Run, finding};
use crate::finding::{Finding, Remedy, Safety, Severity};
use crate::inspection::DoorReport;
use crate::message::{Effect, LinkageCannotClose, RemedyKind};

const NAME: &str = "linkage-cannot-close";

pub(super) const CHECK: Check = Check {
    name: NAME,
    page: "\
## What it looks at
Whether the pivots and arms of the card carry the door's leaves through the whole motion, and \
whether the door has as many leaves as the opening kind needs.

## Why it matters
Arms that cannot reach tear out of their bores, or the door stops half way.

## Severity
Stop, with the angle at which the links fail.

## What can be done
Give the door the leaves that the opening kind needs, move the joint, or correct the card.",
    severities: &[Severity::Stop],
    settings: &[],
    run: Run::Box(look),
};

fn look(context: &BoxContext<'_>, findings: &mut Vec<Finding>) {
    for (door_id, door, report) in context.doors() {
        let Some(Err(error)) = report.motion() else {
            continue;
        };
        let mut it = finding(
            NAME,
            Severity::Stop,
            LinkageCannotClose::NoMotion { why: error.clone() },
            vec![context.door_subject(door_id)],
        );
        let mend = error.mend();
        it.because(LinkageCannotClose::Mend { mend });
        it.remedies.extend(right_leaves(context, door, report));
        findings.push(it);
    }
}

/// Two leaves for a folding pair, one for every other opening kind.
fn right_leaves(context: &BoxContext<'_>, door: &Door, report: &DoorReport) -> Option<Remedy> {
    let kind = report.kind?;
    // The joint of a new pair halves the door as it is now; it hangs on the box from then on.
    let clear = context.opening_of(door.id)?.clear;
    let middle = f64::midpoint(report.edges.top, report.edges.bottom);
    let joint_down = clear.max.y - middle;
    let leaves = leaves_for(&door.leaves, kind, joint_down)?;
    let (name, effect) = match &leaves {
        Leaves::Two { .. } => (
            RemedyKind::TwoLeaves,
            Effect::LeavesAlike {
                joint: Mm(joint_down),
                gap: Mm(JOINT_GAP),
            },
        ),
        Leaves::One(_) => (RemedyKind::OneLeaf, Effect::LeafLikeUpper),
    };
    let with = Door {
        leaves,
        ..door.clone()
    };
    Some(Remedy {
        kind: name,
        effects: vec![effect],
        safety: Safety::NeedsALook,
        edit: context.replace_door(door.id, with),
    })
}
