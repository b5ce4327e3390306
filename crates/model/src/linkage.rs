//! Motion numbers of a card: pivots, arms, end angle.
//!
//! All places are given in the box with the door closed: down from the underside of the panel
//! above the opening, back from the front datum named in [`Linkage::front`]. Pivots on the door
//! are given where they are when the door is closed, so arm lengths follow from the places and a
//! closed door always fits its arms.

use serde::{Deserialize, Serialize};

use crate::card::{BackFrom, PerSize};

/// A pivot place, mm, door closed.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Pivot {
    /// Down from the underside of the panel above the opening.
    pub down: PerSize,
    /// Back from the front datum; negative stands in front of it.
    pub back: PerSize,
}

/// How the door moves.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Linkage {
    /// The front datum that pivots count from.
    pub front: BackFrom,
    /// Input angle when fully open, degrees: of the flap, the arm or the upper leaf.
    pub end_degrees: f64,
    /// The bodies.
    pub bodies: Bodies,
    /// How far the true path may lie off this one, mm; clearances add it.
    #[serde(default)]
    pub path_tolerance: f64,
    /// Viscous damping about the input, N·m·s.
    #[serde(default)]
    pub damping: f64,
}

/// The moving bodies of each opening kind.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub enum Bodies {
    /// Top-hinged flap about a fixed axis.
    FixedAxis {
        /// The axis.
        axis: Pivot,
    },
    /// Top-hinged flap on a linked hinge: poses from the instructions, with a smooth curve through
    /// them: piecewise cubic, at each row with the slope of the parabola through it and its
    /// neighbours.
    PoseTable {
        /// The point of the door whose path the rows give, door closed. It is a place in the box,
        /// so that no reveal moves the path.
        reference: Pivot,
        /// Rows in rising angle, the first at 0 with no shift.
        poses: Vec<FlapPose>,
    },
    /// Parallel-rising door: two equal arms, parallel.
    Parallel {
        /// Pivot of the first arm in the box.
        box_pivot: Pivot,
        /// Its pivot on the door.
        door_pivot: Pivot,
        /// The second arm's pivots stand this far below the first's, mm.
        second_down: f64,
        /// The second arm's pivots stand this far behind the first's, mm.
        second_back: f64,
    },
    /// Folding pair: upper leaf on an axis, lower leaf hinged to it, guided by a link.
    Folding {
        /// Axis of the upper leaf.
        axis: Pivot,
        /// Axis of the joint between the leaves: behind the back face of the leaves, mm
        /// (negative: in front of it).
        joint_behind: f64,
        /// Pivot of the guiding link in the box.
        link_box: Pivot,
        /// Pivot of the guiding link on the lower leaf: below the middle of the joint, mm.
        link_below_joint: f64,
        /// The same pivot behind the back face of the leaf, mm.
        link_behind: f64,
    },
    /// Over-the-top door: two arms of different lengths.
    TwoArms {
        /// First (driven) arm: pivot in the box.
        box_first: Pivot,
        /// First arm: pivot on the door.
        door_first: Pivot,
        /// Second arm: pivot in the box.
        box_second: Pivot,
        /// Second arm: pivot on the door.
        door_second: Pivot,
    },
}

/// A pose of a flap on a linked hinge.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct FlapPose {
    /// Opening angle, degrees.
    pub degrees: f64,
    /// Where the reference point has gone: out into the room, mm.
    pub out: f64,
    /// Where the same point has gone: up, mm.
    pub up: f64,
}
