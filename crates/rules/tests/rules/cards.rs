//! Proof of cards and slips of typing.

use crate::findings::said as said_of;
use flapwright_model::card::{Card, Depth, PerSize};
use flapwright_model::card_draft::CardDraft;
use flapwright_model::file::read_card;
use flapwright_model::lift::{Carries, Lift};
use flapwright_model::linkage::Bodies;
use flapwright_rules::plausibility::slips;
use flapwright_rules::proof::{Proof, proof};

const DEMO: [&str; 5] = [
    include_str!("../../../../assets/demo/cards/wren.ron"),
    include_str!("../../../../assets/demo/cards/dipper.ron"),
    include_str!("../../../../assets/demo/cards/heron.ron"),
    include_str!("../../../../assets/demo/cards/swift.ron"),
    include_str!("../../../../assets/demo/cards/owl.ron"),
];

fn demo(index: usize) -> Card {
    read_card(DEMO[index]).expect("the demo cards are sound")
}

/// The slips of a card as data, a line each.
fn said(card: &Card) -> String {
    let lines: Vec<String> = slips(card)
        .iter()
        .map(|it| {
            let (message, remedy) = (said_of(&it.message), said_of(&it.remedy));
            format!("{}: {message}; {remedy}", it.field)
        })
        .collect();
    lines.join("\n")
}

#[test]
fn the_shipped_cards_are_proved_and_without_slips() {
    for index in 0..DEMO.len() {
        let card = demo(index);
        assert_eq!(proof(&card), Proof::Proved, "{}", card.name);
        assert_eq!(said(&card), "", "{}", card.name);
    }
}

#[test]
fn a_card_without_an_example_or_with_an_empty_one_is_not_proved() {
    let mut card = demo(0);
    let mut empty = card.example.clone().expect("an example");
    empty.side.clear();
    empty.door.clear();
    card.example = Some(empty);
    assert_eq!(proof(&card), Proof::NoExample);
    card.example = None;
    let found = proof(&card);
    assert_eq!(found, Proof::NoExample);
    assert!(!found.is_proved() && said_of(&found.message()).contains("no-example"));
}

#[test]
fn a_distance_that_moved_is_told_by_how_much() {
    let mut card = demo(0);
    card.side_bores[1].back.by = PerSize::All(165.0);
    let Proof::Fails(moved) = proof(&card) else {
        panic!("it holds");
    };
    assert_eq!(moved.len(), 1);
    assert!((moved[0].by - 2.0).abs() < 1e-9);
    assert!(
        said_of(&moved[0].message).contains("163 mm")
            && said_of(&moved[0].message).contains("165 mm")
    );
    // Half a tenth of a millimetre is what paper is printed to.
    card.side_bores[1].back.by = PerSize::All(163.04);
    assert!(proof(&card).is_proved());
}

#[test]
fn inches_typed_as_millimetres_are_noticed() {
    let mut card = demo(0);
    card.side_bores[0].drill.diameter = 0.2;
    let text = said(&card);
    assert!(text.contains("side_bores[0].drill.diameter"), "{text}");
    assert!(
        text.contains("slip.small-in-inches: what bore-diameter"),
        "{text}"
    );
    // 0.2 in are 5.08 mm; messages round to a tenth.
    assert!(text.contains("5.1 mm"), "{text}");

    let mut draft = CardDraft::of_card(&demo(0));
    for bore in &mut draft.side_bores {
        bore.down.by = "2.8".to_owned();
        bore.back.by = "4.5".to_owned();
    }
    let text = said(&draft.resolve().expect("a sound card"));
    assert!(
        text.contains("side_bores: slip.small-in-inches: what farthest-distance, value 4.5 mm"),
        "{text}"
    );

    let mut card = demo(0);
    card.sizes[3].door_height.max = 21.0;
    card.sizes[3].door_height.min = 12.0;
    assert!(
        said(&card).contains("sizes[3].door_height.max"),
        "{}",
        said(&card)
    );
}

#[test]
fn millimetres_typed_as_inches_are_noticed() {
    let mut card = demo(0);
    card.door_bores[0].bores[0].drill.diameter = 63.5;
    let text = said(&card);
    assert!(
        text.contains("slip.large-in-millimetres: what bore-diameter"),
        "{text}"
    );
    card.door_bores[0].bores[0].drill.diameter = 60.0;
    card.side_bores[0].drill.depth = Depth::Blind(2.0);
    assert_eq!(said(&card), "", "the limits themselves are usual");
}

#[test]
fn front_and_back_exchanged_are_noticed() {
    let mut card = demo(2);
    let Bodies::Parallel {
        box_pivot,
        door_pivot,
        ..
    } = &mut card.linkage.bodies
    else {
        panic!("not parallel arms");
    };
    std::mem::swap(&mut box_pivot.back, &mut door_pivot.back);
    let text = said(&card);
    assert!(text.contains("linkage.bodies.box_pivot.back"), "{text}");
    assert!(
        text.contains("slip.arm-backwards") && text.contains("slip-remedy.front-and-back"),
        "{text}"
    );

    let mut card = demo(0);
    card.envelope.back_from = 189.0;
    card.envelope.back_to = PerSize::All(22.0);
    assert!(said(&card).contains("envelope.back_to"), "{}", said(&card));

    let mut card = demo(1);
    let Lift::Strut(strut) = &mut card.sizes[0].lift else {
        panic!("no strut");
    };
    strut.box_back = -strut.box_back;
    assert!(
        said(&card).contains("sizes[0].lift.box_back"),
        "{}",
        said(&card)
    );
}

#[test]
fn a_bore_outside_the_body_is_noticed() {
    let mut card = demo(0);
    card.side_bores[2].back.by = PerSize::All(240.0);
    let text = said(&card);
    assert!(
        text.contains("side_bores[2].back: slip.bore-outside: way way-back, at 240 mm"),
        "{text}"
    );
    assert!(text.contains("from 22 mm, to 189 mm"), "{text}");
}

/// Loads of Heron's sizes.
fn with_masses(masses: [(f64, f64); 4]) -> Card {
    let mut card = demo(2);
    for (size, (min, max)) in card.sizes.iter_mut().zip(masses) {
        size.carries = Carries::Mass { min, max };
        size.door_height.min = 340.0;
        size.door_height.max = 500.0;
    }
    card
}

#[test]
fn a_hole_in_the_load_range_is_noticed_with_its_ends() {
    let text = said(&with_masses([
        (1.8, 2.6),
        (2.9, 5.6),
        (4.8, 8.2),
        (7.4, 11.6),
    ]));
    assert!(
        text.contains("slip.hole: from 2.60 kg, to 2.90 kg"),
        "{text}"
    );
    // Just touching is no hole.
    let text = said(&with_masses([
        (1.8, 2.9),
        (2.9, 5.6),
        (4.8, 8.2),
        (7.4, 11.6),
    ]));
    assert_eq!(text, "");
}

#[test]
fn a_size_within_another_and_sizes_out_of_order_are_noticed() {
    let text = said(&with_masses([
        (1.8, 3.4),
        (2.9, 5.6),
        (3.0, 5.5),
        (4.4, 11.6),
    ]));
    assert!(
        text.contains("sizes[2].carries: slip.inside: inner \"3\", outer \"2\""),
        "{text}"
    );
    let mut card = with_masses([(1.8, 3.4), (2.9, 5.6), (4.8, 8.2), (7.4, 11.6)]);
    assert_eq!(said(&card), "");
    card.sizes.swap(1, 2);
    let text = said(&card);
    assert!(text.contains("slip-remedy.order"), "{text}");
}

#[test]
fn arms_that_cannot_reach_are_noticed() {
    let mut card = demo(4);
    card.linkage.end_degrees = 175.0;
    let text = said(&card);
    assert!(
        text.contains("linkage") && text.contains("no-motion.cannot-close"),
        "{text}"
    );
}

#[test]
fn a_spring_that_cannot_hold_the_largest_door_is_noticed() {
    let mut card = demo(0);
    let Lift::Spring { table, .. } = &mut card.sizes[1].lift else {
        panic!("no spring");
    };
    for row in table {
        row.weakest *= 0.4;
        row.strongest *= 0.4;
    }
    let text = said(&card);
    assert!(
        text.contains("sizes[1].lift: slip.cannot-hold: size \"2\""),
        "{text}"
    );
    assert!(!text.contains("sizes[0].lift"), "{text}");

    let mut card = demo(0);
    let Lift::Spring { table, .. } = &mut card.sizes[0].lift else {
        panic!("no spring");
    };
    for row in table {
        std::mem::swap(&mut row.weakest, &mut row.strongest);
    }
    assert!(said(&card).contains("slip-remedy.settings-exchanged"));
}
