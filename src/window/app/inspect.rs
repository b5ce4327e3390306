//! What can be read of a window from outside: for tests and pictures.

use std::path::Path;

use flapwright_model::id::{BoxId, OpeningId};
use flapwright_model::job::Job;
use flapwright_rules::inspection::Inspection;

use flapwright_session::Session;
use flapwright_session::finding_key::FindingKey;
use flapwright_session::selection::SideTab;

use super::App;
use crate::window::command::View;

impl App {
    /// The session that the window shows.
    #[must_use]
    pub const fn session(&self) -> &Session {
        &self.session
    }

    /// The open job.
    #[must_use]
    pub const fn job(&self) -> &Job {
        self.session.job()
    }

    /// What is true of it.
    #[must_use]
    pub const fn inspection(&self) -> &Inspection {
        self.session.inspection()
    }

    /// The file that it is kept in.
    #[must_use]
    pub fn path(&self) -> Option<&Path> {
        self.session.document().path()
    }

    /// Whether something is unsaved.
    #[must_use]
    pub fn unsaved(&self) -> bool {
        self.session.document().unsaved()
    }

    /// How many steps undo can take back.
    #[must_use]
    pub const fn undo_steps(&self) -> usize {
        self.session.document().history().len()
    }

    /// The shown box and the shown opening of it.
    #[must_use]
    pub const fn shown(&self) -> (Option<BoxId>, Option<OpeningId>) {
        (
            self.session.selection().box_id,
            self.session.selection().opening,
        )
    }

    /// The selected finding.
    #[must_use]
    pub const fn selected_finding(&self) -> Option<&FindingKey> {
        self.session.selection().finding.as_ref()
    }

    /// How far the door is open: 0 closed, 1 open.
    #[must_use]
    pub const fn door_open(&self) -> f64 {
        self.session.selection().s
    }

    /// The title of the remedy that the drawings show before it is applied.
    #[must_use]
    pub fn previewed(&self) -> Option<&str> {
        self.view.findings.preview.shown()
    }

    /// Whether the door is running.
    #[must_use]
    pub const fn playing(&self) -> bool {
        self.session.selection().running.is_some()
    }

    /// Screen points for one millimetre of the job in a drawing; `None` before its first frame.
    #[must_use]
    pub fn drawing_size(&self, view: View) -> Option<f64> {
        match view {
            View::Elevation => self.view.elevation.size(),
            View::Section => self.view.section.size(),
        }
    }

    /// How often a drawing was laid out since the job was opened.
    #[must_use]
    pub const fn layouts(&self, view: View) -> u64 {
        match view {
            View::Elevation => self.view.elevation.layouts(),
            View::Section => self.view.section.layouts(),
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
        self.session.selection().tab
    }

    /// Whether anchors are being searched for.
    #[must_use]
    pub fn searching(&self) -> bool {
        self.session.search_progress().is_some()
    }

    /// Whether sheets are being written.
    #[must_use]
    pub fn exporting(&self) -> bool {
        self.session.export_progress().is_some()
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
