//! The check `side-not-symmetric`.
//!
//! Worked by hand on the plain box: door 794 by 594, sides 322 by 600, bores of the fitting 82 below
//! the top end of the side, 29 in from the door's sides.

use crate::common::*;
use crate::findings::*;
use crate::worked::first_clears;
use flapwright_model::card::{Card, FittedSides, OpeningKind};
use flapwright_model::edges::Edges;
use flapwright_model::job::Job;
use flapwright_model::part::{Part, Subject};
use flapwright_rules::finding::Severity;

#[test]
fn a_fitting_at_one_side_makes_the_sides_differ() {
    const NAME: &str = "side-not-symmetric";
    let one = Card {
        name: "Curlew".to_owned(),
        sides: FittedSides::LeftOnly,
        ..card()
    };
    let mut job = job(wall_box(), card());
    assert_eq!(found(&job, NAME), []);
    let curlew = add_card(&mut job, one);
    let fitting = the_job_door(&mut job, 0).fitting.as_mut().unwrap();
    fitting.card = curlew;
    let it = &found(&job, NAME)[0];
    assert_eq!(it.severity, Severity::Note);
    assert_eq!(
        it.message,
        "side-not-symmetric.differ: bores_at_one_side_only 2"
    );
    let after = first_clears(&job, NAME);
    let fitting = after.boxes[0].body.door.as_ref().unwrap().fitting.as_ref();
    assert_eq!(fitting.unwrap().card, CARD);
}

#[test]
fn sides_that_differ_count_their_bores_and_offer_a_pair() {
    const NAME: &str = "side-not-symmetric";
    let mut job = job(wall_box(), card());
    let one = Card {
        name: "Curlew".to_owned(),
        sides: FittedSides::LeftOnly,
        ..card()
    };
    let curlew = add_card(&mut job, one);
    let choose = |job: &mut Job| {
        let fitting = the_job_door(job, 0).fitting.as_mut().expect("a fitting");
        fitting.card = curlew;
    };
    choose(&mut job);
    let it = the_only(&job, NAME);
    says(&it, "side-not-symmetric.differ: bores_at_one_side_only 2");
    says(&it, "side-not-symmetric.alone: left 2, right 0");
    assert_close(number(&it, "bores_at_one_side_only"), 2.0);
    let side = |part| Subject::Part(part_id(part));
    assert_eq!(it.subjects, [side(Part::LeftSide), side(Part::RightSide)]);
    assert_eq!(
        it.remedies[0].kind,
        "remedy.take-size: fitting (fitting-name.size: card \"Plover\", size \"1\")"
    );
    assert_eq!(
        it.remedies[0].effects,
        "effect.both-sides: door a door, fitting (fitting-name.size: card \"Curlew\", size \"1\"); effect.see-sizes"
    );
    assert!(!it.remedies[0].safe);
    clears(&job, &it, 0);
    // Sides of other outlines are no mirror images anyway.
    let mut right = job.clone();
    right.cards[1].card.sides = FittedSides::RightOnly;
    says(
        &the_only(&right, NAME),
        "side-not-symmetric.alone: left 0, right 2",
    );
    // A size whose door may not be so wide, or so high, is not offered. The door is 794 by 594.
    for (width, height, offered) in [
        ((794.0, 794.0), (594.0, 594.0), 1),
        ((794.1, 900.0), (594.0, 594.0), 0),
        ((700.0, 793.9), (594.0, 594.0), 0),
        ((794.0, 794.0), (594.1, 600.0), 0),
        ((794.0, 794.0), (500.0, 593.9), 0),
    ] {
        let mut job = job.clone();
        let size = &mut job.cards[0].card.sizes[0];
        (size.door_width.min, size.door_width.max) = width;
        (size.door_height.min, size.door_height.max) = height;
        assert_eq!(
            the_only(&job, NAME).remedies.len(),
            offered,
            "{width:?} {height:?}"
        );
    }
    // Nor is a card of another kind.
    let mut other = job.clone();
    other.cards[0].card.kind = OpeningKind::ParallelRisingDoor;
    other.cards[0].card.linkage.bodies = flapwright_model::linkage::Bodies::Parallel {
        box_pivot: pivot(100.0, 100.0),
        door_pivot: pivot(300.0, 5.0),
        second_down: 40.0,
        second_back: 0.0,
    };
    assert_eq!(the_only(&other, NAME).remedies, []);
}

fn pivot(down: f64, back: f64) -> flapwright_model::linkage::Pivot {
    flapwright_model::linkage::Pivot {
        down: flapwright_model::card::PerSize::All(down),
        back: flapwright_model::card::PerSize::All(back),
    }
}

/// How many findings there are when the upper of two doors has a fitting at the left and the lower
/// one, 382 below it, a fitting at the right whose side bores lie 382 higher than the other's: so
/// both sides have the same bores, before a change of the right-hand card.
fn twins(change: fn(&mut Card)) -> usize {
    let mut left = card();
    left.sides = FittedSides::LeftOnly;
    let mut right = card();
    right.name = "Curlew".to_owned();
    right.sides = FittedSides::RightOnly;
    right.side_bores = vec![
        side_bore(64.0 - 382.0, 41.0),
        side_bore(64.0 - 382.0, 137.0),
    ];
    change(&mut right);
    let mut wall_box = wall_box();
    split(
        &mut wall_box,
        fixed_shelf(200.0, 18.0, 3.0),
        Some(door(Edges::all(3.0))),
    );
    let mut job = job(wall_box, left);
    let curlew = add_card(&mut job, right);
    let lower = the_job_door(&mut job, 1).fitting.as_mut().expect("one");
    lower.card = curlew;
    found(&job, "side-not-symmetric").len()
}

#[test]
fn bores_of_both_sides_are_alike_in_place_size_and_depth() {
    assert_eq!(twins(|_| ()), 0);
    // Half of a tenth is not seen on a sheet.
    assert_eq!(
        twins(|it| it.side_bores[0] = side_bore(64.0 - 382.0, 41.04)),
        0
    );
    assert_eq!(
        twins(|it| it.side_bores[0] = side_bore(64.0 - 382.0, 41.06)),
        1
    );
    assert_eq!(
        twins(|it| it.side_bores[0] = side_bore(64.04 - 382.0, 41.0)),
        0
    );
    assert_eq!(
        twins(|it| it.side_bores[0] = side_bore(64.06 - 382.0, 41.0)),
        1
    );
    assert_eq!(twins(|it| it.side_bores[0].drill.diameter = 5.5), 1);
    assert_eq!(
        twins(|it| it.side_bores[0].drill.depth = flapwright_model::card::Depth::Blind(11.0)),
        1
    );
}
