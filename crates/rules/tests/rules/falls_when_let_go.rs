//! The check `falls-when-let-go`.
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
use crate::worked::{carrying, spring_card, spring_lift};
use flapwright_model::job::Job;
use flapwright_model::lift::{Carries, Lift, SpringRow};
use flapwright_rules::finding::{Severity, Worse};

#[test]
fn a_door_that_falls_is_told_of_by_its_danger() {
    for (moment, plus_minus, expected) in [
        // 16.377 - 0.5 = 15.877 holds it everywhere; less lets it fall from where it pulls most;
        // 15.971 - 0.5 = 15.471 keeps it open at least.
        (15.89, 0.0, vec![]),
        (15.86, 0.0, vec![Severity::Caution]),
        (15.48, 0.0, vec![Severity::Caution]),
        (15.46, 0.0, vec![Severity::Stop]),
        // 6.3 kg at most: 16.770 open, 17.196 at most; the likely 6 kg stay open.
        (16.71, 0.3, vec![]),
        (16.26, 0.3, vec![Severity::Caution]),
        (15.46, 0.3, vec![Severity::Stop]),
    ] {
        let job = weighed(6.0, plus_minus, spring_card(moment));
        assert_eq!(
            severities(&job, "falls-when-let-go"),
            expected,
            "{moment} N·m, 6 kg ± {plus_minus}"
        );
    }
}

#[test]
fn how_far_up_a_door_must_hold_is_a_setting() {
    // 15.86 + 0.5 = 16.36 N·m are less than 16.377 sin(q + 2.780) from 84.61 to 89.83 degrees, so
    // up to 89.83 % of a way of 100 degrees.
    for (holds_above, expected) in [
        (50.0, vec![Severity::Caution]),
        (89.6, vec![Severity::Caution]),
        (90.0, vec![]),
    ] {
        let mut job = weighed(6.0, 0.0, spring_card(15.86));
        job.settings.holds_above = holds_above;
        assert_eq!(
            severities(&job, "falls-when-let-go"),
            expected,
            "{holds_above} %"
        );
    }
}

/// The mass from which on a check has something to say, or until which, by halving.
fn turning_mass(says: impl Fn(f64) -> bool) -> f64 {
    let (mut low, mut high) = (0.05, 60.0);
    let at_low = says(low);
    assert_ne!(at_low, says(high), "it turns somewhere between");
    for _ in 0..40 {
        let middle = f64::midpoint(low, high);
        if says(middle) == at_low {
            low = middle;
        } else {
            high = middle;
        }
    }
    low
}

/// A strut without friction that carries any mass, on a door that must hold from open only.
fn strutted(kilograms: f64, celsius: [f64; 2]) -> Job {
    let mut card = card();
    card.sizes[0].carries = Carries::Mass {
        min: 0.01,
        max: 99.0,
    };
    card.sizes[0].lift = strut(10.0, 270.0, 500.0, 0.0);
    let mut job = weighed(kilograms, 0.0, card);
    job.settings.holds_above = 99.9;
    [job.settings.coldest, job.settings.hottest] = celsius;
    job
}

#[test]
fn a_strut_is_judged_in_the_cold_and_in_the_heat_of_the_job() {
    // A gas shut in pushes as its absolute temperature (Gay-Lussac): the mass that a strut just
    // holds open in the cold, and the one that it just leaves shut in the heat, go with it.
    let heaviest = |cold: f64| {
        turning_mass(|kilograms| {
            !severities(&strutted(kilograms, [cold, 60.0]), "falls-when-let-go").is_empty()
        })
    };
    let ratio = heaviest(-15.0) / heaviest(5.0);
    assert!((ratio - 258.15 / 278.15).abs() < 1e-6, "{ratio}");
    let lightest = |hot: f64| {
        turning_mass(|kilograms| {
            !severities(&strutted(kilograms, [-50.0, hot]), "springs-open").is_empty()
        })
    };
    let ratio = lightest(60.0) / lightest(40.0);
    assert!((ratio - 333.15 / 313.15).abs() < 1e-6, "{ratio}");
}

#[test]
fn a_fall_is_timed() {
    // Nothing lifts and next to nothing rubs: as fast as a plate swinging down. By the balance of
    // energy w^2 = 2 m g h / I, with I = m (0.594^2 + 0.019^2) / 12 + m r^2 about the axis,
    // r^2 = 0.278^2 + 0.0135^2 and h from 100 degrees to closed.
    let mut card = spring_card(0.0);
    if let Lift::Spring { friction, .. } = &mut card.sizes[0].lift {
        *friction = 0.0;
    }
    let it = &found(&weighed(6.0, 0.0, card), "falls-when-let-go")[0];
    let [r2, g] = [0.278_f64.powi(2) + 0.0135_f64.powi(2), 9.806_65];
    let (sin, cos) = 100.0_f64.to_radians().sin_cos();
    let h = 0.278 * (1.0 - cos) + 0.0135 * sin;
    let inertia = (0.594_f64.powi(2) + 0.019_f64.powi(2)) / 12.0 + r2;
    // The hand is at the middle of the bottom edge: 575 below the axis and 13.5 before it.
    let hand = 0.575_f64.hypot(0.0135);
    let expected = (2.0 * g * h / inertia).sqrt() * hand;
    let speed = it.numbers[1].value;
    // Let go a thousandth of the way below open, which costs less than that.
    assert!(
        (speed / expected - 1.0).abs() < 1e-3,
        "{speed} and {expected}"
    );
    assert_eq!(
        it.message,
        "falls-when-let-go.not-open: falls_from 100°, fastest 4.5 m/s"
    );
}

#[test]
fn a_heavy_door_is_told_of_as_heavy_and_not_as_falling() {
    let mut card = spring_card(10.0);
    card.sizes[0].carries = Carries::Mass { min: 1.0, max: 5.0 };
    let job = weighed(6.0, 0.0, card);
    assert_eq!(severities(&job, "door-too-heavy"), [Severity::Stop]);
    assert_eq!(severities(&job, "falls-when-let-go"), []);
    assert!(
        found(&job, "door-too-heavy")[0]
            .reasons
            .iter()
            .any(|line| line.starts_with("reason.falls-from-open: "))
    );
}

#[test]
fn a_door_that_falls_at_its_likely_mass_is_told_of_though_its_heaviest_is_too_heavy() {
    for (moment, expected) in [(16.26, vec![]), (15.46, vec![Severity::Stop])] {
        let mut card = spring_card(moment);
        card.sizes[0].carries = Carries::Mass { min: 1.0, max: 6.1 };
        let job = weighed(6.0, 0.3, card);
        assert_eq!(severities(&job, "falls-when-let-go"), expected);
        assert_eq!(
            severities(&job, "size-covers-part-of-mass-range"),
            [Severity::Caution]
        );
    }
}

fn falling(moment: f64, plus_minus: f64) -> Told {
    let mut card = card();
    card.sizes[0].lift = spring_lift(moment);
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
        card.sizes[0].lift = spring_lift(moment);
        let mut job = weighed(6.0, 0.0, card);
        job.settings.holds_above = 100.0;
        severities(&job, "falls-when-let-go")
    };
    assert_eq!(with(15.46), [Severity::Stop]);
    assert_eq!(with(15.48), []);
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
        card.sizes[0].lift = spring_lift(moment);
        assert_eq!(
            severities(&weighed(6.0, plus_minus, card), "falls-when-let-go"),
            expected,
            "{moment} N·m, at most {max} kg"
        );
    }
}
