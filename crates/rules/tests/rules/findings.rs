//! What tests ask of the findings of a job.

use std::ops::{Deref, DerefMut};
use std::sync::Arc;

use flapwright_model::edit::{Edit, apply};
use flapwright_model::job::Job;
use flapwright_model::length::Unit;
use flapwright_model::measure;
use flapwright_model::message::{Said, Say, Value};
use flapwright_model::part::{Part, Subject};
use flapwright_rules::finding::{Finding, Remedy, Severity, Worse};

use crate::common::inspect;

/// A finding with its messages written as data: `reveal-out-of-range.past: edge left, by 1 mm`.
#[derive(Debug, Clone, PartialEq)]
pub(crate) struct Told {
    pub(crate) message: String,
    pub(crate) reasons: Vec<String>,
    pub(crate) remedies: Vec<ToldRemedy>,
    finding: Finding,
}

/// A remedy, likewise.
#[derive(Debug, Clone, PartialEq)]
pub(crate) struct ToldRemedy {
    pub(crate) kind: String,
    pub(crate) effects: String,
    pub(crate) safe: bool,
    pub(crate) edit: Edit,
}

impl Deref for Told {
    type Target = Finding;

    fn deref(&self) -> &Finding {
        &self.finding
    }
}

impl DerefMut for Told {
    fn deref_mut(&mut self) -> &mut Finding {
        &mut self.finding
    }
}

impl From<Arc<Finding>> for Told {
    fn from(finding: Arc<Finding>) -> Self {
        let finding = Finding::clone(&finding);
        Self {
            message: said(&finding.message),
            reasons: finding.reasons.iter().map(|it| said(it)).collect(),
            remedies: finding.remedies.iter().map(ToldRemedy::from).collect(),
            finding,
        }
    }
}

impl From<&Remedy> for ToldRemedy {
    fn from(it: &Remedy) -> Self {
        let effects: Vec<String> = it.effects.iter().map(|it| said(it)).collect();
        Self {
            kind: said(&it.kind),
            effects: effects.join("; "),
            safe: it.claims_safe(),
            edit: it.edit.clone(),
        }
    }
}

/// A message as data: its key, then the name and value of each argument, lengths to a tenth.
pub(crate) fn said(message: &dyn Say) -> String {
    data(&message.say())
}

fn data(said: &Said) -> String {
    let arguments = said.arguments.iter();
    let there = arguments.filter(|it| it.value != Value::Nothing);
    let words: Vec<String> = there
        .map(|it| format!("{} {}", it.name, value(&it.value)))
        .collect();
    if words.is_empty() {
        said.key.to_owned()
    } else {
        format!("{}: {}", said.key, words.join(", "))
    }
}

fn value(it: &Value) -> String {
    let list = |all: &[Value]| {
        let words: Vec<String> = all.iter().map(value).collect();
        format!("[{}]", words.join("; "))
    };
    match it {
        Value::Length(it) => measure::length(*it, Unit::Millimetre),
        Value::Measured(measure, it) => measure.text(*it, Unit::Millimetre),
        Value::Angle(it) => format!("{it:.0}°"),
        Value::Temperature(it) => format!("{it:.0} °C"),
        Value::Share(it) => format!("{:.0} %", it * 100.0),
        Value::Number(it, places) => format!("{it:.places$}"),
        Value::Time(it) => format!("{it:.1} s"),
        Value::Speed(it) => format!("{:.1} m/s", it.abs()),
        Value::AsTyped(it) => it.to_string(),
        Value::Count(it) => it.to_string(),
        Value::Label(it) => format!("\"{it}\""),
        Value::Word(it) | Value::NumberName(it) => (*it).to_owned(),
        Value::Place(it) | Value::PlaceWithin(it) => kind_of(*it),
        Value::Message(it) => format!("({})", data(it)),
        Value::All(all) | Value::Sum(all) => list(all),
        Value::Nothing => "nothing".to_owned(),
    }
}

/// What kind of place it is; which one, the subjects of a finding tell.
fn kind_of(subject: Subject) -> String {
    match subject {
        Subject::Box(_) => "a box".to_owned(),
        Subject::Opening(..) => "an opening".to_owned(),
        Subject::Door(..) => "a door".to_owned(),
        Subject::Part(it) => match it.part {
            Part::Shelf(_) => "a shelf".to_owned(),
            Part::Leaf { .. } => "a leaf".to_owned(),
            other => format!("{other:?}"),
        },
        Subject::Bore(_) => "a bore".to_owned(),
        Subject::Obstacle(_) => "an obstacle".to_owned(),
        Subject::Card(_) => "a card".to_owned(),
    }
}

/// All findings of a job.
pub(crate) fn told(job: &Job) -> Vec<Told> {
    inspect(job).findings.into_iter().map(Told::from).collect()
}

/// The findings of one check, at its own weight even where the test's job has it off.
pub(crate) fn found(job: &Job, name: &str) -> Vec<Told> {
    assert!(
        flapwright_rules::checks::check(name).is_some(),
        "no check is called {name}"
    );
    let mut job = job.clone();
    job.settings.weights.remove(name);
    let mut findings = inspect(&job).findings;
    findings.retain(|it| it.check == name);
    findings.into_iter().map(Told::from).collect()
}

pub(crate) fn severities(job: &Job, name: &str) -> Vec<Severity> {
    found(job, name).iter().map(|it| it.severity).collect()
}

#[track_caller]
pub(crate) fn the_only(job: &Job, name: &str) -> Told {
    let mut all = found(job, name);
    assert_eq!(all.len(), 1, "{all:#?}");
    all.remove(0)
}

/// The message of a finding or one of its reasons has this in it.
#[track_caller]
pub(crate) fn says(finding: &Told, data: &str) {
    let all = format!("{}; {}", finding.message, finding.reasons.join("; "));
    assert!(all.contains(data), "\"{data}\" is not in \"{all}\"");
}

#[track_caller]
pub(crate) fn number(finding: &Finding, label: &str) -> f64 {
    finding
        .numbers
        .iter()
        .find(|it| it.name == label)
        .unwrap_or_else(|| panic!("no {label} in {:?}", finding.numbers))
        .value
}

/// Applies a remedy; its check must be silent then, and undo must restore the job.
pub(crate) fn clears(job: &Job, finding: &Told, remedy: usize) -> Job {
    let remedy = &finding.remedies[remedy];
    let mut after = job.clone();
    let undo = apply(&mut after, remedy.edit.clone()).expect("the remedy is sound");
    assert_eq!(found(&after, finding.check), [], "{}", remedy.kind);
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
        assert_eq!((it.name, it.unit, it.worse), (*label, *unit, *worse));
        assert!(
            (it.value - value).abs() < 1e-3,
            "{label} is {}, expected {value}",
            it.value
        );
    }
}
