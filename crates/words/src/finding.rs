//! Findings and remedies as text.

use flapwright_model::acceptance::Topic;
use flapwright_model::id::BoxId;
use flapwright_model::message::Value;
use flapwright_model::part::Subject;
use flapwright_rules::finding::{Finding, Remedy};
use fluent_bundle::FluentArgs;

use crate::place::places;
use crate::speaker::Speaker;

/// What is wrong, where and by how much: the place, then the message.
#[must_use]
pub fn headline(finding: &Finding, speaker: &Speaker<'_>) -> String {
    let place = places(main_subject(finding).as_slice(), speaker);
    with_place(&place, finding, speaker)
}

/// The same where the box is said already, on a sheet of one of its panels: only another box is
/// named.
#[must_use]
pub fn headline_in_box(finding: &Finding, of_box: BoxId, speaker: &Speaker<'_>) -> String {
    let subject = main_subject(finding);
    if subject.and_then(Subject::box_id) != Some(of_box) {
        return headline(finding, speaker);
    }
    let place = subject.map(|it| speaker.value(&Value::PlaceWithin(it)));
    with_place(&place.unwrap_or_default(), finding, speaker)
}

/// What is wrong and by how much, without the place: for where that is said already.
#[must_use]
pub fn message(finding: &Finding, speaker: &Speaker<'_>) -> String {
    speaker.say(&finding.message)
}

/// Why, bore by bore, and what to look at: one line each.
#[must_use]
pub fn reasons(finding: &Finding, speaker: &Speaker<'_>) -> Vec<String> {
    let reasons = finding.reasons.iter();
    reasons.map(|reason| speaker.say(reason)).collect()
}

/// All places of a finding, the most important first. A finding about a card is at the card,
/// whichever doors use it.
#[must_use]
pub fn place(finding: &Finding, speaker: &Speaker<'_>) -> String {
    match card_of(finding) {
        Some(card) => places(&[card], speaker),
        None => places(&finding.subjects, speaker),
    }
}

/// The text of a remedy's button.
#[must_use]
pub fn remedy(remedy: &Remedy, speaker: &Speaker<'_>) -> String {
    speaker.say(&remedy.kind)
}

/// What a remedy changes, as one sentence.
#[must_use]
pub fn effect(remedy: &Remedy, speaker: &Speaker<'_>) -> String {
    let effects = remedy.effects.iter();
    speaker.clauses(effects.map(|it| speaker.say(it)))
}

fn with_place(place: &str, finding: &Finding, speaker: &Speaker<'_>) -> String {
    let mut arguments = FluentArgs::new();
    arguments.set("place", place);
    arguments.set("message", message(finding, speaker));
    speaker.text("finding.headline", &arguments)
}

/// What a headline names as the place: others stand in the message.
fn main_subject(finding: &Finding) -> Option<Subject> {
    card_of(finding).or_else(|| finding.subjects.first().copied())
}

fn card_of(finding: &Finding) -> Option<Subject> {
    finding.about.iter().find_map(|topic| match topic {
        Topic::Card(id) => Some(Subject::Card(*id)),
        _ => None,
    })
}
