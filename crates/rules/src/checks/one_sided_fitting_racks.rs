//! Whether a fitting at one side alone can carry a wide door without racking it.

use flapwright_model::card::FittedSides;
use flapwright_model::message::{Mm, NewtonMetre, Word};
use flapwright_motion::gravity::GRAVITY;

use super::other_sizes::offer_of;
use super::{BoxContext, Check, Run, finding};
use crate::finding::{Finding, Severity};
use crate::message::OneSidedFittingRacks;

const NAME: &str = "one-sided-fitting-racks";

pub(super) const CHECK: Check = Check {
    name: NAME,
    page: "\
## What it looks at
Doors whose card has a fitting at one side only: whether the door is wider than high, or is held by \
nothing else than that one arm. The number given is the heaviest door's weight times half its width: \
what twists the door when only one edge is lifted.

## Why it matters
The side without a fitting hangs back: the door racks, its gaps run out of line, and its hinges wear. \
That a door wider than high is too much for one arm is common practice, without a source.

## Severity
Caution.

## What can be done
A pair of fittings; a bar between the arms where the card has one; hinges along the door.",
    severities: &[Severity::Caution],
    settings: &[],
    run: Run::Box(look),
};

fn look(context: &BoxContext<'_>, findings: &mut Vec<Finding>) {
    for (door_id, door, report) in context.doors() {
        let choice = door.fitting.as_ref();
        let Some(card) = choice.and_then(|choice| context.card(choice)) else {
            continue;
        };
        let side = match card.sides {
            FittedSides::Both => continue,
            FittedSides::LeftOnly => Word("left"),
            FittedSides::RightOnly => Word("right"),
        };
        let width = report.edges.right - report.edges.left;
        let height = report.edges.top - report.edges.bottom;
        let hinged = card.door_bores.iter().any(|group| group.spread.is_some());
        if hinged && width <= height {
            continue;
        }
        let twist = report.mass.high * GRAVITY * width.max(0.0) / 2.0 / 1000.0;
        let why = if hinged {
            OneSidedFittingRacks::Wide {
                width: Mm(width),
                height: Mm(height),
            }
        } else {
            OneSidedFittingRacks::Alone { width: Mm(width) }
        };
        let mut it = finding(
            NAME,
            Severity::Caution,
            OneSidedFittingRacks::Twists {
                card: card.name.clone(),
                side,
                width_beyond_height: Mm(width - height),
                twist: NewtonMetre(twist),
            },
            vec![context.door_subject(door_id)],
        );
        it.because(why);
        let pair = |name: &str| {
            let used = context.job.card_named(name);
            used.is_some_and(|used| used.card.sides == FittedSides::Both)
        };
        offer_of(context, door_id, &mut it, pair);
        findings.push(it);
    }
}
