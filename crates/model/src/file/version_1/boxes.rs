//! A box as version 1 had it.

use serde::Deserialize;

use crate::cabinet::{Back, CornerJoint, FaceFrame, HorizontalPanel, Panel, Place, SystemRows};
use crate::door::{BoreReference, DoorFit, Handle, Leaves, TypedMass};
use crate::edges::Edges;
use crate::part::LeafId;
use crate::record::{RecordState, RecordedBore};

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
pub(super) struct WallBox {
    pub(super) name: String,
    pub(super) quantity: u32,
    pub(super) place: Place,
    pub(super) width: f64,
    pub(super) height: f64,
    pub(super) depth: f64,
    pub(super) left: Panel,
    pub(super) right: Panel,
    pub(super) top: HorizontalPanel,
    pub(super) bottom: HorizontalPanel,
    pub(super) joint: CornerJoint,
    pub(super) back: Back,
    pub(super) frame: Option<FaceFrame>,
    /// In any order.
    pub(super) shelves: Vec<Shelf>,
    pub(super) system_rows: Option<SystemRows>,
    /// From the top down: one more than there are fixed shelves.
    pub(super) openings: Vec<Opening>,
    #[serde(default)]
    pub(super) records: Vec<PanelRecord>,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
pub(super) struct Shelf {
    pub(super) kind: ShelfKind,
    pub(super) up: f64,
    pub(super) piece: HorizontalPanel,
}

#[derive(Clone, Copy, Deserialize)]
#[serde(deny_unknown_fields)]
pub(super) enum ShelfKind {
    Fixed {
        gap: f64,
        upper_overlay: Option<f64>,
    },
    Adjustable,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
pub(super) struct Opening {
    pub(super) door: Option<Door>,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
pub(super) struct Door {
    pub(super) fit: DoorFit,
    #[serde(default)]
    pub(super) tweaks: Edges<f64>,
    pub(super) leaves: Leaves,
    pub(super) handle: Option<Handle>,
    #[serde(default)]
    pub(super) typed_mass: Option<TypedMass>,
    #[serde(default)]
    pub(super) bores_hang_on: BoreReference,
    pub(super) fitting: Option<FittingChoice>,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
pub(super) struct FittingChoice {
    /// By its name.
    pub(super) card: String,
    pub(super) size: String,
    #[serde(default)]
    pub(super) packing: f64,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
pub(super) struct PanelRecord {
    pub(super) part: Part,
    pub(super) state: RecordState,
    #[serde(default)]
    pub(super) revision: String,
    pub(super) size: [f64; 2],
    pub(super) thickness: f64,
    pub(super) bores: Vec<RecordedBore>,
}

#[derive(Clone, Copy, Deserialize)]
#[serde(deny_unknown_fields)]
pub(super) enum Part {
    LeftSide,
    RightSide,
    Top,
    Bottom,
    Back,
    /// Its place in the list of shelves.
    Shelf(usize),
    Frame,
    Leaf {
        /// The opening's place from the top.
        opening: usize,
        leaf: LeafId,
    },
}

impl WallBox {
    /// Places in the list of the fixed shelves, from the top down.
    pub(super) fn fixed(&self) -> Vec<usize> {
        let is_fixed = |i: &usize| matches!(self.shelves[*i].kind, ShelfKind::Fixed { .. });
        let mut fixed: Vec<usize> = (0..self.shelves.len()).filter(is_fixed).collect();
        fixed.sort_by(|&a, &b| self.shelves[b].up.total_cmp(&self.shelves[a].up));
        fixed
    }
}
