//! Making a loose shelf fixed, and a fixed one loose.

use super::changed_box;
use super::shelf::{USUAL_GAP, put, take_loose};
use super::split::{join, split};
use crate::edit::Edit;
use crate::id::{BoxId, ShelfId};
use crate::job::Job;
use crate::opening::{FixedShelf, LooseShelf};

/// Makes a loose shelf fixed: it splits the opening that holds its height.
#[must_use]
pub fn make_shelf_fixed(job: &Job, id: BoxId, shelf: ShelfId) -> Option<Edit> {
    changed_box(job, id, |wall_box, ids| {
        let loose = take_loose(wall_box, shelf)?;
        let fixed = FixedShelf {
            id: loose.id,
            ..FixedShelf::plain(loose.up, USUAL_GAP, loose.piece)
        };
        split(wall_box, ids, fixed);
        Some(())
    })
}

/// Makes a fixed shelf loose: the openings above and below it become one.
#[must_use]
pub fn make_shelf_loose(job: &Job, id: BoxId, shelf: ShelfId) -> Option<Edit> {
    changed_box(job, id, |wall_box, _| {
        let fixed = join(wall_box, shelf)?;
        let loose = LooseShelf {
            id: fixed.id,
            ..LooseShelf::plain(fixed.up, fixed.piece)
        };
        put(wall_box, loose);
        Some(())
    })
}
