//! Why a card and a door give no motion, and a lift no force.

use flapwright_model::card::OpeningKind;

use crate::limits::{LARGEST_END_DEGREES, LARGEST_NUMBER};

/// Why a card and a door give no motion, in words that name the value and the remedy.
#[derive(Debug, Clone, PartialEq, thiserror::Error)]
pub enum MotionError {
    /// The card has no size of that name.
    #[error("the card has no size {size:?}; choose one of the sizes on the card")]
    UnknownSize {
        /// The name asked for.
        size: String,
    },
    /// A table by size lacks this size.
    #[error("{what} has no number for size {size:?}; add it on the card")]
    NumberMissing {
        /// Which number.
        what: String,
        /// The size.
        size: String,
    },
    /// A number of the card or the door is infinite or not a number.
    #[error("{what} is not a finite number; type it again")]
    NotFinite {
        /// Which number.
        what: String,
    },
    /// A number that is far beyond any door.
    #[error("{what} is {value}; it must be within {LARGEST_NUMBER} either way")]
    TooLarge {
        /// Which number.
        what: String,
        /// Its value.
        value: f64,
    },
    /// The end angle is not one that a door can have.
    #[error(
        "the end angle is {degrees} degrees; it must be above 0 and at most {} degrees",
        LARGEST_END_DEGREES
    )]
    EndAngle {
        /// The end angle of the card.
        degrees: f64,
    },
    /// The opening kind and the bodies of the card do not belong together.
    #[error(
        "the card says {} but its motion numbers are those of a {bodies}; change one of them",
        kind.words()
    )]
    KindAndBodies {
        /// The card's opening kind.
        kind: OpeningKind,
        /// What the motion numbers are for.
        bodies: &'static str,
    },
    /// The door has another number of leaves than the opening kind.
    #[error(
        "a {} has {needed} {} and this door has {found}; change the door or choose another card",
        kind.words(),
        if *needed == 1 { "leaf" } else { "leaves" }
    )]
    LeafCount {
        /// The card's opening kind.
        kind: OpeningKind,
        /// Leaves that it takes.
        needed: usize,
        /// Leaves of the door.
        found: usize,
    },
    /// A folding pair without a joint.
    #[error("the door has no joint between its leaves; give the place of the joint")]
    JointMissing,
    /// A leaf without height or thickness.
    #[error("leaf {number} from the top has no height or no thickness; check the door's edges")]
    EmptyLeaf {
        /// Number of the leaf, counted from the top, from 1.
        number: usize,
    },
    /// Two pivots of one arm are at the same place.
    #[error("{arm} has no length: both of its pivots are at the same place; check the pivots")]
    NoLength {
        /// Which arm or link.
        arm: &'static str,
    },
    /// A pivot on the inner face of the side lies above the underside of the panel above it.
    #[error(
        "{pivot} lies {above:.1} mm above the underside of the panel above the opening; \
         its distance down must be above 0"
    )]
    PivotInPanel {
        /// Which pivot.
        pivot: &'static str,
        /// How far above the underside it lies, mm.
        above: f64,
    },
    /// The links of a card cannot be joined at some input angle, or lie in one line there, so
    /// that the door could go on in two ways.
    #[error(
        "{link} cannot close at an input angle of {degrees:.2} degrees; \
         move its pivots or end the motion before that angle"
    )]
    CannotClose {
        /// Which link.
        link: &'static str,
        /// The least input angle at which it cannot close, degrees.
        degrees: f64,
    },
    /// A table of poses that does not start closed or does not rise.
    #[error("row {row} of the table of poses {what}")]
    PoseTable {
        /// Number of the row, from 1.
        row: usize,
        /// What is wrong and what to do.
        what: &'static str,
    },
    /// A leaf names a material that is not there.
    #[error("there is no material {name:?}; add it to the material table or choose another")]
    NoMaterial {
        /// The name.
        name: String,
    },
    /// A number that must be above zero is not.
    #[error("{what} is {value}; it must be above 0")]
    NotPositive {
        /// Which number.
        what: String,
        /// Its value.
        value: f64,
    },
}

/// Why a size's spring or strut cannot be reckoned with.
#[derive(Debug, Clone, PartialEq, thiserror::Error)]
pub enum DriveError {
    /// A number that no spring or strut can have.
    #[error("{what} is {value}; that is out of range, type it again")]
    Number {
        /// Which number.
        what: &'static str,
        /// Its value.
        value: f64,
    },
    /// A spring table that cannot be used.
    #[error("row {row} of the spring table {what}")]
    SpringTable {
        /// Number of the row, from 1.
        row: usize,
        /// What is wrong and what to do.
        what: &'static str,
    },
    /// The door would pull a strut apart.
    #[error(
        "from an opening of {degrees:.1} degrees on the strut is too short: it would have to be \
         {length:.1} mm long and is {extended:.1} mm; move an anchor or take a longer strut"
    )]
    Stretched {
        /// Least input angle at which it is, degrees.
        degrees: f64,
        /// Length that the whole way needs, mm.
        length: f64,
        /// Longest length, mm.
        extended: f64,
    },
    /// The door would crush a strut.
    #[error(
        "from an opening of {degrees:.1} degrees on the strut is too long: it would have to be \
         {length:.1} mm and is no shorter than {compressed:.1} mm; move an anchor or take a \
         shorter strut"
    )]
    Crushed {
        /// Least input angle at which it is, degrees.
        degrees: f64,
        /// Length that the whole way needs, mm.
        length: f64,
        /// Shortest length, mm.
        compressed: f64,
    },
}
