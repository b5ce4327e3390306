//! The door's load against what a size carries.

use flapwright_model::material::MassRange;

use crate::grade::Grade;

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
}
