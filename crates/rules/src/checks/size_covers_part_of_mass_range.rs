//! Whether a size carries the likely door but not the lightest or heaviest that may come of it.

use flapwright_motion::sizes::Grade;

use super::load::{Beyond, load_finding, loads, words};
use super::{BoxContext, Check, Run};
use crate::advice;
use crate::finding::{Finding, Severity};

const NAME: &str = "size-covers-part-of-mass-range";

pub(super) const CHECK: Check = Check {
    name: NAME,
    page: "\
## What it looks at
Whether the whole range that the door's mass may have (board from another maker, damp, the leaf's own \
tolerance) lies within what the chosen size carries, where its likely mass does.

## Why it matters
The next delivery of board can be the heavy one: then the door that held yesterday comes down.

## Severity
Caution.

## What can be done
Take a size in the middle of whose range the door lies; or weigh the door (or a piece of its board) \
and type the mass, which narrows the range.",
    severities: &[Severity::Caution],
    settings: &[],
    run: Run::Box(look),
};

fn look(context: &BoxContext<'_>, findings: &mut Vec<Finding>) {
    for (door_id, work, load) in loads(context) {
        if load.grade() != Grade::Marginal {
            continue;
        }
        let unit = context.job.unit;
        let (measure, what, _, at) = words(load);
        let mut beyond = Vec::new();
        let mut ends = Vec::new();
        if load.load.high > load.max {
            beyond.push(Beyond::Most);
            ends.push(format!(
                "at its heaviest, {}, it is {} over the most",
                measure.text(load.load.high, unit),
                measure.text(load.load.high - load.max, unit)
            ));
        }
        if load.load.low < load.min {
            beyond.push(Beyond::Least);
            ends.push(format!(
                "at its lightest, {}, it is {} under the least",
                measure.text(load.load.low, unit),
                measure.text(load.min - load.load.low, unit)
            ));
        }
        let message = format!(
            "{}: {} carries a {what}{at} of {} to {}; the likely {} fits, but {}",
            context.door_words(door_id),
            advice::name(&work.verdict),
            measure.digits(load.min, unit),
            measure.text(load.max, unit),
            measure.text(load.load.likely, unit),
            ends.join(" and "),
        );
        let is = (NAME, Severity::Caution);
        findings.extend(load_finding(context, door_id, is, message, &beyond));
    }
}
