//! What fittings make of the demo doors.

use flapwright_answer::inspect;
use flapwright_model::edit::apply;
use flapwright_model::file::read_job;
use flapwright_model::id::DoorId;
use flapwright_model::job::Job;
use flapwright_model::lift::Lift;
use flapwright_rules::mechanics::{largest_lift, mechanics, pick_size};
use flapwright_rules::strut_places::{has_strut, strut_places, use_anchors};

/// The galley; its first door is a flap on a spring.
fn galley() -> Job {
    read_job(include_str!("../../../../assets/demo/houseboat-galley.ron")).expect("the demo job")
}

/// The first door of a job.
fn first(job: &Job) -> DoorId {
    job.boxes[0].doors()[0].id
}

fn on_a_strut() -> Job {
    let mut job = galley();
    let dipper = job.card_named("Dipper").expect("a card").id;
    let edit = pick_size(&job, first(&job), dipper, "3").expect("a door");
    apply(&mut job, edit).expect("a sound job");
    job
}

#[test]
fn the_largest_lift_moment_is_that_of_the_curves() {
    let job = galley();
    let inspection = inspect(&job);
    for (wall_box, report) in job.boxes.iter().zip(&inspection.boxes) {
        let door = report.openings[0].door.as_ref().expect("a door");
        let largest = largest_lift(door).expect("a moving door");
        let found = mechanics(&job, wall_box, report, door.id).expect("a fitting");
        let curves = found.working.expect("a working fitting").curves;
        for point in &curves.points {
            assert!(
                point.lift.likely <= largest.moment.likely + 1e-9,
                "{}: {} at {}",
                report.name,
                point.lift.likely,
                point.s
            );
        }
        assert!(largest.degrees > 0.0 && (0.0..=1.0).contains(&largest.s));
    }
}

#[test]
fn struts_are_placed_only_where_there_is_one() {
    let spring = galley();
    let inspection = inspect(&spring);
    assert!(!has_strut(
        &spring,
        &spring.boxes[0],
        &inspection.boxes[0],
        first(&spring)
    ));
    let job = on_a_strut();
    let inspection = inspect(&job);
    assert!(has_strut(
        &job,
        &job.boxes[0],
        &inspection.boxes[0],
        first(&job)
    ));
    assert!(!has_strut(
        &job,
        &job.boxes[0],
        &inspection.boxes[0],
        DoorId::new(9999)
    ));
}

#[test]
fn limits_start_inside_the_clear_box_and_on_the_door() {
    let job = on_a_strut();
    let inspection = inspect(&job);
    let places =
        strut_places(&job, &job.boxes[0], &inspection.boxes[0], first(&job)).expect("a strut");
    let clear = inspection.boxes[0].openings[0].clear.size();
    let limits = places.limits;
    for (span, most) in [
        (limits.box_down, clear.height),
        (limits.box_back, clear.depth),
    ] {
        assert!(span.min > 0.0 && span.max < most, "{span:?} {most}");
    }
    let door = inspection.boxes[0].openings[0]
        .door
        .as_ref()
        .expect("a door");
    let leaf = door.closed.leaves[0];
    assert!(door.closed.underside_y - limits.door_down.max > leaf.bottom);
    assert_eq!(places.struts.len(), 4);
}

#[test]
fn found_anchors_go_into_the_card_and_the_door_takes_the_size() {
    let job = on_a_strut();
    let inspection = inspect(&job);
    let places =
        strut_places(&job, &job.boxes[0], &inspection.boxes[0], first(&job)).expect("a strut");
    let answers = places
        .search(&places.limits, &mut |_| true)
        .expect("anchors");
    let answer = answers.last().expect("one answer");
    let mut after = job.clone();
    let edit = use_anchors(&job, first(&job), places.card, answer).expect("a card");
    let back = apply(&mut after, edit).expect("a sound job");
    let size = after
        .card_by_id(places.card)
        .and_then(|it| it.size(&answer.name));
    assert!(size.is_some_and(|size| size.lift == Lift::Strut(answer.strut)));
    // The verdict on that size is by the same statics: it holds open and keeps shut.
    let inspection = inspect(&after);
    let found =
        mechanics(&after, &after.boxes[0], &inspection.boxes[0], first(&after)).expect("a fitting");
    assert!(found.working.is_ok(), "{:?}", found.working.err());
    apply(&mut after, back).expect("undone");
    assert_eq!(after, job);
}
