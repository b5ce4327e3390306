//! Everything that can be done in the window, as data.
//!
//! What is shown queues commands; after the frame they are applied in one place. Menus, buttons,
//! shortcuts and tests all go this way.

use std::path::PathBuf;

use egui::{Key, KeyboardShortcut, Modifiers, Vec2};
use flapwright_model::edit::Edit;

use super::card_editor::CardCommand;
use super::export_job::ExportChoice;

/// One thing to do.
#[derive(Debug, Clone, PartialEq)]
pub enum Command {
    /// What menus and keys can say without a number.
    Ui(UiCommand),
    /// A change of the job.
    Edit(JobEdit),
    /// A remedy of a finding, as one step.
    ApplyRemedy {
        /// Index of the finding in the list.
        finding: usize,
        /// Index of its remedy.
        remedy: usize,
    },
    /// Keeps the preview of a remedy in the drawings, or switches it off.
    KeepPreview {
        /// Index of the finding in the list.
        finding: usize,
        /// Index of its remedy.
        remedy: usize,
    },
    /// Asks why that finding is accepted.
    AskAccept(usize),
    /// Accepts a finding as it stands.
    Accept {
        /// Index of the finding in the list.
        finding: usize,
        /// Why; needed.
        reason: String,
    },
    /// Takes the acceptance of that finding back.
    TakeBack(usize),
    /// Shows the page of the check of that name.
    ShowPage(String),
    /// Shows another box.
    SelectBox(usize),
    /// Shows another opening of the box.
    SelectOpening(usize),
    /// Lights the places of a finding, or none.
    SelectFinding(Option<usize>),
    /// Moves the door of the section: 0 closed, 1 open.
    SetOpen(f64),
    /// Moves a drawing.
    Move {
        /// Which one.
        view: View,
        /// By how much, screen points.
        by: Vec2,
    },
    /// Makes a drawing larger or smaller with one point kept in place.
    Zoom {
        /// Which one.
        view: View,
        /// By how much.
        factor: f64,
        /// The point that stays, from the drawing's upper left corner.
        at: Vec2,
    },
    /// Fits one drawing into its place.
    Fit(View),
    /// Opens a file that is named already, e.g. one dropped onto the window.
    OpenPath(PathBuf),
    /// Answers the question about unsaved changes.
    Unsaved(UnsavedAnswer),
    /// Answers the question for a path; `None` gives up.
    TypedPath(Option<PathBuf>),
    /// Asks for a folder and writes the sheets there.
    Export(Box<ExportChoice>),
    /// Stops writing.
    StopExport,
    /// Shows a folder with the system's own program.
    OpenFolder(PathBuf),
    /// Gives the shown door another size, its bores with it, as one step.
    TakeSize {
        /// Name of the card.
        card: String,
        /// Name of its size.
        size: String,
    },
    /// Begins the search for anchors that the open question asks for.
    SearchStruts,
    /// Stops it.
    StopSearch,
    /// Takes over the anchors of that row of its answers, as one step.
    UseMounts(usize),
    /// Something with fitting cards.
    Card(CardCommand),
    /// Closes the message, list or question that is open.
    CloseDialog,
}

/// A change of the job that a field or button asks for.
#[derive(Debug, Clone, PartialEq)]
pub struct JobEdit {
    /// What undo calls it.
    pub label: String,
    /// The change.
    pub edit: Edit,
    /// The field that asks, which shows the problem when the change is refused.
    pub field: Option<egui::Id>,
    /// The text that was typed there.
    pub typed: Option<String>,
    /// Whether more of the same is to come: a drag, or a run of keys.
    pub running: bool,
}

/// One of the two drawings.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum View {
    /// The box from the front.
    Elevation,
    /// The box cut from front to back.
    Section,
}

/// What is to become of unsaved changes.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum UnsavedAnswer {
    /// Save them, then go on.
    Save,
    /// Drop them and go on.
    Discard,
    /// Do not go on.
    Cancel,
}

/// What menus, buttons and keys can say.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum UiCommand {
    /// A new job with the materials and cards of this one.
    New,
    /// Opens a file.
    Open,
    /// Writes the job into its file.
    Save,
    /// Writes the job into another file.
    SaveAs,
    /// Asks how and where to write the drilling sheets.
    ExportSheets,
    /// Closes the window.
    Close,
    /// Takes the last change back.
    Undo,
    /// Does it again.
    Redo,
    /// Adds a box.
    AddBox,
    /// Adds a copy of the shown box.
    DuplicateBox,
    /// Removes the shown box.
    RemoveBox,
    /// Fits both drawings.
    FitViews,
    /// Makes both drawings larger.
    ZoomIn,
    /// Makes both drawings smaller.
    ZoomOut,
    /// Shows the dimensions of the drawings, or leaves them out.
    ShowDimensions,
    /// Runs the door from closed to open, or stops it.
    PlayDoor,
    /// Shows millimetres.
    UseMillimetres,
    /// Shows inches.
    UseInches,
    /// Goes to the next finding.
    NextFinding,
    /// Goes to the finding before.
    PreviousFinding,
    /// Applies every safe remedy.
    ApplySafe,
    /// Asks why the lit finding is accepted.
    AcceptFinding,
    /// Shows the page of the lit finding's check.
    ExplainFinding,
    /// Shows the findings at the right.
    ShowFindings,
    /// Shows the verdicts on the sizes at the right.
    ShowSizes,
    /// Shows the forces at the right.
    ShowForces,
    /// Asks where the anchors of the door's gas struts may be.
    PlaceStrut,
    /// Light colours.
    LightTheme,
    /// Dark colours.
    DarkTheme,
    /// The colours of the system.
    SystemTheme,
    /// Shows the fitting cards at hand: blanks, half typed ones, the job's, the library.
    ShowCards,
    /// Asks for a fitting card's file and reads it.
    ImportCard,
    /// Shows all keys.
    ShowShortcuts,
    /// Says what this program is.
    ShowAbout,
}

const CTRL: Modifiers = Modifiers::COMMAND;
const CTRL_SHIFT: Modifiers = Modifiers::COMMAND.plus(Modifiers::SHIFT);
const PLAIN: Modifiers = Modifiers::NONE;

const fn key(modifiers: Modifiers, key: Key) -> KeyboardShortcut {
    KeyboardShortcut::new(modifiers, key)
}

impl UiCommand {
    /// All of them, in the order in which the list of keys shows them.
    pub const ALL: [Self; 34] = [
        Self::New,
        Self::Open,
        Self::Save,
        Self::SaveAs,
        Self::ExportSheets,
        Self::Close,
        Self::Undo,
        Self::Redo,
        Self::AddBox,
        Self::DuplicateBox,
        Self::RemoveBox,
        Self::FitViews,
        Self::ZoomIn,
        Self::ZoomOut,
        Self::ShowDimensions,
        Self::PlayDoor,
        Self::UseMillimetres,
        Self::UseInches,
        Self::NextFinding,
        Self::PreviousFinding,
        Self::ApplySafe,
        Self::AcceptFinding,
        Self::ExplainFinding,
        Self::ShowFindings,
        Self::ShowSizes,
        Self::ShowForces,
        Self::PlaceStrut,
        Self::LightTheme,
        Self::DarkTheme,
        Self::SystemTheme,
        Self::ShowCards,
        Self::ImportCard,
        Self::ShowShortcuts,
        Self::ShowAbout,
    ];

    /// Its words in menus and on buttons.
    #[must_use]
    pub const fn label(self) -> &'static str {
        self.words().0
    }

    /// What it does, in a sentence.
    #[must_use]
    pub const fn tooltip(self) -> &'static str {
        self.words().1
    }

    const fn words(self) -> (&'static str, &'static str) {
        match self {
            Self::New => (
                "New job",
                "Start an empty job with the materials and cards of this one.",
            ),
            Self::Open => ("Open…", "Open a job file."),
            Self::Save => ("Save", "Write the job into its file."),
            Self::SaveAs => ("Save as…", "Write the job into another file."),
            Self::ExportSheets => (
                "Export sheets…",
                "Write the drilling sheets as PDF or PNG into a folder.",
            ),
            Self::Close => ("Quit", "Close the window; unsaved changes are asked about."),
            Self::Undo => ("Undo", "Take the last change back."),
            Self::Redo => ("Redo", "Do the change again that was taken back last."),
            Self::AddBox => ("Add box", "Add a plain box after the shown one."),
            Self::DuplicateBox => ("Duplicate box", "Add a copy of the shown box after it."),
            Self::RemoveBox => ("Remove box", "Take the shown box out of the job."),
            Self::FitViews => ("Fit drawings", "Show all of both drawings."),
            Self::ZoomIn => ("Zoom in", "Make both drawings larger."),
            Self::ZoomOut => ("Zoom out", "Make both drawings smaller."),
            Self::ShowDimensions => (
                "Dimensions",
                "Show the dimensions of the drawings, or leave them out.",
            ),
            Self::PlayDoor => ("Play", "Run the door from closed to open, or stop it."),
            Self::UseMillimetres => ("mm", "Show and read lengths in millimetres."),
            Self::UseInches => ("inch", "Show and read lengths in inches."),
            Self::NextFinding => ("Next finding", "Light the next finding of the list."),
            Self::PreviousFinding => ("Previous finding", "Light the finding before this one."),
            Self::ApplySafe => (
                "Apply all safe remedies",
                "Apply every remedy that clears its finding and adds no stop, as one step.",
            ),
            Self::AcceptFinding => (
                "Accept the lit finding…",
                "Keep the lit finding as it is, with a reason that is printed on the sheets.",
            ),
            Self::ExplainFinding => (
                "Explain the lit finding",
                "What its check looks at, why it matters, what can be done.",
            ),
            Self::ShowFindings => ("Show findings", "Show at the right what the checks found."),
            Self::ShowSizes => (
                "Show sizes",
                "Show at the right what each size says to this door.",
            ),
            Self::ShowForces => (
                "Show forces",
                "Show at the right what the hand feels and what the door does by itself.",
            ),
            Self::PlaceStrut => (
                "Place the strut…",
                "Search for the places of the gas strut's anchors that are easiest on the hand.",
            ),
            Self::LightTheme => ("Light colours", "Dark ink on light ground."),
            Self::DarkTheme => ("Dark colours", "Light ink on dark ground."),
            Self::SystemTheme => (
                "Colours of the system",
                "Light or dark as the desktop has it.",
            ),
            Self::ShowCards => (
                "Fitting cards…",
                "New card from a blank, cards of this job, half typed cards, the library.",
            ),
            Self::ImportCard => ("Import a card…", "Read a fitting card from its file."),
            Self::ShowShortcuts => ("Keys", "List all keys."),
            Self::ShowAbout => ("About Flapwright", "What this program is."),
        }
    }

    /// Its keys; the first one is shown beside its words.
    #[must_use]
    pub const fn shortcuts(self) -> &'static [KeyboardShortcut] {
        match self {
            Self::New => &const { [key(CTRL, Key::N)] },
            Self::Open => &const { [key(CTRL, Key::O)] },
            Self::Save => &const { [key(CTRL, Key::S)] },
            Self::SaveAs => &const { [key(CTRL_SHIFT, Key::S)] },
            Self::ExportSheets => &const { [key(CTRL, Key::E)] },
            Self::Close => &const { [key(CTRL, Key::Q)] },
            Self::Undo => &const { [key(CTRL, Key::Z)] },
            Self::Redo => &const { [key(CTRL_SHIFT, Key::Z), key(CTRL, Key::Y)] },
            Self::AddBox => &const { [key(CTRL, Key::B)] },
            Self::DuplicateBox => &const { [key(CTRL, Key::D)] },
            Self::FitViews => &const { [key(PLAIN, Key::F)] },
            Self::ZoomIn => &const { [key(PLAIN, Key::Plus), key(PLAIN, Key::Equals)] },
            Self::ZoomOut => &const { [key(PLAIN, Key::Minus)] },
            Self::ShowDimensions => &const { [key(PLAIN, Key::D)] },
            Self::PlayDoor => &const { [key(PLAIN, Key::P)] },
            Self::NextFinding => &const { [key(PLAIN, Key::F8)] },
            Self::PreviousFinding => &const { [key(Modifiers::SHIFT, Key::F8)] },
            Self::ApplySafe => &const { [key(CTRL, Key::R)] },
            Self::AcceptFinding => &const { [key(CTRL_SHIFT, Key::A)] },
            Self::ExplainFinding => &const { [key(Modifiers::SHIFT, Key::F1)] },
            Self::ShowCards => &const { [key(CTRL, Key::K)] },
            Self::ShowShortcuts => &const { [key(PLAIN, Key::F1)] },
            Self::ShowFindings => &const { [key(CTRL, Key::Num1)] },
            Self::ShowSizes => &const { [key(CTRL, Key::Num2)] },
            Self::ShowForces => &const { [key(CTRL, Key::Num3)] },
            Self::PlaceStrut => &const { [key(CTRL, Key::T)] },
            Self::RemoveBox
            | Self::UseMillimetres
            | Self::UseInches
            | Self::LightTheme
            | Self::DarkTheme
            | Self::SystemTheme
            | Self::ImportCard
            | Self::ShowAbout => &[],
        }
    }

    /// Whether a key of it would type into a text field.
    #[must_use]
    pub const fn types_text(self) -> bool {
        matches!(
            self,
            Self::FitViews | Self::ZoomIn | Self::ZoomOut | Self::ShowDimensions | Self::PlayDoor
        )
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn no_key_stands_for_two_commands() {
        let mut seen: Vec<(KeyboardShortcut, UiCommand)> = Vec::new();
        for command in UiCommand::ALL {
            for shortcut in command.shortcuts() {
                let clash = seen.iter().find(|(other, _)| other == shortcut);
                assert_eq!(clash, None, "{command:?}");
                seen.push((*shortcut, command));
            }
        }
    }

    #[test]
    fn every_command_is_listed_once_with_its_own_words() {
        for (i, command) in UiCommand::ALL.into_iter().enumerate() {
            assert!(!command.label().is_empty() && command.tooltip().ends_with('.'));
            for other in UiCommand::ALL.into_iter().skip(i + 1) {
                assert_ne!(command, other);
                assert_ne!(command.label(), other.label());
            }
        }
    }

    #[test]
    fn a_bare_key_that_types_is_marked_as_typing() {
        for command in UiCommand::ALL {
            let bare = command.shortcuts().iter().any(|shortcut| {
                shortcut.modifiers == PLAIN && !matches!(shortcut.logical_key, Key::F1 | Key::F8)
            });
            assert_eq!(bare, command.types_text(), "{command:?}");
        }
    }
}
