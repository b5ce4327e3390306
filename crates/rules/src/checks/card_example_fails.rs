//! Whether a card gives the distances of its own worked example.

use flapwright_model::acceptance::Topic;
use flapwright_model::job::UsedCard;
use flapwright_model::message::{Count, Mm};
use flapwright_model::part::Subject;

use super::{Check, Run, finding};
use crate::finding::{Finding, Severity};
use crate::message::CardExampleFails;
use crate::proof::{Proof, proof};

const NAME: &str = "card-example-fails";

pub(super) const CHECK: Check = Check {
    name: NAME,
    page: "\
## What it looks at
The worked example on a card: the box and door of the example are placed like any other, and each \
distance is compared with what the example says.

## Why it matters
A slip in typing a card is in every box made with it. The example on the fitting's own data sheet \
finds it.

## Severity
Stop for a card that is in use, caution otherwise.

## What can be done
Compare the card with its data sheet, number by number.",
    severities: &[Severity::Caution, Severity::Stop],
    settings: &[],
    run: Run::Card(look),
};

fn look(UsedCard { id, card }: &UsedCard, users: &[Subject], findings: &mut Vec<Finding>) {
    let Proof::Fails(wrong) = proof(card) else {
        return;
    };
    let Some(largest) = wrong.iter().map(|it| it.by).reduce(f64::max) else {
        return;
    };
    let severity = if users.is_empty() {
        Severity::Caution
    } else {
        Severity::Stop
    };
    // Bores that are missing or too many are off by no distance.
    let message = if largest > 0.0 {
        CardExampleFails::Distances {
            distances: Count(wrong.len()),
            largest_difference: Mm(largest),
        }
    } else {
        CardExampleFails::Bores {
            largest_difference: Mm(largest),
        }
    };
    let mut it = finding(NAME, severity, message, users.to_vec()).about([Topic::Card(*id)]);
    for moved in wrong {
        it.because(moved.message);
    }
    findings.push(it);
}
