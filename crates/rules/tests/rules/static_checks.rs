//! Checks that need no motion: holds, just holds, just fails, and what their remedies do.

use crate::common::*;
use crate::findings::*;
use flapwright_model::cabinet::Place;
use flapwright_model::card::{Card, FittedSides};
use flapwright_model::door::{
    BoreReference, DoorFit, DrilledBore, End, Handle, HandleScrews, Side,
};
use flapwright_model::edges::Edges;
use flapwright_model::job::Job;
use flapwright_model::length::Unit;
use flapwright_model::part::LeafId;
use flapwright_rules::finding::Severity;

/// Applies the first remedy: see [`clears`].
fn first_clears(job: &Job, name: &str) -> Job {
    clears(job, &found(job, name)[0], 0)
}

/// Two boxes of the tests' kind, the second so far along the wall, with the top reveals given.
fn two_boxes(along: f64, tops: [f64; 2]) -> Job {
    let mut job = job(wall_box(), card());
    let mut second = wall_box();
    second.name = "second box".to_owned();
    second.place = Place {
        along_wall: along,
        above_floor: 0.0,
    };
    add_box(&mut job, second);
    for (it, top) in job.boxes.iter_mut().zip(tops) {
        it.body.door = Some(door(Edges {
            top,
            ..Edges::all(3.0)
        }));
    }
    job.give_ids();
    job
}

#[test]
fn neighbouring_doors_with_other_reveals_are_uneven() {
    const NAME: &str = "uneven-reveals";
    // The setting: 1.6 mm. Boxes are 800 wide; 25 mm apart they are still side by side.
    for (along, tops, expected) in [
        (800.0, [3.0, 3.0], 0),
        (800.0, [3.0, 4.6], 0),
        (800.0, [3.0, 4.61], 1),
        (800.0, [4.61, 3.0], 1),
        (825.0, [3.0, 6.0], 1),
        (825.1, [3.0, 6.0], 0),
        // A grip stands past its box on purpose.
        (800.0, [3.0, -10.0], 0),
    ] {
        let it = found(&two_boxes(along, tops), NAME);
        assert_eq!(it.len(), expected, "{along} {tops:?}");
    }
    let after = first_clears(&two_boxes(800.0, [3.0, 6.0]), NAME);
    let reveal = match &after.boxes[1].body.door.as_ref().unwrap().fit {
        DoorFit::Overlay { reveals } => reveals.top,
        DoorFit::Inset { .. } => unreachable!("an overlay door"),
    };
    assert_close(reveal, 3.0);
}

#[test]
fn boxes_at_other_heights_are_not_compared() {
    let mut job = two_boxes(800.0, [3.0, 9.0]);
    job.boxes[1].place.above_floor = 5.0;
    assert_eq!(found(&job, "uneven-reveals"), []);
}

#[test]
fn even_reveals_are_a_safe_remedy() {
    let run = flapwright_answer::apply_safe_remedies(&two_boxes(800.0, [3.0, 6.0]));
    assert_eq!(run.applied.len(), 1);
    assert_eq!(run.inspection.findings, []);
}

#[test]
fn rows_off_the_fitting_s_grid_are_a_note() {
    const NAME: &str = "off-the-grid";
    // The fitting's bores lie at 82: 82 - 50 = 32, 82 - 18 = 64.
    for (first, expected) in [(50.0, 0), (18.0, 0), (50.04, 0), (50.06, 1), (41.0, 1)] {
        assert_eq!(found(&with_rows(first), NAME).len(), expected, "{first}");
    }
    let it = &found(&with_rows(41.0), NAME)[0];
    assert_eq!(it.severity, Severity::Note);
    // 82 - 41 = 41 = 32 + 9.
    assert_close(it.numbers[0].value, 9.0);
    first_clears(&with_rows(41.0), NAME);
    let mut off = with_rows(41.0);
    off.settings.grid_step = 0.0;
    assert_eq!(found(&off, NAME), []);
    // Bores that are no whole steps apart fit no row.
    let mut card = card();
    card.side_bores[1] = side_bore(84.0, 137.0);
    let mut uneven = with_rows(41.0);
    uneven.cards[0].card = card;
    assert_eq!(found(&uneven, NAME), []);
}

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
fn doors_that_look_alike_are_drilled_alike() {
    const NAME: &str = "mirrored-pair-differs";
    let mut job = two_boxes(1000.0, [3.0, 3.0]);
    assert_eq!(found(&job, NAME), []);
    // The setting: 0.2 mm. Packing moves the bores of both fittings inward.
    for (packing, expected) in [(0.2, 0), (0.21, 1), (2.0, 1)] {
        let door = job.boxes[1].body.door.as_mut().unwrap();
        door.fitting.as_mut().unwrap().packing = packing;
        assert_eq!(found(&job, NAME).len(), expected, "{packing}");
    }
    assert_close(found(&job, NAME)[0].numbers[0].value, 2.0);
    // A box of another width is not taken for the first.
    job.boxes[1].width = 801.0;
    assert_eq!(found(&job, NAME), []);
}

#[test]
fn mirrored_doors_are_a_pair() {
    // Reveals 3 and 5 against 5 and 3: the doors are mirror images.
    let mut job = two_boxes(1000.0, [3.0, 3.0]);
    for (it, (left, right)) in job.boxes.iter_mut().zip([(3.0, 5.0), (5.0, 3.0)]) {
        it.body.door = Some(door(Edges {
            left,
            right,
            ..Edges::all(3.0)
        }));
    }
    assert_eq!(found(&job, "mirrored-pair-differs"), []);
    job.boxes[1].body.door = Some(door(Edges {
        left: 4.0,
        right: 4.0,
        ..Edges::all(3.0)
    }));
    // The middle between both: its bores lie 1 mm off either.
    assert_close(
        found(&job, "mirrored-pair-differs")[0].numbers[0].value,
        1.0,
    );
}

#[test]
fn cups_at_the_side_of_a_lifted_door_are_found() {
    const NAME: &str = "side-hinge-bores-on-lift-door";
    let with_cup = |diameter, across| {
        let mut job = job(wall_box(), card());
        let taken =
            flapwright_rules::placement::taken_over::bores_now(&inspect(&job).boxes[0], DOOR);
        let cup = DrilledBore {
            leaf: LeafId::Only,
            from_side: Side::Left,
            across,
            from_end: End::Bottom,
            along: 100.0,
            diameter,
            depth: 12.5,
            purpose: "hinge cup".to_owned(),
        };
        let bores = taken.into_iter().chain([cup]).collect();
        the_job_door(&mut job, 0).bores_follow = BoreReference::AsDrilled(bores);
        job
    };
    for (diameter, across, expected) in [
        (35.0, 22.0, 1),
        (26.0, 40.0, 1),
        (25.9, 22.0, 0),
        (40.0, 25.0, 1),
        (40.1, 25.0, 0),
        (35.0, 40.1, 0),
    ] {
        let it = found(&with_cup(diameter, across), NAME);
        assert_eq!(
            it.len(),
            expected,
            "{diameter} mm across, {across} from the edge"
        );
    }
    let after = first_clears(&with_cup(35.0, 22.0), NAME);
    assert_eq!(inspect(&after).findings, []);
}

#[test]
fn cups_that_the_fitting_asks_for_are_no_side_hinges() {
    let mut job = job(wall_box(), with_hinges(card()));
    let taken = flapwright_rules::placement::taken_over::bores_now(&inspect(&job).boxes[0], DOOR);
    the_job_door(&mut job, 0).bores_follow = BoreReference::AsDrilled(taken);
    assert_eq!(inspect(&job).findings, []);
}

#[test]
fn inches_that_are_no_64ths_add_up_no_longer() {
    const NAME: &str = "rounding-drift";
    // 18 mm = 45.35/64, 3 mm = 7.56/64, 15 mm = 37.80/64: 8 + 38 = 46 against 45.
    let mut metric = job(wall_box(), card());
    assert_eq!(found(&metric, NAME), []);
    metric.unit = Unit::Inch;
    let it = &found(&metric, NAME)[0];
    assert_eq!(it.severity, Severity::Note);
    assert_eq!(
        it.message,
        "rounding-drift.drifts: wrong 6, all 6, largest_drift 0.4 mm"
    );
    // 3/4 in = 48/64 and 1/8 in = 8/64: all is whole.
    let inch = 25.4;
    let mut it = wall_box();
    (it.width, it.height) = (32.0 * inch, 24.0 * inch);
    it.left = panel(0.75 * inch);
    it.right = panel(0.75 * inch);
    it.top = across(0.75 * inch);
    it.bottom = across(0.75 * inch);
    it.body.door = Some(door(Edges::all(0.125 * inch)));
    let mut whole = job(it, card());
    whole.unit = Unit::Inch;
    assert_eq!(found(&whole, NAME), []);
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
