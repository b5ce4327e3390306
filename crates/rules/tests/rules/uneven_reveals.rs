//! The check `uneven-reveals`.
//!
//! Worked by hand on the plain box: door 794 by 594, sides 322 by 600, bores of the fitting 82 below
//! the top end of the side, 29 in from the door's sides.

use crate::common::*;
use crate::findings::*;
use crate::worked::{first_clears, two_boxes, two_packed};
use flapwright_model::cabinet::Place;
use flapwright_model::door::DoorFit;
use flapwright_model::edges::{Edge, Edges};
use flapwright_model::job::Job;

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
fn neighbouring_reveals_are_said_with_both_numbers() {
    const NAME: &str = "uneven-reveals";
    let with = |change: fn(&mut Job)| {
        let mut job = two_packed();
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
        let mut job = two_packed();
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
