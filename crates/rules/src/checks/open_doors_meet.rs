//! Whether a door meets another one that was left open.

use std::sync::Arc;

use flapwright_model::job::Job;
use flapwright_model::message::Degrees;

use super::clear_way::degrees;
use super::on_the_wall::{AlongWall, Hung, hung_doors};
use super::{Check, Run, finding};
use crate::finding::{Finding, Severity};
use crate::inspection::BoxReport;
use crate::message::{OpenDoorsMeet, word};

const NAME: &str = "open-doors-meet";

pub(super) const CHECK: Check = Check {
    name: NAME,
    page: "\
## What it looks at
All that a moving door and its handle sweep over, path tolerance added, against every other door \
of the job, fully open. Each two doors are told once. Doors that meet a closed one are told by \
door-hits-neighbour; a door that stopped half way is not looked at.

## Why it matters
Somebody fetches cups below, leaves the door up and opens the door above: the two chip each \
other, or the upper one stays shut.

## Severity
Caution.

## What can be done
A larger gap between the two, a fitting that opens less far, another opening kind; or tell the \
user to shut one before the other is opened, and accept it with that reason.",
    severities: &[Severity::Caution],
    settings: &[],
    run: Run::Job(look),
};

fn look(job: &Job, reports: &[Arc<BoxReport>], findings: &mut Vec<Finding>) {
    let doors = hung_doors(job, reports);
    let numbered = doors.iter().enumerate();
    let along_wall = AlongWall::of(numbered.map(|(number, door)| (door.across(), (number, door))));
    for (number, door) in doors.iter().enumerate() {
        let mut others: Vec<(usize, &Hung<'_>)> = along_wall
            .over(door.across())
            .copied()
            .filter(|(other, _)| *other > number)
            .collect();
        others.sort_by_key(|(other, _)| *other);
        let pairs = others.into_iter().map(|(_, other)| [door, other]);
        findings.extend(pairs.filter_map(look_at_pair));
    }
}

fn look_at_pair([first, second]: [&Hung<'_>; 2]) -> Option<Finding> {
    let ways = [(first, second), (second, first)];
    let meets_closed = |(moving, still): (&Hung<'_>, &Hung<'_>)| {
        still.closed().iter().any(|it| moving.meets(it).is_some())
    };
    let (moving, still, near) = ways.into_iter().find_map(|(moving, still)| {
        let open = still.open();
        let near = open
            .iter()
            .filter_map(|it| moving.meets(it))
            .min_by(|a, b| a.s.total_cmp(&b.s))?;
        Some((moving, still, near))
    })?;
    if ways.into_iter().any(meets_closed) {
        return None;
    }
    let at = degrees(moving.door, near.s);
    let message = OpenDoorsMeet::Hits {
        hits: word::hits(near.body),
        other: still.subject,
        met_at: Degrees(at),
    };
    let it = finding(
        NAME,
        Severity::Caution,
        message,
        vec![moving.subject, still.subject],
    );

    Some(it)
}
