//! Whether a door meets the ceiling on its way.

use flapwright_model::cabinet::{Place, WallBox};
use flapwright_model::edit::Edit;

use super::clear_way::{NOISE, degrees, moving};
use super::{BoxContext, Check, Run, finding};
use crate::finding::{Finding, Number, Remedy, Severity};

const NAME: &str = "door-hits-ceiling";

pub(super) const CHECK: Check = Check {
    name: NAME,
    page: "\
## What it looks at
The highest place of leaves, handle and arms over the whole way, path tolerance added, against \
the ceiling of the room.

## Why it matters
A door that touches the ceiling cannot be opened fully, and it marks both. Lamps and cornices \
are obstacles with a check of their own.

## Severity
Stop where they meet; caution where less than the least clearance is left.

## What can be done
Hang the box lower, or choose another opening kind; which of them is for a person to say, so \
that no remedy is applied unseen.",
    severities: &[Severity::Caution, Severity::Stop],
    settings: &["least_clearance"],
    run: Run::Box(look),
};

fn look(context: &BoxContext<'_>, findings: &mut Vec<Finding>) {
    let ceiling = context.job.room.ceiling;
    let place = context.wall_box.place;
    let wanted = context.job.settings.least_clearance;
    for (door_id, door, sweep) in moving(context) {
        let highest = place.above_floor + sweep.reach.highest.value + sweep.tolerance;
        let left = ceiling - highest;
        if left >= wanted - NOISE {
            continue;
        }
        let meets = left < -NOISE;
        let words = context.door_words(door_id);
        let (severity, message) = if meets {
            let s = sweep
                .first_above(ceiling - place.above_floor)
                .map_or(sweep.reach.highest.s, |first| first.s);
            let text = format!(
                "{words}: it meets the ceiling from {:.0}° of the way on; it needs {} above the \
                 floor and the ceiling is at {}",
                degrees(door, s),
                context.length(highest),
                context.length(ceiling)
            );
            (Severity::Stop, text)
        } else {
            let text = format!(
                "{words}: only {} is left below the ceiling; {} is wanted",
                context.length(left.max(0.0)),
                context.length(wanted)
            );
            (Severity::Caution, text)
        };
        let subject = context.door_subject(door_id);
        let mut it = finding(NAME, severity, message, vec![subject]);
        it.numbers = vec![Number::mm("left below the ceiling", left).worse_when_smaller()];
        it.remedies.extend(lower(context, wanted - left));
        findings.push(it);
    }
}

/// Hanging the box lower, by whole millimetres, where the floor lets it.
fn lower(context: &BoxContext<'_>, by: f64) -> Option<Remedy> {
    let by = (by - NOISE).ceil();
    let place = context.wall_box.place;
    let above_floor = place.above_floor - by;
    (above_floor >= 0.0).then(|| Remedy {
        title: format!("Hang the box {} lower", context.length(by)),
        effect: format!(
            "its underside goes from {} to {} above the floor; bores stay",
            context.length(place.above_floor),
            context.length(above_floor)
        ),
        safe: false,
        edit: Edit::replace_box(WallBox {
            place: Place {
                above_floor,
                ..place
            },
            ..context.wall_box.clone()
        }),
    })
}
