//! Bore lists (JSON and CSV), by box, panel and hole number.

use std::collections::BTreeMap;

use anyhow::{Context, Result};
use serde_json::value::RawValue;

use super::output::Output;
use super::tally::{Kind, Tally, pair};

/// An object of a list with its values as they are written, so that a number keeps every digit.
type Object = BTreeMap<String, Box<RawValue>>;

/// A panel of a bore list.
struct Panel {
    facts: Object,
    bores: Vec<Object>,
}

impl Panel {
    fn name(&self) -> String {
        let fact = |key| text(&self.facts, key);
        format!("{} {}: {}", fact("box_number"), fact("box"), fact("panel"))
    }

    /// The name of the box alone, for panels whose own names were reworded.
    fn of_box(&self) -> String {
        format!(
            "{} {}",
            text(&self.facts, "box_number"),
            text(&self.facts, "box")
        )
    }
}

/// Compares all numbers of the panels and bores of a job. A number that only the new list has is no
/// difference; one that it has no longer is.
pub(super) fn compare(job: &str, old: &Output, new: &Output, tally: &mut Tally) -> Result<()> {
    let (old_panels, new_panels) = (panels(old)?, panels(new)?);
    let (pairs, gone, come) = pair(&old_panels, &new_panels, &[&Panel::name, &Panel::of_box]);
    for (old, new) in pairs {
        let place = format!("{job}/{}", old.name());
        let facts = |panel: &Panel| vec![numbers(&panel.facts, &old.facts)];
        tally.compare(Kind::Panels, &place, facts(old), facts(new));
        let first = old.bores.first();
        let bores = |panel: &Panel| -> Vec<String> {
            panel
                .bores
                .iter()
                .map(|bore| numbers(bore, first.unwrap_or(bore)))
                .collect()
        };
        tally.compare(Kind::Bores, &place, bores(old), bores(new));
    }
    let names = |left: Vec<&Panel>| left.into_iter().map(Panel::name).collect::<Vec<_>>();
    tally.compare(Kind::Panels, job, names(gone), names(come));
    tally.compare(Kind::CsvLines, job, csv_lines(old)?, csv_lines(new)?);
    Ok(())
}

/// The panels of the bore lists among a job's JSON files.
fn panels(output: &Output) -> Result<Vec<Panel>> {
    let mut panels = Vec::new();
    for text in &output.json {
        // Findings and verdicts are arrays.
        let Ok(list) = serde_json::from_str::<Object>(text) else {
            continue;
        };
        let Some(raw) = list.get("panels") else {
            continue;
        };
        let objects: Vec<Object> =
            serde_json::from_str(raw.get()).context("panels of a bore list")?;
        for mut facts in objects {
            let raw = facts
                .remove("bores")
                .context("a panel of a bore list without bores")?;
            let bores = serde_json::from_str(raw.get()).context("bores of a bore list")?;
            panels.push(Panel { facts, bores });
        }
    }
    Ok(panels)
}

/// The numbers and yes-or-no's of an object, for the keys that `wanted` has as such.
///
/// A number is read by the standard library, which rounds right, and written so that two numbers
/// are the same text only if they are the same to the last bit.
fn numbers(object: &Object, wanted: &Object) -> String {
    let plain = |value: &RawValue| match value.get() {
        word @ ("true" | "false") => Some(word.to_owned()),
        digits => digits
            .parse::<f64>()
            .ok()
            .map(|number| format!("{number:?}")),
    };
    let mut words = Vec::new();
    for (key, wanted) in wanted {
        if plain(wanted).is_some() && key != "open_stops" {
            let value = object.get(key).and_then(|value| plain(value));
            words.push(format!(
                "{key}={}",
                value.unwrap_or_else(|| "nothing".to_owned())
            ));
        }
    }
    words.join(" ")
}

/// A value of an object as a text without its quotes.
fn text(object: &Object, key: &str) -> String {
    let raw = object.get(key).map_or("", |value| value.get());
    serde_json::from_str(raw).unwrap_or_else(|_| raw.to_owned())
}

/// The lines of a job's CSV files, each said by its box, panel and hole number and by the columns of
/// numbers, digit by digit.
fn csv_lines(output: &Output) -> Result<Vec<String>> {
    const COLUMNS: [&str; 14] = [
        "box",
        "box_number",
        "hand",
        "number",
        "u",
        "v",
        "x",
        "y",
        "diameter",
        "depth",
        "pass",
        "width",
        "height",
        "thickness",
    ];
    let mut lines = Vec::new();
    for text in &output.csv {
        let mut reader = csv::Reader::from_reader(text.as_bytes());
        let headers = reader.headers()?.clone();
        for record in reader.records() {
            let record = record?;
            let value = |column| {
                headers
                    .iter()
                    .position(|header| header == column)
                    .and_then(|at| record.get(at))
            };
            let words =
                COLUMNS.map(|column| format!("{column}={}", value(column).unwrap_or("nothing")));
            lines.push(words.join(" "));
        }
    }
    Ok(lines)
}
