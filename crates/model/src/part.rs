//! Names for the parts of a job: which panel, which leaf, which bore.

use serde::{Deserialize, Serialize};

use crate::id::{BoxId, CardId, DividerId, DoorId, ObstacleId, OpeningId, ShelfId};

/// One panel or leaf of one box.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct PartId {
    /// The box.
    pub box_id: BoxId,
    /// Which part of that box.
    pub part: Part,
}

/// A part of a box.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub enum Part {
    /// The left side, as seen from the front.
    LeftSide,
    /// The right side, as seen from the front.
    RightSide,
    /// The top panel.
    Top,
    /// The bottom panel.
    Bottom,
    /// The back panel.
    Back,
    /// A shelf, fixed or loose.
    Shelf(ShelfId),
    /// A divider.
    Divider(DividerId),
    /// The face frame.
    Frame,
    /// A leaf of a door.
    Leaf {
        /// The door.
        door: DoorId,
        /// Which leaf.
        leaf: LeafId,
    },
}

impl Part {
    /// The door that a leaf is of; `None` for panels of the box.
    #[must_use]
    pub const fn door(self) -> Option<DoorId> {
        match self {
            Self::Leaf { door, .. } => Some(door),
            Self::LeftSide
            | Self::RightSide
            | Self::Top
            | Self::Bottom
            | Self::Back
            | Self::Shelf(_)
            | Self::Divider(_)
            | Self::Frame => None,
        }
    }
}

/// Which leaf of a door.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
pub enum LeafId {
    /// The only leaf of a one-leaf door.
    Only,
    /// The upper leaf of a folding pair.
    Upper,
    /// The lower leaf of a folding pair.
    Lower,
}

/// One bore of one part: its number in the part's hole table, counted from 1. It holds for one state
/// of the job only: numbers shift when bores come and go.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct BoreId {
    /// The part that is drilled.
    pub part: PartId,
    /// Number in the part's hole table, counted from 1.
    pub number: usize,
}

/// Anything that a drawing item or a finding can point at.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
pub enum Subject {
    /// A whole box.
    Box(BoxId),
    /// An opening of a box.
    Opening(BoxId, OpeningId),
    /// A door of a box.
    Door(BoxId, DoorId),
    /// A part.
    Part(PartId),
    /// A bore.
    Bore(BoreId),
    /// What stands in the room.
    Obstacle(ObstacleId),
    /// A card in use.
    Card(CardId),
}

impl Subject {
    /// The box that the subject belongs to; none for what is of the job as a whole.
    #[must_use]
    pub const fn box_id(self) -> Option<BoxId> {
        match self {
            Self::Box(id) | Self::Opening(id, _) | Self::Door(id, _) => Some(id),
            Self::Part(part) => Some(part.box_id),
            Self::Bore(bore) => Some(bore.part.box_id),
            Self::Obstacle(_) | Self::Card(_) => None,
        }
    }
}
