//! The value of a field, whatever it is of.

use std::borrow::Cow;

use serde::{Deserialize, Serialize};

use super::choices::Choices;

/// The value of a field. A text that is only looked at is borrowed from the job.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub enum Value<'a> {
    /// A number in the unit of its [`Quantity`](super::Quantity).
    Number(f64),
    /// A whole number.
    Count(u32),
    /// Yes or no.
    Flag(bool),
    /// Words.
    Text(Cow<'a, str>),
    /// One of a few, by its name in the file.
    Choice(Cow<'a, str>),
    /// What need not be given is not.
    Unset,
}

impl Value<'_> {
    /// A text that is borrowed.
    #[must_use]
    pub const fn text(text: &str) -> Value<'_> {
        Value::Text(Cow::Borrowed(text))
    }

    /// The same value, borrowed from nothing.
    #[must_use]
    pub fn into_owned(self) -> Value<'static> {
        match self {
            Self::Number(value) => Value::Number(value),
            Self::Count(value) => Value::Count(value),
            Self::Flag(value) => Value::Flag(value),
            Self::Text(text) => Value::Text(Cow::Owned(text.into_owned())),
            Self::Choice(name) => Value::Choice(Cow::Owned(name.into_owned())),
            Self::Unset => Value::Unset,
        }
    }

    /// The number, if it is one or counts something.
    #[must_use]
    pub fn number(&self) -> Option<f64> {
        match self {
            Self::Number(value) => Some(*value),
            Self::Count(value) => Some(f64::from(*value)),
            Self::Flag(_) | Self::Text(_) | Self::Choice(_) | Self::Unset => None,
        }
    }
}

/// Why a field was not set. The part is then as it was.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum NotSet {
    /// The part has no such field as it is now: the inset of a back that is not grooved.
    Absent,
    /// The value is of another kind than the field, or no choice of it.
    WrongKind,
}

/// What can stand in a field.
pub trait FieldValue {
    /// The value as it is.
    fn read(&self) -> Value<'_>;

    /// Puts another value in place and gives the old one back; `None`, and nothing is changed,
    /// where the new one is of another kind.
    fn write(&mut self, value: &Value<'_>) -> Option<Value<'static>>;
}

impl FieldValue for f64 {
    fn read(&self) -> Value<'_> {
        Value::Number(*self)
    }

    fn write(&mut self, value: &Value<'_>) -> Option<Value<'static>> {
        let Value::Number(value) = *value else {
            return None;
        };
        Some(Value::Number(std::mem::replace(self, value)))
    }
}

impl FieldValue for Option<f64> {
    fn read(&self) -> Value<'_> {
        self.map_or(Value::Unset, Value::Number)
    }

    fn write(&mut self, value: &Value<'_>) -> Option<Value<'static>> {
        let new = match *value {
            Value::Number(value) => Some(value),
            Value::Unset => None,
            Value::Count(_) | Value::Flag(_) | Value::Text(_) | Value::Choice(_) => return None,
        };
        let old = std::mem::replace(self, new);
        Some(old.map_or(Value::Unset, Value::Number))
    }
}

impl FieldValue for u32 {
    fn read(&self) -> Value<'_> {
        Value::Count(*self)
    }

    fn write(&mut self, value: &Value<'_>) -> Option<Value<'static>> {
        let Value::Count(value) = *value else {
            return None;
        };
        Some(Value::Count(std::mem::replace(self, value)))
    }
}

impl FieldValue for u8 {
    fn read(&self) -> Value<'_> {
        Value::Count(u32::from(*self))
    }

    fn write(&mut self, value: &Value<'_>) -> Option<Value<'static>> {
        let Value::Count(value) = *value else {
            return None;
        };
        let value = Self::try_from(value).ok()?;
        Some(Value::Count(u32::from(std::mem::replace(self, value))))
    }
}

impl FieldValue for bool {
    fn read(&self) -> Value<'_> {
        Value::Flag(*self)
    }

    fn write(&mut self, value: &Value<'_>) -> Option<Value<'static>> {
        let Value::Flag(value) = *value else {
            return None;
        };
        Some(Value::Flag(std::mem::replace(self, value)))
    }
}

impl FieldValue for String {
    fn read(&self) -> Value<'_> {
        Value::text(self)
    }

    fn write(&mut self, value: &Value<'_>) -> Option<Value<'static>> {
        let Value::Text(text) = value else {
            return None;
        };
        let old = std::mem::replace(self, text.clone().into_owned());
        Some(Value::Text(Cow::Owned(old)))
    }
}

impl<T: Choices> FieldValue for T {
    fn read(&self) -> Value<'_> {
        Value::Choice(Cow::Borrowed(self.name()))
    }

    fn write(&mut self, value: &Value<'_>) -> Option<Value<'static>> {
        let Value::Choice(name) = value else {
            return None;
        };
        let new = T::named(name)?;
        let old = std::mem::replace(self, new);
        Some(Value::Choice(Cow::Borrowed(old.name())))
    }
}
