use super::*;
use crate::acceptance::Topic;
use crate::door::Door;
use crate::edges::Edges;
use crate::id::{DoorId, ObstacleId, OpeningId};
use crate::job::Job;
use crate::material::{Density, MaterialClass};
use crate::room::{Extent, Obstacle};
use crate::severity::Severity;

fn job(boxes: &[&str]) -> Job {
    let material = Material {
        name: "board".to_owned(),
        class: MaterialClass::Board,
        density: Density {
            low: 600.0,
            likely: 680.0,
            high: 720.0,
        },
        source: "invented".to_owned(),
        stiffness: None,
    };
    let mut job = Job::empty(vec![material], Vec::new());
    job.boxes.extend(boxes.iter().map(|name| wall_box(name)));
    job.give_ids();
    job
}

fn wall_box(name: &str) -> WallBox {
    let leaf = crate::door::Leaf::plain(18.0, "board");
    let door = Door::overlay(Edges::all(3.0), crate::door::Leaves::One(leaf));
    let mut new = WallBox::plain([800.0, 400.0, 330.0], 18.0, "board", Some(door));
    new.name = name.to_owned();
    new
}

fn names(job: &Job) -> Vec<&str> {
    job.boxes.iter().map(|it| it.name.as_str()).collect()
}

fn insert(after: Option<BoxId>, name: &str) -> Edit {
    Edit::InsertBox {
        after,
        with: Box::new(wall_box(name)),
    }
}

#[test]
fn what_comes_in_gets_identities_that_the_job_has_not_had() {
    let mut job = job(&["a"]);
    let before: BTreeSet<u32> = job.all_ids().collect();
    let first = job.boxes[0].id;
    apply(&mut job, insert(Some(first), "b")).unwrap();
    let new = job.boxes[1].own_ids();
    assert_eq!(new.len(), 3, "box, opening, door");
    assert!(
        new.iter().all(|it| *it != 0 && !before.contains(it)),
        "{new:?}"
    );
    assert_eq!(validate(&job), []);
}

#[test]
fn an_identity_is_never_given_twice_not_even_over_undo() {
    let mut job = job(&["a"]);
    let undo = apply(&mut job, insert(None, "b")).unwrap();
    let id = job.boxes[0].id;
    let next = job.next_id;
    let redo = apply(&mut job, undo).unwrap();
    assert_eq!(names(&job), ["a"]);
    assert_eq!(job.next_id, next, "the counter does not go back");
    // Another box gets other numbers, and the first comes back as it was.
    apply(&mut job, insert(None, "c")).unwrap();
    assert!(job.boxes[0].own_ids().iter().all(|it| *it >= next));
    apply(&mut job, redo).unwrap();
    assert_eq!(names(&job), ["b", "c", "a"]);
    assert_eq!(job.boxes[0].id, id);
    assert_eq!(validate(&job), []);
}

#[test]
fn boxes_are_put_after_one_another_and_go_back_to_their_place() {
    let mut job = job(&["a", "b", "c"]);
    let before = job.clone();
    let [a, b, c] = [0, 1, 2].map(|index| job.boxes[index].id);
    for (id, left) in [(a, ["b", "c"]), (b, ["a", "c"]), (c, ["a", "b"])] {
        let undo = apply(&mut job, Edit::RemoveBox { id }).unwrap();
        assert_eq!(names(&job), left);
        apply(&mut job, undo).unwrap();
        assert_eq!(job, before);
    }
    apply(&mut job, insert(Some(b), "d")).unwrap();
    assert_eq!(names(&job), ["a", "b", "d", "c"]);
}

#[test]
fn an_identity_that_something_else_has_is_refused_and_nothing_changes() {
    let mut job = job(&["a", "b"]);
    let before = job.clone();
    // A copy with the identities of the first box.
    let copy = Edit::InsertBox {
        after: None,
        with: Box::new(job.boxes[0].clone()),
    };
    let problems = apply(&mut job, copy).unwrap_err();
    assert!(problems[0].what.contains("something else"), "{problems:?}");
    assert_eq!(job, before);
    // The door of the second box in the first.
    let mut with = job.boxes[0].clone();
    with.body.door = job.boxes[1].body.door.clone();
    assert!(apply(&mut job, Edit::replace_box(with)).is_err());
    assert_eq!(job, before);
    // One number twice in one box.
    let mut with = job.boxes[0].clone();
    with.body.id = OpeningId::new(1_000);
    with.body.door.as_mut().unwrap().id = DoorId::new(1_000);
    let problems = apply(&mut job, Edit::replace_box(with)).unwrap_err();
    assert_eq!(problems[0].field, "id 1000");
    assert_eq!(job, before, "the counter is as it was, too");
}

#[test]
fn a_box_that_is_not_there_is_named() {
    let mut job = job(&["a"]);
    let id = BoxId::new(77);
    let problems = apply(&mut job, Edit::RemoveBox { id }).unwrap_err();
    assert_eq!(problems[0].field, "box b77");
    assert!(apply(&mut job, insert(Some(id), "b")).is_err());
}

#[test]
fn an_empty_reason_is_refused() {
    let mut job = job(&["a"]);
    let accepted = |reason: &str| {
        Edit::ReplaceAccepted(vec![Acceptance {
            check: "some-check".to_owned(),
            about: vec![Topic::Width],
            reason: reason.to_owned(),
            severity: Severity::Note,
            numbers: Vec::new(),
            by_place: false,
            lost_place: String::new(),
        }])
    };
    assert!(apply(&mut job, accepted(" \n")).is_err());
    assert_eq!(job.accepted, []);
    apply(&mut job, accepted("seen")).unwrap();
    assert_eq!(job.accepted.len(), 1);
}

#[test]
fn only_what_a_change_touches_is_looked_at() {
    // A box that is not sound, which no change of another thing tells of.
    let mut job = job(&["a", "b"]);
    job.boxes[0].width = -1.0;
    let head = JobHead {
        name: "another name".to_owned(),
        ..JobHead::of(&job)
    };
    apply(&mut job, Edit::ReplaceHead(Box::new(head))).unwrap();
    let mut with = job.boxes[1].clone();
    with.width += 1.0;
    apply(&mut job, Edit::replace_box(with)).unwrap();
    // Any box may name a material, so that all are looked at.
    let materials = job.materials.clone();
    assert!(apply(&mut job, Edit::ReplaceMaterials(materials)).is_err());
}

#[test]
fn a_new_obstacle_gets_an_identity() {
    let mut job = job(&["a"]);
    let extent = Extent { from: 0.0, to: 1.0 };
    let mut head = JobHead::of(&job);
    head.room.obstacles.push(Obstacle {
        id: ObstacleId::default(),
        name: "pipe".to_owned(),
        along_wall: extent,
        above_floor: extent,
        from_wall: extent,
    });
    let undo = apply(&mut job, Edit::ReplaceHead(Box::new(head))).unwrap();
    let id = job.room.obstacles[0].id;
    assert!(id.is_given());
    assert_eq!(validate(&job), []);
    let redo = apply(&mut job, undo).unwrap();
    apply(&mut job, redo).unwrap();
    assert_eq!(job.room.obstacles[0].id, id);
}

#[test]
fn changes_together_are_taken_back_together() {
    let mut job = job(&["a", "b"]);
    let before = job.clone();
    let [a, b] = [0, 1].map(|index| job.boxes[index].id);
    let mut with = job.boxes[1].clone();
    with.width = 900.0;
    let edit = Edit::Together(vec![Edit::RemoveBox { id: a }, Edit::replace_box(with)]);
    let undo = apply(&mut job, edit).unwrap();
    assert_eq!((names(&job), job.boxes[0].width), (vec!["b"], 900.0));
    apply(&mut job, undo).unwrap();
    assert_eq!(job, before);
    // The second is refused, so the first is not done either.
    let twice = Edit::Together(vec![Edit::RemoveBox { id: b }, Edit::RemoveBox { id: b }]);
    assert!(apply(&mut job, twice).is_err());
    assert_eq!(job, before);
}
