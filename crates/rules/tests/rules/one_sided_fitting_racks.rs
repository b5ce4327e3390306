//! The check `one-sided-fitting-racks`.
//!
//! The plain box's door of 6 kg hangs on an axis 278 mm above and 13.5 mm behind its middle: its
//! axis is 4 below the underside at 582 and 2 behind the front edges, its middle 300 above the
//! floor of the box and, 19 thick on 2 mm bumpers, 11.5 before the edges. Its lift moment is
//! m g (0.278 sin q + 0.0135 cos q), the moment of a weight about an axis (OpenStax University
//! Physics, 12.1): 15.971 N·m open at 100 degrees, at most 16.377, closed 0.794. A spring that
//! gives the same moment everywhere makes every limit a sum of two numbers.
//!
//! Worked by hand on the plain box: door 794 by 594, sides 322 by 600, bores of the fitting 82 below
//! the top end of the side, 29 in from the door's sides.

use crate::common::*;
use crate::findings::*;
use flapwright_model::card::{Card, FittedSides};
use flapwright_model::edit::apply;
use flapwright_rules::finding::Severity;

#[test]
fn one_arm_lifts_no_door_that_is_wider_than_high() {
    let one = |card: Card, width: f64| {
        let mut card = card;
        card.sides = FittedSides::LeftOnly;
        let mut job = weighed(6.0, 0.0, card);
        job.boxes[0].width = width;
        job
    };
    // The door is as much narrower than the box as it is lower: 600 wide is as wide as high.
    assert_eq!(
        severities(&one(with_hinges(card()), 600.0), "one-sided-fitting-racks"),
        []
    );
    assert_eq!(
        severities(&one(with_hinges(card()), 600.1), "one-sided-fitting-racks"),
        [Severity::Caution]
    );
    assert_eq!(
        severities(&one(card(), 500.0), "one-sided-fitting-racks"),
        [Severity::Caution]
    );
    assert_eq!(
        severities(&weighed(6.0, 0.0, card()), "one-sided-fitting-racks"),
        []
    );
    let it = &found(&one(card(), 800.0), "one-sided-fitting-racks")[0];
    // 6 kg x 9.80665 x 0.794 m / 2.
    assert!((it.numbers[1].value - 23.359).abs() < 1e-3);
}

#[test]
fn a_pair_clears_the_racking() {
    let mut one = card();
    one.sides = FittedSides::RightOnly;
    let mut pair = card();
    pair.name = "Dunlin".to_owned();
    let mut job = weighed(6.0, 0.0, one);
    add_card(&mut job, pair);
    let it = found(&job, "one-sided-fitting-racks").remove(0);
    assert_eq!(
        it.remedies[0].kind,
        "remedy.take-size: fitting (fitting-name.size: card \"Dunlin\", size \"1\")"
    );
    let before = job.clone();
    let undo = apply(&mut job, it.remedies[0].edit.clone()).expect("a sound job");
    assert_eq!(severities(&job, "one-sided-fitting-racks"), []);
    apply(&mut job, undo).expect("undone");
    assert_eq!(job, before);
}

#[test]
fn a_fitting_at_one_side_says_what_twists_the_door() {
    const NAME: &str = "one-sided-fitting-racks";
    let one = |sides, card: Card, width: f64| {
        let mut job = weighed(6.0, 0.0, Card { sides, ..card });
        job.boxes[0].width = width;
        the_only(&job, NAME)
    };
    // 700 wide: the door is 694 by 594. 6 kg x 9.80665 x 0.347 m = 20.417 N·m.
    let hinged = one(FittedSides::LeftOnly, with_hinges(card()), 700.0);
    says(
        &hinged,
        "one-sided-fitting-racks.twists: card \"Plover\", side left, width_beyond_height 100 mm, \
         twist 20.4 N·m",
    );
    says(
        &hinged,
        "one-sided-fitting-racks.wide: width 694 mm, height 594 mm",
    );
    assert_close(number(&hinged, "width_beyond_height"), 100.0);
    let twist = number(&hinged, "twist");
    assert!((twist - 20.417_445).abs() < 1e-6, "{twist}");
    let free = one(FittedSides::RightOnly, card(), 400.0);
    says(&free, "card \"Plover\", side right, ");
    says(&free, "one-sided-fitting-racks.alone: width 394 mm");
}
