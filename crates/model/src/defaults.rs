//! The plainest of each thing: what is new starts from these, and what is not known is left plain.
//! What is called usual has the numbers that the table of fields says.

use crate::cabinet::{
    Back, CornerJoint, Drilled, FaceFrame, HorizontalPanel, Panel, PanelBands, Place, SystemRows,
    WallBox,
};
use crate::door::{
    BoreReference, BuildUp, Door, DoorFit, DrilledBore, End, Grain, Handle, HandleScrews, Infill,
    Leaf, Leaves, Side, TypedMass,
};
use crate::edges::{Edge, Edges};
use crate::field::{BoreField, BoxField, DoorField, LeafField};
use crate::id::{BoxId, DoorId, ShelfId};
use crate::opening::{FixedShelf, LooseShelf, Opening};
use crate::part::LeafId;

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
    /// A frameless box, without identities yet, of these outer sizes (width, height, depth, mm), all
    /// panels alike, top and bottom between the sides, open at the back, with one opening and the
    /// door given.
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

impl FaceFrame {
    /// The usual frame, all members alike and flush with the inner faces behind them.
    #[must_use]
    pub fn usual(material: &str) -> Self {
        let usual = |field: BoxField| field.info().usual.number();
        Self {
            thickness: usual(BoxField::FrameThickness),
            material: material.to_owned(),
            members: Edges::all(usual(BoxField::FrameMember(Edge::Left))),
            overhang: Edges::all(usual(BoxField::FrameOverhang(Edge::Left))),
            shelf_rail: usual(BoxField::ShelfRail),
        }
    }
}

impl SystemRows {
    /// Rows as the trade drills them.
    #[must_use]
    pub fn usual() -> Self {
        let usual = |field: BoxField| field.info().usual.number();
        Self {
            front: usual(BoxField::RowFront),
            rear: usual(BoxField::RowRear),
            first: usual(BoxField::RowFirst),
            last: usual(BoxField::RowLast),
            diameter: usual(BoxField::RowDiameter),
            depth: usual(BoxField::RowDepth),
        }
    }
}

impl DoorFit {
    /// An overlay door with the usual reveals.
    #[must_use]
    pub fn usual_overlay() -> Self {
        let reveal = DoorField::Reveal(Edge::Left).info().usual.number();
        Self::Overlay {
            reveals: Edges::all(reveal),
        }
    }

    /// An inset door with the usual gaps.
    #[must_use]
    pub fn usual_inset() -> Self {
        Self::Inset {
            gaps: Edges::all(DoorField::Gap(Edge::Left).info().usual.number()),
            set_back: DoorField::SetBack.info().usual.number(),
        }
    }
}

impl Handle {
    /// A small bow handle near the lower edge, not screwed through.
    #[must_use]
    pub fn usual() -> Self {
        let usual = |field: DoorField| field.info().usual.number();
        Self {
            mass: usual(DoorField::HandleMass),
            up: usual(DoorField::HandleUp),
            right_of_middle: usual(DoorField::HandleRight),
            projection: usual(DoorField::HandleProjection),
            length: usual(DoorField::HandleLength),
            screws: None,
        }
    }
}

impl HandleScrews {
    /// Two screws at the usual spacing.
    #[must_use]
    pub fn usual() -> Self {
        Self {
            spacing: DoorField::ScrewSpacing.info().usual.number(),
            diameter: DoorField::ScrewDiameter.info().usual.number(),
        }
    }
}

impl TypedMass {
    /// What is typed over first.
    #[must_use]
    pub fn usual() -> Self {
        Self {
            kilograms: DoorField::Mass.info().usual.number(),
            plus_minus: DoorField::MassRange.info().usual.number(),
        }
    }
}

impl Infill {
    /// A thin panel in a groove.
    #[must_use]
    pub fn usual(material: &str) -> Self {
        let usual = |field: LeafField| field.info().usual.number();
        Self {
            thickness: usual(LeafField::InfillThickness),
            material: material.to_owned(),
            tongue: usual(LeafField::InfillTongue),
            behind: usual(LeafField::InfillBehind),
        }
    }
}

impl DrilledBore {
    /// A screw of a fitting near the upper left corner.
    #[must_use]
    pub fn usual(leaf: LeafId) -> Self {
        let usual = |field: BoreField| field.info().usual.number();
        Self {
            leaf,
            from_side: Side::Left,
            across: usual(BoreField::Across),
            from_end: End::Top,
            along: usual(BoreField::Along),
            diameter: usual(BoreField::Diameter),
            depth: usual(BoreField::Depth),
            purpose: "fitting screw".to_owned(),
        }
    }
}
