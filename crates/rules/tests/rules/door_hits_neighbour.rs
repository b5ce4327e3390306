//! The checks `door-hits-neighbour` and `open-doors-meet`.
//!
//! The test card's axis is 4 below the underside of the top and 2 behind the side fronts. The
//! door's top edge is at 597 (600 less the reveal of 3), its back 2 and its front 21 before the
//! sides; the underside is at 582, so the axis is at 578: h = 19 below the top edge, e = 23 behind
//! the front. The top front corner rises by sqrt(19^2 + 23^2) - 19 = 29.8329 - 19 = 10.8329.
//!
//! The test card's axis is 4 below the underside of the top (at 582) and 2 behind the side fronts:
//! at 578 above the box's own underside. The closed door's back stands 4 and its front 23 before
//! the axis, its top edge 19 above and its bottom edge 575 below it.

use crate::common::*;
use crate::findings::*;
use crate::worked::under_ceiling;
use flapwright_model::cabinet::{Place, WallBox};
use flapwright_model::door::Handle;
use flapwright_model::job::Job;
use flapwright_rules::finding::Severity;

#[test]
fn a_door_meets_the_box_that_hangs_close_above_it() {
    const NAME: &str = "door-hits-neighbour";
    // The upper box's door is inset by nothing: it starts 3 above its underside. The lower door's
    // corner rises to 578 + RADIUS = 607.833 above the lower underside, 10.833 past its top edge,
    // and there it is 2 behind the fronts, straight below the upper box.
    let above = |gap: f64| {
        let mut job = under_ceiling(5000.0);
        let mut upper = copy_of(&job.boxes[0]);
        upper.name = "upper".to_owned();
        upper.place.above_floor += 600.0 + gap;
        upper.body.door = None;
        add_box(&mut job, upper);
        job
    };
    assert_eq!(severities(&above(7.9), NAME), []);
    assert_eq!(severities(&above(7.7), NAME), [Severity::Stop]);
}

const CLOSED: &str = "door-hits-neighbour";

const OPEN: &str = "open-doors-meet";

fn at(name: &str, above_floor: f64) -> WallBox {
    let mut wall_box = wall_box();
    wall_box.name = name.to_owned();
    wall_box.place = Place {
        along_wall: 0.0,
        above_floor,
    };
    wall_box
}

fn with_handle(wall_box: &mut WallBox, right_of_middle: f64) {
    let door = wall_box.body.door.as_mut().expect("a door");
    door.handle = Some(Handle {
        mass: 0.1,
        up: 30.0,
        right_of_middle,
        projection: 30.0,
        length: 160.0,
        screws: None,
    });
}

/// A job of two boxes of the test card that ends at this angle.
fn two(end_degrees: f64, boxes: [WallBox; 2]) -> Job {
    let [lower, upper] = boxes;
    let mut card = card();
    card.linkage.end_degrees = end_degrees;
    let mut job = job(lower, card);
    add_box(&mut job, upper);
    job.room.ceiling = 5000.0;
    job
}

/// One box `gap` above the other.
fn stacked(end_degrees: f64, gap: f64) -> Job {
    two(
        end_degrees,
        [at("lower", 1000.0), at("upper", 1600.0 + gap)],
    )
}

#[test]
fn a_handle_reaches_only_where_it_is_across_the_door() {
    // Level, the handle's tip (30 before the front) is 53 above the axis, 31 above the box's top.
    // The door itself comes 7.83 above it. 20 above hangs a box that is deep enough to be over the
    // handle, and 300 wide; the handle, 160 long, is in the middle of a door from 3 to 797.
    let with = |right_of_middle: f64| {
        let mut lower = at("lower", 1000.0);
        with_handle(&mut lower, right_of_middle);
        let mut upper = at("upper", 1620.0);
        upper.width = 300.0;
        upper.depth = 1200.0;
        upper.body.door = None;
        two(90.0, [lower, upper])
    };
    assert_eq!(severities(&with(0.0), CLOSED), []);
    assert_eq!(severities(&with(-19.9), CLOSED), []);
    let met = found(&with(-20.1), CLOSED);
    assert_eq!(met.len(), 1, "{met:?}");
    assert_eq!(met[0].severity, Severity::Stop);
    assert_eq!(
        met[0].message,
        "door-hits-neighbour.body: hits handle-hits, other a box, met_at 88°"
    );
}

#[test]
fn a_door_meets_the_handle_of_a_closed_door_above_it() {
    // The upper door's bottom edge is 30 + 3 above the lower box, its handle 30 above that edge. Past
    // level by 40 degrees the lower door's front face, 23 from the axis, is (23 + x sin 40) / cos 40
    // above the axis at a place x before it: 49.3 at the upper door's front (x = 23), which starts
    // 55 above that axis. Only a handle that stands out far enough is met.
    let with = |projection: f64| {
        let mut upper = at("upper", 1630.0);
        with_handle(&mut upper, 0.0);
        let door = upper.body.door.as_mut().expect("a door");
        door.handle.as_mut().expect("a handle").projection = projection;
        // Only the lower one moves.
        door.fitting = None;
        two(130.0, [at("lower", 1000.0), upper])
    };
    // The handle's underside: 630 + 3 + 30 - 6 - 578 = 79 above the axis. Met from
    // x = (79 cos 40 - 23) / sin 40 = 58.37 on; its tip is at 23 + projection.
    let just = (79.0 * 40_f64.to_radians().cos() - 23.0) / 40_f64.to_radians().sin() - 23.0;
    assert!((just - 35.37).abs() < 0.01, "{just}");
    assert_eq!(severities(&with(just - 0.2), CLOSED), []);
    let met = found(&with(just + 0.2), CLOSED);
    assert_eq!(met.len(), 1, "{met:?}");
    assert_eq!(
        met[0].message,
        "door-hits-neighbour.handle: hits leaf-hits, other a door, met_at 127°"
    );
}

#[test]
fn a_door_meets_one_that_was_left_open_below_it() {
    // Open to 110 degrees the lower door's front face is a plane 23 from its axis. Of the upper
    // door the lower front corner, sqrt(575² + 23²) = 575.4598 from its axis, comes nearest to that
    // plane: (600 + gap) sin 110 - 575.4598 - 23. That is 0 at a gap of 36.868. It is there at 20
    // degrees, 218 out in the room, well on the lower door.
    let gap = (575.459_8 + 23.0) / 110_f64.to_radians().sin() - 600.0;
    assert!((gap - 36.868).abs() < 0.001, "{gap}");
    assert_eq!(severities(&stacked(110.0, gap + 0.2), OPEN), []);
    let close = stacked(110.0, gap - 0.2);
    assert_eq!(severities(&close, OPEN), [Severity::Caution]);
    assert_eq!(
        severities(&close, CLOSED),
        [],
        "closed, the one is out of the other's way"
    );
    let message = &found(&close, OPEN)[0].message;
    assert!(
        message.starts_with("open-doors-meet.hits: hits leaf-hits, "),
        "{message}"
    );
    // Level, the lower door stays below the other's lower edge on its whole way.
    assert_eq!(severities(&stacked(90.0, 12.0), OPEN), []);
}

#[test]
fn doors_side_by_side_may_both_be_open() {
    let beside = |along_wall: f64| {
        let mut job = stacked(110.0, 30.0);
        job.boxes[1].place.along_wall = along_wall;
        job
    };
    // Each door is 794 wide.
    assert_eq!(severities(&beside(793.9), OPEN), [Severity::Caution]);
    assert_eq!(severities(&beside(794.1), OPEN), []);
}

#[test]
fn doors_that_meet_a_closed_one_are_told_once() {
    // The lower door opens so far that it meets the handle of the closed door above it, which
    // stands out more than the 35.37 of the test above.
    let mut job = stacked(130.0, 30.0);
    with_handle(&mut job.boxes[1], 0.0);
    let handle = &mut job.boxes[1].body.door.as_mut().expect("a door").handle;
    handle.as_mut().expect("a handle").projection = 40.0;
    assert_eq!(severities(&job, CLOSED), [Severity::Stop]);
    assert_eq!(severities(&job, OPEN), []);
}

#[test]
fn a_larger_gap_between_the_boxes_clears_both() {
    let mut job = stacked(110.0, 20.0);
    assert_eq!(severities(&job, OPEN), [Severity::Caution]);
    job.boxes[1].place.above_floor += 20.0;
    assert_eq!(severities(&job, OPEN), []);
}
