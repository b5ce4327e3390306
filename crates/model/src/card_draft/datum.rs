//! Where distances on a paper count from: short lists for a form.

use serde::{Deserialize, Serialize};

use crate::card::OpeningKind;

/// Vertical datums of papers; distances are + down.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default, Serialize, Deserialize)]
pub enum DownDatum {
    /// Underside of the panel above the opening.
    #[default]
    BoxTopUnderside,
    /// Underside of the face frame's rail above the opening.
    FrameRailUnderside,
    /// Middle of the joint of a folding pair.
    LeafJoint,
    /// Top end of the side, over the thickness of the paper's top.
    SideTopEnd,
    /// Top edge of the door that the paper draws, over its overlay.
    DoorTopEdge,
    /// The hole before in the list.
    HoleBefore,
}

impl DownDatum {
    /// What a bore in a side may count from.
    #[must_use]
    pub const fn on_side(kind: OpeningKind) -> &'static [Self] {
        match kind {
            OpeningKind::FoldingPair => &[
                Self::BoxTopUnderside,
                Self::SideTopEnd,
                Self::HoleBefore,
                Self::FrameRailUnderside,
                Self::LeafJoint,
            ],
            OpeningKind::TopHingedFlap
            | OpeningKind::ParallelRisingDoor
            | OpeningKind::OverTheTopDoor => &[
                Self::BoxTopUnderside,
                Self::SideTopEnd,
                Self::HoleBefore,
                Self::FrameRailUnderside,
            ],
        }
    }

    /// What a bore in the door may count from.
    #[must_use]
    pub const fn on_door(kind: OpeningKind) -> &'static [Self] {
        match kind {
            OpeningKind::FoldingPair => &[
                Self::BoxTopUnderside,
                Self::DoorTopEdge,
                Self::HoleBefore,
                Self::FrameRailUnderside,
                Self::LeafJoint,
            ],
            OpeningKind::TopHingedFlap
            | OpeningKind::ParallelRisingDoor
            | OpeningKind::OverTheTopDoor => &[
                Self::BoxTopUnderside,
                Self::DoorTopEdge,
                Self::HoleBefore,
                Self::FrameRailUnderside,
            ],
        }
    }

    /// Name in lists.
    #[must_use]
    pub const fn words(self) -> &'static str {
        match self {
            Self::BoxTopUnderside => "underside of the top",
            Self::FrameRailUnderside => "underside of the frame's rail",
            Self::LeafJoint => "joint of the leaves",
            Self::SideTopEnd => "top end of the side",
            Self::DoorTopEdge => "top edge of the door",
            Self::HoleBefore => "hole before",
        }
    }
}

/// Datums in depth; distances are + to the back.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default, Serialize, Deserialize)]
pub enum BackDatum {
    /// Front edges of the sides.
    #[default]
    SideFront,
    /// Front of the face frame.
    FrameFront,
    /// The hole before in the list.
    HoleBefore,
}

impl BackDatum {
    /// All, in the order of lists.
    pub const ALL: [Self; 3] = [Self::SideFront, Self::HoleBefore, Self::FrameFront];

    /// Name in lists.
    #[must_use]
    pub const fn words(self) -> &'static str {
        match self {
            Self::SideFront => "front edge of the side",
            Self::FrameFront => "front of the frame",
            Self::HoleBefore => "hole before",
        }
    }
}

/// Datums across.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default, Serialize, Deserialize)]
pub enum AcrossDatum {
    /// The face that the fitting is mounted on; + towards the middle.
    #[default]
    MountingFace,
    /// The point of a spread group; + to box-right.
    SpreadPoint,
    /// The side edge of the door that the paper draws, over its overlay; + towards the middle.
    DoorSideEdge,
    /// The hole before in the list.
    HoleBefore,
}

impl AcrossDatum {
    /// What a bore may count from in a spread group or another one, in a door or above it.
    #[must_use]
    pub const fn choices(spread: bool, on_door: bool) -> &'static [Self] {
        match (spread, on_door) {
            (true, _) => &[Self::SpreadPoint, Self::HoleBefore],
            (false, true) => &[Self::MountingFace, Self::DoorSideEdge, Self::HoleBefore],
            (false, false) => &[Self::MountingFace, Self::HoleBefore],
        }
    }

    /// Name in lists.
    #[must_use]
    pub const fn words(self) -> &'static str {
        match self {
            Self::MountingFace => "inner face of the side",
            Self::SpreadPoint => "middle of the group",
            Self::DoorSideEdge => "side edge of the door",
            Self::HoleBefore => "hole before",
        }
    }
}
