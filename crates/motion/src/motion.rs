//! The motion of a door: a curve from closed (s = 0) to fully open (s = 1).

use euclid::{Rotation2D, Vector2D};
use flapwright_model::card::{Card, OpeningKind};
use flapwright_model::part::LeafId;
use flapwright_model::space::{SectionPoint, SectionSpace, SectionVector};

use crate::build;
use crate::closed::ClosedDoor;
use crate::error::MotionError;
use crate::mechanism::{Mechanism, PoseJet};

/// Where a rigid body of the section has gone: turned by `angle` (radians, + opening, from -y
/// towards +o) about the origin, then shifted.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Pose {
    /// Turn since closed, radians.
    pub angle: f64,
    /// Shift after the turn, mm.
    pub shift: SectionVector,
}

impl Pose {
    /// The closed pose.
    pub const CLOSED: Self = Self {
        angle: 0.0,
        shift: Vector2D::new(0.0, 0.0),
    };

    /// A turn by `angle` radians about `pivot`: + takes what hangs below it out into the room.
    ///
    /// ```
    /// use flapwright_model::space::SectionPoint;
    /// use flapwright_motion::motion::Pose;
    ///
    /// let axis = SectionPoint::new(0.0, 700.0);
    /// let lower_edge = SectionPoint::new(0.0, 300.0);
    /// let open = Pose::about(axis, 90_f64.to_radians()).apply(lower_edge);
    /// assert!((open - SectionPoint::new(400.0, 700.0)).length() < 1e-9);
    /// ```
    #[must_use]
    pub fn about(pivot: SectionPoint, angle: f64) -> Self {
        let turned = turned(pivot.to_vector(), angle);
        Self {
            angle,
            shift: pivot.to_vector() - turned,
        }
    }

    /// Where a point of the closed body has gone.
    #[must_use]
    pub fn apply(&self, closed: SectionPoint) -> SectionPoint {
        turned(closed.to_vector(), self.angle).to_point() + self.shift
    }
}

/// How a pose changes with the input angle: its derivative.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct PoseRate {
    /// Radians of the body per radian of the input; below 0 turns against the opening sense.
    pub turn: f64,
    /// Change of [`Pose::shift`], mm per radian of the input.
    pub shift: SectionVector,
}

impl PoseRate {
    /// How a point of the closed body moves, mm per radian of the input, when the body is at
    /// `pose`.
    #[must_use]
    pub fn of_point(&self, pose: &Pose, closed: SectionPoint) -> SectionVector {
        quarter_turn(turned(closed.to_vector(), pose.angle)) * self.turn + self.shift
    }
}

/// The pose of everything that moves, at one s.
#[derive(Debug, Clone, PartialEq)]
pub struct MotionPose {
    /// Input angle (flap, arm, upper leaf) since closed, radians.
    pub input: f64,
    /// Pose of each leaf, from the top down.
    pub leaves: Vec<(LeafId, Pose)>,
    /// The arms and links, each from its pivot in the box to its pivot on the door, mm.
    pub arms: Vec<(SectionPoint, SectionPoint)>,
}

impl MotionPose {
    /// The pose of one leaf, if the door has it.
    #[must_use]
    pub fn leaf(&self, id: LeafId) -> Option<Pose> {
        self.leaves
            .iter()
            .find(|(name, _)| *name == id)
            .map(|(_, pose)| *pose)
    }
}

/// How a door moves on a card, from closed to fully open.
///
/// The input angle q runs from 0 to the card's end angle as s runs from 0 to 1. It is the angle
/// of the flap, of the first arm or of the upper leaf, and it is always + counter-clockwise in
/// (o, y): straight down turns towards the room, then up. So the door end of an arm that points
/// out or down goes out and up first, whatever the card; which way the other bodies turn follows
/// from the closed places alone.
#[derive(Debug, Clone, PartialEq)]
pub struct Motion {
    kind: OpeningKind,
    first: LeafId,
    end: f64,
    path_tolerance: f64,
    damping: f64,
    mechanism: Mechanism,
}

/// The motion of a door on one size of a card.
///
/// # Errors
/// [`MotionError`] when a number is missing or not finite, when card and door disagree on the
/// opening kind, or when the links cannot close all the way from closed to fully open.
pub fn motion(card: &Card, size: &str, door: &ClosedDoor) -> Result<Motion, MotionError> {
    let mechanism = build::mechanism(card, size, door)?;
    Ok(Motion {
        kind: card.kind,
        first: if card.kind.leaf_count() == 2 {
            LeafId::Upper
        } else {
            LeafId::Only
        },
        end: card.linkage.end_degrees.to_radians(),
        path_tolerance: card.linkage.path_tolerance,
        damping: card.linkage.damping,
        mechanism,
    })
}

impl Motion {
    /// Where everything is at s. Below 0 and not-a-number count as 0, above 1 as 1.
    #[must_use]
    pub fn pose(&self, s: f64) -> MotionPose {
        let input = self.input(s);
        let (first, second) = self.mechanism.jets(input);
        MotionPose {
            input,
            leaves: self.named(first.pose, second.map(|jet| jet.pose)),
            arms: self.mechanism.arms(input),
        }
    }

    /// How the leaves move at s, from the top down: derivatives by the input angle.
    #[must_use]
    pub fn velocity(&self, s: f64) -> Vec<(LeafId, PoseRate)> {
        let (first, second) = self.mechanism.jets(self.input(s));
        self.named(first.rate, second.map(|jet| jet.rate))
    }

    /// The input angle at s, radians.
    #[must_use]
    pub fn input(&self, s: f64) -> f64 {
        if s.is_nan() {
            0.0
        } else {
            s.clamp(0.0, 1.0) * self.end
        }
    }

    /// The main axis in the section: the flap's or the upper leaf's axis, or the pivot in the box
    /// of the first arm. A flap on a table of poses has no fixed axis: its reference point,
    /// closed, stands in.
    #[must_use]
    pub const fn axis(&self) -> SectionPoint {
        self.mechanism.axis()
    }

    /// Input angle when fully open, radians.
    #[must_use]
    pub const fn end_angle(&self) -> f64 {
        self.end
    }

    /// How far the true path may lie off this one, mm; clearance checks add it.
    #[must_use]
    pub const fn path_tolerance(&self) -> f64 {
        self.path_tolerance
    }

    /// Viscous damping about the input, N·m·s.
    #[must_use]
    pub const fn damping(&self) -> f64 {
        self.damping
    }

    /// Poses and derivatives of the leaves at an input angle within 0 and the end angle.
    pub(crate) fn jets(&self, input: f64) -> (PoseJet, Option<PoseJet>) {
        self.mechanism.jets(input)
    }

    fn named<T>(&self, first: T, second: Option<T>) -> Vec<(LeafId, T)> {
        let mut leaves = vec![(self.first, first)];
        leaves.extend(second.map(|lower| (LeafId::Lower, lower)));
        leaves
    }
}

/// A direction turned by an angle, radians, + opening.
pub(crate) fn turned(direction: SectionVector, angle: f64) -> SectionVector {
    Rotation2D::<f64, SectionSpace, SectionSpace>::radians(angle).transform_vector(direction)
}

/// A direction turned by a right angle in the opening sense.
pub(crate) fn quarter_turn(direction: SectionVector) -> SectionVector {
    SectionVector::new(-direction.y, direction.x)
}
