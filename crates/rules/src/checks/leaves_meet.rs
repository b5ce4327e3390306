//! Whether the two leaves of a folding pair meet each other on the way.

use flapwright_motion::outline::outline_at;
use flapwright_motion::sweep::meet;

use super::clear_way::{degrees, moving, opening_subject};
use super::{BoxContext, Check, Run, finding};
use crate::finding::{Finding, Number, Severity};

const NAME: &str = "leaves-meet";

pub(super) const CHECK: Check = Check {
    name: NAME,
    page: "\
## What it looks at
The outlines of both leaves and the handle at every step of the way. At an angle p from flat the \
gap at the front is the closed gap plus 2 e sin(p/2), e from the front face back to the joint; \
behind the joint the edges close up in the same way.

## Why it matters
Back edges that meet lever the joint out of the leaves.

## Severity
Stop.

## What can be done
A joint further back, a larger gap between the leaves, or another fitting.",
    severities: &[Severity::Stop],
    settings: &[],
    run: Run::Box(look),
};

/// Steps of the way that are looked at.
const STEPS: u16 = 48;

fn look(context: &BoxContext<'_>, findings: &mut Vec<Finding>) {
    for (opening, door, _) in moving(context) {
        let Some(motion) = door.working_motion() else {
            continue;
        };
        if door.closed.leaves.len() < 2 {
            continue;
        }
        let met = (0..=STEPS)
            .map(|step| f64::from(step) / f64::from(STEPS))
            .find(|s| match outline_at(motion, &door.closed, *s).as_slice() {
                [(_, upper), rest @ ..] => rest.iter().any(|(_, other)| meet(upper, other)),
                [] => false,
            });
        let Some(s) = met else { continue };
        let at = degrees(door, s);
        let mut it = finding(
            NAME,
            Severity::Stop,
            format!(
                "{}: its two leaves meet each other at {at:.0}° of the way",
                context.door_words(opening)
            ),
            vec![opening_subject(context, opening)],
        );
        it.numbers = vec![Number::of("met at", at, "degrees").worse_when_smaller()];
        findings.push(it);
    }
}
