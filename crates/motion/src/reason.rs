//! Reasons of a verdict, each in numbers.

use flapwright_model::material::MassRange;
use flapwright_model::message::Word;

use crate::drive::DriveError;
use crate::error::MotionError;
use crate::gravity::ByMass;
use crate::load::Load;
use crate::setting::Setting;
use crate::sizes::Grade;

/// Settings may be this share of the range beyond its ends: rounding.
pub(crate) const SLACK: f64 = 1e-9;

/// Why a size suits a door or does not: how it is said, see [`Reason::message`].
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
