//! What the checks on recorded panels say, and on doors that look alike.

use flapwright_model::message::{Count, Mm, Word};
use flapwright_model::messages;
use flapwright_model::part::Subject;

use super::bores::Step;

messages! {
    /// A bore as it is drilled, and where.
    pub enum BorePlace in "bore-place" {
        /// A blind bore.
        Blind = "blind" { diameter: Mm, depth: Mm, u: Mm, v: Mm },
        /// A bore right through.
        Through = "through" { diameter: Mm, u: Mm, v: Mm },
    }
}

messages! {
    /// How a recorded panel differs from the one that is needed now.
    pub enum PanelDiffers in "panel-differs" {
        /// In a size.
        Size = "size" { what: Word, was: Mm, is: Mm },
        /// Bores that are needed in another place.
        Moved = "moved" { bores: Count, furthest: Count, way: Vec<Step> },
        /// Bores that are needed at another depth only.
        Deeper = "deeper" { bores: Count, furthest: Count, way: Vec<Step> },
        /// Bores that are needed and not there.
        Missing = "missing" { bores: Count },
        /// Bores that are there and not needed.
        Surplus = "surplus" { bores: Count },
        /// A drilled bore that is needed elsewhere.
        Redrill = "redrill" {
            bore: Count, purpose: String, way: Vec<Step>, was: BorePlace, is: BorePlace,
        },
        /// A missing bore of a drilled panel.
        Drill = "drill" { purpose: String, is: BorePlace },
        /// A drilled bore that is not needed.
        Plug = "plug" { bore: Count, purpose: String, was: BorePlace },
        /// A bore of an issued sheet that is needed elsewhere.
        SheetMoved = "sheet-moved" {
            bore: Count, purpose: String, way: Vec<Step>, was: BorePlace, is: BorePlace,
        },
        /// A bore that an issued sheet lacks.
        SheetMissing = "sheet-missing" { purpose: String, is: BorePlace },
        /// A bore of an issued sheet that is not needed.
        SheetSurplus = "sheet-surplus" { bore: Count, purpose: String, was: BorePlace },
    }
}

messages! {
    /// A drilled panel.
    pub enum DrilledPanelDiffers in "drilled-panel-differs" {
        /// It is not what is needed now.
        Differs = "differs" {
            first: PanelDiffers,
            largest_move_of_a_bore: Mm [greater],
            width_drilled: Option<Mm> [either],
            width_needed: Option<Mm> [either],
            height_drilled: Option<Mm> [either],
            height_needed: Option<Mm> [either],
            depth_drilled: Option<Mm> [either],
            depth_needed: Option<Mm> [either],
            thickness_drilled: Option<Mm> [either],
            thickness_needed: Option<Mm> [either],
        },
        /// The box has no such panel.
        Gone = "gone" { bores: Count },
    }
}

messages! {
    /// An issued sheet.
    pub enum StaleSheet in "stale-sheet" {
        /// It is out of date.
        OutOfDate = "out-of-date" {
            first: PanelDiffers,
            largest_move_of_a_bore: Mm [greater],
            bores_moved: Count [greater],
        },
        /// The revision that it carries.
        Revision = "revision" { revision: String },
        /// What to do.
        ExportAgain = "export-again",
    }
}

messages! {
    /// Two doors that look alike.
    pub enum MirroredPairDiffers in "mirrored-pair-differs" {
        /// A bore lies elsewhere.
        Apart = "apart" { other: Subject, largest_difference: Mm [greater] },
        /// One has more bores.
        OtherCount = "other-count" { other: Subject, bores: Count, others: Count },
        /// Their bores have other diameters.
        OtherDiameters = "other-diameters" { other: Subject },
    }
}
