//! How quantities, counts and messages are said.

use std::sync::LazyLock;

use flapwright_model::job::Job;
use flapwright_model::length::Unit;
use flapwright_model::material::MassRange;
use flapwright_model::measure::Measure;
use flapwright_model::message::{Count, Degrees, Mm, Share, ToValue, Value, Word};
use flapwright_motion::load::{Load, LoadKind};
use flapwright_motion::reason::Reason;
use flapwright_rules::message::{BoresOffFitting, DoorHitsCeiling, Effect, Step};
use flapwright_words::{Language, Names, Speaker};

/// A job without parts.
static NOTHING: LazyLock<Job> = LazyLock::new(|| Job::empty(Vec::new(), Vec::new()));
static NAMES: LazyLock<Names<'static>> = LazyLock::new(|| Names::of(&NOTHING));

fn speaker(unit: Unit) -> Speaker<'static> {
    Speaker {
        language: Language::English,
        unit,
        names: Some(&NAMES),
    }
}

#[test]
fn quantities_are_said_in_the_unit_of_the_job() {
    // 25.4 mm to the inch, 0.45359237 kg to the pound: NIST SP 811, appendix B.
    let said =
        |value: Value| [Unit::Millimetre, Unit::Inch].map(|unit| speaker(unit).value(&value));
    assert_eq!(said(Value::Length(600.075)), ["600.1 mm", "23-5/8\""]);
    assert_eq!(
        said(Value::Measured(Measure::Mass, 0.907_184_74)),
        ["0.91 kg", "2.00 lb"]
    );
    assert_eq!(said(Value::Angle(57.4)), ["57°", "57°"]);
    assert_eq!(said(Value::Share(0.6)), ["60 %", "60 %"]);
    assert_eq!(said(Value::Temperature(-0.2)), ["0 °C", "0 °C"]);
}

#[test]
fn a_difference_is_never_said_as_nothing() {
    let tiny = Value::Length(0.02);
    assert_eq!(speaker(Unit::Millimetre).value(&tiny), "less than 0.1 mm");
    assert_eq!(speaker(Unit::Inch).value(&tiny), "less than 1/64\"");
    assert_eq!(speaker(Unit::Millimetre).value(&Value::Length(0.0)), "0 mm");
}

#[test]
fn a_count_chooses_singular_or_plural() {
    let missing = |missing| {
        speaker(Unit::Millimetre).say(&BoresOffFitting::AlsoMissing {
            missing: Count(missing),
        })
    };
    assert_eq!(missing(1), "1 bore is missing.");
    assert_eq!(missing(2), "2 bores are missing.");
}

#[test]
fn messages_stand_in_messages_and_steps_are_listed() {
    let worst = vec![Step::Right { by: Mm(2.0) }, Step::Up { by: Mm(60.0) }];
    let said = speaker(Unit::Millimetre).value(&worst.to_value());
    assert_eq!(said, "2 mm to the right and 60 mm up");
}

#[test]
fn no_mark_of_direction_is_left_in_a_text() {
    let said = speaker(Unit::Millimetre).say(&DoorHitsCeiling::Hits {
        from: Degrees(57.0),
        over: Mm(12.0),
        left_below_the_ceiling: Mm(-12.0),
    });
    assert_eq!(said, "hits the ceiling when opened 57°: 12 mm too high");
    assert!(said.chars().all(|c| c.is_ascii() || c == '°'));
    let share = speaker(Unit::Inch).say(&BoresOffFitting::WithinAdjustment { share: Share(0.5) });
    assert!(share.contains("50 %"), "{share}");
}

#[test]
fn clauses_are_joined_in_their_order() {
    let speaker = speaker(Unit::Millimetre);
    let effects = [Effect::SameSize, Effect::NoBoreMoves];
    assert_eq!(
        speaker.clauses(effects.iter().map(|it| speaker.say(it))),
        "the door keeps its size; no bore moves in the box"
    );
}

#[test]
fn reasons_of_a_verdict_are_said_in_the_unit_of_the_job() {
    // 25.4 mm are an inch and 0.45359237 kg a pound, both exactly (NIST SP 811, appendix B).
    let depth = Reason::TooLittle {
        what: Word("inner-depth"),
        value: 8.0 * 25.4,
        least: 9.5 * 25.4,
    };
    let both = |it: &Reason| [Unit::Inch, Unit::Millimetre].map(|unit| speaker(unit).say(it));
    assert_eq!(
        both(&depth),
        [
            "inner depth 8\": 1-1/2\" under the least (9-1/2\")",
            "inner depth 203.2 mm: 38.1 mm under the least (241.3 mm)"
        ]
    );
    let pound = 0.453_592_37;
    let load = Reason::Load(Load {
        kind: LoadKind::Mass,
        load: MassRange {
            low: 4.0 * pound,
            likely: 5.0 * pound,
            high: 6.0 * pound,
        },
        min: 3.0 * pound,
        max: 8.0 * pound,
    });
    assert_eq!(
        both(&load)[0],
        "mass 4.00 lb to 6.00 lb, likely 5.00 lb; rated from 3.00 lb to 8.00 lb"
    );
}
