//! Whether a door is taller, lower, wider or narrower than its size is made for.

use flapwright_motion::reason::Reason;

use super::other_sizes::offer;
use super::{BoxContext, Check, Run, finding};
use crate::advice;
use crate::finding::{Finding, Number, Severity};

const NAME: &str = "door-outside-size-span";

pub(super) const CHECK: Check = Check {
    name: NAME,
    page: "\
## What it looks at
Height and width of the door against the spans that the chosen size is made for; and whether the \
size's load table has a figure for this height at all.

## Why it matters
Arms and springs are laid out for these sizes: outside of them nothing that the card promises holds, \
and no load can be looked up.

## Severity
Stop.

## What can be done
Take a size made for such a door, or change the door: another opening, a fixed shelf higher or lower, \
two doors in place of one.",
    severities: &[Severity::Stop],
    settings: &[],
    run: Run::Box(look),
};

/// A door's measure and the span that it leaves, mm.
struct Outside {
    what: &'static str,
    value: f64,
    min: f64,
    max: f64,
}

fn look(context: &BoxContext<'_>, findings: &mut Vec<Finding>) {
    for (door_id, _, _) in context.doors() {
        let Some(work) = context.work(door_id) else {
            continue;
        };
        let mut outside: Vec<Outside> = Vec::new();
        for reason in &work.verdict.reasons {
            let (what, value, min, max) = match reason {
                Reason::OutOfSpan {
                    what,
                    value,
                    min,
                    max,
                } => (what, value, min, max),
                Reason::NoLoadGiven {
                    what,
                    value,
                    from,
                    to,
                } => (what, value, from, to),
                _ => continue,
            };
            // The height's own span says it already.
            if outside.iter().all(|it| it.what != *what) {
                outside.push(Outside {
                    what,
                    value: *value,
                    min: *min,
                    max: *max,
                });
            }
        }
        if outside.is_empty() {
            continue;
        }
        let said: Vec<String> = outside.iter().map(|it| it.words(context)).collect();
        let mut it = finding(
            NAME,
            Severity::Stop,
            format!(
                "{}: {} is not made for it: {}",
                context.door_words(door_id),
                advice::name(&work.verdict),
                said.join("; ")
            ),
            vec![context.door_subject(door_id)],
        );
        it.numbers = outside.iter().map(Outside::number).collect();
        offer(context, door_id, &mut it);
        findings.push(it);
    }
}

impl Outside {
    fn words(&self, context: &BoxContext<'_>) -> String {
        let by = (self.min - self.value).max(self.value - self.max);
        format!(
            "the {} is {}, {} {} its span of {} to {}",
            self.what,
            context.length(self.value),
            context.length(by),
            if self.value < self.min {
                "below"
            } else {
                "above"
            },
            context.length(self.min),
            context.length(self.max)
        )
    }

    fn number(&self) -> Number {
        let by = (self.min - self.value).max(self.value - self.max);
        Number::mm(format!("{} outside its span by", self.what), by).worse_when_greater()
    }
}
