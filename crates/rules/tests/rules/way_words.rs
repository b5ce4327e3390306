//! What the checks on the way of a door say, and each face of what stands in its way.
//!
//! The test card's axis is 4 below the underside of the top and 2 behind the side fronts, at 578
//! above the box's own underside; boxes hang at 1500. The door's back is 4 and its front 23 before
//! the axis, its top edge 19 above and its bottom edge 575 below it. Depth counts from the wall: the
//! side fronts are at 330, the axis at 328.

use crate::common::*;
use crate::findings::*;
use flapwright_model::cabinet::Place;
use flapwright_model::card::{BackFrom, OpeningKind, PerSize};
use flapwright_model::door::{DoorFit, Handle};
use flapwright_model::edges::Edges;
use flapwright_model::edit::apply;
use flapwright_model::id::ObstacleId;
use flapwright_model::job::Job;
use flapwright_model::linkage::{Bodies, Pivot};
use flapwright_model::part::Subject;
use flapwright_model::room::{Extent, Obstacle};
use flapwright_rules::finding::{Severity, Worse};

/// sqrt(19^2 + 23^2): how far the top front corner is from the axis.
const RADIUS: f64 = 29.832_867_78;

/// A flap that ends at this angle, its box this far along the wall and up.
fn flap(end_degrees: f64, along_wall: f64, above_floor: f64) -> Job {
    let mut card = card();
    card.linkage.end_degrees = end_degrees;
    let mut wall_box = wall_box();
    wall_box.place = Place {
        along_wall,
        above_floor,
    };
    let mut job = job(wall_box, card);
    job.room.ceiling = 5000.0;
    job
}

fn with_handle(job: &mut Job, projection: f64) {
    the_job_door(job, 0).handle = Some(Handle {
        mass: 0.1,
        up: 30.0,
        right_of_middle: 0.0,
        projection,
        length: 160.0,
        screws: None,
    });
}

const CEILING: &str = "door-hits-ceiling";

/// Ends at 80 degrees, where its lower edge is still below its top corner; the ceiling is so far
/// above the highest place of that corner.
fn under(left: f64) -> Job {
    let mut job = flap(80.0, 0.0, 1500.0);
    job.room.ceiling = 1500.0 + 578.0 + RADIUS + left;
    job
}

#[test]
fn a_door_that_meets_the_ceiling_says_from_where_on_and_what_it_needs() {
    // The corner starts 39.56 degrees above level; it is 3 below its highest place where the sine
    // is 26.833 / 29.833, at 64.08 degrees: 24.52 on. The way is looked at in 48 pieces, the first
    // that comes so high is that from 23.33 to 25.
    let met = found(&under(-3.0), CEILING).remove(0);
    assert_eq!(
        met.message,
        "door-hits-ceiling.hits: from 23°, over 3 mm, left_below_the_ceiling -3 mm"
    );
    assert_numbers(
        &met,
        &[("left_below_the_ceiling", -3.0, "mm", Worse::Smaller)],
    );
    assert_eq!(met.subjects, [FIRST_DOOR]);
    assert_eq!(
        met.remedies[0].effects,
        "effect.underside: was 1500 mm, is 1495 mm; effect.bores-stay"
    );
}

#[test]
fn a_door_close_to_the_ceiling_says_what_is_left_and_what_is_wanted() {
    let mut job = under(1.5);
    let close = found(&job, CEILING).remove(0);
    assert_eq!(
        close.message,
        "door-hits-ceiling.near: left_below_the_ceiling 1.5 mm, wanted 2 mm"
    );
    assert_numbers(
        &close,
        &[("left_below_the_ceiling", 1.5, "mm", Worse::Smaller)],
    );
    // 0.5 is wanting: a whole millimetre lower.
    assert_eq!(close.remedies[0].kind, "remedy.lower-box: by 1 mm");
    job.settings.least_clearance = 1.4;
    assert_eq!(severities(&job, CEILING), []);
    job.settings.least_clearance = 1.6;
    assert_eq!(severities(&job, CEILING), [Severity::Caution]);
}

#[test]
fn the_path_tolerance_of_the_card_is_added_below_the_ceiling() {
    let mut job = under(6.0);
    job.cards[0].card.linkage.path_tolerance = 4.0;
    assert_eq!(severities(&job, CEILING), []);
    job.cards[0].card.linkage.path_tolerance = 4.1;
    assert_eq!(severities(&job, CEILING), [Severity::Caution]);
    job.cards[0].card.linkage.path_tolerance = 6.1;
    assert_eq!(severities(&job, CEILING), [Severity::Stop]);
}

#[test]
fn a_box_is_hung_lower_down_to_the_floor_and_no_further() {
    // 3 into the ceiling and 2 of clearance: 5 lower.
    let at = |above_floor: f64| {
        let mut job = flap(80.0, 0.0, above_floor);
        job.room.ceiling = above_floor + 578.0 + RADIUS - 3.0;
        found(&job, CEILING)[0].remedies.len()
    };
    assert_eq!([at(5.0), at(4.9)], [1, 0]);
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

const REACH: &str = "handle-out-of-reach";

#[test]
fn the_hand_takes_hold_of_the_handle_or_of_the_lower_edge() {
    // Level, the middle of the lower edge (11.5 + 2 = 13.5 before the axis) is 13.5 above the
    // axis, the middle of a handle that stands out 30 (23 + 15 before it) 38. 20 up are 1.5 and 26
    // above the reach of 1950.
    let mut job = flap(90.0, 0.0, 1950.0 - 578.0 - 12.0);
    let edge = found(&job, REACH).remove(0);
    assert_eq!(edge.severity, Severity::Caution);
    assert_eq!(
        edge.message,
        "handle-out-of-reach.lower-edge: limit 1950 mm, height_of_the_grip 1951.5 mm"
    );
    assert_numbers(
        &edge,
        &[("height_of_the_grip", 1951.5, "mm", Worse::Greater)],
    );
    assert_eq!(edge.subjects, [FIRST_DOOR]);
    with_handle(&mut job, 30.0);
    let handle = found(&job, REACH).remove(0);
    assert_eq!(
        handle.message,
        "handle-out-of-reach.handle: limit 1950 mm, height_of_the_grip 1976 mm"
    );
    job.settings.highest_reach = 1976.1;
    assert_eq!(severities(&job, REACH), []);
    job.settings.highest_reach = 1975.9;
    assert_eq!(severities(&job, REACH), [Severity::Caution]);
}

#[test]
fn hanging_lower_is_no_remedy_that_is_applied_unseen_and_is_undone() {
    let before = under(1.5);
    let mut job = before.clone();
    let remedy = found(&job, CEILING).remove(0).remedies.remove(0);
    assert!(!remedy.safe);
    let undo = apply(&mut job, remedy.edit).expect("a sound job");
    assert_close(job.boxes[0].place.above_floor, 1499.0);
    assert_eq!(severities(&job, CEILING), []);
    apply(&mut job, undo).expect("undone");
    assert_eq!(job, before);
}

#[test]
fn an_inset_flap_in_a_face_frame_swings_up_to_the_rail_that_is_above_it() {
    // The rail hangs 12 below the underside at 582: its own is at 570. The axis is 40 below the
    // door's top edge and 9 behind its front: the front top corner is 41 from it (9, 40, 41 is a
    // Pythagorean triple) and rises by 1. The panel itself is 12 further up.
    let with = |gap: f64| {
        let mut job = flap(100.0, 0.0, 1500.0);
        job.settings.weights.remove("top-edge-hits-panel");
        let mut frame = face_frame(20.0, 40.0, 0.0);
        frame.overhang.top = 12.0;
        job.boxes[0].frame = Some(frame);
        let it = the_job_door(&mut job, 0);
        it.fit = DoorFit::Inset {
            gaps: Edges {
                top: gap,
                ..Edges::all(3.0)
            },
            set_back: 0.0,
        };
        // The door's front is level with the frame's, 20 before the sides; what is counted from the
        // frame's front counts from 19 behind that.
        job.cards[0].card.linkage.front = BackFrom::FrameFront;
        job.cards[0].card.linkage.bodies = Bodies::FixedAxis {
            axis: Pivot {
                down: PerSize::All(12.0 + gap + 40.0),
                back: PerSize::All(-10.0),
            },
        };
        let report = inspect(&job);
        let door = the_door(&report.boxes[0], 0);
        let axis = door.axis.expect("the flap turns about an axis");
        assert_close(door.edges.top - axis.y, 40.0);
        assert_close(-door.front - axis.x, 9.0);
        severities(&job, "top-edge-hits-panel")
    };
    assert_eq!(with(1.1), []);
    assert_eq!(with(0.9), [Severity::Stop]);
}
