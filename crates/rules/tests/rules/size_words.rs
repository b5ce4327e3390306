//! What the checks on the chosen size say: sentence, numbers, what they point at, what follows from
//! what. The plain box's weighed door of 6 kg has its middle 278 mm below and 13.5 mm before its
//! axis (see the tests of the working checks): its lift moment is 58.8399 N times
//! (0.278 sin q + 0.0135 cos q) m, the weight of 6 kg at standard gravity.

use crate::common::*;
use crate::findings::*;
use flapwright_model::cabinet::Opening;
use flapwright_model::card::{BackFrom, Card, PerSize, Span};
use flapwright_model::door::FittingChoice;
use flapwright_model::edges::Edges;
use flapwright_model::edit::apply;
use flapwright_model::job::Job;
use flapwright_model::length::Unit;
use flapwright_model::lift::{Carries, Lift, MassRow, SpringRow};
use flapwright_model::material::MassRange;
use flapwright_model::part::Subject;
use flapwright_motion::gravity::ByMass;
use flapwright_motion::load::{Load, LoadKind};
use flapwright_motion::reason::Reason;
use flapwright_motion::setting::Setting;
use flapwright_motion::sizes::{Grade, Verdict};
use flapwright_rules::advice::{advice, turns};
use flapwright_rules::chosen_work::chosen_work;
use flapwright_rules::finding::{Finding, Severity, Worse};

pub(crate) const fn opening(box_index: usize, opening: usize) -> Subject {
    Subject::Opening { box_index, opening }
}

fn carrying(carries: Carries) -> Card {
    let mut card = card();
    card.sizes[0].carries = carries;
    card
}

/// The same moment at every angle and setting, with friction of 0.5 N·m.
fn spring(moment: f64) -> Lift {
    Lift::Spring {
        table: vec![SpringRow {
            degrees: 0.0,
            weakest: moment,
            strongest: moment,
        }],
        turns: 10.0,
        friction: 0.5,
    }
}

/// Two doors alike over each other: 300 to 318 is the shelf between them.
fn two_doors(card: Card) -> Job {
    let mut wall_box = wall_box();
    wall_box.shelves.push(fixed_shelf(300.0, 18.0, 3.0));
    wall_box.openings.push(Opening {
        door: Some(door(Edges::all(3.0))),
    });
    job(wall_box, card)
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
            ("greatest mass", 10.5, "kg", Worse::Greater),
            ("most carried", 9.0, "kg", Worse::Smaller),
        ],
    );
    assert_eq!(heavy.subjects, [opening(0, 0)]);
    assert_eq!(
        heavy.details,
        [
            "No size of any card suits this door. Nearest is Plover, size 1: door mass 9.50 to \
             10.50 kg, likely 10.00; it carries 1.00 to 9.00 kg."
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
        "\"test box\", door: its likely mass is 10.00 kg (9.50 to 10.50) and Plover, size 1 is made \
         for no less than 11.50 kg, 1.50 kg more"
    );
    assert_numbers(
        &light,
        &[
            ("least mass", 9.5, "kg", Worse::Smaller),
            ("least carried", 11.5, "kg", Worse::Greater),
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
    let mut job = limited(1.0, 16.0);
    let heavy = the_only(&job, "door-too-heavy");
    assert!(
        heavy.message.ends_with(
            "its likely lift moment at 90° is 16.4 N·m (15.5 to 17.2) and Plover, size 1 carries no \
             more than 16.0 N·m, 0.4 N·m less"
        ),
        "{}",
        heavy.message
    );
    assert_numbers(
        &heavy,
        &[
            (
                "greatest lift moment",
                16.3575 * 1.05,
                "N·m",
                Worse::Greater,
            ),
            ("most carried", 16.0, "N·m", Worse::Smaller),
        ],
    );
    let light = the_only(&limited(17.0, 40.0), "door-too-light");
    assert!(
        light.message.ends_with(
            "its likely lift moment at 90° is 16.4 N·m (15.5 to 17.2) and Plover, size 1 is made \
             for no less than 17.0 N·m, 0.6 N·m more"
        ),
        "{}",
        light.message
    );
    assert_numbers(
        &light,
        &[
            ("least lift moment", 16.3575 * 0.95, "N·m", Worse::Smaller),
            ("least carried", 17.0, "N·m", Worse::Greater),
        ],
    );
    // 0.112985 N·m to the pound-force inch (NIST SP 811): 16.3575 / 0.112985 = 144.8.
    job.unit = Unit::Inch;
    let message = the_only(&job, "door-too-heavy").message;
    assert!(message.contains("is 145 lbf·in (138 to 152)"), "{message}");
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
    card.sizes[0].lift = spring(10.0);
    card.sizes[0].door_width = Span {
        min: 100.0,
        max: 500.0,
    };
    card.sizes.push(fits);
    let heavy = the_only(&weighed(6.0, 0.0, card), "door-too-heavy");
    assert_eq!(
        heavy.details,
        [
            "the heaviest door falls from open at 5 °C: 6.0 N·m pull it shut against 0.5 N·m of \
             friction",
            "the lightest door does not stay shut at 40 °C: 9.2 N·m push it open against 0.5 N·m \
             of friction"
        ]
    );
    let remedy = &heavy.remedies[0];
    assert_eq!(remedy.title, "Take Plover, size 2");
    assert!(
        remedy
            .effect
            .starts_with("door mass 6.00 to 6.00 kg, likely 6.00; it carries 1.00 to 20.00 kg; ")
            && remedy
                .effect
                .ends_with(" of 10 turns; the fitting's bores follow that size"),
        "{}",
        remedy.effect
    );
    // Closed, 6 kg pull with 58.8399 x 0.0135 = 0.794 N·m against a spring of 5.
    let mut card = carrying(Carries::Mass {
        min: 7.0,
        max: 20.0,
    });
    card.sizes[0].lift = spring(5.0);
    let light = the_only(&weighed(6.0, 0.0, card), "door-too-light");
    assert_eq!(light.details.len(), 3, "{:?}", light.details);
    assert_eq!(
        light.details[1],
        "the lightest door does not stay shut at 40 °C: 4.2 N·m push it open against 0.5 N·m of \
         friction"
    );
}

#[test]
fn the_load_of_the_second_door_from_the_top_is_that_door_s() {
    let mut job = two_doors(carrying(Carries::Mass {
        min: 0.1,
        max: 20.0,
    }));
    let heavier = job.cards[0].clone();
    job.cards.push(Card {
        name: "Dunlin".to_owned(),
        ..heavier
    });
    job.cards[1].sizes[0].carries = Carries::Mass { min: 0.1, max: 1.0 };
    let fitting = the_job_door(&mut job, 1).fitting.as_mut();
    fitting.expect("a fitting").card = "Dunlin".to_owned();
    let heavy = the_only(&job, "door-too-heavy");
    assert_eq!(heavy.subjects, [opening(0, 1)]);
    assert!(
        heavy
            .message
            .starts_with("\"test box\", door 2 from the top: "),
        "{}",
        heavy.message
    );
}

#[test]
fn a_box_that_is_too_low_says_how_much_is_there_and_how_much_is_needed() {
    let mut card = card();
    card.sizes[0].least_inner_height = 600.0;
    let low = the_only(&job(wall_box(), card), "box-too-low");
    assert_eq!(
        low.message,
        "\"test box\", door: Plover, size 1 needs a clear height of 600 mm and the opening has \
         564 mm, 36 mm too little"
    );
    assert_numbers(
        &low,
        &[
            ("clear height", 564.0, "mm", Worse::Smaller),
            ("least clear height", 600.0, "mm", Worse::Greater),
        ],
    );
    assert_eq!(low.subjects, [opening(0, 0)]);
    // 318 to 582 above the shelf are 264, 18 to 300 below it 282.
    let mut card = self::card();
    card.sizes[0].least_inner_height = 270.0;
    let upper = the_only(&two_doors(card), "box-too-low");
    assert!(
        upper
            .message
            .starts_with("\"test box\", door 1 from the top: ")
            && upper.message.ends_with("264 mm, 6 mm too little"),
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
    for name in ["box-too-low", "box-too-shallow"] {
        assert_eq!(severities(&bodies(564.0, 600.0), name), []);
        assert_eq!(severities(&bodies(565.0, 300.0), name), [Severity::Stop]);
    }
}

#[test]
fn the_depth_that_lacks_most_is_the_one_that_is_told() {
    // 322 behind the sides; a face frame of 20 stands before them: 342 behind its front.
    let with = |least: f64, body: f64| {
        let mut card = card();
        card.linkage.front = BackFrom::FrameFront;
        card.sizes[0].least_inner_depth = least;
        card.envelope.front = BackFrom::SideFront;
        card.envelope.back_to = PerSize::All(body);
        let mut wall_box = wall_box();
        wall_box.frame = Some(face_frame(20.0, 30.0, 0.0));
        found(&job(wall_box, card), "box-too-shallow")
    };
    assert_eq!(with(342.0, 322.0), []);
    for (least, body, there, needed, said) in [
        (
            344.0,
            327.0,
            322.0,
            327.0,
            "needs a clear depth of 327 mm and the box has 322 mm, 5 mm too little",
        ),
        (
            347.0,
            324.0,
            342.0,
            347.0,
            "needs a clear depth of 347 mm and the box has 342 mm, 5 mm too little",
        ),
    ] {
        let found = with(least, body);
        assert_eq!(found.len(), 1);
        assert!(found[0].message.ends_with(said), "{}", found[0].message);
        assert_numbers(
            &found[0],
            &[
                ("clear depth", there, "mm", Worse::Smaller),
                ("least clear depth", needed, "mm", Worse::Greater),
            ],
        );
        assert_eq!(found[0].subjects, [opening(0, 0)]);
    }
}

#[test]
fn a_door_outside_its_spans_is_told_in_one_sentence() {
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
        "\"test box\", door: Plover, size 1 is not made for it: the door height is 594 mm, 94 mm \
         above its span of 100 mm to 500 mm; the door width is 794 mm, 6 mm below its span of 800 \
         mm to 900 mm"
    );
    assert_numbers(
        &outside,
        &[
            (
                "door height outside its span by",
                94.0,
                "mm",
                Worse::Greater,
            ),
            ("door width outside its span by", 6.0, "mm", Worse::Greater),
        ],
    );
    assert_eq!(outside.subjects, [opening(0, 0)]);
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
    assert!(
        outside
            .message
            .ends_with("the box height is 600 mm, 5 mm below its span of 605 mm to 700 mm"),
        "{}",
        outside.message
    );
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
        short
            .message
            .starts_with("\"test box\", door, Plover, size 1: from an opening of ")
            && short.message.contains(
                "the strut is too short: it would have to be 459.8 mm long and is 455.0 mm"
            ),
        "{}",
        short.message
    );
    assert_numbers(
        &short,
        &[("strut too short by", 4.787, "mm", Worse::Greater)],
    );
    assert_eq!(short.subjects, [opening(0, 0)]);
    // 500 - 250 = 250 at the shortest.
    let long = the_only(&on_strut(500.0, 250.0), NAME);
    assert_eq!(long.severity, Severity::Stop);
    assert!(
        long.message.contains(
            "from an opening of 0.0 degrees on the strut is too long: it would have to be 235.8 mm \
             and is no shorter than 250.0 mm"
        ),
        "{}",
        long.message
    );
    assert_numbers(
        &long,
        &[("strut too long by", 14.153, "mm", Worse::Greater)],
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
    assert!(
        beyond.message.ends_with(
            "Plover, size 1: the size limits the lift moment at 120 degrees and the door opens only \
             to 100 degrees"
        ),
        "{}",
        beyond.message
    );
    assert_numbers(
        &beyond,
        &[
            ("angle of the limit", 120.0, "°", Worse::Either),
            ("end angle", 100.0, "°", Worse::Either),
        ],
    );
}

fn falling(moment: f64, plus_minus: f64) -> Finding {
    let mut card = card();
    card.sizes[0].lift = spring(moment);
    the_only(&weighed(6.0, plus_minus, card), "falls-when-let-go")
}

#[test]
fn who_falls_and_from_where_is_said() {
    // 15.971 N·m open: 15.46 + 0.5 is less, 16.26 + 0.5 is more; 6.3 kg pull with 16.770.
    for (moment, plus_minus, said) in [
        (15.46, 0.3, ": the door does not stay open at 100° and "),
        (
            16.26,
            0.3,
            ": the heaviest door does not stay open at 100° and ",
        ),
    ] {
        let it = falling(moment, plus_minus);
        assert!(it.message.contains(said), "{}", it.message);
        assert_eq!(
            (
                it.numbers[0].label.as_str(),
                it.numbers[0].unit,
                it.numbers[0].worse
            ),
            ("falls from", "°", Worse::Greater)
        );
        assert_close(it.numbers[0].value, 100.0);
        assert_eq!(
            (
                it.numbers[1].label.as_str(),
                it.numbers[1].unit,
                it.numbers[1].worse
            ),
            ("fastest", "m/s", Worse::Greater)
        );
        assert_eq!(it.subjects, [opening(0, 0)]);
    }
}

#[test]
fn a_door_that_catches_itself_says_where_it_comes_to_rest() {
    // It pulls with at most 16.377 N·m at 87.22 degrees and falls where that is more than
    // 15.86 + 0.5: from 89.83 down to 84.61. The speed that it has there takes it on: near its top
    // the pull is a parabola, whose surplus over twice 2.61 degrees is eaten up 2 x 2.61 below the
    // top, at 82.0.
    let it = falling(15.86, 0.0);
    assert!(
        it.message
            .ends_with(": the heaviest door falls when it is let go at 90° and comes down to 82°"),
        "{}",
        it.message
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
    assert!(
        it.message
            .ends_with(" and falls shut in 0.4 s and arrives with 4.5 m/s at the hand"),
        "{}",
        it.message
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
        "\"test box\", door: the hand needs up to 29.3 N to open it, at 87° of the way; the limit \
         is 22.2 N"
    );
    // 5 lbf are 5 x 4.448222 N (NIST SP 811).
    assert_numbers(
        &it,
        &[
            ("largest hand force", 29.342, "N", Worse::Greater),
            ("limit", 22.241, "N", Worse::Smaller),
        ],
    );
    assert_eq!(it.subjects, [opening(0, 0)]);
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
    assert!(
        it.message
            .contains("the hand needs up to 69.0 N to close it, at 0° of the way"),
        "{}",
        it.message
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
        let work = chosen_work(&job, &job.boxes[0], &inspection.boxes[0], 0).expect("it works");
        let setting = work.verdict.setting.expect("a spring that can be set");
        let curves = work.curves.expect("a spring that can be reckoned with");
        // 0.5 N·m over the hand's 575.16 mm: 0.869 N whichever way.
        for point in &curves.points {
            let (least, most) = point
                .force_range(flapwright_motion::statics::Way::Opening)
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

fn verdict(card: &str, size: &str, grade: Grade, reasons: Vec<Reason>) -> Verdict {
    Verdict {
        card: card.to_owned(),
        size: size.to_owned(),
        pieces: 2,
        grade,
        centred: 0.3,
        load: None,
        setting: None,
        reasons,
    }
}

fn shallow() -> Vec<Reason> {
    vec![Reason::TooLittle {
        what: "inner depth",
        value: 200.0,
        least: 240.0,
    }]
}

fn falls() -> Vec<Reason> {
    vec![Reason::FallsFromOpen {
        balance: 1.0,
        friction: 0.5,
        celsius: 5.0,
    }]
}

fn choose(card: &str, size: &str) -> FittingChoice {
    FittingChoice {
        card: card.to_owned(),
        size: size.to_owned(),
        packing: 0.0,
    }
}

const SHALLOW: &str = "inner depth is 200 mm and must be 240 mm: 40 mm too little";
const FALLS: &str = "the heaviest door falls from open at 5 °C: 1.0 N·m pull it shut against 0.5 \
                     N·m of friction";

#[test]
fn advice_names_the_nearest_size_where_none_fits_fully() {
    let list = [
        verdict("Plover", "2", Grade::Marginal, falls()),
        verdict("Plover", "3", Grade::No, shallow()),
    ];
    let say = |choice: Option<FittingChoice>| advice(&list, choice.as_ref(), Unit::Millimetre);
    assert_eq!(
        say(Some(choose("Plover", "3"))),
        format!(
            "Plover, size 3 does not suit this door: {SHALLOW}. Nearest is Plover, size 2: {FALLS}."
        )
    );
    assert_eq!(
        say(Some(choose("Plover", "2"))),
        format!("Plover, size 2 is at its limit: {FALLS}. No other size does better.")
    );
    let none = format!("No size fits fully. Plover, size 2 is at its limit: {FALLS}.");
    assert_eq!(say(None), none);
    // A size of that name on another card is another size.
    assert_eq!(say(Some(choose("Dunlin", "3"))), none);
    assert_eq!(say(Some(choose("Plover", "4"))), none);
}

#[test]
fn advice_of_a_size_that_fits_tells_how_well_it_lies_and_its_turns() {
    let load = Load {
        kind: LoadKind::Moment { at_degrees: 90.0 },
        load: MassRange {
            low: 4.0,
            likely: 5.0,
            high: 6.0,
        },
        min: 1.0,
        max: 9.0,
    };
    let by_mass = |value: f64| ByMass {
        low: 0.4,
        likely: value,
        high: 0.9,
    };
    let mut fits = verdict("Plover", "2", Grade::Fits, Vec::new());
    fits.load = Some(load);
    fits.setting = Some(Setting {
        share: by_mass(0.611_11),
        turns: by_mass(5.5),
        range: 9.0,
    });
    // 0.61111 of 9 turns.
    assert_eq!(turns(&fits).as_deref(), Some("5.5 of 9 turns"));
    let well = "Plover, size 2 suits this door: its whole lift moment range lies well inside what \
                it carries, 5.5 of 9 turns.";
    let list = [
        fits.clone(),
        verdict("Plover", "3", Grade::Marginal, falls()),
        verdict("Plover", "1", Grade::No, shallow()),
    ];
    let say = |choice: Option<FittingChoice>| advice(&list, choice.as_ref(), Unit::Millimetre);
    assert_eq!(say(None), well);
    assert_eq!(say(Some(choose("Plover", "2"))), well);
    assert_eq!(
        say(Some(choose("Plover", "3"))),
        format!("Plover, size 3 is at its limit: {FALLS}. {well}")
    );
    assert_eq!(
        say(Some(choose("Plover", "1"))),
        format!("Plover, size 1 does not suit this door: {SHALLOW}. {well}")
    );
    fits.centred = 0.29;
    fits.load = None;
    fits.setting = None;
    assert_eq!(turns(&fits), None);
    assert_eq!(
        advice(&[fits], None, Unit::Millimetre),
        "Plover, size 2 suits this door: its whole mass range lies inside what it carries, near a \
         limit."
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
    let remedy = the_only(&job, "box-too-low").remedies.remove(0);
    assert_eq!(remedy.title, "Take Plover, size 0");
    let undo = apply(&mut job, remedy.edit).expect("a sound job");
    assert_eq!(severities(&job, "box-too-low"), []);
    apply(&mut job, undo).expect("undone");
    assert_eq!(job, before);
}

#[test]
fn numbers_of_a_card_that_nothing_can_be_reckoned_with_are_a_caution() {
    // A stroke of half a thousandth of a millimetre is above 0 and no strut's.
    let mut job = on_strut(500.0, 0.000_5);
    let it = the_only(&job, "lift-cannot-work");
    assert_eq!(it.severity, Severity::Caution);
    assert!(
        it.message
            .ends_with(": the strut's stroke is 0.0005; that is out of range, type it again"),
        "{}",
        it.message
    );
    assert_numbers(&it, &[("number out of range", 0.000_5, "", Worse::Either)]);
    // Two rows whose angles rise by less than a number of radians can hold.
    job.cards[0].sizes[0].lift = Lift::Spring {
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
    assert!(
        it.message.ends_with(
            ": row 2 of the spring table is not at a greater angle than the one before; sort them"
        ),
        "{}",
        it.message
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
