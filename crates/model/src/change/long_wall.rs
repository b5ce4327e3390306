//! A wall of many boxes after a small job: for measuring, for tests, for trying out.

use super::duplicate_box::give_new_ids;
use crate::job::Job;

/// From where to where boxes hang along the wall, mm: within what validation allows.
const FROM: f64 = -99_000.0;
const TO: f64 = 99_000.0;
/// Underside of the lowest row, and where the highest may be, mm.
const LOWEST: f64 = 300.0;
const HIGHEST: f64 = 19_000.0;
/// Rows are no further apart than this, mm.
const WIDEST_PITCH: f64 = 2000.0;
/// Between two boxes of a row, mm.
const BETWEEN: f64 = 2.0;
/// Boxes become narrower by less than this, mm, so that their doors are distinct.
const NARROWER: f64 = 150.0;

/// The boxes of a job again and again: `boxes` of them, in rows one above the other under a high
/// ceiling, each box of the job in so many `widths`. The job is sound; whether rows are far enough
/// apart for their doors, the checks say. What was accepted and what stands in the room is left out.
#[must_use]
pub fn long_wall(job: &Job, boxes: usize, widths: u16) -> Job {
    let mut wall = job.clone();
    wall.boxes.clear();
    wall.accepted.clear();
    wall.room.obstacles.clear();
    wall.room.ceiling = 20_000.0;
    let mut ids = wall.next_ids();
    let (mut row, mut along) = (0_u16, FROM);
    let mut rows = Vec::with_capacity(boxes);
    let turns = (0..widths.max(1)).cycle();
    let all = turns.flat_map(|turn| job.boxes.iter().map(move |it| (turn, it)));
    for (number, (turn, one)) in all.take(boxes).enumerate() {
        let mut copy = one.clone();
        give_new_ids(&mut copy, &mut ids);
        copy.name = format!("{} {}", one.name, number + 1);
        copy.width -= NARROWER * f64::from(turn) / f64::from(widths.max(1));
        if along + copy.width > TO {
            along = FROM;
            row += 1;
        }
        copy.place.along_wall = along;
        along += copy.width + BETWEEN;
        rows.push(row);
        wall.boxes.push(copy);
    }
    let pitch = ((HIGHEST - LOWEST) / f64::from(row.max(1))).min(WIDEST_PITCH);
    for (copy, row) in wall.boxes.iter_mut().zip(rows) {
        copy.place.above_floor = LOWEST + pitch * f64::from(row);
    }
    wall.next_id = ids.next();
    wall
}
