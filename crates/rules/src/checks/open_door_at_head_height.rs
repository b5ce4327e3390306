//! Whether an open door is one to knock the head on.

use flapwright_model::message::Mm;
use flapwright_model::space::SectionPoint;
use flapwright_motion::outline::outline_at;

use super::clear_way::{NOISE, moving};
use super::{BoxContext, Check, Run, finding};
use crate::finding::{Finding, Severity};
use crate::message::OpenDoorAtHeadHeight;

const NAME: &str = "open-door-at-head-height";

pub(super) const CHECK: Check = Check {
    name: NAME,
    page: "\
## What it looks at
The fully open door and its handle: the lowest place of what stands out past the closed front by \
more than the setting “stands out by”, against the setting “head height”.

## Why it matters
Anyone who stands up below an open door hits their head on its edge. The limits are assumed; \
people who work there may be taller.

## Severity
Caution.

## What can be done
Hang the box higher, choose an opening kind that takes the door further up, or shut the door \
before bending down; accept it with a reason where nobody stands.",
    severities: &[Severity::Caution],
    settings: &["head_height", "head_allowance"],
    run: Run::Box(look),
};

fn look(context: &BoxContext<'_>, findings: &mut Vec<Finding>) {
    let settings = &context.job.settings;
    let above_floor = context.wall_box.place.above_floor;
    for (door_id, door, _) in moving(context) {
        let Some(motion) = door.working_motion() else {
            continue;
        };
        let limit = -door.front + settings.head_allowance;
        let open = outline_at(motion, &door.closed, 1.0);
        let lowest = open
            .iter()
            .filter_map(|(_, corners)| lowest_beyond(corners, limit))
            .min_by(f64::total_cmp);
        let Some(lowest) = lowest.map(|y| y + above_floor) else {
            continue;
        };
        if lowest >= settings.head_height - NOISE {
            continue;
        }
        let out = open
            .iter()
            .flat_map(|(_, corners)| corners)
            .map(|corner| corner.x + door.front)
            .fold(0.0, f64::max);
        let mut it = finding(
            NAME,
            Severity::Caution,
            OpenDoorAtHeadHeight::InTheWay {
                lowest_place: Mm(lowest),
                stands_out: Mm(out),
            },
            vec![context.door_subject(door_id)],
        );
        it.because(OpenDoorAtHeadHeight::Limit {
            limit: Mm(settings.head_height),
        });
        findings.push(it);
    }
}

/// The lowest y of the part of an outline that lies further out than a limit, mm.
fn lowest_beyond(corners: &[SectionPoint], limit: f64) -> Option<f64> {
    let next = corners.iter().cycle().skip(1);
    corners
        .iter()
        .zip(next)
        .filter_map(|(a, b)| {
            let (far, near) = if a.x > b.x { (a, b) } else { (b, a) };
            if far.x <= limit {
                return None;
            }
            let cut = if near.x >= limit {
                near.y
            } else {
                near.y + (far.y - near.y) * (limit - near.x) / (far.x - near.x)
            };
            Some(cut.min(far.y))
        })
        .min_by(f64::total_cmp)
}
