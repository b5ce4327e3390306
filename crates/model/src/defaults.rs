//! The plainest of each thing: what is new starts from these, and what is not known is left plain.

use crate::cabinet::{
    Back, CornerJoint, Drilled, HorizontalPanel, Panel, PanelBands, Place, WallBox,
};
use crate::door::{BoreReference, BuildUp, Door, DoorFit, Grain, Leaf, Leaves};
use crate::edges::Edges;
use crate::id::{BoxId, DoorId, ShelfId};
use crate::opening::{FixedShelf, LooseShelf, Opening};

impl Panel {
    /// A panel without bands, mm thick.
    #[must_use]
    pub fn plain(thickness: f64, material: &str) -> Self {
        Self {
            thickness,
            material: material.to_owned(),
            bands: PanelBands::default(),
            drilled: Drilled::default(),
        }
    }
}

impl HorizontalPanel {
    /// A panel across the box: butted, flush with the front, mm thick.
    #[must_use]
    pub fn plain(thickness: f64, material: &str) -> Self {
        Self {
            panel: Panel::plain(thickness, material),
            set_back: 0.0,
            housing: 0.0,
            set_in: 0.0,
        }
    }
}

impl Leaf {
    /// A leaf of one panel without bands, mm thick.
    #[must_use]
    pub fn plain(thickness: f64, material: &str) -> Self {
        Self {
            build: BuildUp::Plain {
                thickness,
                material: material.to_owned(),
            },
            bands: Edges::default(),
            drilled: Drilled::default(),
            grain: Grain::None,
        }
    }
}

impl Door {
    /// An overlay door without tweaks, handle and fitting; reveals in mm.
    #[must_use]
    pub fn overlay(reveals: Edges<f64>, leaves: Leaves) -> Self {
        Self {
            id: DoorId::default(),
            fit: DoorFit::Overlay { reveals },
            tweaks: Edges::default(),
            leaves,
            handle: None,
            typed_mass: None,
            bores_follow: BoreReference::Fitting,
            fitting: None,
        }
    }
}

impl FixedShelf {
    /// A shelf at this height whose doors lap alike, with this gap between them, mm.
    #[must_use]
    pub fn plain(up: f64, gap: f64, piece: HorizontalPanel) -> Self {
        Self {
            id: ShelfId::default(),
            up,
            gap,
            upper_overlay: None,
            piece,
        }
    }
}

impl LooseShelf {
    /// A shelf on pins at this height, mm.
    #[must_use]
    pub fn plain(up: f64, piece: HorizontalPanel) -> Self {
        Self {
            id: ShelfId::default(),
            up,
            piece,
        }
    }
}

impl WallBox {
    /// A frameless box, without identities yet, of these outer sizes (width, height, depth, mm), all panels alike, top and
    /// bottom between the sides, open at the back, with one opening and the door given.
    #[must_use]
    pub fn plain(outer: [f64; 3], thickness: f64, material: &str, door: Option<Door>) -> Self {
        let [width, height, depth] = outer;
        Self {
            id: BoxId::default(),
            name: String::new(),
            quantity: 1,
            place: Place::default(),
            width,
            height,
            depth,
            left: Panel::plain(thickness, material),
            right: Panel::plain(thickness, material),
            top: HorizontalPanel::plain(thickness, material),
            bottom: HorizontalPanel::plain(thickness, material),
            joint: CornerJoint::BetweenSides,
            back: Back::Open,
            frame: None,
            system_rows: None,
            body: Opening::undivided(door),
            records: Vec::new(),
        }
    }
}
