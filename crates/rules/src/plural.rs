//! Counts in headings and lists.

/// One thing or several: `1 bore`, `4 bores`.
#[must_use]
pub fn count(number: usize, one: &str) -> String {
    if number == 1 {
        format!("1 {one}")
    } else {
        format!("{number} {one}s")
    }
}
