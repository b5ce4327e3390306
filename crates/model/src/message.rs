//! What the program has to say, as data: a key and typed arguments, no sentence.
//!
//! A check, a remedy or a reason of a verdict **gives data**; the crate `words` looks the key up in
//! a catalogue and says it in a language and in the job's unit. So a test asks for kinds and
//! numbers, and no sentence stands in two places.
//!
//! | How do I… | |
//! |---|---|
//! | declare what something can say | [`messages!`](crate::messages) |
//! | give a length, a mass, an angle… | [`Mm`], [`Kilogram`], [`Degrees`]… |
//! | give a name that a person typed | a `String` |
//! | give a word of the catalogue | [`Word`] |
//! | give a place | [`Subject`] |
//! | put one message into another | a field of its type |
//!
//! ```
//! use flapwright_model::message::{Mm, Say};
//! use flapwright_model::messages;
//!
//! messages! {
//!     /// What is said of a shelf.
//!     pub enum ShelfMessage in "shelf" {
//!         /// It is longer than its place.
//!         TooLong = "too-long" { by: Mm [greater], place: Mm },
//!     }
//! }
//!
//! let said = ShelfMessage::TooLong { by: Mm(2.0), place: Mm(564.0) }.say();
//! assert_eq!(said.key, "shelf.too-long");
//! assert_eq!(said.numbers().len(), 1); // `place` is said and not watched
//! ```

use crate::id::BoxId;
use crate::measure::Measure;
use crate::part::Subject;

/// A message ready to be said in any language.
#[derive(Debug, Clone, PartialEq)]
pub struct Said {
    /// Its place in the catalogue, `message.attribute`.
    pub key: &'static str,
    /// What it is said with, in the order in which it was declared.
    pub arguments: Vec<Argument>,
}

impl Said {
    /// The numbers by which an accepted finding is watched.
    #[must_use]
    pub fn numbers(&self) -> Vec<(&'static str, &Value, Worse)> {
        self.arguments
            .iter()
            .filter_map(|it| Some((it.name, &it.value, it.worse?)))
            .filter(|(_, value, _)| **value != Value::Nothing)
            .collect()
    }
}

/// One argument of a message.
#[derive(Debug, Clone, PartialEq)]
pub struct Argument {
    /// Its name in the catalogue.
    pub name: &'static str,
    /// What it is.
    pub value: Value,
    /// Which change of it makes an accepted finding worse; `None`: it is not watched.
    pub worse: Option<Worse>,
}

/// Which change of a number makes its finding worse than the one that was accepted.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum Worse {
    /// Either: an accepted finding comes back.
    #[default]
    Either,
    /// A greater value.
    Greater,
    /// A smaller value.
    Smaller,
}

/// An argument: how it is written depends on language and unit.
#[derive(Debug, Clone, PartialEq)]
pub enum Value {
    /// A length, mm.
    Length(f64),
    /// A mass, force or moment in kg, N or N·m.
    Measured(Measure, f64),
    /// An angle, degrees.
    Angle(f64),
    /// A temperature, °C.
    Temperature(f64),
    /// A share, 1 = all.
    Share(f64),
    /// A bare number with so many decimals.
    Number(f64, usize),
    /// A bare number with all its decimals.
    AsTyped(f64),
    /// A time, s.
    Time(f64),
    /// A speed, m/s.
    Speed(f64),
    /// How many; the language chooses singular or plural by it.
    Count(usize),
    /// A name that a person gave: said as it is.
    Label(String),
    /// A key of the catalogue, for a word with a translation.
    Word(&'static str),
    /// A place in the job, by its ids.
    Place(Subject),
    /// The same without the name of its box, where that is said already.
    PlaceWithin(Subject),
    /// The name of a number by which a finding is watched.
    NumberName(&'static str),
    /// A message within a message.
    Message(Box<Said>),
    /// Several, said as `a and b`.
    All(Vec<Value>),
    /// Several, said as `a + b`.
    Sum(Vec<Value>),
    /// Not there.
    Nothing,
}

impl Value {
    /// The bare number and its unit; `None` for words.
    #[must_use]
    pub const fn number(&self) -> Option<(f64, &'static str)> {
        Some(match self {
            Self::Length(it) => (*it, "mm"),
            Self::Measured(Measure::Mass, it) => (*it, "kg"),
            Self::Measured(Measure::Force, it) => (*it, "N"),
            Self::Measured(Measure::Moment, it) => (*it, "N·m"),
            Self::Angle(it) => (*it, "°"),
            Self::Temperature(it) => (*it, "°C"),
            Self::Time(it) => (*it, "s"),
            Self::Speed(it) => (*it, "m/s"),
            Self::Share(it) | Self::Number(it, _) | Self::AsTyped(it) => (*it, ""),
            Self::Count(it) => (as_number(*it), ""),
            Self::Label(_)
            | Self::Word(_)
            | Self::Place(_)
            | Self::PlaceWithin(_)
            | Self::NumberName(_)
            | Self::Message(_)
            | Self::All(_)
            | Self::Sum(_)
            | Self::Nothing => return None,
        })
    }
}

/// A count as a number; counts of a job are far below what an `f64` holds exactly.
#[expect(
    clippy::cast_precision_loss,
    reason = "a job has far fewer of anything than 2^53"
)]
const fn as_number(count: usize) -> f64 {
    count as f64
}

/// Something that can be said.
pub trait Say {
    /// Its key and arguments.
    fn say(&self) -> Said;
}

/// Something that can be an argument of a message.
pub trait ToValue {
    /// As an argument.
    fn to_value(&self) -> Value;

    /// One such argument, to look at the texts that take it.
    fn example() -> Value;
}

/// Declares number types that are arguments: name, what it is, and its value.
macro_rules! quantities {
    ($($(#[$meta:meta])* $name:ident => |$it:ident| $value:expr, $example:literal;)*) => { $(
        $(#[$meta])*
        #[derive(Debug, Clone, Copy, PartialEq, PartialOrd)]
        pub struct $name(pub f64);

        impl ToValue for $name {
            fn to_value(&self) -> Value {
                let $it = self.0;
                $value
            }

            fn example() -> Value {
                Self($example).to_value()
            }
        }
    )* };
}

quantities! {
    /// A length, mm.
    Mm => |it| Value::Length(it), 123.4;
    /// A mass, kg.
    Kilogram => |it| Value::Measured(Measure::Mass, it), 5.62;
    /// A force, N.
    Newton => |it| Value::Measured(Measure::Force, it), 45.0;
    /// A moment, N·m.
    NewtonMetre => |it| Value::Measured(Measure::Moment, it), 12.3;
    /// An angle, degrees.
    Degrees => |it| Value::Angle(it), 57.0;
    /// A temperature, °C.
    Celsius => |it| Value::Temperature(it), 5.0;
    /// A share, 1 = all; said in percent.
    Share => |it| Value::Share(it), 0.6;
    /// So many times, to one decimal.
    Times => |it| Value::Number(it, 1), 1.4;
    /// A bare whole number.
    Whole => |it| Value::Number(it, 0), 9.0;
    /// A bare number, to two decimals.
    Bare => |it| Value::Number(it, 2), 1.25;
    /// A time, s.
    Seconds => |it| Value::Time(it), 0.8;
    /// A speed, m/s.
    MetresPerSecond => |it| Value::Speed(it), 1.1;
}

/// How many.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub struct Count(pub usize);

impl ToValue for Count {
    fn to_value(&self) -> Value {
        Value::Count(self.0)
    }

    fn example() -> Value {
        Value::Count(4)
    }
}

/// A word of the catalogue, by its key.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub struct Word(pub &'static str);

impl ToValue for Word {
    fn to_value(&self) -> Value {
        Value::Word(self.0)
    }

    fn example() -> Value {
        Value::Word("left")
    }
}

/// Several, said as a sum: `18 mm + 564 mm + 18 mm`.
#[derive(Debug, Clone, PartialEq)]
pub struct Sum(pub Vec<Mm>);

impl ToValue for Sum {
    fn to_value(&self) -> Value {
        Value::Sum(self.0.iter().map(ToValue::to_value).collect())
    }

    fn example() -> Value {
        Value::Sum(vec![Mm::example(), Mm::example()])
    }
}

/// A bare number with as many decimals as it has: one that somebody typed, to be found again.
#[derive(Debug, Clone, Copy, PartialEq, PartialOrd)]
pub struct AsTyped(pub f64);

impl ToValue for AsTyped {
    fn to_value(&self) -> Value {
        Value::AsTyped(self.0)
    }

    fn example() -> Value {
        Self(0.25).to_value()
    }
}

impl ToValue for String {
    fn to_value(&self) -> Value {
        Value::Label(self.clone())
    }

    fn example() -> Value {
        Value::Label("Plover".to_owned())
    }
}

impl ToValue for Subject {
    fn to_value(&self) -> Value {
        Value::Place(*self)
    }

    fn example() -> Value {
        Value::Place(Subject::Box(BoxId::new(1)))
    }
}

/// A place whose box is said already: only what of the box it is.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Within(pub Subject);

impl ToValue for Within {
    fn to_value(&self) -> Value {
        Value::PlaceWithin(self.0)
    }

    fn example() -> Value {
        Value::PlaceWithin(Subject::Box(BoxId::new(1)))
    }
}

/// The name of a number by which a finding is watched.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct NumberName(pub &'static str);

impl ToValue for NumberName {
    fn to_value(&self) -> Value {
        Value::NumberName(self.0)
    }

    fn example() -> Value {
        Value::NumberName("gap")
    }
}

impl ToValue for Value {
    fn to_value(&self) -> Value {
        self.clone()
    }

    fn example() -> Value {
        Mm::example()
    }
}

impl<T: ToValue> ToValue for Vec<T> {
    fn to_value(&self) -> Value {
        Value::All(self.iter().map(ToValue::to_value).collect())
    }

    fn example() -> Value {
        Value::All(vec![T::example()])
    }
}

impl<T: ToValue> ToValue for Option<T> {
    fn to_value(&self) -> Value {
        self.as_ref().map_or(Value::Nothing, ToValue::to_value)
    }

    fn example() -> Value {
        T::example()
    }
}

impl<T: ToValue> ToValue for Box<T> {
    fn to_value(&self) -> Value {
        (**self).to_value()
    }

    fn example() -> Value {
        // A box is there for messages that hold one of their own kind.
        Value::Label("door".to_owned())
    }
}

/// Declares an enum of messages, its keys in the catalogue and how each is said.
///
/// After `in` stands the message of the catalogue, after each variant its attribute. A field that
/// is marked `[either]`, `[greater]` or `[smaller]` is a number by which an accepted finding is
/// watched: the mark says which change makes it worse. An acceptance keeps it under the field's
/// name, so a field that is renamed brings accepted findings back.
#[macro_export]
macro_rules! messages {
    (
        $(#[$meta:meta])*
        $vis:vis enum $name:ident in $message:literal {
            $(
                $(#[$variant_meta:meta])*
                $variant:ident = $attribute:literal $({
                    $( $(#[$field_meta:meta])* $field:ident : $type:ty $([$worse:ident])? ),* $(,)?
                })?
            ),* $(,)?
        }
    ) => {
        $(#[$meta])*
        #[derive(Debug, Clone, PartialEq)]
        $vis enum $name {
            $(
                $(#[$variant_meta])*
                $variant $({
                    $(
                        #[doc = concat!("`", stringify!($field), "` of the text.")]
                        $(#[$field_meta])*
                        $field: $type
                    ),*
                })?
            ),*
        }

        impl $name {
            /// Every message of this kind with one argument for each of its fields.
            #[must_use]
            pub fn examples() -> Vec<$crate::message::Said> {
                vec![ $(
                    $crate::message::Said {
                        key: concat!($message, ".", $attribute),
                        arguments: vec![ $( $(
                            $crate::message::Argument {
                                name: stringify!($field),
                                value: <$type as $crate::message::ToValue>::example(),
                                worse: $crate::messages!(@worse $($worse)?),
                            }
                        ),* )? ],
                    }
                ),* ]
            }
        }

        impl $crate::message::Say for $name {
            fn say(&self) -> $crate::message::Said {
                match self {
                    $(
                        Self::$variant $({ $( $field ),* })? => $crate::message::Said {
                            key: concat!($message, ".", $attribute),
                            arguments: vec![ $( $(
                                $crate::message::Argument {
                                    name: stringify!($field),
                                    value: $crate::message::ToValue::to_value($field),
                                    worse: $crate::messages!(@worse $($worse)?),
                                }
                            ),* )? ],
                        }
                    ),*
                }
            }
        }

        impl $crate::message::ToValue for $name {
            fn to_value(&self) -> $crate::message::Value {
                $crate::message::Value::Message(Box::new($crate::message::Say::say(self)))
            }

            fn example() -> $crate::message::Value {
                let first = Self::examples().into_iter().next();
                first.map_or($crate::message::Value::Nothing, |it| {
                    $crate::message::Value::Message(Box::new(it))
                })
            }
        }
    };
    (@worse) => { None };
    (@worse either) => { Some($crate::message::Worse::Either) };
    (@worse greater) => { Some($crate::message::Worse::Greater) };
    (@worse smaller) => { Some($crate::message::Worse::Smaller) };
}
