//! What the checks on the chosen size say: sentence, numbers, what they point at, what follows from
//! what. The plain box's weighed door of 6 kg has its middle 278 mm below and 13.5 mm before its
//! axis (see the tests of the working checks): its lift moment is 58.8399 N times
//! (0.278 sin q + 0.0135 cos q) m, the weight of 6 kg at standard gravity.

use crate::common::*;
use crate::findings::*;
use flapwright_model::card::{BackFrom, Card, PerSize, Span};
use flapwright_model::edges::Edges;
use flapwright_model::edit::apply;
use flapwright_model::job::Job;
use flapwright_model::lift::{Carries, Lift, MassRow, SpringRow};
use flapwright_rules::finding::{Severity, Worse};

pub(crate) fn carrying(carries: Carries) -> Card {
    let mut card = card();
    card.sizes[0].carries = carries;
    card
}

/// The same moment at every angle and setting, with friction of 0.5 N·m.
pub(crate) fn spring(moment: f64) -> Lift {
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
pub(crate) fn two_doors(card: Card) -> Job {
    let mut wall_box = wall_box();
    split(
        &mut wall_box,
        fixed_shelf(300.0, 18.0, 3.0),
        Some(door(Edges::all(3.0))),
    );
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
    card.sizes[0].lift = spring(10.0);
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
    card.sizes[0].lift = spring(5.0);
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
            "under 5 mm, clear_depth 322 mm, least_clear_depth 327 mm",
        ),
        (
            347.0,
            324.0,
            342.0,
            347.0,
            "under 5 mm, clear_depth 342 mm, least_clear_depth 347 mm",
        ),
    ] {
        let found = with(least, body);
        assert_eq!(found.len(), 1);
        assert!(found[0].message.ends_with(said), "{}", found[0].message);
        assert_numbers(
            &found[0],
            &[
                ("clear_depth", there, "mm", Worse::Smaller),
                ("least_clear_depth", needed, "mm", Worse::Greater),
            ],
        );
        assert_eq!(found[0].subjects, [FIRST_DOOR]);
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
