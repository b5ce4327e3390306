//! Whether a card gives the distances of its own worked example.

use std::sync::Arc;

use flapwright_model::cabinet::WallBox;
use flapwright_model::card::{Card, Example, OpeningKind};
use flapwright_model::door::{Door, Leaf, Leaves, SideTie};
use flapwright_model::job::Job;
use flapwright_model::measure;
use flapwright_model::part::Subject;

use super::{Check, Run, finding};
use crate::finding::{Finding, Number, Severity};
use crate::inspection::BoxReport;
use crate::placement::body::Body;
use crate::placement::door_place::DoorPlace;
use crate::placement::faces::side_face;
use crate::placement::fitting::FittingPlace;
use crate::placement::opening::openings;
use crate::say;

const NAME: &str = "card-example-fails";

/// Distances on a card's own example agree when they are closer than this, mm: half of what paper
/// is printed to.
const AGREES: f64 = 0.05;

pub(super) const CHECK: Check = Check {
    name: NAME,
    page: "\
## What it looks at
The worked example that a card carries: the box and door of the example are placed like any other, \
and each distance is compared with what the example says.

## Why it matters
A slip in typing a card is in every box made with it. The example from the fitting's own paper finds \
it.

## Severity
Stop for a card that is in use, caution otherwise.

## What can be done
Compare the card with its paper, number by number.",
    severities: &[Severity::Caution, Severity::Stop],
    settings: &[],
    run: Run::Job(look),
};

fn look(job: &Job, _: &[Arc<BoxReport>], findings: &mut Vec<Finding>) {
    for card in &job.cards {
        let Some(example) = &card.example else {
            continue;
        };
        let wrong = differences(job, card, example);
        let Some(largest) = wrong.iter().map(|it| it.by).reduce(f64::max) else {
            continue;
        };
        let users: Vec<Subject> = users(job, card);
        let severity = if users.is_empty() {
            Severity::Caution
        } else {
            Severity::Stop
        };
        let mut it = finding(
            NAME,
            severity,
            format!(
                "card \"{}\": {} of its own example does not come out, by up to {}",
                card.name,
                say::count(wrong.len(), "distance"),
                measure::length(largest, job.unit)
            ),
            users,
        );
        it.details = wrong.into_iter().map(|it| it.words).collect();
        it.numbers = vec![Number::mm("largest difference", largest)];
        findings.push(it);
    }
}

fn users(job: &Job, card: &Card) -> Vec<Subject> {
    let mut users = Vec::new();
    for (box_index, wall_box) in job.boxes.iter().enumerate() {
        for (opening, it) in wall_box.openings.iter().enumerate() {
            let choice = it.door.as_ref().and_then(|door| door.fitting.as_ref());
            if choice.is_some_and(|choice| choice.card == card.name) {
                users.push(Subject::Opening { box_index, opening });
            }
        }
    }
    users
}

struct Difference {
    words: String,
    by: f64,
}

fn differences(job: &Job, card: &Card, example: &Example) -> Vec<Difference> {
    let wall_box = example_box(card, example);
    let body = Body::of(&wall_box);
    let places = openings(&wall_box, &body);
    let (Some(place), Some(door)) = (places.first(), wall_box.openings[0].door.as_ref()) else {
        return Vec::new();
    };
    let door_place = DoorPlace::of(&wall_box, place, door, &job.settings);
    let fitting = FittingPlace {
        card,
        size: &example.size,
        packing: example.packing,
        opening: place,
        door: &door_place,
    };
    let own = card.sides.ties().first().copied().unwrap_or(SideTie::Left);
    let (panel, edge) = match own {
        SideTie::Left => (&body.left, door_place.edges.left),
        SideTie::Right => (&body.right, door_place.edges.right),
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
    let mut wrong = compare("side", ("down", "back"), &side, &example.side, job);
    wrong.extend(compare(
        "door",
        ("in", "down"),
        &on_door,
        &example.door,
        job,
    ));
    wrong
}

fn compare(
    face: &str,
    words: (&str, &str),
    found: &[(f64, f64)],
    expected: &[(f64, f64)],
    job: &Job,
) -> Vec<Difference> {
    let mut wrong = Vec::new();
    if found.len() != expected.len() {
        wrong.push(Difference {
            words: format!(
                "{face}: the example lists {}, the card has {}",
                say::count(expected.len(), "bore"),
                found.len()
            ),
            by: 0.0,
        });
    }
    for (i, (found, expected)) in found.iter().zip(expected).enumerate() {
        for (word, found, expected) in [
            (words.0, found.0, expected.0),
            (words.1, found.1, expected.1),
        ] {
            let by = (found - expected).abs();
            if by > AGREES {
                wrong.push(Difference {
                    words: format!(
                        "{face}, bore {} of the card, {word}: the example says {}, the card gives \
                         {}",
                        i + 1,
                        measure::length(expected, job.unit),
                        measure::length(found, job.unit)
                    ),
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
