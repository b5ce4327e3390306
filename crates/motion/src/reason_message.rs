//! Reasons of a verdict as messages.

use flapwright_model::measure::Measure;
use flapwright_model::message::{
    Bare, Celsius, Degrees, Kilogram, Mm, NewtonMetre, Said, Say, Times, ToValue, Value, Whole,
    Word,
};
use flapwright_model::messages;

use crate::drive::DriveError;
use crate::error::{Mend, MotionError};
use crate::load::{Load, LoadKind};
use crate::reason::{Reason, SLACK};
use crate::setting::Setting;

/// A load in kg or N·m.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct LoadValue(pub Measure, pub f64);

impl ToValue for LoadValue {
    fn to_value(&self) -> Value {
        Value::Measured(self.0, self.1)
    }

    fn example() -> Value {
        Value::Measured(Measure::Mass, 5.62)
    }
}

messages! {
    /// What a size counts.
    pub enum LoadName in "load-name" {
        /// The mass of the door.
        Mass = "mass",
        /// The lift moment at an angle.
        Moment = "moment" { at: Degrees },
    }
}

impl LoadName {
    /// Of a kind of load.
    #[must_use]
    pub const fn of(kind: LoadKind) -> (Self, Measure) {
        match kind {
            LoadKind::Mass => (Self::Mass, Measure::Mass),
            LoadKind::Moment { at_degrees } => (
                Self::Moment {
                    at: Degrees(at_degrees),
                },
                Measure::Moment,
            ),
        }
    }
}

messages! {
    /// Why a size suits a door or does not.
    pub enum ReasonMessage in "reason" {
        /// A size of the door under the least.
        Under = "under" { what: Word, value: Mm, by: Mm, limit: Mm },
        /// The load within what the size carries, or not.
        Load = "load" {
            what: LoadName,
            low: LoadValue,
            likely: LoadValue,
            high: LoadValue,
            least: LoadValue,
            most: LoadValue,
        },
        /// No load is given for this door.
        NoLoadGiven = "no-load-given" { what: Word, value: Mm, from: Mm, to: Mm },
        /// The door does not open so far as the limit is given at.
        AngleNotReached = "angle-not-reached" { at: Degrees, end: Degrees },
        /// A size of the door over the most.
        Over = "over" { what: Word, value: Mm, by: Mm, limit: Mm },
        /// Too little room in the box.
        TooLittle = "too-little" { what: Word, value: Mm, by: Mm, least: Mm },
        /// The door must be moved further than the fitting allows.
        BeyondAdjustment = "beyond-adjustment" { way: Word, by: Mm, most: Mm },
        /// The door must be moved after mounting.
        Adjustment = "adjustment" { way: Word, by: Mm, left: Mm },
        /// The two leaves of a folding pair.
        FoldingLeaves = "folding-leaves" { upper: Kilogram, lower: Kilogram, ratio: Bare },
        /// Even the weakest setting lifts more than the door weighs.
        TooStrong = "too-strong",
        /// Even the strongest setting lifts less than the door weighs.
        TooWeak = "too-weak",
        /// The setting that balances the door.
        Turns = "turns" { likely: Times, of: Whole, low: Times, high: Times },
        /// The same; the lightest door is too light for the weakest setting.
        TurnsLight = "turns-light" { likely: Times, of: Whole, low: Times, high: Times },
        /// The same; the heaviest door is too heavy for the strongest setting.
        TurnsHeavy = "turns-heavy" { likely: Times, of: Whole, low: Times, high: Times },
        /// The same; both.
        TurnsBoth = "turns-both" { likely: Times, of: Whole, low: Times, high: Times },
        /// The heaviest door does not stay open.
        FallsFromOpen = "falls-from-open" {
            celsius: Celsius, closing: NewtonMetre, friction: NewtonMetre,
        },
        /// The lightest door does not stay shut.
        RisesFromClosed = "rises-from-closed" {
            celsius: Celsius, opening: NewtonMetre, friction: NewtonMetre,
        },
        /// The links of the card do not work on this door.
        NoMotion = "no-motion" { why: MotionError, mend: Mend },
        /// The spring or strut cannot be calculated on this door.
        NoDrive = "no-drive" { why: DriveError, mend: Mend },
    }
}

impl Say for Reason {
    fn say(&self) -> Said {
        self.message().say()
    }
}

impl ToValue for Reason {
    fn to_value(&self) -> Value {
        self.message().to_value()
    }

    fn example() -> Value {
        ReasonMessage::example()
    }
}

impl Reason {
    /// What is said of it.
    #[must_use]
    pub fn message(&self) -> ReasonMessage {
        match self {
            Self::Load(load) => of_load(load),
            Self::NoLoadGiven {
                what,
                value,
                from,
                to,
            } => ReasonMessage::NoLoadGiven {
                what: *what,
                value: Mm(*value),
                from: Mm(*from),
                to: Mm(*to),
            },
            Self::AngleNotReached { at_degrees, end } => ReasonMessage::AngleNotReached {
                at: Degrees(*at_degrees),
                end: Degrees(*end),
            },
            Self::OutOfSpan {
                what,
                value,
                min,
                max,
            } => of_span(*what, *value, (*min, *max)),
            Self::TooLittle { what, value, least } => ReasonMessage::TooLittle {
                what: *what,
                value: Mm(*value),
                by: Mm(least - value),
                least: Mm(*least),
            },
            Self::Adjustment {
                what,
                needed,
                min,
                max,
            } => of_adjustment(*what, *needed, (*min, *max)),
            Self::FoldingLeaves {
                upper,
                lower,
                ratio,
            } => ReasonMessage::FoldingLeaves {
                upper: Kilogram(upper.likely),
                lower: Kilogram(lower.likely),
                ratio: Bare(*ratio),
            },
            Self::Setting(setting) => of_setting(setting),
            Self::FallsFromOpen {
                balance,
                friction,
                celsius,
            } => ReasonMessage::FallsFromOpen {
                celsius: Celsius(*celsius),
                closing: NewtonMetre(*balance),
                friction: NewtonMetre(*friction),
            },
            Self::RisesFromClosed {
                balance,
                friction,
                celsius,
            } => ReasonMessage::RisesFromClosed {
                celsius: Celsius(*celsius),
                opening: NewtonMetre(-balance),
                friction: NewtonMetre(*friction),
            },
            Self::NoMotion(error) => ReasonMessage::NoMotion {
                why: error.clone(),
                mend: error.mend(),
            },
            Self::NoDrive(error) => ReasonMessage::NoDrive {
                why: error.clone(),
                mend: error.mend(),
            },
        }
    }
}

fn of_load(load: &Load) -> ReasonMessage {
    let (what, measure) = LoadName::of(load.kind);
    let value = |it| LoadValue(measure, it);
    ReasonMessage::Load {
        what,
        low: value(load.load.low),
        likely: value(load.load.likely),
        high: value(load.load.high),
        least: value(load.min),
        most: value(load.max),
    }
}

fn of_span(what: Word, value: f64, (min, max): (f64, f64)) -> ReasonMessage {
    if value < min {
        ReasonMessage::Under {
            what,
            value: Mm(value),
            by: Mm(min - value),
            limit: Mm(min),
        }
    } else {
        ReasonMessage::Over {
            what,
            value: Mm(value),
            by: Mm(value - max),
            limit: Mm(max),
        }
    }
}

fn of_adjustment(way: Word, needed: f64, (min, max): (f64, f64)) -> ReasonMessage {
    let (by, most) = (needed.abs(), if needed < 0.0 { -min } else { max });
    if by > most {
        ReasonMessage::BeyondAdjustment {
            way,
            by: Mm(by),
            most: Mm(most),
        }
    } else {
        ReasonMessage::Adjustment {
            way,
            by: Mm(by),
            left: Mm(most - by),
        }
    }
}

fn of_setting(setting: &Setting) -> ReasonMessage {
    let (turns, range) = (setting.turns, setting.range);
    if turns.likely < 0.0 {
        return ReasonMessage::TooStrong;
    }
    if setting.share.likely > 1.0 {
        return ReasonMessage::TooWeak;
    }
    let likely = Times(turns.likely);
    let of = Whole(range);
    let low = Times(turns.low.clamp(0.0, range));
    let high = Times(turns.high.clamp(0.0, range));
    let too_light = turns.low < -SLACK * range;
    let too_heavy = turns.high > (1.0 + SLACK) * range;
    match (too_light, too_heavy) {
        (false, false) => ReasonMessage::Turns {
            likely,
            of,
            low,
            high,
        },
        (true, false) => ReasonMessage::TurnsLight {
            likely,
            of,
            low,
            high,
        },
        (false, true) => ReasonMessage::TurnsHeavy {
            likely,
            of,
            low,
            high,
        },
        (true, true) => ReasonMessage::TurnsBoth {
            likely,
            of,
            low,
            high,
        },
    }
}
