//! Whether what lifts the door can be reckoned with at all.

use flapwright_model::message::{Bare, Degrees, Mm};
use flapwright_motion::drive::DriveError;
use flapwright_motion::reason::Reason;

use super::other_sizes::offer;
use super::{BoxContext, Check, Run, finding};
use crate::finding::{Finding, Severity};
use crate::message::{FittingName, LiftCannotWork};

const NAME: &str = "lift-cannot-work";

pub(super) const CHECK: Check = Check {
    name: NAME,
    page: "\
## What it looks at
Whether the stroke of a gas strut reaches from closed to open, whether the numbers of a spring or \
strut can be, and whether the angle at which a size limits the lift moment is on the door's way.

## Why it matters
A strut that is too short is torn from its anchors, one that is too long keeps the door from closing. \
Without these numbers no other check can say what the door weighs on the hand.

## Severity
Stop for a strut that is too short or too long; caution for numbers of the card that cannot be right.

## What can be done
Another size, other anchors, or the card's numbers typed again from its paper.",
    severities: &[Severity::Caution, Severity::Stop],
    settings: &[],
    run: Run::Box(look),
};

fn look(context: &BoxContext<'_>, findings: &mut Vec<Finding>) {
    for (door_id, _, _) in context.doors() {
        let Some(work) = context.work(door_id) else {
            continue;
        };
        let wrong = work
            .verdict
            .reasons
            .iter()
            .find_map(|reason| Some((reason, severity(reason)?)));
        let Some((reason, severity)) = wrong else {
            continue;
        };
        let fitting = FittingName::new(&work.verdict.card, &work.verdict.size);
        let mut it = finding(
            NAME,
            severity,
            message(fitting, reason),
            vec![context.door_subject(door_id)],
        );

        offer(context, door_id, &mut it);
        findings.push(it);
    }
}

/// How bad a reason is; `None`: it does not keep the lift from being calculated.
const fn severity(reason: &Reason) -> Option<Severity> {
    match reason {
        Reason::NoDrive(DriveError::Stretched { .. } | DriveError::Crushed { .. }) => {
            Some(Severity::Stop)
        }
        Reason::NoDrive(DriveError::Number { .. } | DriveError::SpringTable { .. })
        | Reason::AngleNotReached { .. } => Some(Severity::Caution),
        _ => None,
    }
}

fn message(fitting: FittingName, reason: &Reason) -> LiftCannotWork {
    let too_short = match reason {
        Reason::NoDrive(DriveError::Stretched {
            length, extended, ..
        }) => Some(Mm(length - extended)),
        _ => None,
    };
    let too_long = match reason {
        Reason::NoDrive(DriveError::Crushed {
            length, compressed, ..
        }) => Some(Mm(compressed - length)),
        _ => None,
    };
    let number = match reason {
        Reason::NoDrive(DriveError::Number { value, .. }) if value.is_finite() => {
            Some(Bare(*value))
        }
        _ => None,
    };
    let angles = match reason {
        Reason::AngleNotReached { at_degrees, end } => Some((Degrees(*at_degrees), Degrees(*end))),
        _ => None,
    };
    LiftCannotWork::Cannot {
        fitting,
        why: reason.clone(),
        strut_too_short_by: too_short,
        strut_too_long_by: too_long,
        number_out_of_range: number,
        angle_of_the_limit: angles.map(|it| it.0),
        end_angle: angles.map(|it| it.1),
    }
}
