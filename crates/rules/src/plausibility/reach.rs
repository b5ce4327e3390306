//! Arms that cannot reach, and springs that cannot hold the largest door.
//!
//! Each size is tried on a plain frameless box (18 mm panels, reveals of 3 mm) with the lowest and
//! the highest door that it is made for.

use flapwright_model::card::{Card, Size};
use flapwright_model::message::{Kilogram, Mm, NewtonMetre};
use flapwright_motion::drive::{Drive, DriveError, DriveState};
use flapwright_motion::gravity::{Level, Weights};
use flapwright_motion::load::LoadKind;
use flapwright_motion::sizes::{Judged, verdict};
use flapwright_motion::statics::{Behaviour, CurvePoint, Grip, Setup};

use super::Suspicions;
use crate::inspection::DoorReport;
use crate::mechanics::offer;
use crate::message::{SlipMessage, SlipRemedy};
use crate::trial::Trial;

/// Mass of a door whose own mass is not the question, kg.
const ANY_MASS: f64 = 1.0;

pub(super) fn look_at(look: &mut Suspicions<'_>) {
    for (i, size) in look.card.sizes.iter().enumerate() {
        let (low, high) = Trial::door_heights(size);
        let reached = [low, high]
            .into_iter()
            .all(|height| arms(look, i, size, height));
        if !reached {
            // The others fail in the same way.
            return;
        }
        hold(look, i, size, high);
    }
}

/// Whether the arms of a size carry a door of this height; a slip else.
fn arms(look: &mut Suspicions<'_>, index: usize, size: &Size, height: f64) -> bool {
    let Some(tried) = Trial::new(look.card, size, height, ANY_MASS) else {
        return true;
    };
    let Some(Err(error)) = tried.door().and_then(DoorReport::motion) else {
        return true;
    };
    let message = SlipMessage::NoMotion {
        size: size.name.clone(),
        height: Mm(height),
        why: error.clone(),
    };
    let field = format!("sizes[{index}] and linkage");
    look.slip(field, message, SlipRemedy::Pivots);
    false
}

/// Whether the strongest setting holds the heaviest and highest door fully open.
fn hold(look: &mut Suspicions<'_>, index: usize, size: &Size, height: f64) {
    let Some(mass) = heaviest(look.card, size, height) else {
        return;
    };
    let Some(tried) = Trial::new(look.card, size, height, mass) else {
        return;
    };
    let Some(open) = fully_open(&tried, look.card, size) else {
        return;
    };
    let field = format!("sizes[{index}].lift");
    let named = size.name.clone();
    let (height, mass) = (Mm(height), Kilogram(mass));
    let point = match open {
        Ok(point) => point,
        Err(error) => {
            let message = SlipMessage::NoDrive {
                size: named,
                height,
                mass,
                why: error,
            };
            look.slip(field, message, SlipRemedy::Strut);
            return;
        }
    };
    if point.behaviour(Level::Likely) == Behaviour::Falls {
        let message = SlipMessage::CannotHold {
            size: named,
            height,
            mass,
            closing: NewtonMetre(point.lift.likely),
            opening: NewtonMetre(point.push.moment),
            friction: NewtonMetre(point.push.friction),
        };
        look.slip(field, message, SlipRemedy::LoadAndSpring);
    }
}

/// The heaviest door of this height that the card allows, kg, for as many pieces as it has.
fn heaviest(card: &Card, size: &Size, height: f64) -> Option<f64> {
    let tried = Trial::new(card, size, height, ANY_MASS)?;
    let door = tried.door()?;
    let wall_box = tried.job.boxes.first()?;
    let place = tried.report.openings.first()?;
    let offer = offer(wall_box, &tried.report, place, door);
    let judged = Judged {
        door: &door.closed,
        mass: door.weighed.as_ref()?,
        offer: &offer,
        cold_and_hot: tried.job.settings.cold_and_hot(),
    };
    let load = verdict(card, size, &judged, DriveState::of(card, 1.0).pieces).load?;
    let mass = match load.kind {
        LoadKind::Mass => load.max,
        LoadKind::Moment { .. } => load.max / load.load.likely * ANY_MASS,
    };
    (mass > 0.0 && mass.is_finite()).then_some(mass)
}

/// The door fully open at the strongest setting, or why the drive cannot be reckoned.
fn fully_open(tried: &Trial, card: &Card, size: &Size) -> Option<Result<CurvePoint, DriveError>> {
    let door = tried.door()?;
    let motion = door.working_motion()?;
    let weights = Weights::of(&door.closed, door.weighed.as_ref()?);
    let state = DriveState::of(card, 1.0);
    let drive = Drive::new(card, size, &door.closed, motion, &state);
    Some(drive.map(|drive| {
        let setup = Setup {
            motion,
            weights: &weights,
            drive: &drive,
            grip: Grip::of(&door.closed),
        };
        CurvePoint::of(&setup, 1.0)
    }))
}
