//! What is said of slips of typing on a card, and what to do about them.

use flapwright_model::message::{AsTyped, Kilogram, Mm, NewtonMetre, Word};
use flapwright_model::messages;
use flapwright_motion::reason_message::LoadValue;
use flapwright_motion::{DriveError, MotionError};

messages! {
    /// Something on a card that looks like a slip.
    pub enum SlipMessage in "slip" {
        /// A length smaller than usual.
        Small = "small" { what: Word, value: Mm, least: Mm, most: Mm },
        /// The same, and usual if inches were typed for millimetres.
        SmallInInches = "small-in-inches" { what: Word, value: Mm, least: Mm, most: Mm, instead: Mm },
        /// A length larger than usual.
        Large = "large" { what: Word, value: Mm, least: Mm, most: Mm },
        /// The same, and usual if millimetres were typed for inches.
        LargeInMillimetres = "large-in-millimetres" {
            what: Word, value: Mm, least: Mm, most: Mm, instead: Mm,
        },
        /// No size carries a load between two others at a height.
        Hole = "hole" { from: LoadValue, to: LoadValue, height: Mm },
        /// The whole range of a size lies in that of another one.
        Inside = "inside" { inner: String, outer: String },
        /// A size carries less in the middle of its range than the one before it.
        Order = "order" {
            size: String, carries: LoadValue, before: String, before_carries: LoadValue,
        },
        /// A spring is weaker at its strongest setting.
        Settings = "settings" {
            size: String, weakest: NewtonMetre, strongest: NewtonMetre, at: AsTyped,
        },
        /// The body of the fitting ends before it begins.
        Body = "body" { from: Mm, to: Mm, size: String },
        /// A bore stands out of the body.
        BoreOutside = "bore-outside" { way: Word, at: Mm, from: Mm, to: Mm, size: String },
        /// An arm reaches from the front to the back.
        ArmBackwards = "arm-backwards" { in_box: Mm, on_door: Mm, size: String },
        /// A strut is anchored in front of the side.
        StrutInFront = "strut-in-front" { at: Mm },
        /// The links of a size do not carry a door that it is made for.
        NoMotion = "no-motion" { size: String, height: Mm, why: MotionError },
        /// The spring or strut of a size cannot be calculated on such a door.
        NoDrive = "no-drive" { size: String, height: Mm, mass: Kilogram, why: DriveError },
        /// The strongest setting does not hold the largest door.
        CannotHold = "cannot-hold" {
            size: String,
            height: Mm,
            mass: Kilogram,
            closing: NewtonMetre,
            opening: NewtonMetre,
            friction: NewtonMetre,
        },
    }
}

messages! {
    /// What to do about a slip.
    pub enum SlipRemedy in "slip-remedy" {
        /// Look at the unit.
        Unit = "unit",
        /// Compare the loads of the sizes.
        Loads = "loads",
        /// One size may have the numbers of the other.
        SameNumbers = "same-numbers",
        /// Put the sizes in order.
        Order = "order",
        /// Weakest and strongest may be exchanged.
        SettingsExchanged = "settings-exchanged",
        /// Top and bottom may be exchanged.
        TopAndBottom = "top-and-bottom",
        /// Front and back may be exchanged.
        FrontAndBack = "front-and-back",
        /// Front and back, or box and door, may be exchanged.
        FrontAndBackOrBoxAndDoor = "front-and-back-or-box-and-door",
        /// Compare bore and body.
        BoreAndBody = "bore-and-body",
        /// Compare the pivots.
        Pivots = "pivots",
        /// Compare the strut.
        Strut = "strut",
        /// Compare load and spring, and whether they are of a pair or a piece.
        LoadAndSpring = "load-and-spring",
    }
}
