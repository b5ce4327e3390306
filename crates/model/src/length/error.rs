//! Why a text is no length.

use thiserror::Error;

/// How much of a refused text the message repeats, in characters.
const MOST_QUOTED: usize = 28;

/// Why a text is no length, and which part of it is at fault.
///
/// The message quotes what was found and gives an example of what is wanted:
///
/// ```
/// use flapwright_model::length::{LengthProblem, Unit, parse_length};
///
/// let refused = parse_length("23 3/0", Unit::Inch).unwrap_err();
/// assert_eq!(refused.problem, LengthProblem::ZeroDenominator);
/// assert_eq!(refused.to_string(), "“3/0” divides by zero; write a fraction such as 5/8\"");
/// ```
#[derive(Debug, Clone, PartialEq, Eq, Error)]
#[error("“{found}” {}", .problem.says())]
pub struct LengthError {
    /// The part at fault, or the whole text where no part is; shortened, unprintable characters
    /// escaped.
    pub found: String,
    /// What is wrong with it.
    pub problem: LengthProblem,
}

impl LengthError {
    /// Quotes `found`, shortened.
    pub(super) fn new(found: &str, problem: LengthProblem) -> Self {
        let mut short = String::new();
        for (i, c) in found.chars().enumerate() {
            match c {
                _ if i == MOST_QUOTED => {
                    short.push('…');
                    break;
                }
                '"' | '\'' | '\\' => short.push(c),
                c if c.is_whitespace() => short.push(' '),
                _ => short.extend(c.escape_debug()),
            }
        }
        Self {
            found: short,
            problem,
        }
    }
}

/// The ways in which a text is no length.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum LengthProblem {
    /// Nothing but blanks.
    Empty,
    /// Over 64 characters.
    TooManyCharacters,
    /// A word that is no unit, `NaN` and `inf` among them.
    UnknownWord,
    /// A character that has no place in a length.
    UnknownMark,
    /// `1e3` and the like.
    Exponent,
    /// More than one decimal mark in a number, or a thousands mark: `1.000,5`, `1'000`.
    ThousandsMark,
    /// A decimal mark with no digit after it: `5.`.
    LooseDecimalMark,
    /// `3/0`.
    ZeroDenominator,
    /// A slash that does not stand between two whole numbers: `23/5/8`, `1.5/8`, `/8`.
    BrokenFraction,
    /// A mixed number whose fraction is one or more: `2 5/4`.
    ImproperFraction,
    /// A unit or a sign where a number should be.
    NoNumber,
    /// Two numbers in a row with nothing between them: `1 000`.
    TwoNumbers,
    /// Two units in one term: `1 m 5 cm`.
    TwoUnits,
    /// A sign with a blank on one side only, or with none and no mixed number: `600-3`.
    SignSpacing,
    /// Feet that are not whole before inches, or twelve inches and more after feet.
    FeetAndInches,
    /// Over 1000 km.
    TooLarge,
}

impl LengthProblem {
    /// What follows the quoted text in the message.
    const fn says(self) -> &'static str {
        match self {
            Self::Empty => "is empty; type a length such as 600, 23-5/8\" or 1'-11 5/8\"",
            Self::TooManyCharacters => {
                "is over 64 characters; type one length, such as 600 mm or 23-5/8\""
            }
            Self::UnknownWord => "is no unit; write mm, cm, m, in or ft, such as 600 mm",
            Self::UnknownMark => "has no place in a length; write it like 600 mm or 23-5/8\"",
            Self::Exponent => "has an exponent; write all digits, such as 1000 or 0.25",
            Self::ThousandsMark => {
                "has a thousands mark or a second decimal mark; write it like 1000.5"
            }
            Self::LooseDecimalMark => "lacks digits behind its decimal mark; write it like 23.625",
            Self::ZeroDenominator => "divides by zero; write a fraction such as 5/8\"",
            Self::BrokenFraction => {
                "is no fraction of two whole numbers; write it like 5/8\" or 23-5/8\""
            }
            Self::ImproperFraction => {
                "joins a whole number and a fraction that is not under one; write it like 23-5/8\""
            }
            Self::NoNumber => "lacks a number beside a unit or sign; write it like 600 mm or -3",
            Self::TwoNumbers => {
                "has two numbers in a row; write 1000 in one piece, 23 5/8\", or a sum like 600 + 3"
            }
            Self::TwoUnits => "has two units in one length; write a sum such as 600 mm + 1/2\"",
            Self::SignSpacing => {
                "has a sign that needs a blank on both sides; write 600 - 3, or 23-5/8\" for a \
                 mixed number"
            }
            Self::FeetAndInches => {
                "is not whole feet with less than 12 inches; write it like 1'-11 5/8\" or 1.5'"
            }
            Self::TooLarge => "is over 1000 km; type a length such as 600 mm",
        }
    }
}
