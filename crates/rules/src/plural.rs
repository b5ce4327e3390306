//! Counts and shares in messages.

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
