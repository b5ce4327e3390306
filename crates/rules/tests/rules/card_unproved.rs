//! The check `card-unproved`.
//!
//! The example of the test card, by hand: panels of 18 and overlays of 15 put the side bores 18 + 64
//! down, 41 and 137 back, the door bores 15 + 14 in, 15 + 90 and 15 + 122 down.

use crate::common::*;
use crate::findings::*;
use crate::worked::example_of_test_card;
use flapwright_model::acceptance::Topic;
use flapwright_model::card::Example;
use flapwright_model::edges::Edges;
use flapwright_rules::finding::{Severity, Worse};

#[test]
fn a_card_in_use_has_an_example() {
    const NAME: &str = "card-unproved";
    let mut job = job(wall_box(), card());
    job.settings.weights.clear();
    assert_eq!(severities(&job, NAME), [Severity::Caution]);
    assert_eq!(found(&job, NAME)[0].message, "card-unproved.used: doors 1");
    let mut unused = job.clone();
    the_job_door(&mut unused, 0).fitting = None;
    assert_eq!(severities(&unused, NAME), []);
    // By hand: 18 mm panels, overlay 15: the side's bores are 64 + 18 down its end; the door's
    // are 15 + 14 in and 90 + 15 down.
    job.cards[0].card.example = Some(Example {
        size: "1".to_owned(),
        panel_thickness: 18.0,
        overlays: Edges::all(15.0),
        packing: 0.0,
        joint_down: 0.0,
        side: vec![(82.0, 41.0), (82.0, 137.0)],
        door: vec![(29.0, 105.0), (29.0, 137.0)],
    });
    assert_eq!(severities(&job, NAME), []);
    assert_eq!(severities(&job, "card-example-fails"), []);
    if let Some(example) = &mut job.cards[0].card.example {
        example.side.clear();
        example.door.clear();
    }
    assert_eq!(severities(&job, NAME), [Severity::Caution]);
}

const UNPROVED: &str = "card-unproved";

#[test]
fn a_card_without_an_example_counts_the_doors_on_it() {
    let mut wall_box = wall_box();
    split(
        &mut wall_box,
        fixed_shelf(300.0, 18.0, 3.0),
        Some(door(Edges::all(3.0))),
    );
    let mut job = job(wall_box, card());
    job.settings.weights.remove(UNPROVED);
    let it = the_only(&job, UNPROVED);
    assert_eq!(it.message, "card-unproved.used: doors 2");
    assert_numbers(&it, &[("doors", 2.0, "", Worse::Greater)]);
    assert_eq!(
        it.subjects,
        [door_subject(&job, 0, 0), door_subject(&job, 0, 1)]
    );
    assert_eq!(it.about, [Topic::Card(job.cards[0].id)]);
    // One side of it is something to compare.
    for (side, door) in [(true, false), (false, true)] {
        let mut half = example_of_test_card();
        if !side {
            half.side.clear();
        }
        if !door {
            half.door.clear();
        }
        job.cards[0].card.example = Some(half);
        assert_eq!(found(&job, UNPROVED), [], "side {side}, door {door}");
    }
}
