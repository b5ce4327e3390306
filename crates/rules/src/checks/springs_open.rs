//! Whether the lightest door stays shut.

use flapwright_model::measure::Measure;
use flapwright_motion::reason::Reason;

use super::other_sizes::offer;
use super::{BoxContext, Check, Run, finding};
use crate::finding::{Finding, Number, Severity};

const NAME: &str = "springs-open";

pub(super) const CHECK: Check = Check {
    name: NAME,
    page: "\
## What it looks at
The lightest door, closed, its fitting set for it, struts in the heat (a setting, 40 °C by default): whether what lifts it pushes it \
open against its weight and friction.

## Why it matters
A door that does not stay shut stands ajar, rattles, and opens by itself over a hob or a head.

## Severity
Caution. A door that is lighter than its size is made for is told of by that check and not here.

## What can be done
A weaker size, a strut whose line passes nearer to the axis when closed, a heavier door, or a catch.",
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
        let unit = context.job.unit;
        let mut it = finding(
            NAME,
            Severity::Caution,
            format!(
                "{}: at {celsius:.0} °C the lightest door does not stay shut: {} push it open \
                 against {} of friction",
                context.door_words(door_id),
                Measure::Moment.text(push, unit),
                Measure::Moment.text(friction, unit)
            ),
            vec![context.door_subject(door_id)],
        );
        it.numbers =
            vec![Number::of("push beyond friction", push - friction, "N·m").worse_when_greater()];
        offer(context, door_id, &mut it);
        findings.push(it);
    }
}
