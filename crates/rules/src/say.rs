//! Numbers in messages.

use flapwright_model::length::{Unit, show_inch_64};

/// A length with its unit: to 0.1 mm, or to the nearest 1/64 in.
#[must_use]
pub fn length(millimetres: f64, unit: Unit) -> String {
    match unit {
        Unit::Millimetre => format!("{} mm", tenth(millimetres)),
        Unit::Inch => show_inch_64(millimetres),
    }
}

/// To one decimal, without a trailing zero and without `-0`.
fn tenth(value: f64) -> String {
    let text = format!("{value:.1}");
    let text = text.strip_suffix(".0").unwrap_or(&text);
    if text == "-0" {
        "0".to_owned()
    } else {
        text.to_owned()
    }
}

/// A whole number of percent.
#[must_use]
pub fn percent(ratio: f64) -> String {
    format!("{:.0} %", ratio * 100.0)
}

/// One thing or several: `1 bore`, `4 bores`.
#[must_use]
pub fn count(number: usize, one: &str) -> String {
    if number == 1 {
        format!("1 {one}")
    } else {
        format!("{number} {one}s")
    }
}
