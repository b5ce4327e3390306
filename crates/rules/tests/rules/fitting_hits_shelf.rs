//! The check `fitting-hits-shelf`.
//!
//! The test card's axis is 4 below the underside of the top and 2 behind the side fronts. The
//! door's top edge is at 597 (600 less the reveal of 3), its back 2 and its front 21 before the
//! sides; the underside is at 582, so the axis is at 578: h = 19 below the top edge, e = 23 behind
//! the front. The top front corner rises by sqrt(19^2 + 23^2) - 19 = 29.8329 - 19 = 10.8329.

use crate::common::*;
use crate::findings::*;
use crate::worked::{inset_flap, low_flap, parallel};
use flapwright_model::card::PerSize;
use flapwright_model::linkage::{Bodies, Pivot};
use flapwright_model::opening::Inside;
use flapwright_rules::finding::Severity;

#[test]
fn a_shelf_in_the_body_of_the_fitting_is_a_stop() {
    const NAME: &str = "fitting-hits-shelf";
    // The body reaches 160 below the underside at 582: down to 422. The shelf is 18 thick.
    let shelf = |up: f64| {
        let (mut wall_box, card) = low_flap();
        lay(&mut wall_box, up, across(18.0));
        job(wall_box, card)
    };
    assert_eq!(severities(&shelf(404.0), NAME), []);
    assert_eq!(severities(&shelf(404.1), NAME), [Severity::Stop]);
}

#[test]
fn an_arm_that_meets_a_shelf_is_a_stop() {
    // The lower arm ends at 582 - 340 = 242, at (95, -200) from its pivot: a bar 12 wide at that
    // slope reaches 6 * 95 / 221.416 = 2.574 below its end. It only rises when the door opens.
    const NAME: &str = "fitting-hits-shelf";
    let just = 242.0 - 2.574 - 18.0;
    assert_eq!(found(&parallel(just - 0.2), NAME), []);
    let met = found(&parallel(just + 0.2), NAME);
    assert_eq!(met.len(), 1, "{met:?}");
    assert_eq!(
        met[0].message,
        "fitting-hits-shelf.hits: hits arm-hits, obstacle a shelf, met_at 0°"
    );
}

#[test]
fn the_body_of_a_fitting_keeps_out_of_the_face_frame() {
    const NAME: &str = "fitting-hits-shelf";
    // The frame stands 12 inward of the side, and the body begins `behind` the side fronts, where
    // the frame ends.
    let with = |behind: f64| {
        let (mut wall_box, mut card) = low_flap();
        wall_box.frame = Some(face_frame(20.0, 30.0, 12.0));
        card.envelope.back_from = behind;
        found(&job(wall_box, card), NAME)
    };
    assert_eq!(with(0.0), []);
    let met = with(-0.2);
    assert!(!met.is_empty());
    assert_eq!(
        met[0].message,
        "fitting-hits-shelf.body: obstacle Frame, overlap 0.2 mm"
    );
}

#[test]
fn an_arm_keeps_out_of_the_rail_below_the_opening() {
    const NAME: &str = "fitting-hits-shelf";
    // The lower arm runs from (100 behind, 320 down) to (30 before the side fronts, 540 down): its
    // end is at 42, its direction (130, -220) of length 255.54. The lower edge of a bar 12 wide is
    // 6 * 255.54 / 130 = 11.794 below its middle line, which at the frame's front, 20 before the
    // sides, is at 42 + 10 * 220 / 130 = 58.923: 47.129.
    let with = |rail_top: f64| {
        let mut job = parallel(560.0);
        let wall_box = &mut job.boxes[0];
        wall_box.body.inside = Inside::default();
        let mut frame = face_frame(20.0, 60.0, 0.0);
        frame.overhang.bottom = rail_top - 18.0;
        wall_box.frame = Some(frame);
        let pivot = |down, back| Pivot {
            down: PerSize::All(down),
            back: PerSize::All(back),
        };
        job.cards[0].card.linkage.bodies = Bodies::Parallel {
            box_pivot: pivot(300.0, 100.0),
            door_pivot: pivot(520.0, -30.0),
            second_down: 20.0,
            second_back: 0.0,
        };
        found(&job, NAME)
    };
    assert_eq!(with(46.9), []);
    let met = with(47.4);
    assert_eq!(met.len(), 1, "{met:?}");
    assert_eq!(
        met[0].message,
        "fitting-hits-shelf.hits: hits arm-hits, obstacle Frame, met_at 0°"
    );
}

#[test]
fn a_shelf_keeps_out_of_the_leaf_of_an_inset_door() {
    const NAME: &str = "fitting-hits-shelf";
    // The leaf is 19 thick and flush with the sides; below its axis it only swings out.
    let with = |set_back: f64| {
        let mut job = inset_flap(3.0);
        let mut piece = across(18.0);
        piece.set_back = set_back;
        lay(&mut job.boxes[0], 200.0, piece);
        found(&job, NAME)
    };
    assert_eq!(with(19.1), []);
    let met = with(18.9);
    assert_eq!(met.len(), 1, "{met:?}");
    assert_eq!(
        met[0].message,
        "fitting-hits-shelf.hits: hits leaf-hits, obstacle a shelf, met_at 0°"
    );
}
