//! What a box and a door have or have not: given, taken off, refused.

use super::*;
use crate::cabinet::Back;
use crate::door::{BoreReference, DoorFit, Leaves};
use crate::edit::apply;
use crate::field::{BoxField, DoorField, FieldRef, LeafField, Value};
use crate::file::read_job;
use crate::id::OpeningId;
use crate::part::LeafId;

/// The demo's cards and materials with one new box.
fn job() -> (Job, BoxId, OpeningId, DoorId) {
    let demo = include_str!("../../../../assets/demo/houseboat-galley.ron");
    let mut job = read_job(demo).unwrap();
    job.boxes.clear();
    let edit = add_box(&job, None);
    apply(&mut job, edit).unwrap();
    let opening = job.boxes[0].openings()[0];
    let ids = (
        job.boxes[0].id,
        opening.id,
        opening.door.as_ref().unwrap().id,
    );
    (job, ids.0, ids.1, ids.2)
}

fn make(job: &mut Job, edit: Option<Edit>) -> Edit {
    apply(job, edit.expect("there is something to change")).expect("the job stays sound")
}

#[test]
fn what_is_given_has_the_usual_numbers_and_can_be_taken_off_again() {
    let (mut job, id, _, door) = job();
    let before = job.clone();
    for (with, without, field) in [
        (
            set_frame(&job, id, true),
            set_frame as fn(&Job, BoxId, bool) -> Option<Edit>,
            BoxField::ShelfRail,
        ),
        (
            set_system_rows(&job, id, true),
            set_system_rows,
            BoxField::RowFront,
        ),
    ] {
        make(&mut job, with);
        let usual = field.info().usual.value();
        assert_eq!(FieldRef::Box(id, field).get(&job), usual);
        let off = without(&job, id, false);
        make(&mut job, off);
    }
    let edit = set_handle(&job, id, door, true);
    make(&mut job, edit);
    let edit = set_handle_screws(&job, id, door, true);
    make(&mut job, edit);
    let edit = set_typed_mass(&job, id, door, true);
    make(&mut job, edit);
    for field in [DoorField::ScrewSpacing, DoorField::Mass] {
        let usual = field.info().usual.value();
        assert_eq!(FieldRef::Door(id, door, field).get(&job), usual);
    }
    let edit = set_handle(&job, id, door, false);
    make(&mut job, edit);
    let edit = set_typed_mass(&job, id, door, false);
    make(&mut job, edit);
    assert_eq!(job.boxes, before.boxes);
}

#[test]
fn a_back_of_another_kind_keeps_its_panel() {
    let (mut job, id, ..) = job();
    let panel = job.boxes[0].back.panel().cloned();
    for kind in [BackKind::Rebated, BackKind::LaidOn, BackKind::Grooved] {
        let edit = set_back(&job, id, kind);
        make(&mut job, edit);
        assert_eq!(BackKind::of(&job.boxes[0].back), kind);
        assert_eq!(job.boxes[0].back.panel(), panel.as_ref(), "{kind:?}");
    }
    assert_eq!(
        set_back(&job, id, BackKind::Grooved),
        None,
        "it is so already"
    );
    let edit = set_back(&job, id, BackKind::Open);
    make(&mut job, edit);
    assert_eq!(job.boxes[0].back, Back::Open);
}

#[test]
fn a_door_is_inset_and_framed_and_plain_again() {
    let (mut job, id, _, door) = job();
    let before = job.boxes.clone();
    let edit = set_fit(&job, id, door, FitKind::Inset);
    make(&mut job, edit);
    let edit = set_framed(&job, id, door, LeafId::Only, true);
    make(&mut job, edit);
    let inside = FieldRef::Leaf(id, door, LeafId::Only, LeafField::InfillTongue);
    assert_eq!(
        inside.get(&job),
        LeafField::InfillTongue.info().usual.value()
    );
    assert!(matches!(job.boxes[0].doors()[0].fit, DoorFit::Inset { .. }));
    assert_eq!(set_fit(&job, id, door, FitKind::Inset), None);
    let edit = set_framed(&job, id, door, LeafId::Only, false);
    make(&mut job, edit);
    let edit = set_fit(&job, id, door, FitKind::Overlay);
    make(&mut job, edit);
    assert_eq!(job.boxes, before);
}

#[test]
fn an_opening_gets_one_door_and_a_door_one_fitting_with_its_leaves() {
    let (mut job, id, opening, door) = job();
    assert_eq!(add_door(&job, id, opening), None, "it has one");
    let edit = remove_door(&job, id, opening);
    make(&mut job, edit);
    assert_eq!(remove_door(&job, id, opening), None, "it is gone");
    let edit = add_door(&job, id, opening);
    make(&mut job, edit);
    let new = job.boxes[0].doors()[0].id;
    assert_ne!(new, door, "identities are never used again");
    let folding = job.cards.iter().find(|it| it.card.kind.leaf_count() == 2);
    let folding = folding.expect("the demo has a folding pair").id;
    let edit = set_fitting(&job, id, new, Some(folding));
    make(&mut job, edit);
    let put = job.boxes[0].doors()[0];
    assert!(matches!(put.leaves, Leaves::Two { .. }));
    assert_eq!(put.fitting.as_ref().map(|it| it.card), Some(folding));
    let edit = set_fitting(&job, id, new, None);
    make(&mut job, edit);
    assert_eq!(job.boxes[0].doors()[0].fitting, None);
}

#[test]
fn bores_that_are_drilled_already_are_added_and_removed() {
    let (mut job, id, _, door) = job();
    assert_eq!(add_bore(&job, id, door), None, "they follow the fitting");
    let edit = set_bores_follow(&job, id, door, FollowKind::AsDrilled, Vec::new());
    make(&mut job, edit);
    let edit = add_bore(&job, id, door);
    make(&mut job, edit);
    let across = FieldRef::Bore(id, door, 0, crate::field::BoreField::Across);
    make(
        &mut job,
        Some(Edit::Set {
            field: across,
            value: Value::Number(33.0),
        }),
    );
    let edit = add_bore(&job, id, door);
    make(&mut job, edit);
    let BoreReference::AsDrilled(bores) = &job.boxes[0].doors()[0].bores_follow else {
        panic!("as drilled")
    };
    assert_eq!((bores.len(), bores[1].across), (2, 33.0), "like the last");
    assert_eq!(remove_bore(&job, id, door, 2), None);
    let edit = remove_bore(&job, id, door, 0);
    make(&mut job, edit);
    let edit = set_bores_follow(&job, id, door, FollowKind::Edges, Vec::new());
    make(&mut job, edit);
    assert_eq!(
        FollowKind::of(&job.boxes[0].doors()[0].bores_follow),
        FollowKind::Edges
    );
}

#[test]
fn an_obstacle_is_put_above_a_box_and_taken_away() {
    let (mut job, id, ..) = job();
    let before = job.room.clone();
    let edit = add_obstacle(&job, Some(id));
    make(&mut job, Some(edit));
    let (new, wall_box) = (&job.room.obstacles[before.obstacles.len()], &job.boxes[0]);
    assert_eq!(new.along_wall.to - new.along_wall.from, wall_box.width);
    assert!(new.above_floor.from > wall_box.place.above_floor + wall_box.height);
    let edit = remove_obstacle(&job, new.id);
    make(&mut job, edit);
    assert_eq!(job.room, before);
    assert_eq!(remove_obstacle(&job, crate::id::ObstacleId::new(999)), None);
}
