//! The check `card-example-fails`.
//!
//! Limits are the settings' defaults: common practice, no source.
//!
//! The example of the test card, by hand: panels of 18 and overlays of 15 put the side bores 18 + 64
//! down, 41 and 137 back, the door bores 15 + 14 in, 15 + 90 and 15 + 122 down.

use crate::common::*;
use crate::findings::*;
use crate::worked::example_of_test_card;
use flapwright_model::acceptance::Topic;
use flapwright_model::card::{Card, Example, PerSize};
use flapwright_model::edges::Edges;
use flapwright_rules::finding::{Severity, Worse};
use flapwright_rules::proof::proof;

#[test]
fn a_slip_in_a_card_shows_against_its_own_example() {
    let mut card = card();
    // Top 18, overlays 15: side bores 18 + 64 down; door bores 15 + 14 in and 15 + 90, 15 + 122
    // down.
    card.example = Some(flapwright_model::card::Example {
        size: "1".to_owned(),
        panel_thickness: 18.0,
        overlays: Edges::all(15.0),
        packing: 0.0,
        joint_down: 0.0,
        side: vec![(82.0, 41.0), (82.0, 137.0)],
        door: vec![(29.0, 105.0), (29.0, 137.0)],
    });
    assert_eq!(
        severities(&job(wall_box(), card.clone()), "card-example-fails"),
        []
    );
    card.side_bores[1].back.by = flapwright_model::card::PerSize::All(173.0);
    let found = found(&job(wall_box(), card), "card-example-fails");
    assert_eq!(found[0].severity, Severity::Stop);
    assert_close(found[0].numbers[0].value, 36.0);
}

fn with_example(example: Example) -> Card {
    Card {
        example: Some(example),
        ..card()
    }
}

const FAILS: &str = "card-example-fails";

#[test]
fn a_slip_is_told_distance_by_distance() {
    let mut card = with_example(example_of_test_card());
    card.side_bores[1].back.by = PerSize::All(173.0);
    let it = the_only(&job(wall_box(), card.clone()), FAILS);
    assert_eq!(it.severity, Severity::Stop);
    assert_eq!(
        it.message,
        "card-example-fails.distances: distances 1, largest_difference 36 mm"
    );
    assert_eq!(
        it.reasons,
        ["card-example-fails.distance: face side, bore 2, way back, listed 137 mm, found 173 mm"]
    );
    assert_numbers(&it, &[("largest_difference", 36.0, "mm", Worse::Either)]);
    assert_eq!(it.subjects, [FIRST_DOOR]);
    card.door_bores[0].bores[0].across.by = PerSize::All(15.5);
    let two = the_only(&job(wall_box(), card.clone()), FAILS);
    assert_eq!(
        two.message,
        "card-example-fails.distances: distances 2, largest_difference 36 mm"
    );
    assert_eq!(
        two.reasons[1],
        "card-example-fails.distance: face door, bore 1, way in, listed 29 mm, found 30.5 mm"
    );
    assert_eq!(said(&proof(&card).message()), "proof.fails: distances 2");
    assert!(!proof(&card).is_proved());
}

#[test]
fn bores_that_an_example_has_too_few_are_off_by_no_distance() {
    let mut short = example_of_test_card();
    short.side.pop();
    let it = the_only(&job(wall_box(), with_example(short)), FAILS);
    assert_eq!(
        it.message,
        "card-example-fails.bores: largest_difference 0 mm"
    );
    assert_eq!(
        it.reasons,
        ["card-example-fails.bore-count: face side, listed 1, has 2"]
    );
}

#[test]
fn a_card_that_no_door_hangs_on_is_a_caution_and_every_door_is_pointed_at() {
    let mut slip = with_example(example_of_test_card());
    slip.name = "Dunlin".to_owned();
    slip.side_bores[1].back.by = PerSize::All(173.0);
    let mut wall_box = wall_box();
    split(
        &mut wall_box,
        fixed_shelf(300.0, 18.0, 3.0),
        Some(door(Edges::all(3.0))),
    );
    let mut job = job(wall_box, card());
    let dunlin = add_card(&mut job, slip);
    let mut second = copy_of(&job.boxes[0]);
    second.name = "second box".to_owned();
    second.place.along_wall = 1000.0;
    add_box(&mut job, second);
    let unused = the_only(&job, FAILS);
    assert_eq!(unused.severity, Severity::Caution);
    assert_eq!(unused.subjects, []);
    for (box_index, index) in [(0, 1), (1, 0)] {
        let door = door_id(&job.boxes[box_index], index);
        let door = job.boxes[box_index].door_mut(door);
        let fitting = door.and_then(|it| it.fitting.as_mut());
        fitting.expect("a fitting").card = dunlin;
    }
    let used = the_only(&job, FAILS);
    assert_eq!(used.severity, Severity::Stop);
    assert_eq!(
        used.subjects,
        [door_subject(&job, 0, 1), door_subject(&job, 1, 0)]
    );
    // The card is the place, whichever doors hang on it: an acceptance outlives another door.
    for it in [&unused, &used] {
        assert_eq!(it.about, [Topic::Card(dunlin)]);
    }
}
