//! What items point at: identities, whatever the names of boxes and their order in the job.

use flapwright_answer::inspect;
use flapwright_model::part::Subject;
use flapwright_rules::finding::Severity;
use flapwright_rules::inspection::BoxReport;

use super::super::{ViewOptions, elevation, hit, plan, section};
use super::{demo, demo_job, every_box, options};
use crate::list::{At, DisplayList, Item};
use crate::pen::{Ink, Layer};

fn views(report: &BoxReport) -> [DisplayList; 3] {
    let options = options(0.3);
    [
        elevation(report, &options),
        section(report, &options),
        plan(report, &options),
    ]
}

fn is_there(report: &BoxReport, subject: Subject) -> bool {
    subject.box_id() == Some(report.id)
        && match subject {
            Subject::Box(_) => true,
            Subject::Opening(_, id) => report.opening(id).is_some(),
            Subject::Door(_, id) => report.door(id).is_some(),
            Subject::Part(id) => report.panel(id.part).is_some(),
            Subject::Bore(id) => report
                .panel(id.part.part)
                .is_some_and(|panel| panel.bores.iter().any(|bore| bore.number == id.number)),
            Subject::Obstacle(_) | Subject::Card(_) => false,
        }
}

#[test]
fn items_point_at_what_is_in_their_box() {
    every_box(|report| {
        for list in views(report) {
            let mut subjects = list.items.iter().filter_map(|item| item.of).peekable();
            assert!(subjects.peek().is_some());
            for subject in subjects {
                assert!(is_there(report, subject), "{}: {subject:?}", report.name);
            }
        }
    });
}

/// A fitting and an opening mark are the door's: a door is found by its mark.
#[test]
fn fitting_and_opening_mark_stand_for_their_door() {
    every_box(|report| {
        let doors: Vec<Subject> = report
            .doors()
            .map(|door| Subject::Door(report.id, door.id))
            .collect();
        let marks = |item: &&Item| matches!(item.layer, Layer::Fitting | Layer::OpeningMark);
        for list in views(report) {
            for item in list.items.iter().filter(marks) {
                let Some(subject) = item.of else { continue };
                assert!(doors.contains(&subject), "{subject:?}");
            }
        }
    });
}

#[test]
fn a_view_of_a_box_stays_the_same_when_boxes_change_their_order_or_share_a_name() {
    let before = demo();
    let mut job = demo_job();
    job.boxes.reverse();
    for wall_box in &mut job.boxes {
        "one name".clone_into(&mut wall_box.name);
    }
    let after = inspect(&job);
    for report in &before.boxes {
        let same = after.report(report.id).expect("the box");
        assert_eq!(views(report), views(same), "{}", report.name);
    }
}

#[test]
fn what_is_lit_in_another_box_is_not_marked_in_this_one() {
    let inspection = demo();
    let [first, second, ..] = inspection.boxes.as_slice() else {
        panic!("the demo has several boxes");
    };
    let marked = |report: &BoxReport, subject: Subject| {
        let options = ViewOptions {
            lit: vec![(subject, Severity::Caution)],
            ..options(0.0)
        };
        let list = elevation(report, &options);
        let mark = |item: &Item| item.layer == Layer::Findings && item.ink == Ink::Caution;
        list.items.iter().any(mark)
    };
    let opening = &first.openings[0];
    let door = first.doors().next().expect("a door");
    for subject in [
        Subject::Box(first.id),
        Subject::Opening(first.id, opening.id),
        Subject::Door(first.id, door.id),
    ] {
        assert!(marked(first, subject), "{subject:?}");
        assert!(!marked(second, subject), "{subject:?}");
    }
}

/// Where nothing covers it, the clear space of an opening is found as that opening.
#[test]
fn an_opening_is_found_in_the_section() {
    every_box(|report| {
        let list = section(report, &options(0.0));
        for opening in &report.openings {
            let found = (1..20).any(|step| {
                let clear = &opening.clear;
                let z = clear.min.z + f64::from(step) / 20.0 * (clear.max.z - clear.min.z);
                let at = At::new(z * 0.2, 0.2 * clear.center().y);
                hit(&list, at, 0.01) == Some(Subject::Opening(report.id, opening.id))
            });
            assert!(found, "{}: {:?}", report.name, opening.id);
        }
    });
}
