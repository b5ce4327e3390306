//! The open job: what it is, where it is kept, what is true of it, what was done to it.

use std::collections::BTreeSet;
use std::path::{Path, PathBuf};

use flapwright_answer::{Answer, SafeRun};
use flapwright_model::edit::Edit;
use flapwright_model::id::BoxId;
use flapwright_model::job::Job;
use flapwright_model::validate::Problem;
use flapwright_rules::finding::{Finding, Remedy, Severity};
use flapwright_rules::inspection::Inspection;
use flapwright_words::Names;

use crate::finding_key::FindingKey;
use crate::history::{Gesture, History, StateName};

/// The open job.
#[derive(Debug)]
pub struct Document {
    job: Job,
    path: Option<PathBuf>,
    /// What is true of it: knows the last state, so that an edit costs only what it touches.
    answer: Answer,
    history: History,
    saved: StateName,
    revision: u64,
}

impl Document {
    /// A job that was just read or made: nothing is unsaved.
    #[must_use]
    pub fn new(job: Job, path: Option<PathBuf>) -> Self {
        let answer = Answer::of(&job);
        let history = History::default();
        let saved = history.state();
        Self {
            job,
            path,
            answer,
            history,
            saved,
            revision: 0,
        }
    }

    /// The job.
    #[must_use]
    pub const fn job(&self) -> &Job {
        &self.job
    }

    /// What is true of the job as it is now.
    #[must_use]
    pub const fn inspection(&self) -> &Inspection {
        self.answer.inspection()
    }

    /// The same with every remedy judged.
    #[must_use]
    pub fn judged(&self) -> Inspection {
        self.answer.judged()
    }

    /// Whether a remedy of a finding may be applied unseen: tried when somebody asks.
    #[must_use]
    pub fn is_safe(&self, finding: &Finding, remedy: usize) -> bool {
        self.answer.is_safe(finding, remedy)
    }

    /// The job as it would be with every safe remedy applied.
    pub(crate) fn with_safe_remedies(&self) -> SafeRun {
        self.answer.clone().apply_safe_remedies(&self.job)
    }

    /// The finding of that name, if the job still has it.
    #[must_use]
    pub fn finding(&self, key: &FindingKey) -> Option<&Finding> {
        let findings = &self.inspection().findings;
        findings.iter().find(|it| key.names(it)).map(|it| &**it)
    }

    /// Where a finding is, in words.
    #[must_use]
    pub fn place_of(&self, finding: &Finding) -> String {
        let names = Names::of(&self.job);
        flapwright_words::place(finding, &names.speaker())
    }

    /// How many findings are open.
    #[must_use]
    pub fn open_count(&self) -> usize {
        self.inspection().findings.len() - self.accepted_count()
    }

    /// How many findings are accepted.
    #[must_use]
    pub fn accepted_count(&self) -> usize {
        let findings = self.inspection().findings.iter();
        findings.filter(|it| it.accepted.is_some()).count()
    }

    /// How many findings of a severity are open.
    #[must_use]
    pub fn open(&self, severity: Severity) -> usize {
        self.inspection().open(severity)
    }

    /// Whether an open finding has a remedy that its check holds for safe. It is not tried here:
    /// that is dear where there are many.
    #[must_use]
    pub fn claims_safe_remedy(&self) -> bool {
        let open = self.inspection().findings.iter();
        open.filter(|it| it.accepted.is_none())
            .any(|it| it.remedies.iter().any(Remedy::claims_safe))
    }

    /// What undo and redo know.
    #[must_use]
    pub const fn history(&self) -> &History {
        &self.history
    }

    /// Grows with every change; two equal numbers mean the same job and inspection.
    #[must_use]
    pub const fn revision(&self) -> u64 {
        self.revision
    }

    /// The file that the job is kept in.
    #[must_use]
    pub fn path(&self) -> Option<&Path> {
        self.path.as_deref()
    }

    /// Whether something would be lost with the job.
    #[must_use]
    pub fn unsaved(&self) -> bool {
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
        let touched = self.history.take(&mut self.job, label, edit, gesture)?;
        self.look_again(&touched);
        Ok(())
    }

    /// Takes the last step back and says what it was.
    pub(crate) fn undo(&mut self) -> Option<String> {
        let (label, touched) = self.history.undo(&mut self.job)?;
        self.look_again(&touched);
        Some(label)
    }

    /// Does the step again that was taken back last and says what it is.
    pub(crate) fn redo(&mut self) -> Option<String> {
        let (label, touched) = self.history.redo(&mut self.job)?;
        self.look_again(&touched);
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

    fn look_again(&mut self, touched: &BTreeSet<BoxId>) {
        self.answer.after(&self.job, touched);
        self.revision += 1;
    }
}
