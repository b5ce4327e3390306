//! Adding and removing what stands in the way of doors.

use crate::edit::{Edit, JobHead};
use crate::id::{BoxId, ObstacleId};
use crate::job::Job;
use crate::room::{Extent, Obstacle};

/// A new obstacle is this high and stands this far above the box, mm.
const NEW: f64 = 50.0;
/// And this far out from the wall, mm.
const NEW_OUT: f64 = 100.0;

/// Adds a block above a box, as wide as that, or at the start of the wall.
#[must_use]
pub fn add_obstacle(job: &Job, above: Option<BoxId>) -> Edit {
    let above = above.and_then(|id| job.box_by_id(id));
    let (left, right, top) = above.map_or((0.0, NEW_OUT, NEW), |it| {
        let place = it.place;
        (
            place.along_wall,
            place.along_wall + it.width,
            place.above_floor + it.height,
        )
    });
    let mut head = JobHead::of(job);
    let number = head.room.obstacles.len() + 1;
    head.room.obstacles.push(Obstacle {
        id: job.next_ids().give(),
        name: format!("obstacle {number}"),
        along_wall: Extent {
            from: left,
            to: right,
        },
        above_floor: Extent {
            from: top + NEW,
            to: top + 2.0 * NEW,
        },
        from_wall: Extent {
            from: 0.0,
            to: NEW_OUT,
        },
    });
    Edit::ReplaceHead(Box::new(head))
}

/// Removes an obstacle.
#[must_use]
pub fn remove_obstacle(job: &Job, id: ObstacleId) -> Option<Edit> {
    job.room.obstacle(id)?;
    let mut head = JobHead::of(job);
    head.room.obstacles.retain(|it| it.id != id);
    Some(Edit::ReplaceHead(Box::new(head)))
}
