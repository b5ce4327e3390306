//! Accepting a finding with a reason, and noticing when it has got worse since.

use std::collections::BTreeMap;

use flapwright_model::acceptance::{Acceptance, AcceptedNumber};
use flapwright_model::edit::Edit;
use flapwright_model::job::Job;

use crate::finding::{Finding, Number, Worse};

/// Numbers may move by this without being worse: positions are printed to 0.1 of their unit.
const UNCHANGED: f64 = 0.05;
/// The same for numbers without a unit.
const UNCHANGED_RATIO: f64 = 0.005;

/// The change that accepts a finding as it stands, in place of an earlier acceptance of it.
#[must_use]
pub fn accept(job: &Job, finding: &Finding, reason: &str) -> Edit {
    let mut accepted = without(job, finding);
    accepted.push(Acceptance {
        check: finding.check.to_owned(),
        place: finding.place.clone(),
        reason: reason.trim().to_owned(),
        severity: finding.severity,
        numbers: finding
            .numbers
            .iter()
            .map(|number| AcceptedNumber {
                label: number.label.clone(),
                value: number.value,
            })
            .collect(),
    });
    Edit::ReplaceAccepted(accepted)
}

/// The change that takes the acceptance of a finding back.
#[must_use]
pub fn take_back(job: &Job, finding: &Finding) -> Edit {
    Edit::ReplaceAccepted(without(job, finding))
}

fn without(job: &Job, finding: &Finding) -> Vec<Acceptance> {
    job.accepted
        .iter()
        .filter(|it| it.check != finding.check || it.place != finding.place)
        .cloned()
        .collect()
}

/// Marks the findings that were accepted and have not got worse. To those that have, a line says
/// what changed.
pub(crate) fn mark(job: &Job, findings: &mut [Finding]) {
    if job.accepted.is_empty() {
        return;
    }
    let by_place: BTreeMap<(&str, &str), &Acceptance> = job
        .accepted
        .iter()
        .map(|it| ((it.check.as_str(), it.place.as_str()), it))
        .collect();
    for finding in findings {
        let Some(acceptance) = by_place.get(&(finding.check, finding.place.as_str())) else {
            continue;
        };
        match what_got_worse(finding, acceptance) {
            None => finding.accepted = Some(acceptance.reason.clone()),
            Some(what) => finding.details.push(format!(
                "It was accepted (\"{}\") and is back: {what}.",
                acceptance.reason
            )),
        }
    }
}

/// What has got worse since a finding was accepted; `None` when nothing has.
fn what_got_worse(finding: &Finding, acceptance: &Acceptance) -> Option<String> {
    if finding.severity > acceptance.severity {
        return Some(format!(
            "it was a {} and is a {}",
            acceptance.severity.word(),
            finding.severity.word()
        ));
    }
    if finding.numbers.len() > acceptance.numbers.len() {
        return Some("it has more to say than it had".to_owned());
    }
    finding.numbers.iter().find_map(|number| {
        let Some(before) = acceptance
            .numbers
            .iter()
            .find(|it| it.label == number.label)
        else {
            return Some(format!("{} is new", number.label));
        };
        is_worse(number, before.value).then(|| {
            let gap = if number.unit.is_empty() { "" } else { " " };
            format!(
                "{} was {:.1}{gap}{unit} and is {:.1}{gap}{unit}",
                number.label,
                before.value,
                number.value,
                unit = number.unit
            )
        })
    })
}

fn is_worse(number: &Number, before: f64) -> bool {
    let slack = if number.unit.is_empty() {
        UNCHANGED_RATIO
    } else {
        UNCHANGED
    };
    let change = number.value - before;
    match number.worse {
        Worse::Either => change.abs() > slack,
        Worse::Greater => change > slack,
        Worse::Smaller => change < -slack,
    }
}
