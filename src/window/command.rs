//! Everything that can be asked for in the window, as data.
//!
//! What is shown queues commands; after the frame they are done in one place. What the job or the
//! selection needs is an [`Action`] of the session; what stands here beside it is of the window
//! alone: questions, drawings, cards that are typed.

use std::path::PathBuf;

use egui::Vec2;
use flapwright_model::edit::Edit;
use flapwright_session::action::Action;
use flapwright_session::action_table::ActionId;
use flapwright_session::export::ExportChoice;
use flapwright_session::finding_key::FindingKey;

use super::card_editor::CardCommand;

/// One thing to do.
#[derive(Debug, Clone, PartialEq)]
pub enum Command {
    /// What was chosen from a menu, by a button or by keys.
    Choose(ActionId),
    /// An action of the session.
    Do(Action),
    /// A change of the job that a field asks for.
    Edit(JobEdit),
    /// Keeps the preview of a remedy in the drawings, or switches it off.
    KeepPreview {
        /// The finding.
        finding: FindingKey,
        /// Which of its remedies.
        remedy: usize,
    },
    /// Asks why that finding is accepted.
    AskAccept(FindingKey),
    /// Shows the page of the check of that name.
    ShowPage(String),
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
    /// Shows a folder with the system's own program.
    OpenFolder(PathBuf),
    /// Something with fitting cards.
    Card(CardCommand),
    /// Closes the message, list or question that is open.
    CloseDialog,
}

impl Command {
    /// Whether a field that is typed in has to give up its text first.
    pub(crate) const fn waits_for_typing(&self) -> bool {
        !matches!(
            self,
            Self::Edit(_)
                | Self::Do(Action::OpenDoor(_))
                | Self::Move { .. }
                | Self::Zoom { .. }
                | Self::Fit(_)
        )
    }
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
