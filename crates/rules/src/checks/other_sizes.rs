//! The remedies of checks on sizes: other sizes that fit the door.

use flapwright_model::id::DoorId;
use flapwright_motion::load::Load;
use flapwright_motion::reason::Reason;
use flapwright_motion::sizes::{Grade, Verdict};

use super::BoxContext;
use crate::advice::{self, advice};
use crate::finding::{Finding, Remedy};
use crate::mechanics::pick;

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
        let Some(edit) = pick(context.job, door_id, verdict) else {
            continue;
        };
        it.remedies.push(Remedy {
            title: format!("Take {}", advice::name(verdict)),
            effect: effect(context, verdict),
            safe: verdict.card == card,
            edit,
        });
    }
    if it.remedies.is_empty() {
        let said = advice(verdicts, Some((card, &choice.size)), context.job.unit);
        it.details.push(said);
    }
}

fn effect(context: &BoxContext<'_>, verdict: &Verdict) -> String {
    let carries = verdict
        .load
        .map(|load: Load| Reason::Load(load).text(context.job.unit));
    [
        carries,
        advice::turns(verdict),
        Some("the fitting's bores follow that size".to_owned()),
    ]
    .into_iter()
    .flatten()
    .collect::<Vec<_>>()
    .join("; ")
}
