//! Checks on how a door behaves: let go, shut, open and flat.
//!
//! The plain box's door of 6 kg hangs on an axis 278 mm above and 13.5 mm behind its middle: its
//! axis is 4 below the underside at 582 and 2 behind the front edges, its middle 300 above the
//! floor of the box and, 19 thick on 2 mm bumpers, 11.5 before the edges. Its lift moment is
//! m g (0.278 sin q + 0.0135 cos q), the moment of a weight about an axis (OpenStax University
//! Physics, 12.1): 15.971 N·m open at 100 degrees, at most 16.377, closed 0.794. A spring that
//! gives the same moment everywhere makes every limit a sum of two numbers.

use crate::common::*;
use crate::findings::*;
use flapwright_model::card::{Card, FittedSides};
use flapwright_model::door::{BuildUp, Grain};
use flapwright_model::edit::apply;
use flapwright_model::job::Job;
use flapwright_model::lift::{Carries, Lift, SpringRow};
use flapwright_model::material::{MaterialClass, Stiffness};
use flapwright_rules::finding::Severity;

/// Friction 0.5 N·m, the same moment at every angle and setting.
fn spring(moment: f64) -> Card {
    let mut card = card();
    card.sizes[0].lift = Lift::Spring {
        table: vec![SpringRow {
            degrees: 0.0,
            weakest: moment,
            strongest: moment,
        }],
        turns: 10.0,
        friction: 0.5,
    };
    card
}

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
        let job = weighed(6.0, plus_minus, spring(moment));
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
        let mut job = weighed(6.0, 0.0, spring(15.86));
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
    let mut card = spring(0.0);
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
    let mut card = spring(10.0);
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
        let mut card = spring(moment);
        card.sizes[0].carries = Carries::Mass { min: 1.0, max: 6.1 };
        let job = weighed(6.0, 0.3, card);
        assert_eq!(severities(&job, "falls-when-let-go"), expected);
        assert_eq!(
            severities(&job, "size-covers-part-of-mass-range"),
            [Severity::Caution]
        );
    }
}

#[test]
fn the_force_on_a_door_of_the_wrong_mass_is_no_trouble_of_its_own() {
    // Nothing lifts 6 kg: at most 16.377 N·m and 0.5 of friction over 0.575 m are 29.3 N.
    for (max, expected) in [(20.0, 1), (5.0, 0)] {
        let mut card = spring(0.0);
        card.sizes[0].carries = Carries::Mass { min: 1.0, max };
        let job = weighed(6.0, 0.0, card);
        assert_eq!(found(&job, "hand-force-too-high").len(), expected);
    }
}

#[test]
fn a_light_door_stays_shut_within_friction() {
    // 0.794 + 0.5 = 1.294 N·m.
    for (moment, expected) in [
        (1.29, vec![]),
        (1.30, vec![Severity::Caution]),
        (5.0, vec![Severity::Caution]),
    ] {
        let job = weighed(6.0, 0.0, spring(moment));
        assert_eq!(severities(&job, "springs-open"), expected, "{moment} N·m");
    }
    let mut card = spring(5.0);
    card.sizes[0].carries = Carries::Mass {
        min: 7.0,
        max: 20.0,
    };
    let job = weighed(6.0, 0.0, card);
    assert_eq!(severities(&job, "springs-open"), []);
    assert_eq!(severities(&job, "door-too-light"), [Severity::Stop]);
}

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

/// 6 kg over 794 mm; between arms 14 mm from inner faces 764 mm apart: L = 736 mm. With
/// I = 594 x 19^3 / 12 = 339 520.5 mm4 and w = 6 x 9.80665 / 794 = 0.0741057 N/mm the sag of an
/// evenly loaded beam on two supports, 5 w L^4 / (384 E I), is 833.94 / E mm; the limit is
/// 736 / 144 = 5.111 mm, so E = 163.2 N/mm2 just holds.
fn stiff(along: f64, across: Option<f64>) -> Job {
    let mut card = card();
    card.linkage.end_degrees = 90.0;
    let mut job = weighed(6.0, 0.0, card);
    job.materials[0].stiffness = Some(Stiffness {
        along,
        across,
        source: "invented".to_owned(),
    });
    job
}

fn grained(mut job: Job, class: MaterialClass, to: Grain) -> Job {
    job.materials[0].class = class;
    if let flapwright_model::door::Leaves::One(leaf) = &mut the_job_door(&mut job, 0).leaves {
        leaf.grain = to;
    }
    job
}

#[test]
fn a_wide_door_bends_like_a_beam() {
    assert_eq!(severities(&stiff(163.2, None), "wide-door-sags"), []);
    let sags = found(&stiff(163.1, None), "wide-door-sags");
    assert_eq!(sags.len(), 1);
    assert!((sags[0].numbers[0].value - 833.94 / 163.1).abs() < 1e-3);
    let mut unknown = stiff(1.0, None);
    unknown.materials[0].stiffness = None;
    assert_eq!(severities(&unknown, "wide-door-sags"), []);
    let mut strict = stiff(163.2, None);
    strict.settings.sag_ratio = 145.0;
    assert_eq!(severities(&strict, "wide-door-sags"), [Severity::Caution]);
}

#[test]
fn the_grain_says_which_stiffness_bears() {
    use MaterialClass::{Board, SolidWood};
    for (class, grain, across, expected) in [
        (Board, Grain::Across, Some(100.0), 0),
        (Board, Grain::Upright, Some(100.0), 1),
        (Board, Grain::None, Some(100.0), 1),
        (Board, Grain::Upright, None, 0),
        (SolidWood, Grain::Upright, Some(100.0), 1),
        (SolidWood, Grain::Upright, None, 0),
        (SolidWood, Grain::Across, None, 0),
    ] {
        let job = grained(stiff(200.0, across), class, grain);
        let found = found(&job, "wide-door-sags").len();
        assert_eq!(found, expected, "{class:?} {grain:?} {across:?}");
    }
    let soft = grained(stiff(100.0, None), SolidWood, Grain::Upright);
    assert_eq!(severities(&soft, "wide-door-sags"), []);
}

#[test]
fn a_thicker_leaf_clears_the_sag_and_undo_restores() {
    let mut job = stiff(120.0, None);
    let before = job.clone();
    let it = found(&job, "wide-door-sags").remove(0);
    // 19 x sqrt(833.94 / 120 / 5.111) = 22.2, so 23 mm.
    assert_eq!(it.remedies[0].kind, "remedy.thickness: to 23 mm");
    let undo = apply(&mut job, it.remedies[0].edit.clone()).expect("a sound job");
    let BuildUp::Plain { thickness, .. } = the_job_door(&mut job, 0).leaves.first().build else {
        panic!("a plain leaf")
    };
    assert_close(thickness, 23.0);
    assert_eq!(severities(&job, "wide-door-sags"), []);
    apply(&mut job, undo).expect("undone");
    assert_eq!(job, before);
}

#[test]
fn hinges_alone_are_the_supports_where_the_card_has_no_arms() {
    // Three hinges, 70 in from faces 764 apart: 312 between; the sag falls with the fourth power,
    // by (312 / 736)^4 = 0.0323, and the limit with the first.
    let mut job = stiff(20.0, None);
    job.cards[0].card = with_hinges(job.cards[0].card.clone());
    job.cards[0].card.door_bores.remove(0);
    assert_eq!(severities(&job, "wide-door-sags"), []);
    job.materials[0].stiffness.as_mut().expect("known").along = 12.4;
    // 833.94 x 0.032295 / 12.4 = 2.1719 mm against 312 / 144 = 2.1667 mm.
    assert_eq!(severities(&job, "wide-door-sags"), [Severity::Caution]);
    job.materials[0].stiffness.as_mut().expect("known").along = 12.5;
    assert_eq!(severities(&job, "wide-door-sags"), []);
}

#[test]
fn one_arm_lifts_no_door_that_is_wider_than_high() {
    let one = |card: Card, width: f64| {
        let mut card = card;
        card.sides = FittedSides::LeftOnly;
        let mut job = weighed(6.0, 0.0, card);
        job.boxes[0].width = width;
        job
    };
    // The door is as much narrower than the box as it is lower: 600 wide is as wide as high.
    assert_eq!(
        severities(&one(with_hinges(card()), 600.0), "one-sided-fitting-racks"),
        []
    );
    assert_eq!(
        severities(&one(with_hinges(card()), 600.1), "one-sided-fitting-racks"),
        [Severity::Caution]
    );
    assert_eq!(
        severities(&one(card(), 500.0), "one-sided-fitting-racks"),
        [Severity::Caution]
    );
    assert_eq!(
        severities(&weighed(6.0, 0.0, card()), "one-sided-fitting-racks"),
        []
    );
    let it = &found(&one(card(), 800.0), "one-sided-fitting-racks")[0];
    // 6 kg x 9.80665 x 0.794 m / 2.
    assert!((it.numbers[1].value - 23.359).abs() < 1e-3);
}

#[test]
fn a_pair_clears_the_racking() {
    let mut one = card();
    one.sides = FittedSides::RightOnly;
    let mut pair = card();
    pair.name = "Dunlin".to_owned();
    let mut job = weighed(6.0, 0.0, one);
    add_card(&mut job, pair);
    let it = found(&job, "one-sided-fitting-racks").remove(0);
    assert_eq!(
        it.remedies[0].kind,
        "remedy.take-size: fitting (fitting-name.size: card \"Dunlin\", size \"1\")"
    );
    let before = job.clone();
    let undo = apply(&mut job, it.remedies[0].edit.clone()).expect("a sound job");
    assert_eq!(severities(&job, "one-sided-fitting-racks"), []);
    apply(&mut job, undo).expect("undone");
    assert_eq!(job, before);
}
