//! Whether a door meets a neighbouring box or a closed door on its way.

use std::sync::Arc;

use flapwright_model::job::Job;
use flapwright_model::part::Subject;
use flapwright_motion::outline::{handle_outline, leaf_outline};
use flapwright_motion::sweep::{SectionBlock, corners, meet};

use super::clear_way::{NOISE, block, body_word, degrees, is_arm, lap};
use super::{Check, Run, finding};
use crate::finding::{Finding, Number, Severity};
use crate::inspection::BoxReport;

const NAME: &str = "door-meets-neighbour";

pub(super) const CHECK: Check = Check {
    name: NAME,
    page: "\
## What it looks at
All that a moving door sweeps over, path tolerance added, against the bodies of the other boxes, \
their closed doors and handles, and the other closed doors of its own box. The other door is \
taken as closed; two doors open at once are not looked at.

## Why it matters
A door that swings its edge into the door above it chips both.

## Severity
Stop.

## What can be done
A larger gap or reveal between the two, another fitting, or a larger distance between the boxes.",
    severities: &[Severity::Stop],
    settings: &[],
    run: Run::Job(look),
};

/// Something that stands still on the wall: o counts from the wall, y from the floor, mm.
struct Still {
    words: String,
    subject: Subject,
    across: (f64, f64),
    block: SectionBlock,
}

fn look(job: &Job, reports: &[Arc<BoxReport>], findings: &mut Vec<Finding>) {
    let mut still = still_things(job, reports);
    still.sort_by(|a, b| {
        let start = a.across.0.total_cmp(&b.across.0);
        start.then(a.subject.cmp(&b.subject))
    });
    for (wall_box, report) in job.boxes.iter().zip(reports) {
        let place = wall_box.place;
        for (opening, it) in report.openings.iter().enumerate() {
            let Some(door) = &it.door else { continue };
            let across = (
                place.along_wall + door.edges.left,
                place.along_wall + door.edges.right,
            );
            let own = Subject::Opening {
                box_index: report.box_index,
                opening,
            };
            let passed = still
                .iter()
                .take_while(|it| it.across.0 < across.1)
                .filter(|it| lap(across, it.across) > NOISE)
                .filter(|it| it.subject != own && it.subject != Subject::Box(report.box_index));
            for other in passed {
                let Some(sweep) = door.sweep() else { break };
                let here = other
                    .block
                    .translate(euclid::vec2(-report.outer[2], -place.above_floor));
                // Doors that lie over each other closed are another check's.
                let lie_over = door
                    .closed
                    .leaves
                    .iter()
                    .any(|leaf| meet(&leaf_outline(leaf), &corners(&here)));
                if lie_over {
                    continue;
                }
                let Some(near) = sweep.approach(&here, NOISE, |body| !is_arm(body)) else {
                    continue;
                };
                let message = format!(
                    "\"{}\", door {} from the top: {} meets {} at {:.0}° of the way",
                    report.name,
                    opening + 1,
                    body_word(near.body),
                    other.words,
                    degrees(door, near.s)
                );
                let mut it = finding(NAME, Severity::Stop, message, vec![own, other.subject]);
                it.numbers = vec![
                    Number::of("met at", degrees(door, near.s), "degrees").worse_when_smaller(),
                ];
                findings.push(it);
            }
        }
    }
}

/// Bodies of boxes, closed leaves and closed handles.
fn still_things(job: &Job, reports: &[Arc<BoxReport>]) -> Vec<Still> {
    let mut still = Vec::new();
    for (wall_box, report) in job.boxes.iter().zip(reports) {
        let place = wall_box.place;
        let [width, height, rear] = report.outer;
        let start = place.along_wall;
        still.push(Still {
            words: format!("the box \"{}\"", report.name),
            subject: Subject::Box(report.box_index),
            across: (start, start + width),
            block: block((0.0, rear), (place.above_floor, place.above_floor + height)),
        });
        for (opening, (it, described)) in report.openings.iter().zip(&wall_box.openings).enumerate()
        {
            let Some(door) = &it.door else { continue };
            let subject = Subject::Opening {
                box_index: report.box_index,
                opening,
            };
            let to_wall = euclid::vec2(rear, place.above_floor);
            let mut add = |what: &str, across: (f64, f64), outline: [_; 4]| {
                still.push(Still {
                    words: format!(
                        "the closed {what} {} from the top of \"{}\"",
                        opening + 1,
                        report.name
                    ),
                    subject,
                    across: (start + across.0, start + across.1),
                    block: SectionBlock::from_points(outline).translate(to_wall),
                });
            };
            let edges = door.edges;
            for leaf in &door.closed.leaves {
                add("door", (edges.left, edges.right), leaf_outline(leaf));
            }
            let handle = described.door.as_ref().and_then(|it| it.handle.as_ref());
            if let (Some(handle), Some(closed), Some(leaf)) =
                (handle, &door.closed.handle, door.closed.leaves.last())
            {
                let middle = f64::midpoint(edges.left, edges.right) + handle.right_of_middle;
                let half = handle.length / 2.0;
                let across = (middle - half, middle + half);
                add("handle of door", across, handle_outline(closed, leaf));
            }
        }
    }
    still
}
