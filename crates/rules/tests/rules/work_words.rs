//! What the checks on struts, falls and the hand say. The plain box's weighed door of 6 kg has its
//! middle 278 mm below and 13.5 mm before its axis (see the tests of the working checks): its lift
//! moment is 58.8399 N times (0.278 sin q + 0.0135 cos q) m, the weight of 6 kg at standard gravity.

use crate::common::*;
use crate::findings::*;
use crate::size_words::{carrying, spring};
use flapwright_model::job::Job;
use flapwright_model::lift::{Carries, Lift, SpringRow};
use flapwright_rules::chosen_work::chosen_work;
use flapwright_rules::finding::{Severity, Worse};

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

fn falling(moment: f64, plus_minus: f64) -> Told {
    let mut card = card();
    card.sizes[0].lift = spring(moment);
    the_only(&weighed(6.0, plus_minus, card), "falls-when-let-go")
}

#[test]
fn who_falls_and_from_where_is_said() {
    // 15.971 N·m open: 15.46 + 0.5 is less, 16.26 + 0.5 is more; 6.3 kg pull with 16.770.
    for (moment, plus_minus, said) in [
        (15.46, 0.3, "falls-when-let-go.not-open: falls_from 100°, "),
        (
            16.26,
            0.3,
            "falls-when-let-go.heaviest-not-open: falls_from 100°, ",
        ),
    ] {
        let it = falling(moment, plus_minus);
        assert!(it.message.contains(said), "{}", it.message);
        assert_eq!(
            (it.numbers[0].name, it.numbers[0].unit, it.numbers[0].worse),
            ("falls_from", "°", Worse::Greater)
        );
        assert_close(it.numbers[0].value, 100.0);
        assert_eq!(
            (it.numbers[1].name, it.numbers[1].unit, it.numbers[1].worse),
            ("fastest", "m/s", Worse::Greater)
        );
        assert_eq!(it.subjects, [FIRST_DOOR]);
    }
}

#[test]
fn a_door_that_catches_itself_says_where_it_comes_to_rest() {
    // It pulls with at most 16.377 N·m at 87.22 degrees and falls where that is more than
    // 15.86 + 0.5: from 89.83 down to 84.61. The speed that it has there takes it on: near its top
    // the pull is a parabola, whose surplus over twice 2.61 degrees is eaten up 2 x 2.61 below the
    // top, at 82.0.
    let it = falling(15.86, 0.0);
    assert_eq!(
        it.message,
        "falls-when-let-go.heaviest-falls: falls_from 90°, fastest 0.0 m/s"
    );
    assert_eq!(it.severity, Severity::Caution);
    assert!(
        (it.numbers[0].value - 89.83).abs() < 0.2,
        "{:?}",
        it.numbers
    );
}

#[test]
fn a_door_that_falls_shut_says_how_long_it_takes_and_how_fast_it_arrives() {
    // Nothing lifts and nothing rubs: a plate that swings about its axis, with I / m = 0.1069 m2
    // (see the test of the timed fall). It drops by 0.3396 m: 2 x 9.80665 x 0.3396 / 0.1069 =
    // 62.30, its root 7.893 a second, at a hand 0.5752 m from the axis 4.54 m/s. A pendulum takes
    // sqrt(I / m g r) = 0.1979 s times K(sin 51.39 degrees) = 1.954 from 102.78 degrees down to its
    // lowest place (elliptic integral, Abramowitz and Stegun, table 17.5): 0.387 s, less 0.006 s
    // for the 2.78 degrees that the closed door is before that place.
    let mut card = card();
    card.sizes[0].lift = Lift::Spring {
        table: vec![SpringRow {
            degrees: 0.0,
            weakest: 0.0,
            strongest: 0.0,
        }],
        turns: 10.0,
        friction: 0.0,
    };
    let it = the_only(&weighed(6.0, 0.0, card), "falls-when-let-go");
    assert_eq!(
        it.message,
        "falls-when-let-go.not-open: falls_from 100°, fastest 4.5 m/s"
    );
}

#[test]
fn a_door_that_does_not_stay_open_is_told_of_however_little_of_the_way_must_hold() {
    let with = |moment: f64| {
        let mut card = card();
        card.sizes[0].lift = spring(moment);
        let mut job = weighed(6.0, 0.0, card);
        job.settings.holds_above = 100.0;
        severities(&job, "falls-when-let-go")
    };
    assert_eq!(with(15.46), [Severity::Stop]);
    assert_eq!(with(15.48), []);
}

#[test]
fn the_hand_that_opens_says_how_hard_and_where() {
    // Nothing lifts: at most 16.377 N·m and 0.5 of friction over hypot(575, 13.5) = 575.16 mm are
    // 29.34 N, at 87.22 degrees; the places of the curve are 100 / 60 degrees apart: 86.67.
    let mut card = card();
    card.sizes[0].lift = spring(0.0);
    let mut job = weighed(6.0, 0.0, card);
    let it = the_only(&job, "hand-force-too-high");
    assert_eq!(
        it.message,
        "hand-force-too-high.open: at 87°, largest_hand_force 29.3 N, limit 22.2 N"
    );
    // 5 lbf are 5 x 4.448222 N (NIST SP 811).
    assert_numbers(
        &it,
        &[
            ("largest_hand_force", 29.342, "N", Worse::Greater),
            ("limit", 22.241, "N", Worse::Smaller),
        ],
    );
    assert_eq!(it.subjects, [FIRST_DOOR]);
    job.settings.most_hand_force = 29.4;
    assert_eq!(severities(&job, "hand-force-too-high"), []);
    // What just equals the limit is within it.
    job.settings.most_hand_force = it.numbers[0].value;
    assert_eq!(severities(&job, "hand-force-too-high"), []);
    job.settings.most_hand_force = 29.3;
    assert_eq!(severities(&job, "hand-force-too-high"), [Severity::Caution]);
}

#[test]
fn the_hand_that_closes_is_told_as_one_that_pulls() {
    // Closed the door pulls with 0.794 N·m against 40 and 0.5: 39.706 N·m over 575.16 mm.
    let mut card = card();
    card.sizes[0].lift = spring(40.0);
    let it = the_only(&weighed(6.0, 0.0, card), "hand-force-too-high");
    assert_eq!(
        it.message,
        "hand-force-too-high.close: at 0°, largest_hand_force 69.0 N, limit 22.2 N"
    );
    assert!(
        (it.numbers[0].value - 69.034).abs() < 1e-2,
        "{:?}",
        it.numbers
    );
}

#[test]
fn the_hand_s_work_is_reckoned_at_the_setting_that_balances_the_door() {
    // A spring from 0 to the door's own moment times two is balanced half way, without friction
    // left for the hand but its own.
    let mut card = card();
    let own = |degrees: f64| {
        let (sin, cos) = degrees.to_radians().sin_cos();
        58.8399 * (0.278 * sin + 0.0135 * cos)
    };
    let rows = |factor: f64| {
        (0..=100)
            .map(|degrees| SpringRow {
                degrees: f64::from(degrees),
                weakest: 0.0,
                strongest: factor * own(f64::from(degrees)),
            })
            .collect()
    };
    let mut share = |factor: f64| {
        card.sizes[0].lift = Lift::Spring {
            table: rows(factor),
            turns: 10.0,
            friction: 0.5,
        };
        let job = weighed(6.0, 0.0, card.clone());
        let inspection = inspect(&job);
        let work = chosen_work(&job, &job.boxes[0], &inspection.boxes[0], DOOR).expect("it works");
        let setting = work.verdict.setting.expect("a spring that can be set");
        let curves = work.curves.expect("a spring that can be reckoned with");
        // 0.5 N·m over the hand's 575.16 mm: 0.869 N whichever way.
        for point in &curves.points {
            let (least, most) = point
                .force_range(flapwright_motion::statics::Direction::Opening)
                .expect("leverage");
            assert!(
                (least - 0.869).abs() < 0.02 && (most - 0.869).abs() < 0.02,
                "{least} to {most}"
            );
        }
        assert_eq!(curves.points.len(), 61);
        setting.turns.likely
    };
    assert!((share(2.0) - 5.0).abs() < 0.01);
    assert!((share(4.0) - 2.5).abs() < 0.01);
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

#[test]
fn a_door_of_just_the_greatest_mass_that_is_carried_is_told_of_when_it_falls() {
    // Open, 6 kg pull with 15.971 N·m and 6.5 kg with 17.302.
    for (moment, plus_minus, max, expected) in [
        (15.46, 0.0, 6.0, vec![Severity::Stop]),
        (15.46, 0.0, 5.9, vec![]),
        (16.5, 0.5, 6.5, vec![Severity::Caution]),
        (16.5, 0.5, 6.4, vec![]),
    ] {
        let mut card = carrying(Carries::Mass { min: 1.0, max });
        card.sizes[0].lift = spring(moment);
        assert_eq!(
            severities(&weighed(6.0, plus_minus, card), "falls-when-let-go"),
            expected,
            "{moment} N·m, at most {max} kg"
        );
    }
}
