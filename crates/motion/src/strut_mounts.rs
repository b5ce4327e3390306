//! Where to put the anchors of a gas strut.
//!
//! Given limits for the two anchors and the struts that can be had, the search finds the anchors
//! with the smallest largest hand force at 20 °C among those where the heaviest door stays open in
//! the cold, the lightest stays shut in the heat, and the stroke is enough. It is deterministic: a
//! lattice of starting places that is the same every time, the best of them refined by the
//! simplex search of Nelder and Mead. Such a search can miss the very best place; what it returns
//! is proved on the fine curves of the same statics that draw the plots.

use flapwright_model::lift::Strut;

use crate::drive::{Drive, DriveState};
use crate::gravity::Level;
use crate::mount_cost::{MountCost, Shortfall, StrutMounts, spans};
pub use crate::mount_question::{MountLimits, MountQuestion, StrutOnHand};
use crate::mount_search::{best_mounts, starts};
use crate::statics::{CurvePoint, Curves, Direction, Grip, Setup, curves};
use crate::strut::NOMINAL_CELSIUS;

/// Places of the curves on which an answer is proved.
const PROOF_PLACES: u16 = 201;

/// Mounts for one strut and what they give.
#[derive(Debug, Clone, PartialEq)]
pub struct MountAnswer {
    /// Name of the strut.
    pub name: String,
    /// The strut with its anchors, as a card has it.
    pub strut: Strut,
    /// The hand force furthest from 0 over all masses and both ways at 20 °C, N.
    pub largest_force: f64,
    /// Moment by which the heaviest door is held open in the cold, N·m, 0 or more.
    pub holds_by: f64,
    /// Moment by which the lightest door is kept shut in the heat, N·m, 0 or more.
    pub shut_by: f64,
}

/// Why there is no answer.
#[derive(Debug, Clone, PartialEq, thiserror::Error)]
pub enum MountError {
    /// Nothing to choose from.
    #[error("no strut was given to choose from; add one")]
    NoStruts,
    /// Limits that leave no place.
    #[error("the limits of {what} leave no place; the least must be below the greatest")]
    NoPlace {
        /// Which limits.
        what: &'static str,
    },
    /// The caller stopped the search.
    #[error("the search was stopped")]
    Stopped,
    /// Nothing satisfies all conditions.
    #[error("no strut does it within these limits; nearest is {nearest}: {shortfall}")]
    Nothing {
        /// Name of the strut that came nearest.
        nearest: String,
        /// By how much it falls short.
        shortfall: Shortfall,
    },
}

/// The best anchors for each strut that can do it, the smallest hand force first.
///
/// `go_on` is told the share that is done, 0 to 1, and says whether to go on.
///
/// # Errors
/// [`MountError`] when nothing satisfies, when the question leaves nothing to choose, or when
/// `go_on` said no.
pub fn place_strut(
    question: &MountQuestion<'_>,
    go_on: &mut dyn FnMut(f64) -> bool,
) -> Result<Vec<MountAnswer>, MountError> {
    check(question)?;
    let starts = starts(question.limits);
    let mut answers = Vec::new();
    let mut nearest: Option<(f64, String, Shortfall)> = None;
    for (index, on_hand) in question.struts.iter().enumerate() {
        let cost = MountCost::new(question, &on_hand.strut);
        let done = |part: f64| (index as f64 + part) / question.struts.len() as f64;
        let best = best_mounts(&cost, &starts, &mut |part| go_on(done(part)))
            .ok_or(MountError::Stopped)?;
        if let Some(answer) = prove(question, on_hand, &best) {
            answers.push(answer);
        } else {
            let shortfall = cost.shortfall(&best);
            let short = shortfall.weight();
            if nearest.as_ref().is_none_or(|(least, _, _)| short < *least) {
                nearest = Some((short, on_hand.name.clone(), shortfall));
            }
        }
    }
    if answers.is_empty() {
        let (_, nearest, shortfall) = nearest.ok_or(MountError::NoStruts)?;
        return Err(MountError::Nothing { nearest, shortfall });
    }
    answers.sort_by(|a: &MountAnswer, b| a.largest_force.total_cmp(&b.largest_force));
    Ok(answers)
}

fn check(question: &MountQuestion<'_>) -> Result<(), MountError> {
    if question.struts.is_empty() {
        return Err(MountError::NoStruts);
    }
    let limits = question.limits;
    for (what, span) in [
        ("the anchor in the box, down", limits.box_down),
        ("the anchor in the box, back", limits.box_back),
        ("the anchor on the door, down", limits.door_down),
        ("the anchor on the door, back", limits.door_back),
    ] {
        if !(span.min.is_finite() && span.max.is_finite() && span.min <= span.max) {
            return Err(MountError::NoPlace { what });
        }
    }
    Ok(())
}

/// The answer for these anchors on the fine curves; `None` where a condition fails after all.
fn prove(
    question: &MountQuestion<'_>,
    on_hand: &StrutOnHand,
    anchors: &StrutMounts,
) -> Option<MountAnswer> {
    let strut = anchors.of(&on_hand.strut);
    let grip = Grip::of(question.door);
    let drive = |celsius| {
        let state = DriveState {
            pieces: question.pieces,
            setting: 0.0,
            celsius,
        };
        Drive::for_strut(
            &strut,
            question.door,
            question.motion,
            question.front_o,
            &state,
        )
        .ok()
    };
    let setup = |drive| Setup {
        motion: question.motion,
        weights: question.weights,
        drive,
        grip,
    };
    let [cold, hot] = question.cold_and_hot.map(drive);
    let (cold, hot) = (cold?, hot?);
    let open = CurvePoint::of(&setup(&cold), 1.0);
    let shut = CurvePoint::of(&setup(&hot), 0.0);
    let holds_by = open.push.friction - open.balance(Level::High);
    let shut_by = shut.balance(Level::Low) + shut.push.friction;
    if holds_by < 0.0 || shut_by < 0.0 {
        return None;
    }
    let largest_force = largest_force(&curves(&setup(&drive(NOMINAL_CELSIUS)?), PROOF_PLACES))?;
    Some(MountAnswer {
        name: on_hand.name.clone(),
        strut,
        largest_force,
        holds_by,
        shut_by,
    })
}

/// The answer with its anchors on whole tenths of a millimetre, for marking out: of the sixteen
/// neighbours within the limits that still satisfy, the one with the smallest hand force. `None`
/// when none of them does.
#[must_use]
pub fn in_tenths(question: &MountQuestion<'_>, answer: &MountAnswer) -> Option<MountAnswer> {
    let strut = &answer.strut;
    let exact = [
        strut.box_down,
        strut.box_back,
        strut.door_down,
        strut.door_back,
    ];
    let on_hand = StrutOnHand {
        name: answer.name.clone(),
        strut: *strut,
    };
    let spans = spans(question.limits);
    (0_u32..16)
        .filter_map(|neighbour| {
            let places: [f64; 4] = std::array::from_fn(|axis| {
                let tenths = exact[axis] * 10.0;
                let up = neighbour >> axis & 1 == 1;
                (if up { tenths.ceil() } else { tenths.floor() }) / 10.0
            });
            let inside = spans
                .iter()
                .zip(places)
                .all(|(span, place)| (span.min..=span.max).contains(&place));
            inside.then(|| prove(question, &on_hand, &StrutMounts(places)))?
        })
        .min_by(|a, b| a.largest_force.total_cmp(&b.largest_force))
}

/// The hand force furthest from 0 over all masses and both ways, N.
fn largest_force(curves: &Curves) -> Option<f64> {
    [Direction::Opening, Direction::Closing]
        .into_iter()
        .flat_map(|way| Level::ALL.map(|level| curves.hand(way, level).largest))
        .flatten()
        .map(|(force, _)| force.abs())
        .max_by(f64::total_cmp)
}
