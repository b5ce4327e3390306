//! Accepting a finding with a reason, and noticing when it has got worse since.

use std::collections::BTreeMap;
use std::sync::Arc;

use flapwright_model::acceptance::{Acceptance, AcceptedNumber, Topic};
use flapwright_model::edit::Edit;
use flapwright_model::job::Job;
use flapwright_model::measure::Measure;
use flapwright_model::message::{NumberName, Value};
use flapwright_model::part::{LeafId, Part, Subject};

use crate::finding::{Finding, Number, Worse};
use crate::message::{Reopened, word};

/// Numbers may move by this without being worse: positions are printed to 0.1 of their unit.
const UNCHANGED: f64 = 0.05;
/// The same for numbers without a unit.
const UNCHANGED_RATIO: f64 = 0.005;
/// A file of version 1 told a place by so many subjects at most.
const TOLD_BY_PLACE: usize = 4;

/// The change that accepts a finding as it stands, in place of an earlier acceptance of it. An
/// empty reason is refused when the change is applied.
#[must_use]
pub fn accept(job: &Job, finding: &Finding, reason: &str) -> Edit {
    let mut accepted = without(job, finding);
    accepted.push(Acceptance {
        check: finding.check.to_owned(),
        about: finding.about.clone(),
        reason: reason.trim().to_owned(),
        severity: finding.severity,
        numbers: finding
            .numbers
            .iter()
            .map(|number| AcceptedNumber {
                label: number.name.to_owned(),
                value: number.value,
            })
            .collect(),
        by_place: false,
        lost_place: String::new(),
    });
    Edit::ReplaceAccepted(accepted)
}

/// The change that takes the acceptance of a finding back.
#[must_use]
pub fn take_back(job: &Job, finding: &Finding) -> Edit {
    Edit::ReplaceAccepted(without(job, finding))
}

/// All acceptances but those of a finding. One that was found again by its place only is of the
/// finding if it is the one that holds for it.
fn without(job: &Job, finding: &Finding) -> Vec<Acceptance> {
    let holds = |it: &Acceptance| {
        if it.by_place {
            is_at_place(it, finding) && finding.accepted.as_ref() == Some(&it.reason)
        } else {
            is_of(it, finding)
        }
    };
    let others = job.accepted.iter().filter(|it| !holds(it));
    others.cloned().collect()
}

/// Whether an acceptance is of this finding.
fn is_of(acceptance: &Acceptance, finding: &Finding) -> bool {
    acceptance.check == finding.check && has_key(acceptance) && acceptance.about == finding.about
}

/// Whether an acceptance knows its finding by what it is about, and not by its place only or not at
/// all.
const fn has_key(acceptance: &Acceptance) -> bool {
    !acceptance.by_place && !acceptance.about.is_empty()
}

/// Whether an acceptance from a file of version 1 can be of this finding: it told the place by the
/// first subjects, and one check could find two things there (a leaf too narrow and too low), which
/// the names of their numbers tell apart.
fn is_at_place(acceptance: &Acceptance, finding: &Finding) -> bool {
    let known = |number: &Number| before((number, 0), acceptance).is_some();
    acceptance.check == finding.check
        && (acceptance.about == finding.about || same_topics(&acceptance.about, finding))
        && (acceptance.numbers.is_empty()
            || finding.numbers.iter().any(known)
            || told_in_other_words(acceptance, finding))
}

/// Whether an acceptance has as many numbers as the finding, under the words of version 1.
fn told_in_other_words(acceptance: &Acceptance, finding: &Finding) -> bool {
    let numbers = acceptance.numbers.iter();
    acceptance.numbers.len() == finding.numbers.len()
        && numbers.map(Some).all(|it| of_other_words(it).is_some())
}

fn same_topics(about: &[Topic], finding: &Finding) -> bool {
    let told = finding.subjects.iter().filter_map(topic_of);
    let mut told: Vec<Topic> = told.take(TOLD_BY_PLACE).collect();
    told.sort();
    told.dedup();
    let mut about: Vec<Topic> = about.iter().cloned().map(door_of_leaf).collect();
    about.sort();
    about.dedup();
    told == about
}

/// A subject as version 1 could tell it; it had no words for obstacles and cards among them.
fn topic_of(subject: &Subject) -> Option<Topic> {
    match *subject {
        Subject::Box(id) => Some(Topic::Box(id)),
        Subject::Opening(_, id) => Some(Topic::Opening(id)),
        Subject::Door(_, id) => Some(Topic::Door(id)),
        Subject::Part(id) => Some(door_of_leaf(Topic::Part(id))),
        Subject::Bore(id) => Some(Topic::NumberedBore(id)),
        Subject::Obstacle(_) | Subject::Card(_) => None,
    }
}

/// Version 1 said "door" of a door and of its only leaf alike.
fn door_of_leaf(topic: Topic) -> Topic {
    match topic {
        Topic::Part(part) => match part.part {
            Part::Leaf {
                door,
                leaf: LeafId::Only,
            } => Topic::Door(door),
            _ => Topic::Part(part),
        },
        other => other,
    }
}

/// Marks the findings that were accepted and have not got worse. To those that have, a line says
/// what changed.
pub fn mark(job: &Job, findings: &mut [Arc<Finding>]) {
    if job.accepted.is_empty() {
        return;
    }
    let mut by_key: BTreeMap<(&str, &[Topic]), usize> = BTreeMap::new();
    for (index, it) in job.accepted.iter().enumerate() {
        if has_key(it) {
            by_key.insert((it.check.as_str(), it.about.as_slice()), index);
        }
    }
    for finding in findings.iter_mut() {
        let key = (finding.check, finding.about.as_slice());
        let index = by_key.get(&key).copied();
        if let Some(acceptance) = index.and_then(|index| job.accepted.get(index)) {
            mark_by(Arc::make_mut(finding), acceptance);
        }
    }
    for acceptance in job.accepted.iter().filter(|it| it.by_place) {
        mark_at_place(acceptance, findings);
    }
}

/// An acceptance by place holds for one finding there: the first that has not got worse. Where all
/// have, the first says so.
fn mark_at_place(acceptance: &Acceptance, findings: &mut [Arc<Finding>]) {
    let open = |it: &Finding| it.accepted.is_none() && is_at_place(acceptance, it);
    let as_it_was = findings
        .iter()
        .position(|it| open(it) && what_got_worse(it, acceptance).is_none());
    let first = as_it_was.or_else(|| findings.iter().position(|it| open(it)));
    if let Some(finding) = first.and_then(|index| findings.get_mut(index)) {
        mark_by(Arc::make_mut(finding), acceptance);
    }
}

fn mark_by(finding: &mut Finding, acceptance: &Acceptance) {
    match what_got_worse(finding, acceptance) {
        None => finding.accepted = Some(acceptance.reason.clone()),
        Some(what) => finding.reasons.push(what.into()),
    }
}

/// The accepted findings of a job that hold for none of these findings any longer: what they were
/// about is gone, or in other words than today's.
#[must_use]
pub fn without_finding<'a>(job: &'a Job, findings: &[Arc<Finding>]) -> Vec<&'a Acceptance> {
    let of_none = |it: &&Acceptance| {
        let holds =
            |finding: &Finding| is_of(it, finding) || it.by_place && is_at_place(it, finding);
        !findings.iter().any(|finding| holds(finding))
    };
    job.accepted.iter().filter(of_none).collect()
}

/// What has got worse since a finding was accepted; `None` when nothing has.
fn what_got_worse(finding: &Finding, acceptance: &Acceptance) -> Option<Reopened> {
    let reason = acceptance.reason.clone();
    if finding.severity > acceptance.severity {
        return Some(Reopened::Graver {
            reason,
            was: word::severity(acceptance.severity),
            is: word::severity(finding.severity),
        });
    }
    if finding.numbers.len() > acceptance.numbers.len() {
        return Some(Reopened::More { reason });
    }
    for (index, number) in finding.numbers.iter().enumerate() {
        let earlier = finding.numbers.iter().take(index);
        let nth = earlier.filter(|it| it.name == number.name).count();
        let same_place = acceptance.numbers.get(index);
        let was = before((number, nth), acceptance).or_else(|| of_other_words(same_place));
        let Some(was) = was else {
            return Some(Reopened::More { reason });
        };
        if is_worse(number, was) {
            return Some(Reopened::Worse {
                reason,
                number: NumberName(number.name),
                was: quantity(was, number.unit),
                is: quantity(number.value, number.unit),
            });
        }
    }
    None
}

/// What a number was when its finding was accepted: the one of its name, or the second or third one
/// where several have it.
fn before((number, nth): (&Number, usize), acceptance: &Acceptance) -> Option<f64> {
    let numbers = acceptance.numbers.iter();
    let mut of_its_name = numbers.filter(|it| plain(&it.label) == number.name);
    Some(of_its_name.nth(nth)?.value)
}

/// What stands at a number's place in an acceptance whose numbers have the words of version 1, some
/// of which said which edge or gap was meant.
fn of_other_words(at_its_place: Option<&AcceptedNumber>) -> Option<f64> {
    at_its_place
        .filter(|it| it.label.contains(' ') || it.label.contains(','))
        .map(|it| it.value)
}

/// Version 1 wrote the names of numbers in words: `largest offset, across`.
fn plain(label: &str) -> String {
    label.replace(", ", "_").replace(' ', "_")
}

/// A number in its unit, to be said.
fn quantity(value: f64, unit: &str) -> Value {
    match unit {
        "mm" => Value::Length(value),
        "kg" => Value::Measured(Measure::Mass, value),
        "N" => Value::Measured(Measure::Force, value),
        "N·m" => Value::Measured(Measure::Moment, value),
        "°" => Value::Angle(value),
        "°C" => Value::Temperature(value),
        "s" => Value::Time(value),
        "m/s" => Value::Speed(value),
        _ => Value::Number(value, 2),
    }
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
