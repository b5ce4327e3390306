//! Findings and verdicts (JSON): their numbers, since their words change on purpose.

use anyhow::Result;
use serde_json::Value;

use super::output::Output;
use super::tally::{Kind, Tally};

/// Compares findings by severity and numbers, verdicts by box, card, size and numbers.
pub(super) fn compare(job: &str, old: &Output, new: &Output, tally: &mut Tally) -> Result<()> {
    let (old, new) = (entries(old), entries(new));
    let findings = |entries: &[Value]| -> Vec<String> {
        let findings = entries
            .iter()
            .filter(|entry| entry.get("severity").is_some());
        findings
            .map(|entry| format!("{} {}", word(entry, "severity"), numbers(&entry["numbers"])))
            .collect()
    };
    tally.compare(Kind::Findings, job, findings(&old), findings(&new));
    let verdicts = |entries: &[Value]| -> Vec<String> {
        let doors = entries
            .iter()
            .filter(|entry| entry.get("verdicts").is_some());
        doors.flat_map(of_door).collect()
    };
    tally.compare(Kind::Verdicts, job, verdicts(&old), verdicts(&new));
    Ok(())
}

/// The entries of all JSON files of a job that are arrays.
fn entries(output: &Output) -> Vec<Value> {
    let read = |text: &String| serde_json::from_str::<Vec<Value>>(text).unwrap_or_default();
    output.json.iter().flat_map(read).collect()
}

/// The mass of a door, and its verdicts.
fn of_door(door: &Value) -> Vec<String> {
    let name = word(door, "box");
    let mut words = vec![format!("{name} {}", numbers(door))];
    let verdicts = door["verdicts"]
        .as_array()
        .map(Vec::as_slice)
        .unwrap_or_default();
    words.extend(verdicts.iter().map(|verdict| {
        let say = |key| word(verdict, key);
        format!(
            "{name} {} {} {} {}",
            say("card"),
            say("size"),
            say("verdict"),
            numbers(verdict)
        )
    }));
    words
}

fn word<'a>(entry: &'a Value, key: &str) -> &'a str {
    entry[key].as_str().unwrap_or_default()
}

/// The numbers that stand in an object itself or in the objects of a list, sorted.
fn numbers(value: &Value) -> String {
    let mut found: Vec<f64> = match value {
        Value::Array(items) => items
            .iter()
            .filter_map(|item| item["value"].as_f64())
            .collect(),
        Value::Object(fields) => fields.values().filter_map(Value::as_f64).collect(),
        _ => Vec::new(),
    };
    found.sort_by(f64::total_cmp);
    found
        .iter()
        .map(|number| format!("{number:?}"))
        .collect::<Vec<_>>()
        .join(" ")
}
