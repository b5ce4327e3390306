//! The one function that says what is true of a job.

use std::cmp::Reverse;
use std::sync::Arc;

use flapwright_model::job::Job;

use crate::accept;
use crate::checks::{BoxContext, look_at_box, look_at_job};
use crate::finding::Finding;
use crate::inspection::{BoxReport, Inspection};
use crate::judge::judge_remedies;
use crate::place_words::place_words;
use crate::placement::place_box;

/// Places every box and runs every check. Pure, and total on every job that validates.
#[must_use]
pub fn inspect(job: &Job) -> Inspection {
    Inspector::default().inspect(job)
}

/// Inspects a job again and again and does anew only what an edit touches: boxes that are as they
/// were keep what was found in them, unless the job's head, materials or cards changed.
///
/// The answer is that of [`inspect`], whatever was inspected before.
#[derive(Debug, Default)]
pub struct Inspector {
    /// The job of the last time.
    last: Option<Job>,
    /// What was found in each of its boxes.
    looks: Vec<BoxLook>,
}

/// One box, placed and looked at by itself.
#[derive(Debug, Clone)]
struct BoxLook {
    report: Arc<BoxReport>,
    findings: Vec<Finding>,
}

impl Inspector {
    /// The same as [`inspect`], sooner.
    pub fn inspect(&mut self, job: &Job) -> Inspection {
        let before = self
            .last
            .take()
            .filter(|last| same_for_every_box(last, job));
        let old = std::mem::take(&mut self.looks);
        self.looks = job
            .boxes
            .iter()
            .enumerate()
            .map(|(index, wall_box)| {
                let unchanged = before
                    .as_ref()
                    .is_some_and(|last| last.boxes.get(index) == Some(wall_box));
                match old.get(index) {
                    Some(look) if unchanged => look.clone(),
                    _ => look_at(job, index),
                }
            })
            .collect();
        self.last = Some(job.clone());
        let boxes: Vec<Arc<BoxReport>> = self
            .looks
            .iter()
            .map(|look| Arc::clone(&look.report))
            .collect();
        let mut findings: Vec<Finding> = self
            .looks
            .iter()
            .flat_map(|look| look.findings.iter().cloned())
            .collect();
        look_at_job(job, &boxes, &mut findings);
        for finding in &mut findings {
            finding.place = place_words(&boxes, &finding.subjects);
        }
        judge_remedies(job, &boxes, &mut findings);
        accept::mark(job, &mut findings);
        // Stable: within one severity the order of boxes and checks stays.
        findings.sort_by_key(|finding| (finding.accepted.is_some(), Reverse(finding.severity)));
        Inspection { boxes, findings }
    }
}

fn look_at(job: &Job, index: usize) -> BoxLook {
    let wall_box = &job.boxes[index];
    let report = Arc::new(place_box(job, index, wall_box));
    let mut findings = Vec::new();
    look_at_box(&BoxContext::new(job, wall_box, &report), &mut findings);
    BoxLook { report, findings }
}

/// Whether everything that a box is looked at with is the same in both jobs.
fn same_for_every_box(a: &Job, b: &Job) -> bool {
    a.unit == b.unit
        && a.settings == b.settings
        && a.room == b.room
        && a.materials == b.materials
        && a.cards == b.cards
        && a.title_block.revision == b.title_block.revision
}
