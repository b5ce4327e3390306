//! The one table of what menus, keys and buttons can do.
//!
//! Menus, keys, tooltips, the list of keys and the tests read it; when something can be done is said
//! here too and [asked of the session](crate::Session::available).

mod id;

pub use self::id::ActionId;
use crate::keys::{Key, Keys};

/// One entry of a menu.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct ActionInfo {
    /// What it is called in code.
    pub id: ActionId,
    /// What it is called in writing, kebab-case; it does not change.
    pub name: &'static str,
    /// Its words in menus and on buttons.
    pub title: &'static str,
    /// What it does, in a sentence.
    pub tooltip: &'static str,
    /// What it belongs with.
    pub group: Group,
    /// Its keys; the first one is shown beside its words.
    pub keys: &'static [Keys],
    /// When it can be done.
    pub when: When,
    /// Whether it may ask for a file, so that it waits while another such question is open.
    pub asks_for_file: bool,
}

/// Actions that stand together in a menu, without a line between them.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Group {
    /// Other jobs.
    Jobs,
    /// Writing this one.
    Saving,
    /// What goes to the workshop.
    Exports,
    /// The end.
    Leaving,
    /// Steps.
    History,
    /// Boxes of the job.
    Boxes,
    /// What can be done about findings and fittings.
    Remedies,
    /// Both drawings.
    Drawings,
    /// What is shown at the right.
    Panels,
    /// Going through the findings.
    Findings,
    /// Light or dark.
    Colours,
    /// Millimetres or inches; no menu has them.
    Units,
    /// Fitting cards.
    Cards,
    /// Help.
    Help,
}

/// The menus: words, and the groups in order.
pub const MENUS: [(&str, &[Group]); 5] = [
    (
        "File",
        &[Group::Jobs, Group::Saving, Group::Exports, Group::Leaving],
    ),
    ("Edit", &[Group::History, Group::Boxes, Group::Remedies]),
    (
        "View",
        &[
            Group::Drawings,
            Group::Panels,
            Group::Findings,
            Group::Colours,
        ],
    ),
    ("Cards", &[Group::Cards]),
    ("Help", &[Group::Help]),
];

impl Group {
    /// What belongs to it, in order.
    pub fn actions(self) -> impl Iterator<Item = &'static ActionInfo> {
        ACTIONS.iter().filter(move |it| it.group == self)
    }
}

/// When something can be done.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum When {
    /// At any time.
    Always,
    /// While the job has a box.
    SomeBox,
    /// While the job has a box and nothing is being written.
    CanExport,
    /// After a change.
    SomethingToUndo,
    /// After undo.
    SomethingToRedo,
    /// While lengths are not in millimetres.
    NotMillimetres,
    /// While lengths are not in inches.
    NotInches,
    /// While a finding is open.
    OpenFinding,
    /// While an open finding has a safe remedy.
    SafeRemedy,
    /// While an open finding is selected.
    OpenFindingSelected,
    /// While a finding is selected.
    FindingSelected,
    /// While the shown door has a gas strut.
    StrutToPlace,
}

/// All of them, in the order in which the list of keys shows them.
pub const ACTIONS: [ActionInfo; 34] = [
    ActionInfo {
        id: ActionId::New,
        name: "new-job",
        title: "New job",
        tooltip: "Start an empty job with the materials and cards of this one.",
        group: Group::Jobs,
        keys: &[Keys::ctrl(Key::Letter('N'))],
        when: When::Always,
        asks_for_file: true,
    },
    ActionInfo {
        id: ActionId::Open,
        name: "open",
        title: "Open…",
        tooltip: "Open a job file.",
        group: Group::Jobs,
        keys: &[Keys::ctrl(Key::Letter('O'))],
        when: When::Always,
        asks_for_file: true,
    },
    ActionInfo {
        id: ActionId::Save,
        name: "save",
        title: "Save",
        tooltip: "Write the job into its file.",
        group: Group::Saving,
        keys: &[Keys::ctrl(Key::Letter('S'))],
        when: When::Always,
        asks_for_file: true,
    },
    ActionInfo {
        id: ActionId::SaveAs,
        name: "save-as",
        title: "Save as…",
        tooltip: "Write the job into another file.",
        group: Group::Saving,
        keys: &[Keys::ctrl_shift(Key::Letter('S'))],
        when: When::Always,
        asks_for_file: true,
    },
    ActionInfo {
        id: ActionId::ExportSheets,
        name: "export-sheets",
        title: "Export sheets…",
        tooltip: "Write the drilling sheets as PDF or PNG into a folder.",
        group: Group::Exports,
        keys: &[Keys::ctrl(Key::Letter('E'))],
        when: When::CanExport,
        asks_for_file: true,
    },
    ActionInfo {
        id: ActionId::Close,
        name: "quit",
        title: "Quit",
        tooltip: "Close the window; unsaved changes are asked about.",
        group: Group::Leaving,
        keys: &[Keys::ctrl(Key::Letter('Q'))],
        when: When::Always,
        asks_for_file: true,
    },
    ActionInfo {
        id: ActionId::Undo,
        name: "undo",
        title: "Undo",
        tooltip: "Take the last change back.",
        group: Group::History,
        keys: &[Keys::ctrl(Key::Letter('Z'))],
        when: When::SomethingToUndo,
        asks_for_file: false,
    },
    ActionInfo {
        id: ActionId::Redo,
        name: "redo",
        title: "Redo",
        tooltip: "Do the change again that was taken back last.",
        group: Group::History,
        keys: &[
            Keys::ctrl_shift(Key::Letter('Z')),
            Keys::ctrl(Key::Letter('Y')),
        ],
        when: When::SomethingToRedo,
        asks_for_file: false,
    },
    ActionInfo {
        id: ActionId::AddBox,
        name: "add-box",
        title: "Add box",
        tooltip: "Add a plain box after the shown one.",
        group: Group::Boxes,
        keys: &[Keys::ctrl(Key::Letter('B'))],
        when: When::Always,
        asks_for_file: false,
    },
    ActionInfo {
        id: ActionId::DuplicateBox,
        name: "duplicate-box",
        title: "Duplicate box",
        tooltip: "Add a copy of the shown box after it.",
        group: Group::Boxes,
        keys: &[Keys::ctrl(Key::Letter('D'))],
        when: When::SomeBox,
        asks_for_file: false,
    },
    ActionInfo {
        id: ActionId::RemoveBox,
        name: "remove-box",
        title: "Remove box",
        tooltip: "Take the shown box out of the job.",
        group: Group::Boxes,
        keys: &[],
        when: When::SomeBox,
        asks_for_file: false,
    },
    ActionInfo {
        id: ActionId::FitViews,
        name: "fit-drawings",
        title: "Fit drawings",
        tooltip: "Show all of both drawings.",
        group: Group::Drawings,
        keys: &[Keys::plain(Key::Letter('F'))],
        when: When::SomeBox,
        asks_for_file: false,
    },
    ActionInfo {
        id: ActionId::ZoomIn,
        name: "zoom-in",
        title: "Zoom in",
        tooltip: "Make both drawings larger.",
        group: Group::Drawings,
        keys: &[Keys::plain(Key::Plus), Keys::plain(Key::Equals)],
        when: When::SomeBox,
        asks_for_file: false,
    },
    ActionInfo {
        id: ActionId::ZoomOut,
        name: "zoom-out",
        title: "Zoom out",
        tooltip: "Make both drawings smaller.",
        group: Group::Drawings,
        keys: &[Keys::plain(Key::Minus)],
        when: When::SomeBox,
        asks_for_file: false,
    },
    ActionInfo {
        id: ActionId::ShowDimensions,
        name: "dimensions",
        title: "Dimensions",
        tooltip: "Show the dimensions of the drawings, or leave them out.",
        group: Group::Drawings,
        keys: &[Keys::plain(Key::Letter('D'))],
        when: When::SomeBox,
        asks_for_file: false,
    },
    ActionInfo {
        id: ActionId::PlayDoor,
        name: "run-door",
        title: "Play",
        tooltip: "Run the door from closed to open, or stop it.",
        group: Group::Drawings,
        keys: &[Keys::plain(Key::Letter('P'))],
        when: When::SomeBox,
        asks_for_file: false,
    },
    ActionInfo {
        id: ActionId::UseMillimetres,
        name: "millimetres",
        title: "mm",
        tooltip: "Show and read lengths in millimetres.",
        group: Group::Units,
        keys: &[],
        when: When::NotMillimetres,
        asks_for_file: false,
    },
    ActionInfo {
        id: ActionId::UseInches,
        name: "inches",
        title: "inch",
        tooltip: "Show and read lengths in inches.",
        group: Group::Units,
        keys: &[],
        when: When::NotInches,
        asks_for_file: false,
    },
    ActionInfo {
        id: ActionId::NextFinding,
        name: "next-finding",
        title: "Next finding",
        tooltip: "Select the next finding of the list.",
        group: Group::Findings,
        keys: &[Keys::plain(Key::Function(8))],
        when: When::OpenFinding,
        asks_for_file: false,
    },
    ActionInfo {
        id: ActionId::PreviousFinding,
        name: "previous-finding",
        title: "Previous finding",
        tooltip: "Select the finding before this one.",
        group: Group::Findings,
        keys: &[Keys::shift(Key::Function(8))],
        when: When::OpenFinding,
        asks_for_file: false,
    },
    ActionInfo {
        id: ActionId::ApplySafe,
        name: "apply-safe",
        title: "Apply all safe remedies",
        tooltip: "Apply every remedy that clears its finding and adds no stop, as one step.",
        group: Group::Remedies,
        keys: &[Keys::ctrl(Key::Letter('R'))],
        when: When::SafeRemedy,
        asks_for_file: false,
    },
    ActionInfo {
        id: ActionId::AcceptFinding,
        name: "accept-finding",
        title: "Accept the selected finding…",
        tooltip: "Keep the selected finding as it is, with a reason that is printed on the sheets.",
        group: Group::Remedies,
        keys: &[Keys::ctrl_shift(Key::Letter('A'))],
        when: When::OpenFindingSelected,
        asks_for_file: false,
    },
    ActionInfo {
        id: ActionId::ExplainFinding,
        name: "explain-finding",
        title: "Explain the selected finding",
        tooltip: "What its check looks at, why it matters, what can be done.",
        group: Group::Findings,
        keys: &[Keys::shift(Key::Function(1))],
        when: When::FindingSelected,
        asks_for_file: false,
    },
    ActionInfo {
        id: ActionId::ShowFindings,
        name: "show-findings",
        title: "Show findings",
        tooltip: "Show at the right what the checks found.",
        group: Group::Panels,
        keys: &[Keys::ctrl(Key::Digit(1))],
        when: When::Always,
        asks_for_file: false,
    },
    ActionInfo {
        id: ActionId::ShowSizes,
        name: "show-sizes",
        title: "Show sizes",
        tooltip: "Show at the right what each size says to this door.",
        group: Group::Panels,
        keys: &[Keys::ctrl(Key::Digit(2))],
        when: When::Always,
        asks_for_file: false,
    },
    ActionInfo {
        id: ActionId::ShowForces,
        name: "show-forces",
        title: "Show forces",
        tooltip: "Show at the right what the hand feels and what the door does by itself.",
        group: Group::Panels,
        keys: &[Keys::ctrl(Key::Digit(3))],
        when: When::Always,
        asks_for_file: false,
    },
    ActionInfo {
        id: ActionId::PlaceStrut,
        name: "place-strut",
        title: "Place the strut…",
        tooltip: "Search for the places of the gas strut's mounts that are easiest on the hand.",
        group: Group::Remedies,
        keys: &[Keys::ctrl(Key::Letter('T'))],
        when: When::StrutToPlace,
        asks_for_file: false,
    },
    ActionInfo {
        id: ActionId::LightTheme,
        name: "light-colours",
        title: "Light colours",
        tooltip: "Dark ink on light ground.",
        group: Group::Colours,
        keys: &[],
        when: When::Always,
        asks_for_file: false,
    },
    ActionInfo {
        id: ActionId::DarkTheme,
        name: "dark-colours",
        title: "Dark colours",
        tooltip: "Light ink on dark ground.",
        group: Group::Colours,
        keys: &[],
        when: When::Always,
        asks_for_file: false,
    },
    ActionInfo {
        id: ActionId::SystemTheme,
        name: "system-colours",
        title: "Colours of the system",
        tooltip: "Light or dark as the desktop has it.",
        group: Group::Colours,
        keys: &[],
        when: When::Always,
        asks_for_file: false,
    },
    ActionInfo {
        id: ActionId::ShowCards,
        name: "show-cards",
        title: "Fitting cards…",
        tooltip: "New card from a blank, cards of this job, unfinished cards, the library.",
        group: Group::Cards,
        keys: &[Keys::ctrl(Key::Letter('K'))],
        when: When::Always,
        asks_for_file: false,
    },
    ActionInfo {
        id: ActionId::ImportCard,
        name: "import-card",
        title: "Import a card…",
        tooltip: "Read a fitting card from its file.",
        group: Group::Cards,
        keys: &[],
        when: When::Always,
        asks_for_file: true,
    },
    ActionInfo {
        id: ActionId::ShowShortcuts,
        name: "keys",
        title: "Keys",
        tooltip: "List all keys.",
        group: Group::Help,
        keys: &[Keys::plain(Key::Function(1))],
        when: When::Always,
        asks_for_file: false,
    },
    ActionInfo {
        id: ActionId::ShowAbout,
        name: "about",
        title: "About Flapwright",
        tooltip: "What this program is.",
        group: Group::Help,
        keys: &[],
        when: When::Always,
        asks_for_file: false,
    },
];

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_action_has_the_row_of_its_own_number() {
        for (index, info) in ACTIONS.iter().enumerate() {
            assert_eq!(info.id as usize, index, "{info:?}");
            assert_eq!(info.id.info(), info);
        }
    }

    #[test]
    fn no_key_name_or_title_stands_for_two_actions() {
        for (i, info) in ACTIONS.iter().enumerate() {
            assert!(!info.title.is_empty() && info.tooltip.ends_with('.'));
            for other in &ACTIONS[i + 1..] {
                assert_ne!(info.name, other.name);
                assert_ne!(info.title, other.title);
                assert!(!info.keys.iter().any(|keys| other.keys.contains(keys)));
            }
        }
    }

    #[test]
    fn every_action_but_the_units_is_in_one_menu() {
        for info in &ACTIONS {
            let menus = MENUS.iter().flat_map(|(_, groups)| *groups);
            let count = menus.filter(|group| **group == info.group).count();
            assert_eq!(count, usize::from(info.group != Group::Units), "{info:?}");
        }
    }
}
