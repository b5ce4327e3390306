//! What a pair of anchors costs: the largest hand force, or how far a condition is missed.

use std::fmt;

use argmin::core::{CostFunction, Error};
use argmin_math::{ArgminAdd, ArgminMul, ArgminSub};
use flapwright_model::card::Span;
use flapwright_model::lift::Strut;
use flapwright_model::space::SectionPoint;

use crate::drive::door_anchor;
use crate::gravity::{ByMass, METRE};
use crate::mount_question::{MountLimits, MountQuestion};
use crate::pose::PoseJet;
use crate::statics::{Grip, LEAST_LEVERAGE};
use crate::strut::{Gas, GasStrut, NOMINAL_CELSIUS};

/// Places on the way at which anchors are tried.
const PLACES: u16 = 20;
/// Kept free at both ends of the stroke while searching, as a share of it: between the places the
/// strut may be a little longer or shorter.
const STROKE_MARGIN: f64 = 0.005;
/// Any missed condition costs more than any hand force, N.
const MISSED: f64 = 1e6;

/// Two anchors, mm, as a [`Strut`] has them.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) struct StrutMounts(pub(crate) [f64; 4]);

impl StrutMounts {
    /// The strut with these anchors.
    pub(crate) const fn of(&self, strut: &Strut) -> Strut {
        let [box_down, box_back, door_down, door_back] = self.0;
        Strut {
            box_down,
            box_back,
            door_down,
            door_back,
            ..*strut
        }
    }

    fn zip(&self, other: &Self, join: impl Fn(f64, f64) -> f64) -> Self {
        Self(std::array::from_fn(|i| join(self.0[i], other.0[i])))
    }
}

impl ArgminAdd<Self, Self> for StrutMounts {
    fn add(&self, other: &Self) -> Self {
        self.zip(other, |a, b| a + b)
    }
}

impl ArgminSub<Self, Self> for StrutMounts {
    fn sub(&self, other: &Self) -> Self {
        self.zip(other, |a, b| a - b)
    }
}

impl ArgminMul<f64, Self> for StrutMounts {
    fn mul(&self, factor: &f64) -> Self {
        Self(self.0.map(|value| value * factor))
    }
}

/// The limits of the four numbers, in the order of [`StrutMounts`].
pub(crate) const fn spans(limits: &MountLimits) -> [Span; 4] {
    [
        limits.box_down,
        limits.box_back,
        limits.door_down,
        limits.door_back,
    ]
}

/// By how much anchors miss the conditions; 0 where they do not.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Shortfall {
    /// Moment that is missing to hold the heaviest door open in the cold, N·m.
    pub hold: f64,
    /// Moment that is missing to keep the lightest door shut in the heat, N·m.
    pub shut: f64,
    /// Stroke that is missing, mm.
    pub stroke: f64,
}

impl Shortfall {
    /// One number for comparing: N·m, and mm as if 10 mm were 1 N·m.
    pub(crate) const fn weight(&self) -> f64 {
        self.hold + self.shut + self.stroke / 10.0
    }
}

impl fmt::Display for Shortfall {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let mut said = false;
        let Self { hold, shut, stroke } = self;
        for (value, unit, what) in [
            (hold, "N·m", "to hold the heaviest door open in the cold"),
            (shut, "N·m", "to keep the lightest door shut in the heat"),
            (stroke, "mm", "of stroke"),
        ] {
            if *value > 0.0 {
                let joint = if said { " and " } else { "" };
                write!(f, "{joint}{value:.2} {unit} are missing {what}")?;
                said = true;
            }
        }
        if said {
            Ok(())
        } else {
            write!(f, "it misses a condition by less than 0.01")
        }
    }
}

/// One place of the way, reckoned once for all anchors.
struct Place {
    jets: (PoseJet, Option<PoseJet>),
    lift: ByMass<f64>,
    /// mm per radian.
    leverage: f64,
}

/// The cost of anchors for one strut and one door.
pub(crate) struct MountCost<'a> {
    question: &'a MountQuestion<'a>,
    places: Vec<Place>,
    /// Cold, nominal, hot; `None` for a strut whose figures cannot be.
    gas: Option<[Gas; 3]>,
    margin: f64,
}

impl<'a> MountCost<'a> {
    pub(crate) fn new(question: &'a MountQuestion<'a>, strut: &Strut) -> Self {
        let [cold, hot] = question.cold_and_hot;
        let grip = Grip::of(question.door);
        let place = |step: u16| {
            let share = f64::from(step) / f64::from(PLACES);
            let jets = question.motion.jets(question.motion.input(share));
            Place {
                lift: question.weights.moments(&jets),
                leverage: grip.path(&jets),
                jets,
            }
        };
        let gas = |celsius| Gas::new(strut, celsius).ok();
        let gas = match (gas(cold), gas(NOMINAL_CELSIUS), gas(hot)) {
            (Some(cold), Some(nominal), Some(hot)) => Some([cold, nominal, hot]),
            _ => None,
        };
        let margin = strut.stroke * STROKE_MARGIN;
        Self {
            question,
            places: (0..=PLACES).map(place).collect(),
            gas,
            margin,
        }
    }

    pub(crate) const fn limits(&self) -> &MountLimits {
        self.question.limits
    }

    fn struts(&self, anchors: &StrutMounts) -> Option<[GasStrut; 3]> {
        let [box_down, box_back, door_down, door_back] = anchors.0;
        let door = self.question.door;
        let fixed = SectionPoint::new(
            self.question.front_o - box_back,
            door.underside_y - box_down,
        );
        let (moving, on_second) = door_anchor(door, door_down, door_back);
        let pieces = f64::from(self.question.pieces);
        self.gas
            .map(|gas| gas.map(|gas| GasStrut::new(gas, fixed, moving, on_second, pieces)))
    }

    /// By how much these anchors miss the conditions.
    pub(crate) fn shortfall(&self, anchors: &StrutMounts) -> Shortfall {
        let none = Shortfall {
            hold: 0.0,
            shut: 0.0,
            stroke: f64::INFINITY,
        };
        let Some([cold, nominal, hot]) = self.struts(anchors) else {
            return none;
        };
        let (Some(closed), Some(open)) = (self.places.first(), self.places.last()) else {
            return none;
        };
        let state = cold.state(&open.jets);
        let hold = open.lift.high - cold.moment(&state) - cold.friction(&state);
        let state = hot.state(&closed.jets);
        let shut = hot.moment(&state) - hot.friction(&state) - closed.lift.low;
        let (compressed, extended) = nominal.limits();
        let over = |place: &Place| {
            let length = nominal.state(&place.jets).length;
            (length - (extended - self.margin)).max(compressed + self.margin - length)
        };
        let stroke = self.places.iter().map(over).fold(0.0, f64::max);
        Shortfall {
            hold: hold.max(0.0),
            shut: shut.max(0.0),
            stroke,
        }
    }

    /// The hand force furthest from 0 at the nominal temperature, N.
    fn largest_force(&self, anchors: &StrutMounts) -> f64 {
        let Some([_, nominal, _]) = self.struts(anchors) else {
            return f64::INFINITY;
        };
        let mut largest = 0.0_f64;
        for place in self
            .places
            .iter()
            .filter(|place| place.leverage >= LEAST_LEVERAGE)
        {
            let state = nominal.state(&place.jets);
            let (moment, friction) = (nominal.moment(&state), nominal.friction(&state));
            let lift = place.lift;
            let off = (lift.low - moment).abs().max((lift.high - moment).abs());
            largest = largest.max((off + friction) / (place.leverage * METRE));
        }
        largest
    }

    /// The largest hand force, or far more than that where a condition or a limit is missed.
    pub(crate) fn of(&self, anchors: &StrutMounts) -> f64 {
        let outside: f64 = spans(self.limits())
            .iter()
            .zip(anchors.0)
            .map(|(span, value)| (span.min - value).max(value - span.max).max(0.0))
            .sum();
        if outside > 0.0 {
            return 2.0 * MISSED * (1.0 + outside);
        }
        let missed = self.shortfall(anchors).weight();
        if missed > 0.0 {
            MISSED * (1.0 + missed)
        } else {
            self.largest_force(anchors)
        }
    }
}

impl CostFunction for &MountCost<'_> {
    type Param = StrutMounts;
    type Output = f64;

    fn cost(&self, anchors: &StrutMounts) -> Result<f64, Error> {
        Ok(self.of(anchors))
    }
}
