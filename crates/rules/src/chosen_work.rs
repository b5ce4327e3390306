//! How the chosen size of a door works, as far as the checks ask.

use flapwright_model::cabinet::WallBox;
use flapwright_model::id::DoorId;
use flapwright_model::job::Job;
use flapwright_motion::drive::DriveState;
use flapwright_motion::dynamics::{Release, release};
use flapwright_motion::gravity::Level;
use flapwright_motion::sizes::{Judged, Verdict, verdict};
use flapwright_motion::statics::{Behaviour, CurvePoint, Curves, curves};
use flapwright_motion::strut::NOMINAL_CELSIUS;

use crate::fitted::Fitted;
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

/// How the chosen size of a door works; `None` without a fitting, a mass or a motion.
#[must_use]
pub fn chosen_work(
    job: &Job,
    wall_box: &WallBox,
    report: &BoxReport,
    door: DoorId,
) -> Option<ChosenWork> {
    let fitted = Fitted::of(job, wall_box, report, door)?;
    let Fitted {
        place,
        door,
        mass,
        card,
        size,
        ..
    } = fitted;
    let offer = offer(wall_box, report, place, door);
    let judged = Judged {
        door: &door.closed,
        mass,
        offer: &offer,
        cold_and_hot: job.settings.cold_and_hot(),
    };
    let pieces = DriveState::of(card, 0.0).pieces;
    let verdict = verdict(card, size, &judged, pieces);
    let share = verdict
        .setting
        .as_ref()
        .map_or(0.5, |setting| setting.share_for(Level::Likely));
    let drive = fitted.drive(&DriveState::of(card, share)).ok();
    let curves = drive.map(|drive| {
        let weights = fitted.weights();
        curves(&fitted.setup(&weights, &drive), PLACES)
    });
    Some(ChosenWork { verdict, curves })
}

/// How the heaviest door falls shut with its fitting set for it, in the cold.
#[derive(Debug, Clone)]
pub struct Fall {
    /// Where it begins: the highest place from which the door falls, from 0 closed to 1 open.
    pub from: f64,
    /// The same in degrees of the input.
    pub from_degrees: f64,
    /// Where the door is at the end of its fall, degrees of the input.
    pub rest_degrees: f64,
    /// Whether the likely door, set for itself at 20 °C, falls from open too.
    pub likely_too: bool,
    /// What becomes of the heaviest door when it is let go at the highest place.
    pub let_go: Release,
}

/// From where the heaviest door falls, if that is above `lowest` of the way or fully open; `None`
/// also where [`chosen_work`] gives none.
#[must_use]
pub fn fall(
    job: &Job,
    wall_box: &WallBox,
    report: &BoxReport,
    door: DoorId,
    (verdict, lowest): (&Verdict, f64),
) -> Option<Fall> {
    let fitted = Fitted::of(job, wall_box, report, door)?;
    let weights = fitted.weights();
    let drive = |level, celsius| {
        let share = verdict.setting.map_or(0.0, |it| it.share_for(level));
        let state = DriveState {
            celsius,
            ..DriveState::of(fitted.card, share)
        };
        fitted.drive(&state).ok()
    };
    let cold = job.settings.coldest;
    let heavy = drive(Level::High, cold)?;
    let setup = fitted.setup(&weights, &heavy);
    let zone = curves(&setup, PLACES)
        .zones(Level::High)
        .into_iter()
        .rfind(|zone| zone.behaviour == Behaviour::Falls && (zone.to > lowest || zone.to >= 1.0))?;
    // At its very border the door still holds.
    let start = zone.to - 1e-3 * (zone.to - zone.from);
    let likely = drive(Level::Likely, NOMINAL_CELSIUS)?;
    let likely_setup = fitted.setup(&weights, &likely);
    let let_go = release(&setup, Level::High, start, 0.0);
    // It comes further down than the stretch reaches, for it has got speed there.
    let rest = let_go.last().map_or(zone.from, |last| last.s);
    let degrees = |s: f64| fitted.motion.input(s).to_degrees();
    Some(Fall {
        from: zone.to,
        from_degrees: degrees(zone.to),
        rest_degrees: degrees(rest),
        likely_too: CurvePoint::of(&likely_setup, 1.0).behaviour(Level::Likely) == Behaviour::Falls,
        let_go,
    })
}
