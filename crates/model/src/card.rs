//! Fitting cards: the numbers of one lift fitting, typed from its own instructions.
//!
//! A card is data. Each bore is a datum and a distance per axis; there is no formula language, so
//! that every distance can be drawn as a dimension.

use std::collections::BTreeMap;
use std::fmt;

use serde::de::{Error as _, MapAccess, SeqAccess, Visitor};
use serde::{Deserialize, Deserializer, Serialize};

use crate::door::Side;
use crate::edges::Edges;
use crate::lift::{Carries, Lift, PieceCount};
use crate::linkage::Linkage;
use crate::part::LeafId;

/// How a door opens.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
pub enum OpeningKind {
    /// Turns about an axis near its top edge.
    TopHingedFlap,
    /// Stays vertical while arms carry it up.
    ParallelRisingDoor,
    /// Two leaves that fold against each other on the way up.
    FoldingPair,
    /// Travels up and over the top of the box.
    OverTheTopDoor,
}

impl OpeningKind {
    /// All four, in the order in which lists show them.
    pub const ALL: [Self; 4] = [
        Self::TopHingedFlap,
        Self::ParallelRisingDoor,
        Self::FoldingPair,
        Self::OverTheTopDoor,
    ];

    /// Name in the window, on sheets and in messages.
    #[must_use]
    pub const fn words(self) -> &'static str {
        match self {
            Self::TopHingedFlap => "top-hinged flap",
            Self::ParallelRisingDoor => "parallel-rising door",
            Self::FoldingPair => "folding pair",
            Self::OverTheTopDoor => "over-the-top door",
        }
    }

    /// How many leaves the door has.
    #[must_use]
    pub const fn leaf_count(self) -> usize {
        match self {
            Self::FoldingPair => 2,
            Self::TopHingedFlap | Self::ParallelRisingDoor | Self::OverTheTopDoor => 1,
        }
    }
}

/// One lift fitting.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Card {
    /// Name, unique in the job.
    pub name: String,
    /// How a door on it opens.
    pub kind: OpeningKind,
    /// Free text: maker, article, where the numbers are from.
    #[serde(default)]
    pub maker_text: String,
    /// Whether the numbers are invented for demonstration; printed on every sheet.
    #[serde(default)]
    pub invented: bool,
    /// Which sides of the box it sits on.
    pub sides: FittedSides,
    /// Whether what a size carries is said of a pair or of one piece.
    pub per: PieceCount,
    /// Bores in the inner face of each fitted side.
    pub side_bores: Vec<SideBore>,
    /// Bores in the underside of the panel above the opening.
    #[serde(default)]
    pub top_bores: Vec<TopGroup>,
    /// Bores in the back of the door.
    pub door_bores: Vec<DoorGroup>,
    /// The space that the body takes inside the box.
    pub envelope: Envelope,
    /// What it can be adjusted by after mounting.
    pub adjustment: Adjustment,
    /// Pivots, arms and end angle.
    pub linkage: Linkage,
    /// Parts that are cut to length for each box.
    #[serde(default)]
    pub cut_parts: Vec<CutPart>,
    /// What else the instructions say, printed on the fitting's page.
    #[serde(default)]
    pub notes: String,
    /// The sizes, from light to heavy.
    #[serde(deserialize_with = "few_sizes")]
    pub sizes: Vec<Size>,
    /// The worked example from the instructions, against which the card is tried.
    pub example: Option<Example>,
}

/// Which sides of the box carry a fitting.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
pub enum FittedSides {
    /// One at each side, mirrored.
    Both,
    /// Only at box-left.
    LeftOnly,
    /// Only at box-right.
    RightOnly,
}

impl FittedSides {
    /// The fitted sides, left first.
    #[must_use]
    pub const fn ties(self) -> &'static [Side] {
        match self {
            Self::Both => &[Side::Left, Side::Right],
            Self::LeftOnly => &[Side::Left],
            Self::RightOnly => &[Side::Right],
        }
    }
}

/// A number that is the same for all sizes or has its own value for each, mm.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub enum PerSize {
    /// The same for all sizes.
    All(f64),
    /// By the size's name; every size of the card is named once.
    BySize(#[serde(deserialize_with = "each_once")] BTreeMap<String, f64>),
}

/// Most sizes on one card.
pub const MOST_SIZES: usize = 200;

/// Reads sizes and gives up after the most that a card has, so that an endless list costs nothing.
fn few_sizes<'de, D: Deserializer<'de>>(from: D) -> Result<Vec<Size>, D::Error> {
    struct Sizes;
    impl<'de> Visitor<'de> for Sizes {
        type Value = Vec<Size>;

        fn expecting(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
            f.write_str("a list of sizes")
        }

        fn visit_seq<A: SeqAccess<'de>>(self, mut seq: A) -> Result<Self::Value, A::Error> {
            let mut sizes = Vec::new();
            while let Some(size) = seq.next_element()? {
                if sizes.len() == MOST_SIZES {
                    let what = format!(
                        "has more than {MOST_SIZES} entries; a card has 1 to {MOST_SIZES} sizes; \
                         split the card"
                    );
                    return Err(A::Error::custom(what));
                }
                sizes.push(size);
            }
            Ok(sizes)
        }
    }
    from.deserialize_seq(Sizes)
}

/// Reads a table by size and refuses a size that is named twice: the second value would silently
/// take the place of the first.
fn each_once<'de, D: Deserializer<'de>>(from: D) -> Result<BTreeMap<String, f64>, D::Error> {
    struct Table;
    impl<'de> Visitor<'de> for Table {
        type Value = BTreeMap<String, f64>;

        fn expecting(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
            f.write_str("a value for each size")
        }

        fn visit_map<A: MapAccess<'de>>(self, mut map: A) -> Result<Self::Value, A::Error> {
            let mut table = BTreeMap::new();
            while let Some((name, value)) = map.next_entry::<String, f64>()? {
                if table.contains_key(&name) {
                    let what = format!("the size {name:?} is named twice; keep one of them");
                    return Err(A::Error::custom(what));
                }
                table.insert(name, value);
            }
            Ok(table)
        }
    }
    from.deserialize_map(Table)
}

impl PerSize {
    /// The value for a size; `None` when the table lacks that size.
    #[must_use]
    pub fn of(&self, size: &str) -> Option<f64> {
        match self {
            Self::All(value) => Some(*value),
            Self::BySize(table) => table.get(size).copied(),
        }
    }
}

/// A distance from a datum.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Distance<D> {
    /// The edge or face from which it is given.
    pub from: D,
    /// The distance, mm; the datum says which way is positive.
    pub by: PerSize,
}

/// Vertical datums; distances are + down.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
pub enum DownFrom {
    /// Underside of the panel above the opening: the box top, or a fixed shelf.
    BoxTopUnderside,
    /// Underside of the face frame's rail above the opening; the same as `BoxTopUnderside` where
    /// there is no frame.
    FrameRailUnderside,
    /// Middle of the joint between the two leaves of a folding pair.
    LeafJoint,
}

/// Datums in depth; distances are + to the back.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
pub enum BackFrom {
    /// Front edges of the sides, pushed back by an inset door's thickness and set-back.
    SideFront,
    /// Front of the face frame (front edges of the sides where there is none), pushed back by an
    /// inset door's thickness and set-back.
    FrameFront,
}

/// Datums across.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
pub enum AcrossFrom {
    /// The face that the fitting is mounted on: inner face of the side, or of the packing on it.
    /// Distances are + towards the middle of the opening.
    MountingFace,
    /// The point of a spread group; distances are + to box-right.
    SpreadPoint,
}

/// How deep a bore is.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub enum Depth {
    /// To this depth at full diameter, mm.
    Blind(f64),
    /// Through the panel.
    Through,
}

/// Diameter, depth and purpose: what the drill makes, wherever it is.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Drill {
    /// Diameter, mm.
    pub diameter: f64,
    /// Depth.
    pub depth: Depth,
    /// What it is for, e.g. `fitting screw`.
    pub purpose: String,
    /// In which pass it is drilled; bores of one centre in different passes make a stepped bore.
    #[serde(default = "first_pass")]
    pub pass: u8,
}

/// The pass of a plain bore.
#[must_use]
pub const fn first_pass() -> u8 {
    1
}

/// A bore in the inner face of a side.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct SideBore {
    /// Where it is, vertically.
    pub down: Distance<DownFrom>,
    /// Where it is, in depth.
    pub back: Distance<BackFrom>,
    /// What is drilled.
    pub drill: Drill,
}

/// A group of bores in the underside of the panel above the opening.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct TopGroup {
    /// At each fitted side once, or spread over the width.
    #[serde(default)]
    pub spread: Option<Spread>,
    /// The bores of one group.
    pub bores: Vec<TopBore>,
}

/// A bore in the underside of the panel above the opening.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct TopBore {
    /// Where it is, across.
    pub across: Distance<AcrossFrom>,
    /// Where it is, in depth.
    pub back: Distance<BackFrom>,
    /// What is drilled.
    pub drill: Drill,
}

/// A group of bores in the back of a leaf.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct DoorGroup {
    /// Which leaf.
    pub leaf: LeafId,
    /// At each fitted side once, or spread over the width.
    #[serde(default)]
    pub spread: Option<Spread>,
    /// The bores of one group.
    pub bores: Vec<DoorBore>,
}

/// A bore in the back of a leaf.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct DoorBore {
    /// Where it is, across.
    pub across: Distance<AcrossFrom>,
    /// Where it is, vertically.
    pub down: Distance<DownFrom>,
    /// What is drilled.
    pub drill: Drill,
    /// Distances to the leaf's edges that the instructions allow.
    #[serde(default)]
    pub edge_ranges: Vec<EdgeRange>,
    /// Whether the instructions allow this bore in a leaf of glass or metal.
    #[serde(default)]
    pub in_glass_or_metal: bool,
}

/// The distance from a bore's centre to a finished edge of its leaf that the instructions allow.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct EdgeRange {
    /// The edge from which the distance is measured.
    pub edge: LeafEdge,
    /// Least distance, mm.
    pub min: f64,
    /// Greatest distance, mm.
    pub max: f64,
}

/// An edge of a leaf as a card names it: the same words for both hands.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
pub enum LeafEdge {
    /// The upright edge on the fitting's own side.
    OwnSide,
    /// The top edge.
    Top,
    /// The bottom edge.
    Bottom,
}

/// n groups over the clear width between the mounting faces: the ends inset, the rest equally
/// spaced. The clear width decides n, so that no reveal changes the count.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Spread {
    /// From each mounting face to the point of the outermost group, mm.
    pub end_inset: f64,
    /// How many groups up to which clear width, in rising order; beyond the last row the last
    /// count stands.
    pub counts: Vec<SpreadCount>,
}

/// A row of the width table of a spread group.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct SpreadCount {
    /// Up to this clear width, mm, this row holds.
    pub up_to: f64,
    /// Number of groups, 1 or more.
    pub count: u32,
}

impl Spread {
    /// Number of groups over a clear width, mm.
    #[must_use]
    pub fn count_for(&self, clear_width: f64) -> u32 {
        self.counts
            .iter()
            .find(|row| clear_width <= row.up_to)
            .or(self.counts.last())
            .map_or(0, |row| row.count)
    }
}

/// The space that the body of the fitting takes beside each fitted side, mm from its datums.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Envelope {
    /// Top of the body below the underside of the panel above the opening.
    pub down_from: f64,
    /// Bottom of the body below the same.
    pub down_to: PerSize,
    /// Front of the body behind the front datum.
    pub back_from: f64,
    /// Rear of the body behind the front datum; also the least clear depth.
    pub back_to: PerSize,
    /// How far it stands in from the mounting face.
    pub inward: f64,
    /// The front datum that it counts from.
    pub front: BackFrom,
}

/// Least and greatest adjustment in one direction, mm; `min <= 0 <= max`.
#[derive(Debug, Clone, Copy, PartialEq, Default, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct AdjustmentRange {
    /// Least (negative).
    pub min: f64,
    /// Greatest.
    pub max: f64,
}

/// What a fitting can be adjusted by after mounting: how the **door** moves in the box.
#[derive(Debug, Clone, Copy, PartialEq, Default, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Adjustment {
    /// Sideways, + to box-right.
    pub sideways: AdjustmentRange,
    /// Up and down, + up.
    pub upward: AdjustmentRange,
    /// In depth, + into the box.
    pub depth: AdjustmentRange,
}

/// A part that is cut to length for each box, e.g. a bar between the arms.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct CutPart {
    /// What it is.
    pub name: String,
    /// Clear width between the mounting faces less this, mm.
    pub deduction: f64,
    /// How many for one door.
    pub count: u32,
}

/// One size of a card.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Size {
    /// Name, unique on the card.
    pub name: String,
    /// What it carries.
    pub carries: Carries,
    /// What lifts: spring or strut.
    pub lift: Lift,
    /// Door heights it is made for, mm.
    pub door_height: Span,
    /// Door widths it is made for, mm.
    pub door_width: Span,
    /// Least clear depth inside the box, mm from the front datum.
    pub least_inner_depth: f64,
    /// Least clear height of the opening, mm.
    pub least_inner_height: f64,
}

/// From and to, mm.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Span {
    /// Least.
    pub min: f64,
    /// Greatest.
    pub max: f64,
}

/// The worked example of the instructions: a door and the distances that must come out.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Example {
    /// Name of the size it is worked for.
    pub size: String,
    /// Thickness of top and sides, mm (frameless box, top between the sides).
    pub panel_thickness: f64,
    /// Overlays of the door, mm.
    pub overlays: Edges<f64>,
    /// Packing, mm.
    #[serde(default)]
    pub packing: f64,
    /// For a folding pair: the middle of the joint below the underside of the top, mm.
    #[serde(default)]
    pub joint_down: f64,
    /// Expected side bores in the order of the card: down from the **top end of the side** and
    /// back from its front edge, mm.
    pub side: Vec<(f64, f64)>,
    /// Expected door bores of the fitting at box-left (of the only one where it has one), in the
    /// order of the card (spread groups left out): in from the door's edge on that side and down
    /// from the top edge of the whole door, mm.
    pub door: Vec<(f64, f64)>,
}

impl Card {
    /// The size of that name.
    #[must_use]
    pub fn size(&self, name: &str) -> Option<&Size> {
        self.sizes.iter().find(|size| size.name == name)
    }
}
