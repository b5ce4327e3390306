//! The parts of a box by their identities, so that nobody else has to walk its tree.

use crate::cabinet::{HorizontalPanel, WallBox};
use crate::door::Door;
use crate::id::{DividerId, DoorId, Id, Ids, OpeningId, ShelfId};
use crate::opening::{Divider, FixedShelf, Inside, LooseShelf, Opening};

/// A shelf of either kind.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum ShelfRef<'a> {
    /// Fixed between what stands beside it.
    Fixed(&'a FixedShelf),
    /// Lies on pins.
    Loose(&'a LooseShelf),
}

impl<'a> ShelfRef<'a> {
    /// What the program calls it.
    #[must_use]
    pub const fn id(self) -> ShelfId {
        match self {
            Self::Fixed(shelf) => shelf.id,
            Self::Loose(shelf) => shelf.id,
        }
    }

    /// From the underside of the box up to its underside, mm.
    #[must_use]
    pub const fn up(self) -> f64 {
        match self {
            Self::Fixed(shelf) => shelf.up,
            Self::Loose(shelf) => shelf.up,
        }
    }

    /// Its panel and ends.
    #[must_use]
    pub const fn piece(self) -> &'a HorizontalPanel {
        match self {
            Self::Fixed(shelf) => &shelf.piece,
            Self::Loose(shelf) => &shelf.piece,
        }
    }

    /// Whether it splits an opening.
    #[must_use]
    pub const fn is_fixed(self) -> bool {
        matches!(self, Self::Fixed(_))
    }
}

/// A shelf of either kind, to be changed.
#[derive(Debug, PartialEq)]
pub enum ShelfMut<'a> {
    /// Fixed between what stands beside it.
    Fixed(&'a mut FixedShelf),
    /// Lies on pins.
    Loose(&'a mut LooseShelf),
}

impl<'a> ShelfMut<'a> {
    /// From the underside of the box up to its underside, mm.
    #[must_use]
    pub const fn up(self) -> &'a mut f64 {
        match self {
            Self::Fixed(shelf) => &mut shelf.up,
            Self::Loose(shelf) => &mut shelf.up,
        }
    }

    /// Its panel and ends.
    #[must_use]
    pub const fn piece(self) -> &'a mut HorizontalPanel {
        match self {
            Self::Fixed(shelf) => &mut shelf.piece,
            Self::Loose(shelf) => &mut shelf.piece,
        }
    }
}

impl WallBox {
    /// The openings that are not split, in reading order: from the top down, from left to right.
    #[must_use]
    pub fn openings(&self) -> Vec<&Opening> {
        let mut found = self.body.all();
        found.retain(|it| it.parts().is_none());
        found
    }

    /// The opening of that identity, split or not.
    #[must_use]
    pub fn opening(&self, id: OpeningId) -> Option<&Opening> {
        self.body.find(id)
    }

    /// The same, to be changed.
    pub fn opening_mut(&mut self, id: OpeningId) -> Option<&mut Opening> {
        self.body.find_mut(&|it| it.id == id)
    }

    /// The doors in reading order.
    #[must_use]
    pub fn doors(&self) -> Vec<&Door> {
        let openings = self.body.all().into_iter();
        openings.filter_map(|it| it.door.as_ref()).collect()
    }

    /// The door of that identity.
    #[must_use]
    pub fn door(&self, id: DoorId) -> Option<&Door> {
        self.opening_of(id)?.door.as_ref()
    }

    /// The same, to be changed.
    pub fn door_mut(&mut self, id: DoorId) -> Option<&mut Door> {
        let has_it = |it: &Opening| it.door.as_ref().is_some_and(|door| door.id == id);
        self.body.find_mut(&has_it)?.door.as_mut()
    }

    /// The opening that a door closes.
    #[must_use]
    pub fn opening_of(&self, id: DoorId) -> Option<&Opening> {
        let has_it = |it: &Opening| it.door.as_ref().is_some_and(|door| door.id == id);
        self.body.first(&has_it)
    }

    /// The fixed shelves from the top down; where some lie at one height, in reading order.
    #[must_use]
    pub fn fixed_shelves(&self) -> Vec<&FixedShelf> {
        let openings = self.body.all().into_iter();
        let mut found: Vec<&FixedShelf> = openings
            .filter_map(|it| match &it.inside {
                Inside::Shelf(split) => Some(&split.shelf),
                Inside::Undivided { .. } | Inside::Divider(_) => None,
            })
            .collect();
        found.sort_by(|a, b| b.up.total_cmp(&a.up));
        found
    }

    /// All shelves from the top down; where some lie at one height, in reading order.
    #[must_use]
    pub fn shelves(&self) -> Vec<ShelfRef<'_>> {
        let mut found = Vec::new();
        for opening in self.body.all() {
            match &opening.inside {
                Inside::Undivided { loose } => found.extend(loose.iter().map(ShelfRef::Loose)),
                Inside::Shelf(split) => found.push(ShelfRef::Fixed(&split.shelf)),
                Inside::Divider(_) => {}
            }
        }
        found.sort_by(|a, b| b.up().total_cmp(&a.up()));
        found
    }

    /// The shelf of that identity.
    #[must_use]
    pub fn shelf(&self, id: ShelfId) -> Option<ShelfRef<'_>> {
        match &self.body.first(&|it| has_shelf(it, id))?.inside {
            Inside::Undivided { loose } => {
                let shelf = loose.iter().find(|shelf| shelf.id == id)?;
                Some(ShelfRef::Loose(shelf))
            }
            Inside::Shelf(split) => Some(ShelfRef::Fixed(&split.shelf)),
            Inside::Divider(_) => None,
        }
    }

    /// The same, to be changed.
    pub fn shelf_mut(&mut self, id: ShelfId) -> Option<ShelfMut<'_>> {
        match &mut self.body.find_mut(&|it| has_shelf(it, id))?.inside {
            Inside::Undivided { loose } => {
                let shelf = loose.iter_mut().find(|shelf| shelf.id == id)?;
                Some(ShelfMut::Loose(shelf))
            }
            Inside::Shelf(split) => Some(ShelfMut::Fixed(&mut split.shelf)),
            Inside::Divider(_) => None,
        }
    }

    /// The fixed shelf of that identity.
    #[must_use]
    pub fn fixed_shelf(&self, id: ShelfId) -> Option<&FixedShelf> {
        match self.shelf(id)? {
            ShelfRef::Fixed(shelf) => Some(shelf),
            ShelfRef::Loose(_) => None,
        }
    }

    /// The same, to be changed; `None` also for a loose one.
    pub fn fixed_shelf_mut(&mut self, id: ShelfId) -> Option<&mut FixedShelf> {
        match self.shelf_mut(id)? {
            ShelfMut::Fixed(shelf) => Some(shelf),
            ShelfMut::Loose(_) => None,
        }
    }

    /// The dividers in reading order.
    #[must_use]
    pub fn dividers(&self) -> Vec<&Divider> {
        let openings = self.body.all().into_iter();
        openings
            .filter_map(|it| match &it.inside {
                Inside::Divider(split) => Some(&split.divider),
                Inside::Undivided { .. } | Inside::Shelf(_) => None,
            })
            .collect()
    }

    /// The divider of that identity.
    #[must_use]
    pub fn divider(&self, id: DividerId) -> Option<&Divider> {
        match &self.body.first(&|it| has_divider(it, id))?.inside {
            Inside::Divider(split) => Some(&split.divider),
            Inside::Undivided { .. } | Inside::Shelf(_) => None,
        }
    }

    /// The same, to be changed.
    pub fn divider_mut(&mut self, id: DividerId) -> Option<&mut Divider> {
        match &mut self.body.find_mut(&|it| has_divider(it, id))?.inside {
            Inside::Divider(split) => Some(&mut split.divider),
            Inside::Undivided { .. } | Inside::Shelf(_) => None,
        }
    }

    /// Gives identities to itself and to all parts that have none.
    pub fn give_ids(&mut self, ids: &mut Ids) {
        for number in self.own_ids_mut() {
            if *number == 0 {
                *number = ids.number();
            }
        }
    }

    /// Takes its own identity and those of all its parts away: a copy that is to be another box gets
    /// new ones when it comes into a job. Its records would name nothing then, so they go too.
    pub fn forget_ids(&mut self) {
        for number in self.own_ids_mut() {
            *number = 0;
        }
        self.records.clear();
    }

    /// The numbers of its own identity and of those of all its parts, 0 where one is not given.
    #[must_use]
    pub fn own_ids(&self) -> Vec<u32> {
        let mut numbers = vec![self.id.number()];
        for opening in self.body.all() {
            numbers.push(opening.id.number());
            numbers.extend(opening.door.as_ref().map(|door| door.id.number()));
            match &opening.inside {
                Inside::Undivided { loose } => {
                    numbers.extend(loose.iter().map(|shelf| shelf.id.number()));
                }
                Inside::Shelf(split) => numbers.push(split.shelf.id.number()),
                Inside::Divider(split) => numbers.push(split.divider.id.number()),
            }
        }
        numbers
    }

    /// The same, to be changed.
    pub(crate) fn own_ids_mut(&mut self) -> Vec<&mut u32> {
        let mut numbers = vec![self.id.number_mut()];
        ids_in(&mut self.body, &mut numbers);
        numbers
    }
}

/// Whether a shelf splits an opening or lies in it.
fn has_shelf(opening: &Opening, id: ShelfId) -> bool {
    match &opening.inside {
        Inside::Undivided { loose } => loose.iter().any(|shelf| shelf.id == id),
        Inside::Shelf(split) => split.shelf.id == id,
        Inside::Divider(_) => false,
    }
}

/// Whether a divider splits an opening.
fn has_divider(opening: &Opening, id: DividerId) -> bool {
    matches!(&opening.inside, Inside::Divider(split) if split.divider.id == id)
}

fn ids_in<'a>(opening: &'a mut Opening, numbers: &mut Vec<&'a mut u32>) {
    numbers.push(opening.id.number_mut());
    numbers.extend(opening.door.as_mut().map(|door| door.id.number_mut()));
    match &mut opening.inside {
        Inside::Undivided { loose } => {
            numbers.extend(loose.iter_mut().map(|shelf| shelf.id.number_mut()));
        }
        Inside::Shelf(split) => {
            numbers.push(split.shelf.id.number_mut());
            ids_in(&mut split.above, numbers);
            ids_in(&mut split.below, numbers);
        }
        Inside::Divider(split) => {
            numbers.push(split.divider.id.number_mut());
            ids_in(&mut split.left, numbers);
            ids_in(&mut split.right, numbers);
        }
    }
}
