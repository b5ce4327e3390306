//! What is new starts like this; every number of it can be changed in the form.

use super::box_structure::{BackKind, THIN_BACK, back_of};
use crate::cabinet::{Panel, WallBox};
use crate::door::{Door, DoorFit, FittingChoice, Leaf, Leaves};
use crate::edges::{Edge, Edges};
use crate::edit::Edit;
use crate::field::{BoxField, LeafField, PanelField};
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
    let usual = |field: BoxField| field.info().usual.number();
    let thickness = PanelField::Thickness.info().usual.number();
    let outer = [BoxField::Width, BoxField::Height, BoxField::Depth].map(usual);
    let door = Some(plain_door(material));
    let mut new = WallBox::plain(outer, thickness, material, door);
    new.name = name.to_owned();
    new.place.above_floor = usual(BoxField::AboveFloor);
    new.back = back_of(BackKind::Grooved, Panel::plain(THIN_BACK, material));
    for panel in [
        &mut new.left,
        &mut new.right,
        &mut new.top.panel,
        &mut new.bottom.panel,
    ] {
        panel.bands.front = PanelField::BandFront.info().usual.number();
    }
    new
}

/// The usual overlay door without a fitting.
#[must_use]
pub fn plain_door(material: &str) -> Door {
    Door {
        fit: DoorFit::usual_overlay(),
        ..Door::overlay(Edges::default(), Leaves::One(plain_leaf(material)))
    }
}

/// The usual leaf, banded all around.
#[must_use]
pub fn plain_leaf(material: &str) -> Leaf {
    let usual = |field: LeafField| field.info().usual.number();
    Leaf {
        bands: Edges::all(usual(LeafField::Band(Edge::Left))),
        ..Leaf::plain(usual(LeafField::Thickness), material)
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
