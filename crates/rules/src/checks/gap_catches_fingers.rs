//! Whether a gap between moving leaves can catch a finger.

use flapwright_motion::outline::outline_at;

use super::clear_way::{moving, opening_subject};
use super::{BoxContext, Check, Run, finding};
use crate::finding::{Finding, Number, Severity};

const NAME: &str = "gap-catches-fingers";

pub(super) const CHECK: Check = Check {
    name: NAME,
    page: "\
## What it looks at
The gap between the two leaves of a folding pair over the way: whether it is at some place \
within the dangerous widths and becomes narrower there on the way back.

## Why it matters
A gap between 8 and 25 mm (EN 14749, EN 527-2, EN 1335-2, restated second-hand) lets a finger in \
and then closes on it. This is no judgement under any standard: the fitting's own instructions \
and the rules at the place count.

## Severity
Note.

## What can be done
Tell who uses it; a cover strip at the joint, or another opening kind where children are about.",
    severities: &[Severity::Note],
    settings: &["finger_gap"],
    run: Run::Box(look),
};

/// Steps of the way that are looked at.
const STEPS: u16 = 48;

fn look(context: &BoxContext<'_>, findings: &mut Vec<Finding>) {
    let band = context.job.settings.finger_gap;
    for (opening, door, _) in moving(context) {
        let Some(motion) = door.working_motion() else {
            continue;
        };
        // The front edges at the joint: the upper leaf's lower, the lower leaf's upper.
        let gap = |s: f64| match outline_at(motion, &door.closed, s).as_slice() {
            [(_, upper), (_, lower), ..] if door.closed.leaves.len() == 2 => {
                Some((*upper.get(1)? - *lower.get(2)?).length())
            }
            _ => None,
        };
        let widest = (0..=STEPS)
            .filter_map(|step| gap(f64::from(step) / f64::from(STEPS)))
            .max_by(f64::total_cmp);
        let (Some(closed), Some(widest)) = (gap(0.0), widest) else {
            continue;
        };
        if widest < band.min || closed > band.max {
            continue;
        }
        let mut it = finding(
            NAME,
            Severity::Note,
            format!(
                "{}: the gap between its leaves goes from {} to {} and back, through the widths \
                 that catch fingers ({} to {})",
                context.door_words(opening),
                context.length(closed),
                context.length(widest),
                context.length(band.min),
                context.length(band.max)
            ),
            vec![opening_subject(context, opening)],
        );
        it.details = vec![
            "Follow the fitting's own instructions on guarding the joint; this is no judgement \
             under any standard."
                .to_owned(),
        ];
        it.numbers = vec![
            Number::mm("closed", closed),
            Number::mm("widest", widest).worse_when_greater(),
        ];
        findings.push(it);
    }
}
