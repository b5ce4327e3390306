//! Which remedies may be applied unseen, and applying all of them.

use std::collections::BTreeSet;
use std::sync::Arc;

use flapwright_model::acceptance::Topic;
use flapwright_model::edit::{Edit, apply};
use flapwright_model::job::Job;
use flapwright_model::part::Subject;
use flapwright_model::validate::validate_box;

use crate::checks::{BoxContext, look_at_box, look_at_job};
use crate::finding::{Finding, Remedy, Safety, Severity};
use crate::inspect::{Inspector, inspect, tell_apart};
use crate::inspection::{BoxReport, Inspection};
use crate::message::RemedyKind;
use crate::placement::place_box;

/// Takes the mark "safe" off every remedy that is not: one is safe only if (stops, cautions) of its
/// box falls in dictionary order, no stop comes up that was not there before, in this box or
/// between boxes, and the finding itself is gone.
pub(crate) fn mark_unsafe(job: &Job, boxes: &[Arc<BoxReport>], findings: &mut [Finding]) {
    let mut trial = None;
    let verdicts: Vec<Vec<bool>> = findings
        .iter()
        .map(|finding| {
            finding
                .remedies
                .iter()
                .map(|remedy| {
                    remedy.is_safe()
                        && trial
                            .get_or_insert_with(|| RemedyTrial::new(job, boxes, findings))
                            .is_safe(finding, &remedy.edit)
                })
                .collect()
        })
        .collect();
    for (finding, verdicts) in findings.iter_mut().zip(verdicts) {
        for (remedy, safe) in finding.remedies.iter_mut().zip(verdicts) {
            if remedy.is_safe() && !safe {
                remedy.safety = Safety::NeedsALook;
            }
        }
    }
}

/// A job in which remedies are tried out, one after the other.
struct RemedyTrial<'a> {
    /// The job; each trial puts back what it changes.
    job: Job,
    boxes: Vec<Arc<BoxReport>>,
    before: &'a [Finding],
    /// The stops before any remedy.
    stops: BTreeSet<(&'a str, &'a [Topic])>,
}

impl<'a> RemedyTrial<'a> {
    fn new(job: &Job, boxes: &[Arc<BoxReport>], before: &'a [Finding]) -> Self {
        Self {
            job: job.clone(),
            boxes: boxes.to_vec(),
            before,
            stops: before.iter().filter(is_stop).map(key).collect(),
        }
    }

    fn is_safe(&mut self, finding: &Finding, edit: &Edit) -> bool {
        let Edit::ReplaceBox { id, with } = edit else {
            return false;
        };
        let found = self.job.boxes.iter().position(|it| it.id == *id);
        let Some(index) = found.filter(|_| validate_box(&self.job, with).is_empty()) else {
            return false;
        };
        let described = std::mem::replace(&mut self.job.boxes[index], (**with).clone());
        let changed = Arc::new(place_box(&self.job, with));
        let report = std::mem::replace(&mut self.boxes[index], changed);
        let safe = self.is_better(index, finding);
        self.job.boxes[index] = described;
        self.boxes[index] = report;
        safe
    }

    /// Whether the job as it is now is better for a change of one box.
    fn is_better(&self, index: usize, finding: &Finding) -> bool {
        let wall_box = &self.job.boxes[index];
        let context = BoxContext::new(&self.job, wall_box, &self.boxes[index]);
        let mut after = Vec::new();
        look_at_box(&context, &mut after);
        look_at_job(&self.job, &self.boxes, &mut after);
        tell_apart(&mut after);
        // Findings of the box itself and those between boxes: what other boxes have in themselves
        // is the same before and after.
        let of_box = |it: &&Finding| {
            let mut subjects = it.subjects.iter();
            subjects.any(|subject| subject.box_id() == Some(wall_box.id))
        };
        let after_of_box: Vec<&Finding> = after.iter().filter(of_box).collect();
        let before_of_box: Vec<&Finding> = self.before.iter().filter(of_box).collect();
        count(&after_of_box) < count(&before_of_box)
            && after
                .iter()
                .filter(is_stop)
                .all(|it| self.stops.contains(&key(it)))
            && !after.iter().any(|it| key(it) == key(finding))
    }
}

fn is_stop(finding: &&Finding) -> bool {
    finding.severity == Severity::Stop
}

fn key(finding: &Finding) -> (&str, &[Topic]) {
    (finding.check, finding.about.as_slice())
}

fn count(findings: &[&Finding]) -> (usize, usize) {
    let count = |severity| findings.iter().filter(|it| it.severity == severity).count();
    (count(Severity::Stop), count(Severity::Caution))
}

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
    /// And what is true of it.
    pub inspection: Inspection,
}

/// Applies safe remedies of findings that are not accepted, the gravest finding first, until none
/// is left. Ends, because every step makes (stops, cautions) less; no step makes a new stop.
#[must_use]
pub fn apply_safe_remedies(job: &Job) -> SafeRun {
    let mut inspector = Inspector::default();
    let mut run = SafeRun {
        applied: Vec::new(),
        edit: None,
        job: job.clone(),
        inspection: inspector.inspect(job),
    };
    let mut edits = Vec::new();
    while let Some((applied, edit)) = first_safe(&run.job, &run.inspection) {
        if apply(&mut run.job, edit.clone()).is_err() {
            break;
        }
        edits.push(edit);
        run.applied.push(applied);
        run.inspection = inspector.inspect(&run.job);
    }
    if !edits.is_empty() {
        run.edit = Some(Edit::Together(edits));
    }
    run
}

/// Of the gravest finding with a safe remedy the remedy that leaves the fewest stops, then cautions;
/// the first of several alike.
fn first_safe(job: &Job, inspection: &Inspection) -> Option<(AppliedRemedy, Edit)> {
    let finding = inspection
        .findings
        .iter()
        .find(|it| it.accepted.is_none() && it.remedies.iter().any(Remedy::is_safe))?;
    let left = |edit: &Edit| {
        let mut after = job.clone();
        apply(&mut after, edit.clone()).ok()?;
        let after = inspect(&after);
        Some((after.open(Severity::Stop), after.open(Severity::Caution)))
    };
    let (_, remedy) = finding
        .remedies
        .iter()
        .filter(|remedy| remedy.is_safe())
        .filter_map(|remedy| Some((left(&remedy.edit)?, remedy)))
        .min_by_key(|(left, _)| *left)?;
    let applied = AppliedRemedy {
        check: finding.check,
        subjects: finding.subjects.clone(),
        kind: remedy.kind.clone(),
    };
    Some((applied, remedy.edit.clone()))
}
