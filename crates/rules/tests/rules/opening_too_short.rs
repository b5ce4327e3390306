//! The check `opening-too-short`.
//!
//! All limits are those of the invented test card; what is expected is worked out beside each.
//!
//! The plain box's weighed door of 6 kg has its middle 278 mm below and 13.5 mm before its axis: its
//! lift moment is 58.8399 N times (0.278 sin q + 0.0135 cos q) m, the weight of 6 kg at standard
//! gravity.

use crate::common::*;
use crate::findings::*;
use crate::worked::two_doors;
use flapwright_model::card::PerSize;
use flapwright_rules::finding::{Severity, Worse};

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
fn a_box_that_is_too_low_says_how_much_is_there_and_how_much_is_needed() {
    let mut card = card();
    card.sizes[0].least_inner_height = 600.0;
    let low = the_only(&job(wall_box(), card), "opening-too-short");
    assert_eq!(
        low.message,
        "opening-too-short.less: fitting (fitting-name.size: card \"Plover\", size \"1\"), under 36 mm, clear_height 564 mm, least_clear_height 600 mm"
    );
    assert_numbers(
        &low,
        &[
            ("clear_height", 564.0, "mm", Worse::Smaller),
            ("least_clear_height", 600.0, "mm", Worse::Greater),
        ],
    );
    assert_eq!(low.subjects, [FIRST_DOOR]);
    // 318 to 582 above the shelf are 264, 18 to 300 below it 282.
    let mut card = self::card();
    card.sizes[0].least_inner_height = 270.0;
    let upper = the_only(&two_doors(card), "opening-too-short");
    assert!(
        upper
            .message
            .ends_with("under 6 mm, clear_height 264 mm, least_clear_height 270 mm"),
        "{}",
        upper.message
    );
}

#[test]
fn a_body_that_is_given_by_size_is_that_of_the_chosen_size() {
    let bodies = |one: f64, two: f64| {
        let mut card = card();
        let mut second = card.sizes[0].clone();
        second.name = "2".to_owned();
        card.sizes.push(second);
        let by = |values: [f64; 2]| {
            PerSize::BySize(
                ["1", "2"]
                    .map(str::to_owned)
                    .into_iter()
                    .zip(values)
                    .collect(),
            )
        };
        card.envelope.down_to = by([one, two]);
        card.envelope.back_to = by([one - 242.0, two - 242.0]);
        job(wall_box(), card)
    };
    // 564 clear in height and 564 - 242 = 322 in depth.
    for name in ["opening-too-short", "box-too-shallow"] {
        assert_eq!(severities(&bodies(564.0, 600.0), name), []);
        assert_eq!(severities(&bodies(565.0, 300.0), name), [Severity::Stop]);
    }
}
