//! Changes of the list of shelves that keep one opening more than there are fixed shelves.

use flapwright_model::cabinet::{Opening, Shelf, ShelfKind, WallBox};

/// A gap between two doors that is usual in the trade; the field beside it changes it.
const USUAL_GAP: f64 = 3.0;

/// Adds a shelf. A fixed one divides the opening that it stands in: the door stays with the upper
/// part.
pub(crate) fn add(wall_box: &mut WallBox, shelf: Shelf) {
    let fixed = shelf.is_fixed();
    wall_box.shelves.push(shelf);
    if fixed {
        let below = rank(wall_box, wall_box.shelves.len() - 1) + 1;
        let below = below.min(wall_box.openings.len());
        wall_box.openings.insert(below, Opening::default());
    }
}

/// Removes a shelf. Where it was fixed, the openings above and below become one and keep the door
/// of the upper one, or else that of the lower one.
pub(crate) fn remove(wall_box: &mut WallBox, index: usize) {
    if index >= wall_box.shelves.len() {
        return;
    }
    join_openings(wall_box, index);
    wall_box.shelves.remove(index);
}

/// Makes a shelf fixed or adjustable.
pub(crate) fn set_fixed(wall_box: &mut WallBox, index: usize, fixed: bool) {
    let Some(shelf) = wall_box.shelves.get(index) else {
        return;
    };
    if shelf.is_fixed() == fixed {
        return;
    }
    if fixed {
        let mut shelf = wall_box.shelves.remove(index);
        shelf.kind = fixed_kind();
        wall_box.shelves.insert(index, shelf);
        let below = (rank(wall_box, index) + 1).min(wall_box.openings.len());
        wall_box.openings.insert(below, Opening::default());
    } else {
        join_openings(wall_box, index);
        wall_box.shelves[index].kind = ShelfKind::Adjustable;
    }
}

/// A fixed shelf as it is when it is new.
pub(crate) const fn fixed_kind() -> ShelfKind {
    ShelfKind::Fixed {
        gap: USUAL_GAP,
        upper_overlay: None,
    }
}

/// How many fixed shelves stand above a fixed shelf: the opening over it has that index.
pub(crate) fn rank(wall_box: &WallBox, index: usize) -> usize {
    wall_box
        .fixed_shelves()
        .iter()
        .position(|&i| i == index)
        .unwrap_or(0)
}

fn join_openings(wall_box: &mut WallBox, index: usize) {
    if !wall_box.shelves[index].is_fixed() {
        return;
    }
    let above = rank(wall_box, index);
    if above + 1 >= wall_box.openings.len() {
        return;
    }
    let lower = wall_box.openings.remove(above + 1);
    let upper = &mut wall_box.openings[above];
    if upper.door.is_none() {
        upper.door = lower.door;
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use flapwright_session::starter;

    fn shelf(up: f64, kind: ShelfKind) -> Shelf {
        Shelf {
            kind,
            up,
            piece: starter::plain_box("b", "board").top,
        }
    }

    #[test]
    fn a_fixed_shelf_adds_an_opening_below_and_taking_it_out_gives_the_old_box() {
        let mut b = starter::plain_box("b", "board");
        add(&mut b, shelf(120.0, ShelfKind::Adjustable));
        let before = b.clone();
        add(&mut b, shelf(200.0, fixed_kind()));
        assert_eq!(b.openings.len(), 2);
        assert!(b.openings[0].door.is_some() && b.openings[1].door.is_none());
        add(&mut b, shelf(300.0, fixed_kind()));
        assert_eq!(b.openings.len(), 3);
        assert!(b.openings[0].door.is_some() && b.openings[1].door.is_none());
        remove(&mut b, 2);
        remove(&mut b, 1);
        assert_eq!(b, before);
    }

    #[test]
    fn making_a_shelf_adjustable_keeps_a_door_of_the_lower_opening() {
        let mut b = starter::plain_box("b", "board");
        let door = b.openings[0].door.take();
        add(&mut b, shelf(200.0, fixed_kind()));
        b.openings[1].door = door.clone();
        set_fixed(&mut b, 0, false);
        assert_eq!((b.openings.len(), &b.openings[0].door), (1, &door));
        set_fixed(&mut b, 0, true);
        assert_eq!((b.openings.len(), &b.openings[0].door), (2, &door));
    }
}
