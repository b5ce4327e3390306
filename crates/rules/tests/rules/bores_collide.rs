//! The check `bores-collide`.
//!
//! Limits are the settings' defaults: common practice, no source.
//!
//! Worked by hand on the plain box: its door is 794 by 594, its sides 322 by 600, bores 4 across in the
//! door and 5 across in the sides.

use crate::common::*;
use crate::findings::*;
use flapwright_model::cabinet::SystemRows;
use flapwright_model::card::Depth;
use flapwright_model::door::{Handle, HandleScrews};
use flapwright_rules::finding::Severity;

#[test]
fn bores_keep_wood_between_them() {
    // A shelf bore of 5 beside a fitting bore of 5: 8 apart leaves 3.
    let rows = |first| SystemRows {
        front: 41.0,
        rear: 41.0,
        first,
        last: 600.0 - first,
        diameter: 5.0,
        depth: 12.0,
    };
    for (first, expected) in [
        (90.0, vec![]),
        (89.99, vec![Severity::Caution; 2]),
        (87.01, vec![Severity::Caution; 2]),
        (87.0, vec![Severity::Stop; 2]),
        (84.0, vec![Severity::Stop; 2]),
        // In the very same place it is one bore, drilled once.
        (82.0, vec![]),
    ] {
        let mut it = wall_box();
        it.system_rows = Some(rows(first));
        assert_eq!(
            severities(&job(it, card()), "bores-collide"),
            expected,
            "first at {first}"
        );
    }
}

#[test]
fn bores_of_one_fitting_may_be_close_and_may_not_meet() {
    for (apart, expected) in [(5.5, vec![]), (5.0, vec![Severity::Stop; 2])] {
        let mut card = card();
        card.side_bores = vec![side_bore(64.0, 41.0), side_bore(64.0, 41.0 + apart)];
        assert_eq!(
            severities(&job(wall_box(), card), "bores-collide"),
            expected,
            "{apart} mm"
        );
    }
}

#[test]
fn two_passes_on_one_centre_are_a_stepped_bore() {
    let mut card = card();
    card.side_bores = vec![side_bore(64.0, 41.0), side_bore(64.0, 41.0)];
    card.side_bores[1].drill.pass = 2;
    card.side_bores[1].drill.diameter = 10.0;
    card.side_bores[1].drill.depth = Depth::Blind(3.0);
    assert_eq!(severities(&job(wall_box(), card), "bores-collide"), []);
}

#[test]
fn a_handle_screw_in_a_fitting_bore_is_found() {
    let mut job = job(wall_box(), card());
    // The right fitting's first bore is 29 in and 105 down; the door is 594 high.
    the_job_door(&mut job, 0).handle = Some(Handle {
        mass: 0.1,
        up: 594.0 - 105.0,
        right_of_middle: 794.0 / 2.0 - 29.0,
        projection: 25.0,
        length: 20.0,
        screws: Some(HandleScrews {
            spacing: 0.0,
            diameter: 4.5,
        }),
    });
    assert_eq!(severities(&job, "bores-collide"), [Severity::Stop]);
}

#[test]
fn the_screws_of_a_handle_take_part_in_collisions() {
    // The arm screw lies 29 in from the right edge and 137 from the top edge: 457 above the bottom
    // one of a door 594 high. The handle's right screw (4 mm, like the arm's) stands so far from it.
    for (apart, expected) in [
        (7.01, None),
        (6.99, Some(Severity::Caution)),
        (4.01, Some(Severity::Caution)),
        (3.99, Some(Severity::Stop)),
    ] {
        let mut job = job(wall_box(), card());
        the_job_door(&mut job, 0).handle = Some(Handle {
            mass: 0.1,
            up: 457.0,
            right_of_middle: 397.0 - 29.0 - 60.0 - apart,
            projection: 25.0,
            length: 140.0,
            screws: Some(HandleScrews {
                spacing: 120.0,
                diameter: 4.0,
            }),
        });
        let it = found(&job, "bores-collide");
        assert_eq!(it.first().map(|it| it.severity), expected, "{apart} mm");
    }
}

#[test]
fn bores_that_meet_say_so_and_bores_that_come_near_say_how_near() {
    let rows = |first: f64| {
        let mut it = wall_box();
        it.system_rows = Some(SystemRows {
            front: 41.0,
            rear: 41.0,
            first,
            last: 600.0 - first,
            diameter: 5.0,
            depth: 12.0,
        });
        found(&job(it, card()), "bores-collide")
    };
    // The fitting's bore is 82 below the top end: 7.5 apart leaves 2.5 of wood between two of 5.
    let near = rows(89.5);
    assert_eq!(
        near[0].message,
        "bores-collide.near: first 1, first_purpose \"body screw\", second 3, second_purpose \"shelf pin\", wood_between 2.5 mm, wanted 3 mm"
    );
    assert_close(number(&near[0], "wood_between"), 2.5);
    let met = rows(84.0);
    assert_eq!(
        met[0].message,
        "bores-collide.touch: first 1, first_purpose \"body screw\", second 3, second_purpose \"shelf pin\", wood_between -3 mm, wanted 3 mm"
    );
    assert_close(number(&met[0], "wood_between"), -3.0);
}
