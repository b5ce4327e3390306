//! Reasons of a verdict, each in numbers.

use std::fmt;

use flapwright_model::material::MassRange;

use crate::drive::DriveError;
use crate::error::MotionError;
use crate::gravity::ByMass;
use crate::load::{Load, LoadKind};
use crate::setting::Setting;
use crate::sizes::Grade;

/// Settings may be this share of the range beyond its ends: rounding.
const SLACK: f64 = 1e-9;

/// Why a size suits a door or does not. Shown as a sentence without a full stop, metric.
#[derive(Debug, Clone, PartialEq)]
pub enum Reason {
    /// The load against what the size carries; also when it fits.
    Load(Load),
    /// The table of the size has no figure for this door.
    NoLoadGiven {
        /// Which height, in plain words.
        what: &'static str,
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
        what: &'static str,
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
        what: &'static str,
        /// What there is, mm.
        value: f64,
        /// What the size needs, mm.
        least: f64,
    },
    /// The door must be moved after mounting.
    Adjustment {
        /// Direction, in plain words.
        what: &'static str,
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
        match self {
            Self::Load(load) => write_load(f, load),
            Self::NoLoadGiven {
                what,
                value,
                from,
                to,
            } => write!(
                f,
                "the size gives no load for a {what} of {value:.0} mm, only for {from:.0} to \
                 {to:.0} mm"
            ),
            Self::AngleNotReached { at_degrees, end } => write!(
                f,
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
                write!(
                    f,
                    "{what} {value:.1} mm is {:.1} mm beyond the {side}, {limit:.1} mm",
                    (value - limit).abs()
                )
            }
            Self::TooLittle { what, value, least } => write!(
                f,
                "{what} is {value:.1} mm and must be {least:.1} mm: {:.1} mm too little",
                least - value
            ),
            Self::Adjustment {
                what,
                needed,
                min,
                max,
            } => {
                let (move_by, most) = (needed.abs(), if *needed < 0.0 { -min } else { *max });
                if move_by > most {
                    write!(
                        f,
                        "the door must be moved {move_by:.1} mm {what} and the fitting allows \
                         {most:.1} mm"
                    )
                } else {
                    write!(
                        f,
                        "moving the door {move_by:.1} mm {what} leaves {:.1} mm of adjustment",
                        most - move_by
                    )
                }
            }
            Self::FoldingLeaves {
                upper,
                lower,
                ratio,
            } => write!(
                f,
                "upper leaf {:.1} kg, lower leaf {:.1} kg, heights {ratio:.2} to 1",
                upper.likely, lower.likely
            ),
            Self::Setting(setting) => write_setting(f, setting),
            Self::FallsFromOpen {
                balance,
                friction,
                celsius,
            } => write!(
                f,
                "the heaviest door falls from open at {celsius:.0} °C: {balance:.1} N·m pull it \
                 shut against {friction:.1} N·m of friction"
            ),
            Self::RisesFromClosed {
                balance,
                friction,
                celsius,
            } => write!(
                f,
                "the lightest door does not stay shut at {celsius:.0} °C: {:.1} N·m push it open \
                 against {friction:.1} N·m of friction",
                -balance
            ),
            Self::NoMotion(error) => write!(f, "{error}"),
            Self::NoDrive(error) => write!(f, "{error}"),
        }
    }
}

fn write_load(f: &mut fmt::Formatter<'_>, load: &Load) -> fmt::Result {
    let Load {
        kind,
        load,
        min,
        max,
    } = load;
    let MassRange { low, likely, high } = load;
    match kind {
        LoadKind::Mass => write!(
            f,
            "door mass {low:.2} to {high:.2} kg, likely {likely:.2}; it carries {min:.2} to \
             {max:.2} kg"
        ),
        LoadKind::Moment { at_degrees } => write!(
            f,
            "lift moment {low:.1} to {high:.1} N·m at {at_degrees:.0} degrees, likely \
             {likely:.1}; it carries {min:.1} to {max:.1} N·m"
        ),
    }
}

fn write_setting(f: &mut fmt::Formatter<'_>, setting: &Setting) -> fmt::Result {
    let ByMass { low, likely, high } = setting.turns;
    let range = setting.range;
    if likely < 0.0 {
        write!(
            f,
            "even the weakest setting lifts more than this door weighs"
        )
    } else if setting.share.likely > 1.0 {
        write!(
            f,
            "even the strongest setting lifts less than this door weighs"
        )
    } else {
        write!(
            f,
            "{likely:.1} of {range:.0} turns balance the door ({:.1} to {:.1} over its mass range)",
            low.clamp(0.0, range),
            high.clamp(0.0, range)
        )?;
        if low < -SLACK * range {
            write!(
                f,
                "; if it is light, even the weakest setting is too strong"
            )?;
        }
        if high > (1.0 + SLACK) * range {
            write!(
                f,
                "; if it is heavy, even the strongest setting is too weak"
            )?;
        }
        Ok(())
    }
}
