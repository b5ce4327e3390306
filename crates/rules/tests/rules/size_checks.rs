//! Checks on the chosen size: holds, just holds, just fails, a remedy clears it, undo restores.
//! All limits are those of the invented test card; what is expected is worked out beside each.

use crate::common::*;
use crate::findings::*;
use flapwright_model::card::{Card, PerSize, Span};
use flapwright_model::door::DoorFit;
use flapwright_model::edges::Edges;
use flapwright_model::edit::apply;
use flapwright_model::lift::{Carries, MassRow};
use flapwright_rules::finding::Severity;

fn carrying(min: f64, max: f64) -> Card {
    let mut card = card();
    card.sizes[0].carries = Carries::Mass { min, max };
    card
}

const LOADS: [&str; 3] = [
    "door-too-heavy",
    "door-too-light",
    "size-covers-part-of-mass-range",
];

/// A door of 10 kg, 9.5 to 10.5, against limits around these.
#[test]
fn a_load_is_told_of_once_by_the_check_that_it_belongs_to() {
    let none: [usize; 3] = [0, 0, 0];
    for (min, max, expected) in [
        (9.5, 10.5, none),
        (1.0, 10.5, none),
        (1.0, 10.49, [0, 0, 1]),
        (1.0, 10.0, [0, 0, 1]),
        (1.0, 9.99, [1, 0, 0]),
        (9.51, 20.0, [0, 0, 1]),
        (10.0, 20.0, [0, 0, 1]),
        (10.01, 20.0, [0, 1, 0]),
        (9.8, 10.2, [0, 0, 1]),
    ] {
        let job = weighed(10.0, 0.5, carrying(min, max));
        let counts = LOADS.map(|name| found(&job, name).len());
        assert_eq!(counts, expected, "{min} to {max} kg");
    }
}

#[test]
fn a_load_is_said_in_numbers() {
    let job = weighed(10.0, 0.5, carrying(1.0, 9.0));
    let it = &found(&job, "door-too-heavy")[0];
    assert_eq!(it.severity, Severity::Stop);
    assert_eq!(
        it.message,
        "door-too-heavy.over: fitting (fitting-name.size: card \"Plover\", size \"1\"), what (load-name.mass), over 1.00 kg, greatest_load 10.50 kg, most_carried 9.00 kg"
    );
    assert!(it.remedies.is_empty());
    assert!(it.reasons.iter().any(|line| line == "advice.none"));
}

#[test]
fn another_size_clears_a_heavy_door_and_undo_restores() {
    let mut card = carrying(1.0, 9.0);
    let mut strong = card.sizes[0].clone();
    strong.name = "2".to_owned();
    strong.carries = Carries::Mass {
        min: 5.0,
        max: 15.0,
    };
    card.sizes.push(strong);
    let mut other = card.clone();
    other.name = "Dunlin".to_owned();
    other.sizes.remove(0);
    let mut job = weighed(10.0, 0.5, card);
    add_card(&mut job, other);
    let before = job.clone();
    let remedies = found(&job, "door-too-heavy")[0].remedies.clone();
    let titles: Vec<(&str, bool)> = remedies
        .iter()
        .map(|it| (it.kind.as_str(), it.safe))
        .collect();
    // Both lie alike; a fitting of another card is not changed unseen.
    assert_eq!(
        titles,
        [
            (
                "remedy.take-size: fitting (fitting-name.size: card \"Dunlin\", size \"2\")",
                false
            ),
            (
                "remedy.take-size: fitting (fitting-name.size: card \"Plover\", size \"2\")",
                true
            )
        ]
    );
    let undo = apply(&mut job, remedies[1].edit.clone()).expect("a sound job");
    for name in LOADS {
        assert!(found(&job, name).is_empty(), "{name}");
    }
    apply(&mut job, undo).expect("undone");
    assert_eq!(job, before);
}

/// The door is 800 - 3 - 3 = 794 wide and 600 - 3 - 3 = 594 high.
#[test]
fn a_door_keeps_within_the_spans_of_its_size() {
    let spans = |height: (f64, f64), width: (f64, f64)| {
        let mut card = card();
        let span = |(min, max)| Span { min, max };
        card.sizes[0].door_height = span(height);
        card.sizes[0].door_width = span(width);
        found(&job(wall_box(), card), "door-outside-size-span")
    };
    assert!(spans((594.0, 594.0), (794.0, 794.0)).is_empty());
    for (height, width, said) in [
        (
            (100.0, 593.9),
            (200.0, 900.0),
            "over: what door-height, value 594 mm, limit 593.9 mm, outside_its_span_by 0.1 mm",
        ),
        (
            (594.1, 900.0),
            (200.0, 900.0),
            "under: what door-height, value 594 mm, limit 594.1 mm, outside_its_span_by 0.1 mm",
        ),
        (
            (100.0, 900.0),
            (200.0, 793.9),
            "over: what door-width, value 794 mm, limit 793.9 mm, outside_its_span_by 0.1 mm",
        ),
        (
            (100.0, 900.0),
            (794.1, 900.0),
            "under: what door-width, value 794 mm, limit 794.1 mm, outside_its_span_by 0.1 mm",
        ),
    ] {
        let found = spans(height, width);
        assert_eq!(found.len(), 1);
        let message = found[0].message.replace(
            "fitting (fitting-name.size: card \"Plover\", size \"1\"), ",
            "",
        );
        assert_eq!(message, format!("door-outside-size-span.{said}"));
        assert_close((found[0].numbers[0].value * 1e6).round() / 1e6, 0.1);
    }
    let both = spans((100.0, 500.0), (100.0, 500.0));
    assert_eq!((both.len(), both[0].numbers.len()), (1, 2));
}

#[test]
fn a_load_table_that_ends_below_the_door_is_told_of_once() {
    for (to, expected) in [(594.0, 0), (593.0, 1)] {
        let mut card = card();
        let row = |height| MassRow {
            height,
            min: 1.0,
            max: 20.0,
        };
        card.sizes[0].carries = Carries::MassByDoorHeight(vec![row(200.0), row(to)]);
        card.sizes[0].door_height.max = 900.0;
        let job = job(wall_box(), card.clone());
        assert_eq!(found(&job, "door-outside-size-span").len(), expected);
        assert!(LOADS.iter().all(|name| found(&job, name).is_empty()));
        card.sizes[0].door_height.max = 593.0;
        let job = self::job(wall_box(), card);
        let spans = found(&job, "door-outside-size-span");
        assert_eq!((spans.len(), spans[0].numbers.len()), (1, 1));
    }
}

/// 330 deep over all with a back of 8 laid on: 322 clear; behind an inset door of 19 it is 303.
#[test]
fn a_box_is_as_deep_as_its_fitting_needs() {
    for (least, body, inset, expected) in [
        (322.0, 322.0, false, vec![]),
        (322.1, 100.0, false, vec![322.1]),
        (100.0, 322.1, false, vec![322.1]),
        (322.2, 322.1, false, vec![322.2]),
        (303.0, 303.0, true, vec![]),
        (303.1, 100.0, true, vec![303.1]),
    ] {
        let mut card = card();
        card.sizes[0].least_inner_depth = least;
        card.envelope.back_to = PerSize::All(body);
        let mut job = job(wall_box(), card);
        if inset {
            the_job_door(&mut job, 0).fit = DoorFit::Inset {
                gaps: Edges::all(2.0),
                set_back: 0.0,
            };
        }
        let needed: Vec<f64> = found(&job, "box-too-shallow")
            .iter()
            .map(|it| it.numbers[1].value)
            .collect();
        assert_eq!(needed, expected, "{least}, {body}");
    }
}

/// 600 high with 18 above and below: 564 clear.
#[test]
fn an_opening_is_as_high_as_its_fitting_needs() {
    for (least, body, expected) in [
        (564.0, 564.0, vec![]),
        (564.1, 160.0, vec![Severity::Stop]),
        (200.0, 564.1, vec![Severity::Stop]),
        (600.0, 600.0, vec![Severity::Stop]),
    ] {
        let mut card = card();
        card.sizes[0].least_inner_height = least;
        card.envelope.down_to = PerSize::All(body);
        let job = job(wall_box(), card);
        assert_eq!(
            severities(&job, "opening-too-short"),
            expected,
            "{least}, {body}"
        );
    }
}

#[test]
fn a_shorter_size_clears_a_shallow_box() {
    let mut card = card();
    let mut short = card.sizes[0].clone();
    short.name = "0".to_owned();
    card.sizes[0].least_inner_depth = 400.0;
    card.sizes.push(short);
    let mut job = job(wall_box(), card);
    let before = job.clone();
    let remedies = found(&job, "box-too-shallow")[0].remedies.clone();
    assert_eq!(remedies.len(), 1);
    assert!(remedies[0].safe, "{}", remedies[0].kind);
    let undo = apply(&mut job, remedies[0].edit.clone()).expect("a sound job");
    assert!(found(&job, "box-too-shallow").is_empty());
    apply(&mut job, undo).expect("undone");
    assert_eq!(job, before);
}

#[test]
fn at_most_three_sizes_are_offered() {
    let mut card = carrying(1.0, 9.0);
    for name in ["2", "3", "4", "5"] {
        let mut size = card.sizes[0].clone();
        size.name = name.to_owned();
        size.carries = Carries::Mass {
            min: 5.0,
            max: 15.0,
        };
        card.sizes.push(size);
    }
    let job = weighed(10.0, 0.5, card);
    assert_eq!(found(&job, "door-too-heavy")[0].remedies.len(), 3);
}
