//! Where a body of the section has gone, and how fast it goes on.

use euclid::{Rotation2D, Vector2D};
use flapwright_model::space::{SectionPoint, SectionSpace, SectionVector};

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

/// A pose with its first and second derivative by the input angle.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) struct PoseJet {
    pub(crate) pose: Pose,
    pub(crate) rate: PoseRate,
    pub(crate) bend: PoseRate,
    /// Cosine and sine of the pose's angle.
    turn: SectionVector,
}

impl PoseJet {
    pub(crate) fn new(pose: Pose, rate: PoseRate, bend: PoseRate) -> Self {
        let (sin, cos) = pose.angle.sin_cos();
        Self {
            pose,
            rate,
            bend,
            turn: SectionVector::new(cos, sin),
        }
    }

    /// A point of the closed body turned by the pose's angle, not yet shifted.
    fn turned(&self, closed: SectionPoint) -> SectionVector {
        let SectionVector { x: cos, y: sin, .. } = self.turn;
        SectionVector::new(
            closed.x * cos - closed.y * sin,
            closed.x * sin + closed.y * cos,
        )
    }

    /// Where a point of the closed body is, mm.
    pub(crate) fn place(&self, closed: SectionPoint) -> SectionVector {
        self.turned(closed) + self.pose.shift
    }

    /// Where a point of the closed body is, and its first and second derivative by the input
    /// angle, mm.
    pub(crate) fn point(&self, closed: SectionPoint) -> [SectionVector; 3] {
        let arm = self.turned(closed);
        let side = quarter_turn(arm);
        let turn = self.rate.turn;
        [
            arm + self.pose.shift,
            side * turn + self.rate.shift,
            side * self.bend.turn - arm * (turn * turn) + self.bend.shift,
        ]
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
