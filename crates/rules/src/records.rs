//! Panels that have left the program: marking them as exported or drilled, and forgetting that.

use std::collections::BTreeMap;

use flapwright_model::cabinet::WallBox;
use flapwright_model::door::BoreReference;
use flapwright_model::edit::Edit;
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
    changed(job, parts, |wall_box, part, box_index| {
        let Some(report) = inspection.boxes.get(box_index) else {
            return;
        };
        let Some(panel) = report.panels.iter().find(|panel| panel.id.part == part) else {
            return;
        };
        if state < RecordState::Drilled && is_drilled(wall_box, part) {
            return;
        }
        let revision = job.title_block.revision.clone();
        put(wall_box, panel_record(panel, state, revision));
        if let (RecordState::Drilled, Part::Leaf { opening, .. }) = (state, part)
            && let Some(door) = door_mut(wall_box, opening)
        {
            door.bores_hang_on = BoreReference::AsDrilled(bores_now(report, opening));
        }
    })
}

/// The change that forgets what is recorded of these panels. The bores of a door whose last drilled
/// leaf is forgotten hang on the fitting again.
#[must_use]
pub fn forget(job: &Job, parts: &[PartId]) -> Edit {
    changed(job, parts, |wall_box, part, _| forget_in(wall_box, part))
}

/// Takes the records of one panel out of a box.
pub(crate) fn forget_in(wall_box: &mut WallBox, part: Part) {
    let was_drilled = is_drilled(wall_box, part);
    wall_box.records.retain(|record| record.part != part);
    if let Part::Leaf { opening, .. } = part
        && was_drilled
        && !leaf_is_drilled(wall_box, opening)
        && let Some(door) = door_mut(wall_box, opening)
    {
        door.bores_hang_on = BoreReference::Fitting;
    }
}

/// Whether a panel is recorded as drilled.
#[must_use]
pub fn is_drilled(wall_box: &WallBox, part: Part) -> bool {
    wall_box
        .records
        .iter()
        .any(|it| it.part == part && it.state == RecordState::Drilled)
}

/// Whether a leaf of the door of an opening is recorded as drilled.
#[must_use]
pub(crate) fn leaf_is_drilled(wall_box: &WallBox, opening: usize) -> bool {
    wall_box.records.iter().any(|it| {
        it.state == RecordState::Drilled
            && matches!(it.part, Part::Leaf { opening: of, .. } if of == opening)
    })
}

/// A box as its fittings need it, whatever is drilled already: bores of drilled panels and of doors
/// that are recorded as drilled are where the fitting wants them.
#[must_use]
pub fn as_needed(job: &Job, box_index: usize, wall_box: &WallBox) -> BoxReport {
    let mut needed = wall_box.clone();
    for opening in 0..needed.openings.len() {
        if leaf_is_drilled(wall_box, opening)
            && let Some(door) = door_mut(&mut needed, opening)
        {
            door.bores_hang_on = BoreReference::Fitting;
        }
    }
    needed.records.clear();
    place_box(job, box_index, &needed)
}

fn door_mut(wall_box: &mut WallBox, opening: usize) -> Option<&mut flapwright_model::door::Door> {
    wall_box.openings.get_mut(opening)?.door.as_mut()
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

/// One change for all boxes that the parts are of.
fn changed(job: &Job, parts: &[PartId], change: impl Fn(&mut WallBox, Part, usize)) -> Edit {
    let mut boxes: BTreeMap<usize, WallBox> = BTreeMap::new();
    for id in parts {
        let Some(wall_box) = job.boxes.get(id.box_index) else {
            continue;
        };
        let changed = boxes
            .entry(id.box_index)
            .or_insert_with(|| wall_box.clone());
        change(changed, id.part, id.box_index);
    }
    let edits = boxes
        .into_iter()
        .filter(|(index, with)| job.boxes.get(*index) != Some(with))
        .map(|(index, with)| Edit::ReplaceBox {
            index,
            with: Box::new(with),
        })
        .collect();
    Edit::Together(edits)
}
