//! Showing a length: what forms show reads back as typed, what sheets print is rounded.

use std::cmp::Ordering;

use super::{LONGEST, MM_PER_INCH, Unit};

/// What stands for a number that is not finite. No sound job has one; it reads back as a refusal.
const NO_LENGTH: &str = "?";

/// How near, in mm, a length must be to a 64th of an inch for a form to show it as a fraction.
const NEAR: f64 = 0.001;

/// A length for forms and labels, in the job's unit, such that it reads back as it was typed.
///
/// - [`Unit::Millimetre`]: at most three decimals, trailing zeros left out, no unit.
///   `parse_length` in the same unit gives the length back to within 0.0005 mm.
/// - [`Unit::Inch`]: a mixed number with `"` where a 64th of an inch lies within 0.001 mm, else
///   at most four decimals with `"`. `parse_length` gives the length back to within 0.0013 mm.
///
/// Never `-0`. For numbers that are **rounded** for the shop see [`show_mm_tenth`] and
/// [`show_inch_64`]. A number that is not finite shows as `?`.
///
/// ```
/// use flapwright_model::length::{Unit, show_length};
///
/// assert_eq!(show_length(600.0, Unit::Millimetre), "600");
/// assert_eq!(show_length(600.075, Unit::Millimetre), "600.075");
/// assert_eq!(show_length(600.075, Unit::Inch), "23-5/8\"");
/// assert_eq!(show_length(600.0, Unit::Inch), "23.622\"");
/// ```
#[must_use]
pub fn show_length(mm: f64, unit: Unit) -> String {
    match unit {
        _ if !mm.is_finite() => NO_LENGTH.to_owned(),
        Unit::Millimetre => trimmed(&format!("{mm:.3}")).to_owned(),
        Unit::Inch => {
            let fraction = nearest_64th(mm).filter(|n| (mm_of_64ths(*n) - mm).abs() <= NEAR);
            fraction.map_or_else(|| decimal_inches(mm), inches)
        }
    }
}

/// A position for a sheet, in mm rounded to 0.1, one decimal always printed.
///
/// Halves go to the even tenth (ISO 80000-1, annex B, rule A), so that many roundings do not
/// drift one way. What is a half is decided **in decimal**, after rounding to 1e-6 mm: 0.15 is
/// one, although the nearest `f64` lies a little below it. Never `-0.0`. Round absolute
/// positions, never pitches: see [the module](super#round-positions-never-pitches).
///
/// ```
/// use flapwright_model::length::show_mm_tenth;
///
/// assert_eq!(show_mm_tenth(37.0), "37.0");
/// assert_eq!(show_mm_tenth(600.075), "600.1");
/// assert_eq!(show_mm_tenth(0.25), "0.2");
/// assert_eq!(show_mm_tenth(0.35), "0.4");
/// ```
#[must_use]
pub fn show_mm_tenth(mm: f64) -> String {
    if !mm.is_finite() {
        return NO_LENGTH.to_owned();
    }
    if mm.abs() > LONGEST {
        return format!("{mm:.1}");
    }
    let tenths = nearest_step(mm * 1e6, 100_000);
    let size = tenths.unsigned_abs();
    format!("{}{}.{}", minus(tenths), size / 10, size % 10)
}

/// A position for a sheet, in inches rounded to 1/64 and reduced.
///
/// Halves go to the even 64th; what is a half is decided after rounding to a millionth of a 64th.
/// Beyond 1000 km it gives decimal inches. Round absolute positions, never pitches: see
/// [the module](super#round-positions-never-pitches).
///
/// ```
/// use flapwright_model::length::show_inch_64;
///
/// assert_eq!(show_inch_64(37.0), "1-29/64\"");
/// assert_eq!(show_inch_64(35.0), "1-3/8\"");
/// assert_eq!(show_inch_64(-3.175), "-1/8\"");
/// assert_eq!(show_inch_64(0.1), "0\"");
/// ```
#[must_use]
pub fn show_inch_64(mm: f64) -> String {
    nearest_64th(mm).map_or_else(|| decimal_inches(mm), inches)
}

/// The nearest 64th of an inch, or nothing beyond the lengths that [`super::parse_length`] reads.
fn nearest_64th(mm: f64) -> Option<i64> {
    // 64/25.4 = 320/127: both whole, so that the quotient is rounded once.
    (mm.abs() <= LONGEST).then(|| nearest_step(mm * 320.0 / 127.0 * 1e6, 1_000_000))
}

fn mm_of_64ths(n: i64) -> f64 {
    n as f64 * 127.0 / 320.0
}

/// How many steps of `step` are nearest to `fine`, which is rounded to whole numbers first. Halves
/// go to the even step in both.
fn nearest_step(fine: f64, step: i64) -> i64 {
    let fine = fine.round_ties_even() as i64;
    let below = fine.div_euclid(step);
    match (2 * fine.rem_euclid(step)).cmp(&step) {
        Ordering::Less => below,
        Ordering::Greater => below + 1,
        Ordering::Equal => below + (below & 1),
    }
}

const fn minus(n: i64) -> &'static str {
    if n < 0 { "-" } else { "" }
}

fn inches(n: i64) -> String {
    format!("{}{}\"", minus(n), mixed(n.unsigned_abs()))
}

/// `1-29/64`, `5/8`, `2` or `0` for a number of 64ths.
fn mixed(n: u64) -> String {
    let (whole, part) = (n / 64, n % 64);
    if part == 0 {
        return whole.to_string();
    }
    let halvings = part.trailing_zeros();
    let fraction = format!("{}/{}", part >> halvings, 64 >> halvings);
    if whole == 0 {
        fraction
    } else {
        format!("{whole}-{fraction}")
    }
}

fn decimal_inches(mm: f64) -> String {
    if !mm.is_finite() {
        return NO_LENGTH.to_owned();
    }
    format!("{}\"", trimmed(&format!("{:.4}", mm / MM_PER_INCH)))
}

/// Without trailing zeros behind the decimal point, and without the minus of `-0`. The text has a
/// decimal point.
fn trimmed(text: &str) -> &str {
    match text.trim_end_matches('0').trim_end_matches('.') {
        "-0" => "0",
        short => short,
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::length::parse_length;

    fn read(text: &str, unit: Unit) -> f64 {
        parse_length(text, unit).unwrap_or_else(|e| panic!("{text}: {e}"))
    }

    /// Lengths on, beside and between everything that is rounded to, both signs.
    fn sweep() -> impl Iterator<Item = f64> {
        let fine = (-5_000..5_000).map(|i| f64::from(i) * 0.000_37);
        let coarse = (-5_000..5_000).map(|i| f64::from(i) * 1.397_13);
        let sixty_fourths = (-1_600..1_600).flat_map(|i| {
            [-0.001_1, -0.000_9, 0.0, 0.000_9, 0.001_1].map(|d| f64::from(i) * 0.396_875 + d)
        });
        fine.chain(coarse).chain(sixty_fourths)
    }

    #[test]
    fn what_a_form_shows_reads_back_as_the_length() {
        for x in sweep() {
            for (unit, within) in [(Unit::Millimetre, 0.000_5), (Unit::Inch, 0.001_3)] {
                let text = show_length(x, unit);
                let off = (read(&text, unit) - x).abs();
                assert!(off <= within + 1e-9, "{x} mm shows as {text}: {off} off");
                assert!(
                    !text.starts_with("-0\"") && text != "-0",
                    "{x} mm shows as {text}"
                );
            }
        }
    }

    #[test]
    fn what_a_sheet_prints_reads_back_as_the_nearest_step() {
        for x in sweep() {
            let (tenth, in_inches) = (show_mm_tenth(x), show_inch_64(x));
            let off = (read(&tenth, Unit::Millimetre) - x).abs();
            assert!(off <= 0.05 + 1e-6, "{x} mm prints as {tenth}: {off} off");
            let length = read(&in_inches, Unit::Millimetre);
            assert!(
                (length - x).abs() <= 25.4 / 128.0 + 1e-6,
                "{x} mm prints as {in_inches}"
            );
            assert_eq!(show_inch_64(length), in_inches, "printed once more");
        }
    }

    #[test]
    fn a_form_shows_what_was_typed() {
        for text in [
            "600", "600.5", "0.1", "-3", "15.875", "600.075", "0", "1000", "0.001",
        ] {
            assert_eq!(
                show_length(read(text, Unit::Millimetre), Unit::Millimetre),
                text
            );
        }
        for text in [
            "23-5/8\"",
            "5/8\"",
            "-1/8\"",
            "-23-5/8\"",
            "0\"",
            "12\"",
            "0.1\"",
            "23.6221\"",
        ] {
            assert_eq!(show_length(read(text, Unit::Inch), Unit::Inch), text);
        }
        assert_eq!(show_length(19.05, Unit::Inch), "3/4\"");
        assert_eq!(show_length(-0.000_1, Unit::Millimetre), "0");
        assert_eq!(show_length(-0.000_1, Unit::Inch), "0\"");
        assert_eq!(show_length(-0.001_1, Unit::Inch), "0\"");
    }

    /// Rule A of ISO 80000-1, annex B (restated in JIS Z 8401): halves to the even multiple.
    #[test]
    fn halves_of_a_tenth_go_to_the_even_tenth() {
        for (x, text) in [
            (0.05, "0.0"),
            (0.15, "0.2"),
            (0.25, "0.2"),
            (0.35, "0.4"),
            (0.45, "0.4"),
            (0.55, "0.6"),
            (0.65, "0.6"),
            (0.95, "1.0"),
            (1.05, "1.0"),
            (2.675, "2.7"),
            (600.05, "600.0"),
            (600.15, "600.2"),
            (771.125, "771.1"),
            (37.0, "37.0"),
            (0.0, "0.0"),
            (0.050_001, "0.1"),
            (0.149_999, "0.1"),
            (0.250_001, "0.3"),
            (0.250_000_4, "0.2"),
        ] {
            assert_eq!(show_mm_tenth(x), text, "{x}");
            let negative = if text == "0.0" {
                text.to_owned()
            } else {
                format!("-{text}")
            };
            assert_eq!(show_mm_tenth(-x), negative, "-{x}");
        }
        assert_eq!(
            show_mm_tenth(0.1 + 0.2 - 0.05),
            "0.2",
            "0.25000000000000006 is a half"
        );
    }

    /// Table: exact arithmetic on the inch of NIST SP 811, appendix B.
    #[test]
    fn common_metric_sizes_have_their_nearest_64th() {
        for (x, text) in [
            (5.0, "13/64\""),
            (8.0, "5/16\""),
            (13.0, "33/64\""),
            (16.0, "5/8\""),
            (18.0, "45/64\""),
            (19.0, "3/4\""),
            (32.0, "1-17/64\""),
            (35.0, "1-3/8\""),
            (37.0, "1-29/64\""),
            (25.4, "1\""),
            (600.075, "23-5/8\""),
            (-3.175, "-1/8\""),
        ] {
            assert_eq!(show_inch_64(x), text, "{x}");
        }
    }

    #[test]
    fn halves_of_a_64th_go_to_the_even_64th() {
        for (odd_128ths, text) in [
            (1, "0\""),
            (3, "1/32\""),
            (5, "1/32\""),
            (7, "1/16\""),
            (127, "1\""),
            (129, "1\""),
        ] {
            let x = f64::from(odd_128ths) * 25.4 / 128.0;
            assert_eq!(show_inch_64(x), text, "{odd_128ths}/128");
            let negative = if text == "0\"" {
                text.to_owned()
            } else {
                format!("-{text}")
            };
            assert_eq!(show_inch_64(-x), negative, "-{odd_128ths}/128");
        }
        for odd in (1..20_000).step_by(2) {
            let exact = parse_length(&format!("{odd}/128"), Unit::Inch).unwrap();
            let even = if odd % 4 == 1 { odd - 1 } else { odd + 1 };
            let nearest = parse_length(&format!("{even}/128"), Unit::Inch).unwrap();
            assert_eq!(show_inch_64(exact), show_inch_64(nearest), "{odd}/128");
        }
    }

    /// Twenty steps of 32 mm: 640 mm; with the pitch rounded to 1-17/64" first 642.94 mm.
    #[test]
    fn absolute_positions_do_not_gather_the_error_of_a_rounded_pitch() {
        for step in 0..=20 {
            let x = f64::from(step) * 32.0;
            let printed = read(&show_inch_64(x), Unit::Inch);
            assert!(
                (printed - x).abs() <= 25.4 / 128.0,
                "step {step}: {printed} for {x}"
            );
        }
        let pitch = read(&show_inch_64(32.0), Unit::Inch);
        assert!((20.0 * pitch - 642.937_5).abs() < 1e-9, "{pitch}");
    }

    #[test]
    fn numbers_that_are_no_length_show_as_a_question() {
        for x in [f64::NAN, f64::INFINITY, f64::NEG_INFINITY] {
            for text in [
                show_length(x, Unit::Millimetre),
                show_length(x, Unit::Inch),
                show_mm_tenth(x),
                show_inch_64(x),
            ] {
                assert_eq!(text, "?");
                assert!(parse_length(&text, Unit::Millimetre).is_err());
            }
        }
        assert_eq!(show_mm_tenth(1e12), "1000000000000.0");
        assert_eq!(show_inch_64(2.54e13), "1000000000000\"");
        assert!(show_length(f64::MAX, Unit::Inch).ends_with('"'));
    }
}
