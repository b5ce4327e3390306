//! What remedies do, and their effects.

use flapwright_model::message::{Count, Mm, Times, Whole, Word};
use flapwright_model::messages;
use flapwright_model::part::Subject;
use flapwright_motion::reason::Reason;

use super::load::FittingName;

messages! {
    /// What a remedy does: the text of its button.
    pub enum RemedyKind in "remedy" {
        /// Tweaks become reveals.
        MakeReveal = "make-reveal",
        /// The bores follow the fitting again.
        BoresToFitting = "bores-to-fitting",
        /// Tweaks are taken off.
        UndoTweak = "undo-tweak",
        /// Another size or card.
        TakeSize = "take-size" { fitting: FittingName },
        /// The box hangs lower.
        LowerBox = "lower-box" { by: Mm },
        /// A drilled panel is drilled anew.
        PlugAndRedrill = "plug-and-redrill",
        /// Reveals that suit a drilled door.
        Refit = "refit",
        /// Packing behind the fitting.
        PackOut = "pack-out",
        /// A door of two leaves.
        TwoLeaves = "two-leaves",
        /// A door of one leaf.
        OneLeaf = "one-leaf",
        /// Rows of shelf bores on the fitting's grid.
        MoveRows = "move-rows",
        /// Hinge cups are plugged.
        PlugCups = "plug-cups",
        /// Reveals alike.
        EvenReveals = "even-reveals",
        /// A larger top gap.
        TopGap = "top-gap" { to: Mm },
        /// A thicker leaf.
        Thickness = "thickness" { to: Mm },
    }
}

messages! {
    /// What a remedy changes, in numbers, before it is applied.
    pub enum Effect in "effect" {
        /// The largest offset of a bore.
        LargestOffset = "largest-offset" { was: Mm, is: Mm },
        /// Width of the door.
        DoorWidth = "door-width" { was: Mm, is: Mm },
        /// Height of the door.
        DoorHeight = "door-height" { was: Mm, is: Mm },
        /// The door keeps its size.
        SameSize = "same-size",
        /// Overlay at an edge.
        Overlay = "overlay" { edge: Word, was: Mm, is: Mm },
        /// Gap at an edge of an inset door.
        Gap = "gap" { edge: Word, was: Mm, is: Mm },
        /// No bore moves in the box.
        NoBoreMoves = "no-bore-moves",
        /// Bores move in the box.
        BoresMove = "bores-move" { by: Mm, was: Mm, is: Mm },
        /// The height of the box on the wall.
        Underside = "underside" { was: Mm, is: Mm },
        /// No bore changes.
        BoresStay = "bores-stay",
        /// Packing of the fitting.
        Packing = "packing" { was: Mm, is: Mm },
        /// Bores of the door move inward.
        BoresMoveIn = "bores-move-in" { by: Mm },
        /// Two leaves alike.
        LeavesAlike = "leaves-alike" { joint: Mm, gap: Mm },
        /// One leaf like the upper one.
        LeafLikeUpper = "leaf-like-upper",
        /// First bore of the rows.
        FirstShelfBore = "first-shelf-bore" { was: Mm, is: Mm },
        /// Bores taken off the list of drilled ones.
        FewerBores = "fewer-bores" { bores: Count },
        /// A reveal of a door.
        Reveal = "reveal" { door: Subject, edge: Word, was: Mm, is: Mm },
        /// The top gap grows.
        TopGapGrows = "top-gap-grows" { by: Mm },
        /// Thickness of a leaf.
        Thickness = "thickness" { was: Mm, is: Mm },
        /// What sag is left.
        SagsAtMost = "sags-at-most" { sag: Mm },
        /// In place of another fitting.
        InPlaceOf = "in-place-of" { fitting: FittingName },
        /// In place of a one-sided fitting.
        BothSides = "both-sides" { door: Subject, fitting: FittingName },
        /// The bores of a drilled panel agree.
        BoresAgree = "bores-agree" { bores: Count },
        /// All drilled panels agree.
        AllAgree = "all-agree",
        /// Other drilled panels differ.
        OthersDiffer = "others-differ" { panels: Count },
        /// Where to see what a size carries.
        SeeSizes = "see-sizes",
        /// The panel is cut again.
        CutAgain = "cut-again",
        /// Bores to plug.
        Plug = "plug" { bores: Count },
        /// Bores to drill.
        Drill = "drill" { bores: Count },
        /// The panel counts as not drilled.
        NotDrilled = "not-drilled",
        /// The door has its drilled size and its bores are nearly right.
        DrilledSize = "drilled-size" { off: Mm },
        /// The load and what the size carries.
        Load = "load" { load: Reason },
        /// The setting that balances the door.
        Turns = "turns" { turns: Times, of: Whole },
        /// The fitting's bores follow the size.
        BoresFollowSize = "bores-follow-size",
    }
}

messages! {
    /// An accepted finding that is back.
    pub enum Reopened in "reopened" {
        /// It is graver.
        Graver = "graver" { reason: String, was: Word, is: Word },
        /// It has more numbers.
        More = "more" { reason: String },
        /// A number got worse.
        Worse = "worse" {
            reason: String,
            number: flapwright_model::message::NumberName,
            was: flapwright_model::message::Value,
            is: flapwright_model::message::Value,
        },
    }
}
