//! What a rule is.

use super::tree::{Problem, Tree};

/// One rule.
pub(super) struct Rule {
    /// Its name, as it is printed.
    pub(super) name: &'static str,
    /// Why it is there.
    pub(super) reason: &'static str,
    /// Finds what breaks it.
    pub(super) find: fn(&Tree) -> Vec<Problem>,
}
