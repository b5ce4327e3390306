//! A card as its paper gives it: every number as typed, to be turned into a [`Card`] when it is
//! complete.
//!
//! | how do I… | |
//! |---|---|
//! | begin with everything but the numbers | [`CardDraft::blank`] |
//! | change a card that is there | [`CardDraft::of_card`] |
//! | know what is still wrong, or get the card | [`CardDraft::resolve`] |
//! | paste a table from a spreadsheet | [`Grid::paste`] on [`CardDraft::sizes`] |
//! | save a half-typed card, open it again | [`CardDraft::write`], [`CardDraft::read`] |
//! | fill a list of datums | [`DownDatum::on_side`], [`DownDatum::on_door`], [`AcrossDatum::choices`] |
//!
//! A number is a text: a length in the paper's unit or in its own (`37`, `1-7/16"`, `37 mm`), or
//! the **title of a column** of the sizes table where it differs from size to size, as papers
//! have it: `A`, `A + 32`, `A - 1/2"`. Where a paper counts from the hole before, from the end of
//! the side or from an edge of its own example's door, the datum says so and [`CardDraft::resolve`]
//! reckons it back to the fitting's datums.
//!
//! All of it is plain data: undo may clone it, and nothing is lost by saving it half typed.

mod blank;
mod datum;
mod entry;
mod example;
mod grid;
mod of_card;
mod resolve;
mod resolve_bodies;
mod resolve_bores;
mod resolve_sizes;
#[cfg(test)]
mod tests;

use serde::{Deserialize, Serialize};

pub use datum::{AcrossDatum, BackDatum, DownDatum};
pub use grid::{Grid, Pasted};

use crate::card::{BackFrom, Card, FittedSides, LeafEdge, OpeningKind};
use crate::file::{ReadError, read_ron};
use crate::length::Unit;
use crate::lift::PieceCount;
use crate::part::LeafId;
use crate::validate::Problem;

/// Titles of the columns of [`CardDraft::sizes`] that mean something of their own. Every further
/// column is one of the paper's: a number may name it by its title.
pub mod columns {
    /// Name of the size.
    pub const SIZE: &str = "size";
    /// Least that it carries: mass, moment, or height times mass.
    pub const LOAD_MIN: &str = "load min";
    /// Most that it carries.
    pub const LOAD_MAX: &str = "load max";
    /// Opening angle of a load that is a moment, degrees; empty for a mass.
    pub const AT_ANGLE: &str = "at angle";
    /// Least door height.
    pub const HEIGHT_MIN: &str = "height min";
    /// Greatest door height.
    pub const HEIGHT_MAX: &str = "height max";
    /// Least door width.
    pub const WIDTH_MIN: &str = "width min";
    /// Greatest door width.
    pub const WIDTH_MAX: &str = "width max";
    /// Least clear depth.
    pub const LEAST_DEPTH: &str = "least depth";
    /// Least clear height.
    pub const LEAST_HEIGHT: &str = "least height";
    /// Turns of a spring's setting screw.
    pub const TURNS: &str = "turns";
    /// Friction of a spring, a moment.
    pub const FRICTION: &str = "friction";
    /// Nominal force of a strut; a size with one is lifted by a strut.
    pub const STRUT_FORCE: &str = "strut force";
    /// Compressed over extended force of a strut.
    pub const PROGRESSION: &str = "progression";
    /// Stroke of a strut.
    pub const STROKE: &str = "stroke";
    /// Extended length of a strut.
    pub const LENGTH: &str = "length";
    /// Friction of a strut, a force.
    pub const ROD_FRICTION: &str = "rod friction";
    /// Anchor of a strut in the box, down.
    pub const BOX_DOWN: &str = "box anchor down";
    /// The same, back.
    pub const BOX_BACK: &str = "box anchor back";
    /// Anchor of a strut on the door, down.
    pub const DOOR_DOWN: &str = "door anchor down";
    /// The same, behind the back of the door.
    pub const DOOR_BACK: &str = "door anchor back";

    /// Those that every size has.
    pub const PLAIN: [&str; 10] = [
        SIZE,
        LOAD_MIN,
        LOAD_MAX,
        AT_ANGLE,
        HEIGHT_MIN,
        HEIGHT_MAX,
        WIDTH_MIN,
        WIDTH_MAX,
        LEAST_DEPTH,
        LEAST_HEIGHT,
    ];
    /// Those of a size that is lifted by a spring.
    pub const SPRING: [&str; 2] = [TURNS, FRICTION];
    /// Those of a size that is lifted by a strut.
    pub const STRUT: [&str; 9] = [
        STRUT_FORCE,
        PROGRESSION,
        STROKE,
        LENGTH,
        ROD_FRICTION,
        BOX_DOWN,
        BOX_BACK,
        DOOR_DOWN,
        DOOR_BACK,
    ];

    /// Whether a title is one of these and no column of the paper's own.
    #[must_use]
    pub fn is_known(title: &str) -> bool {
        crate::field::SizeColumn::titled(title).is_some()
    }
}

/// Largest file of a draft that is read, bytes.
pub const LARGEST_DRAFT: usize = 1024 * 1024;

/// A card as its paper gives it.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields, default)]
pub struct CardDraft {
    /// Name, unique in the job.
    pub name: String,
    /// How a door on it opens.
    pub kind: OpeningKind,
    /// Free text: maker, article, where the numbers are from.
    pub maker_text: String,
    /// Whether the numbers are invented for demonstration.
    pub invented: bool,
    /// How the paper speaks.
    pub paper: Paper,
    /// Which sides of the box it sits on.
    pub sides: FittedSides,
    /// Whether what a size carries is said of a pair or of one piece.
    pub per: PieceCount,
    /// Bores in the inner face of each fitted side.
    pub side_bores: Vec<DraftSideBore>,
    /// Bores in the underside of the panel above the opening.
    pub top_bores: Vec<DraftTopGroup>,
    /// Bores in the back of the door.
    pub door_bores: Vec<DraftDoorGroup>,
    /// The space that the body takes.
    pub envelope: DraftEnvelope,
    /// Adjustment: sideways, upward, depth.
    pub adjustment: [DraftAdjustmentRange; 3],
    /// Pivots, arms and end angle.
    pub linkage: DraftLinkage,
    /// Parts cut to length.
    pub cut_parts: Vec<DraftCutPart>,
    /// What else the instructions say.
    pub notes: String,
    /// One row a size; see [`columns`].
    pub sizes: Grid,
    /// Loads by height, columns: size, `door` or `box`, height, least and greatest mass.
    pub loads: Grid,
    /// Spring moments, columns: size, opening angle, weakest, strongest.
    pub springs: Grid,
    /// The worked example.
    pub example: Option<DraftExample>,
}

/// How the paper speaks.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields, default)]
pub struct Paper {
    /// Unit of bare lengths.
    pub length: Unit,
    /// Unit of bare loads: kg, N, N·m with millimetres; lb, lbf, lbf·in with inches.
    pub loads: Unit,
    /// What the load columns of the sizes table hold.
    pub load_given: LoadGiven,
    /// Overlay at the fitting's side of the door that the paper draws; for distances from that
    /// edge.
    pub overlay_side: String,
    /// Overlay at the top of that door; for distances from its top edge.
    pub overlay_top: String,
    /// Thickness of the top of the box that the paper draws; for distances from the end of the
    /// side.
    pub top_thickness: String,
}

/// What the load columns of the sizes table hold.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default, Serialize, Deserialize)]
pub enum LoadGiven {
    /// A mass, or with an angle beside it a moment at that angle.
    #[default]
    MassOrMoment,
    /// Door height times door mass (kg·mm, lb·in), as for top-hinged flaps; turned into the moment
    /// of an even door when level.
    HeightTimesMass,
}

/// A distance as the paper gives it.
#[derive(Debug, Clone, PartialEq, Eq, Default, Serialize, Deserialize)]
#[serde(deny_unknown_fields, default)]
pub struct DraftDistance<D> {
    /// From where.
    pub from: D,
    /// How far, or the title of a column.
    pub by: String,
}

/// What is drilled.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields, default)]
pub struct DraftDrill {
    /// Diameter.
    pub diameter: String,
    /// Depth, or the word `through`.
    pub depth: String,
    /// What it is for.
    pub purpose: String,
    /// In which pass.
    pub pass: u8,
}

/// A bore in the inner face of a side.
#[derive(Debug, Clone, PartialEq, Eq, Default, Serialize, Deserialize)]
#[serde(deny_unknown_fields, default)]
pub struct DraftSideBore {
    /// Vertically.
    pub down: DraftDistance<DownDatum>,
    /// In depth.
    pub back: DraftDistance<BackDatum>,
    /// What is drilled.
    pub drill: DraftDrill,
}

/// A group of bores in the panel above the opening.
#[derive(Debug, Clone, PartialEq, Eq, Default, Serialize, Deserialize)]
#[serde(deny_unknown_fields, default)]
pub struct DraftTopGroup {
    /// At each fitted side once, or spread over the width.
    pub spread: Option<DraftSpread>,
    /// The bores.
    pub bores: Vec<DraftTopBore>,
}

/// A bore in the panel above the opening.
#[derive(Debug, Clone, PartialEq, Eq, Default, Serialize, Deserialize)]
#[serde(deny_unknown_fields, default)]
pub struct DraftTopBore {
    /// Across.
    pub across: DraftDistance<AcrossDatum>,
    /// In depth.
    pub back: DraftDistance<BackDatum>,
    /// What is drilled.
    pub drill: DraftDrill,
}

/// A group of bores in the back of a leaf.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct DraftDoorGroup {
    /// Which leaf.
    pub leaf: LeafId,
    /// At each fitted side once, or spread over the width.
    #[serde(default)]
    pub spread: Option<DraftSpread>,
    /// The bores.
    #[serde(default)]
    pub bores: Vec<DraftDoorBore>,
}

/// A bore in the back of a leaf.
#[derive(Debug, Clone, PartialEq, Eq, Default, Serialize, Deserialize)]
#[serde(deny_unknown_fields, default)]
pub struct DraftDoorBore {
    /// Across.
    pub across: DraftDistance<AcrossDatum>,
    /// Vertically.
    pub down: DraftDistance<DownDatum>,
    /// What is drilled.
    pub drill: DraftDrill,
    /// Distances to the leaf's edges that the paper allows.
    pub edge_ranges: Vec<DraftEdgeRange>,
    /// Whether the paper allows it in glass or metal.
    pub in_glass_or_metal: bool,
}

/// A range of distances to an edge of the leaf.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct DraftEdgeRange {
    /// The edge.
    pub edge: LeafEdge,
    /// Least.
    pub min: String,
    /// Greatest.
    pub max: String,
}

/// Groups spread over the width.
#[derive(Debug, Clone, PartialEq, Eq, Default, Serialize, Deserialize)]
#[serde(deny_unknown_fields, default)]
pub struct DraftSpread {
    /// From each mounting face to the outermost group.
    pub end_inset: String,
    /// Columns: up to this clear width, number of groups.
    pub counts: Grid,
}

/// The space that the body takes.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields, default)]
pub struct DraftEnvelope {
    /// Top below the underside above the opening.
    pub down_from: String,
    /// Bottom below the same; may differ by size.
    pub down_to: String,
    /// Front behind the front datum.
    pub back_from: String,
    /// Rear behind the same; may differ by size.
    pub back_to: String,
    /// Inward from the mounting face.
    pub inward: String,
    /// The front datum.
    pub front: BackFrom,
}

/// Adjustment in one direction; both empty: none.
#[derive(Debug, Clone, PartialEq, Eq, Default, Serialize, Deserialize)]
#[serde(deny_unknown_fields, default)]
pub struct DraftAdjustmentRange {
    /// Least, negative or empty.
    pub min: String,
    /// Greatest, or empty.
    pub max: String,
}

/// A pivot place.
#[derive(Debug, Clone, PartialEq, Eq, Default, Serialize, Deserialize)]
#[serde(deny_unknown_fields, default)]
pub struct DraftPivot {
    /// Down from the underside above the opening; may differ by size.
    pub down: String,
    /// Back from the front datum; may differ by size.
    pub back: String,
}

/// Pivots, arms and end angle.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct DraftLinkage {
    /// The front datum of the pivots.
    pub front: BackFrom,
    /// Input angle when fully open, degrees.
    pub end_angle: String,
    /// The bodies.
    pub bodies: DraftBodies,
    /// How far the true path may lie off; empty for none.
    #[serde(default)]
    pub path_tolerance: String,
    /// Damping about the input, N·m·s; empty for none.
    #[serde(default)]
    pub damping: String,
}

/// The moving bodies of each opening kind; see [`crate::linkage::Bodies`].
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub enum DraftBodies {
    /// Flap about a fixed axis.
    FixedAxis {
        /// The axis.
        axis: DraftPivot,
    },
    /// Flap on a linked hinge.
    PoseTable {
        /// The point whose path the rows give.
        reference: DraftPivot,
        /// Columns: opening angle, out, up.
        poses: Grid,
    },
    /// Two equal arms.
    Parallel {
        /// First arm in the box.
        box_pivot: DraftPivot,
        /// First arm on the door.
        door_pivot: DraftPivot,
        /// Second arm below the first.
        second_down: String,
        /// Second arm behind the first.
        second_back: String,
    },
    /// Two leaves and a guiding link.
    Folding {
        /// Axis of the upper leaf.
        axis: DraftPivot,
        /// Joint axis behind the back face.
        joint_behind: String,
        /// Link in the box.
        link_box: DraftPivot,
        /// Link on the lower leaf, below the joint.
        link_below_joint: String,
        /// The same behind the back face.
        link_behind: String,
    },
    /// Two arms of different lengths.
    TwoArms {
        /// First arm in the box.
        box_first: DraftPivot,
        /// First arm on the door.
        door_first: DraftPivot,
        /// Second arm in the box.
        box_second: DraftPivot,
        /// Second arm on the door.
        door_second: DraftPivot,
    },
}

/// A part cut to length.
#[derive(Debug, Clone, PartialEq, Eq, Default, Serialize, Deserialize)]
#[serde(deny_unknown_fields, default)]
pub struct DraftCutPart {
    /// What it is.
    pub name: String,
    /// Clear width less this.
    pub deduction: String,
    /// How many for one door.
    pub count: u32,
}

/// The worked example.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields, default)]
pub struct DraftExample {
    /// Name of the size.
    pub size: String,
    /// Thickness of top and sides.
    pub panel_thickness: String,
    /// Overlays: left, right, top, bottom.
    pub overlays: [String; 4],
    /// Packing; empty for none.
    pub packing: String,
    /// Joint of a folding pair below the underside; empty for none.
    pub joint_down: String,
    /// Columns: down from the top end of the side, back from its front edge.
    pub side: Grid,
    /// Columns: in from the door's edge, down from its top edge.
    pub door: Grid,
}

impl CardDraft {
    /// The card, or everything that keeps this from being one. A problem's field is the draft's
    /// own: `side_bores[0].down`, `sizes[2] "load max"`; its text names value, limit and remedy.
    ///
    /// # Errors
    /// Every problem, in the order of the form.
    pub fn resolve(&self) -> Result<Card, Vec<Problem>> {
        resolve::resolve(self)
    }

    /// Reads a draft from the text of its file.
    ///
    /// # Errors
    /// [`ReadError::TooLarge`], or [`ReadError::Text`] with line and field. What is typed in the
    /// draft is not judged.
    pub fn read(text: &str) -> Result<Self, ReadError> {
        read_ron(text, LARGEST_DRAFT)
    }

    /// The text of its file; the same draft always gives the same bytes.
    #[must_use]
    pub fn write(&self) -> String {
        crate::file::write_ron(self)
    }
}
