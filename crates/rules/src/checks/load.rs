//! What the checks on a door's load have in common.

use flapwright_model::id::DoorId;
use flapwright_model::measure::Measure;
use flapwright_motion::load::{Load, LoadKind};
use flapwright_motion::reason::Reason;

use super::other_sizes::offer;
use super::{BoxContext, finding};
use crate::chosen_work::ChosenWork;
use crate::finding::{Finding, Number, Severity};

/// The doors whose load can be judged, with that load.
pub(super) fn loads<'a>(
    context: &'a BoxContext<'_>,
) -> impl Iterator<Item = (DoorId, &'a ChosenWork, &'a Load)> {
    context.doors().filter_map(|(door_id, _, _)| {
        let work = context.work(door_id)?;
        Some((door_id, work, work.verdict.load.as_ref()?))
    })
}

/// How a load is measured and what it is called.
pub(super) fn words(load: &Load) -> (Measure, &'static str, &'static str, String) {
    match load.kind {
        LoadKind::Mass => (Measure::Mass, "mass", "kg", String::new()),
        LoadKind::Moment { at_degrees } => (
            Measure::Moment,
            "lift moment",
            "N·m",
            format!(" at {at_degrees:.0}°"),
        ),
    }
}

/// Which end of what the size carries a door is beyond.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Beyond {
    /// Above the most.
    Most,
    /// Below the least.
    Least,
}

/// A finding on the load of a door: `end` is what there is, `beyond` which limit it breaks.
pub(super) fn load_finding(
    context: &BoxContext<'_>,
    door_id: DoorId,
    (name, severity): (&'static str, Severity),
    message: String,
    beyond: &[Beyond],
) -> Option<Finding> {
    let verdict = &context.work(door_id)?.verdict;
    let load = verdict.load.as_ref()?;
    let (_, what, unit, _) = words(load);
    let mut it = finding(name, severity, message, vec![context.door_subject(door_id)]);
    for end in beyond {
        it.numbers.extend(match end {
            Beyond::Most => [
                Number::of(format!("greatest {what}"), load.load.high, unit).worse_when_greater(),
                Number::of("most carried", load.max, unit).worse_when_smaller(),
            ],
            Beyond::Least => [
                Number::of(format!("least {what}"), load.load.low, unit).worse_when_smaller(),
                Number::of("least carried", load.min, unit).worse_when_greater(),
            ],
        });
    }
    // What follows from the wrong load is no trouble of its own.
    it.details = verdict
        .reasons
        .iter()
        .filter(|reason| {
            matches!(
                reason,
                Reason::FallsFromOpen { .. } | Reason::RisesFromClosed { .. }
            )
        })
        .map(|reason| reason.text(context.job.unit))
        .collect();
    offer(context, door_id, &mut it);
    Some(it)
}
