//! The open job: what it is, where it is kept, what is true of it, what was done to it.

use std::path::{Path, PathBuf};

use flapwright_model::edit::Edit;
use flapwright_model::job::Job;
use flapwright_model::validate::Problem;
use flapwright_rules::Inspector;
use flapwright_rules::inspection::Inspection;

use super::history::{Gesture, History, StateName};

/// The open job.
#[derive(Debug)]
pub(crate) struct Document {
    job: Job,
    path: Option<PathBuf>,
    inspection: Inspection,
    /// Knows the boxes of the last state, so that an edit costs only the boxes that it touches.
    inspector: Inspector,
    history: History,
    saved: StateName,
    revision: u64,
}

impl Document {
    /// A job that was just read or made: nothing is unsaved.
    pub(crate) fn new(job: Job, path: Option<PathBuf>) -> Self {
        let mut inspector = Inspector::default();
        let inspection = inspector.inspect(&job);
        let history = History::default();
        let saved = history.state();
        Self {
            job,
            path,
            inspection,
            inspector,
            history,
            saved,
            revision: 0,
        }
    }

    /// The job.
    pub(crate) const fn job(&self) -> &Job {
        &self.job
    }

    /// What is true of the job as it is now.
    pub(crate) const fn inspection(&self) -> &Inspection {
        &self.inspection
    }

    /// What undo and redo know.
    pub(crate) const fn history(&self) -> &History {
        &self.history
    }

    /// Grows with every change; two equal numbers mean the same job and inspection.
    pub(crate) const fn revision(&self) -> u64 {
        self.revision
    }

    /// The file that the job is kept in.
    pub(crate) fn path(&self) -> Option<&Path> {
        self.path.as_deref()
    }

    /// Whether something would be lost with the job.
    pub(crate) fn unsaved(&self) -> bool {
        self.history.state() != self.saved
    }

    /// Changes the job.
    ///
    /// # Errors
    /// The problems of the job as it would be; nothing is changed then.
    pub(crate) fn change(
        &mut self,
        label: String,
        edit: Edit,
        gesture: Option<Gesture>,
    ) -> Result<(), Vec<Problem>> {
        self.history.take(&mut self.job, label, edit, gesture)?;
        self.look_again();
        Ok(())
    }

    /// Takes the last step back and says what it was.
    pub(crate) fn undo(&mut self) -> Option<String> {
        let label = self.history.undo(&mut self.job)?;
        self.look_again();
        Some(label)
    }

    /// Does the step again that was taken back last and says what it is.
    pub(crate) fn redo(&mut self) -> Option<String> {
        let label = self.history.redo(&mut self.job)?;
        self.look_again();
        Some(label)
    }

    /// Ends the running gesture.
    pub(crate) const fn seal(&mut self) {
        self.history.seal();
    }

    /// Notes that the job as it is now stands in a file.
    pub(crate) fn saved_to(&mut self, path: PathBuf) {
        self.history.seal();
        self.saved = self.history.state();
        self.path = Some(path);
    }

    fn look_again(&mut self) {
        self.inspection = self.inspector.inspect(&self.job);
        self.revision += 1;
    }
}
