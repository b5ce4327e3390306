//! The check `leaf-has-no-size`.
//!
//! Limits are the settings' defaults: common practice, no source.
//!
//! The plain box is 800 by 600 with panels of 18: reveals of 3 are overlays of 15, its door is 794 by
//! 594.

use crate::common::*;
use crate::findings::*;
use crate::worked::material;
use flapwright_model::door::Leaves;
use flapwright_model::edges::Edges;
use flapwright_model::material::MaterialClass;
use flapwright_model::part::{PartId, Subject};
use flapwright_rules::finding::{Severity, Worse};

#[test]
fn a_leaf_without_size_is_a_stop_and_no_panic() {
    let mut it = wall_box();
    it.body.door = Some(door(Edges {
        left: 450.0,
        right: 450.0,
        top: 3.0,
        bottom: 3.0,
    }));
    // 764 clear + 36 - 900 = -100.
    let found = found(&job(it, card()), "leaf-has-no-size");
    assert_eq!(found[0].severity, Severity::Stop);
    assert_close(found[0].numbers[0].value, -100.0);
}

const SIZE: &str = "leaf-has-no-size";

const LEAF: PartId = part_id(crate::common::LEAF);

#[test]
fn a_leaf_of_which_nothing_is_left_says_which_way() {
    let with = |reveals: Edges<f64>| {
        let mut wall_box = wall_box();
        wall_box.body.door = Some(door(reveals));
        found(&job(wall_box, card()), SIZE)
    };
    // 800 - 450 - 350 = 0 and 600 - 300 - 305 = -5.
    let sides = |left, right| Edges {
        left,
        right,
        ..Edges::all(3.0)
    };
    assert_eq!(with(sides(450.0, 349.9)), []);
    let none = with(sides(450.0, 350.0));
    assert_eq!(none.len(), 1);
    assert_eq!(
        none[0].message,
        "leaf-has-no-size.nothing: what width, size 0 mm, taken_by_the_frame 0 mm"
    );
    assert_numbers(
        &none[0],
        &[
            ("size", 0.0, "mm", Worse::Either),
            ("taken_by_the_frame", 0.0, "mm", Worse::Either),
        ],
    );
    assert_eq!(none[0].subjects, [Subject::Part(LEAF)]);
    let less = with(Edges {
        top: 300.0,
        bottom: 305.0,
        ..Edges::all(3.0)
    });
    assert_eq!(less.len(), 1);
    assert_eq!(
        less[0].message,
        "leaf-has-no-size.nothing: what height, size -5 mm, taken_by_the_frame 0 mm"
    );
}

#[test]
fn a_frame_that_leaves_no_room_for_its_infill_says_what_it_takes() {
    let with = |left: f64, right: f64, top: f64, bottom: f64| {
        let mut job = job(wall_box(), card());
        job.materials
            .push(material("test glass", MaterialClass::Glass));
        let members = Edges {
            left,
            right,
            top,
            bottom,
        };
        the_job_door(&mut job, 0).leaves = Leaves::One(framed(members, "test glass"));
        found(&job, SIZE)
    };
    assert_eq!(with(500.0, 293.9, 400.0, 193.9), []);
    let wide = with(500.0, 294.0, 60.0, 60.0);
    assert_eq!(wide.len(), 1);
    assert_eq!(
        wide[0].message,
        "leaf-has-no-size.frame-takes-all: what width, size 794 mm, taken_by_the_frame 794 mm"
    );
    let high = with(60.0, 60.0, 400.0, 200.0);
    assert_eq!(high.len(), 1);
    assert_eq!(
        high[0].message,
        "leaf-has-no-size.frame-takes-all: what height, size 594 mm, taken_by_the_frame 600 mm"
    );
    assert_numbers(
        &high[0],
        &[
            ("size", 594.0, "mm", Worse::Either),
            ("taken_by_the_frame", 600.0, "mm", Worse::Either),
        ],
    );
}
