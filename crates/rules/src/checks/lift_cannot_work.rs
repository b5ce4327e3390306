//! Whether what lifts the door can be reckoned with at all.

use flapwright_motion::drive::DriveError;
use flapwright_motion::reason::Reason;

use super::other_sizes::offer;
use super::{BoxContext, Check, Run, finding};
use crate::advice;
use crate::finding::{Finding, Number, Severity};

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
        let wrong = work.verdict.reasons.iter().find_map(|reason| match reason {
            Reason::NoDrive(error) => Some((reason, severity(error), numbers(error))),
            Reason::AngleNotReached { at_degrees, end } => {
                let numbers = vec![
                    Number::of("angle of the limit", *at_degrees, "°"),
                    Number::of("end angle", *end, "°"),
                ];
                Some((reason, Severity::Caution, numbers))
            }
            _ => None,
        });
        let Some((reason, severity, numbers)) = wrong else {
            continue;
        };
        let mut it = finding(
            NAME,
            severity,
            format!(
                "{}, {}: {}",
                context.door_words(door_id),
                advice::name(&work.verdict),
                reason.text(context.job.unit)
            ),
            vec![context.door_subject(door_id)],
        );
        it.numbers = numbers;
        offer(context, door_id, &mut it);
        findings.push(it);
    }
}

const fn severity(error: &DriveError) -> Severity {
    match error {
        DriveError::Stretched { .. } | DriveError::Crushed { .. } => Severity::Stop,
        DriveError::Number { .. } | DriveError::SpringTable { .. } => Severity::Caution,
    }
}

fn numbers(error: &DriveError) -> Vec<Number> {
    match error {
        DriveError::Stretched {
            length, extended, ..
        } => {
            vec![Number::mm("strut too short by", length - extended).worse_when_greater()]
        }
        DriveError::Crushed {
            length, compressed, ..
        } => {
            vec![Number::mm("strut too long by", compressed - length).worse_when_greater()]
        }
        DriveError::Number { value, .. } if value.is_finite() => {
            vec![Number::of("number out of range", *value, "")]
        }
        DriveError::Number { .. } | DriveError::SpringTable { .. } => Vec::new(),
    }
}
