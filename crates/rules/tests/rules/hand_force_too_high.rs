//! The check `hand-force-too-high`.
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
use crate::worked::{spring_card, spring_lift};
use flapwright_model::lift::{Carries, Lift, SpringRow};
use flapwright_rules::chosen_work::chosen_work;
use flapwright_rules::finding::{Severity, Worse};

#[test]
fn the_force_on_a_door_of_the_wrong_mass_is_no_trouble_of_its_own() {
    // Nothing lifts 6 kg: at most 16.377 N·m and 0.5 of friction over 0.575 m are 29.3 N.
    for (max, expected) in [(20.0, 1), (5.0, 0)] {
        let mut card = spring_card(0.0);
        card.sizes[0].carries = Carries::Mass { min: 1.0, max };
        let job = weighed(6.0, 0.0, card);
        assert_eq!(found(&job, "hand-force-too-high").len(), expected);
    }
}

#[test]
fn the_hand_that_opens_says_how_hard_and_where() {
    // Nothing lifts: at most 16.377 N·m and 0.5 of friction over hypot(575, 13.5) = 575.16 mm are
    // 29.34 N, at 87.22 degrees; the places of the curve are 100 / 60 degrees apart: 86.67.
    let mut card = card();
    card.sizes[0].lift = spring_lift(0.0);
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
    card.sizes[0].lift = spring_lift(40.0);
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
