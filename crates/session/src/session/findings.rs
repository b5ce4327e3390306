//! What is done to findings: selected, remedied, accepted, taken back.

use flapwright_model::door::Door;
use flapwright_model::id::{BoxId, OpeningId};
use flapwright_model::part::Subject;
use flapwright_rules::accept::{accept, take_back};
use flapwright_rules::finding::Finding;
use flapwright_words::Speaker;

use super::Session;
use crate::finding_key::FindingKey;
use crate::outcome::Outcome;
use crate::selection::SideTab;

impl Session {
    pub(super) fn apply_remedy(&mut self, key: &FindingKey, remedy: usize) -> Outcome {
        let finding = self.document.finding(key);
        let Some(remedy) = finding.and_then(|it| it.remedies.get(remedy)) else {
            return Outcome::Nothing;
        };
        let speaker = Speaker::without_names(self.job().unit);
        let label = flapwright_words::remedy(remedy, &speaker);
        let edit = remedy.edit.clone();
        self.change(label, edit, None)
    }

    pub(super) fn apply_safe(&mut self) -> Outcome {
        let run = self.document.with_safe_remedies();
        let Some(edit) = run.edit else {
            return Outcome::Nothing;
        };
        let label = match run.applied.len() {
            1 => "apply 1 safe remedy".to_owned(),
            many => format!("apply {many} safe remedies"),
        };
        match self.change(label, edit, None) {
            Outcome::Done(_) => Outcome::Remedied(run.applied),
            refused => refused,
        }
    }

    /// The reason that a finding was accepted with, when it is accepted or came back since.
    #[must_use]
    pub fn reason_before(&self, finding: &Finding) -> Option<&str> {
        let accepted = &self.job().accepted;
        let before = accepted
            .iter()
            .find(|it| it.check == finding.check && it.about == finding.about);
        before.map(|it| it.reason.as_str())
    }

    pub(super) fn accept(&mut self, key: &FindingKey, reason: &str) -> Outcome {
        let Some(finding) = self.document.finding(key) else {
            return Outcome::Nothing;
        };
        if reason.trim().is_empty() {
            return Outcome::Nothing;
        }
        let label = format!(
            "accept {}: {}",
            finding.check,
            self.document.place_of(finding)
        );
        let edit = accept(self.document.job(), finding, reason);
        self.change(label, edit, None)
    }

    pub(super) fn take_back(&mut self, key: &FindingKey) -> Outcome {
        let Some(finding) = self.document.finding(key) else {
            return Outcome::Nothing;
        };
        let label = format!(
            "take back: {}, {}",
            finding.check,
            self.document.place_of(finding)
        );
        let edit = take_back(self.document.job(), finding);
        self.change(label, edit, None)
    }

    pub(super) fn select_finding(&mut self, key: Option<FindingKey>) -> Outcome {
        let found = key.as_ref().and_then(|key| self.document.finding(key));
        let subject = found.and_then(|it| it.subjects.first().copied());
        self.selection.finding = key;
        let Some(subject) = subject else {
            return Outcome::Shown;
        };
        let box_id = subject.box_id().or_else(|| self.box_on(subject));
        if let Some(id) = box_id {
            self.selection.show_box(id);
            if let Some(opening) = self.opening_at(id, subject) {
                self.selection.opening = Some(opening);
            }
        }
        self.selection.tab = SideTab::Findings;
        Outcome::Shown
    }

    /// The first box that has a door on a card; nothing else is of the job as a whole and has a box.
    fn box_on(&self, subject: Subject) -> Option<BoxId> {
        let Subject::Card(card) = subject else {
            return None;
        };
        let is_on = |door: &&Door| door.fitting.as_ref().is_some_and(|it| it.card == card);
        let mut boxes = self.job().boxes.iter();
        let found = boxes.find(|it| it.doors().iter().any(is_on))?;
        Some(found.id)
    }

    /// The opening that a finding about that is shown at.
    fn opening_at(&self, id: BoxId, subject: Subject) -> Option<OpeningId> {
        let door = match subject {
            Subject::Opening(_, opening) => return Some(opening),
            Subject::Door(_, door) => Some(door),
            Subject::Part(part) => part.part.door(),
            Subject::Bore(bore) => bore.part.part.door(),
            Subject::Box(_) | Subject::Obstacle(_) | Subject::Card(_) => None,
        };
        let wall_box = self.job().box_by_id(id)?;
        Some(wall_box.opening_of(door?)?.id)
    }

    /// Goes through the open findings, around the ends of the list; the accepted ones are left out.
    pub(super) fn step_finding(&mut self, forward: bool) -> Outcome {
        let findings = self.inspection().findings.iter();
        let open: Vec<&Finding> = findings
            .map(|it| &**it)
            .filter(|it| it.accepted.is_none())
            .collect();
        let selected = self.selection.finding.as_ref();
        let now = selected.and_then(|key| open.iter().position(|it| key.names(it)));
        let last = open.len().saturating_sub(1);
        let index = match (now, forward) {
            (None, true) => 0,
            (Some(index), true) if index == last => 0,
            (Some(index), true) => index + 1,
            (None | Some(0), false) => last,
            (Some(index), false) => index - 1,
        };
        let key = open.get(index).map(|it| FindingKey::of(it));
        self.select_finding(key)
    }
}
