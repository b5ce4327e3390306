//! What a thing is called by the program stays when the job changes around it: records, acceptances
//! and bores of a door outlive shelves, names and other boxes.

use crate::common::*;
use crate::findings::*;
use flapwright_answer::{Answer, inspect as inspect_it};
use flapwright_model::acceptance::{Acceptance, Topic};
use flapwright_model::change::{add_box as add_new_box, add_fixed_shelf, remove_shelf};
use flapwright_model::door::{BoreReference, End};
use flapwright_model::edges::Edge;
use flapwright_model::edit::{Edit, apply};
use flapwright_model::id::{BoxId, ObstacleId};
use flapwright_model::job::Job;
use flapwright_model::part::Part;
use flapwright_model::record::RecordState::{Drilled, SheetExported};
use flapwright_model::room::{Extent, Obstacle};
use flapwright_rules::accept::{accept, take_back, without_finding};
use flapwright_rules::finding::Finding;
use flapwright_rules::records::record;

fn done(job: &mut Job, edit: Option<Edit>) {
    apply(job, edit.expect("a change")).expect("it is sound");
}

fn accept_all(job: &mut Job, check: &str) {
    for finding in found(job, check) {
        let edit = accept(job, &finding, "looked at");
        done(job, Some(edit));
    }
}

fn accepted(job: &Job, check: &str) -> Vec<bool> {
    found(job, check)
        .iter()
        .map(|it| it.accepted.is_some())
        .collect()
}

#[test]
fn a_shelf_that_comes_or_goes_leaves_a_drilled_door_as_it_is() {
    // The door is drilled; afterwards its box gets a shelf below and above it, which both go again.
    let mut job = job(wall_box(), card());
    job.boxes[0].body.door.as_mut().expect("a door").tweaks.top = 1.0;
    job.settings.weights.clear();
    let edit = record(&job, &inspect(&job), &[part_id(LEAF)], Drilled);
    done(&mut job, Some(edit));
    accept_all(&mut job, "reveal-out-of-range");
    accept_all(&mut job, "card-unproved");
    let kept = |job: &Job| {
        let report = inspect(job).boxes[0].clone();
        let leaf = report.panel(LEAF).expect("the door is there").clone();
        let bores: Vec<_> = leaf
            .bores
            .iter()
            .map(|it| (it.drill.clone(), it.source))
            .collect();
        let drilled = found(job, "drilled-panel-differs")
            .iter()
            .any(|it| it.about.len() > 1);
        (
            job.boxes[0].records.clone(),
            job.accepted.clone(),
            bores,
            drilled,
        )
    };
    let before = kept(&job);
    let follows = job.boxes[0]
        .door(DOOR)
        .expect("the door")
        .bores_follow
        .clone();
    assert!(matches!(follows, BoreReference::AsDrilled(_)));
    for up in [100.0, 400.0] {
        let edit = add_fixed_shelf(&job, FIRST_BOX, up, across(18.0));
        done(&mut job, edit);
        assert_eq!(kept(&job), before, "with a shelf at {up}");
        assert_eq!(
            job.boxes[0].door(DOOR).expect("the door").bores_follow,
            follows
        );
        let marks = accepted(&job, "card-unproved");
        assert_eq!(marks, [true], "with a shelf at {up}");
        let lost = found(&job, "drilled-panel-differs");
        assert!(
            lost.iter().all(|it| !it.message.contains("no longer")),
            "{lost:?}"
        );
        let shelf = job.boxes[0].fixed_shelves()[0].id;
        let edit = remove_shelf(&job, FIRST_BOX, shelf);
        done(&mut job, edit);
        assert_eq!(kept(&job), before, "without the shelf at {up}");
    }
}

/// The door of each of two boxes is 5 mm off its fitting at the top.
fn two_off() -> Job {
    let mut job = job(wall_box(), card());
    let mut second = wall_box();
    second.place.along_wall = 1000.0;
    add_box(&mut job, second);
    for wall_box in &mut job.boxes {
        let door = wall_box.body.door.as_mut().expect("a door");
        door.bores_follow = BoreReference::Edges { vertical: End::Top };
        *door.tweaks.at_mut(Edge::Top) = 5.0;
    }
    job
}

const OFF: &str = "bores-off-fitting";

#[test]
fn renaming_a_box_keeps_its_acceptances_and_gives_them_to_no_other() {
    // The boxes whose finding is accepted.
    let of_boxes = |job: &Job| -> Vec<BoxId> {
        let all = found(job, OFF)
            .into_iter()
            .filter(|it| it.accepted.is_some());
        all.filter_map(|it| it.subjects.last()?.box_id()).collect()
    };
    let mut job = two_off();
    job.boxes[0].name = "cups".to_owned();
    job.boxes[1].name = "pans".to_owned();
    let first = &found(&job, OFF)[0];
    assert_eq!(first.subjects.last(), Some(&FIRST_DOOR));
    let edit = accept(&job, first, "planed by hand");
    done(&mut job, Some(edit));
    assert_eq!(of_boxes(&job), [FIRST_BOX]);
    // The other box gets the name that the first had, and the first that of the other.
    job.boxes[0].name = "pans".to_owned();
    job.boxes[1].name = "cups".to_owned();
    assert_eq!(of_boxes(&job), [FIRST_BOX]);
    // Both have one name, and another box stands before them.
    job.boxes[1].name = "pans".to_owned();
    let edit = add_new_box(&job, None);
    done(&mut job, Some(edit));
    assert_eq!(of_boxes(&job), [FIRST_BOX]);
    assert_eq!(found(&job, OFF).len(), 2);
}

fn obstacle(name: &str, above_floor: f64) -> Obstacle {
    let extent = |from, to| Extent { from, to };
    Obstacle {
        id: ObstacleId::default(),
        name: name.to_owned(),
        along_wall: extent(0.0, 800.0),
        above_floor: extent(above_floor, above_floor + 10.0),
        from_wall: extent(400.0, 900.0),
    }
}

#[test]
fn accepting_one_obstacle_leaves_the_other() {
    const NAME: &str = "door-hits-obstacle";
    let mut job = job(wall_box(), card());
    job.room.obstacles = vec![obstacle("curtain rail", 500.0), obstacle("gas pipe", 550.0)];
    job.give_ids();
    let both = found(&job, NAME);
    assert_eq!(both.len(), 2, "{both:?}");
    let edit = accept(&job, &both[0], "it is of cloth");
    done(&mut job, Some(edit));
    let now = found(&job, NAME);
    let marks: Vec<(bool, bool)> = now
        .iter()
        .map(|it| (it.message.contains("curtain rail"), it.accepted.is_some()))
        .collect();
    assert_eq!(marks.len(), 2);
    assert!(
        marks.iter().all(|(rail, accepted)| rail == accepted),
        "{marks:?}"
    );
    // Whatever they are called, and in whatever order they stand.
    job.room.obstacles.reverse();
    job.room.obstacles[0].name = "curtain rail".to_owned();
    job.room.obstacles[1].name = "gas pipe".to_owned();
    let now = found(&job, NAME);
    assert!(
        now.iter()
            .all(|it| it.accepted.is_some() == it.message.contains("gas pipe"))
    );
}

#[test]
fn two_edges_of_one_door_are_accepted_one_by_one() {
    const NAME: &str = "reveal-out-of-range";
    let mut job = job(wall_box(), card());
    let door = the_job_door(&mut job, 0);
    // The top stands 5 past its panel, the bottom 9: a grip.
    *door.tweaks.at_mut(Edge::Top) = 8.0;
    *door.tweaks.at_mut(Edge::Bottom) = 12.0;
    let about = |edge| vec![Topic::Door(DOOR), Topic::Edge(edge)];
    let both = found(&job, NAME);
    let topics: Vec<_> = both.iter().map(|it| it.about.clone()).collect();
    assert_eq!(topics, [about(Edge::Top), about(Edge::Bottom)]);
    let edit = accept(&job, &both[0], "a shadow gap");
    done(&mut job, Some(edit));
    let of = |job: &Job, edge| {
        let all = found(job, NAME);
        let it = all
            .iter()
            .find(|it| it.about == about(edge))
            .expect("it is there");
        it.accepted.is_some()
    };
    assert_eq!([of(&job, Edge::Top), of(&job, Edge::Bottom)], [true, false]);
    let edit = accept(&job, &both[1], "a grip");
    done(&mut job, Some(edit));
    assert_eq!([of(&job, Edge::Top), of(&job, Edge::Bottom)], [true, true]);
    let edit = take_back(&job, &both[0]);
    done(&mut job, Some(edit));
    assert_eq!([of(&job, Edge::Top), of(&job, Edge::Bottom)], [false, true]);
}

#[test]
fn a_bore_is_known_again_when_others_come_before_it() {
    // The handle's two screws are too near the bottom edge; then the fitting goes, whose bores had
    // the lower numbers.
    const NAME: &str = "bore-near-edge";
    let mut job = job(wall_box(), card());
    the_job_door(&mut job, 0).handle = Some(flapwright_model::door::Handle {
        mass: 0.1,
        up: 4.0,
        right_of_middle: 0.0,
        projection: 20.0,
        length: 160.0,
        screws: Some(flapwright_model::door::HandleScrews {
            spacing: 128.0,
            diameter: 5.0,
        }),
    });
    let keys =
        |job: &Job| -> Vec<_> { found(job, NAME).iter().map(|it| it.about.clone()).collect() };
    let before = keys(&job);
    assert_eq!(before.len(), 2, "{before:?}");
    accept_all(&mut job, NAME);
    let numbers = |job: &Job| -> Vec<_> {
        found(job, NAME)
            .iter()
            .map(|it| it.subjects.clone())
            .collect()
    };
    let with_fitting = numbers(&job);
    the_job_door(&mut job, 0).fitting = None;
    assert_ne!(numbers(&job), with_fitting, "the numbers have shifted");
    assert_eq!(keys(&job), before);
    assert_eq!(accepted(&job, NAME), [true, true]);
}

#[test]
fn an_exported_sheet_is_compared_with_its_own_panel_when_a_shelf_comes() {
    let mut job = job(wall_box(), card());
    let edit = record(
        &job,
        &inspect(&job),
        &[part_id(LEAF), part_id(Part::LeftSide)],
        SheetExported,
    );
    done(&mut job, Some(edit));
    let edit = add_fixed_shelf(&job, FIRST_BOX, 100.0, across(18.0));
    done(&mut job, edit);
    let stale = found(&job, "stale-sheet");
    // The door is lower now; the side is the same to the last bore.
    let about: Vec<_> = stale.iter().map(|it| it.about.clone()).collect();
    assert_eq!(about, [vec![Topic::Part(part_id(LEAF))]]);
}

#[test]
fn a_box_in_front_of_the_others_does_not_make_the_answer_forget_them() {
    let mut job = two_off();
    let mut answer = Answer::of(&job);
    let before = answer.inspection().clone();
    let edit = add_new_box(&job, None);
    done(&mut job, Some(edit));
    answer.update(&job);
    let after = answer.inspection();
    for report in &before.boxes {
        let same = after.report(report.id).expect("the box is still there");
        assert!(
            std::sync::Arc::ptr_eq(report, same),
            "{} was placed anew",
            report.name
        );
    }
    assert_eq!(format!("{after:?}"), format!("{:?}", inspect_it(&job)));
}

#[test]
fn reports_panels_and_doors_are_found_by_their_identities() {
    let job = two_off();
    let answer = inspect(&job);
    for wall_box in &job.boxes {
        let report = answer.report(wall_box.id).expect("the box");
        assert_eq!(report.id, wall_box.id);
        let door = wall_box.doors()[0].id;
        assert_eq!(answer.door(door).expect("the door").id, door);
        for panel in &report.panels {
            assert_eq!(answer.panel(panel.id).expect("the panel").id, panel.id);
        }
    }
    assert!(
        answer
            .report(flapwright_model::id::BoxId::new(999))
            .is_none()
    );
}

fn old(check: &str, about: Vec<Topic>, numbers: &Finding) -> Acceptance {
    Acceptance {
        check: check.to_owned(),
        about,
        reason: "from an old file".to_owned(),
        severity: numbers.severity,
        numbers: numbers
            .numbers
            .iter()
            .map(|it| flapwright_model::acceptance::AcceptedNumber {
                label: it.name.to_owned(),
                value: it.value,
            })
            .collect(),
        by_place: true,
        lost_place: String::new(),
    }
}

#[test]
fn an_acceptance_of_version_1_holds_for_one_finding_at_its_place() {
    const NAME: &str = "door-hits-obstacle";
    let mut job = job(wall_box(), card());
    job.room.obstacles = vec![obstacle("curtain rail", 500.0), obstacle("gas pipe", 550.0)];
    job.give_ids();
    let both = found(&job, NAME);
    job.accepted = vec![old(NAME, vec![Topic::Door(DOOR)], &both[1])];
    // It told the door only, so it is of either; one of them is open.
    assert_eq!(accepted(&job, NAME).iter().filter(|it| **it).count(), 1);
    // Accepted anew, it is of that one for good.
    let findings = found(&job, NAME);
    let marked = findings
        .iter()
        .find(|it| it.accepted.is_some())
        .expect("one");
    let edit = accept(&job, marked, "seen");
    done(&mut job, Some(edit));
    assert_eq!(job.accepted.len(), 1);
    assert_eq!(job.accepted[0].about, marked.about);
    assert!(!job.accepted[0].by_place);
}

#[test]
fn an_acceptance_whose_finding_is_gone_is_named() {
    let mut job = two_off();
    let edit = accept(&job, &found(&job, OFF)[0], "planed by hand");
    done(&mut job, Some(edit));
    assert!(without_finding(&job, &inspect(&job).findings).is_empty());
    job.boxes[0].body.door.as_mut().expect("a door").tweaks.top = 0.0;
    let left = without_finding(&job, &inspect(&job).findings);
    assert_eq!(left.len(), 1);
    assert_eq!(left[0].reason, "planed by hand");
}
