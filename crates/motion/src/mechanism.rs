//! The mechanisms of the four opening kinds, each in closed form.

use flapwright_model::space::{SectionPoint, SectionVector};

use crate::flap_table::FlapTable;
use crate::four_bar::FourBar;
use crate::pose::{Pose, PoseJet, PoseRate, quarter_turn, turned};

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
