//! What is asked of the search for strut mounts.

use flapwright_model::card::Span;
use flapwright_model::lift::Strut;

use crate::closed::ClosedDoor;
use crate::gravity::Weights;
use crate::motion::Motion;

/// Where the anchors may be, mm, measured as in [`Strut`]: the room inside the box clear of shelf
/// and edges, and the part of the door's back that may be drilled.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct MountLimits {
    /// Anchor in the box, below the underside of the panel above the opening.
    pub box_down: Span,
    /// Anchor in the box, behind the front datum.
    pub box_back: Span,
    /// Anchor on the door, below the same underside.
    pub door_down: Span,
    /// Anchor on the door, behind the door's back face.
    pub door_back: Span,
}

/// A strut that can be had. Figures as in [`Strut`].
#[derive(Debug, Clone, PartialEq)]
pub struct StrutOnHand {
    /// Name in lists.
    pub name: String,
    /// Its figures; the anchors in it do not count.
    pub strut: Strut,
}

/// What is asked of the search.
#[derive(Debug, Clone, Copy)]
pub struct MountQuestion<'a> {
    /// How the door moves.
    pub motion: &'a Motion,
    /// What it weighs.
    pub weights: &'a Weights,
    /// The closed door.
    pub door: &'a ClosedDoor,
    /// o of the front datum that the anchor in the box counts from, mm.
    pub front_o: f64,
    /// How many struts lift it together.
    pub pieces: u8,
    /// Cold and hot, °C, between which the strut must keep the door open and shut.
    pub cold_and_hot: [f64; 2],
    /// Where the anchors may be.
    pub limits: &'a MountLimits,
    /// The struts to choose from.
    pub struts: &'a [StrutOnHand],
}
