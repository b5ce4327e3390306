//! Where findings are, and what is said of a whole job.

#![expect(clippy::expect_used, reason = "a test that lacks its part is to fail")]

use flapwright_answer::inspect;
use flapwright_model::cabinet::WallBox;
use flapwright_model::door::{Door, Leaf, Leaves};
use flapwright_model::edges::Edges;
use flapwright_model::file::read_job;
use flapwright_model::job::Job;
use flapwright_model::part::{BoreId, LeafId, Part, PartId, Subject};
use flapwright_words::{Names, effect, headline, headline_in_box, places, reasons, remedy};

/// Boxes of these names, each with one door.
fn job(names: &[&str]) -> Job {
    let mut job = Job::empty(Vec::new(), Vec::new());
    for name in names {
        let door = Door::overlay(Edges::all(3.0), Leaves::One(Leaf::plain(19.0, "board")));
        job.boxes.push(WallBox {
            name: (*name).to_owned(),
            ..WallBox::plain([600.0, 400.0, 300.0], 18.0, "board", Some(door))
        });
    }
    job.give_ids();
    job
}

fn part(job: &Job, index: usize, part: Part) -> PartId {
    PartId {
        box_id: job.boxes[index].id,
        part,
    }
}

#[test]
fn a_place_names_the_box_and_the_part_and_is_said_once() {
    let job = job(&["mugs", "plates"]);
    let door = job.boxes[0].doors()[0].id;
    let leaf = Part::Leaf {
        door,
        leaf: LeafId::Only,
    };
    let bore = |number: usize| {
        Subject::Bore(BoreId {
            part: part(&job, 0, leaf),
            number,
        })
    };
    let names = Names::of(&job);
    let say = |subjects: &[Subject]| places(subjects, &names.speaker());
    assert_eq!(say(&[bore(11), bore(12)]), "mugs, door");
    assert_eq!(say(&[Subject::Box(job.boxes[1].id)]), "plates");
    let side = Subject::Part(part(&job, 1, Part::LeftSide));
    assert_eq!(say(&[bore(1), side]), "mugs, door; plates, left side");
    assert_eq!(say(&[]), "");
}

#[test]
fn boxes_of_one_name_are_told_apart_by_their_number() {
    let job = job(&["mugs", "plates", "mugs"]);
    let names = Names::of(&job);
    let say = |index: usize| {
        let wall_box = &job.boxes[index];
        let door = Subject::Door(wall_box.id, wall_box.doors()[0].id);
        places(&[door], &names.speaker())
    };
    assert_eq!(say(0), "mugs (box 1), door");
    assert_eq!(say(1), "plates, door");
    assert_eq!(say(2), "mugs (box 3), door");
}

fn troubles() -> Job {
    read_job(include_str!(
        "../../../assets/demo/houseboat-galley-troubles.ron"
    ))
    .expect("the galley with troubles is sound")
}

#[test]
fn the_galley_with_troubles_says_this() {
    let job = troubles();
    let names = Names::of(&job);
    let speaker = names.speaker();
    let mut text = String::new();
    for finding in &inspect(&job).findings {
        text.push_str(&format!(
            "{}: {}\n",
            finding.severity.word(),
            headline(finding, &speaker)
        ));
        for reason in reasons(finding, &speaker) {
            text.push_str(&format!("    {reason}\n"));
        }
        for it in &finding.remedies {
            let (title, effect) = (remedy(it, &speaker), effect(it, &speaker));
            text.push_str(&format!("  [{title}] {effect}\n"));
        }
    }
    insta::assert_snapshot!("troubles", text);
}

#[test]
fn on_a_sheet_the_box_is_not_named_again() {
    let job = troubles();
    let names = Names::of(&job);
    let speaker = names.speaker();
    let inspection = inspect(&job);
    for finding in &inspection.findings {
        let Some(of_box) = finding.subjects.first().and_then(|it| it.box_id()) else {
            continue;
        };
        let name = &job.box_by_id(of_box).expect("its box").name;
        let (full, short) = (
            headline(finding, &speaker),
            headline_in_box(finding, of_box, &speaker),
        );
        assert!(full.contains(name.as_str()), "{full}");
        assert!(
            !short.starts_with(name.as_str()) || finding.subjects[0] == Subject::Box(of_box),
            "{short}"
        );
        let other = job
            .boxes
            .iter()
            .find(|it| it.id != of_box)
            .expect("another");
        assert_eq!(headline_in_box(finding, other.id, &speaker), full);
    }
}
