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

/// Circles between files of a crate; each allowance is for one.
pub(super) const CIRCLES: &[Circle] = &[
    Circle {
        files: &[
            "crates/model/src/cabinet.rs",
            "crates/model/src/card.rs",
            "crates/model/src/door.rs",
            "crates/model/src/linkage.rs",
            "crates/model/src/record.rs",
        ],
        at_most: 5,
        why: "waits for the box as a tree: box, door and card take small types from each other",
    },
    Circle {
        files: &[
            "crates/model/src/card_draft.rs",
            "crates/model/src/card_draft/",
        ],
        at_most: 3,
        why: "waits for the table of fields: the draft's entries know the draft",
    },
    Circle {
        files: &["crates/model/src/length.rs", "crates/model/src/length/"],
        at_most: 3,
        why: "one thought: a length's unit with its two forms as text",
    },
    Circle {
        files: &["crates/model/src/validate.rs", "crates/model/src/validate/"],
        at_most: 3,
        why: "one thought: the validator and what it walks through",
    },
    Circle {
        files: &["crates/rules/src/checks.rs", "crates/rules/src/checks/"],
        at_most: 52,
        why: "the registry names every check, and checks take their context from it",
    },
    Circle {
        files: &[
            "crates/rules/src/inspect.rs",
            "crates/rules/src/remedy_safety.rs",
        ],
        at_most: 2,
        why: "a remedy is safe if `inspect` says so of the job with it",
    },
    Circle {
        files: &[
            "crates/rules/src/plausibility.rs",
            "crates/rules/src/plausibility/",
        ],
        at_most: 5,
        why: "the list of looks at a card, and what they share",
    },
    Circle {
        files: &["src/cli.rs", "src/cli/"],
        at_most: 8,
        why: "the list of commands, and what they share",
    },
    Circle {
        files: &[
            "src/window/card_editor/board.rs",
            "src/window/card_editor/table.rs",
            "src/window/card_editor/table_keys.rs",
        ],
        at_most: 3,
        why: "waits for the window in rooms: the board and the table that stands on it",
    },
    Circle {
        files: &["src/window/export_job.rs", "src/window/records.rs"],
        at_most: 2,
        why: "waits for the session: an export makes records",
    },
    Circle {
        files: &["src/window/"],
        at_most: 55,
        why: "waits for the session: the window's parts reach each other through the whole program",
    },
];

/// A circle that is allowed.
pub(super) struct Circle {
    /// Its files, or folders (ending with `/`) of them.
    pub(super) files: &'static [&'static str],
    /// How many files it has at most.
    pub(super) at_most: usize,
    /// Why it is one thought, or what it waits for.
    pub(super) why: &'static str,
}
