//! The check `door-outside-size-span`.
//!
//! All limits are those of the invented test card; what is expected is worked out beside each.
//!
//! The plain box's weighed door of 6 kg has its middle 278 mm below and 13.5 mm before its axis: its
//! lift moment is 58.8399 N times (0.278 sin q + 0.0135 cos q) m, the weight of 6 kg at standard
//! gravity.

use crate::common::*;
use crate::findings::*;
use crate::worked::{LOAD_CHECKS, carrying};
use flapwright_model::card::Span;
use flapwright_model::lift::{Carries, MassRow};
use flapwright_rules::finding::Worse;

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
        assert!(LOAD_CHECKS.iter().all(|name| found(&job, name).is_empty()));
        card.sizes[0].door_height.max = 593.0;
        let job = self::job(wall_box(), card);
        let spans = found(&job, "door-outside-size-span");
        assert_eq!((spans.len(), spans[0].numbers.len()), (1, 1));
    }
}

#[test]
fn a_door_outside_its_spans_is_told_in_one_finding() {
    // 794 wide and 594 high.
    let mut card = card();
    card.sizes[0].door_height = Span {
        min: 100.0,
        max: 500.0,
    };
    card.sizes[0].door_width = Span {
        min: 800.0,
        max: 900.0,
    };
    let outside = the_only(&job(wall_box(), card), "door-outside-size-span");
    assert_eq!(
        outside.message,
        "door-outside-size-span.over: fitting (fitting-name.size: card \"Plover\", size \"1\"), what door-height, value 594 mm, limit 500 mm, outside_its_span_by 94 mm"
    );
    assert_numbers(
        &outside,
        &[
            ("outside_its_span_by", 94.0, "mm", Worse::Greater),
            ("outside_its_span_by", 6.0, "mm", Worse::Greater),
        ],
    );
    assert_eq!(
        outside.reasons[0],
        "door-outside-size-span.under: fitting (fitting-name.size: card \"Plover\", size \"1\"), what \
         door-width, value 794 mm, limit 800 mm, outside_its_span_by 6 mm"
    );
    assert_eq!(outside.subjects, [FIRST_DOOR]);
}

#[test]
fn a_load_table_by_box_height_speaks_of_the_box() {
    let row = |height| MassRow {
        height,
        min: 1.0,
        max: 20.0,
    };
    let table = |from, to| carrying(Carries::MassByBoxHeight(vec![row(from), row(to)]));
    // The box is 600 high.
    assert_eq!(
        severities(
            &job(wall_box(), table(600.0, 700.0)),
            "door-outside-size-span"
        ),
        []
    );
    let outside = the_only(
        &job(wall_box(), table(605.0, 700.0)),
        "door-outside-size-span",
    );
    assert_eq!(
        outside.message,
        "door-outside-size-span.under: fitting (fitting-name.size: card \"Plover\", size \"1\"), what box-height, value 600 mm, limit 605 mm, outside_its_span_by 5 mm"
    );
}
