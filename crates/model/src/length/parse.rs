//! Reading a length: text to tokens, tokens to terms, terms to a sum.
//!
//! Numbers stay ratios of whole numbers until the very end, so that `23-5/8" - 1/8"` gives the
//! same `f64` as `596.9` does and a job file never shows `596.9000000000001`.

use super::{LONGEST, LengthError, LengthProblem, Unit};

/// Longest text that is looked at, in characters.
const MOST_CHARACTERS: usize = 64;

/// Reads a length as typed; gives millimetres.
///
/// A **term** is a number with or without a unit:
/// - a whole or decimal number, decimal point or comma; without a unit it is in the job's `unit`;
/// - a fraction (`5/8`, `⅝`) or a mixed number (`23-5/8`, `23 5/8`, `23⅝`: whole number, then
///   hyphen *without* blanks, one blank or nothing, then a fraction under one); without a unit it
///   is in **inches, whatever the job's unit**;
/// - whole feet and then less than 12 inches: `1'-11 5/8"`, `2 ft 3 in`, `1' 11`.
///
/// Units are `mm`, `cm`, `m`, `in`, `inch`, `inches`, `ft`, `foot`, `feet`, and the marks `'` and
/// `"` (also `''`, primes and typographic quotes). Terms may be added and subtracted, each in its
/// own unit. A minus **leads or has a blank on both sides**; anything between is refused rather
/// than guessed at, because `23-5/8` and `23 - 5/8` are different lengths. A leading sign belongs
/// to its whole term: `-23-5/8"` is minus 23-5/8 inches.
///
/// There are no thousands marks: **`1,000` is one**, and `1'000` is refused. Terms are added as
/// fractions, so that `600.1 mm + 0.2 mm` is the same `f64` as `600.3 mm`. The result is never
/// `-0.0` and never over 1000 km; whether it suits its field (above zero, up to 5 m) is asked
/// where it is put to use.
///
/// # Errors
///
/// [`LengthError`] with the part at fault and an example of what is wanted. No text panics.
///
/// # Examples
///
/// ```
/// use flapwright_model::length::{Unit, parse_length};
///
/// let mm = |text| parse_length(text, Unit::Millimetre);
/// assert_eq!(mm("600"), Ok(600.0));
/// assert_eq!(mm("23-5/8\""), Ok(600.075));
/// assert_eq!(mm("1'-11 5/8\""), Ok(600.075));
/// assert_eq!(mm("5/8"), Ok(15.875)); // a bare fraction is inches
/// assert_eq!(mm("600 mm + 1/2\""), Ok(612.7));
/// assert_eq!(mm("23 - 5/8"), Ok(7.125)); // 23 mm less 15.875 mm
/// assert!(mm("600-3").is_err());
/// assert_eq!(parse_length("23,625", Unit::Inch), Ok(600.075));
/// ```
pub fn parse_length(text: &str, unit: Unit) -> Result<f64, LengthError> {
    let text = text.trim();
    let refuse = |problem| LengthError::new(text, problem);
    if text.is_empty() {
        return Err(refuse(LengthProblem::Empty));
    }
    if text.chars().nth(MOST_CHARACTERS).is_some() {
        return Err(refuse(LengthProblem::TooManyCharacters));
    }
    let mm = sum(&tokens(text)?, unit).map_err(refuse)?.value();
    if mm.is_finite() && mm.abs() <= LONGEST {
        Ok(mm)
    } else {
        Err(refuse(LengthProblem::TooLarge))
    }
}

/// A quotient of two whole numbers. Arithmetic on it is exact while both stay under 2^53.
#[derive(Clone, Copy)]
struct Ratio {
    over: f64,
    under: f64,
}

impl Ratio {
    const ZERO: Self = Self::whole(0.0);

    const fn whole(over: f64) -> Self {
        Self { over, under: 1.0 }
    }

    fn plus(self, other: Self) -> Self {
        if self.under == other.under {
            Self {
                over: self.over + other.over,
                under: self.under,
            }
        } else {
            Self {
                over: self.over * other.under + other.over * self.under,
                under: self.under * other.under,
            }
        }
    }

    fn times(self, other: Self) -> Self {
        Self {
            over: self.over * other.over,
            under: self.under * other.under,
        }
    }

    fn negated(self) -> Self {
        Self {
            over: -self.over,
            under: self.under,
        }
    }

    fn value(self) -> f64 {
        self.over / self.under
    }
}

/// A unit that can be typed, finer grained than the job's [`Unit`].
#[derive(Clone, Copy, PartialEq, Eq)]
enum Scale {
    Millimetre,
    Centimetre,
    Metre,
    Inch,
    Foot,
}

impl Scale {
    fn from_word(word: &str) -> Option<Self> {
        Some(match word.to_lowercase().as_str() {
            "mm" => Self::Millimetre,
            "cm" => Self::Centimetre,
            "m" => Self::Metre,
            "in" | "inch" | "inches" => Self::Inch,
            "ft" | "foot" | "feet" => Self::Foot,
            _ => return None,
        })
    }

    /// Millimetres in one, exact: an inch is 127/5 mm.
    const fn mm(self) -> Ratio {
        match self {
            Self::Millimetre => Ratio::whole(1.0),
            Self::Centimetre => Ratio::whole(10.0),
            Self::Metre => Ratio::whole(1000.0),
            Self::Inch => Ratio {
                over: 127.0,
                under: 5.0,
            },
            Self::Foot => Ratio {
                over: 1524.0,
                under: 5.0,
            },
        }
    }
}

impl From<Unit> for Scale {
    fn from(unit: Unit) -> Self {
        match unit {
            Unit::Millimetre => Self::Millimetre,
            Unit::Inch => Self::Inch,
        }
    }
}

#[derive(Clone, Copy)]
enum Token {
    Whole(Ratio),
    Decimal(Ratio),
    Fraction(Ratio),
    Unit(Scale),
    /// Leads, or has a blank on both sides.
    Sign {
        negative: bool,
    },
    /// A `-` between neighbours that touch it.
    Hyphen,
}

/// The plain character that stands for a typographic one.
const fn plain(c: char) -> char {
    match c {
        '’' | '‘' | '′' => '\'',
        '”' | '“' | '″' => '"',
        '−' | '–' | '‐' | '‑' => '-',
        '⁄' | '∕' => '/',
        _ => c,
    }
}

/// The value of a character that is a fraction by itself.
const fn glyph(c: char) -> Option<Ratio> {
    let (over, under) = match c {
        '½' => (1.0, 2.0),
        '⅓' => (1.0, 3.0),
        '⅔' => (2.0, 3.0),
        '¼' => (1.0, 4.0),
        '¾' => (3.0, 4.0),
        '⅕' => (1.0, 5.0),
        '⅖' => (2.0, 5.0),
        '⅗' => (3.0, 5.0),
        '⅘' => (4.0, 5.0),
        '⅙' => (1.0, 6.0),
        '⅚' => (5.0, 6.0),
        '⅐' => (1.0, 7.0),
        '⅛' => (1.0, 8.0),
        '⅜' => (3.0, 8.0),
        '⅝' => (5.0, 8.0),
        '⅞' => (7.0, 8.0),
        '⅑' => (1.0, 9.0),
        '⅒' => (1.0, 10.0),
        _ => return None,
    };
    Some(Ratio { over, under })
}

/// Splits off the leading characters that `belongs` accepts.
fn split_run(text: &str, belongs: impl Fn(char) -> bool) -> (&str, &str) {
    text.split_at(text.find(|c| !belongs(c)).unwrap_or(text.len()))
}

fn is_number_part(c: char) -> bool {
    c.is_ascii_digit() || matches!(plain(c), '.' | ',' | '/')
}

fn tokens(text: &str) -> Result<Vec<Token>, LengthError> {
    let mut found = Vec::new();
    let mut rest = text;
    let mut blank_before = false;
    while let Some(first) = rest.chars().next() {
        let (head, tail) = rest.split_at(first.len_utf8());
        if first.is_whitespace() {
            (rest, blank_before) = (tail, true);
            continue;
        }
        let (token, after) = match plain(first) {
            c if is_number_part(c) => {
                let (number, after) = split_run(rest, is_number_part);
                if has_exponent(after) {
                    let (all, _) = split_run(rest, |c| !c.is_whitespace());
                    return Err(LengthError::new(all, LengthProblem::Exponent));
                }
                let token = number_token(number).map_err(|p| LengthError::new(number, p))?;
                (token, after)
            }
            c if c.is_alphabetic() => {
                let (word, after) = split_run(rest, char::is_alphabetic);
                let scale = Scale::from_word(word)
                    .ok_or_else(|| LengthError::new(word, LengthProblem::UnknownWord))?;
                (Token::Unit(scale), after)
            }
            '"' => (Token::Unit(Scale::Inch), tail),
            '\'' => match tail.chars().next() {
                Some(second) if plain(second) == '\'' => {
                    (Token::Unit(Scale::Inch), tail.split_at(second.len_utf8()).1)
                }
                // 1'000 is how some write a thousand; as a foot it would pass unnoticed.
                _ if split_run(tail, |c| c.is_ascii_digit()).0.len() >= 3 => {
                    return Err(LengthError::new(text, LengthProblem::ThousandsMark));
                }
                _ => (Token::Unit(Scale::Foot), tail),
            },
            c @ ('-' | '+') => {
                let blank_after = tail.is_empty() || tail.starts_with(char::is_whitespace);
                if found.is_empty() || (blank_before && blank_after) {
                    (Token::Sign { negative: c == '-' }, tail)
                } else if c == '-' && !blank_before && !blank_after {
                    (Token::Hyphen, tail)
                } else {
                    return Err(LengthError::new(text, LengthProblem::SignSpacing));
                }
            }
            c => match glyph(c) {
                Some(value) => (Token::Fraction(value), tail),
                None => return Err(LengthError::new(head, LengthProblem::UnknownMark)),
            },
        };
        found.push(token);
        (rest, blank_before) = (after, false);
    }
    Ok(found)
}

/// Whether what stands behind a number makes it `1e5` or `1E-5`.
fn has_exponent(after: &str) -> bool {
    after.strip_prefix(['e', 'E']).is_some_and(|power| {
        power
            .trim_start_matches(|c| matches!(plain(c), '-' | '+'))
            .starts_with(is_number_part)
    })
}

/// Reads a run of digits, decimal marks and slashes.
fn number_token(run: &str) -> Result<Token, LengthProblem> {
    if let Some((over, under)) = run.split_once(|c| plain(c) == '/') {
        let digits = |part: &str| !part.is_empty() && part.bytes().all(|b| b.is_ascii_digit());
        if !digits(over) || !digits(under) {
            return Err(LengthProblem::BrokenFraction);
        }
        let fraction = Ratio {
            over: whole(over),
            under: whole(under),
        };
        return if fraction.under == 0.0 {
            Err(LengthProblem::ZeroDenominator)
        } else {
            Ok(Token::Fraction(fraction))
        };
    }
    match run.split_once(['.', ',']) {
        None => Ok(Token::Whole(Ratio::whole(whole(run)))),
        Some((_, decimals)) if decimals.contains(['.', ',']) => Err(LengthProblem::ThousandsMark),
        Some((_, "")) => Err(LengthProblem::LooseDecimalMark),
        Some((_, decimals)) => Ok(Token::Decimal(Ratio {
            over: whole(run),
            under: decimals.bytes().fold(1.0, |power, _| power * 10.0),
        })),
    }
}

/// The number that the digits of `text` make, all else passed over.
fn whole(text: &str) -> f64 {
    text.chars()
        .filter_map(|c| c.to_digit(10))
        .fold(0.0, |number, digit| number * 10.0 + f64::from(digit))
}

fn sum(tokens: &[Token], unit: Unit) -> Result<Ratio, LengthProblem> {
    let (mut negative, mut rest) = match tokens {
        [Token::Sign { negative }, rest @ ..] => (*negative, rest),
        _ => (false, tokens),
    };
    let mut total = Ratio::ZERO; // 0.0 + -0.0 is 0.0: the sum is never -0.0
    loop {
        let end = rest
            .iter()
            .position(|token| matches!(token, Token::Sign { .. }));
        let (this, after) = rest.split_at(end.unwrap_or(rest.len()));
        let value = term(this, unit)?;
        total = total.plus(if negative { value.negated() } else { value });
        match after {
            [Token::Sign { negative: next }, more @ ..] => (negative, rest) = (*next, more),
            _ => return Ok(total),
        }
    }
}

/// One length without its sign, in mm.
fn term(tokens: &[Token], unit: Unit) -> Result<Ratio, LengthProblem> {
    let (number, shape, rest) = amount(tokens)?;
    match rest {
        [] => {
            let scale = if shape == Shape::Fraction {
                Scale::Inch
            } else {
                unit.into()
            };
            Ok(number.times(scale.mm()))
        }
        [Token::Unit(scale)] => Ok(number.times(scale.mm())),
        [Token::Unit(Scale::Foot), Token::Hyphen, inches @ ..]
        | [Token::Unit(Scale::Foot), inches @ ..] => {
            let (inch_number, _, end) = amount(inches).map_err(|problem| match problem {
                LengthProblem::NoNumber => leftover(inches, true),
                other => other,
            })?;
            match end {
                [] | [Token::Unit(Scale::Inch)] => {}
                _ => return Err(leftover(end, true)),
            }
            if shape != Shape::Whole || inch_number.value() >= 12.0 {
                return Err(LengthProblem::FeetAndInches);
            }
            let inches = inch_number.times(Scale::Inch.mm());
            Ok(number.times(Scale::Foot.mm()).plus(inches))
        }
        [Token::Unit(_), extra @ ..] => Err(leftover(extra, true)),
        extra => Err(leftover(extra, false)),
    }
}

/// What is wrong with the tokens behind what could have been a whole term.
fn leftover(extra: &[Token], has_unit: bool) -> LengthProblem {
    if extra.iter().any(|token| matches!(token, Token::Hyphen)) {
        LengthProblem::SignSpacing
    } else if has_unit && extra.iter().any(|token| matches!(token, Token::Unit(_))) {
        LengthProblem::TwoUnits
    } else {
        LengthProblem::TwoNumbers
    }
}

#[derive(Clone, Copy, PartialEq, Eq)]
enum Shape {
    Whole,
    Decimal,
    /// A fraction or a mixed number.
    Fraction,
}

/// Reads the number that leads `tokens`; gives its shape and what follows, too.
fn amount(tokens: &[Token]) -> Result<(Ratio, Shape, &[Token]), LengthProblem> {
    match tokens {
        [
            Token::Whole(whole),
            Token::Hyphen,
            Token::Fraction(part),
            rest @ ..,
        ]
        | [Token::Whole(whole), Token::Fraction(part), rest @ ..] => {
            if part.over < part.under {
                Ok((whole.plus(*part), Shape::Fraction, rest))
            } else {
                Err(LengthProblem::ImproperFraction)
            }
        }
        [Token::Whole(number), rest @ ..] => Ok((*number, Shape::Whole, rest)),
        [Token::Decimal(number), rest @ ..] => Ok((*number, Shape::Decimal, rest)),
        [Token::Fraction(number), rest @ ..] => Ok((*number, Shape::Fraction, rest)),
        _ => Err(LengthProblem::NoNumber),
    }
}

#[cfg(test)]
mod tests;
