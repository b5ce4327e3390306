//! Which setting of a spring balances a door.

use flapwright_model::card::{Card, Size};
use flapwright_model::lift::Lift;

use crate::drive::{DriveError, share};
use crate::gravity::{ByMass, Level, Weights};
use crate::motion::Motion;
use crate::spring::Spring;

/// Places at which lift moment and spring moment are compared.
const PLACES: u16 = 24;

/// The setting that balances a door.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Setting {
    /// From 0 (weakest) to 1 (strongest), for the lightest, likely and heaviest door. Below 0 the
    /// weakest setting is too strong, above 1 the strongest is too weak.
    pub share: ByMass<f64>,
    /// The same in turns of the screw from the weakest setting.
    pub turns: ByMass<f64>,
    /// Turns from weakest to strongest.
    pub range: f64,
}

impl Setting {
    /// The setting to be used for a mass, from 0 to 1.
    #[must_use]
    pub const fn share_for(&self, level: Level) -> f64 {
        self.share.at(level).clamp(0.0, 1.0)
    }
}

/// The setting at which the spring moment comes closest to the lift moment over the whole way:
/// least squares over the input angle. The spring moment is linear in the setting, so the answer
/// is one division. `None` for a strut, which cannot be set, and for a spring whose weakest and
/// strongest setting are the same.
pub(crate) fn balancing_setting(
    card: &Card,
    size: &Size,
    (motion, weights): (&Motion, &Weights),
    pieces: u8,
) -> Option<Result<Setting, DriveError>> {
    let Lift::Spring {
        table,
        turns,
        friction,
    } = &size.lift
    else {
        return None;
    };
    let factor = share(card.per, pieces);
    let at = |setting| Spring::new(table, *friction, setting, factor);
    let (weakest, strongest) = match (at(0.0), at(1.0)) {
        (Ok(weakest), Ok(strongest)) => (weakest, strongest),
        (Err(error), _) | (_, Err(error)) => return Some(Err(error)),
    };
    let mut gained = ByMass::from_fn(|_| 0.0);
    let mut squares = 0.0;
    for place in 0..=PLACES {
        let input = motion.input(f64::from(place) / f64::from(PLACES));
        let least = weakest.moment(input);
        let gain = strongest.moment(input) - least;
        let lift = weights.moments(&motion.jets(input));
        gained = ByMass::from_fn(|level| gained.at(level) + gain * (lift.at(level) - least));
        squares += gain * gain;
    }
    if squares <= 0.0 {
        return None;
    }
    let share = gained.map(|gained| gained / squares);
    Some(Ok(Setting {
        share,
        turns: share.map(|share| share * turns),
        range: *turns,
    }))
}
