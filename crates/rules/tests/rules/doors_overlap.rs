//! The check `doors-overlap`.
//!
//! Limits are the settings' defaults: common practice, no source.
//!
//! The plain box is 800 by 600 with panels of 18: reveals of 3 are overlays of 15, its door is 794 by
//! 594.

use crate::common::*;
use crate::findings::*;
use crate::worked::{REVEAL_OUT_OF_RANGE, three_doors};
use flapwright_model::cabinet::Place;
use flapwright_model::job::Job;
use flapwright_model::part::Subject;
use flapwright_rules::finding::{Severity, Worse};

#[test]
fn doors_of_neighbouring_boxes_may_not_lie_over_each_other() {
    // Doors 794 wide, 3 in from each side: boxes 800 wide can come as near as 794.
    for (along, expected) in [(800.0, 0), (794.0, 0), (793.9, 1)] {
        let mut job = job(wall_box(), card());
        let mut second = wall_box();
        second.place = Place {
            along_wall: along,
            above_floor: 0.0,
        };
        add_box(&mut job, second);
        assert_eq!(
            found(&job, "doors-overlap").len(),
            expected,
            "second box at {along}"
        );
    }
}

const OVERLAP: &str = "doors-overlap";

/// Boxes of this depth at these places; each door stands 21 before its box's sides.
fn boxes(places: &[(&str, f64, f64, f64)]) -> Job {
    let mut job = job(wall_box(), card());
    job.boxes = places
        .iter()
        .map(|&(name, along_wall, above_floor, depth)| {
            let mut it = wall_box();
            it.name = name.to_owned();
            it.place = Place {
                along_wall,
                above_floor,
            };
            it.depth = depth;
            it
        })
        .collect();
    job.give_ids();
    job
}

#[test]
fn doors_that_lie_over_each_other_say_by_how_much() {
    // From 3 to 797 and, 793 further on, from 796: 1; 594 high, 500 higher: 94.
    let job = boxes(&[("second", 793.0, 500.0, 330.0), ("first", 0.0, 0.0, 330.0)]);
    let it = the_only(&job, OVERLAP);
    assert_eq!(it.severity, Severity::Stop);
    assert_eq!(
        it.message,
        "doors-overlap.overlap: other a door, across 1 mm, up 94 mm"
    );
    assert_numbers(
        &it,
        &[
            ("across", 1.0, "mm", Worse::Either),
            ("up", 94.0, "mm", Worse::Either),
        ],
    );
    assert_eq!(
        it.subjects,
        [door_subject(&job, 1, 0), door_subject(&job, 0, 0)]
    );
}

#[test]
fn doors_overlap_only_where_they_do_so_all_three_ways() {
    let count = |along: f64, above: f64, depth: f64| {
        found(
            &boxes(&[("first", 0.0, 0.0, 330.0), ("second", along, above, depth)]),
            OVERLAP,
        )
        .len()
    };
    assert_eq!(count(793.9, 0.0, 330.0), 1);
    assert_eq!(count(794.1, 0.0, 330.0), 0);
    assert_eq!(count(700.0, 593.9, 330.0), 1);
    assert_eq!(count(700.0, 594.1, 330.0), 0);
    // The first door is from 332 to 351 from the wall; the other 19 further out.
    assert_eq!(count(700.0, 0.0, 348.9), 1);
    assert_eq!(count(700.0, 0.0, 349.1), 0);
    assert_eq!(count(700.0, 0.0, 311.1), 1);
    assert_eq!(count(700.0, 0.0, 310.9), 0);
}

#[test]
fn each_pair_of_doors_of_different_boxes_is_told_of_once() {
    let job = boxes(&[
        ("a", 0.0, 0.0, 330.0),
        ("b", 300.0, 0.0, 330.0),
        ("c", 600.0, 0.0, 330.0),
        ("d", 1300.0, 0.0, 330.0),
    ]);
    let all = found(&job, OVERLAP);
    let subjects: Vec<Vec<Subject>> = all.iter().map(|it| it.subjects.clone()).collect();
    let pair = |a, b| vec![door_subject(&job, a, 0), door_subject(&job, b, 0)];
    // From 3 to 797, 303 to 1097, 603 to 1397, 1303 to 2097.
    assert_eq!(subjects, [pair(0, 1), pair(0, 2), pair(1, 2), pair(2, 3)]);
    // Doors of one box have a check of their own.
    let mut one = three_doors();
    the_job_door(&mut one, 0).tweaks.bottom = 9.0;
    assert_eq!(found(&one, REVEAL_OUT_OF_RANGE).len(), 1);
    assert_eq!(found(&one, OVERLAP), []);
}
