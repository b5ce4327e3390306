//! Whether what lifts the door can be reckoned with at all.

use flapwright_model::message::Degrees;
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
strut are possible, and whether the angle at which a size limits the lift moment is within the \
door's travel.

## Why it matters
A strut that is too short is torn from its anchors, one that is too long keeps the door from \
closing. Without these numbers no other check can say what the door weighs on the hand.

## Severity
Stop for a strut that is too short or too long; caution for numbers of the card that cannot be \
right.

## What can be done
Another size, other anchors, or the card's numbers typed again from its data sheet.",
    severities: &[Severity::Caution, Severity::Stop],
    settings: &[],
    run: Run::Box(look),
};

fn look(context: &BoxContext<'_>, findings: &mut Vec<Finding>) {
    for (door_id, _, _) in context.doors() {
        let Some(work) = context.work(door_id) else {
            continue;
        };
        let reasons = &work.verdict.reasons;
        let fitting = FittingName::new(&work.verdict.card, &work.verdict.size);
        let Some(wrong) = reasons.iter().find_map(|reason| wrong(&fitting, reason)) else {
            continue;
        };
        let door = vec![context.door_subject(door_id)];
        let mut it = finding(NAME, wrong.severity, wrong.message, door);
        for why in wrong.why {
            it.because(why);
        }
        offer(context, door_id, &mut it);
        findings.push(it);
    }
}

/// What keeps a lift from being calculated.
struct Wrong {
    severity: Severity,
    message: LiftCannotWork,
    why: Vec<LiftCannotWork>,
}

/// `None` for a reason that does not keep the lift from being calculated.
fn wrong(fitting: &FittingName, reason: &Reason) -> Option<Wrong> {
    let fitting = fitting.clone();
    match reason {
        Reason::NoDrive(error) => Some(no_drive(fitting, error)),
        Reason::AngleNotReached { at_degrees, end } => Some(Wrong {
            severity: Severity::Caution,
            message: LiftCannotWork::AngleNotReached {
                fitting,
                angle_of_the_limit: Degrees(*at_degrees),
                end_angle: Degrees(*end),
            },
            why: Vec::new(),
        }),
        _ => None,
    }
}

fn no_drive(fitting: FittingName, error: &DriveError) -> Wrong {
    let (mut too_short, mut too_long, mut number) = (None, None, None);
    let mut why = Vec::new();
    match error {
        DriveError::Stretched { by, from, .. } => {
            too_short = Some(*by);
            why.push(LiftCannotWork::From { from: *from });
        }
        DriveError::Crushed { by, from, .. } => {
            too_long = Some(*by);
            why.push(LiftCannotWork::From { from: *from });
        }
        DriveError::Number { value, .. } => number = value.0.is_finite().then_some(*value),
        DriveError::SpringMissing
        | DriveError::SpringOutOfRange { .. }
        | DriveError::SpringNotRising { .. } => {}
    }
    why.push(LiftCannotWork::Mend { mend: error.mend() });
    let severity = if too_short.or(too_long).is_some() {
        Severity::Stop
    } else {
        Severity::Caution
    };
    Wrong {
        severity,
        message: LiftCannotWork::Cannot {
            fitting,
            why: error.clone(),
            strut_too_short_by: too_short,
            strut_too_long_by: too_long,
            number_out_of_range: number,
        },
        why,
    }
}
