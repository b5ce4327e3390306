//! Reasons of a verdict, each in numbers.

use std::fmt;

use flapwright_model::length::Unit;
use flapwright_model::material::MassRange;
use flapwright_model::measure::{Measure, length};
use flapwright_model::message::Word;

use crate::drive::DriveError;
use crate::error::MotionError;
use crate::gravity::ByMass;
use crate::load::{Load, LoadKind};
use crate::setting::Setting;
use crate::sizes::Grade;

/// Settings may be this share of the range beyond its ends: rounding.
pub(crate) const SLACK: f64 = 1e-9;

/// Why a size suits a door or does not. Shown as a sentence without a full stop; `Display` is
/// metric.
#[derive(Debug, Clone, PartialEq)]
pub enum Reason {
    /// The load against what the size carries; also when it fits.
    Load(Load),
    /// The table of the size has no figure for this door.
    NoLoadGiven {
        /// Which height, in plain words.
        what: Word,
        /// Its value, mm.
        value: f64,
        /// The table begins here, mm.
        from: f64,
        /// And ends here, mm.
        to: f64,
    },
    /// The lift moment is limited at an angle that the door does not reach.
    AngleNotReached {
        /// The angle, degrees.
        at_degrees: f64,
        /// End angle, degrees.
        end: f64,
    },
    /// A size of the door is outside of what the size is made for.
    OutOfSpan {
        /// Which, in plain words.
        what: Word,
        /// Its value, mm.
        value: f64,
        /// Least, mm.
        min: f64,
        /// Most, mm.
        max: f64,
    },
    /// The box has too little room.
    TooLittle {
        /// Which room, in plain words.
        what: Word,
        /// What there is, mm.
        value: f64,
        /// What the size needs, mm.
        least: f64,
    },
    /// The door must be moved after mounting.
    Adjustment {
        /// Direction, in plain words.
        what: Word,
        /// How far, mm, + to box-right, up or into the box.
        needed: f64,
        /// Least that the fitting allows, mm.
        min: f64,
        /// Most, mm.
        max: f64,
    },
    /// Masses and heights of the two leaves of a folding pair; says nothing against the size.
    FoldingLeaves {
        /// Mass of the upper leaf, kg.
        upper: MassRange,
        /// Mass of the lower leaf, kg.
        lower: MassRange,
        /// Height of the upper leaf over that of the lower.
        ratio: f64,
    },
    /// The setting that balances the door, or that there is none.
    Setting(Setting),
    /// The heaviest door does not stay open.
    FallsFromOpen {
        /// W - S when open, N·m.
        balance: f64,
        /// Friction, N·m.
        friction: f64,
        /// Temperature, °C.
        celsius: f64,
    },
    /// The lightest door does not stay shut.
    RisesFromClosed {
        /// W - S when closed, N·m.
        balance: f64,
        /// Friction, N·m.
        friction: f64,
        /// Temperature, °C.
        celsius: f64,
    },
    /// The links of the card do not work on this door.
    NoMotion(MotionError),
    /// The spring or strut cannot be reckoned with on this door.
    NoDrive(DriveError),
}

impl Reason {
    /// How much it weighs.
    #[must_use]
    pub fn grade(&self) -> Grade {
        match self {
            Self::Load(load) => load.grade(),
            Self::NoLoadGiven { .. }
            | Self::AngleNotReached { .. }
            | Self::OutOfSpan { .. }
            | Self::TooLittle { .. }
            | Self::NoMotion(_)
            | Self::NoDrive(_) => Grade::No,
            Self::Adjustment {
                needed, min, max, ..
            } => {
                if needed < min || needed > max {
                    Grade::No
                } else if needed.abs() > 0.5 * if *needed < 0.0 { -min } else { *max } {
                    Grade::Marginal
                } else {
                    Grade::Fits
                }
            }
            Self::FoldingLeaves { .. } => Grade::Fits,
            Self::Setting(setting) => {
                let within = |share: f64| (-SLACK..=1.0 + SLACK).contains(&share);
                let ByMass { low, likely, high } = setting.share;
                if [low, likely, high].into_iter().all(within) {
                    Grade::Fits
                } else {
                    Grade::Marginal
                }
            }
            Self::FallsFromOpen { .. } | Self::RisesFromClosed { .. } => Grade::Marginal,
        }
    }
}

impl fmt::Display for Reason {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(&self.text(Unit::Millimetre))
    }
}

impl Reason {
    /// The reason as a sentence without a full stop, its numbers in the measures that go with a
    /// length unit. Why a motion or a lift fails is said in millimetres, like the card.
    #[must_use]
    pub fn text(&self, unit: Unit) -> String {
        let mm = |value: f64| length(value, unit);
        let moment = |value: f64| Measure::Moment.text(value, unit);
        match self {
            Self::Load(load) => load_text(load, unit),
            Self::NoLoadGiven {
                what,
                value,
                from,
                to,
            } => format!(
                "the size gives no load for a {} of {}, only for {} to {}",
                plain(*what),
                mm(*value),
                mm(*from),
                mm(*to)
            ),
            Self::AngleNotReached { at_degrees, end } => format!(
                "the size limits the lift moment at {at_degrees:.0} degrees and the door opens \
                 only to {end:.0} degrees"
            ),
            Self::OutOfSpan {
                what,
                value,
                min,
                max,
            } => {
                let (side, limit) = if value < min {
                    ("least", min)
                } else {
                    ("greatest", max)
                };
                format!(
                    "{} {} is {} beyond the {side}, {}",
                    plain(*what),
                    mm(*value),
                    mm((value - limit).abs()),
                    mm(*limit)
                )
            }
            Self::TooLittle { what, value, least } => format!(
                "{} is {} and must be {}: {} too little",
                plain(*what),
                mm(*value),
                mm(*least),
                mm(least - value)
            ),
            Self::Adjustment {
                what,
                needed,
                min,
                max,
            } => adjustment_text(&plain(*what), *needed, [*min, *max], unit),
            Self::FoldingLeaves {
                upper,
                lower,
                ratio,
            } => format!(
                "upper leaf {}, lower leaf {}, heights {ratio:.2} to 1",
                Measure::Mass.text(upper.likely, unit),
                Measure::Mass.text(lower.likely, unit)
            ),
            Self::Setting(setting) => setting_text(setting),
            Self::FallsFromOpen {
                balance,
                friction,
                celsius,
            } => format!(
                "the heaviest door falls from open at {celsius:.0} °C: {} pull it shut against {} \
                 of friction",
                moment(*balance),
                moment(*friction)
            ),
            Self::RisesFromClosed {
                balance,
                friction,
                celsius,
            } => format!(
                "the lightest door does not stay shut at {celsius:.0} °C: {} push it open against \
                 {} of friction",
                moment(-balance),
                moment(*friction)
            ),
            Self::NoMotion(error) => error.to_string(),
            Self::NoDrive(error) => error.to_string(),
        }
    }
}

/// A word of the catalogue as `text` says it.
fn plain(word: Word) -> String {
    word.0.replace('-', " ")
}

fn adjustment_text(what: &str, needed: f64, [min, max]: [f64; 2], unit: Unit) -> String {
    let (move_by, most) = (needed.abs(), if needed < 0.0 { -min } else { max });
    let mm = |value: f64| length(value, unit);
    if move_by > most {
        format!(
            "the door must be moved {} {what} and the fitting allows {}",
            mm(move_by),
            mm(most)
        )
    } else {
        format!(
            "moving the door {} {what} leaves {} of adjustment",
            mm(move_by),
            mm(most - move_by)
        )
    }
}

fn load_text(load: &Load, unit: Unit) -> String {
    let Load {
        kind,
        load,
        min,
        max,
    } = load;
    let MassRange { low, likely, high } = load;
    let (measure, what, at) = match kind {
        LoadKind::Mass => (Measure::Mass, "door mass", String::new()),
        LoadKind::Moment { at_degrees } => (
            Measure::Moment,
            "lift moment",
            format!(" at {at_degrees:.0} degrees"),
        ),
    };
    let digits = |value: &f64| measure.digits(*value, unit);
    format!(
        "{what} {} to {}{at}, likely {}; it carries {} to {}",
        digits(low),
        measure.text(*high, unit),
        digits(likely),
        digits(min),
        measure.text(*max, unit)
    )
}

fn setting_text(setting: &Setting) -> String {
    let ByMass { low, likely, high } = setting.turns;
    let range = setting.range;
    if likely < 0.0 {
        return "even the weakest setting lifts more than this door weighs".to_owned();
    }
    if setting.share.likely > 1.0 {
        return "even the strongest setting lifts less than this door weighs".to_owned();
    }
    let mut text = format!(
        "{likely:.1} of {range:.0} turns balance the door ({:.1} to {:.1} over its mass range)",
        low.clamp(0.0, range),
        high.clamp(0.0, range)
    );
    if low < -SLACK * range {
        text.push_str("; if it is light, even the weakest setting is too strong");
    }
    if high > (1.0 + SLACK) * range {
        text.push_str("; if it is heavy, even the strongest setting is too weak");
    }
    text
}
