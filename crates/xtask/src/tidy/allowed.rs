//! Exceptions from rules. Each list may only get shorter: an exception that nothing needs is a
//! problem as well.

/// Files with positions in lists where ids belong, and how many. They go when parts, findings and
/// sheets carry ids.
pub(super) const INDICES: &[(&str, usize)] = &[
    ("crates/drawing/src/sheet.rs", 1),
    ("crates/model/src/part.rs", 6),
    ("crates/rules/src/inspection.rs", 4),
    ("crates/rules/src/placement/opening.rs", 1),
];

/// Modules that several test programs share, each its own part of them: no lint that expects dead
/// code holds in all of them.
pub(super) const ALLOWS: &[&str] = &[
    "tests/outside/motion-rapier/src/main.rs",
    "tests/window_support/mod.rs",
];

/// Files of over 600 lines.
pub(super) const LONG: &[&str] = &[
    "crates/rules/tests/rules/alike_checks.rs",
    "crates/rules/tests/rules/door_words.rs",
    "tests/cli.rs",
];

/// Circles between files of a crate.
pub(super) const CIRCLES: &[Circle] = &[];

/// A circle that is allowed.
pub(super) struct Circle {
    /// Its files, or folders (ending with `/`) of them.
    pub(super) files: &'static [&'static str],
    /// How many files it has at most.
    pub(super) at_most: usize,
    /// Why it is one thought, or what it waits for.
    pub(super) why: &'static str,
}
