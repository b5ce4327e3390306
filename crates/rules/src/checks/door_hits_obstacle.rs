//! Whether a door meets what the user placed in the room.

use flapwright_model::message::{Degrees, Mm};
use flapwright_model::part::Subject;

use super::clear_way::{NOISE, block, degrees, lap, moving};
use super::{BoxContext, Check, Run, finding};
use crate::finding::{Finding, Severity};
use crate::message::{DoorHitsObstacle, word};

const NAME: &str = "door-hits-obstacle";

pub(super) const CHECK: Check = Check {
    name: NAME,
    page: "\
## What it looks at
The blocks of the room (lamp, pipe, cornice, beam, wall) against all that leaves, handle and arms \
sweep over, path tolerance added; only blocks that the door passes across are looked at. The \
backs of boxes are taken to be on the wall.

## Why it matters
A lamp or a pipe in the way is noticed only when the door is first opened.

## Severity
Stop where they meet; caution where less is left than the setting “clearance”.

## What can be done
Move the box or the obstacle, or choose another opening kind.",
    severities: &[Severity::Caution, Severity::Stop],
    settings: &["least_clearance"],
    run: Run::Box(look),
};

fn look(context: &BoxContext<'_>, findings: &mut Vec<Finding>) {
    let place = context.wall_box.place;
    let wanted = context.job.settings.least_clearance;
    let rear = context.report.outer[2];
    for (door_id, door, sweep) in moving(context) {
        let across = (
            place.along_wall + door.edges.left,
            place.along_wall + door.edges.right,
        );
        for obstacle in &context.job.room.obstacles {
            let along = (obstacle.along_wall.from, obstacle.along_wall.to);
            if lap(across, along) <= NOISE {
                continue;
            }
            let solid = block(
                (obstacle.from_wall.from - rear, obstacle.from_wall.to - rear),
                (
                    obstacle.above_floor.from - place.above_floor,
                    obstacle.above_floor.to - place.above_floor,
                ),
            );
            let Some(near) = sweep.approach(&solid, wanted, |_| true) else {
                continue;
            };
            let (at, gap) = (Degrees(degrees(door, near.s)), Mm(near.gap));
            let name = obstacle.name.clone();
            let (severity, message) = if near.gap <= NOISE {
                let message = DoorHitsObstacle::Hits {
                    hits: word::hits(near.body),
                    obstacle: name,
                    at,
                    gap,
                };
                (Severity::Stop, message)
            } else {
                let message = DoorHitsObstacle::Near {
                    comes: word::comes(near.body),
                    obstacle: name,
                    at,
                    gap,
                };
                (Severity::Caution, message)
            };
            let subjects = vec![
                context.door_subject(door_id),
                Subject::Obstacle(obstacle.id),
            ];
            let mut it = finding(NAME, severity, message, subjects);
            if severity == Severity::Caution {
                it.because(DoorHitsObstacle::Wanted { wanted: Mm(wanted) });
            }
            findings.push(it);
        }
    }
}
