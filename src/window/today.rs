//! The date of today, for the title block.

/// Today where the user is, as `2026-01-31`.
pub(crate) fn today() -> String {
    jiff::Zoned::now().date().to_string()
}
