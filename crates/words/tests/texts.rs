//! Every text that the program can say, with an example for each of its arguments: one snapshot a
//! group. They are read by eye against the rules of how the program speaks.

#![expect(clippy::expect_used, reason = "a test that lacks its part is to fail")]

use std::collections::BTreeMap;

use flapwright_model::cabinet::WallBox;
use flapwright_model::id::{BoxId, DoorId};
use flapwright_model::job::Job;
use flapwright_model::length::Unit;
use flapwright_model::message::{Argument, Said, Value};
use flapwright_model::part::Subject;
use flapwright_rules::message::examples;
use flapwright_words::{Language, Names, Speaker, own_examples};

/// What messages point at.
const DOOR: Subject = Subject::Door(BoxId::new(1), DoorId::new(2));

/// A job with a box named mugs.
fn job() -> Job {
    let mut job = Job::empty(Vec::new(), Vec::new());
    job.boxes.push(WallBox {
        id: BoxId::new(1),
        name: "mugs".to_owned(),
        ..WallBox::plain([600.0, 400.0, 300.0], 18.0, "board", None)
    });
    job
}

/// What people and checks fill in for an argument of that name.
fn filled_in(name: &str) -> Option<Value> {
    let label = |it: &str| Some(Value::Label(it.to_owned()));
    match name {
        "size" => label("2"),
        "purpose" | "first_purpose" => label("arm"),
        "second_purpose" => label("shelf pin"),
        "material" | "glass" | "infill" => label("clear glass"),
        "obstacle" => label("gas pipe"),
        "revision" => label("B"),
        "reason" => label("seen on site"),
        "name" => label("mugs"),
        "hits" => Some(Value::Word("handle-hits")),
        "comes" => Some(Value::Word("arm-comes")),
        "what" => Some(Value::Word("height")),
        "between" => Some(Value::Word("below-panel")),
        "leaf" => Some(Value::Word("upper-leaf")),
        "face" => Some(Value::Word("door")),
        "was" => Some(Value::Length(118.0)),
        "is" => Some(Value::Length(121.5)),
        _ => None,
    }
}

/// The same message as it may come from a job: no two numbers alike.
fn lifelike(said: &Said, number: &mut f64) -> Said {
    let arguments = said.arguments.iter().map(|it| {
        let as_declared = vary(&it.value, number);
        let value = match (&it.value, filled_in(it.name)) {
            (Value::Label(_) | Value::Word(_), Some(value)) => value,
            _ => as_declared,
        };
        Argument {
            name: it.name,
            value,
            worse: it.worse,
        }
    });
    Said {
        key: said.key,
        arguments: arguments.collect(),
    }
}

fn vary(value: &Value, number: &mut f64) -> Value {
    *number += 1.0;
    match value {
        Value::Length(it) => Value::Length(it + *number),
        Value::Measured(measure, it) => Value::Measured(*measure, it + *number),
        Value::Angle(it) => Value::Angle(it + *number),
        Value::Message(it) => Value::Message(Box::new(lifelike(it, number))),
        Value::All(all) => Value::All(all.iter().map(|it| vary(it, number)).collect()),
        Value::Sum(all) => Value::Sum(all.iter().map(|it| vary(it, number)).collect()),
        Value::Place(_) => Value::Place(DOOR),
        Value::PlaceWithin(_) => Value::PlaceWithin(DOOR),
        other => other.clone(),
    }
}

/// The texts by group, each with its key: in millimetres, and in inches where that differs.
fn texts() -> BTreeMap<&'static str, Vec<(&'static str, [String; 2])>> {
    let job = job();
    let names = Names::of(&job);
    let mut groups: BTreeMap<&str, Vec<_>> = BTreeMap::new();
    for said in examples().into_iter().chain(own_examples()) {
        let (group, _) = said.key.split_once('.').expect("a group and a name");
        let said = lifelike(&said, &mut 0.0);
        let both = [Unit::Millimetre, Unit::Inch].map(|unit| {
            let speaker = Speaker {
                language: Language::English,
                unit,
                names: Some(&names),
            };
            speaker.said(&said)
        });
        groups.entry(group).or_default().push((said.key, both));
    }
    groups
}

#[test]
fn each_group_says_this() {
    for (group, texts) in texts() {
        let mut lines = String::new();
        for (key, [metric, inch]) in texts {
            assert_ne!(metric, key, "a text that cannot be said");
            lines.push_str(&format!("{key}\n    {metric}\n"));
            if inch != metric {
                lines.push_str(&format!("    {inch}\n"));
            }
        }
        insta::assert_snapshot!(group, lines);
    }
}

/// Symbols that belong to the number before them.
const SYMBOLS: [&str; 11] = [
    "mm", "kg", "lb", "N", "lbf", "N·m", "lbf·in", "°C", "%", "s", "m/s",
];

/// How many words a text has, a number with its unit being one.
fn words(text: &str) -> usize {
    let all = text.split_whitespace();
    all.filter(|it| !SYMBOLS.contains(&it.trim_end_matches([';', ',', '.', ':', ')'])))
        .count()
}

/// Groups that are no findings, so that no headline is among them.
const NO_FINDINGS: [&str; 19] = [
    "advice",
    "bore-place",
    "box-name",
    "chain",
    "effect",
    "fitting-name",
    "load-name",
    "part-name",
    "panel-differs",
    "place",
    "proof",
    "reason",
    "remedy",
    "reopened",
    "step",
    "mend",
    "slip",
    "slip-remedy",
    "which-number",
];

#[test]
fn a_headline_has_fifteen_words_at_most() {
    // The place before it, "mugs, door:", has two. Reasons are sentences with a capital.
    let mut too_long = Vec::new();
    for (group, texts) in texts() {
        if NO_FINDINGS.contains(&group) {
            continue;
        }
        for (key, [text, _]) in texts {
            let is_headline = text.chars().next().is_some_and(|c| !c.is_uppercase());
            let count = words(&text) + 2;
            if is_headline && count > 15 {
                too_long.push(format!("{key}: {count} words: {text}"));
            }
        }
    }
    assert!(too_long.is_empty(), "{too_long:#?}");
}
