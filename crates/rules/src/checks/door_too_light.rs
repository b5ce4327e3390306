//! Whether a door is lighter than its size needs.

use flapwright_motion::reason_message::{LoadName, LoadValue};

use super::load::{load_finding, loads};
use super::{BoxContext, Check, Run};
use crate::finding::{Finding, Severity};
use crate::message::{DoorTooLight, FittingName};

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
        let (what, measure) = LoadName::of(load.kind);
        let value = |it| LoadValue(measure, it);
        let message = DoorTooLight::Under {
            fitting: FittingName::new(&work.verdict.card, &work.verdict.size),
            what,
            under: value(load.min - load.load.likely),
            least_load: value(load.load.low),
            least_carried: value(load.min),
        };
        let is = (NAME, Severity::Stop);
        findings.extend(load_finding(context, door_id, is, message));
    }
}
