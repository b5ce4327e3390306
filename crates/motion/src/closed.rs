//! The closed door in the section: what every motion starts from.

use flapwright_model::card::BackFrom;
use flapwright_model::part::LeafId;

/// A closed door in the section, mm. o runs out into the room, y up from the underside of the box.
#[derive(Debug, Clone, PartialEq)]
pub struct ClosedDoor {
    /// The leaves from the top down.
    pub leaves: Vec<ClosedLeaf>,
    /// Underside of the panel above the opening.
    pub underside_y: f64,
    /// o of the datum `SideFront`, inset shift included.
    pub side_front_o: f64,
    /// o of the datum `FrameFront`, inset shift included.
    pub frame_front_o: f64,
    /// y of the middle of the joint of a folding pair.
    pub joint_y: Option<f64>,
    /// The handle, if there is one.
    pub handle: Option<ClosedHandle>,
}

/// One leaf, closed.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct ClosedLeaf {
    /// Which leaf.
    pub id: LeafId,
    /// y of its top edge.
    pub top: f64,
    /// y of its bottom edge.
    pub bottom: f64,
    /// o of its back face.
    pub back_o: f64,
    /// o of its front face (greater than `back_o`).
    pub front_o: f64,
}

/// The handle, closed.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct ClosedHandle {
    /// y of its middle.
    pub y: f64,
    /// How far it stands out from the face.
    pub projection: f64,
}

impl ClosedDoor {
    /// o of a front datum.
    #[must_use]
    pub const fn front_o(&self, datum: BackFrom) -> f64 {
        match datum {
            BackFrom::SideFront => self.side_front_o,
            BackFrom::FrameFront => self.frame_front_o,
        }
    }
}
