//! What is said of cards against their own examples, and how the place of a finding is named.
//!
//! The example of the test card, by hand: panels of 18 and overlays of 15 put the side bores 18 + 64
//! down, 41 and 137 back, the door bores 15 + 14 in, 15 + 90 and 15 + 122 down.

use crate::common::*;
use crate::findings::*;
use flapwright_model::acceptance::Topic;
use flapwright_model::card::{Card, Example, PerSize};
use flapwright_model::door::{BoreReference, End};
use flapwright_model::edges::Edges;
use flapwright_model::job::Job;
use flapwright_model::length::Unit;
use flapwright_model::part::Part;
use flapwright_model::record::RecordState::Drilled;
use flapwright_rules::finding::{Severity, Worse};
use flapwright_rules::proof::proof;
use flapwright_rules::records::record;

fn example() -> Example {
    Example {
        size: "1".to_owned(),
        panel_thickness: 18.0,
        overlays: Edges::all(15.0),
        packing: 0.0,
        joint_down: 0.0,
        side: vec![(82.0, 41.0), (82.0, 137.0)],
        door: vec![(29.0, 105.0), (29.0, 137.0)],
    }
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
    let mut card = with_example(example());
    card.side_bores[1].back.by = PerSize::All(173.0);
    let it = the_only(&job(wall_box(), card.clone()), FAILS);
    assert_eq!(it.severity, Severity::Stop);
    assert_eq!(
        it.message,
        "card \"Plover\": 1 distance of its own worked example does not come out, by up to 36 mm"
    );
    assert_eq!(
        it.details,
        ["side, bore 2 of the card, back: the example says 137 mm, the card gives 173 mm"]
    );
    assert_numbers(&it, &[("largest difference", 36.0, "mm", Worse::Either)]);
    assert_eq!(it.subjects, [FIRST_DOOR]);
    card.door_bores[0].bores[0].across.by = PerSize::All(15.5);
    let two = the_only(&job(wall_box(), card.clone()), FAILS);
    assert_eq!(
        two.message,
        "card \"Plover\": 2 distances of its own worked example do not come out, by up to 36 mm"
    );
    assert_eq!(
        two.details[1],
        "door, bore 1 of the card, in: the example says 29 mm, the card gives 30.5 mm"
    );
    assert_eq!(
        proof(&card, Unit::Millimetre).words(),
        "not proved: 2 distances of its own worked example do not come out; compare it with its \
         paper"
    );
    assert!(!proof(&card, Unit::Millimetre).is_proved());
}

#[test]
fn bores_that_an_example_has_too_few_are_off_by_no_distance() {
    let mut short = example();
    short.side.pop();
    let it = the_only(&job(wall_box(), with_example(short)), FAILS);
    assert_eq!(
        it.message,
        "card \"Plover\": 1 distance of its own worked example does not come out"
    );
    assert_eq!(
        it.details,
        ["side: the example lists 1 bore, the card has 2"]
    );
}

#[test]
fn a_card_that_no_door_hangs_on_is_a_caution_and_every_door_is_pointed_at() {
    let mut slip = with_example(example());
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
        assert_eq!(place_of(&job, it), "card \"Dunlin\"");
    }
}

const UNPROVED: &str = "card-unproved";

#[test]
fn a_card_without_an_example_counts_the_doors_on_it() {
    let mut wall_box = wall_box();
    split(
        &mut wall_box,
        fixed_shelf(300.0, 18.0, 3.0),
        Some(door(Edges::all(3.0))),
    );
    let mut job = job(wall_box, card());
    job.settings.weights.remove(UNPROVED);
    let it = the_only(&job, UNPROVED);
    assert_eq!(
        it.message,
        "card \"Plover\": 2 doors hang on it, and no worked example shows that it was typed rightly"
    );
    assert_numbers(&it, &[("doors", 2.0, "", Worse::Greater)]);
    assert_eq!(
        it.subjects,
        [door_subject(&job, 0, 0), door_subject(&job, 0, 1)]
    );
    assert_eq!(place_of(&job, &it), "card \"Plover\"");
    // One side of it is something to compare.
    for (side, door) in [(true, false), (false, true)] {
        let mut half = example();
        if !side {
            half.side.clear();
        }
        if !door {
            half.door.clear();
        }
        job.cards[0].card.example = Some(half);
        assert_eq!(found(&job, UNPROVED), [], "side {side}, door {door}");
    }
}

/// A door that is so low off its fitting that four bores are told of.
fn off() -> Job {
    let mut job = job(wall_box(), card());
    let it = the_job_door(&mut job, 0);
    it.bores_follow = BoreReference::Edges { vertical: End::Top };
    it.tweaks.top = 1.0;
    job
}

#[test]
fn a_place_names_the_box_the_part_and_the_bore() {
    let off = off();
    let it = the_only(&off, "bores-off-fitting");
    // Four bores and the opening are pointed at; four of them are named.
    assert_eq!(it.subjects.len(), 5);
    let bore = |number: usize| format!("test box, door, bore {number}");
    let place = place_of(&off, &it);
    let mut words: Vec<&str> = place.split("; ").collect();
    words.sort_unstable();
    assert_eq!(words, [bore(1), bore(2), bore(3), bore(4)]);
    let mut heavy = job(wall_box(), card());
    heavy.cards[0].card.sizes[0].carries =
        flapwright_model::lift::Carries::Mass { min: 0.1, max: 1.0 };
    assert_eq!(
        place_of(&heavy, &the_only(&heavy, "door-too-heavy")),
        "test box, door"
    );
    let side = part_id(Part::LeftSide);
    let mut drilled = job(wall_box(), card());
    let edit = record(&drilled, &inspect(&drilled), &[side], Drilled);
    flapwright_model::edit::apply(&mut drilled, edit).expect("a record is sound");
    drilled.boxes[0].records[0].thickness = 16.0;
    assert_eq!(
        place_of(&drilled, &the_only(&drilled, "drilled-panel-differs")),
        "test box, left side"
    );
}

#[test]
fn boxes_of_one_name_are_told_apart_by_their_number() {
    let mut job = job(wall_box(), card());
    job.cards[0].card.sizes[0].carries =
        flapwright_model::lift::Carries::Mass { min: 0.1, max: 1.0 };
    for (name, along) in [("test box", 1000.0), ("other", 2000.0)] {
        let mut it = wall_box();
        it.name = name.to_owned();
        it.place.along_wall = along;
        add_box(&mut job, it);
    }
    let places: Vec<String> = found(&job, "door-too-heavy")
        .iter()
        .map(|it| place_of(&job, it))
        .collect();
    assert_eq!(
        places,
        [
            "test box (box 1), door",
            "test box (box 2), door",
            "other, door"
        ]
    );
}

#[test]
fn a_finding_about_a_box_as_a_whole_is_at_that_box() {
    let mut job = job(wall_box(), card());
    job.settings.weights.remove("wall-fixing-reminder");
    let it = the_only(&job, "wall-fixing-reminder");
    assert_eq!(place_of(&job, &it), "test box");
}
