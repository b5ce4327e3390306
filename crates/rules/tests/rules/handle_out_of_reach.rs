//! The check `handle-out-of-reach`.
//!
//! The test card's axis is 4 below the underside of the top and 2 behind the side fronts. The
//! door's top edge is at 597 (600 less the reveal of 3), its back 2 and its front 21 before the
//! sides; the underside is at 582, so the axis is at 578: h = 19 below the top edge, e = 23 behind
//! the front. The top front corner rises by sqrt(19^2 + 23^2) - 19 = 29.8329 - 19 = 10.8329.
//!
//! The test card's axis is 4 below the underside of the top and 2 behind the side fronts, at 578
//! above the box's own underside; boxes hang at 1500. The door's back is 4 and its front 23 before
//! the axis, its top edge 19 above and its bottom edge 575 below it. Depth counts from the wall: the
//! side fronts are at 330, the axis at 328.

use crate::common::*;
use crate::findings::*;
use crate::worked::{DOOR_HITS_CEILING, flap, low_flap, under_left, with_handle};
use flapwright_model::door::Handle;
use flapwright_model::edit::apply;
use flapwright_rules::finding::{Severity, Worse};

#[test]
fn a_handle_above_the_reach_is_a_caution() {
    const NAME: &str = "handle-out-of-reach";
    // Level, the handle's middle (15 before the front, 23 + 15 = 38 before the axis) lies 38 above
    // the axis.
    let at = |above_floor: f64| {
        let (mut wall_box, mut card) = low_flap();
        card.linkage.end_degrees = 90.0;
        wall_box.place.above_floor = above_floor;
        let door = wall_box.body.door.as_mut().expect("a door");
        door.handle = Some(Handle {
            mass: 0.1,
            up: 30.0,
            right_of_middle: 0.0,
            projection: 30.0,
            length: 160.0,
            screws: None,
        });
        let mut job = job(wall_box, card);
        job.room.ceiling = 4000.0;
        job
    };
    let just = 1950.0 - 578.0 - 38.0;
    assert_eq!(severities(&at(just - 0.01), NAME), []);
    assert_eq!(severities(&at(just + 0.01), NAME), [Severity::Caution]);
}

const REACH: &str = "handle-out-of-reach";

#[test]
fn the_hand_takes_hold_of_the_handle_or_of_the_lower_edge() {
    // Level, the middle of the lower edge (11.5 + 2 = 13.5 before the axis) is 13.5 above the
    // axis, the middle of a handle that stands out 30 (23 + 15 before it) 38. 20 up are 1.5 and 26
    // above the reach of 1950.
    let mut job = flap(90.0, 0.0, 1950.0 - 578.0 - 12.0);
    let edge = found(&job, REACH).remove(0);
    assert_eq!(edge.severity, Severity::Caution);
    assert_eq!(
        edge.message,
        "handle-out-of-reach.lower-edge: limit 1950 mm, height_of_the_grip 1951.5 mm"
    );
    assert_numbers(
        &edge,
        &[("height_of_the_grip", 1951.5, "mm", Worse::Greater)],
    );
    assert_eq!(edge.subjects, [FIRST_DOOR]);
    with_handle(&mut job, 30.0);
    let handle = found(&job, REACH).remove(0);
    assert_eq!(
        handle.message,
        "handle-out-of-reach.handle: limit 1950 mm, height_of_the_grip 1976 mm"
    );
    job.settings.highest_reach = 1976.1;
    assert_eq!(severities(&job, REACH), []);
    job.settings.highest_reach = 1975.9;
    assert_eq!(severities(&job, REACH), [Severity::Caution]);
}

#[test]
fn hanging_lower_is_no_remedy_that_is_applied_unseen_and_is_undone() {
    let before = under_left(1.5);
    let mut job = before.clone();
    let remedy = found(&job, DOOR_HITS_CEILING).remove(0).remedies.remove(0);
    assert!(!remedy.safe);
    let undo = apply(&mut job, remedy.edit).expect("a sound job");
    assert_close(job.boxes[0].place.above_floor, 1499.0);
    assert_eq!(severities(&job, DOOR_HITS_CEILING), []);
    apply(&mut job, undo).expect("undone");
    assert_eq!(job, before);
}
