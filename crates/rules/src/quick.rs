//! A question without a job: which size for a door of this size and mass?

use flapwright_model::cabinet::WallBox;
use flapwright_model::card::{Card, OpeningKind};
use flapwright_model::door::{Door, FittingChoice, Leaf, Leaves, TypedMass};
use flapwright_model::edges::Edges;
use flapwright_model::job::Job;
use flapwright_model::material::Material;

/// What is known of the door.
#[derive(Debug, Clone, PartialEq)]
pub struct QuickDoor {
    /// How it opens.
    pub kind: OpeningKind,
    /// Width, mm.
    pub width: f64,
    /// Height, mm.
    pub height: f64,
    /// Thickness, mm.
    pub thickness: f64,
    /// Name of the material.
    pub material: String,
    /// Mass if it is known, kg; else it follows from the material.
    pub mass: Option<TypedMass>,
    /// Outer height of the box, mm; else the door's height and two reveals.
    pub box_height: Option<f64>,
}

/// Thickness of the panels of the box that stands for the unknown one, mm.
const PANEL: f64 = 18.0;
/// Reveals of that box, mm.
const REVEAL: f64 = 3.0;
/// Depth of that box, mm: deep enough to say nothing against any size.
const DEPTH: f64 = 1000.0;

/// A job with one box around the door. The box is deep, without shelves and has 18 mm panels and
/// reveals of 3 mm, so that only the door decides. `None` when no card is for that opening kind.
#[must_use]
pub fn quick_job(materials: Vec<Material>, cards: Vec<Card>, door: &QuickDoor) -> Option<Job> {
    let card = cards.iter().find(|card| card.kind == door.kind)?;
    let fitting = FittingChoice {
        card: card.name.clone(),
        size: card.sizes.first()?.name.clone(),
        packing: 0.0,
    };
    let mut job = Job::empty(materials, cards);
    job.boxes.push(quick_box(door, fitting));
    Some(job)
}

fn quick_box(door: &QuickDoor, fitting: FittingChoice) -> WallBox {
    let height = door.box_height.unwrap_or(door.height + 2.0 * REVEAL);
    let leaf = Leaf::plain(door.thickness, &door.material);
    // A folding pair is halved.
    let leaves = if door.kind == OpeningKind::FoldingPair {
        Leaves::Two {
            upper: leaf.clone(),
            lower: leaf,
            joint_down: REVEAL + door.height / 2.0 - PANEL,
            joint_gap: REVEAL,
        }
    } else {
        Leaves::One(leaf)
    };
    let reveals = Edges {
        bottom: height - door.height - REVEAL,
        ..Edges::all(REVEAL)
    };
    let its_door = Door {
        typed_mass: door.mass,
        fitting: Some(fitting),
        ..Door::overlay(reveals, leaves)
    };
    let outer = [door.width + 2.0 * REVEAL, height, DEPTH];
    WallBox {
        name: "quick question".to_owned(),
        ..WallBox::plain(outer, PANEL, &door.material, Some(its_door))
    }
}
