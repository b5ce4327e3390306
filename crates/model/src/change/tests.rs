use super::*;
use crate::cabinet::HorizontalPanel;
use crate::card::OpeningKind;
use crate::door::{BoreReference, Leaves};
use crate::edges::Edges;
use crate::edit::apply;
use crate::id::{DoorId, Id};
use crate::material::{Density, Material, MaterialClass};
use crate::opening::{Inside, Opening};
use crate::part::{LeafId, Part, PartId};
use crate::record::{PanelRecord, RecordState};
use crate::validate::validate;

/// A job with one box as it is when it is new: 800 by 400 by 330, panels of 18.
fn one_box() -> Job {
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
    let edit = add_box(&job, None);
    done(&mut job, Some(edit));
    job
}

fn board() -> HorizontalPanel {
    HorizontalPanel::plain(18.0, "board")
}

#[track_caller]
fn done(job: &mut Job, edit: Option<Edit>) -> Edit {
    let undo = apply(job, edit.expect("there is something to change")).expect("it is sound");
    assert_eq!(validate(job), []);
    undo
}

fn door_of(opening: &Opening) -> Option<DoorId> {
    opening.door.as_ref().map(|door| door.id)
}

/// The doors of the openings from the top down.
fn doors(job: &Job) -> Vec<Option<DoorId>> {
    job.boxes[0].openings().into_iter().map(door_of).collect()
}

fn heights(opening: &Opening) -> Vec<f64> {
    match &opening.inside {
        Inside::Undivided { loose } => loose.iter().map(|shelf| shelf.up).collect(),
        _ => panic!("the opening is split"),
    }
}

#[test]
fn a_fixed_shelf_adds_an_opening_below_and_taking_it_out_gives_the_old_box() {
    let mut job = one_box();
    let id = job.boxes[0].id;
    let edit = add_loose_shelf(&job, id, 120.0, board());
    done(&mut job, edit);
    let before = job.boxes[0].clone();
    let door = doors(&job)[0];
    let [mut shelf, mut opening] = [0; 2];
    for (up, count) in [(200.0, 2), (300.0, 3)] {
        let edit = add_fixed_shelf(&job, id, up, board());
        done(&mut job, edit);
        let mut expected = vec![None; count];
        expected[0] = door;
        assert_eq!(doors(&job), expected, "the door stays with the upper part");
        [shelf, opening] = [shelf + 1, opening + 1];
    }
    assert_eq!((shelf, opening), (2, 2));
    // The loose shelf stays at its height: in the lowest opening.
    assert_eq!(heights(job.boxes[0].openings()[2]), [120.0]);
    let fixed: Vec<_> = job.boxes[0]
        .fixed_shelves()
        .iter()
        .map(|it| it.id)
        .collect();
    for shelf in fixed {
        let edit = remove_shelf(&job, id, shelf);
        done(&mut job, edit);
    }
    assert_eq!(job.boxes[0], before);
}

#[test]
fn loose_shelves_go_where_their_height_is() {
    let mut job = one_box();
    let id = job.boxes[0].id;
    for up in [100.0, 300.0] {
        let edit = add_loose_shelf(&job, id, up, board());
        done(&mut job, edit);
    }
    let edit = add_fixed_shelf(&job, id, 200.0, board());
    done(&mut job, edit);
    let openings = job.boxes[0].openings();
    assert_eq!(heights(openings[0]), [300.0]);
    assert_eq!(heights(openings[1]), [100.0]);
    for (up, at) in [(320.0, 0), (120.0, 1)] {
        let edit = add_loose_shelf(&job, id, up, board());
        done(&mut job, edit);
        assert!(heights(job.boxes[0].openings()[at]).contains(&up));
    }
    let loose = job.boxes[0].shelves()[0].id();
    let edit = remove_shelf(&job, id, loose);
    done(&mut job, edit);
    assert_eq!(heights(job.boxes[0].openings()[0]), [300.0]);
}

#[test]
fn making_a_shelf_loose_keeps_a_door_of_the_lower_opening_and_the_shelf_s_identity() {
    let mut job = one_box();
    let id = job.boxes[0].id;
    let edit = add_fixed_shelf(&job, id, 200.0, board());
    done(&mut job, edit);
    // The door moves to the lower opening.
    let mut with = job.boxes[0].clone();
    let [upper, lower] = [0, 1].map(|index| with.openings()[index].id);
    let door = with.opening_mut(upper).unwrap().door.take();
    with.opening_mut(lower).unwrap().door = door;
    done(&mut job, Some(Edit::replace_box(with)));
    let before = doors(&job)[1];
    assert!(before.is_some());
    let shelf = job.boxes[0].fixed_shelves()[0].id;
    let edit = make_shelf_loose(&job, id, shelf);
    done(&mut job, edit);
    assert_eq!(doors(&job), [before]);
    assert_eq!(job.boxes[0].openings()[0].id, lower);
    assert_eq!(job.boxes[0].shelves()[0].id(), shelf);
    assert!(!job.boxes[0].shelves()[0].is_fixed());
    let edit = make_shelf_fixed(&job, id, shelf);
    done(&mut job, edit);
    assert_eq!(doors(&job), [before, None]);
    assert_eq!(job.boxes[0].fixed_shelves()[0].id, shelf);
}

#[test]
fn shelves_come_out_of_any_tree() {
    // Three shelves added from the middle, from above and from below make trees of different form;
    // whichever goes, what stays is in order from the top.
    for order in [
        [200.0, 300.0, 100.0],
        [300.0, 200.0, 100.0],
        [100.0, 200.0, 300.0],
    ] {
        for gone in 0..3 {
            let mut job = one_box();
            let id = job.boxes[0].id;
            for up in order {
                let edit = add_fixed_shelf(&job, id, up, board());
                done(&mut job, edit);
            }
            let shelf = job.boxes[0].fixed_shelves()[gone].id;
            let edit = remove_shelf(&job, id, shelf);
            done(&mut job, edit);
            let wall_box = &job.boxes[0];
            assert_eq!(wall_box.openings().len(), 3);
            assert!(wall_box.openings()[0].door.is_some());
            let ups: Vec<f64> = wall_box.fixed_shelves().iter().map(|it| it.up).collect();
            let mut expected = vec![300.0, 200.0, 100.0];
            expected.remove(gone);
            assert_eq!(ups, expected);
        }
    }
}

#[test]
fn what_is_not_there_is_no_change() {
    let job = one_box();
    let id = job.boxes[0].id;
    let nothing = crate::id::ShelfId::new(99);
    assert_eq!(remove_shelf(&job, id, nothing), None);
    assert_eq!(make_shelf_fixed(&job, id, nothing), None);
    assert_eq!(make_shelf_loose(&job, id, nothing), None);
    let no_box = crate::id::BoxId::new(99);
    assert_eq!(add_fixed_shelf(&job, no_box, 200.0, board()), None);
    assert_eq!(duplicate_box(&job, no_box), None);
}

fn record(part: Part, state: RecordState) -> PanelRecord {
    PanelRecord {
        part,
        state,
        revision: "A".to_owned(),
        size: [796.0, 396.0],
        thickness: 18.0,
        bores: Vec::new(),
    }
}

fn only_leaf(job: &Job) -> Part {
    Part::Leaf {
        door: doors(job)[0].expect("a door"),
        leaf: LeafId::Only,
    }
}

#[test]
fn a_copy_has_identities_of_its_own_and_its_records_follow() {
    let mut job = one_box();
    let id = job.boxes[0].id;
    let edit = add_fixed_shelf(&job, id, 200.0, board());
    done(&mut job, edit);
    let shelf = job.boxes[0].fixed_shelves()[0].id;
    let parts = [Part::LeftSide, Part::Shelf(shelf), only_leaf(&job)];
    let mut with = job.boxes[0].clone();
    with.records = parts
        .map(|it| record(it, RecordState::SheetExported))
        .to_vec();
    done(&mut job, Some(Edit::replace_box(with)));
    let edit = duplicate_box(&job, id);
    done(&mut job, edit);
    let [first, copy] = &job.boxes[..] else {
        panic!("two boxes")
    };
    let of_first = first.own_ids();
    assert!(copy.own_ids().iter().all(|it| !of_first.contains(it)));
    assert_eq!(copy.name, "box 2");
    assert_eq!(copy.place.along_wall, 800.0);
    let expected = [
        Part::LeftSide,
        Part::Shelf(copy.fixed_shelves()[0].id),
        Part::Leaf {
            door: copy.doors()[0].id,
            leaf: LeafId::Only,
        },
    ];
    let found: Vec<Part> = copy.records.iter().map(|it| it.part).collect();
    assert_eq!(found, expected);
}

#[test]
fn forgetting_the_record_of_a_drilled_door_lets_its_bores_follow_the_fitting() {
    let mut job = one_box();
    let leaf = only_leaf(&job);
    let door = leaf.door().expect("a door");
    let mut with = job.boxes[0].clone();
    with.records = vec![
        record(Part::LeftSide, RecordState::Drilled),
        record(leaf, RecordState::Drilled),
    ];
    with.door_mut(door).unwrap().bores_follow = BoreReference::AsDrilled(Vec::new());
    done(&mut job, Some(Edit::replace_box(with)));
    let part = |part| PartId {
        box_id: job.boxes[0].id,
        part,
    };
    let [side, its_leaf] = [part(Part::LeftSide), part(leaf)];
    let edit = forget_records(&job, &[side]);
    done(&mut job, edit);
    assert!(door_is_drilled(&job.boxes[0], door));
    let follows = |job: &Job| job.boxes[0].door(door).unwrap().bores_follow.clone();
    assert_eq!(follows(&job), BoreReference::AsDrilled(Vec::new()));
    let edit = forget_records(&job, &[its_leaf]);
    done(&mut job, edit);
    assert_eq!(follows(&job), BoreReference::Fitting);
    assert_eq!(job.boxes[0].records, []);
    assert_eq!(forget_records(&job, &[side, its_leaf]), None);
}

#[test]
fn records_are_grafted_onto_the_box_of_that_identity_wherever_it_is_and_however_called() {
    let then = one_box();
    let leaf = only_leaf(&then);
    let mut with = then.boxes[0].clone();
    with.records = vec![record(leaf, RecordState::Drilled)];
    with.door_mut(leaf.door().unwrap()).unwrap().bores_follow =
        BoreReference::AsDrilled(Vec::new());
    let edit = Edit::replace_box(with);
    // In the meantime the box got another name and width, and another box before it.
    let mut now = then.clone();
    let mut renamed = now.boxes[0].clone();
    renamed.name = "renamed".to_owned();
    renamed.width = 900.0;
    done(&mut now, Some(Edit::replace_box(renamed)));
    let another = add_box(&now, None);
    done(&mut now, Some(another));
    let grafted = graft_records(&edit, &then, &now);
    done(&mut now, grafted);
    let wall_box = &now.boxes[1];
    assert_eq!((wall_box.name.as_str(), wall_box.width), ("renamed", 900.0));
    assert!(is_drilled(wall_box, leaf));
    let follows = &wall_box.doors()[0].bores_follow;
    assert_eq!(follows, &BoreReference::AsDrilled(Vec::new()));
    assert_eq!(now.boxes[0].records, []);
    assert_eq!(
        graft_records(&edit, &then, &now),
        None,
        "it is there already"
    );
    // A box that is gone takes none.
    let id = now.boxes[1].id;
    done(&mut now, Some(Edit::RemoveBox { id }));
    assert_eq!(graft_records(&edit, &then, &now), None);
}

#[test]
fn a_door_gets_the_leaves_of_its_opening_kind() {
    let one = Leaves::One(plain_leaf("board"));
    assert_eq!(leaves_for(&one, OpeningKind::TopHingedFlap, 150.0), None);
    let two = leaves_for(&one, OpeningKind::FoldingPair, 150.0).expect("a pair");
    let Leaves::Two { joint_down, .. } = &two else {
        panic!("two leaves")
    };
    assert_eq!(*joint_down, 150.0);
    assert_eq!(leaves_for(&two, OpeningKind::FoldingPair, 99.0), None);
    assert_eq!(
        leaves_for(&two, OpeningKind::OverTheTopDoor, 99.0),
        Some(one)
    );
}

#[test]
fn new_boxes_have_names_and_places_of_their_own() {
    let mut job = one_box();
    let first = job.boxes[0].id;
    let edit = add_box(&job, Some(first));
    done(&mut job, Some(edit));
    let names: Vec<&str> = job.boxes.iter().map(|it| it.name.as_str()).collect();
    assert_eq!(names, ["box 1", "box 2"]);
    assert_eq!(job.boxes[1].place.along_wall, 800.0);
    assert_eq!(job.boxes[1].doors()[0].fit, plain_door("board").fit);
    assert!(job.boxes[1].id.is_given());
    assert_eq!(
        plain_leaf("board").bands,
        Edges::all(1.0),
        "a new leaf is banded all around"
    );
}
