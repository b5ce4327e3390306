//! Whether closed doors of neighbouring boxes meet.

use std::sync::Arc;

use flapwright_model::job::Job;
use flapwright_model::message::Mm;
use flapwright_model::part::Subject;

use super::{Check, Run, finding};
use crate::finding::{Finding, Severity};
use crate::inspection::BoxReport;
use crate::message::DoorsOverlap;

const NAME: &str = "doors-overlap";

pub(super) const CHECK: Check = Check {
    name: NAME,
    page: "\
## What it looks at
Closed doors of different boxes, each box at its place on the wall: whether two of them cover the \
same piece of wall.

## Why it matters
Two doors in one place cannot both close.

## Severity
Stop.

## What can be done
Correct reveals or tweaks, or move one of the boxes along the wall.",
    severities: &[Severity::Stop],
    settings: &[],
    run: Run::Job(look),
};

/// A closed door on the wall.
struct OnWall {
    subject: Subject,
    x: (f64, f64),
    y: (f64, f64),
    z: (f64, f64),
}

fn look(job: &Job, reports: &[Arc<BoxReport>], findings: &mut Vec<Finding>) {
    let mut doors: Vec<OnWall> = Vec::new();
    for (wall_box, report) in job.boxes.iter().zip(reports) {
        let place = wall_box.place;
        // Rear faces hang on one wall; depth counts from there.
        let rear = report.outer[2];
        for door in report.doors() {
            let subject = Subject::Door(report.id, door.id);
            doors.push(OnWall {
                subject,
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
        }
    }
    // Sorted along the wall, so that only doors that can meet are compared.
    // Stable: doors that begin at one place stay in the order of the job.
    doors.sort_by(|a, b| a.x.0.total_cmp(&b.x.0));
    for (i, a) in doors.iter().enumerate() {
        for b in doors[i + 1..].iter().take_while(|b| b.x.0 < a.x.1) {
            let (across, up, deep) = (lap(a.x, b.x), lap(a.y, b.y), lap(a.z, b.z));
            let other_box = a.subject.box_id() != b.subject.box_id();
            if other_box && across > 1e-6 && up > 1e-6 && deep > 1e-6 {
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

fn lap(a: (f64, f64), b: (f64, f64)) -> f64 {
    a.1.min(b.1) - a.0.max(b.0)
}
