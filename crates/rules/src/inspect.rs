//! The one function that says what is true of a job.

use std::cmp::Reverse;

use flapwright_model::cabinet::WallBox;
use flapwright_model::edit::Edit;
use flapwright_model::job::Job;
use flapwright_model::validate::validate_box;

use crate::checks::{BoxContext, look_at_box, look_at_job};
use crate::finding::{Finding, Severity};
use crate::inspection::{BoxReport, Inspection};
use crate::placement::place_box;

/// Places every box and runs every check. Pure, and total on every job that validates.
#[must_use]
pub fn inspect(job: &Job) -> Inspection {
    let boxes: Vec<BoxReport> = job
        .boxes
        .iter()
        .enumerate()
        .map(|(index, it)| place_box(job, index, it))
        .collect();
    let mut findings = Vec::new();
    for (wall_box, report) in job.boxes.iter().zip(&boxes) {
        look_at_box(
            &BoxContext {
                job,
                wall_box,
                report,
            },
            &mut findings,
        );
    }
    look_at_job(job, &boxes, &mut findings);
    judge_remedies(job, &mut findings);
    // Stable: within one severity the order of boxes and checks stays.
    findings.sort_by_key(|finding| Reverse(finding.severity));
    Inspection { boxes, findings }
}

/// Takes the mark "safe" off every remedy after which stops and cautions together are not fewer.
///
/// A remedy is safe only if (stops, cautions) falls in dictionary order. Remedies change one box,
/// so only that box is looked at again; what spans boxes is no remedy's business.
fn judge_remedies(job: &Job, findings: &mut [Finding]) {
    for remedy in findings
        .iter_mut()
        .flat_map(|finding| &mut finding.remedies)
    {
        if !remedy.safe {
            continue;
        }
        remedy.safe = match &remedy.edit {
            Edit::ReplaceBox { index, with } => job.boxes.get(*index).is_some_and(|before| {
                validate_box(job, *index, with).is_empty()
                    && count_in_box(job, *index, with) < count_in_box(job, *index, before)
            }),
            Edit::InsertBox { .. }
            | Edit::RemoveBox { .. }
            | Edit::ReplaceHead(_)
            | Edit::ReplaceMaterials(_)
            | Edit::ReplaceCards(_)
            | Edit::Together(_) => false,
        };
    }
}

/// Number of stops and of cautions in a box, were it described like this.
fn count_in_box(job: &Job, box_index: usize, wall_box: &WallBox) -> (usize, usize) {
    let mut findings = Vec::new();
    let report = place_box(job, box_index, wall_box);
    look_at_box(
        &BoxContext {
            job,
            wall_box,
            report: &report,
        },
        &mut findings,
    );
    let count = |severity| findings.iter().filter(|it| it.severity == severity).count();
    (count(Severity::Stop), count(Severity::Caution))
}
