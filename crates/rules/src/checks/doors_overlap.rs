//! Whether closed doors of neighbouring boxes meet.

use flapwright_model::id::BoxId;
use flapwright_model::job::Settings;
use flapwright_model::message::{Count, Mm};
use flapwright_model::part::Subject;

use super::{Check, Run, Seen, finding};
use crate::finding::{Finding, Severity};
use crate::message::DoorsOverlap;

const NAME: &str = "doors-overlap";

pub(crate) const CHECK: Check = Check {
    name: NAME,
    page: "\
## What it looks at
Closed doors of different boxes, each box at its place on the wall: whether two of them cover the \
same piece of wall. Of many boxes in one place each is compared with a few of the others, and it says \
how many are left.

## Why it matters
Two doors in one place cannot both close.

## Severity
Stop.

## What can be done
Correct reveals or tweaks, or move one of the boxes along the wall.",
    severities: &[Severity::Stop],
    settings: &[],
    run: Run::Pair(look),
};

/// A closed door on the wall.
struct OnWall {
    subject: Subject,
    x: (f64, f64),
    y: (f64, f64),
    z: (f64, f64),
}

fn look(_: &Settings, [first, second]: [Seen<'_>; 2], findings: &mut Vec<Finding>) {
    if first.report.id == second.report.id {
        return;
    }
    let others = on_wall(second);
    for a in on_wall(first) {
        for b in &others {
            // The one that begins further left is told first.
            let (a, b) = if b.x.0 < a.x.0 { (b, &a) } else { (&a, b) };
            let (across, up, deep) = (lap(a.x, b.x), lap(a.y, b.y), lap(a.z, b.z));
            if across > 1e-6 && up > 1e-6 && deep > 1e-6 {
                findings.push(finding(
                    NAME,
                    Severity::Stop,
                    DoorsOverlap::Overlap {
                        other: b.subject,
                        across: Mm(across),
                        up: Mm(up),
                    },
                    vec![a.subject, b.subject],
                ));
            }
        }
    }
}

/// The closed doors of a box.
fn on_wall(Seen { wall_box, report }: Seen<'_>) -> Vec<OnWall> {
    let place = wall_box.place;
    // Rear faces hang on one wall; depth counts from there.
    let rear = report.outer[2];
    let doors = report.doors().map(|door| OnWall {
        subject: Subject::Door(report.id, door.id),
        x: (
            place.along_wall + door.edges.left,
            place.along_wall + door.edges.right,
        ),
        y: (
            place.above_floor + door.edges.bottom,
            place.above_floor + door.edges.top,
        ),
        z: (rear - door.back, rear - door.front),
    });
    doors.collect()
}

/// That a box hangs among more boxes than it was compared with.
pub(crate) fn crowd(box_id: BoxId, boxes: usize) -> Finding {
    let message = DoorsOverlap::Crowd {
        boxes: Count(boxes),
    };
    finding(NAME, Severity::Stop, message, vec![Subject::Box(box_id)])
}

fn lap(a: (f64, f64), b: (f64, f64)) -> f64 {
    a.1.min(b.1) - a.0.max(b.0)
}
