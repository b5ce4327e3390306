//! Applying all safe remedies.

use std::cmp::Reverse;
use std::collections::BTreeSet;
use std::sync::Arc;

use flapwright_model::acceptance::Topic;
use flapwright_model::edit::{Edit, apply};
use flapwright_model::id::BoxId;
use flapwright_model::job::Job;
use flapwright_model::part::Subject;
use flapwright_rules::accept;
use flapwright_rules::finding::{Finding, Remedy, Severity};
use flapwright_rules::inspection::Inspection;
use flapwright_rules::message::RemedyKind;

use crate::anew::Anew;
use crate::answer::Answer;
use crate::order;

/// One remedy that was applied.
#[derive(Debug, Clone, PartialEq)]
pub struct AppliedRemedy {
    /// Name of the check whose finding it cleared.
    pub check: &'static str,
    /// Where the finding was.
    pub subjects: Vec<Subject>,
    /// What was done.
    pub kind: RemedyKind,
}

/// What becomes of a job when every safe remedy is applied.
#[derive(Debug, Clone)]
pub struct SafeRun {
    /// What was done, in this order.
    pub applied: Vec<AppliedRemedy>,
    /// All of it as one change; `None` when nothing was done.
    pub edit: Option<Edit>,
    /// The job afterwards.
    pub job: Job,
    /// And what is true of it, with no remedy judged.
    pub inspection: Inspection,
}

/// Applies safe remedies of findings that are not accepted, the gravest finding first, until none
/// is left. Ends, because every step makes (stops, cautions) less; no step makes a new stop.
#[must_use]
pub fn apply_safe_remedies(job: &Job) -> SafeRun {
    Answer::of(job).apply_safe_remedies(job)
}

/// Where a finding stands in the list, and its key. A finding of one box stands before those between
/// boxes, in the order of boxes and checks.
type Place = (
    Reverse<Severity>,
    bool,
    [usize; 3],
    &'static str,
    Vec<Topic>,
    (BoxId, BoxId),
);

impl Answer {
    /// The same for the job that this answer is of.
    #[must_use]
    pub fn apply_safe_remedies(mut self, job: &Job) -> SafeRun {
        let mut job = job.clone();
        let (mut applied, mut edits) = (Vec::new(), Vec::new());
        let mut open = BTreeSet::new();
        let all: Vec<BoxId> = self.known.keys().copied().collect();
        self.note_candidates(&job, &all, &mut open);
        while let Some(place) = open.pop_first() {
            let Some(finding) = self.candidate(&place) else {
                continue;
            };
            let Some(remedy) = self.best_safe(&job, &finding) else {
                continue;
            };
            let Some(id) = box_of(&remedy.edit) else {
                continue;
            };
            if apply(&mut job, remedy.edit.clone()).is_err() {
                continue;
            }
            edits.push(remedy.edit.clone());
            applied.push(AppliedRemedy {
                check: finding.check,
                subjects: finding.subjects.clone(),
                kind: remedy.kind.clone(),
            });
            let near = self.patch_box(&job, id);
            self.note_candidates(&job, &near, &mut open);
        }
        self.update(&job);
        SafeRun {
            applied,
            edit: (!edits.is_empty()).then_some(Edit::Together(edits)),
            job,
            inspection: self.into_inspection(),
        }
    }

    /// Takes in another description of one box; the boxes whose findings may be others now.
    fn patch_box(&mut self, job: &Job, id: BoxId) -> Vec<BoxId> {
        let near = self.patch(job, &Anew::default(), |it| it == id);
        near.into_iter().collect()
    }

    /// Adds the open findings of boxes and between them that claim a safe remedy.
    fn note_candidates(&self, job: &Job, boxes: &[BoxId], open: &mut BTreeSet<Place>) {
        let mut noted = Vec::new();
        for &id in boxes {
            let own = self.known.get(&id).map(|it| ((id, id), &it.found, false));
            let pairs = self.pairs.range((id, id)..).take_while(|it| it.0.0 == id);
            let pairs = pairs.map(|(pair, found)| (*pair, found, true));
            for (home, found, between) in own.into_iter().chain(pairs) {
                let claims = found.iter().filter(|it| claims_safe(it)).cloned();
                noted.extend(claims.map(|it| (home, it, between)));
            }
        }
        let mut marked: Vec<Arc<Finding>> = noted.iter().map(|it| Arc::clone(&it.1)).collect();
        accept::mark(job, &mut marked);
        let still_open = noted.into_iter().zip(marked);
        let still_open = still_open.filter(|(_, marked)| marked.accepted.is_none());
        open.extend(still_open.map(|((home, finding, between), _)| {
            let turns = if between {
                let (check, [first, second], _) = order::between(&finding, &self.known);
                [check, first, second]
            } else {
                let turn = self.known.get(&home.0).map_or(0, |it| it.turn);
                [turn, order::turn(finding.check), 0]
            };
            let severity = Reverse(finding.severity);
            let about = finding.about.clone();
            (severity, between, turns, finding.check, about, home)
        }));
    }

    /// The finding at a place, if it is still there.
    fn candidate(&self, (_, between, _, check, about, home): &Place) -> Option<Arc<Finding>> {
        let found = if *between {
            self.pairs.get(home)?
        } else {
            &self.known.get(&home.0)?.found
        };
        let mut found = found.iter();
        let found = found.find(|it| it.check == *check && it.about == *about)?;
        claims_safe(found).then(|| Arc::clone(found))
    }

    /// Of the safe remedies of a finding the one that leaves the fewest stops, then cautions; the
    /// first of several alike.
    fn best_safe(&self, job: &Job, finding: &Finding) -> Option<Remedy> {
        let claimed = finding.remedies.iter().filter(|it| it.claims_safe());
        let judged = claimed.filter_map(|remedy| {
            let trial = self.tried(&remedy.edit)?;
            if !trial.is_safe(finding, remedy) {
                return None;
            }
            let [was, will] = [trial.before, trial.after].map(|it| count_open(job, it));
            Some(((will.0 - was.0, will.1 - was.1), remedy))
        });
        judged.min_by_key(|it| it.0).map(|it| it.1.clone())
    }
}

fn claims_safe(finding: &Arc<Finding>) -> bool {
    finding.remedies.iter().any(Remedy::claims_safe)
}

const fn box_of(edit: &Edit) -> Option<BoxId> {
    match edit {
        Edit::ReplaceBox { id, .. } => Some(*id),
        _ => None,
    }
}

/// How many of these are open stops and cautions.
fn count_open(job: &Job, mut findings: Vec<Arc<Finding>>) -> (isize, isize) {
    accept::mark(job, &mut findings);
    let count = |severity| {
        let open = findings.iter().filter(|it| it.accepted.is_none());
        open.filter(|it| it.severity == severity)
            .count()
            .cast_signed()
    };
    (count(Severity::Stop), count(Severity::Caution))
}
