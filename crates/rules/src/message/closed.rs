//! What the checks on the closed door and its box say.

use flapwright_model::message::{Count, Kilogram, Mm, Whole, Word};
use flapwright_model::messages;
use flapwright_model::part::Subject;
use flapwright_motion::{Mend, MotionError};

use super::load::FittingName;

messages! {
    /// The face frame and the fitting.
    pub enum FrameBlocksFitting in "frame-blocks-fitting" {
        /// It stands in front of the fitting.
        InFront = "in-front" { sides: Vec<Word>, frame_before_the_fitting: Mm [either] },
    }
}

messages! {
    /// The edges of a door and what they close against.
    pub enum RevealOutOfRange in "reveal-out-of-range" {
        /// An inset door without a gap.
        NoGap = "no-gap" { edge: Word, gap: Mm [either] },
        /// An edge short of its panel.
        Misses = "misses" { edge: Word, by: Mm, overlay: Mm [either] },
        /// An edge that ends where its panel begins.
        JustMisses = "just-misses" { edge: Word, overlay: Mm [either] },
        /// Two doors on one shelf.
        NoGapBelow = "no-gap-below" { gap: Mm [either] },
        /// An edge beyond its panel.
        Past = "past" { edge: Word, by: Mm, reveal: Mm [either] },
    }
}

messages! {
    /// Doors of two boxes.
    pub enum DoorsOverlap in "doors-overlap" {
        /// They lie over each other.
        Overlap = "overlap" { other: Subject, across: Mm [either], up: Mm [either] },
        /// More boxes hang in one place than were compared.
        Crowd = "crowd" { boxes: Count [greater] },
    }
}

messages! {
    /// The size of a leaf.
    pub enum LeafHasNoSize in "leaf-has-no-size" {
        /// Nothing is left to cut.
        Nothing = "nothing" {
            what: Word, size: Mm [either], taken_by_the_frame: Mm [either],
        },
        /// Its frame takes all of it.
        FrameTakesAll = "frame-takes-all" {
            what: Word, size: Mm [either], taken_by_the_frame: Mm [either],
        },
    }
}

messages! {
    /// The depth that a fitting needs.
    pub enum BoxTooShallow in "box-too-shallow" {
        /// The box has less.
        Less = "less" {
            fitting: FittingName,
            under: Mm,
            clear_depth: Mm [smaller],
            least_clear_depth: Mm [greater],
        },
    }
}

messages! {
    /// The height that a fitting needs.
    pub enum OpeningTooShort in "opening-too-short" {
        /// The opening has less.
        Less = "less" {
            fitting: FittingName,
            under: Mm,
            clear_height: Mm [smaller],
            least_clear_height: Mm [greater],
        },
    }
}

messages! {
    /// The links of a fitting on a door.
    pub enum LinkageCannotClose in "linkage-cannot-close" {
        /// They give no motion.
        NoMotion = "no-motion" { why: MotionError },
        /// What mends that.
        Mend = "mend" { mend: Mend },
    }
}

messages! {
    /// The glass in a door.
    pub enum GlassNeedsSafetyGlass in "glass-needs-safety-glass" {
        /// It is not said to be safety glass.
        Plain = "plain" { thickness_of_the_glass: Mm [smaller], glass: String },
        /// Whom to ask.
        Ask = "ask",
    }
}

messages! {
    /// The gaps of a door on its travel.
    pub enum GapCatchesFingers in "gap-catches-fingers" {
        /// One goes through widths that catch fingers.
        Catches = "catches" {
            between: Word, closed: Mm [either], widest: Mm [greater], least: Mm,
        },
        /// Its width when closed, and which widths catch fingers.
        Widths = "widths" { closed: Mm, from: Mm, to: Mm },
        /// Where to look for more.
        Guard = "guard",
    }
}

messages! {
    /// How far a door sags.
    pub enum WideDoorSags in "wide-door-sags" {
        /// More than its limit.
        Sags = "sags" { sag: Mm [greater], limit: Mm [smaller] },
        /// Where the limit comes from.
        Span = "span" { span: Mm, ratio: Whole },
    }
}

messages! {
    /// What hangs on the wall.
    pub enum WallFixingReminder in "wall-fixing-reminder" {
        /// The box, loaded.
        Loaded = "loaded" { loaded_mass: Kilogram [greater] },
        /// What it is made up of.
        Parts = "parts" { body: Kilogram, doors: Kilogram, load: Kilogram },
    }
}

messages! {
    /// The reveals of doors side by side.
    pub enum UnevenReveals in "uneven-reveals" {
        /// They differ.
        Differ = "differ" {
            edge: Word,
            other: Subject,
            own: Mm,
            others: Mm,
            difference_of_the_reveals: Mm [greater],
        },
        /// By how much they may.
        Limit = "limit" { limit: Mm },
    }
}
