//! Whether a door meets a neighbouring box or a closed door on its way.

use flapwright_model::acceptance::Topic;
use flapwright_model::job::Settings;
use flapwright_model::message::Degrees;

use super::clear_way::degrees;
use super::on_the_wall::{Hung, Still, body};
use super::{Check, Run, Seen, finding};
use crate::finding::{Finding, Severity};
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
    run: Run::Pair(look),
};

fn look(_: &Settings, [first, second]: [Seen<'_>; 2], findings: &mut Vec<Finding>) {
    let (doors, others) = (Hung::of(first), Hung::of(second));
    let closed: Vec<Still> = others.iter().flat_map(Hung::closed).collect();
    if first.report.id == second.report.id {
        hits(&doors, &closed, findings);
        return;
    }
    hits(&doors, &[body(second)], findings);
    hits(&doors, &closed, findings);
    let closed: Vec<Still> = doors.iter().flat_map(Hung::closed).collect();
    hits(&others, &[body(first)], findings);
    hits(&others, &closed, findings);
}

fn hits(doors: &[Hung<'_>], still: &[Still], findings: &mut Vec<Finding>) {
    for door in doors {
        for other in still.iter().filter(|it| it.subject != door.subject) {
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
