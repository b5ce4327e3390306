//! What is new starts like this; every number of it can be changed in the form.

use flapwright_model::cabinet::{Back, Panel, WallBox};
use flapwright_model::card::OpeningKind;
use flapwright_model::door::{Door, FittingChoice, Leaf, Leaves};
use flapwright_model::edges::Edges;
use flapwright_model::job::Job;
use flapwright_model::material::MaterialClass;

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
#[must_use]
pub fn free_name(job: &Job, wanted: &str) -> String {
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

/// The first free place along the wall, to the right of all boxes.
#[must_use]
pub fn free_place(job: &Job) -> f64 {
    job.boxes
        .iter()
        .map(|b| b.place.along_wall + b.width)
        .fold(0.0, f64::max)
}

/// A plain box with a plain door and banded front edges.
#[must_use]
pub fn plain_box(name: &str, material: &str) -> WallBox {
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

/// Gives a door the leaves that an opening kind has, keeping what is there.
pub fn suit_leaves(door: &mut Door, kind: OpeningKind, joint_down: f64) {
    let leaves = &door.leaves;
    door.leaves = match (leaves, kind.leaf_count()) {
        (Leaves::One(leaf), 2) => Leaves::Two {
            upper: leaf.clone(),
            lower: leaf.clone(),
            joint_down,
            joint_gap: 3.0,
        },
        (Leaves::Two { upper, .. }, 1) => Leaves::One(upper.clone()),
        (Leaves::One(_) | Leaves::Two { .. }, _) => return,
    };
}

/// The first size of a card, as a choice.
#[must_use]
pub fn first_size(job: &Job, card: &str, packing: f64) -> Option<FittingChoice> {
    let card = job.card(card)?;
    let size = card.sizes.first()?;
    Some(FittingChoice {
        card: card.name.clone(),
        size: size.name.clone(),
        packing,
    })
}
