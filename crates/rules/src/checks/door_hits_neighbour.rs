//! Whether a door meets a neighbouring box or a closed door on its way.

use std::sync::Arc;

use flapwright_model::acceptance::Topic;
use flapwright_model::job::Job;
use flapwright_model::message::Degrees;
use flapwright_model::part::Subject;

use super::clear_way::degrees;
use super::on_the_wall::{AlongWall, Hung, bodies, hung_doors};
use super::{Check, Run, finding};
use crate::finding::{Finding, Severity};
use crate::inspection::BoxReport;
use crate::message::word;

const NAME: &str = "door-hits-neighbour";

pub(super) const CHECK: Check = Check {
    name: NAME,
    page: "\
## What it looks at
All that a moving door and its handle sweep over, path tolerance added, against the bodies of the \
other boxes, their closed doors and handles, and the other closed doors of its own box. Two doors \
open at once are looked at by open-doors-meet; doors that lie over each other when closed by \
doors-overlap. Face frames of other boxes are not looked at.

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

fn look(job: &Job, reports: &[Arc<BoxReport>], findings: &mut Vec<Finding>) {
    let doors = hung_doors(job, reports);
    let mut still = bodies(job, reports);
    still.extend(doors.iter().flat_map(Hung::closed));
    let still = AlongWall::of(still.into_iter().map(|it| (it.across, it)));
    for door in &doors {
        let own_box = Subject::Box(door.report.id);
        let others = still
            .over(door.across())
            .filter(|it| it.subject != door.subject && it.subject != own_box);
        for other in others {
            let Some(near) = door.meets(other) else {
                continue;
            };
            let at = degrees(door.door, near.s);
            let message = other.hit(word::hits(near.body), Degrees(at));
            let subjects = vec![door.subject, other.subject];
            findings.push(
                finding(NAME, Severity::Stop, message, subjects)
                    .about([Topic::Door(door.door.id), other.topic.clone()]),
            );
        }
    }
}
