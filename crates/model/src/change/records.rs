//! Records of panels that left the program: forgetting them, and taking them over into a job that
//! has changed in the meantime.

use std::collections::BTreeSet;

use crate::cabinet::WallBox;
use crate::door::BoreReference;
use crate::edit::Edit;
use crate::id::{BoxId, DoorId};
use crate::job::Job;
use crate::part::{Part, PartId};
use crate::record::RecordState;

/// Whether a panel is recorded as drilled.
#[must_use]
pub fn is_drilled(wall_box: &WallBox, part: Part) -> bool {
    wall_box
        .records
        .iter()
        .any(|it| it.part == part && it.state == RecordState::Drilled)
}

/// Whether a leaf of a door is recorded as drilled.
#[must_use]
pub fn door_is_drilled(wall_box: &WallBox, door: DoorId) -> bool {
    wall_box
        .records
        .iter()
        .any(|it| it.state == RecordState::Drilled && it.part.door() == Some(door))
}

/// Takes the record of one panel out of a box. The bores of a door whose last drilled leaf is
/// forgotten follow the fitting again.
pub fn forget_record(wall_box: &mut WallBox, part: Part) {
    let was_drilled = is_drilled(wall_box, part);
    wall_box.records.retain(|record| record.part != part);
    if let Part::Leaf { door, .. } = part
        && was_drilled
        && !door_is_drilled(wall_box, door)
        && let Some(door) = wall_box.door_mut(door)
    {
        door.bores_follow = BoreReference::Fitting;
    }
}

/// The change that forgets what is recorded of these panels, as [`forget_record`] does.
#[must_use]
pub fn forget_records(job: &Job, parts: &[PartId]) -> Option<Edit> {
    let boxes: BTreeSet<BoxId> = parts.iter().map(|part| part.box_id).collect();
    let edits = boxes.into_iter().filter_map(|id| {
        let before = job.box_by_id(id)?;
        let mut with = before.clone();
        for part in parts.iter().filter(|part| part.box_id == id) {
            forget_record(&mut with, part.part);
        }
        (with != *before).then(|| Edit::replace_box(with))
    });
    let edits: Vec<Edit> = edits.collect();
    (!edits.is_empty()).then_some(Edit::Together(edits))
}

/// A change that only makes records, made for the job as it was `then`, as a change of the job as
/// it is `now`: boxes that are still there get the records, and their doors the bores that they are
/// drilled with; all else stays as it is now.
#[must_use]
pub fn graft_records(edit: &Edit, then: &Job, now: &Job) -> Option<Edit> {
    let mut grafted = Vec::new();
    graft(edit, then, now, &mut grafted);
    (!grafted.is_empty()).then_some(Edit::Together(grafted))
}

fn graft(edit: &Edit, then: &Job, now: &Job, grafted: &mut Vec<Edit>) {
    match edit {
        Edit::Together(edits) => {
            for edit in edits {
                graft(edit, then, now, grafted);
            }
        }
        Edit::ReplaceBox { id, with } => {
            let (Some(before), Some(here)) = (then.box_by_id(*id), now.box_by_id(*id)) else {
                return;
            };
            let after = with_records_of(here, before, with);
            if after != *here {
                grafted.push(Edit::replace_box(after));
            }
        }
        Edit::Set { .. }
        | Edit::InsertBox { .. }
        | Edit::RemoveBox { .. }
        | Edit::ReplaceHead(_)
        | Edit::ReplaceMaterials(_)
        | Edit::ReplaceCards(_)
        | Edit::ReplaceAccepted(_) => {}
    }
}

fn with_records_of(here: &WallBox, before: &WallBox, with: &WallBox) -> WallBox {
    let mut after = here.clone();
    after.records.clone_from(&with.records);
    for door in with.doors() {
        let changed = before
            .door(door.id)
            .is_some_and(|it| it.bores_follow != door.bores_follow);
        if changed && let Some(here) = after.door_mut(door.id) {
            here.bores_follow.clone_from(&door.bores_follow);
        }
    }
    after
}
