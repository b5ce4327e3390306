//! What the program knows of a field, beside where it stands.

use super::limits::Limits;
use super::value::Value;

/// What the program knows of a field.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Info {
    /// What catalogues of words call it: `BoxField.Width`. No other field has the same.
    pub key: &'static str,
    /// Where it stands in its part, dotted and with a dot before it: `.place.along_wall`.
    pub path: &'static str,
    /// What it counts and what it may be.
    pub kind: Kind,
    /// What it is when nobody has said otherwise.
    pub usual: Usual,
    /// The word before it in a form.
    pub label: &'static str,
    /// Its full name within its part, as a screen reader, a history of changes and the search say
    /// it.
    pub name: &'static str,
    /// One sentence that says what it means.
    pub meaning: &'static str,
}

/// What a field holds, and within which limits.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Kind {
    /// A number.
    Number {
        /// What it counts.
        quantity: Quantity,
        /// What it may be.
        limits: Limits,
        /// Whether it may be left out.
        optional: bool,
    },
    /// A whole number.
    Count(Limits),
    /// Words; those that are needed must not be blank.
    Text {
        /// Whether it must not be blank.
        needed: bool,
    },
    /// The name of a material of the job.
    Material,
    /// The name of a size of the chosen card.
    CardSize,
    /// One of a few.
    Choice(&'static [Choice]),
    /// Yes or no.
    Flag,
    /// A number of a card's draft, as its paper has it: a text with or without its unit, or the
    /// title of a column of its sizes. The limits are those of the number that is meant.
    AsTyped {
        /// What it counts.
        quantity: Quantity,
        /// What it may be.
        limits: Limits,
        /// Whether it may be left empty.
        optional: bool,
    },
}

/// What a number counts. Its value is in the unit named, whatever the job's unit.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Quantity {
    /// A length, mm.
    Length,
    /// A mass, kg.
    Mass,
    /// A force, N.
    Force,
    /// A moment, N·m.
    Moment,
    /// A load on an area, kg/m².
    AreaLoad,
    /// A temperature, °C.
    Temperature,
    /// A part of the whole, %.
    Percentage,
    /// A bare number.
    Ratio,
    /// A mass by volume, kg/m³.
    Density,
    /// A modulus of elasticity, N/mm².
    Modulus,
    /// An angle, degrees.
    Angle,
    /// Damping about an axis, N·m·s.
    Damping,
}

impl Quantity {
    /// The unit with a blank before it, as it stands behind a number in a message.
    #[must_use]
    pub const fn unit(self) -> &'static str {
        match self {
            Self::Length => " mm",
            Self::Mass => " kg",
            Self::Force => " N",
            Self::Moment => " N·m",
            Self::AreaLoad => " kg/m²",
            Self::Temperature => " °C",
            Self::Percentage => " %",
            Self::Ratio => "",
            Self::Density => " kg/m³",
            Self::Modulus => " N/mm²",
            Self::Angle => "°",
            Self::Damping => " N·m·s",
        }
    }
}

/// One of the few that a field may be.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Choice {
    /// Its name in files and edits.
    pub name: &'static str,
    /// As a form says it.
    pub label: &'static str,
}

/// What a field is when nobody has said otherwise, and where that comes from.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Usual {
    value: Plain,
    /// Where it comes from.
    pub source: &'static str,
}

/// A value that is known when the program is built.
#[derive(Debug, Clone, Copy, PartialEq)]
enum Plain {
    Number(f64),
    Count(u32),
    Flag(bool),
    Text(&'static str),
    Choice(&'static str),
    Unset,
    /// What it is depends on the rest of the job.
    ByJob,
}

impl Usual {
    /// The value; `None` where it depends on the rest of the job, as a material does.
    #[must_use]
    pub const fn value(&self) -> Option<Value<'static>> {
        use std::borrow::Cow::Borrowed;
        Some(match self.value {
            Plain::Number(value) => Value::Number(value),
            Plain::Count(value) => Value::Count(value),
            Plain::Flag(value) => Value::Flag(value),
            Plain::Text(text) => Value::Text(Borrowed(text)),
            Plain::Choice(name) => Value::Choice(Borrowed(name)),
            Plain::Unset => Value::Unset,
            Plain::ByJob => return None,
        })
    }

    /// The number; not a number where the field holds none, so that whatever it is put into does
    /// not validate.
    #[must_use]
    pub const fn number(&self) -> f64 {
        match self.value {
            Plain::Number(value) => value,
            Plain::Count(_)
            | Plain::Flag(_)
            | Plain::Text(_)
            | Plain::Choice(_)
            | Plain::Unset
            | Plain::ByJob => f64::NAN,
        }
    }
}

impl Kind {
    /// What is wrong with a value, and what to do; `None` when nothing is. Whether a material or a
    /// size exists is not looked at.
    #[must_use]
    pub fn refusal(&self, value: &Value<'_>) -> Option<(String, &'static str)> {
        match (self, value) {
            (
                Self::Number {
                    quantity, limits, ..
                },
                Value::Number(number),
            ) if !limits.hold(*number) => Some((
                format!(
                    "is {number}{unit}; it must be {}",
                    limits.words(quantity.unit()),
                    unit = quantity.unit()
                ),
                match quantity {
                    Quantity::Length => "correct the length",
                    Quantity::Mass
                    | Quantity::Force
                    | Quantity::Moment
                    | Quantity::AreaLoad
                    | Quantity::Temperature
                    | Quantity::Percentage
                    | Quantity::Ratio
                    | Quantity::Density
                    | Quantity::Modulus
                    | Quantity::Angle
                    | Quantity::Damping => "correct the number",
                },
            )),
            (Self::Count(limits), Value::Count(count)) if !limits.hold(f64::from(*count)) => {
                Some((
                    format!("is {count}; it must be {}", limits.words("")),
                    "correct the number",
                ))
            }
            (Self::Text { needed: true }, Value::Text(text)) if text.trim().is_empty() => {
                Some(("is empty".to_owned(), "give it a name"))
            }
            _ => None,
        }
    }

    /// The limits of a number.
    #[must_use]
    pub const fn limits(&self) -> Option<Limits> {
        match self {
            Self::Number { limits, .. } | Self::Count(limits) | Self::AsTyped { limits, .. } => {
                Some(*limits)
            }
            Self::Text { .. } | Self::Material | Self::CardSize | Self::Choice(_) | Self::Flag => {
                None
            }
        }
    }
}

pub(super) const fn quantity(quantity: Quantity, limits: Limits) -> Kind {
    Kind::Number {
        quantity,
        limits,
        optional: false,
    }
}

pub(super) const fn optional(of: Quantity, limits: Limits) -> Kind {
    Kind::Number {
        quantity: of,
        limits,
        optional: true,
    }
}

pub(super) const fn length(limits: Limits) -> Kind {
    quantity(Quantity::Length, limits)
}

/// A number of a draft as typed.
pub(super) const fn typed(quantity: Quantity, limits: Limits) -> Kind {
    Kind::AsTyped {
        quantity,
        limits,
        optional: false,
    }
}

/// The same, where it may be left empty.
pub(super) const fn typed_or_empty(quantity: Quantity, limits: Limits) -> Kind {
    Kind::AsTyped {
        quantity,
        limits,
        optional: true,
    }
}

pub(super) const NAME: Kind = Kind::Text { needed: true };
pub(super) const TEXT: Kind = Kind::Text { needed: false };

/// Common in the trade, without a source that could be named.
pub(super) const COMMON: &str = "Common practice, no source.";
/// Assumed.
pub(super) const ASSUMED: &str = "Assumed, no source.";
/// What a new part of this program begins with.
pub(super) const NEW: &str = "What a new part begins with; common practice, no source.";
/// Nothing is assumed.
pub(super) const NONE: &str = "Nothing is assumed.";
/// It depends on the rest of the job.
pub(super) const BY_JOB: &str = "What the job has.";

pub(super) const fn number(value: f64, source: &'static str) -> Usual {
    Usual {
        value: Plain::Number(value),
        source,
    }
}

pub(super) const fn count(value: u32, source: &'static str) -> Usual {
    Usual {
        value: Plain::Count(value),
        source,
    }
}

pub(super) const fn flag(value: bool, source: &'static str) -> Usual {
    Usual {
        value: Plain::Flag(value),
        source,
    }
}

pub(super) const fn words(value: &'static str, source: &'static str) -> Usual {
    Usual {
        value: Plain::Text(value),
        source,
    }
}

pub(super) const fn choice(name: &'static str, source: &'static str) -> Usual {
    Usual {
        value: Plain::Choice(name),
        source,
    }
}

pub(super) const fn unset(source: &'static str) -> Usual {
    Usual {
        value: Plain::Unset,
        source,
    }
}

pub(super) const fn by_job(source: &'static str) -> Usual {
    Usual {
        value: Plain::ByJob,
        source,
    }
}
