//! The check `bore-not-in-this-material`.
//!
//! Limits are the settings' defaults: common practice, no source.
//!
//! Worked by hand on the plain box: its door is 794 by 594, its sides 322 by 600, bores 4 across in the
//! door and 5 across in the sides.

use crate::common::*;
use crate::findings::*;
use flapwright_model::cabinet::SystemRows;
use flapwright_model::door::{BuildUp, Leaf, Leaves};
use flapwright_model::job::Job;
use flapwright_model::material::MaterialClass;
use flapwright_rules::finding::Severity;

#[test]
fn a_leaf_of_glass_takes_only_what_the_card_says() {
    let mut job = with_glass(job(wall_box(), card()));
    the_job_door(&mut job, 0).leaves = Leaves::One(Leaf {
        build: BuildUp::Plain {
            thickness: 19.0,
            material: "test glass".to_owned(),
        },
        ..leaf(19.0)
    });
    assert_eq!(
        severities(&job, "bore-not-in-this-material"),
        [Severity::Stop]
    );
    for bore in &mut job.cards[0].card.door_bores[0].bores {
        bore.in_glass_or_metal = true;
    }
    assert_eq!(severities(&job, "bore-not-in-this-material"), []);
}

#[test]
fn one_bore_that_the_card_does_not_give_for_glass_is_counted() {
    let mut job = job(wall_box(), card());
    job.materials.push(glass());
    the_job_door(&mut job, 0).leaves = Leaves::One(Leaf {
        build: BuildUp::Plain {
            thickness: 19.0,
            material: "test glass".to_owned(),
        },
        ..leaf(19.0)
    });
    // Of two bores at each side the card allows the first.
    job.cards[0].card.door_bores[0].bores[0].in_glass_or_metal = true;
    let found = found(&job, "bore-not-in-this-material");
    assert_eq!(found.len(), 1);
    assert_eq!(
        found[0].message,
        "bore-not-in-this-material.not-on-card: bores 2, material \"test glass\""
    );
}

#[test]
fn system_rows_in_a_side_of_metal_are_counted() {
    let mut job = job(wall_box(), card());
    let mut metal = glass();
    metal.name = "test metal".to_owned();
    metal.class = MaterialClass::Metal;
    job.materials.push(metal);
    job.boxes[0].left.material = "test metal".to_owned();
    // The fitting's two screws; nothing says that the card gives them for metal.
    let count = |job: &Job| {
        let found = found(job, "bore-not-in-this-material");
        found.first().map(|it| it.message.clone())
    };
    let message = count(&job).expect("a stop");
    assert!(message.contains("not-on-card: bores 2, "), "{message}");
    // 600 - 180 - 180 = 240 = 7.5 pitches: 8 bores a row.
    job.boxes[0].system_rows = Some(SystemRows {
        front: 41.0,
        rear: 41.0,
        first: 180.0,
        last: 180.0,
        diameter: 5.0,
        depth: 12.0,
    });
    let message = count(&job).expect("a stop");
    assert!(message.contains("not-on-card: bores 18, "), "{message}");
}
