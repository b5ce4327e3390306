//! A question without a job: which size for a door of this size and mass?

use flapwright_model::cabinet::WallBox;
use flapwright_model::card::{Card, OpeningKind};
use flapwright_model::change::first_size;
use flapwright_model::door::{Door, FittingChoice, Leaf, Leaves, TypedMass};
use flapwright_model::edges::Edges;
use flapwright_model::job::Job;
use flapwright_model::material::Material;

/// What is known of the door.
#[derive(Debug, Clone, PartialEq)]
pub struct AskedDoor {
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
pub fn job_for(materials: Vec<Material>, cards: Vec<Card>, door: &AskedDoor) -> Option<Job> {
    let mut job = Job::empty(materials, cards);
    let used = job.cards.iter().find(|used| used.card.kind == door.kind)?;
    let fitting = first_size(&job, used.id, 0.0)?;
    job.boxes.push(quick_box(door, fitting));
    job.give_ids();
    Some(job)
}

fn quick_box(door: &AskedDoor, fitting: FittingChoice) -> WallBox {
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

/// Least depth of the box of a card's picture, mm.
const LEAST_SAMPLE_DEPTH: f64 = 280.0;
/// Room behind a fitting and below a door in that box, mm.
const SAMPLE_ROOM: f64 = 30.0;

/// A job with one box on which a card can be looked at: a door in the middle of what the size is
/// made for, panels and overlays of the card's own example where it has one. `None` when the card
/// has no such size, or the table no material.
#[must_use]
pub fn sample_job(materials: Vec<Material>, card: Card, size: &str) -> Option<Job> {
    let its = card.size(size)?;
    let middle = |span: flapwright_model::card::Span| f64::midpoint(span.min, span.max);
    let example = card.example.as_ref().filter(|it| it.panel_thickness > 0.0);
    let panel = example.map_or(PANEL, |it| it.panel_thickness);
    let reveal = |overlay: f64| panel - overlay;
    let reveals = example.map_or(Edges::all(REVEAL), |it| Edges {
        left: reveal(it.overlays.left),
        right: reveal(it.overlays.right),
        top: reveal(it.overlays.top),
        bottom: reveal(it.overlays.bottom),
    });
    let height = (middle(its.door_height) + reveals.top + reveals.bottom)
        .max(its.least_inner_height + 2.0 * panel);
    let width = middle(its.door_width).min(900.0) + reveals.left + reveals.right;
    let depth = (its.least_inner_depth + SAMPLE_ROOM).max(LEAST_SAMPLE_DEPTH);
    let material = materials.first()?.name.clone();
    let leaf = Leaf::plain(panel, &material);
    let leaves = if card.kind == OpeningKind::FoldingPair {
        let told = example.map(|it| it.joint_down).filter(|it| *it > 0.0);
        Leaves::Two {
            upper: leaf.clone(),
            lower: leaf,
            joint_down: told.unwrap_or(height / 2.0 - panel),
            joint_gap: REVEAL,
        }
    } else {
        Leaves::One(leaf)
    };
    let name = card.name.clone();
    let mut job = Job::empty(materials, vec![card]);
    let door = Door {
        fitting: Some(FittingChoice {
            card: job.cards.first()?.id,
            size: size.to_owned(),
            packing: 0.0,
        }),
        ..Door::overlay(reveals, leaves)
    };
    let wall_box = WallBox {
        name,
        ..WallBox::plain([width, height, depth], panel, &material, Some(door))
    };
    job.boxes.push(wall_box);
    job.give_ids();
    Some(job)
}
