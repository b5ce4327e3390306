//! What a size carries and what lifts: springs and struts.

use serde::{Deserialize, Serialize};

/// Whether a figure is said of both pieces of a pair together or of one piece.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
pub enum PieceCount {
    /// Of the pair.
    PerPair,
    /// Of one piece.
    PerPiece,
}

/// What a size carries, in the form that its instructions use.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub enum Carries {
    /// A door mass, kg.
    Mass {
        /// Least.
        min: f64,
        /// Greatest.
        max: f64,
    },
    /// A lift moment, N·m, at an opening angle.
    Moment {
        /// Least.
        min: f64,
        /// Greatest.
        max: f64,
        /// Opening angle, degrees.
        at_degrees: f64,
    },
    /// A door mass, kg, by door height.
    MassByDoorHeight(Vec<MassRow>),
    /// A door mass, kg, by outer box height.
    MassByBoxHeight(Vec<MassRow>),
}

/// A row of a load table. Between rows the limits run straight; outside the table there is none.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct MassRow {
    /// Height, mm.
    pub height: f64,
    /// Least mass, kg.
    pub min: f64,
    /// Greatest mass, kg.
    pub max: f64,
}

/// What lifts.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub enum Lift {
    /// A spring whose moment about the input axis is given by a table. Table and friction are said
    /// of a pair or of one piece, as the card's `per` has it.
    Spring {
        /// Rows in rising angle.
        table: Vec<SpringRow>,
        /// Turns of the setting screw from weakest to strongest.
        turns: f64,
        /// Friction about the input axis, N·m.
        friction: f64,
    },
    /// A gas strut between an anchor in the box and one on the leaf at whose height it is. Its
    /// figures are always those of one strut.
    Strut(Strut),
}

/// Spring moment at one opening angle.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct SpringRow {
    /// Opening angle of the input, degrees.
    pub degrees: f64,
    /// N·m at the weakest setting, + pushes open.
    pub weakest: f64,
    /// N·m at the strongest setting.
    pub strongest: f64,
}

/// A gas strut. Force is nominal: extended, moving out, 20 °C.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Strut {
    /// Anchor in the box: below the underside of the panel above the opening, mm.
    pub box_down: f64,
    /// Anchor in the box: behind the front datum, mm.
    pub box_back: f64,
    /// Anchor on the door, closed: below the same underside, mm.
    pub door_down: f64,
    /// Anchor on the door, closed: behind the door's back face (negative: in front of it), mm.
    pub door_back: f64,
    /// Nominal force, N.
    pub force: f64,
    /// Force compressed over force extended, over the stated stroke, e.g. 1.3.
    pub progression: f64,
    /// Stroke, mm.
    pub stroke: f64,
    /// Length between the anchors when extended, mm.
    pub extended: f64,
    /// Friction along the rod, N.
    pub friction: f64,
}
