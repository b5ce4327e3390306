//! The door: how it sits, what it is built of, what its bores follow.

use serde::{Deserialize, Serialize};

use crate::cabinet::Drilled;
use crate::edges::{Edge, Edges};
use crate::id::{CardId, DoorId};
use crate::part::LeafId;

/// The door of one opening. All lengths in mm.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Door {
    /// What the program calls it.
    #[serde(default, skip_serializing_if = "DoorId::is_left_out")]
    pub id: DoorId,
    /// Overlay or inset, with the numbers for its edges.
    pub fit: DoorFit,
    /// By-hand moves of the edges after reveals are set, + outward from the door.
    #[serde(default)]
    pub tweaks: Edges<f64>,
    /// One leaf, or the two leaves of a folding pair.
    pub leaves: Leaves,
    /// Handle, if any.
    pub handle: Option<Handle>,
    /// Mass that was weighed or told; stands over the mass that the build-up gives.
    #[serde(default)]
    pub typed_mass: Option<TypedMass>,
    /// What the bores in the back of the door follow.
    #[serde(default)]
    pub bores_follow: BoreReference,
    /// The fitting that carries it, if one is chosen.
    pub fitting: Option<FittingChoice>,
}

/// How the door sits to the box.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub enum DoorFit {
    /// Lies before the edges of the panels. At a fixed shelf shared by two overlay doors the
    /// shelf's gap and split stand in place of the reveal.
    Overlay {
        /// What is left uncovered of each panel (or frame member); negative laps past it.
        reveals: Edges<f64>,
    },
    /// Sits between the panels (or inside the face frame).
    Inset {
        /// Gap at each edge.
        gaps: Edges<f64>,
        /// How far the door's face stands behind the front of the panels (or frame).
        set_back: f64,
    },
}

/// The leaves of a door.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub enum Leaves {
    /// One leaf.
    One(Leaf),
    /// Two leaves, hinged to each other: a folding pair.
    Two {
        /// Upper leaf.
        upper: Leaf,
        /// Lower leaf.
        lower: Leaf,
        /// From the underside of the panel above the opening down to the middle of the joint.
        /// It hangs on the box, so that no reveal moves the bores at the joint.
        joint_down: f64,
        /// Clear gap between the leaves.
        joint_gap: f64,
    },
}

impl Leaves {
    /// The leaves with their names, from the top down.
    #[must_use]
    pub fn iter(&self) -> Vec<(LeafId, &Leaf)> {
        match self {
            Self::One(leaf) => vec![(LeafId::Only, leaf)],
            Self::Two { upper, lower, .. } => {
                vec![(LeafId::Upper, upper), (LeafId::Lower, lower)]
            }
        }
    }

    /// The leaf of that name, if the door has it.
    #[must_use]
    pub const fn get(&self, id: LeafId) -> Option<&Leaf> {
        match (self, id) {
            (Self::One(leaf), LeafId::Only)
            | (Self::Two { upper: leaf, .. }, LeafId::Upper)
            | (Self::Two { lower: leaf, .. }, LeafId::Lower) => Some(leaf),
            (Self::One(_), LeafId::Upper | LeafId::Lower) | (Self::Two { .. }, LeafId::Only) => {
                None
            }
        }
    }

    /// The same, to be changed.
    pub const fn get_mut(&mut self, id: LeafId) -> Option<&mut Leaf> {
        match (self, id) {
            (Self::One(leaf), LeafId::Only)
            | (Self::Two { upper: leaf, .. }, LeafId::Upper)
            | (Self::Two { lower: leaf, .. }, LeafId::Lower) => Some(leaf),
            (Self::One(_), LeafId::Upper | LeafId::Lower) | (Self::Two { .. }, LeafId::Only) => {
                None
            }
        }
    }

    /// The top leaf: the only or the upper one.
    #[must_use]
    pub const fn first(&self) -> &Leaf {
        match self {
            Self::One(leaf) | Self::Two { upper: leaf, .. } => leaf,
        }
    }
}

/// What a leaf is built of.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Leaf {
    /// Build-up.
    pub build: BuildUp,
    /// Thickness of the edge bands, 0 for none.
    #[serde(default)]
    pub bands: Edges<f64>,
    /// Whether the leaf is drilled before or after banding.
    #[serde(default)]
    pub drilled: Drilled,
    /// Direction of the grain.
    #[serde(default)]
    pub grain: Grain,
}

/// Direction of the grain of a visible face.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default, Serialize, Deserialize)]
pub enum Grain {
    /// The material has none, or it does not matter.
    #[default]
    None,
    /// Runs up and down.
    Upright,
    /// Runs left to right.
    Across,
}

/// The layers of a leaf.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub enum BuildUp {
    /// One panel.
    Plain {
        /// Thickness.
        thickness: f64,
        /// Name of a material of the job.
        material: String,
    },
    /// A frame with a panel or a pane in it.
    Framed {
        /// Thickness of the frame.
        thickness: f64,
        /// Name of the frame's material.
        material: String,
        /// Widths of stiles and rails.
        members: Edges<f64>,
        /// What the frame holds.
        infill: Infill,
    },
}

impl BuildUp {
    /// Thickness of the leaf, mm.
    #[must_use]
    pub const fn thickness(&self) -> f64 {
        match self {
            Self::Plain { thickness, .. } | Self::Framed { thickness, .. } => *thickness,
        }
    }

    /// Name of the material of the panel or frame: what the fitting is screwed to.
    #[must_use]
    pub fn material(&self) -> &str {
        match self {
            Self::Plain { material, .. } | Self::Framed { material, .. } => material,
        }
    }
}

/// The panel or pane in a framed leaf.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Infill {
    /// Thickness.
    pub thickness: f64,
    /// Name of a material of the job; glass is a material of class glass.
    pub material: String,
    /// How far it reaches into the frame's groove or rebate on each edge.
    pub tongue: f64,
    /// From the back face of the leaf to the back face of the infill; 0 for a pane let into a
    /// rebate flush with the back.
    pub behind: f64,
}

/// A handle on the lower (or only) leaf.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Handle {
    /// Mass, kg.
    pub mass: f64,
    /// Its middle above the door's bottom edge.
    pub up: f64,
    /// Its middle right of the door's own middle, as seen from the front.
    #[serde(default)]
    pub right_of_middle: f64,
    /// How far it stands out from the face.
    pub projection: f64,
    /// Overall length, left to right.
    pub length: f64,
    /// Screws through the door; `None` when it is glued or clamped.
    pub screws: Option<HandleScrews>,
}

/// Through bores of a handle, side by side.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct HandleScrews {
    /// Centre to centre; 0 for a knob with one screw.
    pub spacing: f64,
    /// Diameter.
    pub diameter: f64,
}

/// A door's mass as weighed or told, kg.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct TypedMass {
    /// The mass.
    pub kilograms: f64,
    /// Half the width of its range.
    pub plus_minus: f64,
}

/// What the bores in the back of a door follow.
#[derive(Debug, Clone, PartialEq, Default, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub enum BoreReference {
    /// The fitting: neither reveal nor tweak moves them in the box.
    #[default]
    Fitting,
    /// The door's own edges, set from the reveals without tweaks: a tweak of a tie edge carries
    /// along exactly the bores tied to it. Left or right is the side that the fitting is on.
    Edges {
        /// Which of top and bottom they are tied to.
        vertical: End,
    },
    /// An existing door: the distances are facts, whatever becomes of reveals, tweaks or card.
    AsDrilled(Vec<DrilledBore>),
}

/// Top or bottom edge.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default, Serialize, Deserialize)]
pub enum End {
    /// The leaf's top edge.
    #[default]
    Top,
    /// The leaf's bottom edge.
    Bottom,
}

impl End {
    /// The edge meant.
    #[must_use]
    pub const fn edge(self) -> Edge {
        match self {
            Self::Top => Edge::Top,
            Self::Bottom => Edge::Bottom,
        }
    }
}

/// Left or right edge, as seen from the front of the box.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
pub enum Side {
    /// The box-left edge.
    Left,
    /// The box-right edge.
    Right,
}

impl Side {
    /// The edge meant.
    #[must_use]
    pub const fn edge(self) -> Edge {
        match self {
            Self::Left => Edge::Left,
            Self::Right => Edge::Right,
        }
    }
}

/// A bore that is in an existing door already: distances from the leaf's finished edges, mm.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct DrilledBore {
    /// Which leaf.
    pub leaf: LeafId,
    /// The edge from which `across` is given, as seen from the **front**.
    pub from_side: Side,
    /// Distance to that edge.
    pub across: f64,
    /// The edge from which `along` is given.
    pub from_end: End,
    /// Distance to that edge.
    pub along: f64,
    /// Diameter.
    pub diameter: f64,
    /// Depth to the full diameter.
    pub depth: f64,
    /// What it is for.
    pub purpose: String,
}

/// Which fitting and size a door is to have.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct FittingChoice {
    /// A card of the job.
    pub card: CardId,
    /// Name of a size of that card.
    pub size: String,
    /// Thickness of packing between side and fitting, at both sides.
    #[serde(default)]
    pub packing: f64,
}
