//! The choice of size: what each size of each card says to one door.

use std::cmp::Ordering;

use flapwright_model::card::{BackFrom, Card, OpeningKind, Size};
use flapwright_model::message::Word;

use crate::closed::ClosedDoor;
use crate::drive::{Drive, DriveState};
use crate::gravity::{Level, Weights};
use crate::load::{Load, load};
use crate::mass::DoorMass;
use crate::motion::{Motion, motion};
use crate::reason::Reason;
use crate::setting::{Setting, balancing_setting};
use crate::statics::{Behaviour, CurvePoint, Grip, Setup};

/// Moves smaller than this are none, mm: positions are printed to 0.1 mm.
const LEAST_MOVE: f64 = 0.05;

/// What the box and the door offer to a fitting, mm.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Offer {
    /// Finished width of the door.
    pub door_width: f64,
    /// Outer height of the box.
    pub box_height: f64,
    /// Clear depth behind the front datum `SideFront`.
    pub depth_from_side: f64,
    /// Clear depth behind the front datum `FrameFront`.
    pub depth_from_frame: f64,
    /// Clear height of the opening.
    pub opening_height: f64,
    /// From the underside of the panel above the opening down to the first shelf or panel that a
    /// body beside the side could meet.
    pub clear_down: f64,
    /// How far the door must be moved in the box after mounting, so that it sits where it is
    /// drawn: sideways + to box-right, upward +, in depth + into the box.
    pub to_adjust: [f64; 3],
}

/// Whether a size suits a door.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Grade {
    /// It suits.
    Fits,
    /// It will do, at the edge of what it is made for.
    Marginal,
    /// It does not.
    No,
}

impl Grade {
    /// In plain words.
    #[must_use]
    pub const fn words(self) -> &'static str {
        match self {
            Self::Fits => "fits",
            Self::Marginal => "marginal",
            Self::No => "no",
        }
    }
}

/// What is to be said of one size for one door.
#[derive(Debug, Clone, PartialEq)]
pub struct Verdict {
    /// Name of the card.
    pub card: String,
    /// Name of the size.
    pub size: String,
    /// How many pieces are fitted.
    pub pieces: u8,
    /// The worst grade of all reasons.
    pub grade: Grade,
    /// How centred the whole range of the door's mass (or lift moment) lies in what the size
    /// carries: 1 in the middle, 0 touching a limit, below 0 beyond it.
    pub centred: f64,
    /// The load and its limits; `None` where the size gives none for this door.
    pub load: Option<Load>,
    /// Which setting balances the door; `None` for struts, and where there is no motion.
    pub setting: Option<Setting>,
    /// Each reason in numbers, the gravest first.
    pub reasons: Vec<Reason>,
}

impl Verdict {
    /// The better one first: by grade, then by how centred the load lies, then by name.
    #[must_use]
    pub fn best_first(&self, other: &Self) -> Ordering {
        self.grade
            .cmp(&other.grade)
            .then(other.centred.total_cmp(&self.centred))
            .then_with(|| self.card.cmp(&other.card))
            .then_with(|| self.size.cmp(&other.size))
    }
}

/// The door to be judged.
#[derive(Debug, Clone, Copy)]
pub struct Judged<'a> {
    /// The closed door.
    pub door: &'a ClosedDoor,
    /// Its mass.
    pub mass: &'a DoorMass,
    /// What the box offers.
    pub offer: &'a Offer,
    /// Cold and hot, °C, between which a strut must keep the door open and shut.
    pub cold_and_hot: [f64; 2],
}

/// The verdict on one size for one door with `pieces` fittings (1 or 2).
#[must_use]
pub fn verdict(card: &Card, size: &Size, judged: &Judged<'_>, pieces: u8) -> Verdict {
    let mut reasons = Vec::new();
    dimensions(card, size, judged, &mut reasons);
    let weights = Weights::of(judged.door, judged.mass);
    let mut verdict = Verdict {
        card: card.name.clone(),
        size: size.name.clone(),
        pieces,
        grade: Grade::No,
        centred: f64::NEG_INFINITY,
        load: None,
        setting: None,
        reasons: Vec::new(),
    };
    match motion(card, &size.name, judged.door) {
        Ok(motion) => {
            let load = load(card, size, judged, &motion, &weights, pieces);
            match &load {
                Ok(load) => {
                    verdict.centred = load.centred();
                    reasons.extend(load.reason());
                }
                Err(reason) => reasons.push(reason.clone()),
            }
            verdict.load = load.ok();
            verdict.setting = behaviour(
                card,
                size,
                judged,
                (&motion, &weights),
                pieces,
                &mut reasons,
            );
        }
        Err(error) => reasons.push(Reason::NoMotion(error)),
    }
    reasons.sort_by_key(|reason| std::cmp::Reverse(reason.grade()));
    verdict.grade = reasons
        .iter()
        .map(Reason::grade)
        .max()
        .unwrap_or(Grade::Fits);
    verdict.reasons = reasons;
    verdict
}

/// Verdicts on every size of every card of the opening kind, the best first: by grade, then by
/// how centred the load lies, then by name. `pieces` fittings are taken, or as many as each card
/// has sides.
#[must_use]
pub fn verdicts<'a>(
    cards: impl IntoIterator<Item = &'a Card>,
    kind: OpeningKind,
    judged: &Judged<'_>,
    pieces: Option<u8>,
) -> Vec<Verdict> {
    let mut found: Vec<Verdict> = cards
        .into_iter()
        .filter(|card| card.kind == kind)
        .flat_map(|card| {
            let pieces = pieces.unwrap_or_else(|| DriveState::of(card, 0.0).pieces);
            card.sizes
                .iter()
                .map(move |size| verdict(card, size, judged, pieces))
        })
        .collect();
    found.sort_by(Verdict::best_first);
    found
}

/// Door and box against the limits of the size.
fn dimensions(card: &Card, size: &Size, judged: &Judged<'_>, reasons: &mut Vec<Reason>) {
    let offer = judged.offer;
    let leaves = &judged.door.leaves;
    let height = match (leaves.first(), leaves.last()) {
        (Some(first), Some(last)) => first.top - last.bottom,
        _ => 0.0,
    };
    for (what, value, span) in [
        (Word("door-height"), height, size.door_height),
        (Word("door-width"), offer.door_width, size.door_width),
    ] {
        if value < span.min || value > span.max {
            reasons.push(Reason::OutOfSpan {
                what,
                value,
                min: span.min,
                max: span.max,
            });
        }
    }
    let depth = |front| match front {
        BackFrom::SideFront => offer.depth_from_side,
        BackFrom::FrameFront => offer.depth_from_frame,
    };
    let body_depth = card.envelope.back_to.of(&size.name).unwrap_or(0.0);
    let body_down = card.envelope.down_to.of(&size.name).unwrap_or(0.0);
    for (what, value, least) in [
        (
            Word("inner-depth"),
            depth(card.linkage.front),
            size.least_inner_depth,
        ),
        (
            Word("inner-depth-for-body"),
            depth(card.envelope.front),
            body_depth,
        ),
        (
            Word("opening-height"),
            offer.opening_height,
            size.least_inner_height,
        ),
        (Word("clear-height-for-body"), offer.clear_down, body_down),
    ] {
        if value < least {
            reasons.push(Reason::TooLittle { what, value, least });
        }
    }
    let travel = &card.adjustment;
    for ([backward, forward], travel, needed) in [
        (
            [Word("to-the-left"), Word("to-the-right")],
            travel.sideways,
            offer.to_adjust[0],
        ),
        (
            [Word("down"), Word("up")],
            travel.upward,
            offer.to_adjust[1],
        ),
        (
            [Word("out-of-the-box"), Word("into-the-box")],
            travel.depth,
            offer.to_adjust[2],
        ),
    ] {
        if needed.abs() > LEAST_MOVE {
            let what = if needed < 0.0 { backward } else { forward };
            reasons.push(Reason::Adjustment {
                what,
                needed,
                min: travel.min,
                max: travel.max,
            });
        }
    }
    if let [upper, lower] = &judged.mass.leaves[..]
        && let [first, second] = &leaves[..]
    {
        reasons.push(Reason::FoldingLeaves {
            upper: upper.1.mass,
            lower: lower.1.mass,
            ratio: (first.top - first.bottom) / (second.top - second.bottom),
        });
    }
}

/// Whether the door can be balanced, stays open and stays shut.
fn behaviour(
    card: &Card,
    size: &Size,
    judged: &Judged<'_>,
    (motion, weights): (&Motion, &Weights),
    pieces: u8,
    reasons: &mut Vec<Reason>,
) -> Option<Setting> {
    let setting = match balancing_setting(card, size, (motion, weights), pieces) {
        Some(Ok(setting)) => {
            reasons.extend(setting.reason());
            Some(setting)
        }
        Some(Err(error)) => {
            reasons.push(Reason::NoDrive(error));
            return None;
        }
        None => None,
    };
    let grip = Grip::of(judged.door);
    let [cold, hot] = judged.cold_and_hot;
    for (level, celsius, s) in [(Level::High, cold, 1.0), (Level::Low, hot, 0.0)] {
        let share = setting.map_or(0.0, |setting| setting.share_for(level));
        let state = DriveState {
            pieces,
            setting: share,
            celsius,
        };
        let drive = match Drive::new(card, size, judged.door, motion, &state) {
            Ok(drive) => drive,
            Err(error) => {
                reasons.push(Reason::NoDrive(error));
                return setting;
            }
        };
        let setup = Setup {
            motion,
            weights,
            drive: &drive,
            grip,
        };
        let point = CurvePoint::of(&setup, s);
        let (balance, friction) = (point.balance(level), point.push.friction);
        match (level, point.behaviour(level)) {
            (Level::High, Behaviour::Falls) => {
                reasons.push(Reason::FallsFromOpen {
                    balance,
                    friction,
                    celsius,
                });
            }
            (Level::Low, Behaviour::Rises) => {
                reasons.push(Reason::RisesFromClosed {
                    balance,
                    friction,
                    celsius,
                });
            }
            _ => {}
        }
    }
    setting
}
