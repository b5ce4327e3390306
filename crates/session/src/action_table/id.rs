//! What the rows of the table are called, and which of them are actions already.

use flapwright_model::length::Unit;

use super::{ACTIONS, ActionInfo};
use crate::action::Action;
use crate::keys::Keys;
use crate::selection::SideTab;

/// What menus, buttons and keys can choose. Some are [actions](Self::action) of a session; others
/// begin with a question or are of a window alone.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum ActionId {
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
    /// Asks why the selected finding is accepted.
    AcceptFinding,
    /// Shows the page of the selected finding's check.
    ExplainFinding,
    /// Shows the findings at the right.
    ShowFindings,
    /// Shows the verdicts on the sizes at the right.
    ShowSizes,
    /// Shows the forces at the right.
    ShowForces,
    /// Asks where the mounts of the door's gas struts may be.
    PlaceStrut,
    /// Light colours.
    LightTheme,
    /// Dark colours.
    DarkTheme,
    /// The colours of the system.
    SystemTheme,
    /// Shows the fitting cards at hand.
    ShowCards,
    /// Asks for a fitting card's file and reads it.
    ImportCard,
    /// Shows all keys.
    ShowShortcuts,
    /// Says what this program is.
    ShowAbout,
}

impl ActionId {
    /// Its row of the table, which has one for each in the order of the declaration.
    #[must_use]
    pub const fn info(self) -> &'static ActionInfo {
        &ACTIONS[self as usize]
    }

    /// Its words in menus and on buttons.
    #[must_use]
    pub const fn title(self) -> &'static str {
        self.info().title
    }

    /// What it does, in a sentence.
    #[must_use]
    pub const fn tooltip(self) -> &'static str {
        self.info().tooltip
    }

    /// Its keys.
    #[must_use]
    pub const fn keys(self) -> &'static [Keys] {
        self.info().keys
    }

    /// The action, where nothing more must be asked or known.
    #[must_use]
    pub const fn action(self) -> Option<Action> {
        Some(match self {
            Self::Undo => Action::Undo,
            Self::Redo => Action::Redo,
            Self::AddBox => Action::AddBox,
            Self::DuplicateBox => Action::DuplicateBox,
            Self::RemoveBox => Action::RemoveBox,
            Self::ShowDimensions => Action::ToggleDimensions,
            Self::PlayDoor => Action::RunDoor,
            Self::UseMillimetres => Action::UseUnit(Unit::Millimetre),
            Self::UseInches => Action::UseUnit(Unit::Inch),
            Self::NextFinding => Action::NextFinding,
            Self::PreviousFinding => Action::PreviousFinding,
            Self::ApplySafe => Action::ApplySafe,
            Self::ShowFindings => Action::ShowTab(SideTab::Findings),
            Self::ShowSizes => Action::ShowTab(SideTab::Sizes),
            Self::ShowForces => Action::ShowTab(SideTab::Forces),
            Self::New
            | Self::Open
            | Self::Save
            | Self::SaveAs
            | Self::ExportSheets
            | Self::Close
            | Self::FitViews
            | Self::ZoomIn
            | Self::ZoomOut
            | Self::AcceptFinding
            | Self::ExplainFinding
            | Self::PlaceStrut
            | Self::LightTheme
            | Self::DarkTheme
            | Self::SystemTheme
            | Self::ShowCards
            | Self::ImportCard
            | Self::ShowShortcuts
            | Self::ShowAbout => return None,
        })
    }
}
