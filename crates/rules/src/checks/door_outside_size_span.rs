//! Whether a door is taller, lower, wider or narrower than its size is made for.

use flapwright_model::message::{Mm, Word};
use flapwright_motion::reason::Reason;
use flapwright_motion::sizes::Verdict;

use super::other_sizes::offer;
use super::{BoxContext, Check, Run, finding};
use crate::finding::{Finding, Severity};
use crate::message::{DoorOutsideSizeSpan, FittingName};

const NAME: &str = "door-outside-size-span";

pub(super) const CHECK: Check = Check {
    name: NAME,
    page: "\
## What it looks at
Height and width of the door against the spans that the chosen size is made for; and whether the \
size's load table has a figure for this height at all.

## Why it matters
Arms and springs are laid out for these sizes: outside of them nothing that the card says is \
sure, and no load can be looked up.

## Severity
Stop.

## What can be done
Take a size made for such a door, or change the door: another opening, a fixed shelf higher or \
lower, two doors in place of one.",
    severities: &[Severity::Stop],
    settings: &[],
    run: Run::Box(look),
};

/// A door's measure and the span that it leaves, mm.
struct Outside {
    what: Word,
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
                    what: *what,
                    value: *value,
                    min: *min,
                    max: *max,
                });
            }
        }
        let mut outside = outside.iter().map(|it| it.message(&work.verdict));
        let Some(first) = outside.next() else {
            continue;
        };
        let mut it = finding(
            NAME,
            Severity::Stop,
            first,
            vec![context.door_subject(door_id)],
        );
        for more in outside {
            it.because(more);
        }
        offer(context, door_id, &mut it);
        findings.push(it);
    }
}

impl Outside {
    fn message(&self, verdict: &Verdict) -> DoorOutsideSizeSpan {
        let fitting = FittingName::new(&verdict.card, &verdict.size);
        let (what, value) = (self.what, Mm(self.value));
        if self.value < self.min {
            DoorOutsideSizeSpan::Under {
                fitting,
                what,
                value,
                limit: Mm(self.min),
                outside_its_span_by: Mm(self.min - self.value),
            }
        } else {
            DoorOutsideSizeSpan::Over {
                fitting,
                what,
                value,
                limit: Mm(self.max),
                outside_its_span_by: Mm(self.value - self.max),
            }
        }
    }
}
