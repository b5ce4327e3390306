//! Adding and removing shelves.

use super::changed_box;
use super::split::{change_at, join, split};
use crate::cabinet::{HorizontalPanel, WallBox};
use crate::edit::Edit;
use crate::field::FixedShelfField;
use crate::id::{BoxId, ShelfId};
use crate::job::Job;
use crate::opening::{FixedShelf, Inside, LooseShelf, Opening};

/// The usual gap between two doors, mm.
pub const USUAL_GAP: f64 = FixedShelfField::Gap.info().usual.number();

/// Adds a fixed shelf at a height, mm from the underside of the box to its own. It splits the
/// opening that it stands in: the upper part keeps the door, loose shelves stay at their height.
#[must_use]
pub fn add_fixed_shelf(job: &Job, id: BoxId, up: f64, piece: HorizontalPanel) -> Option<Edit> {
    changed_box(job, id, |wall_box, ids| {
        let shelf = FixedShelf {
            id: ids.give(),
            ..FixedShelf::plain(up, USUAL_GAP, piece)
        };
        split(wall_box, ids, shelf);
        Some(())
    })
}

/// Adds a shelf on pins at a height, mm from the underside of the box to its own.
#[must_use]
pub fn add_loose_shelf(job: &Job, id: BoxId, up: f64, piece: HorizontalPanel) -> Option<Edit> {
    changed_box(job, id, |wall_box, ids| {
        let shelf = LooseShelf {
            id: ids.give(),
            ..LooseShelf::plain(up, piece)
        };
        put(wall_box, shelf);
        Some(())
    })
}

/// Removes a shelf. Where it was fixed, the openings above and below become one, which keeps the
/// door of the upper one, or else that of the lower one.
#[must_use]
pub fn remove_shelf(job: &Job, id: BoxId, shelf: ShelfId) -> Option<Edit> {
    changed_box(job, id, |wall_box, _| {
        if take_loose(wall_box, shelf).is_none() {
            join(wall_box, shelf)?;
        }
        Some(())
    })
}

/// Puts a loose shelf into the opening that holds its height.
pub(super) fn put(wall_box: &mut WallBox, shelf: LooseShelf) {
    change_at(&mut wall_box.body, shelf.up, |place| {
        if let Inside::Undivided { loose } = &mut place.inside {
            loose.push(shelf);
        }
    });
}

/// Takes a loose shelf out.
pub(super) fn take_loose(wall_box: &mut WallBox, id: ShelfId) -> Option<LooseShelf> {
    let holds_it = |it: &Opening| match &it.inside {
        Inside::Undivided { loose } => loose.iter().any(|shelf| shelf.id == id),
        Inside::Shelf(_) | Inside::Divider(_) => false,
    };
    match &mut wall_box.body.find_mut(&holds_it)?.inside {
        Inside::Undivided { loose } => {
            let index = loose.iter().position(|shelf| shelf.id == id)?;
            Some(loose.remove(index))
        }
        Inside::Shelf(_) | Inside::Divider(_) => None,
    }
}
