//! What is inside a box: an opening, or a split by a fixed shelf or a divider into openings again.
//!
//! Any opening of the tree can have a door; where a split opening has one, that door closes all
//! that is inside. Which opening is called how does not depend on where it stands in the tree.

use serde::{Deserialize, Serialize};

use crate::cabinet::{HorizontalPanel, Panel};
use crate::door::Door;
use crate::id::{DividerId, OpeningId, ShelfId};

/// At most so many splits lie inside each other. A box with more shelves than anybody builds stays
/// below it, and a reader of files does not run out of stack.
pub const MOST_LEVELS: usize = 12;

/// A clear space between panels, mm.
#[derive(Debug, Clone, PartialEq, Default, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Opening {
    /// What the program calls it.
    #[serde(default, skip_serializing_if = "OpeningId::is_left_out")]
    pub id: OpeningId,
    /// Its door, if it has one.
    #[serde(default)]
    pub door: Option<Door>,
    /// Whether and how it is split.
    #[serde(default)]
    pub inside: Inside,
}

/// What is inside an opening.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub enum Inside {
    /// It is not split.
    Undivided {
        /// Shelves that lie on pins, in any order.
        #[serde(default)]
        loose: Vec<LooseShelf>,
    },
    /// A fixed shelf splits it into two openings.
    Shelf(Box<ShelfSplit>),
    /// A divider splits it into two openings.
    Divider(Box<DividerSplit>),
}

impl Default for Inside {
    fn default() -> Self {
        Self::Undivided { loose: Vec::new() }
    }
}

/// A fixed shelf and the openings that it makes.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct ShelfSplit {
    /// The shelf.
    pub shelf: FixedShelf,
    /// The opening above it.
    pub above: Opening,
    /// The opening below it.
    pub below: Opening,
}

/// A divider and the openings that it makes.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct DividerSplit {
    /// The divider.
    pub divider: Divider,
    /// The opening at its left, as seen from the front.
    pub left: Opening,
    /// The opening at its right.
    pub right: Opening,
}

/// A shelf fixed between what stands beside it. All lengths in mm.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct FixedShelf {
    /// What the program calls it.
    #[serde(default, skip_serializing_if = "ShelfId::is_left_out")]
    pub id: ShelfId,
    /// From the underside of the box up to the shelf's underside.
    pub up: f64,
    /// Gap between the overlay doors above and below it, when both have one.
    pub gap: f64,
    /// Overlay of the door above onto the shelf (or rail); `None`: both doors lap alike.
    pub upper_overlay: Option<f64>,
    /// The panel and its ends. `set_in` is not used.
    pub piece: HorizontalPanel,
}

/// A shelf on pins. All lengths in mm.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct LooseShelf {
    /// What the program calls it.
    #[serde(default, skip_serializing_if = "ShelfId::is_left_out")]
    pub id: ShelfId,
    /// From the underside of the box up to the shelf's underside.
    pub up: f64,
    /// The panel and its ends. `set_in` is not used.
    pub piece: HorizontalPanel,
}

/// An upright panel between what lies above and below it. All lengths in mm.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Divider {
    /// What the program calls it.
    #[serde(default, skip_serializing_if = "DividerId::is_left_out")]
    pub id: DividerId,
    /// From the box's left outer face to the divider's left face.
    pub across: f64,
    /// Gap between the overlay doors at its left and right, when both have one.
    pub gap: f64,
    /// Overlay of the door at its left onto the divider; `None`: both doors lap alike.
    pub left_overlay: Option<f64>,
    /// The panel.
    pub panel: Panel,
    /// How far its front edge stands behind the sides' front edges.
    #[serde(default)]
    pub set_back: f64,
    /// How far each end is housed into the panel above and below (0: butted).
    #[serde(default)]
    pub housing: f64,
}

impl Opening {
    /// An opening that is not split.
    #[must_use]
    pub fn undivided(door: Option<Door>) -> Self {
        Self {
            door,
            ..Self::default()
        }
    }

    /// The openings straight inside, in reading order: above before below, left before right.
    #[must_use]
    pub fn parts(&self) -> Option<[&Self; 2]> {
        match &self.inside {
            Inside::Undivided { .. } => None,
            Inside::Shelf(split) => Some([&split.above, &split.below]),
            Inside::Divider(split) => Some([&split.left, &split.right]),
        }
    }

    /// The same, to be changed.
    pub fn parts_mut(&mut self) -> Option<[&mut Self; 2]> {
        match &mut self.inside {
            Inside::Undivided { .. } => None,
            Inside::Shelf(split) => {
                let ShelfSplit { above, below, .. } = &mut **split;
                Some([above, below])
            }
            Inside::Divider(split) => {
                let DividerSplit { left, right, .. } = &mut **split;
                Some([left, right])
            }
        }
    }

    /// This opening and all that are inside it, in reading order; each before what is inside it.
    #[must_use]
    pub fn all(&self) -> Vec<&Self> {
        let mut found = vec![self];
        for part in self.parts().into_iter().flatten() {
            found.extend(part.all());
        }
        found
    }

    /// The opening of that identity, be it this one or inside.
    #[must_use]
    pub fn find(&self, id: OpeningId) -> Option<&Self> {
        self.first(&|it| it.id == id)
    }

    /// The first opening of the tree that suits.
    #[must_use]
    pub fn first(&self, suits: &dyn Fn(&Self) -> bool) -> Option<&Self> {
        if suits(self) {
            return Some(self);
        }
        self.parts()?.into_iter().find_map(|part| part.first(suits))
    }

    /// The first opening of the tree that suits, to be changed.
    pub fn find_mut(&mut self, suits: &dyn Fn(&Self) -> bool) -> Option<&mut Self> {
        if suits(self) {
            return Some(self);
        }
        self.parts_mut()?
            .into_iter()
            .find_map(|part| part.find_mut(suits))
    }

    /// How many splits lie inside each other here; 0 where the opening is not split.
    #[must_use]
    pub fn levels(&self) -> usize {
        let deepest = self.parts().map(|parts| parts.map(Self::levels));
        deepest.map_or(0, |[first, second]| 1 + first.max(second))
    }
}
