//! Whether the box is deep enough for the fitting.

use flapwright_model::card::BackFrom;
use flapwright_model::message::Mm;

use super::other_sizes::offer;
use super::{BoxContext, Check, Run, finding};
use crate::finding::{Finding, Severity};
use crate::mechanics;
use crate::message::{BoxTooShallow, FittingName};

const NAME: &str = "box-too-shallow";

pub(super) const CHECK: Check = Check {
    name: NAME,
    page: "\
## What it looks at
The clear depth of the box, from the card's front datum to the back panel, against what the chosen \
size needs and against the depth of the fitting's body.

## Why it matters
A body that meets the back cannot be screwed on; arms that fold back into the box meet it first when \
the door closes.

## Severity
Stop.

## What can be done
A shorter size, a deeper box, or a back that sits further back.",
    severities: &[Severity::Stop],
    settings: &[],
    run: Run::Box(look),
};

fn look(context: &BoxContext<'_>, findings: &mut Vec<Finding>) {
    for (door_id, door, report) in context.doors() {
        let Some(choice) = &door.fitting else {
            continue;
        };
        let Some(card) = context.card(choice) else {
            continue;
        };
        let Some(size) = card.size(&choice.size) else {
            continue;
        };
        let Some(place) = context.opening_of(door_id) else {
            continue;
        };
        let room = mechanics::offer(context.wall_box, context.report, place, report);
        let depth = |front| match front {
            BackFrom::SideFront => room.depth_from_side,
            BackFrom::FrameFront => room.depth_from_frame,
        };
        let body = card.envelope.back_to.of(&choice.size).unwrap_or(0.0);
        let needs = [
            (card.linkage.front, size.least_inner_depth),
            (card.envelope.front, body),
        ];
        let worst = needs
            .map(|(front, least)| (depth(front), least))
            .into_iter()
            .max_by(|a, b| (a.1 - a.0).total_cmp(&(b.1 - b.0)));
        let Some((there, least)) = worst.filter(|(there, least)| there < least) else {
            continue;
        };
        let mut it = finding(
            NAME,
            Severity::Stop,
            BoxTooShallow::Less {
                fitting: FittingName::new(&card.name, &choice.size),
                under: Mm(least - there),
                clear_depth: Mm(there),
                least_clear_depth: Mm(least),
            },
            vec![context.door_subject(door_id)],
        );

        offer(context, door_id, &mut it);
        findings.push(it);
    }
}
