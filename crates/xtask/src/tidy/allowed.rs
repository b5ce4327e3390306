//! Exceptions from rules. Each list may only get shorter: an exception that nothing needs is a
//! problem as well.

/// Files with positions in lists where ids belong, and how many: none is left.
pub(super) const INDICES: &[(&str, usize)] = &[];

/// Modules that several test programs share, each its own part of them: no lint that expects dead
/// code holds in all of them.
pub(super) const ALLOWS: &[&str] = &[
    "tests/outside/motion-rapier/src/main.rs",
    "tests/window_support/mod.rs",
];

/// Files of over 600 lines.
pub(super) const LONG: &[&str] = &["tests/cli.rs"];

/// Circles between files of a crate; each allowance is for one.
pub(super) const CIRCLES: &[Circle] = &[
    Circle {
        files: &["crates/answer/src/"],
        at_most: 5,
        why: "one thought: the answer, what it keeps of pairs, of cards and of trials, and its order",
    },
    Circle {
        files: &["crates/drawing/src/handle.rs", "crates/drawing/src/list.rs"],
        at_most: 2,
        why: "a display list has grips, and a grip is asked for by a list",
    },
    Circle {
        files: &["crates/export/src/pdf.rs", "crates/export/src/pdf/"],
        at_most: 2,
        why: "one thought: a PDF and the surface of its pages",
    },
    Circle {
        files: &[
            "crates/session/src/action_table.rs",
            "crates/session/src/action_table/",
        ],
        at_most: 2,
        why: "the table of actions and the names of its rows",
    },
    Circle {
        files: &[
            "crates/words/src/names.rs",
            "crates/words/src/place.rs",
            "crates/words/src/speaker.rs",
        ],
        at_most: 3,
        why: "a speaker says places by names, and names are said by a speaker",
    },
    Circle {
        files: &[
            "crates/model/src/cabinet.rs",
            "crates/model/src/card.rs",
            "crates/model/src/door.rs",
            "crates/model/src/linkage.rs",
            "crates/model/src/opening.rs",
            "crates/model/src/record.rs",
        ],
        at_most: 6,
        why: "box, openings, door and card take small types from each other",
    },
    Circle {
        files: &[
            "crates/model/src/card_draft.rs",
            "crates/model/src/card_draft/",
            "crates/model/src/field.rs",
            "crates/model/src/field/",
            "crates/model/src/file.rs",
            "crates/model/src/file/",
            "crates/model/src/job.rs",
            "crates/model/src/validate.rs",
            "crates/model/src/validate/",
        ],
        at_most: 27,
        why: "to be cut: the table of fields, validation by it, the draft and the reader know each other",
    },
    Circle {
        files: &["crates/model/src/change.rs", "crates/model/src/change/"],
        at_most: 8,
        why: "the list of named changes, and what they share",
    },
    Circle {
        files: &["crates/model/src/length.rs", "crates/model/src/length/"],
        at_most: 3,
        why: "one thought: a length's unit with its two forms as text",
    },
    Circle {
        files: &[
            "crates/rules/src/chosen_work.rs",
            "crates/rules/src/door_work.rs",
            "crates/rules/src/fitted.rs",
            "crates/rules/src/inspection.rs",
            "crates/rules/src/mechanics.rs",
            "crates/rules/src/placement/door_motions.rs",
        ],
        at_most: 6,
        why: "to be cut: a report keeps what is worked out for doors alike, which reads the report",
    },
    Circle {
        files: &["crates/rules/src/checks.rs", "crates/rules/src/checks/"],
        at_most: 52,
        why: "the registry names every check, and checks take their context from it",
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
        files: &[
            "crates/session/src/export.rs",
            "crates/session/src/records.rs",
        ],
        at_most: 2,
        why: "an export makes records, and a record names the choice of the export",
    },
    Circle {
        files: &["src/window/"],
        at_most: 57,
        why: "waits for the views: the window's parts reach each other through the whole program",
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
