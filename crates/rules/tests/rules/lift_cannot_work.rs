//! The check `lift-cannot-work`.
//!
//! The plain box's door of 6 kg hangs on an axis 278 mm above and 13.5 mm behind its middle: its
//! axis is 4 below the underside at 582 and 2 behind the front edges, its middle 300 above the
//! floor of the box and, 19 thick on 2 mm bumpers, 11.5 before the edges. Its lift moment is
//! m g (0.278 sin q + 0.0135 cos q), the moment of a weight about an axis (OpenStax University
//! Physics, 12.1): 15.971 N·m open at 100 degrees, at most 16.377, closed 0.794. A spring that
//! gives the same moment everywhere makes every limit a sum of two numbers.
//!
//! The plain box's weighed door of 6 kg has its middle 278 mm below and 13.5 mm before its axis: its
//! lift moment is 58.8399 N times (0.278 sin q + 0.0135 cos q) m, the weight of 6 kg at standard
//! gravity.

use crate::common::*;
use crate::findings::*;
use crate::worked::carrying;
use flapwright_model::job::Job;
use flapwright_model::lift::{Carries, Lift, SpringRow};
use flapwright_rules::finding::{Severity, Worse};

#[test]
fn a_strut_reaches_over_the_whole_way() {
    // Mounts at (o, y) = (-200, 482) in the box and (2 - 20, 332) on the door: closed they are
    // hypot(182, 150) = 235.9 mm apart.
    let with = |extended, stroke| {
        let mut card = card();
        card.sizes[0].lift = strut(100.0, stroke, extended, 5.0);
        severities(&weighed(6.0, 0.0, card), "lift-cannot-work")
    };
    assert_eq!(with(500.0, 270.0), []);
    assert_eq!(with(230.0, 100.0), [Severity::Stop]);
    assert_eq!(with(500.0, 200.0), [Severity::Stop]);
}

#[test]
fn a_moment_limited_beyond_the_way_cannot_be_judged() {
    for (at_degrees, expected) in [(100.0, vec![]), (100.1, vec![Severity::Caution])] {
        let mut card = card();
        card.sizes[0].carries = Carries::Moment {
            min: 1.0,
            max: 40.0,
            at_degrees,
        };
        let job = weighed(6.0, 0.0, card);
        assert_eq!(severities(&job, "lift-cannot-work"), expected);
    }
}

/// A strut from (200 behind, 100 down) in the box to (20 behind the back, 250 down) on the door.
/// Closed its anchors are hypot(182, 150) = 235.847 mm apart. The one on the door is 16 behind and
/// 246 below the axis; turned by 100 degrees it is 245.041 before and 26.961 above it, the other
/// 198 behind and 96 below: hypot(443.041, 122.961) = 459.787 mm.
fn on_strut(extended: f64, stroke: f64) -> Job {
    let mut card = card();
    card.sizes[0].lift = strut(100.0, stroke, extended, 5.0);
    weighed(6.0, 0.0, card)
}

#[test]
fn a_strut_that_does_not_reach_says_by_how_much() {
    const NAME: &str = "lift-cannot-work";
    assert_eq!(severities(&on_strut(460.0, 230.0), NAME), []);
    let short = the_only(&on_strut(455.0, 230.0), NAME);
    assert_eq!(short.severity, Severity::Stop);
    assert!(
        short.message.contains("no-drive.stretched: by 4.8 mm"),
        "{}",
        short.message
    );
    assert!(
        short.message.contains("length 459.8 mm, extended 455 mm"),
        "{}",
        short.message
    );
    assert_numbers(
        &short,
        &[("strut_too_short_by", 4.787, "mm", Worse::Greater)],
    );
    assert_eq!(short.subjects, [FIRST_DOOR]);
    // 500 - 250 = 250 at the shortest.
    let long = the_only(&on_strut(500.0, 250.0), NAME);
    assert_eq!(long.severity, Severity::Stop);
    assert!(
        long.message
            .contains("no-drive.crushed: by 14.2 mm, from 0°, length 235.8 mm, compressed 250 mm"),
        "{}",
        long.message
    );
    assert_numbers(
        &long,
        &[("strut_too_long_by", 14.153, "mm", Worse::Greater)],
    );
}

#[test]
fn a_moment_that_is_limited_beyond_the_way_says_both_angles() {
    let beyond = the_only(
        &weighed(
            6.0,
            0.0,
            carrying(Carries::Moment {
                min: 1.0,
                max: 40.0,
                at_degrees: 120.0,
            }),
        ),
        "lift-cannot-work",
    );
    assert_eq!(
        beyond.message,
        "lift-cannot-work.angle-not-reached: fitting (fitting-name.size: card \"Plover\", size \"1\"), angle_of_the_limit 120°, end_angle 100°"
    );
    assert_numbers(
        &beyond,
        &[
            ("angle_of_the_limit", 120.0, "°", Worse::Either),
            ("end_angle", 100.0, "°", Worse::Either),
        ],
    );
}

#[test]
fn numbers_of_a_card_that_nothing_can_be_reckoned_with_are_a_caution() {
    // A stroke of half a thousandth of a millimetre is above 0 and no strut's.
    let mut job = on_strut(500.0, 0.000_5);
    let it = the_only(&job, "lift-cannot-work");
    assert_eq!(it.severity, Severity::Caution);
    assert_eq!(
        it.message,
        "lift-cannot-work.cannot: fitting (fitting-name.size: card \"Plover\", size \"1\"), why (no-drive.number: what strut-stroke, value 0.0005), number_out_of_range 0.0005"
    );
    assert_numbers(&it, &[("number_out_of_range", 0.000_5, "", Worse::Either)]);
    // Two rows whose angles rise by less than a number of radians can hold.
    job.cards[0].card.sizes[0].lift = Lift::Spring {
        table: [0.0, f64::from_bits(1)]
            .map(|degrees| SpringRow {
                degrees,
                weakest: 0.0,
                strongest: 20.0,
            })
            .to_vec(),
        turns: 10.0,
        friction: 0.5,
    };
    let it = the_only(&job, "lift-cannot-work");
    assert_eq!(it.severity, Severity::Caution);
    assert_eq!(
        it.message,
        "lift-cannot-work.cannot: fitting (fitting-name.size: card \"Plover\", size \"1\"), why (no-drive.spring-not-rising: row 2)"
    );
    assert_eq!(it.numbers, []);
}
