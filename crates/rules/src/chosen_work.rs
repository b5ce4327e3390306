//! How the chosen size of a door works, as far as the checks ask.

use flapwright_model::cabinet::WallBox;
use flapwright_model::job::Job;
use flapwright_motion::drive::{Drive, DriveState};
use flapwright_motion::gravity::{Level, Weights};
use flapwright_motion::sizes::{Judged, Verdict, verdict};
use flapwright_motion::statics::{Curves, Grip, Setup, curves};

use crate::inspection::BoxReport;
use crate::mechanics::offer;

/// Places of the curves that the checks go by.
const PLACES: u16 = 61;

/// Verdict on the chosen size, and the hand's work with it.
#[derive(Debug, Clone)]
pub struct ChosenWork {
    /// The verdict on the size.
    pub verdict: Verdict,
    /// Moments and forces over the way at the setting that balances the door (the middle where
    /// there is none); `None` when spring or strut cannot be reckoned with, which the verdict says.
    pub curves: Option<Curves>,
}

/// How the chosen size of the door of an opening works; `None` without a door, a fitting, a mass or
/// a motion.
#[must_use]
pub fn chosen_work(
    job: &Job,
    wall_box: &WallBox,
    report: &BoxReport,
    opening: usize,
) -> Option<ChosenWork> {
    let choice = wall_box
        .openings
        .get(opening)?
        .door
        .as_ref()?
        .fitting
        .as_ref()?;
    let place = report.openings.get(opening)?;
    let door = place.door.as_ref()?;
    let mass = door.weighed.as_ref()?;
    let motion = door.motion.as_ref()?.as_ref().ok()?;
    let card = job.card(&choice.card)?;
    let size = card.size(&choice.size)?;
    let offer = offer(wall_box, report, place, door);
    let judged = Judged {
        door: &door.closed,
        mass,
        offer: &offer,
    };
    let pieces = u8::try_from(card.sides.ties().len()).unwrap_or(2);
    let verdict = verdict(card, size, &judged, pieces);
    let share = verdict
        .setting
        .as_ref()
        .map_or(0.5, |setting| setting.share_for(Level::Likely));
    let state = DriveState::of(card, share);
    let curves = Drive::new(card, size, &door.closed, motion, &state)
        .ok()
        .map(|drive| {
            let weights = Weights::of(&door.closed, mass);
            let setup = Setup {
                motion,
                weights: &weights,
                drive: &drive,
                grip: Grip::of(&door.closed),
            };
            curves(&setup, PLACES)
        });
    Some(ChosenWork { verdict, curves })
}
