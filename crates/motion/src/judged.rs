//! What a size is judged for: a door, and what its box offers.

use crate::closed::ClosedDoor;
use crate::mass::DoorMass;

/// What the box and the door offer to a fitting, mm.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Offer {
    /// Finished width of the door.
    pub door_width: f64,
    /// Outer height of the box.
    pub box_height: f64,
    /// Clear depth behind the front datum `SideFront`.
    pub depth_from_side: f64,
    /// Clear depth behind the front datum `FrameFront`.
    pub depth_from_frame: f64,
    /// Clear height of the opening.
    pub opening_height: f64,
    /// From the underside of the panel above the opening down to the first shelf or panel that a
    /// body beside the side could meet.
    pub clear_down: f64,
    /// How far the door must be moved in the box after mounting, so that it sits where it is
    /// drawn: sideways + to box-right, upward +, in depth + into the box.
    pub to_adjust: [f64; 3],
}

/// The door to be judged.
#[derive(Debug, Clone, Copy)]
pub struct Judged<'a> {
    /// The closed door.
    pub door: &'a ClosedDoor,
    /// Its mass.
    pub mass: &'a DoorMass,
    /// What the box offers.
    pub offer: &'a Offer,
    /// Cold and hot, °C, between which a strut must keep the door open and shut.
    pub cold_and_hot: [f64; 2],
}
