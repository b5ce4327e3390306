//! The check `bore-breaks-through`.
//!
//! Limits are the settings' defaults: common practice, no source.
//!
//! Worked by hand on the plain box: its door is 794 by 594, its sides 322 by 600, bores 4 across in the
//! door and 5 across in the sides.

use crate::common::*;
use crate::findings::*;
use flapwright_model::card::Depth;
use flapwright_rules::finding::Severity;

#[test]
fn a_bore_leaves_wood_before_the_point_of_its_drill() {
    // 5 mm bore 13 deep, point 2 ahead: 16 leaves 3 at full diameter and 1 before the point;
    // 17 leaves just the 2 wanted; 15 leaves nothing; 12 is through.
    for (thickness, expected) in [
        (17.0, vec![]),
        (16.99, vec![Severity::Caution]),
        (16.0, vec![Severity::Caution]),
        (15.01, vec![Severity::Caution]),
        (15.0, vec![Severity::Stop]),
        (12.0, vec![Severity::Stop]),
    ] {
        let mut card = card();
        card.side_bores.truncate(1);
        card.side_bores[0].drill.depth = Depth::Blind(13.0);
        let mut it = wall_box();
        it.left = panel(thickness);
        assert_eq!(
            severities(&job(it, card), "bore-breaks-through"),
            expected,
            "{thickness} mm"
        );
    }
}

#[test]
fn a_through_bore_breaks_nothing() {
    let mut card = card();
    card.side_bores[0].drill.depth = Depth::Through;
    assert_eq!(
        severities(&job(wall_box(), card), "bore-breaks-through"),
        []
    );
}

#[test]
fn a_bore_that_is_too_deep_says_by_how_much() {
    // 13 deep and 2 of point: 1 is left in 16, and 12 are 3 too few (amendment 12).
    let with = |thickness: f64| {
        let mut card = card();
        for bore in &mut card.side_bores {
            bore.drill.depth = flapwright_model::card::Depth::Blind(13.0);
        }
        let mut wall_box = wall_box();
        wall_box.left = panel(thickness);
        found(&job(wall_box, card), "bore-breaks-through")
    };
    let caution = with(16.0);
    assert_eq!(caution[0].severity, Severity::Caution);
    assert_eq!(
        caution[0].message,
        "bore-breaks-through.thin: bores 2, depth 13 mm, thickness 16 mm, wood_left_before_the_point 1 mm"
    );
    let stop = with(12.0);
    assert_eq!(stop[0].severity, Severity::Stop);
    assert_eq!(
        stop[0].message,
        "bore-breaks-through.through: bores 2, over 3 mm, depth 13 mm, thickness 12 mm, wood_left_before_the_point -3 mm"
    );
    assert_close(number(&stop[0], "wood_left_before_the_point"), -3.0);
    // Nothing left is through.
    let even = with(15.0);
    assert_eq!(even[0].severity, Severity::Stop);
    assert_eq!(
        even[0].message,
        "bore-breaks-through.through: bores 2, over 0 mm, depth 13 mm, thickness 15 mm, wood_left_before_the_point 0 mm"
    );
}

#[test]
fn bores_of_two_depths_are_two_findings() {
    let mut card = card();
    card.side_bores[0].drill.depth = flapwright_model::card::Depth::Blind(17.0);
    card.side_bores[1].drill.depth = flapwright_model::card::Depth::Blind(16.0);
    let found = found(&job(wall_box(), card), "bore-breaks-through");
    // Two depths in each side.
    let depths: Vec<f64> = found.iter().map(|it| number(it, "depth")).collect();
    assert_eq!(depths, [17.0, 16.0, 17.0, 16.0]);
}
