//! What is new starts like this; every number of it can be changed in the form.

use crate::cabinet::{Back, Panel, WallBox};
use crate::door::{Door, FittingChoice, Leaf, Leaves};
use crate::edges::Edges;
use crate::edit::Edit;
use crate::id::{BoxId, CardId};
use crate::job::Job;
use crate::material::MaterialClass;

/// Adds a plain box with a plain door and banded front edges, to the right of all others on the
/// wall and in the list after the box given (before all others without one).
#[must_use]
pub fn add_box(job: &Job, after: Option<BoxId>) -> Edit {
    let mut with = plain_box(&free_name(job, "box 1"), &usual_material(job));
    with.place.along_wall = free_place(job);
    with.give_ids(&mut job.next_ids());
    Edit::InsertBox {
        after,
        with: Box::new(with),
    }
}

/// The material that new parts get: the job's first board, or else its first material.
#[must_use]
pub fn usual_material(job: &Job) -> String {
    job.materials
        .iter()
        .find(|material| material.class == MaterialClass::Board)
        .or(job.materials.first())
        .map_or_else(String::new, |material| material.name.clone())
}

/// A name that no box has yet.
pub(super) fn free_name(job: &Job, wanted: &str) -> String {
    let taken = |name: &str| job.boxes.iter().any(|b| b.name == name);
    if !taken(wanted) {
        return wanted.to_owned();
    }
    let stem = wanted
        .trim_end_matches(|c: char| c.is_ascii_digit())
        .trim_end();
    (2_u32..)
        .map(|number| format!("{stem} {number}"))
        .find(|name| !taken(name))
        .unwrap_or_else(|| wanted.to_owned())
}

/// The first free place along the wall, to the right of all boxes, mm.
pub(super) fn free_place(job: &Job) -> f64 {
    job.boxes
        .iter()
        .map(|b| b.place.along_wall + b.width)
        .fold(0.0, f64::max)
}

fn plain_box(name: &str, material: &str) -> WallBox {
    let door = Some(plain_door(material));
    let mut new = WallBox::plain([800.0, 400.0, 330.0], 18.0, material, door);
    new.name = name.to_owned();
    new.place.above_floor = 1400.0;
    new.back = Back::Grooved {
        panel: Panel::plain(6.0, material),
        inset: 10.0,
        groove: 6.0,
    };
    for panel in [
        &mut new.left,
        &mut new.right,
        &mut new.top.panel,
        &mut new.bottom.panel,
    ] {
        panel.bands.front = 1.0;
    }
    new
}

/// A plain overlay door without a fitting.
#[must_use]
pub fn plain_door(material: &str) -> Door {
    Door::overlay(Edges::all(2.0), Leaves::One(plain_leaf(material)))
}

/// A plain leaf, banded all around.
#[must_use]
pub fn plain_leaf(material: &str) -> Leaf {
    Leaf {
        bands: Edges::all(1.0),
        ..Leaf::plain(18.0, material)
    }
}

/// The first size of a card, as a choice.
#[must_use]
pub fn first_size(job: &Job, card: CardId, packing: f64) -> Option<FittingChoice> {
    let size = job.card_by_id(card)?.sizes.first()?;
    Some(FittingChoice {
        card,
        size: size.name.clone(),
        packing,
    })
}
