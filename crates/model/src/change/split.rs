//! Splitting an opening by a fixed shelf, and making one of two again.

use crate::cabinet::WallBox;
use crate::id::{Ids, ShelfId};
use crate::opening::{FixedShelf, Inside, LooseShelf, Opening, ShelfSplit};

/// Changes the undivided opening that holds a height, mm from the underside of the box; at a divider
/// the one at its left.
pub(super) fn change_at(opening: &mut Opening, up: f64, change: impl FnOnce(&mut Opening)) {
    match &mut opening.inside {
        Inside::Shelf(split) => {
            let part = if up > split.shelf.up {
                &mut split.above
            } else {
                &mut split.below
            };
            return change_at(part, up, change);
        }
        Inside::Divider(split) => return change_at(&mut split.left, up, change),
        Inside::Undivided { .. } => {}
    }
    change(opening);
}

/// Puts a shelf into the opening that holds its height. The upper part keeps the opening's identity
/// and door; loose shelves stay at their height.
pub(super) fn split(wall_box: &mut WallBox, ids: &mut Ids, shelf: FixedShelf) {
    let (node, lower) = (ids.give(), ids.give());
    change_at(&mut wall_box.body, shelf.up, |place| {
        let mut above = std::mem::take(place);
        let mut below = Opening {
            id: lower,
            ..Opening::default()
        };
        if let Inside::Undivided { loose } = &mut above.inside {
            let all = std::mem::take(loose).into_iter();
            let (over, under): (Vec<LooseShelf>, Vec<LooseShelf>) =
                all.partition(|it| it.up > shelf.up);
            *loose = over;
            below.inside = Inside::Undivided { loose: under };
        }
        *place = Opening {
            id: node,
            door: None,
            inside: Inside::Shelf(Box::new(ShelfSplit {
                shelf,
                above,
                below,
            })),
        };
    });
}

/// Takes a fixed shelf out. Of the openings above and below it, the upper one stays and keeps its
/// door; where it has none, the lower one with its door. `None` where there is no such shelf, or where
/// a divider stands on it or under it: two openings side by side cannot become one with a third.
pub(super) fn join(wall_box: &mut WallBox, id: ShelfId) -> Option<FixedShelf> {
    let is_split_by = |it: &Opening| match &it.inside {
        Inside::Shelf(split) => split.shelf.id == id && can_meet(&split.above, &split.below),
        Inside::Undivided { .. } | Inside::Divider(_) => false,
    };
    let place = wall_box.body.find_mut(&is_split_by)?;
    let whole = std::mem::take(place);
    let Inside::Shelf(split) = whole.inside else {
        *place = whole;
        return None;
    };
    let ShelfSplit {
        shelf,
        above,
        below,
    } = *split;
    *place = meet(above, below);
    if whole.door.is_some() {
        place.door = whole.door;
    }
    Some(shelf)
}

/// Whether the openings straight above and below a shelf are undivided.
fn can_meet(above: &Opening, below: &Opening) -> bool {
    match (&above.inside, &below.inside) {
        (Inside::Undivided { .. }, Inside::Undivided { .. }) => true,
        (Inside::Shelf(split), _) => can_meet(&split.below, below),
        (_, Inside::Shelf(split)) => can_meet(above, &split.above),
        (Inside::Divider(_), _) | (_, Inside::Divider(_)) => false,
    }
}

/// Makes one opening of two that lie over each other, when the shelf between them is gone: the
/// lowest part of the upper one and the highest part of the lower one become one.
fn meet(above: Opening, below: Opening) -> Opening {
    match (above.inside, below.inside) {
        (Inside::Undivided { loose: mut upper }, Inside::Undivided { loose: lower }) => {
            upper.extend(lower);
            // The one whose door stays keeps its identity.
            let (id, door) = if above.door.is_none() && below.door.is_some() {
                (below.id, below.door)
            } else {
                (above.id, above.door)
            };
            Opening {
                id,
                door,
                inside: Inside::Undivided { loose: upper },
            }
        }
        (Inside::Shelf(mut split), inside) => {
            let lower = Opening { inside, ..below };
            split.below = meet(split.below, lower);
            Opening {
                inside: Inside::Shelf(split),
                ..above
            }
        }
        (inside, Inside::Shelf(mut split)) => {
            let upper = Opening { inside, ..above };
            split.above = meet(upper, split.above);
            Opening {
                inside: Inside::Shelf(split),
                ..below
            }
        }
        // `can_meet` has seen to it that this does not come; the divider would stay.
        (inside @ Inside::Divider(_), _) => Opening { inside, ..above },
        (_, inside @ Inside::Divider(_)) => Opening { inside, ..below },
    }
}
