//! The one function that says what is true of a job.

use std::cmp::Reverse;
use std::sync::Arc;

use flapwright_model::job::Job;

use crate::accept;
use crate::checks::{BoxContext, look_at_box, look_at_job};
use crate::finding::Finding;
use crate::inspection::{BoxReport, Inspection};
use crate::place_words::PlaceWords;
use crate::placement::place_box;
use crate::remedy_safety::mark_unsafe;

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
    /// The job of the last time, as far as boxes are looked at with it.
    last: Option<Job>,
    /// What was found in each of its boxes, as many as it has.
    looks: Vec<BoxLook>,
}

/// One box, placed and looked at by itself.
#[derive(Debug)]
struct BoxLook {
    report: Arc<BoxReport>,
    findings: Vec<Finding>,
}

impl Inspector {
    /// The same as [`inspect`], sooner.
    pub fn inspect(&mut self, job: &Job) -> Inspection {
        match &mut self.last {
            Some(last) if same_for_every_box(last, job) => {
                last.boxes.truncate(job.boxes.len());
                self.looks.truncate(job.boxes.len());
                for (index, wall_box) in job.boxes.iter().enumerate() {
                    match (last.boxes.get_mut(index), self.looks.get_mut(index)) {
                        (Some(before), Some(_)) if before == wall_box => {}
                        (Some(before), Some(look)) => {
                            before.clone_from(wall_box);
                            *look = look_at(job, index);
                        }
                        _ => {
                            last.boxes.push(wall_box.clone());
                            self.looks.push(look_at(job, index));
                        }
                    }
                }
            }
            _ => {
                self.looks = (0..job.boxes.len())
                    .map(|index| look_at(job, index))
                    .collect();
                self.last = Some(job.clone());
            }
        }
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
        PlaceWords::of(&boxes).name(&mut findings);
        mark_unsafe(job, &boxes, &mut findings);
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
