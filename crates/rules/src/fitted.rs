//! A door with its fitting, as far as both can be reckoned with.

use flapwright_model::cabinet::WallBox;
use flapwright_model::card::{Card, Size};
use flapwright_model::id::DoorId;
use flapwright_model::job::Job;
use flapwright_motion::drive::{Drive, DriveError, DriveState};
use flapwright_motion::gravity::Weights;
use flapwright_motion::mass::DoorMass;
use flapwright_motion::motion::Motion;
use flapwright_motion::statics::{Grip, Setup};

use crate::inspection::{BoxReport, DoorReport, OpeningReport};

/// A door with the card and size that carry it.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Fitted<'a> {
    /// The opening.
    pub(crate) place: &'a OpeningReport,
    /// Its door.
    pub(crate) door: &'a DoorReport,
    /// What it weighs.
    pub(crate) mass: &'a DoorMass,
    /// How it moves.
    pub(crate) motion: &'a Motion,
    /// The card.
    pub(crate) card: &'a Card,
    /// The size of it.
    pub(crate) size: &'a Size,
}

impl<'a> Fitted<'a> {
    /// A door; `None` where it is not there, or without a fitting, a mass or a motion, which checks
    /// report.
    pub(crate) fn of(
        job: &'a Job,
        wall_box: &WallBox,
        report: &'a BoxReport,
        door: DoorId,
    ) -> Option<Self> {
        let choice = wall_box.door(door)?.fitting.as_ref()?;
        let place = report.opening_of(door)?;
        let door = place.door.as_ref()?;
        let card = job.card_by_id(choice.card)?;
        Some(Self {
            place,
            door,
            mass: door.weighed.as_ref()?,
            motion: door.working_motion()?,
            card,
            size: card.size(&choice.size)?,
        })
    }

    /// What it weighs, by its parts' places.
    pub(crate) fn weights(&self) -> Weights {
        Weights::of(&self.door.closed, self.mass)
    }

    /// What lifts it in a state.
    ///
    /// # Errors
    /// When spring or strut cannot be reckoned with on this door.
    pub(crate) fn drive(&self, state: &DriveState) -> Result<Drive, DriveError> {
        Drive::new(self.card, self.size, &self.door.closed, self.motion, state)
    }

    /// All of it together, held at its handle.
    pub(crate) fn setup<'b>(&'b self, weights: &'b Weights, drive: &'b Drive) -> Setup<'b> {
        Setup {
            motion: self.motion,
            weights,
            drive,
            grip: Grip::of(&self.door.closed),
        }
    }
}
