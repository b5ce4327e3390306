//! Whether a door meets what the user placed in the room.

use flapwright_model::part::Subject;

use super::clear_way::{NOISE, block, body_word, degrees, lap, moving};
use super::{BoxContext, Check, Run, finding};
use crate::finding::{Finding, Number, Severity};

const NAME: &str = "door-hits-obstacle";

pub(super) const CHECK: Check = Check {
    name: NAME,
    page: "\
## What it looks at
The blocks of the room (lamp, pipe, cornice, beam, wall) against all that leaves, handle and \
arms sweep over, path tolerance added; only blocks that the door passes across are looked at. \
Rear faces of boxes hang on the wall.

## Why it matters
A lamp or a pipe in the way is found out when the door is first opened.

## Severity
Stop where they meet; caution where less than the least clearance is left.

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
            let (severity, what) = if near.gap <= NOISE {
                (Severity::Stop, "meets".to_owned())
            } else {
                let text = format!("comes within {} of", context.length(near.gap));
                (Severity::Caution, text)
            };
            let message = format!(
                "{}: {} {what} \"{}\" at {:.0}° of the way",
                context.door_words(door_id),
                body_word(near.body),
                obstacle.name,
                degrees(door, near.s)
            );
            let subjects = vec![
                context.door_subject(door_id),
                Subject::Obstacle(obstacle.id),
            ];
            let mut it = finding(NAME, severity, message, subjects);
            it.numbers = vec![Number::mm("gap", near.gap).worse_when_smaller()];
            findings.push(it);
        }
    }
}
