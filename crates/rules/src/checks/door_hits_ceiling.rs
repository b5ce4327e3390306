//! Whether a door meets the ceiling on its way.

use flapwright_model::cabinet::{Place, WallBox};
use flapwright_model::edit::Edit;
use flapwright_model::message::{Degrees, Mm};

use super::clear_way::{NOISE, degrees, moving};
use super::{BoxContext, Check, Run, finding};
use crate::finding::{Finding, Remedy, Safety, Severity};
use crate::message::{DoorHitsCeiling, Effect, RemedyKind};

const NAME: &str = "door-hits-ceiling";

pub(super) const CHECK: Check = Check {
    name: NAME,
    page: "\
## What it looks at
The highest place of leaves, handle and arms over the whole travel, path tolerance added, against \
the ceiling of the room.

## Why it matters
A door that touches the ceiling cannot be opened fully, and it marks both. Lamps and cornices are \
obstacles with a check of their own.

## Severity
Stop where they meet; caution where less is left than the setting “clearance”.

## What can be done
Hang the box lower, or choose another opening kind. A person decides which: no remedy is applied \
unseen.",
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
        let left_below_the_ceiling = Mm(left);
        let (severity, message) = if meets {
            let s = sweep
                .first_above(ceiling - place.above_floor)
                .map_or(sweep.reach.highest.s, |first| first.s);
            let message = DoorHitsCeiling::Hits {
                from: Degrees(degrees(door, s)),
                over: Mm(-left),
                left_below_the_ceiling,
            };
            (Severity::Stop, message)
        } else {
            let message = DoorHitsCeiling::Near {
                left_below_the_ceiling,
                wanted: Mm(wanted),
            };
            (Severity::Caution, message)
        };
        let subject = context.door_subject(door_id);
        let mut it = finding(NAME, severity, message, vec![subject]);
        it.because(DoorHitsCeiling::Heights {
            needs: Mm(highest),
            ceiling: Mm(ceiling),
        });
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
        kind: RemedyKind::LowerBox { by: Mm(by) },
        effects: vec![
            Effect::Underside {
                was: Mm(place.above_floor),
                is: Mm(above_floor),
            },
            Effect::BoresStay,
        ],
        safety: Safety::NeedsALook,
        edit: Edit::replace_box(WallBox {
            place: Place {
                above_floor,
                ..place
            },
            ..context.wall_box.clone()
        }),
    })
}
