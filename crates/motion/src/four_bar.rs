//! A four-bar linkage in closed form.
//!
//! Two circles are intersected: the coupler's about the crank's pin, the rocker's about its pivot
//! in the box. Which of the two points is meant is settled by the closed pose and kept, so the
//! linkage can never jump to its mirror image.

use flapwright_model::space::{SectionPoint, SectionVector};

use crate::error::MotionError;
use crate::limits::SHORTEST_ARM;
use crate::pose::PoseJet;
use crate::pose::{Pose, PoseRate, quarter_turn, turned};
use flapwright_model::message::{Degrees, Word};

/// Below this share of the largest possible height the links count as lying in one line.
const DEAD_SHARE: f64 = 1e-7;

/// What messages call the three moving links.
pub(crate) struct LinkNames {
    pub(crate) crank: Word,
    pub(crate) coupler: Word,
    pub(crate) rocker: Word,
}

/// Pivots of a four-bar linkage with the door closed, mm.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) struct FourBar {
    /// Axis of the driven link.
    pub(crate) crank_pivot: SectionPoint,
    /// Pin between the driven link and the coupler, closed.
    pub(crate) crank_pin: SectionPoint,
    /// Pivot in the box of the guiding link.
    pub(crate) rocker_pivot: SectionPoint,
    /// Pin between the coupler and the guiding link, closed.
    pub(crate) rocker_pin: SectionPoint,
    coupler: f64,
    rocker: f64,
    /// +1 when the coupler lies counter-clockwise of the line from its crank pin to the rocker's
    /// pivot, -1 when clockwise.
    branch: f64,
    closed_direction: f64,
}

/// The links at one input angle.
struct Links {
    crank: SectionVector,
    coupler: SectionVector,
    rocker: SectionVector,
    direction: f64,
}

impl FourBar {
    /// The linkage, proved to close from 0 to `end` radians.
    pub(crate) fn new(
        [crank_pivot, crank_pin, rocker_pivot, rocker_pin]: [SectionPoint; 4],
        end: f64,
        names: &LinkNames,
    ) -> Result<Self, MotionError> {
        let mut bar = Self {
            crank_pivot,
            crank_pin,
            rocker_pivot,
            rocker_pin,
            coupler: (rocker_pin - crank_pin).length(),
            rocker: (rocker_pin - rocker_pivot).length(),
            branch: 1.0,
            closed_direction: 0.0,
        };
        let lengths = [
            (names.crank, (crank_pin - crank_pivot).length()),
            (names.coupler, bar.coupler),
            (names.rocker, bar.rocker),
        ];
        if let Some((arm, _)) = lengths.iter().find(|(_, length)| *length < SHORTEST_ARM) {
            return Err(MotionError::NoLength { arm: *arm });
        }
        let base = rocker_pivot - crank_pin;
        let height = base.cross(rocker_pin - crank_pin);
        if height.abs() <= DEAD_SHARE * base.length() * bar.coupler {
            return Err(MotionError::CannotClose {
                link: names.rocker,
                at: Degrees(0.0),
            });
        }
        bar.branch = height.signum();
        if let Some(angle) = bar.first_dead_angle(end) {
            return Err(MotionError::CannotClose {
                link: names.rocker,
                at: Degrees(angle.to_degrees()),
            });
        }
        bar.closed_direction = bar.links(0.0).direction;
        Ok(bar)
    }

    /// The least input angle up to `end` at which coupler and guiding link lie in one line.
    ///
    /// The distance D from crank pin to rocker pivot obeys D^2 = g^2 + c^2 - 2 g c cos(a + q), so
    /// the angles where D is the sum or the difference of the two links follow at once.
    fn first_dead_angle(&self, end: f64) -> Option<f64> {
        let ground = self.rocker_pivot - self.crank_pivot;
        let crank = self.crank_pin - self.crank_pivot;
        let product = 2.0 * ground.length() * crank.length();
        if product <= 0.0 {
            return None;
        }
        let squares = ground.square_length() + crank.square_length();
        let start = ground.cross(crank).atan2(ground.dot(crank));
        let full = std::f64::consts::TAU;
        [
            self.coupler + self.rocker,
            (self.coupler - self.rocker).abs(),
        ]
        .into_iter()
        .map(|limit| (squares - limit * limit) / product)
        .filter(|cosine| cosine.abs() <= 1.0 + 1e-12)
        .flat_map(|cosine| {
            let turn = cosine.clamp(-1.0, 1.0).acos();
            [
                (turn - start).rem_euclid(full),
                (-turn - start).rem_euclid(full),
            ]
        })
        .filter(|angle| *angle <= end)
        .min_by(f64::total_cmp)
    }

    fn links(&self, input: f64) -> Links {
        let closed_crank = self.crank_pin - self.crank_pivot;
        let crank = turned(closed_crank, input);
        let ground = self.rocker_pivot - self.crank_pivot;
        let base = ground - crank;
        let reach = base.length();
        let along = (self.coupler * self.coupler - self.rocker * self.rocker + reach * reach)
            / (2.0 * reach);
        let height = (self.coupler * self.coupler - along * along)
            .max(0.0)
            .sqrt();
        let coupler = (base * along + quarter_turn(base) * (self.branch * height)) / reach;
        // The base line is measured against a direction that it never turns away from by more
        // than a right angle, so its angle is continuous however far the crank turns.
        let base_direction = if ground.square_length() > closed_crank.square_length() {
            ground.cross(base).atan2(ground.dot(base))
        } else {
            let seen = turned(base, -input);
            let from = -closed_crank;
            input + from.cross(seen).atan2(from.dot(seen))
        };
        let direction = base_direction + self.branch * height.atan2(along);
        Links {
            crank,
            coupler,
            rocker: coupler - base,
            direction,
        }
    }

    /// Where the pin between coupler and guiding link is, mm.
    pub(crate) fn rocker_pin_at(&self, input: f64) -> SectionPoint {
        self.rocker_pivot + self.links(input).rocker
    }

    /// Pose of the coupler with its first and second derivative by the input angle, from the loop
    /// equation crank + coupler = ground + rocker differentiated once and twice.
    pub(crate) fn coupler_jet(&self, input: f64) -> PoseJet {
        let Links {
            crank,
            coupler,
            rocker,
            direction,
        } = self.links(input);
        let angle = direction - self.closed_direction;
        // Measured from the closed crank pin, so that nothing is lost by adding large places.
        let start = turned(self.crank_pin.to_vector(), angle);
        let pin = self.crank_pivot + crank;
        let lever = coupler.cross(rocker);
        let turn = -crank.cross(rocker) / lever;
        let rocker_turn = -crank.cross(coupler) / lever;
        let bend = (crank.dot(rocker) + turn * turn * coupler.dot(rocker)
            - rocker_turn * rocker_turn * rocker.square_length())
            / lever;
        let pin_speed = quarter_turn(crank);
        let start_side = quarter_turn(start);
        PoseJet::new(
            Pose {
                angle,
                shift: pin.to_vector() - start,
            },
            PoseRate {
                turn,
                shift: pin_speed - start_side * turn,
            },
            PoseRate {
                turn: bend,
                shift: -crank - start_side * bend + start * (turn * turn),
            },
        )
    }
}
