//! What the checks on symmetry, neighbours, rows, wear and weight say: words and numbers, worked by
//! hand on the plain box (door 794 by 594, sides 322 by 600, bores of the fitting 82 below the top
//! end of the side, 29 in from the door's sides).

use crate::common::*;
use crate::findings::*;
use flapwright_model::cabinet::{Place, WallBox};
use flapwright_model::card::{Card, FittedSides, OpeningKind};
use flapwright_model::door::{
    BoreReference, DoorFit, DrilledBore, End, Handle, HandleScrews, Leaves, Side,
};
use flapwright_model::edges::{Edge, Edges};
use flapwright_model::job::Job;
use flapwright_model::length::Unit;
use flapwright_model::lift::{Carries, Lift, SpringRow};
use flapwright_model::material::Stiffness;
use flapwright_model::part::{LeafId, Part, Subject};
use flapwright_rules::finding::Severity;

/// A second box like the first, 1000 along the wall, its fitting packed out by 2.
fn two() -> Job {
    let mut job = job(wall_box(), card());
    let mut second = wall_box();
    second.name = "second box".to_owned();
    second.place = Place {
        along_wall: 1000.0,
        above_floor: 0.0,
    };
    add_box(&mut job, second);
    job
}

fn packed(job: &mut Job, index: usize, packing: f64) {
    let door = job.boxes[index].body.door.as_mut().expect("a door");
    door.fitting.as_mut().expect("a fitting").packing = packing;
}

const PAIR: &str = "mirrored-pair-differs";

#[test]
fn doors_that_look_alike_and_are_drilled_differently_are_named() {
    let mut job = two();
    packed(&mut job, 1, 2.0);
    let it = the_only(&job, PAIR);
    says(
        &it,
        "mirrored-pair-differs.apart: other a door, largest_difference 2 mm",
    );
    assert_eq!(
        it.subjects,
        [door_subject(&job, 0, 0), door_subject(&job, 1, 0)]
    );
    // A third like the first raises nothing more, one like the second does.
    let mut third = copy_of(&job.boxes[0]);
    third.place.along_wall = 2000.0;
    add_box(&mut job, third);
    assert_eq!(found(&job, PAIR).len(), 1);
    packed(&mut job, 2, 2.0);
    assert_eq!(found(&job, PAIR).len(), 2);
}

#[test]
fn doors_with_another_number_of_bores_or_other_drills_say_so() {
    let with = |change: fn(&mut Card)| {
        let mut job = two();
        let mut other = card();
        other.name = "Curlew".to_owned();
        change(&mut other);
        let curlew = add_card(&mut job, other);
        let door = job.boxes[1].body.door.as_mut().expect("a door");
        door.fitting.as_mut().expect("a fitting").card = curlew;
        the_only(&job, PAIR)
    };
    let more = with(|card| card.door_bores[0].bores.push(door_bore(14.0, 200.0)));
    says(
        &more,
        "mirrored-pair-differs.other-count: other a door, bores 4, others 6",
    );
    assert_eq!(more.numbers, [], "no distance can be given");
    let wider = with(|card| card.door_bores[0].bores[0].drill.diameter = 5.0);
    says(
        &wider,
        "mirrored-pair-differs.other-diameters: other a door",
    );
}

#[test]
fn doors_that_do_not_look_alike_are_not_compared() {
    let differs = |change: fn(&mut WallBox)| {
        let mut job = two();
        packed(&mut job, 1, 2.0);
        change(&mut job.boxes[1]);
        found(&job, PAIR).len()
    };
    assert_eq!(differs(|_| ()), 1);
    // To a tenth of a millimetre they are alike.
    assert_eq!(differs(|it| it.width += 0.04), 1);
    assert_eq!(differs(|it| it.height += 0.04), 1);
    assert_eq!(differs(|it| it.width += 0.2), 0);
    assert_eq!(differs(|it| it.height += 0.2), 0);
    assert_eq!(differs(|it| it.depth += 0.2), 0);
    let leaf_of = |it: &mut WallBox, thickness: f64| {
        let door = it.body.door.as_mut().expect("a door");
        door.leaves = Leaves::One(leaf(thickness));
    };
    let mut job = two();
    packed(&mut job, 1, 2.0);
    leaf_of(&mut job.boxes[1], 19.04);
    assert_eq!(found(&job, PAIR).len(), 1);
    leaf_of(&mut job.boxes[1], 20.0);
    assert_eq!(found(&job, PAIR), []);
}

#[test]
fn doors_of_one_box_and_screws_of_handles_make_no_pair() {
    let mut job = two();
    let door = job.boxes[1].body.door.as_mut().expect("a door");
    door.handle = Some(Handle {
        mass: 0.1,
        up: 40.0,
        right_of_middle: 0.0,
        projection: 20.0,
        length: 160.0,
        screws: Some(HandleScrews {
            spacing: 128.0,
            diameter: 5.0,
        }),
    });
    assert_eq!(
        found(&job, PAIR),
        [],
        "the handle is no bore of the fitting"
    );
    // No bores at all in either back.
    for it in &mut job.boxes {
        let door = it.body.door.as_mut().expect("a door");
        door.bores_follow = BoreReference::AsDrilled(Vec::new());
    }
    assert_eq!(found(&job, PAIR), []);
}

#[test]
fn rows_off_the_grid_say_where_to_begin() {
    let it = the_only(&with_rows(41.0), "off-the-grid");
    says(&it, "off-the-grid.below: below_the_grid 9 mm");
    assert_eq!(it.subjects, [Subject::Part(part_id(Part::LeftSide))]);
    assert_eq!(it.remedies[0].kind, "remedy.move-rows");
    assert_eq!(
        it.remedies[0].effects,
        "effect.first-shelf-bore: was 41 mm, is 50 mm"
    );
    assert!(!it.remedies[0].safe, "shelves would hang elsewhere");
    clears(&with_rows(41.0), &it, 0);
    // 82 - 100 = -18 = -32 + 14.
    let above = the_only(&with_rows(100.0), "off-the-grid");
    assert_close(number(&above, "below_the_grid"), 14.0);
    clears(&with_rows(100.0), &above, 0);
    // Only the right side has bores of the fitting.
    let mut right = with_rows(41.0);
    right.cards[0].card.sides = FittedSides::RightOnly;
    assert_eq!(
        the_only(&right, "off-the-grid").subjects,
        [Subject::Part(part_id(Part::RightSide))]
    );
}

#[test]
fn a_fitting_at_one_side_says_what_twists_the_door() {
    const NAME: &str = "one-sided-fitting-racks";
    let one = |sides, card: Card, width: f64| {
        let mut job = weighed(6.0, 0.0, Card { sides, ..card });
        job.boxes[0].width = width;
        the_only(&job, NAME)
    };
    // 700 wide: the door is 694 by 594. 6 kg x 9.80665 x 0.347 m = 20.417 N·m.
    let hinged = one(FittedSides::LeftOnly, with_hinges(card()), 700.0);
    says(
        &hinged,
        "one-sided-fitting-racks.twists: card \"Plover\", side left, width_beyond_height 100 mm, \
         twist 20.4 N·m",
    );
    says(
        &hinged,
        "one-sided-fitting-racks.wide: width 694 mm, height 594 mm",
    );
    assert_close(number(&hinged, "width_beyond_height"), 100.0);
    let twist = number(&hinged, "twist");
    assert!((twist - 20.417_445).abs() < 1e-6, "{twist}");
    let free = one(FittedSides::RightOnly, card(), 400.0);
    says(&free, "card \"Plover\", side right, ");
    says(&free, "one-sided-fitting-racks.alone: width 394 mm");
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

/// Sides of 3/4 in, a box of 31 1/2 in: every chain is whole, until the reveals say otherwise.
fn inches(left: f64, right: f64) -> Job {
    let inch = 25.4;
    let mut it = wall_box();
    (it.width, it.height) = (31.5 * inch, 24.0 * inch);
    it.left = panel(0.75 * inch);
    it.right = panel(0.75 * inch);
    it.top = across(0.75 * inch);
    it.bottom = across(0.75 * inch);
    it.body.door = Some(door(Edges {
        left,
        right,
        ..Edges::all(0.125 * inch)
    }));
    let mut job = job(it, card());
    job.unit = Unit::Inch;
    job
}

#[test]
fn a_chain_that_adds_up_no_longer_is_shown() {
    const NAME: &str = "rounding-drift";
    assert_eq!(found(&inches(3.175, 3.175), NAME), []);
    // 3.3 mm are 8.315/64 in, so 8; the door, 800.1 - 6.6 = 793.5, is 1999.37/64, so 1999; the box
    // is 2016: 8 + 1999 + 8 = 2015. Overlay and reveal of a side still add up: 40 + 8 = 48.
    let it = the_only(&inches(3.3, 3.3), NAME);
    says(
        &it,
        "rounding-drift.drifts: wrong 1, all 6, largest_drift 0.4 mm",
    );
    assert_close(number(&it, "largest_drift"), 25.4 / 64.0);
    assert_eq!(it.reasons.len(), 1, "{:?}", it.reasons);
    assert_eq!(
        it.reasons[0],
        "rounding-drift.sum: what (chain.reveals-and-width: door a door), parts [3.3 mm; 793.5 mm; 3.3 mm], \
         whole 800.1 mm"
    );
    assert_eq!(it.severity, Severity::Note);
}

#[test]
fn a_tweak_at_the_left_or_right_takes_the_width_out_of_the_sum() {
    const NAME: &str = "rounding-drift";
    for edge in [Edge::Left, Edge::Right] {
        let mut job = inches(3.3, 3.3);
        *the_job_door(&mut job, 0).tweaks.at_mut(edge) = 1.0;
        assert_eq!(found(&job, NAME), [], "{edge:?}");
    }
    let mut job = inches(3.3, 3.3);
    *the_job_door(&mut job, 0).tweaks.at_mut(Edge::Top) = 1.0;
    assert_eq!(found(&job, NAME).len(), 1);
}

fn with_cups(cups: &[(Side, f64, End, f64)]) -> Job {
    let mut job = job(wall_box(), card());
    let taken = flapwright_rules::placement::taken_over::bores_now(&inspect(&job).boxes[0], DOOR);
    let cups = cups
        .iter()
        .map(|&(from_side, across, from_end, along)| DrilledBore {
            leaf: LeafId::Only,
            from_side,
            across,
            from_end,
            along,
            diameter: 35.0,
            depth: 12.5,
            purpose: "hinge cup".to_owned(),
        });
    let bores = taken.into_iter().chain(cups).collect();
    the_job_door(&mut job, 0).bores_follow = BoreReference::AsDrilled(bores);
    job
}

/// How many bores the list of a drilled door has.
fn drilled(job: &Job) -> usize {
    let door = job.boxes[0].body.door.as_ref();
    match &door.expect("a door").bores_follow {
        BoreReference::AsDrilled(bores) => bores.len(),
        BoreReference::Fitting | BoreReference::Edges { .. } => panic!("no longer as drilled"),
    }
}

#[test]
fn side_hinge_cups_are_listed_and_plugged() {
    const NAME: &str = "side-hinge-bores-on-lift-door";
    let one = with_cups(&[(Side::Left, 22.0, End::Bottom, 100.0)]);
    let it = the_only(&one, NAME);
    says(
        &it,
        "side-hinge-bores-on-lift-door.cups: cups_at_the_side 1",
    );
    says(
        &it,
        "side-hinge-bores-on-lift-door.was-side-hung: largest 35 mm",
    );
    assert_close(number(&it, "cups_at_the_side"), 1.0);
    // 594 - 100 = 494 below the top edge.
    assert_eq!(
        it.reasons[1],
        "side-hinge-bores-on-lift-door.cup: bore 5, purpose \"hinge cup\", diameter 35 mm, from_edge 22 mm, \
         down 494 mm"
    );
    assert_eq!(it.remedies[0].kind, "remedy.plug-cups");
    assert_eq!(it.remedies[0].effects, "effect.fewer-bores: bores 1");
    assert!(!it.remedies[0].safe, "plugging is work");
    let after = clears(&one, &it, 0);
    assert_eq!(drilled(&after), 4, "the fitting's own bores stay");

    // From either side and either end; one in the middle of the door is no side hinge's.
    let three = with_cups(&[
        (Side::Left, 22.0, End::Top, 60.0),
        (Side::Right, 22.0, End::Bottom, 60.0),
        (Side::Right, 22.0, End::Top, 260.0),
        (Side::Left, 300.0, End::Top, 60.0),
    ]);
    let it = the_only(&three, NAME);
    says(&it, "cups_at_the_side 3");
    assert_eq!(it.subjects.len(), 1 + 3, "the leaf and three bores");
    let after = clears(&three, &it, 0);
    assert_eq!(
        drilled(&after),
        5,
        "four of the fitting and one in the middle"
    );
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

#[test]
fn a_size_that_covers_part_of_the_mass_says_which_end_is_out() {
    const NAME: &str = "size-covers-part-of-mass-range";
    let with = |min, max| {
        let mut card = card();
        card.sizes[0].carries = Carries::Mass { min, max };
        the_only(&weighed(6.0, 0.3, card), NAME)
    };
    says(
        &with(1.0, 6.1),
        "what (load-name.mass), least 1.00 kg, most 6.10 kg, likely 6.00 kg",
    );
    says(&with(1.0, 6.1), "over 0.20 kg, greatest_load 6.30 kg");
    says(&with(5.9, 20.0), "under 0.20 kg, least_load 5.70 kg");
    says(&with(5.9, 6.1), "over 0.20 kg, greatest_load 6.30 kg");
    says(&with(5.9, 6.1), "under 0.20 kg, least_load 5.70 kg");
}

#[test]
fn neighbouring_reveals_are_said_with_both_numbers() {
    const NAME: &str = "uneven-reveals";
    let with = |change: fn(&mut Job)| {
        let mut job = two();
        job.boxes[1].place.along_wall = 800.0;
        change(&mut job);
        job
    };
    let reveals = |job: &mut Job, index: usize, edge: Edge, to: f64| {
        let door = job.boxes[index].body.door.as_mut().expect("a door");
        if let DoorFit::Overlay { reveals } = &mut door.fit {
            *reveals.at_mut(edge) = to;
        }
    };
    let mut top = with(|_| ());
    reveals(&mut top, 1, Edge::Top, 6.0);
    let it = the_only(&top, NAME);
    says(
        &it,
        "uneven-reveals.differ: edge top, other a door, own 6 mm, others 3 mm, \
         difference_of_the_reveals 3 mm",
    );
    says(&it, "uneven-reveals.limit: limit 1.6 mm");
    assert_eq!(
        it.subjects,
        [door_subject(&top, 1, 0), door_subject(&top, 0, 0)]
    );
    assert_eq!(it.remedies[0].kind, "remedy.even-reveals");
    assert_eq!(
        it.remedies[0].effects,
        "effect.reveal: door a door, edge top, was 6 mm, is 3 mm"
    );
    assert!(it.remedies[0].safe);
    clears(&top, &it, 0);
    let mut bottom = with(|_| ());
    reveals(&mut bottom, 0, Edge::Bottom, 6.0);
    let it = the_only(&bottom, NAME);
    assert_close(number(&it, "difference_of_the_reveals"), 3.0);
    assert_eq!(
        it.remedies[0].effects,
        "effect.reveal: door a door, edge bottom, was 3 mm, is 6 mm"
    );
    clears(&bottom, &it, 0);
    // The order of the boxes in the job is not their order along the wall.
    let mut turned = top.clone();
    turned.boxes.swap(0, 1);
    says(
        &the_only(&turned, NAME),
        "uneven-reveals.differ: edge top, ",
    );
    // A tweak moves the edge as well: 3 - 2 = 1 against 3.
    let mut tweaked = with(|_| ());
    let door = tweaked.boxes[1].body.door.as_mut().expect("a door");
    door.tweaks.top = 2.0;
    says(
        &the_only(&tweaked, NAME),
        "own 1 mm, others 3 mm, difference_of_the_reveals 2 mm",
    );
    // Inset doors have gaps and no reveals.
    let inset = with(|job| {
        let door = job.boxes[1].body.door.as_mut().expect("a door");
        door.fit = DoorFit::Inset {
            gaps: Edges::all(9.0),
            set_back: 0.0,
        };
    });
    assert_eq!(found(&inset, NAME), []);
}

#[test]
fn boxes_are_neighbours_when_level_and_side_by_side() {
    const NAME: &str = "uneven-reveals";
    let at = |along: f64, up: f64| {
        let mut job = two();
        job.boxes[1].place = Place {
            along_wall: along,
            above_floor: up,
        };
        let door = job.boxes[1].body.door.as_mut().expect("a door");
        door.fit = DoorFit::Overlay {
            reveals: Edges {
                bottom: 6.0,
                ..Edges::all(3.0)
            },
        };
        found(&job, NAME).len()
    };
    assert_eq!(at(800.0, 0.0), 1);
    assert_eq!(at(800.0, 0.09), 1);
    assert_eq!(at(800.0, 0.11), 0);
    assert_eq!(at(799.95, 0.0), 1);
    // 0.2 over each other is no side by side.
    assert_eq!(at(799.8, 0.0), 0);
}

#[test]
fn the_wall_is_told_part_by_part() {
    let mut job = weighed(6.0, 0.5, card());
    let it = the_only(&job, "wall-fixing-reminder");
    // See the test of the sum: 14.149 kg, 6.5 kg, 47.972 kg.
    says(&it, "wall-fixing-reminder.loaded: loaded_mass 68.62 kg");
    says(
        &it,
        "wall-fixing-reminder.parts: body 14.15 kg, doors 6.50 kg, load 47.97 kg",
    );
    // A frame 20 thick, its members 30 wide and flush with the panels' inner faces (764 by 564): two
    // stiles of 564 + 60 and two rails of 764. 2 x (624 + 764) x 30 x 20 mm3 at 720 kg/m3 = 1.199 kg.
    job.boxes[0].frame = Some(face_frame(20.0, 30.0, 0.0));
    let framed = the_only(&job, "wall-fixing-reminder");
    let more = number(&framed, "loaded_mass") - number(&it, "loaded_mass");
    assert!((more - 1.199_232).abs() < 1e-6, "{more}");
}

#[test]
fn a_sagging_door_says_the_limit_and_how_thick_it_would_have_to_be() {
    const NAME: &str = "wide-door-sags";
    // See the tests of this check: 833.94 / E over 736 mm between the arms, at most 736 / 144.
    let mut job = weighed(6.0, 0.0, card());
    job.cards[0].card.linkage.end_degrees = 90.0;
    job.materials[0].stiffness = Some(Stiffness {
        along: 80.0,
        across: None,
        source: "invented".to_owned(),
    });
    let it = the_only(&job, NAME);
    // 833.94 / 80 = 10.424 against 5.111.
    assert!(
        (number(&it, "sag") - 10.424).abs() < 1e-3,
        "{:?}",
        it.numbers
    );
    assert_close(number(&it, "limit"), 736.0 / 144.0);
    says(
        &it,
        "limit 5.1 mm; wide-door-sags.span: span 736 mm, ratio 144",
    );
    // 19 x sqrt(10.424 / 5.111) = 27.13, so 28.
    assert_eq!(it.remedies[0].kind, "remedy.thickness: to 28 mm");
    assert_eq!(
        it.remedies[0].effects,
        "effect.thickness: was 19 mm, is 28 mm; effect.sags-at-most: sag 4.8 mm"
    );
    assert!(!it.remedies[0].safe);
    clears(&job, &it, 0);
    // Nobody makes a door 60 thick: 19 x sqrt(s / 5.111) = 60 at s = 50.97, so at E = 16.36.
    let remedies = |along: f64| {
        let mut job = job.clone();
        job.materials[0].stiffness.as_mut().expect("known").along = along;
        the_only(&job, NAME).remedies.len()
    };
    assert_eq!(remedies(16.4), 1);
    assert_eq!(remedies(16.3), 0);
}

#[test]
fn a_door_that_springs_open_says_by_how_much() {
    let mut card = card();
    card.sizes[0].lift = Lift::Spring {
        table: vec![SpringRow {
            degrees: 0.0,
            weakest: 5.0,
            strongest: 5.0,
        }],
        turns: 10.0,
        friction: 0.5,
    };
    // Closed, 6 kg pull by 0.794 N·m: 5 - 0.794 = 4.206 push, 0.5 of friction hold.
    let it = the_only(&weighed(6.0, 0.0, card), "springs-open");
    says(&it, "springs-open.rises: celsius 40 °C, ");
    says(&it, "springs-open.moments: push 4.2 N·m, friction 0.5 N·m");
    let beyond = number(&it, "push_beyond_friction");
    assert!((beyond - 3.706).abs() < 1e-3, "{beyond}");
}
