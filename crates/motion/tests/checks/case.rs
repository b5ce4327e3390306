//! A card and a door made ready for curves.

use flapwright_model::card::Card;
use flapwright_motion::closed::ClosedDoor;
use flapwright_motion::drive::{Drive, DriveState};
use flapwright_motion::gravity::Weights;
use flapwright_motion::mass::DoorMass;
use flapwright_motion::motion::{Motion, motion};
use flapwright_motion::statics::{CurvePoint, Grip, Setup};

/// All that a curve needs.
pub(crate) struct Case {
    pub(crate) motion: Motion,
    pub(crate) weights: Weights,
    pub(crate) drive: Drive,
    pub(crate) grip: Grip,
}

impl Case {
    pub(crate) fn new(card: &Card, door: &ClosedDoor, mass: &DoorMass, state: &DriveState) -> Self {
        let motion = motion(card, "A", door).expect("a motion");
        let drive = Drive::new(card, &card.sizes[0], door, &motion, state).expect("a drive");
        Self {
            drive,
            motion,
            weights: Weights::of(door, mass),
            grip: Grip::of(door),
        }
    }

    pub(crate) fn setup(&self) -> Setup<'_> {
        let Self {
            motion,
            weights,
            drive,
            grip,
        } = self;
        Setup {
            motion,
            weights,
            drive,
            grip: *grip,
        }
    }

    pub(crate) fn at(&self, degrees: f64) -> CurvePoint {
        CurvePoint::of(
            &self.setup(),
            degrees / self.motion.end_angle().to_degrees(),
        )
    }
}

pub(crate) const PAIR: DriveState = DriveState {
    pieces: 2,
    setting: 0.0,
    celsius: 20.0,
};
