//! The check `door-hits-obstacle`.
//!
//! The test card's axis is 4 below the underside of the top and 2 behind the side fronts. The
//! door's top edge is at 597 (600 less the reveal of 3), its back 2 and its front 21 before the
//! sides; the underside is at 582, so the axis is at 578: h = 19 below the top edge, e = 23 behind
//! the front. The top front corner rises by sqrt(19^2 + 23^2) - 19 = 29.8329 - 19 = 10.8329.
//!
//! The test card's axis is 4 below the underside of the top and 2 behind the side fronts, at 578
//! above the box's own underside; boxes hang at 1500. The door's back is 4 and its front 23 before
//! the axis, its top edge 19 above and its bottom edge 575 below it. Depth counts from the wall: the
//! side fronts are at 330, the axis at 328.

use crate::common::*;
use crate::findings::*;
use crate::worked::{RADIUS, flap, under_ceiling, with_handle};
use flapwright_model::card::{OpeningKind, PerSize};
use flapwright_model::id::ObstacleId;
use flapwright_model::job::Job;
use flapwright_model::linkage::{Bodies, Pivot};
use flapwright_model::part::Subject;
use flapwright_model::room::{Extent, Obstacle};
use flapwright_rules::finding::{Severity, Worse};

fn lamp(from: f64, above_floor: f64) -> Job {
    let mut job = under_ceiling(3000.0);
    job.room.obstacles.push(Obstacle {
        id: ObstacleId::default(),
        name: "lamp".to_owned(),
        along_wall: Extent {
            from,
            to: from + 50.0,
        },
        above_floor: Extent {
            from: above_floor,
            to: above_floor + 100.0,
        },
        // Right over the axis, 2 behind the fronts of a box 330 deep: from 300 to 360.
        from_wall: Extent {
            from: 300.0,
            to: 360.0,
        },
    });
    job
}

#[test]
fn a_door_meets_a_lamp_only_where_it_passes_across_it() {
    const NAME: &str = "door-hits-obstacle";
    let highest = 1500.0 + 578.0 + RADIUS;
    assert_eq!(severities(&lamp(100.0, highest + 2.1), NAME), []);
    assert_eq!(
        severities(&lamp(100.0, highest + 1.5), NAME),
        [Severity::Caution]
    );
    assert_eq!(
        severities(&lamp(100.0, highest - 0.1), NAME),
        [Severity::Stop]
    );
    // The door ends at 797 along the wall.
    assert_eq!(
        severities(&lamp(796.9, highest - 0.1), NAME),
        [Severity::Stop]
    );
    assert_eq!(severities(&lamp(797.0, highest - 0.1), NAME), []);
}

const OBSTACLE: &str = "door-hits-obstacle";

/// A block with these extents along the wall, above the floor and from the wall.
fn block(job: &Job, along: [f64; 2], above: [f64; 2], out: [f64; 2]) -> Vec<Told> {
    let extent = |[from, to]: [f64; 2]| Extent { from, to };
    let mut job = job.clone();
    job.room.obstacles = vec![Obstacle {
        id: ObstacleId::default(),
        name: "lamp".to_owned(),
        along_wall: extent(along),
        above_floor: extent(above),
        from_wall: extent(out),
    }];
    found(&job, OBSTACLE)
}

const WIDE: [f64; 2] = [0.0, 3000.0];

#[test]
fn a_door_that_meets_a_lamp_says_where_on_the_way() {
    // Over the axis, 3 below the highest place of the corner: as with the ceiling above.
    let job = flap(80.0, 0.0, 1500.0);
    let highest = 1500.0 + 578.0 + RADIUS;
    let met = block(&job, WIDE, [highest - 3.0, highest + 100.0], [300.0, 360.0]);
    assert_eq!(met.len(), 1);
    assert_eq!(
        met[0].message,
        "door-hits-obstacle.hits: hits leaf-hits, obstacle \"lamp\", at 23°, gap 0 mm"
    );
    assert_numbers(&met[0], &[("gap", 0.0, "mm", Worse::Smaller)]);
    let [of_door, Subject::Obstacle(_)] = met[0].subjects[..] else {
        panic!("a door and an obstacle: {:?}", met[0].subjects)
    };
    assert_eq!(of_door, FIRST_DOOR);
    let close = block(
        &job,
        WIDE,
        [highest + 1.53, highest + 100.0],
        [300.0, 360.0],
    );
    assert_eq!(close[0].severity, Severity::Caution);
    assert_eq!(
        close[0].message,
        "door-hits-obstacle.near: comes leaf-comes, obstacle \"lamp\", at 51°, gap 1.5 mm"
    );
    // A gap is never said too large, and at most 0.05 too small once it is settled.
    let gap = close[0].numbers[0].value;
    assert!((1.48..=1.53).contains(&gap), "{gap}");
}

#[test]
fn every_face_of_a_block_keeps_the_least_clearance() {
    let job = flap(100.0, 0.0, 1500.0);
    let gives = |above: [f64; 2], out: [f64; 2]| -> Vec<Severity> {
        block(&job, WIDE, above, out)
            .iter()
            .map(|it| it.severity)
            .collect()
    };
    let caution = [Severity::Caution];
    // Its upper face below the closed door's bottom edge, 3 above the box's underside.
    assert_eq!(gives([1000.0, 1503.0 - 2.1], [330.0, 350.0]), []);
    assert_eq!(gives([1000.0, 1503.0 - 1.9], [330.0, 350.0]), caution);
    // Its near face before the lower front corner at its furthest: hypot(575, 23) = 575.460 before
    // the axis, level with it.
    let furthest = 328.0 + 575.46;
    assert_eq!(gives([2000.0, 2150.0], [furthest + 2.1, 1500.0]), []);
    assert_eq!(gives([2000.0, 2150.0], [furthest + 1.9, 1500.0]), caution);
    assert_eq!(
        gives([2000.0, 2150.0], [furthest - 0.1, 1500.0]),
        [Severity::Stop]
    );
    // Its far face behind the closed door, whose back is 2 before the side fronts, below where the
    // top edge swings back.
    assert_eq!(gives([1600.0, 1900.0], [100.0, 332.0 - 2.1]), []);
    assert_eq!(gives([1600.0, 1900.0], [100.0, 332.0 - 1.9]), caution);
}

#[test]
fn a_block_beside_the_door_is_passed_by() {
    // The box begins at 1000 along the wall, its door at 1003; it ends at 1797.
    let job = flap(80.0, 1000.0, 1500.0);
    let gives = |along: [f64; 2]| block(&job, along, [1600.0, 1700.0], [340.0, 500.0]).len();
    assert_eq!(gives([900.0, 1003.0]), 0);
    assert_eq!(gives([900.0, 1003.1]), 1);
    assert_eq!(gives([1797.0, 1900.0]), 0);
    assert_eq!(gives([1796.9, 1900.0]), 1);
}

#[test]
fn a_handle_that_meets_a_pipe_is_named() {
    // The handle stands 30 before the front, which is 21 before the sides, and is 12 high in the
    // middle of a place 30 above the door's edge: from 351 to 381 out, 1527 to 1539 up. The door
    // itself gets to the pipe later.
    let mut job = flap(80.0, 0.0, 1500.0);
    with_handle(&mut job, 30.0);
    let met = block(&job, WIDE, [1531.0, 1535.0], [370.0, 375.0]);
    assert_eq!(met.len(), 1);
    assert_eq!(
        met[0].message,
        "door-hits-obstacle.hits: hits handle-hits, obstacle \"lamp\", at 0°, gap 0 mm"
    );
}

#[test]
fn an_arm_that_meets_a_block_is_named() {
    // Arms from 100 behind the side fronts to 5 behind them, well below the door's top edge, meet
    // a block in the middle of the box at once; the door does not.
    let mut job = flap(80.0, 0.0, 1500.0);
    job.cards[0].card.kind = OpeningKind::ParallelRisingDoor;
    let pivot = |down, back| Pivot {
        down: PerSize::All(down),
        back: PerSize::All(back),
    };
    job.cards[0].card.linkage.bodies = Bodies::Parallel {
        box_pivot: pivot(100.0, 100.0),
        door_pivot: pivot(300.0, 5.0),
        second_down: 40.0,
        second_back: 0.0,
    };
    // The pivot in the box: 582 - 100 = 482 up, 230 from the wall.
    let met = block(&job, WIDE, [1975.0, 1985.0], [225.0, 235.0]);
    assert_eq!(met.len(), 1);
    assert_eq!(
        met[0].message,
        "door-hits-obstacle.hits: hits arm-hits, obstacle \"lamp\", at 0°, gap 0 mm"
    );
}
