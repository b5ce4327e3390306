//! The checks `door-too-heavy`, `door-too-light` and `size-covers-part-of-mass-range`.
//!
//! All limits are those of the invented test card; what is expected is worked out beside each.
//!
//! Worked by hand on the plain box: door 794 by 594, sides 322 by 600, bores of the fitting 82 below
//! the top end of the side, 29 in from the door's sides.
//!
//! The plain box's weighed door of 6 kg has its middle 278 mm below and 13.5 mm before its axis: its
//! lift moment is 58.8399 N times (0.278 sin q + 0.0135 cos q) m, the weight of 6 kg at standard
//! gravity.

use crate::common::*;
use crate::findings::*;
use crate::worked::{LOAD_CHECKS, carrying, spring_lift, two_doors};
use flapwright_model::card::{Card, Span};
use flapwright_model::edit::apply;
use flapwright_model::lift::Carries;
use flapwright_rules::finding::{Severity, Worse};

fn carrying_mass(min: f64, max: f64) -> Card {
    let mut card = card();
    card.sizes[0].carries = Carries::Mass { min, max };
    card
}

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
        let job = weighed(10.0, 0.5, carrying_mass(min, max));
        let counts = LOAD_CHECKS.map(|name| found(&job, name).len());
        assert_eq!(counts, expected, "{min} to {max} kg");
    }
}

#[test]
fn a_load_is_said_in_numbers() {
    let job = weighed(10.0, 0.5, carrying_mass(1.0, 9.0));
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
    let mut card = carrying_mass(1.0, 9.0);
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
    for name in LOAD_CHECKS {
        assert!(found(&job, name).is_empty(), "{name}");
    }
    apply(&mut job, undo).expect("undone");
    assert_eq!(job, before);
}

#[test]
fn at_most_three_sizes_are_offered() {
    let mut card = carrying_mass(1.0, 9.0);
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

#[test]
fn a_size_that_covers_part_of_the_mass_says_which_end_is_out() {
    const NAME: &str = "size-covers-part-of-mass-range";
    let with = |min, max| {
        let mut card = card();
        card.sizes[0].carries = Carries::Mass { min, max };
        the_only(&weighed(6.0, 0.3, card), NAME)
    };
    says(
        &with(1.0, 6.1),
        "what (load-name.mass), least 1.00 kg, most 6.10 kg, likely 6.00 kg",
    );
    says(&with(1.0, 6.1), "over 0.20 kg, greatest_load 6.30 kg");
    says(&with(5.9, 20.0), "under 0.20 kg, least_load 5.70 kg");
    says(&with(5.9, 6.1), "over 0.20 kg, greatest_load 6.30 kg");
    says(&with(5.9, 6.1), "under 0.20 kg, least_load 5.70 kg");
}

#[test]
fn a_door_that_is_too_heavy_or_too_light_gives_its_numbers() {
    let heavy = the_only(
        &weighed(10.0, 0.5, carrying(Carries::Mass { min: 1.0, max: 9.0 })),
        "door-too-heavy",
    );
    assert_numbers(
        &heavy,
        &[
            ("greatest_load", 10.5, "kg", Worse::Greater),
            ("most_carried", 9.0, "kg", Worse::Smaller),
        ],
    );
    assert_eq!(heavy.subjects, [FIRST_DOOR]);
    assert_eq!(
        heavy.reasons,
        [
            "door-too-heavy.range: what (load-name.mass), low 9.50 kg, likely 10.00 kg, high 10.50 kg",
            "advice.none",
            "advice.nearest: fitting (fitting-name.size: card \"Plover\", size \"1\"), why (reason.load: \
             what (load-name.mass), low 9.50 kg, likely 10.00 kg, high 10.50 kg, least 1.00 kg, most 9.00 kg)"
        ]
    );
    let light = the_only(
        &weighed(
            10.0,
            0.5,
            carrying(Carries::Mass {
                min: 11.5,
                max: 20.0,
            }),
        ),
        "door-too-light",
    );
    assert_eq!(light.severity, Severity::Stop);
    assert_eq!(
        light.message,
        "door-too-light.under: fitting (fitting-name.size: card \"Plover\", size \"1\"), what (load-name.mass), under 1.50 kg, least_load 9.50 kg, least_carried 11.50 kg"
    );
    assert_numbers(
        &light,
        &[
            ("least_load", 9.5, "kg", Worse::Smaller),
            ("least_carried", 11.5, "kg", Worse::Greater),
        ],
    );
}

#[test]
fn a_lift_moment_that_is_too_great_is_said_with_its_angle() {
    // At 90 degrees 58.8399 x 0.278 = 16.3575 N·m; 5.7 and 6.3 kg: 5 % less and more.
    let limited = |min, max| {
        weighed(
            6.0,
            0.3,
            carrying(Carries::Moment {
                min,
                max,
                at_degrees: 90.0,
            }),
        )
    };
    let job = limited(1.0, 16.0);
    let heavy = the_only(&job, "door-too-heavy");
    assert_eq!(
        heavy.message,
        "door-too-heavy.over: fitting (fitting-name.size: card \"Plover\", size \"1\"), what (load-name.moment: at 90°), over 0.4 N·m, greatest_load 17.2 N·m, most_carried 16.0 N·m"
    );
    assert_numbers(
        &heavy,
        &[
            ("greatest_load", 16.3575 * 1.05, "N·m", Worse::Greater),
            ("most_carried", 16.0, "N·m", Worse::Smaller),
        ],
    );
    let light = the_only(&limited(17.0, 40.0), "door-too-light");
    assert_eq!(
        light.message,
        "door-too-light.under: fitting (fitting-name.size: card \"Plover\", size \"1\"), what (load-name.moment: at 90°), under 0.6 N·m, least_load 15.5 N·m, least_carried 17.0 N·m"
    );
    assert_numbers(
        &light,
        &[
            ("least_load", 16.3575 * 0.95, "N·m", Worse::Smaller),
            ("least_carried", 17.0, "N·m", Worse::Greater),
        ],
    );
}

#[test]
fn what_follows_from_the_wrong_load_is_a_detail_and_what_has_a_check_of_its_own_is_not() {
    // Size 1 gives 10 N·m everywhere and is made for narrower doors; size 2 is that of the plain
    // box. Open to 100 degrees 6 kg pull with 15.971 N·m, closed with 0.794: 5.971 more and 9.206
    // less than the spring.
    let mut card = card();
    let mut fits = card.sizes[0].clone();
    fits.name = "2".to_owned();
    card.sizes[0].carries = Carries::Mass { min: 1.0, max: 5.0 };
    card.sizes[0].lift = spring_lift(10.0);
    card.sizes[0].door_width = Span {
        min: 100.0,
        max: 500.0,
    };
    card.sizes.push(fits);
    let heavy = the_only(&weighed(6.0, 0.0, card), "door-too-heavy");
    assert_eq!(
        heavy.reasons,
        [
            "door-too-heavy.range: what (load-name.mass), low 6.00 kg, likely 6.00 kg, high 6.00 kg",
            "reason.falls-from-open: celsius 5 °C, closing 6.0 N·m, friction 0.5 N·m",
            "reason.rises-from-closed: celsius 40 °C, opening 9.2 N·m, friction 0.5 N·m"
        ]
    );
    let remedy = &heavy.remedies[0];
    assert_eq!(
        remedy.kind,
        "remedy.take-size: fitting (fitting-name.size: card \"Plover\", size \"2\")"
    );
    assert_eq!(
        remedy.effects,
        "effect.load: load (reason.load: what (load-name.mass), low 6.00 kg, likely 6.00 kg, high 6.00 kg, \
         least 1.00 kg, most 20.00 kg); effect.turns: turns 5.0, of 10; effect.bores-follow-size"
    );
    // Closed, 6 kg pull with 58.8399 x 0.0135 = 0.794 N·m against a spring of 5.
    let mut card = carrying(Carries::Mass {
        min: 7.0,
        max: 20.0,
    });
    card.sizes[0].lift = spring_lift(5.0);
    let light = the_only(&weighed(6.0, 0.0, card), "door-too-light");
    assert_eq!(light.reasons.len(), 5, "{:?}", light.reasons);
    assert_eq!(
        light.reasons[1],
        "reason.falls-from-open: celsius 5 °C, closing 11.0 N·m, friction 0.5 N·m"
    );
}

#[test]
fn the_load_of_the_second_door_from_the_top_is_that_door_s() {
    let mut job = two_doors(carrying(Carries::Mass {
        min: 0.1,
        max: 20.0,
    }));
    let heavier = job.cards[0].card.clone();
    let heavier = Card {
        name: "Dunlin".to_owned(),
        ..heavier
    };
    let dunlin = add_card(&mut job, heavier);
    job.cards[1].card.sizes[0].carries = Carries::Mass { min: 0.1, max: 1.0 };
    let fitting = the_job_door(&mut job, 1).fitting.as_mut();
    fitting.expect("a fitting").card = dunlin;
    let heavy = the_only(&job, "door-too-heavy");
    assert_eq!(heavy.subjects, [door_subject(&job, 0, 1)]);
    assert_eq!(
        heavy.message,
        "door-too-heavy.over: fitting (fitting-name.size: card \"Dunlin\", size \"1\"), what (load-name.mass), over 2.12 kg, greatest_load 3.31 kg, most_carried 1.00 kg"
    );
}

#[test]
fn taking_the_size_that_is_offered_is_undone() {
    let mut card = card();
    let mut low = card.sizes[0].clone();
    low.name = "0".to_owned();
    card.sizes[0].least_inner_height = 600.0;
    card.sizes.push(low);
    let mut job = job(wall_box(), card);
    let before = job.clone();
    let remedy = the_only(&job, "opening-too-short").remedies.remove(0);
    assert_eq!(
        remedy.kind,
        "remedy.take-size: fitting (fitting-name.size: card \"Plover\", size \"0\")"
    );
    let undo = apply(&mut job, remedy.edit).expect("a sound job");
    assert_eq!(severities(&job, "opening-too-short"), []);
    apply(&mut job, undo).expect("undone");
    assert_eq!(job, before);
}
