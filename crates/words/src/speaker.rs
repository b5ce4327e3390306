//! Messages and quantities as text.

use flapwright_model::length::Unit;
use flapwright_model::measure;
use flapwright_model::message::{Said, Say, Value};
use fluent_bundle::{FluentArgs, FluentValue};

use crate::catalogue::Language;
use crate::names::Names;
use crate::place;

/// A length further from 0 than this is not said as 0, mm: noise of the last digits.
const NOISE: f64 = 1e-6;

/// Who says it: in which language and unit, and with which names.
#[derive(Debug, Clone, Copy)]
pub struct Speaker<'a> {
    /// The language.
    pub language: Language,
    /// The unit of lengths, and of masses, forces and moments that go with it.
    pub unit: Unit,
    /// The names of what messages point at; without them places are not named.
    pub names: Option<&'a Names<'a>>,
}

impl Speaker<'static> {
    /// For messages that point at nothing.
    #[must_use]
    pub const fn without_names(unit: Unit) -> Self {
        Self {
            language: Language::English,
            unit,
            names: None,
        }
    }
}

impl Speaker<'_> {
    /// A message as text. A text that is missing is said by its key, which the tests rule out.
    #[must_use]
    pub fn say(&self, message: &dyn Say) -> String {
        self.said(&message.say())
    }

    /// The same of a message that has been turned into key and arguments.
    #[must_use]
    pub fn said(&self, said: &Said) -> String {
        let mut arguments = FluentArgs::with_capacity(said.arguments.len());
        for it in &said.arguments {
            match &it.value {
                Value::Nothing => {}
                Value::Count(count) => arguments.set(it.name, FluentValue::from(*count)),
                other => arguments.set(it.name, self.value(other)),
            }
        }
        self.text(said.key, &arguments)
    }

    /// An argument as it stands in a text.
    #[must_use]
    pub fn value(&self, value: &Value) -> String {
        match value {
            Value::Length(it) => self.length(*it),
            Value::Measured(measure, it) => measure.text(*it, self.unit),
            Value::Angle(it) => self.with_unit("quantity.degrees", *it, 0),
            Value::Temperature(it) => self.with_unit("quantity.celsius", *it, 0),
            Value::Share(it) => self.with_unit("quantity.percent", *it * 100.0, 0),
            Value::Time(it) => self.with_unit("quantity.seconds", *it, 1),
            Value::Speed(it) => self.with_unit("quantity.metres-per-second", it.abs(), 1),
            Value::Number(it, places) => format!("{it:.places$}"),
            Value::AsTyped(it) => it.to_string(),
            Value::Count(it) => it.to_string(),
            Value::Label(it) => it.clone(),
            Value::Word(key) => self.word("word", key),
            Value::NumberName(key) => self.word("number", key),
            Value::Place(subject) => self.said(&place::in_sentence(self.names, *subject)),
            Value::PlaceWithin(subject) => self.said(&place::within_box(self.names, *subject)),
            Value::Message(it) => self.said(it),
            Value::All(several) => self.list("list-and.two", several),
            Value::Sum(several) => self.list("list-plus.two", several),
            Value::Nothing => String::new(),
        }
    }

    /// Several texts, one after the other as clauses of one sentence.
    #[must_use]
    pub fn clauses(&self, texts: impl IntoIterator<Item = String>) -> String {
        self.joined("list-semicolon.two", texts)
    }

    /// A length with its unit, never 0 where it is not.
    fn length(&self, millimetres: f64) -> String {
        let text = measure::length(millimetres, self.unit);
        if millimetres.abs() <= NOISE || text != measure::length(0.0, self.unit) {
            return text;
        }
        let key = match self.unit {
            Unit::Millimetre => "quantity.tiny-mm",
            Unit::Inch => "quantity.tiny-inch",
        };
        self.text(key, &FluentArgs::new())
    }

    fn with_unit(&self, key: &str, value: f64, places: usize) -> String {
        let digits = format!("{value:.places$}");
        // No number is said as minus nothing.
        let digits = match digits.strip_prefix('-') {
            Some(rest) if rest.chars().all(|c| c == '0' || c == '.') => rest,
            _ => &digits,
        };
        let mut arguments = FluentArgs::new();
        arguments.set("value", digits);
        self.text(key, &arguments)
    }

    fn word(&self, group: &str, key: &str) -> String {
        self.text(&format!("{group}.{key}"), &FluentArgs::new())
    }

    fn list(&self, key: &str, several: &[Value]) -> String {
        self.joined(key, several.iter().map(|it| self.value(it)))
    }

    fn joined(&self, key: &str, texts: impl IntoIterator<Item = String>) -> String {
        texts
            .into_iter()
            .filter(|it| !it.is_empty())
            .reduce(|first, second| {
                let mut arguments = FluentArgs::new();
                arguments.set("first", first);
                arguments.set("second", second);
                self.text(key, &arguments)
            })
            .unwrap_or_default()
    }

    pub(crate) fn text(&self, key: &str, arguments: &FluentArgs<'_>) -> String {
        self.language
            .catalogue()
            .text(key, arguments)
            .unwrap_or_else(|| key.to_owned())
    }
}
