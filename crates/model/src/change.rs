//! Named changes: what joinery needs beyond setting a number, each as an [`Edit`] that is applied
//! like any other.
//!
//! All are pure functions of the job and the identities of what is meant. What stays keeps its
//! identity, so that records, accepted findings and bores of a door outlive a shelf that comes or
//! goes; what is new gets identities that the job has not used. `None` where what is meant is not
//! there, or nothing is to be changed.

mod box_structure;
mod door_structure;
mod duplicate_box;
mod hold_shelf;
mod leaves;
mod long_wall;
mod new_box;
mod obstacle;
mod records;
mod shelf;
mod split;

pub use box_structure::{BackKind, set_back, set_frame, set_system_rows};
pub use door_structure::{
    FitKind, FollowKind, add_bore, add_door, remove_bore, remove_door, set_bores_follow, set_fit,
    set_fitting, set_framed, set_handle, set_handle_screws, set_typed_mass,
};
pub use duplicate_box::duplicate_box;
pub use hold_shelf::{make_shelf_fixed, make_shelf_loose};
pub use leaves::{JOINT_GAP, leaves_for};
pub use long_wall::long_wall;
pub use new_box::{add_box, first_size, plain_door, plain_leaf, usual_material};
pub use obstacle::{add_obstacle, remove_obstacle};
pub use records::{door_is_drilled, forget_record, forget_records, graft_records, is_drilled};
pub use shelf::{USUAL_GAP, add_fixed_shelf, add_loose_shelf, remove_shelf};

use crate::cabinet::WallBox;
use crate::door::Door;
use crate::edit::Edit;
use crate::id::{BoxId, DoorId, Ids};
use crate::job::Job;

/// The change of one box that `change` makes; it says whether there is one.
fn changed_box(
    job: &Job,
    id: BoxId,
    change: impl FnOnce(&mut WallBox, &mut Ids) -> Option<()>,
) -> Option<Edit> {
    let mut with = job.box_by_id(id)?.clone();
    change(&mut with, &mut job.next_ids())?;
    Some(Edit::replace_box(with))
}

/// The change of one door that `change` makes.
fn changed_door(
    job: &Job,
    id: BoxId,
    door: DoorId,
    change: impl FnOnce(&mut Door) -> Option<()>,
) -> Option<Edit> {
    changed_box(job, id, |wall_box, _| change(wall_box.door_mut(door)?))
}

#[cfg(test)]
mod structure_tests;
#[cfg(test)]
mod tests;
