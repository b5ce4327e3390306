//! The door's weight as a moment about the input, and its moment of inertia.
//!
//! Virtual work: the lift moment W is dV/dq, the slope of the potential energy over the input
//! angle q. Every part counts at its own place, so the centre of mass may differ between the
//! lightest and the heaviest door. Arms and links have no mass on a card and count as none.

use flapwright_model::material::MassRange;
use flapwright_model::space::SectionPoint;

use crate::closed::{ClosedDoor, ClosedLeaf};
use crate::mass::{DoorMass, LeafMass, PartMass};
use crate::motion::Motion;
use crate::pose::PoseJet;

/// Standard acceleration of free fall, m/s2, exact by definition.
pub const GRAVITY: f64 = flapwright_model::measure::STANDARD_GRAVITY;

/// Metres in a millimetre.
pub(crate) const METRE: f64 = 1e-3;

/// Which end of what is not known exactly.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Level {
    /// The lightest door.
    Low,
    /// The likely door.
    Likely,
    /// The heaviest door.
    High,
}

impl Level {
    /// All three, in rising mass.
    pub const ALL: [Self; 3] = [Self::Low, Self::Likely, Self::High];

    const fn of(self, mass: MassRange) -> f64 {
        match self {
            Self::Low => mass.low,
            Self::Likely => mass.likely,
            Self::High => mass.high,
        }
    }
}

/// A figure at the lightest, the likely and the heaviest mass of the door. The figure at the
/// lightest mass need not be the least.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct ByMass<T> {
    /// At the lightest mass.
    pub low: T,
    /// At the likely mass.
    pub likely: T,
    /// At the heaviest mass.
    pub high: T,
}

impl<T: Copy> ByMass<T> {
    /// One figure for each level.
    pub fn from_fn(mut figure: impl FnMut(Level) -> T) -> Self {
        Self {
            low: figure(Level::Low),
            likely: figure(Level::Likely),
            high: figure(Level::High),
        }
    }

    /// The figure at one level.
    pub const fn at(&self, level: Level) -> T {
        match level {
            Level::Low => self.low,
            Level::Likely => self.likely,
            Level::High => self.high,
        }
    }

    /// Another figure for each level.
    pub fn map<U: Copy>(&self, mut change: impl FnMut(T) -> U) -> ByMass<U> {
        ByMass {
            low: change(self.low),
            likely: change(self.likely),
            high: change(self.high),
        }
    }
}

/// A leaf with all that is fixed to it, as one rigid body.
#[derive(Debug, Clone, Copy, PartialEq)]
struct Body {
    /// kg.
    mass: f64,
    /// Centre of mass, door closed, mm.
    centre: SectionPoint,
    /// Moment of inertia about that centre, kg·m2.
    inertia: f64,
}

/// The masses that move, each leaf as a rigid body, at the three levels.
#[derive(Debug, Clone, PartialEq)]
pub struct Weights {
    first: ByMass<Body>,
    second: Option<ByMass<Body>>,
}

impl Weights {
    /// The leaves of a door where they are when it is closed. The handle counts as the mass of
    /// the door has it, not as the outline has it. A leaf without a mass counts as none.
    #[must_use]
    pub fn of(door: &ClosedDoor, mass: &DoorMass) -> Self {
        let nothing = Body {
            mass: 0.0,
            centre: SectionPoint::new(0.0, 0.0),
            inertia: 0.0,
        };
        let body = |leaf: &ClosedLeaf| {
            let found = mass.leaves.iter().find(|(id, _)| *id == leaf.id);
            found.map_or_else(
                || ByMass::from_fn(|_| nothing),
                |(_, mass)| ByMass::from_fn(|level| Body::of(leaf, mass, level)),
            )
        };
        let mut bodies = door.leaves.iter().map(body);
        let first = bodies
            .next()
            .unwrap_or_else(|| ByMass::from_fn(|_| nothing));
        Self {
            first,
            second: bodies.next(),
        }
    }

    /// Mass of the whole door, kg.
    #[must_use]
    pub fn mass(&self, level: Level) -> f64 {
        let second = self.second.map_or(0.0, |bodies| bodies.at(level).mass);
        self.first.at(level).mass + second
    }

    /// Lift moment W about the input, N·m: + pulls shut.
    pub(crate) fn moment(&self, level: Level, jets: &(PoseJet, Option<PoseJet>)) -> f64 {
        let one = |body: Body, jet: &PoseJet| {
            let [_, path, _] = jet.point(body.centre);
            body.mass * GRAVITY * path.y * METRE
        };
        self.sum(level, jets, one)
    }

    /// Lift moments at all three levels.
    pub(crate) fn moments(&self, jets: &(PoseJet, Option<PoseJet>)) -> ByMass<f64> {
        ByMass::from_fn(|level| self.moment(level, jets))
    }

    /// Potential energy, J; 0 with every mass at the underside of the box.
    fn energy(&self, level: Level, jets: &(PoseJet, Option<PoseJet>)) -> f64 {
        let one = |body: Body, jet: &PoseJet| {
            let [place, _, _] = jet.point(body.centre);
            body.mass * GRAVITY * place.y * METRE
        };
        self.sum(level, jets, one)
    }

    /// Moment of inertia about the input, kg·m2, and its derivative by the input angle.
    pub(crate) fn inertia(&self, level: Level, jets: &(PoseJet, Option<PoseJet>)) -> [f64; 2] {
        let own = |body: Body, jet: &PoseJet| {
            let [_, path, _] = jet.point(body.centre);
            body.mass * path.square_length() * METRE * METRE
                + body.inertia * jet.rate.turn * jet.rate.turn
        };
        let slope = |body: Body, jet: &PoseJet| {
            let [_, path, bend] = jet.point(body.centre);
            2.0 * (body.mass * path.dot(bend) * METRE * METRE
                + body.inertia * jet.rate.turn * jet.bend.turn)
        };
        [self.sum(level, jets, own), self.sum(level, jets, slope)]
    }

    fn sum(
        &self,
        level: Level,
        (first, second): &(PoseJet, Option<PoseJet>),
        of: impl Fn(Body, &PoseJet) -> f64,
    ) -> f64 {
        let lower = match (&self.second, second) {
            (Some(bodies), Some(jet)) => of(bodies.at(level), jet),
            _ => 0.0,
        };
        of(self.first.at(level), first) + lower
    }
}

impl Body {
    fn of(leaf: &ClosedLeaf, mass: &LeafMass, level: Level) -> Self {
        let place = |part: &PartMass| {
            SectionPoint::new(
                leaf.back_o + part.centre_ahead,
                leaf.bottom + part.centre_up,
            )
        };
        let kilograms = |part: &PartMass| level.of(part.mass);
        let total: f64 = mass.parts.iter().map(kilograms).sum();
        if total <= 0.0 {
            let centre = SectionPoint::new(leaf.back_o, leaf.bottom);
            return Self {
                mass: 0.0,
                centre,
                inertia: 0.0,
            };
        }
        let sum = mass.parts.iter().fold(SectionPoint::zero(), |sum, part| {
            sum + place(part).to_vector() * kilograms(part)
        });
        let centre = sum / total;
        // A rectangle's own m (h^2 + t^2) / 12, carried over to the common centre.
        let about_centre = |part: &PartMass| {
            let own = (part.extent_up.powi(2) + part.extent_ahead.powi(2)) / 12.0;
            kilograms(part) * (own + (place(part) - centre).square_length())
        };
        let inertia = mass.parts.iter().map(about_centre).sum::<f64>() * METRE * METRE;
        Self {
            mass: total,
            centre,
            inertia,
        }
    }
}

/// Lift moment W of a door about the input at s, N·m: + pulls shut. W = dV/dq.
#[must_use]
pub fn lift_moment(motion: &Motion, weights: &Weights, s: f64) -> ByMass<f64> {
    weights.moments(&motion.jets(motion.input(s)))
}

/// Potential energy V of a door at s, J; 0 with every mass at the underside of the box.
#[must_use]
pub fn potential_energy(motion: &Motion, weights: &Weights, s: f64) -> ByMass<f64> {
    let jets = motion.jets(motion.input(s));
    ByMass::from_fn(|level| weights.energy(level, &jets))
}

/// Moment of inertia of a door about the input at s, kg·m2: twice its kinetic energy at an input
/// speed of 1 radian a second.
#[must_use]
pub fn inertia(motion: &Motion, weights: &Weights, s: f64) -> ByMass<f64> {
    let jets = motion.jets(motion.input(s));
    ByMass::from_fn(|level| weights.inertia(level, &jets)[0])
}
