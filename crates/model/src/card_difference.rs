//! What differs between two cards: which number moved, and by how much.

use std::collections::BTreeMap;

use serde_json::Value;

use crate::card::Card;

/// One thing that differs between two cards.
#[derive(Debug, Clone, PartialEq)]
pub struct Difference {
    /// Path of the field, sizes by name: `sizes "2".carries.Mass.max`.
    pub field: String,
    /// What the first card has; `None` where it has nothing there.
    pub was: Option<String>,
    /// What the second card has.
    pub now: Option<String>,
    /// Second less first where both are numbers, in the card's units (mm, kg, N, N·m, degrees).
    pub by: Option<f64>,
}

impl std::fmt::Display for Difference {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        match (&self.was, &self.now) {
            (Some(was), Some(now)) => {
                write!(f, "{}: {was} becomes {now}", self.field)?;
                if let Some(by) = self.by {
                    // Printed to a thousandth: the rest is the noise of a subtraction.
                    let by = (by * 1000.0).round() / 1000.0;
                    write!(f, " ({by:+})")?;
                }
                Ok(())
            }
            (None, Some(now)) => write!(f, "{}: {now} is added", self.field),
            (Some(was), None) => write!(f, "{}: {was} is taken out", self.field),
            (None, None) => write!(f, "{}", self.field),
        }
    }
}

/// What differs from the first card to the second, field by field; empty where they are the same.
/// Sizes are matched by name, bores and rows by their order.
#[must_use]
pub fn differences(was: &Card, now: &Card) -> Vec<Difference> {
    let (before, after) = (leaves(was), leaves(now));
    let mut fields: Vec<&String> = before.keys().chain(after.keys()).collect();
    fields.sort();
    fields.dedup();
    fields
        .into_iter()
        .filter_map(|field| {
            let (was, now) = (before.get(field), after.get(field));
            if was == now {
                return None;
            }
            let number = |value: Option<&Value>| value.and_then(Value::as_f64);
            Some(Difference {
                field: field.clone(),
                was: was.map(words),
                now: now.map(words),
                by: number(now).zip(number(was)).map(|(now, was)| now - was),
            })
        })
        .collect()
}

/// Every number, text and choice of a card by its path.
fn leaves(card: &Card) -> BTreeMap<String, Value> {
    let mut found = BTreeMap::new();
    if let Ok(value) = serde_json::to_value(card) {
        walk(String::new(), value, &mut found);
    }
    found
}

fn walk(path: String, value: Value, found: &mut BTreeMap<String, Value>) {
    match value {
        Value::Object(fields) => {
            for (name, value) in fields {
                let dot = if path.is_empty() { "" } else { "." };
                walk(format!("{path}{dot}{name}"), value, found);
            }
        }
        Value::Array(items) => {
            for (index, item) in items.into_iter().enumerate() {
                let name = item
                    .as_object()
                    .filter(|_| path == "sizes")
                    .and_then(|fields| fields.get("name")?.as_str())
                    .map(|name| format!(" \"{name}\""));
                let at = name.unwrap_or_else(|| format!("[{index}]"));
                walk(format!("{path}{at}"), item, found);
            }
        }
        Value::Null => {}
        leaf @ (Value::Bool(_) | Value::Number(_) | Value::String(_)) => {
            found.insert(path, leaf);
        }
    }
}

fn words(value: &Value) -> String {
    match value {
        Value::String(text) => format!("\"{text}\""),
        // A whole number reads better without its `.0`.
        Value::Number(number) => number
            .as_f64()
            .map_or_else(|| number.to_string(), |it| it.to_string()),
        Value::Null | Value::Bool(_) | Value::Array(_) | Value::Object(_) => value.to_string(),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::card::Depth;
    use crate::file::read_card;

    const WREN: &str = include_str!("../../../assets/demo/cards/wren.ron");

    #[test]
    fn what_moved_is_named_with_its_amount() {
        let was = read_card(WREN).unwrap();
        assert_eq!(differences(&was, &was), []);
        let mut now = was.clone();
        now.side_bores[1].drill.depth = Depth::Through;
        now.sizes.remove(0);
        now.sizes[0].door_height.max = 425.5;
        let found = differences(&was, &now);
        let text = |field: &str| {
            let it = found.iter().find(|it| it.field == field);
            it.map(ToString::to_string).unwrap_or_default()
        };
        assert_eq!(
            text("sizes \"2\".door_height.max"),
            "sizes \"2\".door_height.max: 420 becomes 425.5 (+5.5)"
        );
        assert_eq!(
            text("side_bores[1].drill.depth.Blind"),
            "side_bores[1].drill.depth.Blind: 12.5 is taken out"
        );
        assert!(
            found.iter().all(|it| !it.field.contains("sizes \"3\"")),
            "sizes are matched by name, not by place"
        );
    }
}
