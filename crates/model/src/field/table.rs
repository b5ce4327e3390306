//! How a table of fields is written: one row a field, its place as a pattern of the language.
//!
//! ```text
//! Width at [.width] length(SIZE), number(800.0, NEW), "width", "Box width", "Over both sides.";
//! ```
//!
//! The place is read from the left, beginning at the part:
//!
//! | step | goes to |
//! |---|---|
//! | `.name` | that field of a struct |
//! | `<name>` | the same, its name left out of the path |
//! | `?` | what an option holds |
//! | `{ Pattern => name }` | what a variant of an enum holds |
//! | `{{ Pattern \| Pattern => name }}` | what all variants hold |
//! | `[edge]` | what stands at that edge |
//! | `(1 = upward)` | that place of an array, under this name |
//!
//! The path of the field is made of the same steps, so that it cannot say something else.

use std::fmt;

use serde::Serialize;
use serde::de::DeserializeOwned;

use super::info::Info;
use super::value::{NotSet, Value};
use crate::edges::Edge;

/// The fields of one kind of part.
pub trait Fields: Copy + PartialEq + fmt::Debug + Serialize + DeserializeOwned + 'static {
    /// The part that has them.
    type Part;

    /// All of them, in the order of the table.
    fn all() -> impl Iterator<Item = Self>;

    /// What the program knows of it.
    fn info(self) -> &'static Info;

    /// The edge, for one of four that are alike.
    fn edge(self) -> Option<Edge>;

    /// The value; `None` where the part has no such field as it is now.
    fn get(self, part: &Self::Part) -> Option<Value<'_>>;

    /// Puts another value in place and gives the old one back. Limits are not looked at.
    ///
    /// # Errors
    /// [`NotSet`]; the part is then as it was.
    fn set(self, part: &mut Self::Part, value: &Value<'_>) -> Result<Value<'static>, NotSet>;

    /// Where it stands in its part, with a dot before it.
    fn path(self) -> Path {
        Path {
            path: self.info().path,
            edge: self.edge(),
        }
    }

    /// Its full name within its part.
    fn name(self) -> String {
        match self.edge() {
            Some(edge) => format!("{} {}", self.info().name, edge.word()),
            None => self.info().name.to_owned(),
        }
    }
}

/// Where a field stands in its part, with a dot before it.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Path {
    path: &'static str,
    edge: Option<Edge>,
}

impl fmt::Display for Path {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(self.path)?;
        match self.edge {
            Some(edge) => write!(f, ".{}", edge.word()),
            None => Ok(()),
        }
    }
}

/// Goes from a part to a place in it; see the head of this file. `lend` is `as_ref` or `as_mut`,
/// `at` is `at_ref` or `at_mut`.
macro_rules! place {
    ($t:ident, ($($borrow:tt)+), $lend:ident, $at:ident,) => { $t };
    ($t:ident, ($($borrow:tt)+), $lend:ident, $at:ident, . $name:ident $($rest:tt)*) => {{
        let $t = $($borrow)+ $t.$name;
        place!($t, ($($borrow)+), $lend, $at, $($rest)*)
    }};
    ($t:ident, ($($borrow:tt)+), $lend:ident, $at:ident, <$name:ident> $($rest:tt)*) => {{
        let $t = $($borrow)+ $t.$name;
        place!($t, ($($borrow)+), $lend, $at, $($rest)*)
    }};
    ($t:ident, ($($borrow:tt)+), $lend:ident, $at:ident, ? $($rest:tt)*) => {{
        let $t = $t.$lend()?;
        place!($t, ($($borrow)+), $lend, $at, $($rest)*)
    }};
    ($t:ident, ($($borrow:tt)+), $lend:ident, $at:ident,
     {{ $($pattern:pat_param)|+ => $bound:ident }} $($rest:tt)*) => {{
        let ($($pattern)|+) = $t;
        let $t = $bound;
        place!($t, ($($borrow)+), $lend, $at, $($rest)*)
    }};
    ($t:ident, ($($borrow:tt)+), $lend:ident, $at:ident,
     { $pattern:pat_param => $bound:ident } $($rest:tt)*) => {{
        let $pattern = $t else { return None };
        let $t = $bound;
        place!($t, ($($borrow)+), $lend, $at, $($rest)*)
    }};
    ($t:ident, ($($borrow:tt)+), $lend:ident, $at:ident, [$edge:ident] $($rest:tt)*) => {{
        let $t = $t.$at($edge);
        place!($t, ($($borrow)+), $lend, $at, $($rest)*)
    }};
    ($t:ident, ($($borrow:tt)+), $lend:ident, $at:ident, ($index:literal = $name:ident) $($rest:tt)*) => {{
        let $t = $($borrow)+ $t[$index];
        place!($t, ($($borrow)+), $lend, $at, $($rest)*)
    }};
}

/// The path of a place as a text that is known when the program is built.
macro_rules! dotted {
    ($($done:expr),* ;) => { concat!($($done),*) };
    ($($done:expr),* ; . $name:ident $($rest:tt)*) => {
        dotted!($($done,)* ".", stringify!($name); $($rest)*)
    };
    ($($done:expr),* ; <$name:ident> $($rest:tt)*) => { dotted!($($done),*; $($rest)*) };
    ($($done:expr),* ; ? $($rest:tt)*) => { dotted!($($done),*; $($rest)*) };
    ($($done:expr),* ; {{ $($pattern:pat_param)|+ => $bound:ident }} $($rest:tt)*) => {
        dotted!($($done,)* ".", stringify!($bound); $($rest)*)
    };
    ($($done:expr),* ; { $pattern:pat_param => $bound:ident } $($rest:tt)*) => {
        dotted!($($done,)* ".", stringify!($bound); $($rest)*)
    };
    ($($done:expr),* ; [$edge:ident] $($rest:tt)*) => { dotted!($($done),*; $($rest)*) };
    ($($done:expr),* ; ($index:literal = $name:ident) $($rest:tt)*) => {
        dotted!($($done,)* ".", stringify!($name); $($rest)*)
    };
}

/// The fields of one row: one, or one for each edge.
macro_rules! of_row {
    ($variant:expr,) => {
        &[$variant]
    };
    ($variant:expr, $edge:ident) => {
        &[
            $variant(Edge::Left),
            $variant(Edge::Right),
            $variant(Edge::Top),
            $variant(Edge::Bottom),
        ]
    };
}

/// The edge of a field, if it has one.
macro_rules! edge_of {
    () => {
        None
    };
    ($edge:ident) => {
        Some($edge)
    };
}

/// A table of fields; see the head of this file.
macro_rules! fields {
    ($(#[$doc:meta])* $Name:ident of $Part:ty: $(
        $Variant:ident $(($edge:ident: $Edge:ty))? at [$($place:tt)+]
        $kind:expr, $usual:expr, $label:literal, $name:literal, $meaning:literal;
    )+) => {
        $(#[$doc])*
        #[derive(
            Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash,
            serde::Serialize, serde::Deserialize,
        )]
        pub enum $Name {
            $(#[doc = $meaning] $Variant $(($Edge))?,)+
        }

        impl $Name {
            const ROWS: &[&[Self]] = &[$(of_row!(Self::$Variant, $($edge)?)),+];

            /// What the program knows of it.
            #[must_use]
            pub const fn info(self) -> &'static Info {
                match self {
                    $(Self::$Variant $((fields!(@any $edge)))? => const {
                        &Info {
                            key: concat!(stringify!($Name), ".", stringify!($Variant)),
                            path: dotted!(; $($place)+),
                            kind: $kind,
                            usual: $usual,
                            label: $label,
                            name: $name,
                            meaning: $meaning,
                        }
                    },)+
                }
            }

            fn place(self, part: &$Part) -> Option<&dyn FieldValue> {
                Some(match self {
                    $(Self::$Variant $(($edge))? => {
                        place!(part, (&), as_ref, at_ref, $($place)+)
                    })+
                })
            }

            fn place_mut(self, part: &mut $Part) -> Option<&mut dyn FieldValue> {
                Some(match self {
                    $(Self::$Variant $(($edge))? => {
                        place!(part, (&mut), as_mut, at_mut, $($place)+)
                    })+
                })
            }
        }

        impl Fields for $Name {
            type Part = $Part;

            fn all() -> impl Iterator<Item = Self> {
                Self::ROWS.iter().copied().flatten().copied()
            }

            fn info(self) -> &'static Info {
                self.info()
            }

            fn edge(self) -> Option<Edge> {
                match self {
                    $(Self::$Variant $(($edge))? => edge_of!($($edge)?),)+
                }
            }

            fn get(self, part: &$Part) -> Option<Value<'_>> {
                self.place(part).map(FieldValue::read)
            }

            fn set(self, part: &mut $Part, value: &Value<'_>) -> Result<Value<'static>, NotSet> {
                self.place_mut(part)
                    .ok_or(NotSet::Absent)?
                    .write(value)
                    .ok_or(NotSet::WrongKind)
            }
        }
    };
    (@any $edge:ident) => { _ };
}
pub(super) use {dotted, edge_of, fields, of_row, place};
