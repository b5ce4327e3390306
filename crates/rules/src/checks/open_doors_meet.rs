//! Whether a door meets another one that was left open.

use flapwright_model::job::Settings;
use flapwright_model::message::Degrees;

use super::clear_way::degrees;
use super::on_the_wall::Hung;
use super::{Check, Run, Seen, finding};
use crate::finding::{Finding, Severity};
use crate::message::{OpenDoorsMeet, word};

const NAME: &str = "open-doors-meet";

pub(super) const CHECK: Check = Check {
    name: NAME,
    page: "\
## What it looks at
All that a moving door and its handle sweep over, path tolerance added, against every other door \
of the job, fully open. Two doors are reported once. Doors that meet a closed one are reported by \
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
    run: Run::Pair(look),
};

fn look(_: &Settings, [first, second]: [Seen<'_>; 2], findings: &mut Vec<Finding>) {
    let (doors, others) = (Hung::of(first), Hung::of(second));
    let of_one = first.report.id == second.report.id;
    for (index, door) in doors.iter().enumerate() {
        let after = if of_one { index + 1 } else { 0 };
        let pairs = others.iter().skip(after).map(|other| [door, other]);
        findings.extend(pairs.filter_map(look_at_doors));
    }
}

fn look_at_doors([first, second]: [&Hung<'_>; 2]) -> Option<Finding> {
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
