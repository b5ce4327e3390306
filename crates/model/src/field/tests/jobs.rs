//! Fields of a whole job: as edits, against validation, and whether one is missing.

use std::collections::BTreeSet;

use serde_json::Value as Json;

use super::super::{
    BoxField, DoorField, FieldRef, FixedShelfField, HeadField, LeafField, MaterialField,
    PanelField, Value,
};
use super::parts::{full_box, full_door, inset_door, rebated_box};
use super::{allowed, another, refused};
use crate::cabinet::HorizontalPanel;
use crate::edges::Edge;
use crate::edit::{Edit, apply};
use crate::file::{read_job, write_job};
use crate::id::BoxId;
use crate::job::Job;
use crate::material::Stiffness;
use crate::opening::{FixedShelf, Inside, LooseShelf, Opening, ShelfSplit};
use crate::part::{LeafId, Part, PartId};
use crate::room::{Extent, Obstacle};
use crate::validate::validate;

/// A sound job in which every field is there that a job can have today; dividers come later.
fn full_job() -> Job {
    let demo = include_str!("../../../../../assets/demo/houseboat-galley.ron");
    let demo = read_job(demo).unwrap();
    let cards = demo.card_list().take(1).cloned().collect();
    let mut job = Job::empty(demo.materials[..2].to_vec(), cards);
    job.materials[0].name = "board".to_owned();
    job.materials[1].name = "glass".to_owned();
    for material in &mut job.materials {
        material.stiffness = Some(Stiffness {
            along: 2000.0,
            across: Some(1000.0),
            source: "invented".to_owned(),
        });
    }
    let used = job.cards[0].clone();
    job.room.obstacles = vec![Obstacle {
        id: Default::default(),
        name: "beam".to_owned(),
        along_wall: Extent { from: 0.0, to: 9.0 },
        above_floor: Extent { from: 1.0, to: 9.0 },
        from_wall: Extent { from: 2.0, to: 9.0 },
    }];
    let piece = || HorizontalPanel::plain(18.0, "board");
    let mut full = full_box();
    let mut door = full_door(used.id);
    door.fitting.as_mut().unwrap().size = used.card.sizes[0].name.clone();
    let mut shelf = FixedShelf::plain(200.0, 3.0, piece());
    shelf.upper_overlay = Some(8.0);
    full.body = Opening {
        inside: Inside::Shelf(Box::new(ShelfSplit {
            shelf,
            above: Opening::undivided(Some(door)),
            below: Opening {
                inside: Inside::Undivided {
                    loose: vec![LooseShelf::plain(100.0, piece())],
                },
                ..Opening::undivided(Some(inset_door()))
            },
        })),
        ..Opening::default()
    };
    job.boxes = vec![full, rebated_box()];
    job.give_ids();
    assert_eq!(validate(&job), [], "the sample is sound");
    job
}

/// The leaves of a tree of JSON with their paths.
fn leaves(json: &Json, at: &str, found: &mut Vec<(String, Json)>) {
    match json {
        Json::Object(map) => map
            .iter()
            .for_each(|(key, it)| leaves(it, &format!("{at}.{key}"), found)),
        Json::Array(list) => list
            .iter()
            .enumerate()
            .for_each(|(at_row, it)| leaves(it, &format!("{at}[{at_row}]"), found)),
        leaf => found.push((at.to_owned(), leaf.clone())),
    }
}

fn leaves_of(job: &Job) -> Vec<(String, Json)> {
    let mut found = Vec::new();
    leaves(&serde_json::to_value(job).unwrap(), "", &mut found);
    found
}

/// What is no field: identities, cards and records, which have forms of their own, and what a part
/// has or has not, which a change of its structure says.
fn is_no_field(path: &str, value: &Json) -> bool {
    let last = path.rsplit('.').next().unwrap_or(path);
    path == ".version"
        || path == ".next_id"
        || last == "id"
        || path.starts_with(".cards")
        || path.ends_with(".fitting.card")
        || value.is_null()
        || matches!(last, "back" | "bores_follow") && value.is_string()
}

#[test]
fn every_value_of_a_job_is_in_the_table() {
    let before = full_job();
    let mut after = before.clone();
    for field in FieldRef::all_of(&before) {
        let now = field.get(&before).unwrap();
        let value = another(field.info(), &now);
        field.set(&mut after, &value).unwrap();
    }
    let left: Vec<String> = leaves_of(&before)
        .into_iter()
        .zip(leaves_of(&after))
        .filter(|((path, old), (_, new))| old == new && !is_no_field(path, old))
        .map(|((path, _), _)| path)
        .collect();
    assert_eq!(left, Vec::<String>::new(), "no field has these");
}

#[test]
fn no_two_fields_have_one_path() {
    let job = full_job();
    let all = FieldRef::all_of(&job);
    let paths: BTreeSet<String> = all.iter().map(|it| it.path(&job)).collect();
    assert_eq!(paths.len(), all.len());
    for path in [
        "settings.finger_gap.min",
        "room.ceiling",
        "materials[0] \"board\".density.low",
    ] {
        assert!(paths.contains(path), "{path}: {paths:#?}");
    }
    let shown = |end: &str| {
        paths
            .iter()
            .any(|it| it.starts_with("box b") && it.ends_with(end))
    };
    for end in [
        ".place.along_wall",
        ".top.panel.bands.front",
        ".piece.panel.thickness",
        ".leaves.upper.build.infill.tongue",
        ".fit.reveals.top",
        ".bores_follow[0].across",
    ] {
        assert!(shown(end), "{end}: {paths:#?}");
    }
}

#[test]
fn an_edit_of_each_field_is_undone_to_the_last_byte() {
    let before = full_job();
    let text = write_job(&before);
    for field in FieldRef::all_of(&before) {
        let info = field.info();
        let mut taken = 0;
        for value in allowed(info) {
            let mut job = before.clone();
            let Ok(inverse) = apply(
                &mut job,
                Edit::Set {
                    field,
                    value: value.clone(),
                },
            ) else {
                // Within its own limits, but not with the rest of the job.
                continue;
            };
            taken += 1;
            assert_eq!(field.get(&job), Some(value), "{field:?}");
            assert!(matches!(inverse, Edit::Set { .. }), "{field:?}");
            apply(&mut job, inverse).unwrap();
            assert_eq!(write_job(&job), text, "{field:?}");
        }
        // A material or a size must be there under the name that parts call it by.
        let named = matches!(info.kind, super::Kind::Material | super::Kind::CardSize)
            || matches!(field, FieldRef::Material(_, MaterialField::Name));
        assert!(taken > 0 || named, "{field:?} takes nothing");
    }
}

#[test]
fn a_value_just_outside_is_refused_by_the_name_of_its_field() {
    let before = full_job();
    for field in FieldRef::all_of(&before) {
        for value in refused(field.info()) {
            let mut job = before.clone();
            let edit = Edit::Set {
                field,
                value: value.clone(),
            };
            let problems = apply(&mut job, edit).unwrap_err();
            let path = field.path(&before);
            let named = problems.iter().any(|it| it.field == path)
                // What has no name has none in its path either.
                || matches!(&value, Value::Text(_));
            assert!(named, "{path} {value:?}: {problems:?}");
            assert_eq!(job, before, "{path}");
        }
    }
}

#[test]
fn an_edit_of_a_number_is_tens_of_bytes() {
    let job = full_job();
    let mut longest = 0;
    for field in FieldRef::all_of(&job) {
        let value = field.get(&job).unwrap().into_owned();
        let text = match &value {
            Value::Text(text) => text.len(),
            _ => 0,
        };
        let edit = Edit::Set { field, value };
        let written = ron::to_string(&edit).unwrap();
        assert_eq!(ron::from_str::<Edit>(&written).unwrap(), edit);
        longest = longest.max(written.len() - text);
    }
    assert!(longest < 120, "{longest} bytes");
    let width = Edit::Set {
        field: FieldRef::Box(BoxId::new(12), BoxField::Width),
        value: Value::Number(600.0),
    };
    let written = ron::to_string(&width).unwrap();
    assert!(written.len() < 60, "{} bytes: {written}", written.len());
}

#[test]
fn a_refusal_names_value_limit_and_remedy() {
    let mut job = full_job();
    let box_id = job.boxes[0].id;
    let edit = Edit::Set {
        field: FieldRef::Box(box_id, BoxField::Width),
        value: Value::Number(-3.0),
    };
    let problems = apply(&mut job, edit).unwrap_err();
    assert!(
        problems.iter().any(
            |it| it.what == "is -3 mm; it must be above 0 and at most 5000 mm"
                && it.remedy == "correct the length"
        ),
        "{problems:?}"
    );
    // A limit that depends on another field is one of its own.
    let edit = Edit::Set {
        field: FieldRef::Head(HeadField::Hottest),
        value: Value::Number(0.0),
    };
    let problems = apply(&mut job, edit).unwrap_err();
    assert_eq!(problems[0].field, "settings.hottest");
}

#[test]
fn a_field_is_called_after_its_part() {
    let job = full_job();
    let box_id = job.boxes[0].id;
    let door = job.boxes[0].doors()[0].id;
    let shelf = job.boxes[0].shelves()[0].id();
    let part = |part| PartId { box_id, part };
    for (field, name) in [
        (FieldRef::Box(box_id, BoxField::Width), "Box width"),
        (
            FieldRef::Panel(part(Part::LeftSide), PanelField::BandTopOrLeft),
            "left side band top",
        ),
        (
            FieldRef::Panel(part(Part::Top), PanelField::BandTopOrLeft),
            "top band left",
        ),
        (
            FieldRef::FixedShelf(box_id, shelf, FixedShelfField::Gap),
            "shelf 1 gap",
        ),
        (
            FieldRef::Leaf(box_id, door, LeafId::Upper, LeafField::Band(Edge::Top)),
            "upper leaf band top",
        ),
    ] {
        assert_eq!(field.name(&job), name);
    }
    let reveal = FieldRef::Door(box_id, door, DoorField::Reveal(Edge::Top));
    assert_eq!(reveal.title(&job), "full: door 1: reveal top");
    let grid = FieldRef::Head(HeadField::GridStep);
    assert_eq!(grid.title(&job), "job: limit: bore grid");
}

#[test]
fn what_is_gone_has_no_fields() {
    let mut job = full_job();
    let gone = FieldRef::Box(BoxId::new(999), BoxField::Width);
    assert_eq!(gone.get(&job), None);
    let edit = Edit::Set {
        field: gone,
        value: Value::Number(600.0),
    };
    let problems = apply(&mut job, edit).unwrap_err();
    assert!(problems[0].what.contains("not there"), "{problems:?}");
}

#[test]
fn a_run_of_changes_of_one_field_is_taken_back_as_one() {
    let mut job = full_job();
    let before = job.clone();
    let field = FieldRef::Box(job.boxes[0].id, BoxField::Width);
    let mut back: Option<Edit> = None;
    for width in [801.0, 802.0, 803.0] {
        let value = Value::Number(width);
        let inverse = apply(&mut job, Edit::Set { field, value }).unwrap();
        back = Some(match back {
            Some(older) => Edit::joined(inverse, older),
            None => inverse,
        });
    }
    let back = back.unwrap();
    assert!(matches!(back, Edit::Set { .. }), "{back:?}");
    apply(&mut job, back).unwrap();
    assert_eq!(job, before);
}
