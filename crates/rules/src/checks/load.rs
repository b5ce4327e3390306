//! What the checks on a door's load have in common.

use flapwright_model::id::DoorId;
use flapwright_motion::load::Load;
use flapwright_motion::reason::Reason;
use flapwright_motion::reason_message::{LoadName, LoadValue};

use super::other_sizes::offer;
use super::{BoxContext, finding};
use crate::chosen_work::ChosenWork;
use crate::finding::{Finding, Severity};
use crate::message::{DoorTooHeavy, Message};

/// The doors whose load can be judged, with that load.
pub(super) fn loads<'a>(
    context: &'a BoxContext<'_>,
) -> impl Iterator<Item = (DoorId, &'a ChosenWork, &'a Load)> {
    context.doors().filter_map(|(door_id, _, _)| {
        let work = context.work(door_id)?;
        Some((door_id, work, work.verdict.load.as_ref()?))
    })
}

/// A finding on the load of a door, with its range and with what follows from it.
pub(super) fn load_finding(
    context: &BoxContext<'_>,
    door_id: DoorId,
    (name, severity): (&'static str, Severity),
    message: impl Into<Message>,
) -> Option<Finding> {
    let verdict = &context.work(door_id)?.verdict;
    let load = verdict.load.as_ref()?;

    let mut it = finding(name, severity, message, vec![context.door_subject(door_id)]);
    let (what, measure) = LoadName::of(load.kind);
    let value = |it| LoadValue(measure, it);
    it.because(DoorTooHeavy::Range {
        what,
        low: value(load.load.low),
        likely: value(load.load.likely),
        high: value(load.load.high),
    });
    // What follows from the wrong load is no trouble of its own.
    let follows = verdict.reasons.iter().filter(|reason| {
        matches!(
            reason,
            Reason::FallsFromOpen { .. } | Reason::RisesFromClosed { .. }
        )
    });
    for reason in follows {
        it.because(reason.message());
    }
    offer(context, door_id, &mut it);
    Some(it)
}
