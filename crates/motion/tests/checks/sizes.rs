//! Verdicts on sizes.

use flapwright_model::card::{AdjustmentRange, Card, OpeningKind};
use flapwright_model::lift::{Carries, Lift, MassRow, PieceCount, SpringRow};
use flapwright_motion::closed::ClosedDoor;
use flapwright_motion::reason::Reason;
use flapwright_motion::reason_message::ReasonMessage;
use flapwright_motion::sizes::{Grade, Judged, Offer, Verdict, verdict, verdicts};

use crate::common::{COLD_AND_HOT, flap, folding, one_leaf, plates, size, two_leaves};

const OFFER: Offer = Offer {
    door_width: 800.0,
    box_height: 420.0,
    depth_from_side: 290.0,
    depth_from_frame: 290.0,
    opening_height: 384.0,
    clear_down: 384.0,
    to_adjust: [0.0; 3],
};

/// A flap card with three sizes and springs that suit their masses.
fn flaps() -> Card {
    let mut card = flap(0.0, -11.0, 107.0);
    card.sizes = [
        ("light", 2.0, 4.0),
        ("middle", 3.0, 7.0),
        ("heavy", 6.0, 12.0),
    ]
    .into_iter()
    .map(|(name, min, max)| {
        let mut size = size(name, min, max);
        // A plate of 400 mm and m kg has 1.96133 m sin q.
        let row = |degrees: f64| SpringRow {
            degrees,
            weakest: 1.961_33 * min * degrees.to_radians().sin(),
            strongest: 1.961_33 * max * degrees.to_radians().sin(),
        };
        let table = (0..=12_u8)
            .map(|step| row(f64::from(step) * 10.0))
            .collect();
        size.lift = Lift::Spring {
            table,
            turns: 10.0,
            friction: 1.0,
        };
        size
    })
    .collect();
    card
}

fn door() -> ClosedDoor {
    let mut door = one_leaf(400.0, 18.0);
    door.handle = None;
    door
}

fn judge(card: &Card, size: &str, kilograms: f64, offer: &Offer, pieces: u8) -> Verdict {
    let (door, size) = (door(), card.size(size).expect("a size"));
    let mass = plates(&door, kilograms);
    verdict(
        card,
        size,
        &Judged {
            door: &door,
            mass: &mass,
            offer,
            cold_and_hot: COLD_AND_HOT,
        },
        pieces,
    )
}

/// What is said of a size, as data.
fn words(verdict: &Verdict) -> String {
    verdict
        .reasons
        .iter()
        .map(|reason| format!("{:?}\n", reason.message()))
        .collect()
}

#[test]
fn the_whole_mass_range_inside_fits_and_its_end_outside_is_marginal() {
    let card = flaps();
    // Plates have 10 % more and less than their likely mass.
    for (kilograms, grade, centred) in [
        (5.0, Grade::Fits, 0.75), // 4.5 to 5.5 in 3 to 7: 1.5 of 2 kg to the nearer limit
        (6.5, Grade::Marginal, -0.075), // 5.85 to 7.15
        (7.5, Grade::No, -0.625), // 6.75 to 8.25
    ] {
        let verdict = judge(&card, "middle", kilograms, &OFFER, 2);
        assert_eq!(verdict.grade, grade, "{kilograms} kg: {}", words(&verdict));
        assert!(
            (verdict.centred - centred).abs() < 1e-9,
            "{kilograms} kg: {}",
            verdict.centred
        );
    }
}

#[test]
fn sizes_are_ranked_by_grade_and_then_by_how_centred_the_mass_lies() {
    let door = door();
    let mass = plates(&door, 5.0);
    let judged = Judged {
        door: &door,
        mass: &mass,
        offer: &OFFER,
        cold_and_hot: COLD_AND_HOT,
    };
    let found = verdicts(
        &[flaps(), folding()],
        OpeningKind::TopHingedFlap,
        &judged,
        None,
    );
    let names: Vec<_> = found.iter().map(|verdict| verdict.size.as_str()).collect();
    // 4.5 to 5.5 kg miss 6 kg by half of half the span, and 4 kg by one and a half of it.
    assert_eq!(names, ["middle", "heavy", "light"]);
    assert_eq!(found[0].grade, Grade::Fits);
}

#[test]
fn the_setting_that_balances_is_told_in_turns() {
    // Springs grow from 3 to 7 kg over 10 turns: 5 kg is balanced by 5 turns, 4.5 by 3.75. The
    // table's chords lie a little below the sine.
    let setting = judge(&flaps(), "middle", 5.0, &OFFER, 2)
        .setting
        .expect("a setting");
    assert!((setting.turns.likely - 5.0).abs() < 0.05, "{setting:?}");
    assert!((setting.turns.low - 3.75).abs() < 0.05, "{setting:?}");
    assert!((setting.turns.high - 6.25).abs() < 0.05, "{setting:?}");
    let heavy = judge(&flaps(), "middle", 9.0, &OFFER, 2);
    assert!(words(&heavy).contains("TooWeak"), "{}", words(&heavy));
    assert!(
        words(&heavy).contains("FallsFromOpen {"),
        "{}",
        words(&heavy)
    );
}

#[test]
fn one_fitting_carries_half_of_what_a_pair_does() {
    let mut card = flaps();
    assert_eq!(judge(&card, "heavy", 4.0, &OFFER, 2).grade, Grade::No);
    let one = judge(&card, "heavy", 4.0, &OFFER, 1);
    assert_eq!(one.grade, Grade::Fits, "{}", words(&one));
    let load = one.load.expect("a load");
    assert_eq!((load.min, load.max), (3.0, 6.0));
    card.per = PieceCount::PerPiece;
    let two = judge(&card, "light", 6.0, &OFFER, 2).load.expect("a load");
    assert_eq!((two.min, two.max), (4.0, 8.0));
}

#[test]
fn every_form_of_load_is_read() {
    let mut card = flaps();
    let rows = vec![
        MassRow {
            height: 300.0,
            min: 4.0,
            max: 8.0,
        },
        MassRow {
            height: 500.0,
            min: 2.0,
            max: 6.0,
        },
    ];
    // A door of 400 mm is halfway, a box of 420 mm 120/200 of the way.
    for (carries, min, max) in [
        (Carries::MassByDoorHeight(rows.clone()), 3.0, 7.0),
        (Carries::MassByBoxHeight(rows.clone()), 2.8, 6.8),
    ] {
        card.sizes[1].carries = carries;
        let load = judge(&card, "middle", 5.0, &OFFER, 2).load.expect("a load");
        assert!(
            (load.min - min).abs() < 1e-9 && (load.max - max).abs() < 1e-9,
            "{load:?}"
        );
    }
    card.sizes[1].carries = Carries::MassByBoxHeight(rows);
    let tall = judge(
        &card,
        "middle",
        5.0,
        &Offer {
            box_height: 501.0,
            ..OFFER
        },
        2,
    );
    assert_eq!(tall.grade, Grade::No);
    assert!(
        words(&tall).contains("NoLoadGiven { what: Word(\"box-height\"), value: Mm(501.0)"),
        "{}",
        words(&tall)
    );
    // 5 kg at 90 degrees: 9.80665 N·m, with 10 % either way.
    card.sizes[1].carries = Carries::Moment {
        min: 8.0,
        max: 11.0,
        at_degrees: 90.0,
    };
    let moment = judge(&card, "middle", 5.0, &OFFER, 2).load.expect("a load");
    assert!((moment.load.likely - 9.806_65).abs() < 1e-9);
    assert!((moment.load.low - 8.825_985).abs() < 1e-9);
    card.sizes[1].carries = Carries::Moment {
        min: 8.0,
        max: 11.0,
        at_degrees: 120.0,
    };
    let verdict = judge(&card, "middle", 5.0, &OFFER, 2);
    assert!(
        verdict
            .reasons
            .iter()
            .any(|r| matches!(r, Reason::AngleNotReached { .. }))
    );
}

#[test]
fn sizes_of_door_and_box_are_reasons_in_numbers() {
    let narrow = Offer {
        door_width: 1250.0,
        depth_from_side: 180.0,
        ..OFFER
    };
    let verdict = judge(&flaps(), "middle", 5.0, &narrow, 2);
    assert_eq!(verdict.grade, Grade::No);
    let words = words(&verdict);
    assert!(
        words.contains("Over { what: Word(\"door-width\"), value: Mm(1250.0), by: Mm(50.0), "),
        "{words}"
    );
    assert!(
        words.contains(
            "TooLittle { what: Word(\"inner-depth\"), value: Mm(180.0), by: Mm(20.0), least: Mm(200.0) }"
        ),
        "{words}"
    );
    let shelf = Offer {
        clear_down: 150.0,
        ..OFFER
    };
    assert_eq!(judge(&flaps(), "middle", 5.0, &shelf, 2).grade, Grade::No);
}

#[test]
fn what_is_left_of_the_adjustment_is_told() {
    let mut card = flaps();
    card.adjustment.upward = AdjustmentRange {
        min: -3.0,
        max: 3.0,
    };
    for (needed, grade, left) in [
        (1.0, Grade::Fits, "left: Mm(2.0)"),
        (-2.0, Grade::Marginal, "left: Mm(1.0)"),
        (4.0, Grade::No, "most: Mm(3.0)"),
    ] {
        let offer = Offer {
            to_adjust: [0.0, needed, 0.0],
            ..OFFER
        };
        let verdict = judge(&card, "middle", 5.0, &offer, 2);
        assert_eq!(verdict.grade, grade, "{needed}: {}", words(&verdict));
        assert!(
            words(&verdict).contains(left),
            "{needed}: {}",
            words(&verdict)
        );
    }
}

#[test]
fn a_folding_pair_shows_both_leaves() {
    let (card, door) = (folding(), two_leaves());
    let mass = plates(&door, 2.5);
    let judged = Judged {
        door: &door,
        mass: &mass,
        offer: &OFFER,
        cold_and_hot: COLD_AND_HOT,
    };
    let verdict = verdict(&card, &card.sizes[0], &judged, 2);
    let leaves = verdict.reasons.iter().find_map(|it| match it.message() {
        ReasonMessage::FoldingLeaves {
            upper,
            lower,
            ratio,
        } => Some([upper.0, lower.0, ratio.0]),
        _ => None,
    });
    let leaves = leaves.expect("a folding pair says what its leaves weigh");
    for (found, expected) in leaves.into_iter().zip([2.5, 2.5, 1.0]) {
        assert!((found - expected).abs() < 0.005, "{leaves:?}");
    }
    assert_eq!(verdict.load.expect("a load").load.likely, 5.0);
}
