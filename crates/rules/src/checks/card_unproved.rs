//! Whether a card in use has been tried against its paper.

use flapwright_model::acceptance::Topic;
use flapwright_model::card::Card;
use flapwright_model::job::UsedCard;
use flapwright_model::message::Count;
use flapwright_model::part::Subject;

use super::{Check, Run, finding};
use crate::finding::{Finding, Severity};
use crate::message::CardUnproved;

const NAME: &str = "card-unproved";

pub(super) const CHECK: Check = Check {
    name: NAME,
    page: "\
## What it looks at
Whether each card that a door of the job is on has the worked example of its own data sheet.

## Why it matters
A slip in typing a card is in every box made with it. Only the example, which is placed like any \
other box and compared distance by distance, shows that the card says what the data sheet says.

## Severity
Caution.

## What can be done
Type the worked example from the fitting's instructions into the card; where the data sheet has \
none, drill one box of scrap, and accept the finding with that reason.",
    severities: &[Severity::Caution],
    settings: &[],
    run: Run::Card(look),
};

fn look(UsedCard { id, card }: &UsedCard, users: &[Subject], findings: &mut Vec<Finding>) {
    if users.is_empty() || proved(card) {
        return;
    }
    let message = CardUnproved::Used {
        doors: Count(users.len()),
    };
    let it = finding(NAME, Severity::Caution, message, users.to_vec());
    findings.push(it.about([Topic::Card(*id)]));
}

/// Whether a card has an example with something to compare.
fn proved(card: &Card) -> bool {
    card.example
        .as_ref()
        .is_some_and(|example| !(example.side.is_empty() && example.door.is_empty()))
}
