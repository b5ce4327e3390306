//! The door's load against what a size carries.

use flapwright_model::card::{Card, Size};
use flapwright_model::lift::{Carries, MassRow};
use flapwright_model::material::MassRange;
use flapwright_model::message::Word;

use crate::drive::share;
use crate::gravity::{ByMass, Level, Weights};
use crate::motion::Motion;
use crate::reason::Reason;
use crate::sizes::{Grade, Judged};

/// Kind of load that a size limits.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum LoadKind {
    /// Mass of the door, kg.
    Mass,
    /// Lift moment, N·m, at an opening angle.
    Moment {
        /// Input angle, degrees.
        at_degrees: f64,
    },
}

/// The door's load and the limits of the size for as many pieces as are fitted.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Load {
    /// What is limited.
    pub kind: LoadKind,
    /// The door's: kg or N·m.
    pub load: MassRange,
    /// Least that the fitted pieces carry, kg or N·m.
    pub min: f64,
    /// Most that they carry.
    pub max: f64,
}

impl Load {
    /// How centred the whole range lies: the smaller of its two distances to the limits, as a
    /// share of half the span. 1 in the middle, 0 touching a limit, below 0 beyond it.
    #[must_use]
    pub fn centred(&self) -> f64 {
        let half = (self.max - self.min) / 2.0;
        let room = (self.load.low - self.min).min(self.max - self.load.high);
        if half > 0.0 {
            room / half
        } else {
            f64::NEG_INFINITY
        }
    }

    /// The whole range lies inside: fits. The likely figure does and an end does not: marginal.
    #[must_use]
    pub fn grade(&self) -> Grade {
        if self.load.low >= self.min && self.load.high <= self.max {
            Grade::Fits
        } else if self.load.likely >= self.min && self.load.likely <= self.max {
            Grade::Marginal
        } else {
            Grade::No
        }
    }

    pub(crate) const fn reason(&self) -> Option<Reason> {
        Some(Reason::Load(*self))
    }
}

/// The load of a door on a size.
///
/// What a card says per piece counts once for each piece; what it says per pair counts half for
/// one. A lift moment may be below 0 on the way; it is taken as it is.
pub(crate) fn load(
    card: &Card,
    size: &Size,
    judged: &Judged<'_>,
    motion: &Motion,
    weights: &Weights,
    pieces: u8,
) -> Result<Load, Reason> {
    let factor = share(card.per, pieces);
    let by_mass = |min: f64, max: f64| Load {
        kind: LoadKind::Mass,
        load: judged.mass.used,
        min: min * factor,
        max: max * factor,
    };
    match &size.carries {
        Carries::Mass { min, max } => Ok(by_mass(*min, *max)),
        Carries::Moment {
            min,
            max,
            at_degrees,
        } => {
            let input = at_degrees.to_radians();
            if !(input >= 0.0 && input <= motion.end_angle() + 1e-9) {
                let end = motion.end_angle().to_degrees();
                return Err(Reason::AngleNotReached {
                    at_degrees: *at_degrees,
                    end,
                });
            }
            let moments = weights.moments(&motion.jets(input));
            Ok(Load {
                kind: LoadKind::Moment {
                    at_degrees: *at_degrees,
                },
                load: sorted(&moments),
                min: min * factor,
                max: max * factor,
            })
        }
        Carries::MassByDoorHeight(rows) => {
            let leaves = &judged.door.leaves;
            let height = match (leaves.first(), leaves.last()) {
                (Some(first), Some(last)) => first.top - last.bottom,
                _ => 0.0,
            };
            limits(rows, height, Word("door-height")).map(|(min, max)| by_mass(min, max))
        }
        Carries::MassByBoxHeight(rows) => {
            let height = judged.offer.box_height;
            limits(rows, height, Word("box-height")).map(|(min, max)| by_mass(min, max))
        }
    }
}

/// Least, likely and largest, whichever mass they come from.
fn sorted(moments: &ByMass<f64>) -> MassRange {
    let all = Level::ALL.map(|level| moments.at(level));
    MassRange {
        low: all.into_iter().fold(f64::INFINITY, f64::min),
        likely: moments.likely,
        high: all.into_iter().fold(f64::NEG_INFINITY, f64::max),
    }
}

/// Limits at a height: straight between rows, none outside the table.
fn limits(rows: &[MassRow], height: f64, what: Word) -> Result<(f64, f64), Reason> {
    let mut ordered: Vec<&MassRow> = rows.iter().collect();
    ordered.sort_by(|a, b| a.height.total_cmp(&b.height));
    let (Some(first), Some(last)) = (ordered.first(), ordered.last()) else {
        return Err(Reason::NoLoadGiven {
            what,
            value: height,
            from: 0.0,
            to: 0.0,
        });
    };
    if !(height >= first.height && height <= last.height) {
        let (from, to) = (first.height, last.height);
        return Err(Reason::NoLoadGiven {
            what,
            value: height,
            from,
            to,
        });
    }
    let after = ordered.partition_point(|row| row.height < height);
    let to = ordered.get(after).copied().unwrap_or(last);
    let from = after
        .checked_sub(1)
        .and_then(|i| ordered.get(i).copied())
        .unwrap_or(to);
    let share = if to.height > from.height {
        (height - from.height) / (to.height - from.height)
    } else {
        1.0
    };
    let between = |a: f64, b: f64| a + (b - a) * share;
    Ok((between(from.min, to.min), between(from.max, to.max)))
}
