//! The check `door-hits-ceiling`.
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
use crate::worked::{DOOR_HITS_CEILING, RADIUS, flap, under_ceiling, under_left};
use flapwright_model::edit::apply;
use flapwright_rules::finding::{Severity, Worse};

#[test]
fn a_door_keeps_the_least_clearance_below_the_ceiling() {
    const NAME: &str = "door-hits-ceiling";
    let highest = 1500.0 + 578.0 + RADIUS;
    assert_eq!(severities(&under_ceiling(highest + 2.01), NAME), []);
    assert_eq!(
        severities(&under_ceiling(highest + 1.99), NAME),
        [Severity::Caution]
    );
    assert_eq!(
        severities(&under_ceiling(highest + 0.01), NAME),
        [Severity::Caution]
    );
    assert_eq!(
        severities(&under_ceiling(highest - 0.01), NAME),
        [Severity::Stop]
    );
}

#[test]
fn hanging_the_box_lower_clears_the_ceiling_and_can_be_undone() {
    const NAME: &str = "door-hits-ceiling";
    let before = under_ceiling(1500.0 + 578.0 + RADIUS - 3.0);
    let mut job = before.clone();
    let found_before = found(&job, NAME);
    let remedy = &found_before[0].remedies[0];
    // 3 into the ceiling and 2 of clearance.
    assert_eq!(remedy.kind, "remedy.lower-box: by 5 mm");
    assert!(!remedy.safe, "where a box hangs is for a person to say");
    let back = apply(&mut job, remedy.edit.clone()).expect("the remedy fits");
    assert_eq!(severities(&job, NAME), []);
    let _redo = apply(&mut job, back).expect("undo fits");
    assert_eq!(job, before);
}

#[test]
fn a_door_that_meets_the_ceiling_says_from_where_on_and_what_it_needs() {
    // The corner starts 39.56 degrees above level; it is 3 below its highest place where the sine
    // is 26.833 / 29.833, at 64.08 degrees: 24.52 on. The way is looked at in 48 pieces, the first
    // that comes so high is that from 23.33 to 25.
    let met = found(&under_left(-3.0), DOOR_HITS_CEILING).remove(0);
    assert_eq!(
        met.message,
        "door-hits-ceiling.hits: from 23°, over 3 mm, left_below_the_ceiling -3 mm"
    );
    assert_numbers(
        &met,
        &[("left_below_the_ceiling", -3.0, "mm", Worse::Smaller)],
    );
    assert_eq!(met.subjects, [FIRST_DOOR]);
    assert_eq!(
        met.remedies[0].effects,
        "effect.underside: was 1500 mm, is 1495 mm; effect.bores-stay"
    );
}

#[test]
fn a_door_close_to_the_ceiling_says_what_is_left_and_what_is_wanted() {
    let mut job = under_left(1.5);
    let close = found(&job, DOOR_HITS_CEILING).remove(0);
    assert_eq!(
        close.message,
        "door-hits-ceiling.near: left_below_the_ceiling 1.5 mm, wanted 2 mm"
    );
    assert_numbers(
        &close,
        &[("left_below_the_ceiling", 1.5, "mm", Worse::Smaller)],
    );
    // 0.5 is wanting: a whole millimetre lower.
    assert_eq!(close.remedies[0].kind, "remedy.lower-box: by 1 mm");
    job.settings.least_clearance = 1.4;
    assert_eq!(severities(&job, DOOR_HITS_CEILING), []);
    job.settings.least_clearance = 1.6;
    assert_eq!(severities(&job, DOOR_HITS_CEILING), [Severity::Caution]);
}

#[test]
fn the_path_tolerance_of_the_card_is_added_below_the_ceiling() {
    let mut job = under_left(6.0);
    job.cards[0].card.linkage.path_tolerance = 4.0;
    assert_eq!(severities(&job, DOOR_HITS_CEILING), []);
    job.cards[0].card.linkage.path_tolerance = 4.1;
    assert_eq!(severities(&job, DOOR_HITS_CEILING), [Severity::Caution]);
    job.cards[0].card.linkage.path_tolerance = 6.1;
    assert_eq!(severities(&job, DOOR_HITS_CEILING), [Severity::Stop]);
}

#[test]
fn a_box_is_hung_lower_down_to_the_floor_and_no_further() {
    // 3 into the ceiling and 2 of clearance: 5 lower.
    let at = |above_floor: f64| {
        let mut job = flap(80.0, 0.0, above_floor);
        job.room.ceiling = above_floor + 578.0 + RADIUS - 3.0;
        found(&job, DOOR_HITS_CEILING)[0].remedies.len()
    };
    assert_eq!([at(5.0), at(4.9)], [1, 0]);
}
