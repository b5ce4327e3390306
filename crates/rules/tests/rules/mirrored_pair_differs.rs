//! The check `mirrored-pair-differs`.
//!
//! Worked by hand on the plain box: door 794 by 594, sides 322 by 600, bores of the fitting 82 below
//! the top end of the side, 29 in from the door's sides.

use crate::common::*;
use crate::findings::*;
use crate::worked::{two_boxes, two_packed};
use flapwright_model::cabinet::WallBox;
use flapwright_model::card::Card;
use flapwright_model::door::{BoreReference, Handle, HandleScrews, Leaves};
use flapwright_model::edges::Edges;
use flapwright_model::job::Job;

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

fn packed(job: &mut Job, index: usize, packing: f64) {
    let door = job.boxes[index].body.door.as_mut().expect("a door");
    door.fitting.as_mut().expect("a fitting").packing = packing;
}

const PAIR: &str = "mirrored-pair-differs";

#[test]
fn doors_that_look_alike_and_are_drilled_differently_are_named() {
    let mut job = two_packed();
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
        let mut job = two_packed();
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
        let mut job = two_packed();
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
    let mut job = two_packed();
    packed(&mut job, 1, 2.0);
    leaf_of(&mut job.boxes[1], 19.04);
    assert_eq!(found(&job, PAIR).len(), 1);
    leaf_of(&mut job.boxes[1], 20.0);
    assert_eq!(found(&job, PAIR), []);
}

#[test]
fn doors_of_one_box_and_screws_of_handles_make_no_pair() {
    let mut job = two_packed();
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
