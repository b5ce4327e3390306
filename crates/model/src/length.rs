//! Lengths as people type and read them; inside the program a length is an `f64` of millimetres.
//!
//! | How do I… | |
//! |---|---|
//! | read what was typed into a form | [`parse_length`] |
//! | show a length in a form or on a label | [`show_length`] |
//! | print a position on a sheet, in mm | [`show_mm_tenth`] |
//! | print a position on a sheet, in inches | [`show_inch_64`] |
//!
//! ```
//! use flapwright_model::length::{Unit, parse_length, show_inch_64, show_length};
//!
//! let width = parse_length("23-5/8\"", Unit::Millimetre)?;
//! assert_eq!(width, 600.075);
//! assert_eq!(show_length(width, Unit::Millimetre), "600.075");
//! assert_eq!(show_length(width, Unit::Inch), "23-5/8\"");
//! assert_eq!(show_inch_64(37.0), "1-29/64\"");
//! # Ok::<(), flapwright_model::length::LengthError>(())
//! ```
//!
//! # Round positions, never pitches
//!
//! What the functions for sheets get is the **absolute** distance from the zero corner, in full
//! precision, and each is rounded by itself. A pitch that is rounded first and then added up
//! carries its error along the row: the twentieth step of 32 mm is at 640 mm, but twenty times
//! the nearest 1/64 to 32 mm is nearly 3 mm past it.
//!
//! ```
//! use flapwright_model::length::{Unit, parse_length, show_inch_64};
//!
//! assert_eq!(show_inch_64(20.0 * 32.0), "25-13/64\""); // 640.159 mm: right to the 1/64
//!
//! let pitch = parse_length(&show_inch_64(32.0), Unit::Inch)?; // 1-17/64"
//! assert_eq!(show_inch_64(20.0 * pitch), "25-5/16\""); // 642.938 mm: wrong
//! # Ok::<(), flapwright_model::length::LengthError>(())
//! ```

mod error;
mod parse;
mod show;

use serde::{Deserialize, Serialize};

pub use error::{LengthError, LengthProblem};
pub use parse::parse_length;
pub use show::{show_inch_64, show_length, show_mm_tenth};

/// Millimetres in an inch, exact by definition (NIST SP 811, appendix B).
pub const MM_PER_INCH: f64 = 25.4;

/// The longest length that is read, in mm: 1000 km. Sizes have far narrower limits of their own;
/// this one only keeps every number that is read exact to less than a thousandth.
const LONGEST: f64 = 1.0e9;

/// The job's unit: what a bare number is typed in and what forms show.
///
/// A job keeps its lengths in millimetres whatever its unit, so to change the unit changes no
/// length.
#[derive(Serialize, Deserialize, Clone, Copy, PartialEq, Eq, Debug, Default)]
pub enum Unit {
    /// Millimetres.
    #[default]
    Millimetre,
    /// Inches.
    Inch,
}

impl Unit {
    /// `mm` or `in`, as it stands behind a field; [`parse_length`] reads both.
    #[must_use]
    pub const fn symbol(self) -> &'static str {
        match self {
            Self::Millimetre => "mm",
            Self::Inch => "in",
        }
    }
}

#[cfg(test)]
mod tests {
    use std::fmt;

    use serde::de::IntoDeserializer;
    use serde::de::value::Error;

    use super::*;

    /// Prints the name under which serde writes the unit.
    struct Written(Unit);

    impl fmt::Display for Written {
        fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
            self.0.serialize(f)
        }
    }

    #[test]
    fn a_unit_is_written_and_read_under_its_plain_name() {
        for (unit, name) in [(Unit::Millimetre, "Millimetre"), (Unit::Inch, "Inch")] {
            assert_eq!(Written(unit).to_string(), name);
            let name: serde::de::value::StrDeserializer<'_, Error> = name.into_deserializer();
            assert_eq!(Unit::deserialize(name).unwrap(), unit);
        }
        assert_eq!(Unit::default(), Unit::Millimetre);
    }

    #[test]
    fn the_symbol_of_a_unit_is_read_as_that_unit() {
        for unit in [Unit::Millimetre, Unit::Inch] {
            for other in [Unit::Millimetre, Unit::Inch] {
                let text = format!("7 {}", unit.symbol());
                assert_eq!(
                    parse_length(&text, other),
                    parse_length("7", unit),
                    "{text}"
                );
            }
        }
    }
}
