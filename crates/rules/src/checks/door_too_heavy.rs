//! Whether a door is heavier than its size carries.

use flapwright_motion::reason_message::{LoadName, LoadValue};

use super::load::{load_finding, loads};
use super::{BoxContext, Check, Run};
use crate::finding::{Finding, Severity};
use crate::message::{DoorTooHeavy, FittingName};

const NAME: &str = "door-too-heavy";

pub(super) const CHECK: Check = Check {
    name: NAME,
    page: "\
## What it looks at
Whether the likely mass of the door (or its lift moment, where the card limits that) is above the \
most that the chosen size is rated for.

## Why it matters
A door that is too heavy for its fitting does not stay open: it comes down on hands and heads.

## Severity
Stop.

## What can be done
Take a size that is rated for it, or make the door lighter: a thinner leaf, a lighter board, a \
frame with a light panel. Where the door was weighed, type its mass.",
    severities: &[Severity::Stop],
    settings: &[],
    run: Run::Box(look),
};

fn look(context: &BoxContext<'_>, findings: &mut Vec<Finding>) {
    for (door_id, work, load) in loads(context) {
        if load.load.likely <= load.max {
            continue;
        }
        let (what, measure) = LoadName::of(load.kind);
        let value = |it| LoadValue(measure, it);
        let message = DoorTooHeavy::Over {
            fitting: FittingName::new(&work.verdict.card, &work.verdict.size),
            what,
            over: value(load.load.likely - load.max),
            greatest_load: value(load.load.high),
            most_carried: value(load.max),
        };
        let is = (NAME, Severity::Stop);
        findings.extend(load_finding(context, door_id, is, message));
    }
}
