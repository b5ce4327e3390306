//! Whether a door is heavier than its size carries.

use super::load::{Beyond, load_finding, loads, words};
use super::{BoxContext, Check, Run};
use crate::advice;
use crate::finding::{Finding, Severity};

const NAME: &str = "door-too-heavy";

pub(super) const CHECK: Check = Check {
    name: NAME,
    page: "\
## What it looks at
Whether the likely mass of the door (or its lift moment, where the card limits that) is above the most \
that the chosen size carries.

## Why it matters
A door that is too heavy for its fitting does not stay open: it comes down on hands and heads.

## Severity
Stop.

## What can be done
Take a size that carries it, or make the door lighter: a thinner leaf, a lighter board, a frame with \
a light panel. Where the door was weighed, type its mass.",
    severities: &[Severity::Stop],
    settings: &[],
    run: Run::Box(look),
};

fn look(context: &BoxContext<'_>, findings: &mut Vec<Finding>) {
    for (door_id, work, load) in loads(context) {
        if load.load.likely <= load.max {
            continue;
        }
        let unit = context.job.unit;
        let (measure, what, _, at) = words(load);
        let message = format!(
            "{}: its likely {what}{at} is {} ({} to {}) and {} carries no more than {}, {} less",
            context.door_words(door_id),
            measure.text(load.load.likely, unit),
            measure.digits(load.load.low, unit),
            measure.digits(load.load.high, unit),
            advice::name(&work.verdict),
            measure.text(load.max, unit),
            measure.text(load.load.likely - load.max, unit),
        );
        let is = (NAME, Severity::Stop);
        findings.extend(load_finding(context, door_id, is, message, &[Beyond::Most]));
    }
}
