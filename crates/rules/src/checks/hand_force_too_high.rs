//! Whether the hand must push or pull harder than the limit of the job.

use flapwright_model::message::{Degrees, Newton};
use flapwright_motion::gravity::Level;
use flapwright_motion::sizes::Grade;
use flapwright_motion::statics::Direction;

use super::{BoxContext, Check, Run, finding};
use crate::finding::{Finding, Severity};
use crate::message::HandForceTooHigh;

const NAME: &str = "hand-force-too-high";

pub(super) const CHECK: Check = Check {
    name: NAME,
    page: "\
## What it looks at
The force at the handle over the whole travel, opening and closing, for the lightest, the likely \
and the heaviest door, at the setting that balances the likely one.

## Why it matters
A door that takes more force than a hand has is left open, or slammed. The setting “hand force” \
is 5 lbf (22.2 N) by default, the published figure for operable parts (2010 ADA Standards, \
309.4).

## Severity
Caution.

## What can be done
Another size, a lighter door, a handle further from the axis; or another limit where only strong \
hands will use it. Where the handle has no leverage no force is given and none is judged; nor is \
one for a door that is too heavy or too light for its size, which other checks tell.",
    severities: &[Severity::Caution],
    settings: &["most_hand_force"],
    run: Run::Box(look),
};

fn look(context: &BoxContext<'_>, findings: &mut Vec<Finding>) {
    let limit = context.job.settings.most_hand_force;
    for (door_id, _, _) in context.doors() {
        let Some(work) = context.work(door_id) else {
            continue;
        };
        // A size that is wrong for the door's mass is one trouble; the force follows from it.
        if work.verdict.load.is_some_and(|it| it.grade() == Grade::No) {
            continue;
        }
        let Some(curves) = work.curves.as_ref() else {
            continue;
        };
        let worst = [Direction::Opening, Direction::Closing]
            .into_iter()
            .flat_map(|way| Level::ALL.map(|level| (curves.hand(way, level), way)))
            .filter_map(|(hand, way)| hand.largest.map(|(force, s)| (force.abs(), s, way)))
            .max_by(|a, b| a.0.total_cmp(&b.0));
        let Some((force, s, way)) = worst.filter(|worst| worst.0 > limit) else {
            continue;
        };
        let degrees = curves
            .nearest(s)
            .map_or(0.0, |point| point.input.to_degrees());
        let (at, largest_hand_force, limit) = (Degrees(degrees), Newton(force), Newton(limit));
        let message = match way {
            Direction::Opening => HandForceTooHigh::Open {
                at,
                largest_hand_force,
                limit,
            },
            Direction::Closing => HandForceTooHigh::Close {
                at,
                largest_hand_force,
                limit,
            },
        };
        findings.push(finding(
            NAME,
            Severity::Caution,
            message,
            vec![context.door_subject(door_id)],
        ));
    }
}
