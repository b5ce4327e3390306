//! The question where the anchors of a gas strut may go, put for a door.

use flapwright_model::cabinet::WallBox;
use flapwright_model::card::{OpeningKind, Span};
use flapwright_model::edit::Edit;
use flapwright_model::id::{CardId, DoorId};
use flapwright_model::job::{Job, UsedCard};
use flapwright_model::lift::Lift;
use flapwright_motion::closed::ClosedDoor;
use flapwright_motion::drive::DriveState;
use flapwright_motion::gravity::Weights;
use flapwright_motion::motion::Motion;
use flapwright_motion::strut_mounts::{
    MountAnswer, MountError, MountLimits, MountQuestion, StrutOnHand, in_tenths, place_strut,
};

use crate::inspection::{BoxReport, DoorReport};
use crate::mechanics::{offer, pick_size};

/// Kept clear of edges, shelf and the panel above, mm. Common practice, no source: half a strut's
/// body and a little.
const CLEAR: f64 = 20.0;
/// How far an anchor stands behind the door's back, mm: flat to tall brackets as they are sold.
const BRACKET: Span = Span {
    min: 5.0,
    max: 30.0,
};

/// Everything that the search for anchors needs to know of one door; owns it, so that it can go
/// to another thread.
#[derive(Debug, Clone)]
pub struct StrutPlaces {
    /// The card.
    pub card: CardId,
    /// Its sizes with a strut; a strut is named after its size.
    pub struts: Vec<StrutOnHand>,
    /// Limits that keep the anchors inside the clear box and on the door's back.
    pub limits: MountLimits,
    motion: Motion,
    weights: Weights,
    door: ClosedDoor,
    front_o: f64,
    pieces: u8,
    /// Cold and hot, °C, between which the strut must keep the door open and shut.
    pub cold_and_hot: [f64; 2],
}

/// A door whose struts can be placed: its card, its report and how it moves.
fn strut_door<'a>(
    job: &'a Job,
    wall_box: &WallBox,
    report: &'a BoxReport,
    door: DoorId,
) -> Option<(&'a UsedCard, &'a DoorReport, &'a Motion)> {
    let choice = wall_box.door(door)?.fitting.as_ref()?;
    let used = job.cards.iter().find(|it| it.id == choice.card)?;
    let card = &used.card;
    let door = report.door(door)?;
    let motion = door.working_motion()?;
    let strut = matches!(card.size(&choice.size)?.lift, Lift::Strut(_));
    (card.kind == OpeningKind::TopHingedFlap && strut && door.weighed.is_some())
        .then_some((used, door, motion))
}

/// Whether there is a question to put for a door, see [`strut_places`].
#[must_use]
pub fn has_strut(job: &Job, wall_box: &WallBox, report: &BoxReport, door: DoorId) -> bool {
    strut_door(job, wall_box, report, door).is_some()
}

/// The question for a door; `None` unless it is a top-hinged flap on a card whose
/// chosen size has a strut.
#[must_use]
pub fn strut_places(
    job: &Job,
    wall_box: &WallBox,
    report: &BoxReport,
    door: DoorId,
) -> Option<StrutPlaces> {
    let place = report.opening_of(door)?;
    let (used, door, motion) = strut_door(job, wall_box, report, door)?;
    let card = &used.card;
    let mass = door.weighed.as_ref()?;
    let struts = card
        .sizes
        .iter()
        .filter_map(|size| match &size.lift {
            Lift::Strut(strut) => Some(StrutOnHand {
                name: size.name.clone(),
                strut: *strut,
            }),
            Lift::Spring { .. } => None,
        })
        .collect();
    let room = offer(wall_box, report, place, door);
    let front_o = door.closed.front_o(card.linkage.front);
    // o is out, z is back.
    let depth = place.clear.max.z + front_o;
    let leaf = door.closed.leaves.first()?;
    let underside = door.closed.underside_y;
    Some(StrutPlaces {
        card: used.id,
        struts,
        limits: MountLimits {
            box_down: within(0.0, room.clear_down),
            box_back: within(0.0, depth),
            door_down: within((underside - leaf.top).max(0.0), underside - leaf.bottom),
            door_back: BRACKET,
        },
        motion: motion.clone(),
        weights: Weights::of(&door.closed, mass),
        door: door.closed.clone(),
        front_o,
        pieces: DriveState::of(card, 0.0).pieces,
        cold_and_hot: job.settings.cold_and_hot(),
    })
}

fn within(from: f64, to: f64) -> Span {
    Span {
        min: (from + CLEAR).round(),
        max: (to - CLEAR).round(),
    }
}

impl StrutPlaces {
    /// The best anchors for each strut within `limits`, see [`place_strut`], on whole tenths of a
    /// millimetre where that still satisfies.
    ///
    /// # Errors
    /// As [`place_strut`].
    pub fn search(
        &self,
        limits: &MountLimits,
        go_on: &mut dyn FnMut(f64) -> bool,
    ) -> Result<Vec<MountAnswer>, MountError> {
        let question = MountQuestion {
            motion: &self.motion,
            weights: &self.weights,
            door: &self.door,
            front_o: self.front_o,
            pieces: self.pieces,
            cold_and_hot: self.cold_and_hot,
            limits,
            struts: &self.struts,
        };
        let mut answers = place_strut(&question, go_on)?;
        for answer in &mut answers {
            if let Some(tidy) = in_tenths(&question, answer) {
                *answer = tidy;
            }
        }
        answers.sort_by(|a, b| a.largest_force.total_cmp(&b.largest_force));
        Ok(answers)
    }
}

/// The change that puts the anchors of an answer into their size of the card, and gives the door
/// that size. The bores of the card stay as they are: no card says which of them
/// carry an anchor.
#[must_use]
pub fn use_anchors(job: &Job, door: DoorId, card: CardId, answer: &MountAnswer) -> Option<Edit> {
    let mut cards = job.cards.clone();
    let used = cards.iter_mut().find(|it| it.id == card)?;
    let size = used
        .card
        .sizes
        .iter_mut()
        .find(|it| it.name == answer.name)?;
    let Lift::Strut(strut) = &mut size.lift else {
        return None;
    };
    *strut = answer.strut;
    let picked = pick_size(job, door, card, &answer.name)?;
    Some(Edit::Together(vec![Edit::ReplaceCards(cards), picked]))
}
