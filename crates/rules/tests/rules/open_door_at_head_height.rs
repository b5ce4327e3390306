//! The check `open-door-at-head-height`.
//!
//! The test card's axis is 4 below the underside of the top and 2 behind the side fronts. The
//! door's top edge is at 597 (600 less the reveal of 3), its back 2 and its front 21 before the
//! sides; the underside is at 582, so the axis is at 578: h = 19 below the top edge, e = 23 behind
//! the front. The top front corner rises by sqrt(19^2 + 23^2) - 19 = 29.8329 - 19 = 10.8329.
//!
//! Worked by hand on the plain box: door 794 by 594, sides 322 by 600, bores of the fitting 82 below
//! the top end of the side, 29 in from the door's sides.

use crate::common::*;
use crate::findings::*;
use crate::worked::low_flap;
use flapwright_model::job::Job;
use flapwright_rules::finding::Severity;

#[test]
fn an_open_door_below_head_height_is_a_caution() {
    const NAME: &str = "open-door-at-head-height";
    // Turned by 90 degrees about the axis the door's back lies 4 above it (the back stood 2 - -2
    // = 4 before it), level: the lowest place is the axis's height plus 4.
    let at = |above_floor: f64| {
        let (mut wall_box, mut card) = low_flap();
        card.linkage.end_degrees = 90.0;
        wall_box.place.above_floor = above_floor;
        let mut job = job(wall_box, card);
        job.room.ceiling = 4000.0;
        job
    };
    let just = 1850.0 - 578.0 - 4.0;
    assert_eq!(severities(&at(just + 0.01), NAME), []);
    assert_eq!(severities(&at(just - 0.01), NAME), [Severity::Caution]);
    let mut short = at(just - 0.01);
    // It stands out 575 + ... less than 600 past its closed front.
    short.settings.head_allowance = 600.0;
    assert_eq!(severities(&short, NAME), []);
}

/// Open to this angle at this height above the floor.
fn open_at(degrees: f64, above_floor: f64) -> Job {
    let mut card = card();
    card.linkage.end_degrees = degrees;
    let mut job = job(wall_box(), card);
    job.boxes[0].place.above_floor = above_floor;
    job.room.ceiling = 4000.0;
    job
}

#[test]
fn an_open_door_at_head_height_says_how_far_it_stands_out() {
    const NAME: &str = "open-door-at-head-height";
    // Level: the back, 4 before the axis, lies 4 above it; the axis is 578 up. The bottom edge, 575
    // below the axis, is 575 before it, which is 2 behind the sides; the closed front is at 21.
    let it = the_only(&open_at(90.0, 1200.0), NAME);
    says(
        &it,
        "open-door-at-head-height.in-the-way: lowest_place 1782 mm, stands_out 552 mm",
    );
    says(&it, "open-door-at-head-height.limit: limit 1850 mm");
    assert_close(number(&it, "stands_out"), 552.0);
    // Past level it rises outward: what counts is where the back comes past the allowance of 100
    // beyond the closed front, 121 before the sides and 123 before the axis. At 100 degrees that is
    // (123 - 4 cos 100) / sin 100 along the back from the axis's foot.
    let (sin, cos) = 100_f64.to_radians().sin_cos();
    let along = (123.0 - 4.0 * cos) / sin;
    let expected = 1000.0 + 578.0 + 4.0 * sin - along * cos;
    let it = the_only(&open_at(100.0, 1000.0), NAME);
    assert_close(number(&it, "lowest_place"), expected);
    // Before level the far edge is lowest: (4, -575) turned by 80 degrees.
    let (sin, cos) = 80_f64.to_radians().sin_cos();
    let it = the_only(&open_at(80.0, 1000.0), NAME);
    assert_close(
        number(&it, "lowest_place"),
        1000.0 + 578.0 + 4.0 * sin - 575.0 * cos,
    );
}
