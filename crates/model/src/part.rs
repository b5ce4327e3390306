//! Names for the parts of a job: which panel, which leaf, which bore.
//!
//! These are positions in the job's own lists, so they hold for one state of the job only.

use serde::{Deserialize, Serialize};

/// One panel or leaf of one box.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
pub struct PartId {
    /// Index of the box in the job.
    pub box_index: usize,
    /// Which part of that box.
    pub part: Part,
}

/// A part of a box.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
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
    /// A shelf, fixed or adjustable: index in the box's list of shelves.
    Shelf(usize),
    /// The face frame.
    Frame,
    /// A leaf of the door of one opening.
    Leaf {
        /// Index of the opening in the box, counted from the top.
        opening: usize,
        /// Which leaf.
        leaf: LeafId,
    },
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

/// One bore of one part: its number in the part's hole table, counted from 1.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
pub struct BoreId {
    /// The part that is drilled.
    pub part: PartId,
    /// Number in the part's hole table, counted from 1.
    pub number: usize,
}

/// Anything that a drawing item or a finding can point at.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
pub enum Subject {
    /// A whole box: index in the job.
    Box(usize),
    /// An opening of a box.
    Opening {
        /// Index of the box in the job.
        box_index: usize,
        /// Index of the opening, counted from the top.
        opening: usize,
    },
    /// A part.
    Part(PartId),
    /// A bore.
    Bore(BoreId),
}

impl Subject {
    /// The box that the subject belongs to.
    #[must_use]
    pub const fn box_index(self) -> usize {
        match self {
            Self::Box(box_index) | Self::Opening { box_index, .. } => box_index,
            Self::Part(part) => part.box_index,
            Self::Bore(bore) => bore.part.box_index,
        }
    }
}
