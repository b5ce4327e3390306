//! Whether the lightest door stays shut.

use flapwright_model::message::{Celsius, NewtonMetre};
use flapwright_motion::reason::Reason;

use super::other_sizes::offer;
use super::{BoxContext, Check, Run, finding};
use crate::finding::{Finding, Severity};
use crate::message::SpringsOpen;

const NAME: &str = "springs-open";

pub(super) const CHECK: Check = Check {
    name: NAME,
    page: "\
## What it looks at
The lightest door, closed, its fitting set for it, struts in the heat (setting “hottest”, default \
40 °C): whether what lifts it pushes it open against its weight and friction.

## Why it matters
A door that does not stay shut stands ajar, rattles, and opens by itself over a hob or a head.

## Severity
Caution. A door under the rating of its size is reported by door-too-light, not here.

## What can be done
A weaker size, a strut whose line passes nearer to the axis when closed, a heavier door, or a \
catch.",
    severities: &[Severity::Caution],
    settings: &["hottest"],
    run: Run::Box(look),
};

fn look(context: &BoxContext<'_>, findings: &mut Vec<Finding>) {
    for (door_id, _, _) in context.doors() {
        let Some(work) = context.work(door_id) else {
            continue;
        };
        let verdict = &work.verdict;
        // Too light for the size, or at its lightest: that is the trouble, and this follows.
        if verdict.load.is_some_and(|it| it.load.low < it.min) {
            continue;
        }
        let rises = verdict.reasons.iter().find_map(|reason| match reason {
            Reason::RisesFromClosed {
                balance,
                friction,
                celsius,
            } => Some((-balance, *friction, *celsius)),
            _ => None,
        });
        let Some((push, friction, celsius)) = rises else {
            continue;
        };
        let mut it = finding(
            NAME,
            Severity::Caution,
            SpringsOpen::Rises {
                celsius: Celsius(celsius),
                push_beyond_friction: NewtonMetre(push - friction),
            },
            vec![context.door_subject(door_id)],
        );
        it.because(SpringsOpen::Moments {
            push: NewtonMetre(push),
            friction: NewtonMetre(friction),
        });
        offer(context, door_id, &mut it);
        findings.push(it);
    }
}
