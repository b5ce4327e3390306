//! Panels that have left the program: marking them as exported or drilled. Forgetting that needs no
//! placement, see [`flapwright_model::change`].

use std::collections::BTreeMap;

use flapwright_model::cabinet::WallBox;
use flapwright_model::change::{door_is_drilled, is_drilled};
use flapwright_model::door::BoreReference;
use flapwright_model::edit::Edit;
use flapwright_model::id::BoxId;
use flapwright_model::job::Job;
use flapwright_model::part::{Part, PartId};
use flapwright_model::record::{PanelRecord, RecordState};

use crate::inspection::{BoxReport, Inspection, PanelReport};
use crate::panel_difference::recorded_bore;
use crate::placement::place_box;
use crate::placement::taken_over::bores_now;

/// The change that records these panels as they stand in `inspection`, which is of this job.
///
/// A panel that is drilled stays so when its sheet is exported again. When a leaf is marked as
/// drilled, the bores of its whole door become those of an existing door
/// ([`BoreReference::AsDrilled`]), as they are now. Parts that the inspection lacks are passed over.
#[must_use]
pub fn record(job: &Job, inspection: &Inspection, parts: &[PartId], state: RecordState) -> Edit {
    let mut boxes: BTreeMap<BoxId, WallBox> = BTreeMap::new();
    for id in parts {
        let (Some(wall_box), Some(report)) =
            (job.box_by_id(id.box_id), inspection.report(id.box_id))
        else {
            continue;
        };
        let changed = boxes.entry(id.box_id).or_insert_with(|| wall_box.clone());
        record_in(changed, report, id.part, (state, &job.title_block.revision));
    }
    // In the order of the job.
    let edits = job.boxes.iter().filter_map(|before| {
        let with = boxes.remove(&before.id)?;
        (with != *before).then(|| Edit::replace_box(with))
    });
    Edit::Together(edits.collect())
}

fn record_in(
    wall_box: &mut WallBox,
    report: &BoxReport,
    part: Part,
    (state, revision): (RecordState, &str),
) {
    let Some(panel) = report.panel(part) else {
        return;
    };
    if state < RecordState::Drilled && is_drilled(wall_box, part) {
        return;
    }
    put(wall_box, panel_record(panel, state, revision.to_owned()));
    if let (RecordState::Drilled, Part::Leaf { door, .. }) = (state, part)
        && let Some(its) = wall_box.door_mut(door)
    {
        its.bores_follow = BoreReference::AsDrilled(bores_now(report, door));
    }
}

/// A box as its fittings need it, whatever is drilled already: bores of drilled panels and of doors
/// that are recorded as drilled are where the fitting wants them.
#[must_use]
pub fn as_needed(job: &Job, wall_box: &WallBox) -> BoxReport {
    let mut needed = wall_box.clone();
    for door in wall_box.doors() {
        if door_is_drilled(wall_box, door.id)
            && let Some(door) = needed.door_mut(door.id)
        {
            door.bores_follow = BoreReference::Fitting;
        }
    }
    needed.records.clear();
    place_box(job, &needed)
}

fn panel_record(panel: &PanelReport, state: RecordState, revision: String) -> PanelRecord {
    PanelRecord {
        part: panel.id.part,
        state,
        revision,
        size: panel.size,
        thickness: panel.thickness,
        bores: panel.bores.iter().map(recorded_bore).collect(),
    }
}

/// One record for a part: the new one in place of any other, in the order of parts.
fn put(wall_box: &mut WallBox, record: PanelRecord) {
    wall_box.records.retain(|it| it.part != record.part);
    wall_box.records.push(record);
    wall_box.records.sort_by_key(|it| it.part);
}
