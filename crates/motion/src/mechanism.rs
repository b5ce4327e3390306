//! The mechanisms of the four opening kinds, each in closed form.

use flapwright_model::space::{SectionPoint, SectionVector};

use crate::flap_table::FlapTable;
use crate::four_bar::FourBar;
use crate::motion::{Pose, PoseRate, quarter_turn, turned};

/// Arms shorter than this have no direction, mm.
pub(crate) const SHORTEST_ARM: f64 = 1e-3;

/// No door's input turns further than this, degrees.
pub(crate) const LARGEST_END_DEGREES: f64 = 270.0;

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

/// The mechanism of a card on one door.
#[derive(Debug, Clone, PartialEq)]
pub(crate) enum Mechanism {
    Fixed {
        axis: SectionPoint,
    },
    Table(FlapTable),
    /// Two equal arms: `pin` on the door, closed; `second` leads from the first arm to the second.
    Parallel {
        pivot: SectionPoint,
        pin: SectionPoint,
        second: SectionVector,
    },
    Folding(FourBar),
    TwoArms(FourBar),
}

impl Mechanism {
    /// The leaves from the top down at an input angle, radians.
    pub(crate) fn jets(&self, input: f64) -> (PoseJet, Option<PoseJet>) {
        match self {
            Self::Fixed { axis } => (turn_about(*axis, input), None),
            Self::Table(table) => (table.jet(input), None),
            Self::Parallel { pivot, pin, .. } => {
                let closed = *pin - *pivot;
                let arm = turned(closed, input);
                let jet = PoseJet::new(
                    Pose {
                        angle: 0.0,
                        shift: arm - closed,
                    },
                    PoseRate {
                        turn: 0.0,
                        shift: quarter_turn(arm),
                    },
                    PoseRate {
                        turn: 0.0,
                        shift: -arm,
                    },
                );
                (jet, None)
            }
            Self::Folding(bar) => (
                turn_about(bar.crank_pivot, input),
                Some(bar.coupler_jet(input)),
            ),
            Self::TwoArms(bar) => (bar.coupler_jet(input), None),
        }
    }

    /// Arms and links at an input angle, each from the box to the door.
    pub(crate) fn arms(&self, input: f64) -> Vec<(SectionPoint, SectionPoint)> {
        match self {
            Self::Fixed { .. } | Self::Table(_) => Vec::new(),
            Self::Parallel { pivot, pin, second } => {
                let end = *pivot + turned(*pin - *pivot, input);
                vec![(*pivot, end), (*pivot + *second, end + *second)]
            }
            Self::Folding(bar) => vec![(bar.rocker_pivot, bar.rocker_pin_at(input))],
            Self::TwoArms(bar) => vec![
                (
                    bar.crank_pivot,
                    bar.crank_pivot + turned(bar.crank_pin - bar.crank_pivot, input),
                ),
                (bar.rocker_pivot, bar.rocker_pin_at(input)),
            ],
        }
    }

    /// The place about which the input turns.
    pub(crate) const fn axis(&self) -> SectionPoint {
        match self {
            Self::Fixed { axis } => *axis,
            Self::Table(table) => table.reference,
            Self::Parallel { pivot, .. } => *pivot,
            Self::Folding(bar) | Self::TwoArms(bar) => bar.crank_pivot,
        }
    }
}

fn turn_about(axis: SectionPoint, input: f64) -> PoseJet {
    let place = axis.to_vector();
    let start = turned(place, input);
    PoseJet::new(
        Pose {
            angle: input,
            shift: place - start,
        },
        PoseRate {
            turn: 1.0,
            shift: -quarter_turn(start),
        },
        PoseRate {
            turn: 0.0,
            shift: start,
        },
    )
}
