//! The remedies of checks on sizes: other sizes that fit the door.

use flapwright_model::id::DoorId;
use flapwright_motion::load::Load;
use flapwright_motion::reason::Reason;
use flapwright_motion::sizes::{Grade, Verdict};

use super::BoxContext;
use crate::advice::{self, advice};
use crate::finding::{Finding, Remedy, Safety};
use crate::mechanics::pick_size_in;
use crate::message::{Effect, FittingName, RemedyKind};

/// So many sizes are offered at most: who wants more looks at the whole list.
const OFFERED: usize = 3;

/// Offers the sizes that fit fully, the best first; says so where there is none.
pub(super) fn offer(context: &BoxContext<'_>, door_id: DoorId, it: &mut Finding) {
    offer_of(context, door_id, it, |_| true);
}

/// The same of some cards only, by their names.
///
/// Another size of the same card may be safe; a fitting of another card has to be bought, which a
/// person decides.
pub(super) fn offer_of(
    context: &BoxContext<'_>,
    door_id: DoorId,
    it: &mut Finding,
    wanted: impl Fn(&str) -> bool,
) {
    let door = context.wall_box.door(door_id);
    let Some(choice) = door.and_then(|door| door.fitting.as_ref()) else {
        return;
    };
    let card = context.card(choice).map_or("", |card| card.name.as_str());
    let verdicts = context.verdicts(door_id);
    let fitting = verdicts.iter().filter(|verdict| {
        let chosen = verdict.card == card && verdict.size == choice.size;
        !chosen && verdict.grade == Grade::Fits && wanted(&verdict.card)
    });
    for verdict in fitting.take(OFFERED) {
        let used = context.job.card_named(&verdict.card);
        let edit =
            used.and_then(|used| pick_size_in(context.wall_box, door_id, used.id, &verdict.size));
        let Some(edit) = edit else {
            continue;
        };
        it.remedies.push(Remedy {
            kind: RemedyKind::TakeSize {
                fitting: FittingName::new(&verdict.card, &verdict.size),
            },
            effects: effects(verdict),
            safety: if verdict.card == card {
                Safety::Safe
            } else {
                Safety::ChangesWhatIsBought
            },
            edit,
        });
    }
    if it.remedies.is_empty() {
        for said in advice(verdicts, Some((card, &choice.size))) {
            it.because(said);
        }
    }
}

fn effects(verdict: &Verdict) -> Vec<Effect> {
    let load = verdict.load.map(|load: Load| Effect::Load {
        load: Reason::Load(load),
    });
    let turns = advice::turns(verdict).map(|(turns, of)| Effect::Turns { turns, of });
    [load, turns, Some(Effect::BoresFollowSize)]
        .into_iter()
        .flatten()
        .collect()
}
