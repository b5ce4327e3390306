//! Whether the heaviest door falls from where one lets go of it.

use flapwright_model::id::DoorId;
use flapwright_model::message::{Degrees, MetresPerSecond, Seconds};
use flapwright_motion::dynamics::Ending;
use flapwright_motion::load::Load;

use super::other_sizes::offer;
use super::{BoxContext, Check, Run, finding};
use crate::chosen_work::Fall;
use crate::finding::{Finding, Severity};
use crate::message::FallsWhenLetGo;

const NAME: &str = "falls-when-let-go";

pub(super) const CHECK: Check = Check {
    name: NAME,
    page: "\
## What it looks at
The heaviest door, its fitting set for it, struts in the cold (setting “coldest”, default 5 °C): \
whether it stays open, and whether it holds over the upper part of its travel (setting “holds \
above”, default the upper half). It is let go where it falls, with its true inertia and the \
damping that the card states.

## Why it matters
A door that comes down by itself hits heads and hands. In the lower part of the travel most \
lift-up doors fall shut, and hands expect it (assumed, no source).

## Severity
Stop if the likely door falls from open too; else caution. A door over the rating of its size is \
reported by door-too-heavy, not here.

## What can be done
A stronger size, a lighter door; hold the door while its springs are set, and follow the \
fitting's own instructions.",
    severities: &[Severity::Caution, Severity::Stop],
    settings: &["coldest", "holds_above"],
    run: Run::Box(look),
};

fn look(context: &BoxContext<'_>, findings: &mut Vec<Finding>) {
    for (door_id, _, _) in context.doors() {
        let Some(work) = context.work(door_id) else {
            continue;
        };
        let beyond = |mass: fn(&Load) -> f64| {
            let load = work.verdict.load.as_ref();
            load.is_some_and(|load| mass(load) > load.max)
        };
        // The likely door is too heavy for the size: that is the trouble, and the fall follows.
        if beyond(|load| load.load.likely) {
            continue;
        }
        let Some(fall) = context.fall(door_id) else {
            continue;
        };
        // Likewise where only the heaviest door is, and only that one falls.
        if beyond(|load| load.load.high) && !fall.likely_too {
            continue;
        }
        findings.push(tell(context, door_id, fall));
    }
}

fn tell(context: &BoxContext<'_>, door_id: DoorId, fall: &Fall) -> Finding {
    let from = fall.from_degrees;
    let from_open = fall.from >= 1.0;
    let severity = if from_open && fall.likely_too {
        Severity::Stop
    } else {
        Severity::Caution
    };
    let falls_from = Degrees(from);
    let fastest = MetresPerSecond(fall.let_go.fastest());
    let message = match (from_open, fall.likely_too) {
        (true, true) => FallsWhenLetGo::NotOpen {
            falls_from,
            fastest,
        },
        (true, false) => FallsWhenLetGo::HeaviestNotOpen {
            falls_from,
            fastest,
        },
        (false, _) => FallsWhenLetGo::HeaviestFalls {
            falls_from,
            fastest,
        },
    };
    let then = match (fall.let_go.ending, fall.let_go.last()) {
        (Ending::Closes, Some(last)) => FallsWhenLetGo::Shuts {
            time: Seconds(last.time),
            speed: MetresPerSecond(last.speed),
        },
        _ => FallsWhenLetGo::Rests {
            at: Degrees(fall.rest_degrees),
        },
    };
    let mut it = finding(NAME, severity, message, vec![context.door_subject(door_id)]);
    it.because(then);
    offer(context, door_id, &mut it);
    it
}
