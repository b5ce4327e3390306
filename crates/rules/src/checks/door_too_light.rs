//! Whether a door is lighter than its size needs.

use super::load::{Beyond, load_finding, loads, words};
use super::{BoxContext, Check, Run};
use crate::advice;
use crate::finding::{Finding, Severity};

const NAME: &str = "door-too-light";

pub(super) const CHECK: Check = Check {
    name: NAME,
    page: "\
## What it looks at
Whether the likely mass of the door (or its lift moment, where the card limits that) is below the \
least that the chosen size is made for.

## Why it matters
A fitting that is too strong throws the door up, does not let it close, and pulls at its screws day \
and night.

## Severity
Stop.

## What can be done
Take a lighter size, or make the door heavier. Where the door was weighed, type its mass.",
    severities: &[Severity::Stop],
    settings: &[],
    run: Run::Box(look),
};

fn look(context: &BoxContext<'_>, findings: &mut Vec<Finding>) {
    for (door_id, work, load) in loads(context) {
        if load.load.likely >= load.min {
            continue;
        }
        let unit = context.job.unit;
        let (measure, what, _, at) = words(load);
        let message = format!(
            "{}: its likely {what}{at} is {} ({} to {}) and {} is made for no less than {}, {} more",
            context.door_words(door_id),
            measure.text(load.load.likely, unit),
            measure.digits(load.load.low, unit),
            measure.digits(load.load.high, unit),
            advice::name(&work.verdict),
            measure.text(load.min, unit),
            measure.text(load.min - load.load.likely, unit),
        );
        let is = (NAME, Severity::Stop);
        findings.extend(load_finding(
            context,
            door_id,
            is,
            message,
            &[Beyond::Least],
        ));
    }
}
