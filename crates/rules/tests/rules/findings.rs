//! What tests ask of the findings of a job.

use flapwright_model::edit::apply;
use flapwright_model::job::Job;
use flapwright_rules::finding::{Finding, Severity, Worse};

use crate::common::inspect;

/// The findings of one check, at its own weight even where the test's job has it off.
pub(crate) fn found(job: &Job, name: &str) -> Vec<Finding> {
    assert!(
        flapwright_rules::checks::check(name).is_some(),
        "no check is called {name}"
    );
    let mut job = job.clone();
    job.settings.weights.remove(name);
    let mut findings = inspect(&job).findings;
    findings.retain(|it| it.check == name);
    findings
}

pub(crate) fn severities(job: &Job, name: &str) -> Vec<Severity> {
    found(job, name).iter().map(|it| it.severity).collect()
}

#[track_caller]
pub(crate) fn the_only(job: &Job, name: &str) -> Finding {
    let mut all = found(job, name);
    assert_eq!(all.len(), 1, "{all:#?}");
    all.remove(0)
}

#[track_caller]
pub(crate) fn says(finding: &Finding, words: &str) {
    assert!(
        finding.message.contains(words),
        "\"{words}\" is not in \"{}\"",
        finding.message
    );
}

#[track_caller]
pub(crate) fn number(finding: &Finding, label: &str) -> f64 {
    finding
        .numbers
        .iter()
        .find(|it| it.label == label)
        .unwrap_or_else(|| panic!("no {label} in {:?}", finding.numbers))
        .value
}

/// Applies a remedy; its check must be silent then, and undo must restore the job.
pub(crate) fn clears(job: &Job, finding: &Finding, remedy: usize) -> Job {
    let remedy = &finding.remedies[remedy];
    let mut after = job.clone();
    let undo = apply(&mut after, remedy.edit.clone()).expect("the remedy is sound");
    assert_eq!(found(&after, finding.check), [], "{}", remedy.title);
    let mut back = after.clone();
    apply(&mut back, undo).expect("undo is sound");
    assert_eq!(&back, job);
    after
}

/// What the numbers of a finding are: label, unit and which change is worse; their values, which
/// are worked to a thousandth, are compared here.
#[track_caller]
pub(crate) fn assert_numbers(finding: &Finding, expected: &[(&str, f64, &str, Worse)]) {
    assert_eq!(finding.numbers.len(), expected.len(), "{finding:#?}");
    for (it, (label, value, unit, worse)) in finding.numbers.iter().zip(expected) {
        assert_eq!(
            (it.label.as_str(), it.unit, it.worse),
            (*label, *unit, *worse)
        );
        assert!(
            (it.value - value).abs() < 1e-3,
            "{label} is {}, expected {value}",
            it.value
        );
    }
}
