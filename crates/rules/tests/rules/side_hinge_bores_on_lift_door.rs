//! The check `side-hinge-bores-on-lift-door`.
//!
//! Worked by hand on the plain box: door 794 by 594, sides 322 by 600, bores of the fitting 82 below
//! the top end of the side, 29 in from the door's sides.

use crate::common::*;
use crate::findings::*;
use crate::worked::first_clears;
use flapwright_model::door::{BoreReference, DrilledBore, End, Side};
use flapwright_model::job::Job;
use flapwright_model::part::LeafId;

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
