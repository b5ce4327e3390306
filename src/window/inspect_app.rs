//! What can be read of a window from outside: for tests and pictures.

use std::path::Path;

use flapwright_model::job::Job;
use flapwright_rules::inspection::Inspection;

use super::app::App;
use super::command::View;
use super::side_panel::SideTab;

impl App {
    /// The open job.
    #[must_use]
    pub const fn job(&self) -> &Job {
        self.document.job()
    }

    /// What is true of it.
    #[must_use]
    pub const fn inspection(&self) -> &Inspection {
        self.document.inspection()
    }

    /// The file that it is kept in.
    #[must_use]
    pub fn path(&self) -> Option<&Path> {
        self.document.path()
    }

    /// Whether something is unsaved.
    #[must_use]
    pub fn unsaved(&self) -> bool {
        self.document.unsaved()
    }

    /// How many steps undo can take back.
    #[must_use]
    pub const fn undo_steps(&self) -> usize {
        self.document.history().len()
    }

    /// The shown box and the shown opening of it.
    #[must_use]
    pub const fn shown(&self) -> (usize, usize) {
        (self.view.box_index, self.view.opening)
    }

    /// The lit finding.
    #[must_use]
    pub const fn lit_finding(&self) -> Option<usize> {
        self.view.finding
    }

    /// How far the door is open: 0 closed, 1 open.
    #[must_use]
    pub const fn door_open(&self) -> f64 {
        self.view.s
    }

    /// The title of the remedy that the drawings show before it is applied.
    #[must_use]
    pub fn previewed(&self) -> Option<&str> {
        self.view.findings.preview.shown()
    }

    /// Whether the door is running.
    #[must_use]
    pub const fn playing(&self) -> bool {
        self.view.playing.is_some()
    }

    /// Screen points for one millimetre of the job in a drawing; `None` before its first frame.
    #[must_use]
    pub fn drawing_size(&self, view: View) -> Option<f64> {
        match view {
            View::Elevation => self.view.elevation.size(),
            View::Section => self.view.section.size(),
        }
    }

    /// Whether a question, message or list stands over the window.
    #[must_use]
    pub const fn dialog_open(&self) -> bool {
        self.dialog.is_some()
    }

    /// What the panel at the right shows.
    #[must_use]
    pub const fn side_tab(&self) -> SideTab {
        self.view.tab
    }

    /// Whether anchors are being searched for.
    #[must_use]
    pub const fn searching(&self) -> bool {
        self.strut_search.is_some()
    }

    /// Whether sheets are being written.
    #[must_use]
    pub const fn exporting(&self) -> bool {
        self.exporting.is_some()
    }

    /// Whether the window was told to close for good.
    #[must_use]
    pub const fn leaving(&self) -> bool {
        self.leaving
    }

    /// What the bottom line says.
    #[must_use]
    pub fn status(&self) -> &str {
        &self.status.text
    }
}
