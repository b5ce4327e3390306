//! Whether the opening is high enough for the fitting.

use flapwright_model::message::Mm;

use super::other_sizes::offer;
use super::{BoxContext, Check, Run, finding};
use crate::finding::{Finding, Severity};
use crate::message::{FittingName, OpeningTooShort};

const NAME: &str = "opening-too-short";

pub(super) const CHECK: Check = Check {
    name: NAME,
    page: "\
## What it looks at
The clear height of the opening against what the chosen size needs and against how far down the \
fitting's body reaches.

## Why it matters
A body that is higher than the opening does not go in; arms need their room to swing.

## Severity
Stop. A loose shelf in the way of the body is reported by fitting-hits-shelf.

## What can be done
A smaller size, a higher box, or a fixed shelf further down.",
    severities: &[Severity::Stop],
    settings: &[],
    run: Run::Box(look),
};

fn look(context: &BoxContext<'_>, findings: &mut Vec<Finding>) {
    for (door_id, door, _) in context.doors() {
        let Some(choice) = &door.fitting else {
            continue;
        };
        let Some(card) = context.card(choice) else {
            continue;
        };
        let Some(size) = card.size(&choice.size) else {
            continue;
        };
        let Some(place) = context.opening_of(door_id) else {
            continue;
        };
        let clear = place.clear;
        let there = clear.max.y - clear.min.y;
        let body = card.envelope.down_to.of(&choice.size).unwrap_or(0.0);
        let least = size.least_inner_height.max(body);
        if there >= least {
            continue;
        }
        let mut it = finding(
            NAME,
            Severity::Stop,
            OpeningTooShort::Less {
                fitting: FittingName::new(&card.name, &choice.size),
                under: Mm(least - there),
                clear_height: Mm(there),
                least_clear_height: Mm(least),
            },
            vec![context.door_subject(door_id)],
        );

        offer(context, door_id, &mut it);
        findings.push(it);
    }
}
