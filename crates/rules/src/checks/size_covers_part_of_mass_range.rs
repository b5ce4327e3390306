//! Whether a size carries the likely door but not the lightest or heaviest that may come of it.

use flapwright_motion::reason_message::{LoadName, LoadValue};
use flapwright_motion::sizes::Grade;

use super::load::{load_finding, loads};
use super::{BoxContext, Check, Run};
use crate::finding::{Finding, Severity};
use crate::message::{FittingName, SizeCoversPart};

const NAME: &str = "size-covers-part-of-mass-range";

pub(super) const CHECK: Check = Check {
    name: NAME,
    page: "\
## What it looks at
Whether the whole range that the door's mass may have (board from another maker, damp, the leaf's \
own tolerance) lies within what the chosen size is rated for, where its likely mass does.

## Why it matters
The next delivery of board can be the heavy one: then the door that held yesterday comes down.

## Severity
Caution.

## What can be done
Take a size in the middle of whose range the door lies; or weigh the door (or a piece of its \
board) and type the mass, which narrows the range.",
    severities: &[Severity::Caution],
    settings: &[],
    run: Run::Box(look),
};

fn look(context: &BoxContext<'_>, findings: &mut Vec<Finding>) {
    for (door_id, work, load) in loads(context) {
        if load.grade() != Grade::Marginal {
            continue;
        }
        let (what, measure) = LoadName::of(load.kind);
        let value = |it| LoadValue(measure, it);
        let fitting = || FittingName::new(&work.verdict.card, &work.verdict.size);
        let over = (load.load.high > load.max).then(|| SizeCoversPart::Over {
            fitting: fitting(),
            over: value(load.load.high - load.max),
            greatest_load: value(load.load.high),
            most_carried: value(load.max),
        });
        let under = (load.load.low < load.min).then(|| SizeCoversPart::Under {
            fitting: fitting(),
            under: value(load.min - load.load.low),
            least_load: value(load.load.low),
            least_carried: value(load.min),
        });
        let mut beyond = over.into_iter().chain(under);
        let Some(first) = beyond.next() else {
            continue;
        };
        let is = (NAME, Severity::Caution);
        let Some(mut it) = load_finding(context, door_id, is, first) else {
            continue;
        };
        if let Some(second) = beyond.next() {
            it.because(second);
        }
        it.because(SizeCoversPart::Carries {
            fitting: fitting(),
            what,
            least: value(load.min),
            most: value(load.max),
            likely: value(load.load.likely),
        });
        findings.push(it);
    }
}
