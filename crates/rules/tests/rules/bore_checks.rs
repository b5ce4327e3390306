//! What the checks on single bores say: which edge, which member, how many millimetres. Worked by
//! hand on the plain box: its door is 794 by 594, its sides 322 by 600, bores 4 across in the door
//! and 5 across in the sides.

use crate::common::*;
use crate::findings::*;
use flapwright_model::cabinet::SystemRows;
use flapwright_model::card::{DoorBore, EdgeRange, LeafEdge};
use flapwright_model::door::{BuildUp, Leaf, Leaves};
use flapwright_model::edges::Edges;
use flapwright_model::job::Job;
use flapwright_model::material::MaterialClass;
use flapwright_rules::finding::Severity;

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

/// What is found of bores in a leaf with a frame of these members around glass that reaches 8 into
/// them.
fn in_frame(members: Edges<f64>, bores: Vec<DoorBore>) -> Vec<Told> {
    let mut card = card();
    card.door_bores[0].bores = bores;
    let mut job = with_glass(job(wall_box(), card));
    the_job_door(&mut job, 0).leaves = Leaves::One(framed(members, "test glass"));
    found(&job, "bore-misses-member")
}

#[test]
fn a_bore_is_measured_from_the_groove_on_every_side() {
    let stiles = |left, right, top, bottom| Edges {
        left,
        right,
        top,
        bottom,
    };
    let webs = |members, bore: DoorBore| -> Vec<f64> {
        in_frame(members, vec![bore])
            .iter()
            .map(|it| (number(it, "wood_to_the_groove") * 1e6).round() / 1e6)
            .collect()
    };
    // 29 from each side: rim at 31. Grooves begin 8 before the member's inner edge.
    let beside = || door_bore(14.0, 250.0);
    assert_eq!(webs(stiles(38.0, 60.0, 60.0, 60.0), beside()), [-1.0]);
    assert_eq!(webs(stiles(60.0, 37.0, 60.0, 60.0), beside()), [-2.0]);
    assert_eq!(
        webs(stiles(60.0, 60.0, 60.0, 60.0), beside()),
        Vec::<f64>::new()
    );
    // In the rails, 200 in from the sides: 15 + 20 = 35 below the top edge, rim at 37.
    let in_top = || door_bore(185.0, 20.0);
    assert_eq!(webs(stiles(60.0, 60.0, 44.0, 60.0), in_top()), [-1.0; 2]);
    assert_eq!(
        webs(stiles(60.0, 60.0, 45.0, 60.0), in_top()),
        Vec::<f64>::new()
    );
    // 594 - 15 - 544 = 35 above the bottom edge.
    let in_bottom = || door_bore(185.0, 544.0);
    assert_eq!(webs(stiles(60.0, 60.0, 60.0, 43.0), in_bottom()), [-2.0; 2]);
    assert_eq!(
        webs(stiles(60.0, 60.0, 60.0, 45.0), in_bottom()),
        Vec::<f64>::new()
    );
    // Off the corner of the glass by 1.2 across and 1.5 or 1.6 up: 1.9209 and 2.0 from it, and the
    // bore's radius is 2. Grooves at 52 from the sides and from the top.
    let off = |up: f64| door_bore(52.0 - 1.2 - 15.0, 52.0 - up - 15.0);
    assert_eq!(
        webs(stiles(60.0, 60.0, 60.0, 60.0), off(1.6 + 1e-9)),
        Vec::<f64>::new()
    );
    let near = webs(stiles(60.0, 60.0, 60.0, 60.0), off(1.5));
    assert_eq!(near.len(), 2);
    assert_close(near[0], -0.079_063);
}

#[test]
fn a_bore_in_the_groove_says_how_far_it_reaches() {
    let found = in_frame(Edges::all(38.0), vec![door_bore(14.0, 250.0)]);
    assert_eq!(
        found[0].message,
        "bore-misses-member.into-infill: bore 1, purpose \"arm screw\", by 1 mm, infill \"test glass\", wood_to_the_groove -1 mm"
    );
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

#[test]
fn bores_that_meet_say_so_and_bores_that_come_near_say_how_near() {
    let rows = |first: f64| {
        let mut it = wall_box();
        it.system_rows = Some(SystemRows {
            front: 41.0,
            rear: 41.0,
            first,
            last: 600.0 - first,
            diameter: 5.0,
            depth: 12.0,
        });
        found(&job(it, card()), "bores-collide")
    };
    // The fitting's bore is 82 below the top end: 7.5 apart leaves 2.5 of wood between two of 5.
    let near = rows(89.5);
    assert_eq!(
        near[0].message,
        "bores-collide.near: first 1, first_purpose \"body screw\", second 3, second_purpose \"shelf pin\", wood_between 2.5 mm, wanted 3 mm"
    );
    assert_close(number(&near[0], "wood_between"), 2.5);
    let met = rows(84.0);
    assert_eq!(
        met[0].message,
        "bores-collide.touch: first 1, first_purpose \"body screw\", second 3, second_purpose \"shelf pin\", wood_between -3 mm, wanted 3 mm"
    );
    assert_close(number(&met[0], "wood_between"), -3.0);
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
