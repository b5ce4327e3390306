//! Whether a card gives the distances of its own worked example.

use flapwright_model::cabinet::WallBox;
use flapwright_model::card::{Card, Example, OpeningKind};
use flapwright_model::door::{Door, Leaf, Leaves, Side};
use flapwright_model::job::Settings;
use flapwright_model::message::{Count, Mm, Word};

use crate::message::{CardExampleFails, ProofMessage};
use crate::placement::body::Body;
use crate::placement::door_place::DoorPlace;
use crate::placement::faces::side_face;
use crate::placement::fitting::FittingPlace;
use crate::placement::opening::openings;

/// Distances on a card's own example agree when they are closer than this, mm: half of what paper
/// is printed to.
const AGREES: f64 = 0.05;

/// Whether a card has been tried on the worked example of its own paper.
#[derive(Debug, Clone, PartialEq)]
pub enum Proof {
    /// The example is there and comes out.
    Proved,
    /// There is no example, or one without any distance.
    NoExample,
    /// The example does not come out.
    Fails(Vec<Moved>),
}

/// A distance of the example that does not come out.
#[derive(Debug, Clone, PartialEq)]
pub struct Moved {
    /// Which distance, and both figures.
    pub message: CardExampleFails,
    /// By how much they differ, mm; 0 where bores are missing or too many.
    pub by: f64,
}

impl Proof {
    /// Whether the card may be trusted without a caution.
    #[must_use]
    pub const fn is_proved(&self) -> bool {
        matches!(self, Self::Proved)
    }

    /// One line for a card's page or a sheet's caution.
    #[must_use]
    pub fn message(&self) -> ProofMessage {
        match self {
            Self::Proved => ProofMessage::Proved,
            Self::NoExample => ProofMessage::NoExample,
            Self::Fails(moved) => ProofMessage::Fails {
                distances: Count(moved.len()),
            },
        }
    }
}

/// Tries a sound card on its own example.
#[must_use]
pub fn proof(card: &Card) -> Proof {
    let example = card
        .example
        .as_ref()
        .filter(|it| !it.side.is_empty() || !it.door.is_empty());
    let Some(example) = example else {
        return Proof::NoExample;
    };
    let moved = differences(card, example);
    if moved.is_empty() {
        Proof::Proved
    } else {
        Proof::Fails(moved)
    }
}

fn differences(card: &Card, example: &Example) -> Vec<Moved> {
    let wall_box = example_box(card, example);
    let body = Body::of(&wall_box);
    let places = openings(&wall_box, &body);
    let (Some(place), Some(door)) = (places.first(), wall_box.body.door.as_ref()) else {
        return Vec::new();
    };
    let door_place = DoorPlace::of(&wall_box, place, door, &Settings::default());
    let fitting = FittingPlace {
        card,
        size: &example.size,
        packing: example.packing,
        opening: place,
        door: &door_place,
    };
    let own = card.sides.ties().first().copied().unwrap_or(Side::Left);
    let (panel, edge) = match own {
        Side::Left => (&body.left, door_place.edges.left),
        Side::Right => (&body.right, door_place.edges.right),
    };
    let side: Vec<(f64, f64)> = fitting
        .side_bores()
        .iter()
        .filter(|bore| bore.side == own)
        .map(|bore| side_face(panel, bore.at))
        .map(|at| (at.y, at.x))
        .collect();
    let on_door: Vec<(f64, f64)> = fitting
        .leaf_bores()
        .iter()
        .filter(|bore| bore.bore.side == own && !bore.spread)
        .map(|bore| bore.bore.at)
        .map(|at| ((at.x - edge).abs(), door_place.edges.top - at.y))
        .collect();
    let (down, back, inward) = (Word("down"), Word("back"), Word("in"));
    let mut wrong = compare(Word("side"), [down, back], &side, &example.side);
    wrong.extend(compare(
        Word("door"),
        [inward, down],
        &on_door,
        &example.door,
    ));
    wrong
}

fn compare(
    face: Word,
    ways: [Word; 2],
    found: &[(f64, f64)],
    expected: &[(f64, f64)],
) -> Vec<Moved> {
    let mut wrong = Vec::new();
    if found.len() != expected.len() {
        wrong.push(Moved {
            message: CardExampleFails::BoreCount {
                face,
                listed: Count(expected.len()),
                has: Count(found.len()),
            },
            by: 0.0,
        });
    }
    for (i, (found, expected)) in found.iter().zip(expected).enumerate() {
        let pairs = [(found.0, expected.0), (found.1, expected.1)];
        for (way, (found, expected)) in ways.into_iter().zip(pairs) {
            let by = (found - expected).abs();
            if by > AGREES {
                wrong.push(Moved {
                    message: CardExampleFails::Distance {
                        face,
                        bore: Count(i + 1),
                        way,
                        listed: Mm(expected),
                        found: Mm(found),
                    },
                    by,
                });
            }
        }
    }
    wrong
}

/// Outer sizes of the example's box, mm: large enough to be out of the way.
const OUTER: [f64; 3] = [1000.0, 1000.0, 1000.0];
/// Thickness of its door, mm; an overlay door's bores do not depend on it.
const DOOR: f64 = 19.0;

/// A frameless box, top between the sides, with the example's door.
fn example_box(card: &Card, example: &Example) -> WallBox {
    let leaf = || Leaf::plain(DOOR, "");
    let leaves = if card.kind == OpeningKind::FoldingPair {
        Leaves::Two {
            upper: leaf(),
            lower: leaf(),
            joint_down: example.joint_down,
            joint_gap: 0.0,
        }
    } else {
        Leaves::One(leaf())
    };
    let reveals = example
        .overlays
        .map(|_, overlay| example.panel_thickness - overlay);
    let door = Door::overlay(reveals, leaves);
    WallBox::plain(OUTER, example.panel_thickness, "", Some(door))
}
