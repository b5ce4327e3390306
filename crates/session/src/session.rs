//! The open job, what is selected of it, and what goes on beside.

mod changes;
mod files;
mod findings;
mod fitting;
mod work;

use std::path::PathBuf;
use std::sync::Arc;

use flapwright_model::edit::Edit;
use flapwright_model::job::Job;
use flapwright_rules::finding::Finding;
use flapwright_rules::inspection::Inspection;

use crate::action::Action;
use crate::action_table::{ActionId, When};
use crate::document::Document;
use crate::export::Exporting;
use crate::history::Gesture;
use crate::job_file;
use crate::outcome::Outcome;
use crate::selection::{Places, Selection};
use crate::strut_search::StrutSearch;
use crate::worker::Wake;

/// An open job and everything that is done with it.
pub struct Session {
    document: Document,
    selection: Selection,
    exporting: Option<Exporting>,
    search: Option<StrutSearch>,
    wake: Wake,
}

/// Whether something can be done now, and how its words go on.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Availability<'a> {
    /// Whether it can be done.
    pub enabled: bool,
    /// What stands behind its words, e.g. the step that undo takes back.
    pub more: Option<&'a str>,
}

impl std::fmt::Debug for Session {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        f.debug_struct("Session")
            .field("document", &self.document)
            .field("selection", &self.selection)
            .field("exporting", &self.exporting)
            .field("search", &self.search)
            .finish_non_exhaustive()
    }
}

impl Session {
    /// A session with a job that was just read or made; `path` is the file that it is kept in.
    #[must_use]
    pub fn new(job: Job, path: Option<PathBuf>) -> Self {
        let mut session = Self {
            document: Document::new(job, path),
            selection: Selection::default(),
            exporting: None,
            search: None,
            wake: Arc::new(|| {}),
        };
        session.stay_within(Places::default());
        session
    }

    /// A session with the job of a file.
    ///
    /// # Errors
    /// When the file cannot be read or is not a sound job; see [`job_file::read`].
    pub fn open(path: PathBuf) -> anyhow::Result<Self> {
        let job = job_file::read(&path)?;
        Ok(Self::new(job, Some(path)))
    }

    /// Has this called, from another thread, whenever there is something to [hear](Self::hear) or
    /// [progress](Self::export_progress) to show.
    pub fn wake_with(&mut self, wake: impl Fn() + Send + Sync + 'static) {
        self.wake = Arc::new(wake);
    }

    /// The job with its history.
    #[must_use]
    pub const fn document(&self) -> &Document {
        &self.document
    }

    /// The job.
    #[must_use]
    pub const fn job(&self) -> &Job {
        self.document.job()
    }

    /// What is true of it.
    #[must_use]
    pub const fn inspection(&self) -> &Inspection {
        self.document.inspection()
    }

    /// What is looked at.
    #[must_use]
    pub const fn selection(&self) -> &Selection {
        &self.selection
    }

    /// The selected finding.
    #[must_use]
    pub fn selected_finding(&self) -> Option<&Finding> {
        self.document.finding(self.selection.finding.as_ref()?)
    }

    /// Does one thing and says what came of it.
    pub fn apply(&mut self, action: Action) -> Outcome {
        let before = self.selection.places(self.job());
        let outcome = match action {
            Action::New | Action::Open(_) | Action::Save | Action::SaveAs(_) => self.file(action),
            Action::Export { choice, folder } => self.export(*choice, folder),
            Action::StopExport => self.stop_export(),
            Action::Undo => self.undo(),
            Action::Redo => self.redo(),
            Action::Edit {
                label,
                edit,
                gesture,
            } => self.change(label, edit, gesture),
            Action::EndGesture => {
                self.document.seal();
                Outcome::Shown
            }
            Action::AddBox => self.add_box(),
            Action::DuplicateBox => self.duplicate_box(),
            Action::RemoveBox => self.remove_box(),
            Action::UseUnit(unit) => self.use_unit(unit),
            Action::PutCard(card) => self.put_card(*card),
            Action::ApplyRemedy { finding, remedy } => self.apply_remedy(&finding, remedy),
            Action::ApplySafe => self.apply_safe(),
            Action::Accept { finding, reason } => self.accept(&finding, &reason),
            Action::TakeBack(finding) => self.take_back(&finding),
            Action::TakeSize { card, size } => self.take_size(&card, &size),
            Action::SearchMounts(limits) => self.search_mounts(*limits),
            Action::StopSearch => self.stop_search(),
            Action::UseMounts { card, answer } => self.use_mounts(card, &answer),
            Action::SelectFinding(finding) => self.select_finding(finding),
            Action::NextFinding => self.step_finding(true),
            Action::PreviousFinding => self.step_finding(false),
            Action::ShowBox(_)
            | Action::ShowOpening(_)
            | Action::OpenDoor(_)
            | Action::RunDoor
            | Action::RunOn(_)
            | Action::StopDoor
            | Action::ToggleDimensions
            | Action::ShowTab(_) => self.look(&action),
        };
        self.stay_within(before);
        outcome
    }

    fn stay_within(&mut self, before: Places) {
        self.selection.stay_within(&self.document, before);
    }

    /// What only changes what is looked at.
    fn look(&mut self, action: &Action) -> Outcome {
        let selection = &mut self.selection;
        match *action {
            Action::ShowBox(id) => selection.show_box(id),
            Action::ShowOpening(id) => selection.opening = Some(id),
            Action::OpenDoor(s) => {
                selection.running = None;
                selection.s = s.clamp(0.0, 1.0);
            }
            Action::RunDoor => selection.run_or_stop(),
            Action::RunOn(seconds) => selection.run(seconds),
            Action::StopDoor => selection.running = None,
            Action::ToggleDimensions => selection.plain = !selection.plain,
            Action::ShowTab(tab) => selection.tab = tab,
            _ => return Outcome::Nothing,
        }
        Outcome::Shown
    }

    /// Changes the job as one step, or as a part of the running gesture.
    fn change(&mut self, label: String, edit: Edit, gesture: Option<Gesture>) -> Outcome {
        match self.document.change(label.clone(), edit, gesture) {
            Ok(()) => Outcome::Done(label),
            Err(problems) => Outcome::Refused { label, problems },
        }
    }

    /// Whether something can be done now. What asks for a file also has to wait while a client is
    /// asking for another one, which only the client knows.
    #[must_use]
    pub fn available(&self, id: ActionId) -> Availability<'_> {
        let history = self.document.history();
        let more = match id {
            ActionId::Undo => history.undo_label(),
            ActionId::Redo => history.redo_label(),
            _ => None,
        };
        Availability {
            enabled: self.holds(id.info().when),
            more,
        }
    }

    fn holds(&self, when: When) -> bool {
        use flapwright_model::length::Unit;
        let job = self.job();
        let history = self.document.history();
        match when {
            When::Always => true,
            When::SomeBox => !job.boxes.is_empty(),
            When::CanExport => !job.boxes.is_empty() && self.exporting.is_none(),
            When::SomethingToUndo => history.undo_label().is_some(),
            When::SomethingToRedo => history.redo_label().is_some(),
            When::NotMillimetres => job.unit != Unit::Millimetre,
            When::NotInches => job.unit != Unit::Inch,
            When::OpenFinding => self.document.open_count() > 0,
            When::SafeRemedy => self.document.claims_safe_remedy(),
            When::OpenFindingSelected => self
                .selected_finding()
                .is_some_and(|it| it.accepted.is_none()),
            When::FindingSelected => self.selected_finding().is_some(),
            When::StrutToPlace => self.has_strut(),
        }
    }
}
