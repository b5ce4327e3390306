//! The one function that says what is true of a job.

use std::cmp::Reverse;
use std::collections::BTreeMap;
use std::sync::Arc;

use flapwright_model::acceptance::Topic;
use flapwright_model::cabinet::WallBox;
use flapwright_model::id::BoxId;
use flapwright_model::job::Job;

use crate::accept;
use crate::checks::{BoxContext, look_at_box, look_at_job};
use crate::finding::Finding;
use crate::inspection::{BoxReport, Inspection};
use crate::placement::place_box;
use crate::remedy_safety::mark_unsafe;

/// Places every box and runs every check. Pure, and total on every job that validates.
#[must_use]
pub fn inspect(job: &Job) -> Inspection {
    Inspector::default().inspect(job)
}

/// Inspects a job again and again and does anew only what an edit touches: boxes that are as they
/// were keep what was found in them, unless the job's head, materials or cards changed. A box is
/// known again by its identity, wherever it stands in the job.
///
/// The answer is that of [`inspect`], whatever was inspected before.
#[derive(Debug, Default)]
pub struct Inspector {
    /// The job of the last time without its boxes: what all of them were looked at with.
    last: Option<Job>,
    /// What was found in each of its boxes.
    looks: BTreeMap<BoxId, BoxLook>,
}

/// One box, placed and looked at by itself.
#[derive(Debug)]
struct BoxLook {
    described: WallBox,
    report: Arc<BoxReport>,
    findings: Vec<Finding>,
}

impl Inspector {
    /// The same as [`inspect`], sooner.
    pub fn inspect(&mut self, job: &Job) -> Inspection {
        if !self
            .last
            .as_ref()
            .is_some_and(|last| same_for_every_box(last, job))
        {
            self.looks.clear();
            self.last = Some(head_of(job));
        }
        let mut before = std::mem::take(&mut self.looks);
        let mut boxes = Vec::with_capacity(job.boxes.len());
        let mut findings = Vec::new();
        for wall_box in &job.boxes {
            let look = match before.remove(&wall_box.id) {
                Some(look) if look.described == *wall_box => look,
                _ => look_at(job, wall_box),
            };
            boxes.push(Arc::clone(&look.report));
            findings.extend(look.findings.iter().cloned());
            self.looks.insert(wall_box.id, look);
        }
        look_at_job(job, &boxes, &mut findings);
        tell_apart(&mut findings);
        mark_unsafe(job, &boxes, &mut findings);
        accept::mark(job, &mut findings);
        // Stable: within one severity the order of boxes and checks stays.
        findings.sort_by_key(|finding| (finding.accepted.is_some(), Reverse(finding.severity)));
        Inspection { boxes, findings }
    }
}

fn look_at(job: &Job, wall_box: &WallBox) -> BoxLook {
    let report = Arc::new(place_box(job, wall_box));
    let mut findings = Vec::new();
    look_at_box(&BoxContext::new(job, wall_box, &report), &mut findings);
    BoxLook {
        described: wall_box.clone(),
        report,
        findings,
    }
}

/// Sees to it that no two findings have one key: those of one check that are about the very same
/// things are told apart by their order.
pub(crate) fn tell_apart(findings: &mut [Finding]) {
    let mut seen: BTreeMap<(&'static str, Vec<Topic>), u32> = BTreeMap::new();
    for finding in findings {
        let count = seen
            .entry((finding.check, finding.about.clone()))
            .and_modify(|count| *count += 1)
            .or_insert(1);
        if *count > 1 {
            finding.about.push(Topic::Another(*count));
        }
    }
}

/// A job without its boxes and what is recorded about them.
fn head_of(job: &Job) -> Job {
    Job {
        version: job.version,
        next_id: job.next_id,
        name: job.name.clone(),
        invented: job.invented,
        unit: job.unit,
        title_block: job.title_block.clone(),
        settings: job.settings.clone(),
        room: job.room.clone(),
        materials: job.materials.clone(),
        cards: job.cards.clone(),
        boxes: Vec::new(),
        accepted: Vec::new(),
    }
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
