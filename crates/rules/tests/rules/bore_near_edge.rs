//! The check `bore-near-edge`.
//!
//! Limits are the settings' defaults: common practice, no source.
//!
//! Worked by hand on the plain box: its door is 794 by 594, its sides 322 by 600, bores 4 across in the
//! door and 5 across in the sides.

use crate::common::*;
use crate::findings::*;
use flapwright_rules::finding::Severity;

#[test]
fn a_bore_keeps_wood_to_the_edge() {
    // 5 mm bores: rim 2.5 from the centre, 3 wanted: 5.5 just holds.
    for (back, expected) in [
        (5.5, vec![]),
        (5.49, vec![Severity::Caution; 2]),
        (2.51, vec![Severity::Caution; 2]),
        (2.5, vec![Severity::Stop; 2]),
        (-9.0, vec![Severity::Stop; 2]),
    ] {
        let mut card = card();
        card.side_bores = vec![side_bore(64.0, back)];
        assert_eq!(
            severities(&job(wall_box(), card), "bore-near-edge"),
            expected,
            "{back} mm"
        );
    }
}

fn near_edge(across: f64, down: f64) -> Vec<Told> {
    let mut card = card();
    card.door_bores[0].bores = vec![door_bore(across, down)];
    found(&job(wall_box(), card), "bore-near-edge")
}

#[test]
fn the_edge_that_a_door_bore_comes_near_is_named_as_seen_from_the_front() {
    // The overlay is 15: a bore -11 across is 4 from its own side's edge, its rim 2.
    let found = near_edge(-11.0, 122.0);
    assert_eq!(found.len(), 2);
    // In hole-table order by u: first at u = 4, which is the right-hand edge from the front.
    let words: Vec<&str> = found.iter().map(|it| it.message.as_str()).collect();
    assert!(
        words[0].contains("edge right-edge, wood_to_the_edge 2 mm"),
        "{words:?}"
    );
    assert!(
        words[1].contains("edge left-edge, wood_to_the_edge 2 mm"),
        "{words:?}"
    );
    // The door's top edge is at 597, 15 above the underside at 582; its bottom edge at 3.
    let top = near_edge(100.0, -14.5);
    assert_eq!(top[0].severity, Severity::Stop);
    assert_eq!(
        top[0].message,
        "bore-near-edge.cuts: bore 1, purpose \"arm screw\", edge top-edge, by 1.5 mm, wood_to_the_edge -1.5 mm, wanted 3 mm"
    );
    assert_close(number(&top[0], "wood_to_the_edge"), -1.5);
    let bottom = near_edge(100.0, 582.0 - 3.0 - 4.5);
    assert_eq!(
        bottom[0].message,
        "bore-near-edge.near: bore 1, purpose \"arm screw\", edge bottom-edge, wood_to_the_edge 2.5 mm, wanted 3 mm"
    );
}

#[test]
fn the_edge_that_a_side_bore_comes_near_has_its_name() {
    let with = |down: f64, back: f64| {
        let mut card = card();
        card.side_bores = vec![side_bore(down, back)];
        let found = found(&job(wall_box(), card), "bore-near-edge");
        assert_eq!(found.len(), 2, "{found:?}");
        found[0].message.clone()
    };
    // Front at 0, back at 322, top end 18 above the underside, bottom end 582 below it.
    assert!(with(64.0, 4.5).contains("edge front-edge, wood_to_the_edge 2 mm"));
    assert!(with(64.0, 317.5).contains("edge back-edge, wood_to_the_edge 2 mm"));
    assert!(with(-13.5, 41.0).contains("edge top-end, wood_to_the_edge 2 mm"));
    assert!(with(577.5, 41.0).contains("edge bottom-end, wood_to_the_edge 2 mm"));
}

#[test]
fn the_edge_that_a_bore_of_the_top_comes_near_has_its_name() {
    // Plates 11 from the spread points, 43 behind the sides: now 4.5, in a top that is flush.
    let mut card = with_hinges(card());
    card.top_bores[0].bores[0].back.by = flapwright_model::card::PerSize::All(4.5);
    let found = found(&job(wall_box(), card), "bore-near-edge");
    assert!(!found.is_empty());
    assert!(
        found.iter().all(|it| it
            .message
            .contains("edge front-edge, wood_to_the_edge 2 mm")),
        "{found:?}"
    );
}
