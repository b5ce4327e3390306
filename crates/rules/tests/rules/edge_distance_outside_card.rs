//! The check `edge-distance-outside-card`.
//!
//! Limits are the settings' defaults: common practice, no source.
//!
//! Worked by hand on the plain box: its door is 794 by 594, its sides 322 by 600, bores 4 across in the
//! door and 5 across in the sides.
//!
//! The plain box is 800 by 600 with panels of 18: reveals of 3 are overlays of 15, its door is 794 by
//! 594.

use crate::common::*;
use crate::findings::*;
use flapwright_model::card::{EdgeRange, LeafEdge};
use flapwright_model::door::Leaves;
use flapwright_model::part::{LeafId, Part, Subject};
use flapwright_rules::finding::{Severity, Worse};

#[test]
fn a_bore_keeps_the_edge_distance_that_its_card_allows() {
    // Top overlay 15: the first bore is 105 from the top edge, and 29 from its own side.
    for (edge, min, max, expected) in [
        (LeafEdge::Top, 100.0, 105.0, 0),
        (LeafEdge::Top, 105.0, 110.0, 0),
        (LeafEdge::Top, 100.0, 104.9, 2),
        (LeafEdge::Top, 105.1, 110.0, 2),
        (LeafEdge::OwnSide, 29.0, 29.0, 0),
        (LeafEdge::OwnSide, 30.0, 40.0, 2),
    ] {
        let mut card = card();
        card.door_bores[0].bores[0].edge_ranges = vec![EdgeRange { edge, min, max }];
        let found = severities(&job(wall_box(), card), "edge-distance-outside-card");
        assert_eq!(
            found,
            vec![Severity::Stop; expected],
            "{edge:?} {min} to {max}"
        );
    }
}

#[test]
fn a_bore_outside_the_range_of_its_card_says_which_edge() {
    let with = |edge, min, max| {
        let mut card = card();
        card.door_bores[0].bores[0].edge_ranges = vec![EdgeRange { edge, min, max }];
        found(&job(wall_box(), card), "edge-distance-outside-card")
            .iter()
            .map(|it| (it.message.clone(), number(it, "distance")))
            .collect::<Vec<_>>()
    };
    // 594 - 105 = 489 from the bottom edge, 29 from its own side, which is another at each side.
    let bottom = with(LeafEdge::Bottom, 1.0, 2.0);
    assert_close(bottom[0].1, 489.0);
    assert!(
        bottom[0]
            .0
            .contains("edge bottom, over 487 mm, distance 489 mm, least 1 mm, greatest 2 mm"),
        "{bottom:?}"
    );
    assert_eq!(with(LeafEdge::Bottom, 489.0, 489.0), []);
    let sides = with(LeafEdge::OwnSide, 1.0, 2.0);
    assert!(
        sides[0].0.contains("edge left, over 27 mm, distance 29 mm"),
        "{sides:?}"
    );
    assert!(
        sides[1]
            .0
            .contains("edge right, over 27 mm, distance 29 mm"),
        "{sides:?}"
    );
    let top = with(LeafEdge::Top, 1.0, 2.0);
    assert!(
        top[0].0.contains("edge top, over 103 mm, distance 105 mm"),
        "{top:?}"
    );
}

#[test]
fn a_bore_outside_the_range_of_its_card_is_pointed_at_with_its_leaf() {
    // The upper leaf's bores are 15 + 90 = 105 below its top edge; 29 from its own side.
    let mut card = folding_card(4.0);
    card.door_bores[0].bores.truncate(1);
    card.door_bores[0].bores[0].edge_ranges = vec![EdgeRange {
        edge: LeafEdge::Top,
        min: 1.0,
        max: 100.0,
    }];
    let mut job = job(wall_box(), card);
    the_job_door(&mut job, 0).leaves = Leaves::Two {
        upper: leaf(19.0),
        lower: leaf(19.0),
        joint_down: 275.0,
        joint_gap: 3.0,
    };
    let all = found(&job, "edge-distance-outside-card");
    assert_eq!(all.len(), 2, "one at each side");
    let part = part_id(Part::Leaf {
        door: DOOR,
        leaf: LeafId::Upper,
    });
    let mut numbers = Vec::new();
    for it in &all {
        let [Subject::Bore(bore), Subject::Part(leaf)] = it.subjects[..] else {
            panic!("a bore and its leaf: {:?}", it.subjects)
        };
        assert_eq!((bore.part, leaf), (part, part));
        numbers.push(bore.number);
        let words = format!(
            ": bore {}, purpose \"arm screw\", edge top, over 5 mm, distance 105 mm, least 1 mm, \
             greatest 100 mm",
            bore.number
        );
        assert!(it.message.ends_with(&words), "{}", it.message);
        assert_numbers(
            it,
            &[
                ("distance", 105.0, "mm", Worse::Either),
                ("least", 1.0, "mm", Worse::Either),
                ("greatest", 100.0, "mm", Worse::Either),
            ],
        );
    }
    numbers.sort_unstable();
    assert_eq!(numbers, [1, 2]);
}
