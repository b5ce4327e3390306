//! What the window remembers of what it shows, beside the session's selection.

use super::canvas::CanvasState;
use super::fields::Fields;
use super::findings::FindingsView;
use super::side_panel::MechanicsView;

/// What the window remembers of what it shows.
#[derive(Debug, Default)]
pub(crate) struct ViewState {
    /// Whether the list must bring the selected finding into sight.
    pub(crate) scroll_to_finding: bool,
    /// What the list of findings remembers.
    pub(crate) findings: FindingsView,
    /// What the tabs on the fitting remember.
    pub(crate) mechanics: MechanicsView,
    /// The drawing of the front.
    pub(crate) elevation: CanvasState,
    /// The drawing of the section.
    pub(crate) section: CanvasState,
    /// What is typed but not taken.
    pub(crate) fields: Fields,
}
