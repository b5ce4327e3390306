//! New jobs, opening, saving.

use std::path::{Path, PathBuf};

use flapwright_model::job::Job;

use super::Session;
use crate::action::Action;
use crate::document::Document;
use crate::job_file;
use crate::outcome::Outcome;
use crate::selection::Selection;

impl Session {
    pub(super) fn file(&mut self, action: Action) -> Outcome {
        match action {
            Action::New => self.start_new(),
            Action::Open(path) => self.open_file(path),
            Action::Save => match self.document.path() {
                Some(path) => self.save_to(path.to_owned()),
                None => Outcome::NeedsPath,
            },
            Action::SaveAs(path) => self.save_to(path),
            _ => Outcome::Nothing,
        }
    }

    fn start_new(&mut self) -> Outcome {
        let job = self.document.job();
        let empty = Job {
            unit: job.unit,
            settings: job.settings.clone(),
            ..Job::empty(job.materials.clone(), job.card_list().cloned().collect())
        };
        self.show(Document::new(empty, None));
        Outcome::Done("New job".to_owned())
    }

    fn open_file(&mut self, path: PathBuf) -> Outcome {
        match job_file::read(&path) {
            Ok(job) => {
                let told = format!("Opened {}", path.display());
                self.show(Document::new(job, Some(path)));
                Outcome::Done(told)
            }
            Err(problem) => Outcome::Failed {
                title: "Not opened",
                why: format!("{problem:#}\n\nThe job that was open is still open."),
            },
        }
    }

    fn show(&mut self, document: Document) {
        self.document = document;
        self.selection = Selection::default();
    }

    fn save_to(&mut self, path: PathBuf) -> Outcome {
        match job_file::write(&path, self.document.job()) {
            Ok(()) => {
                let told = format!("Saved to {}", path.display());
                self.document.saved_to(path);
                Outcome::Done(told)
            }
            Err(error) => Outcome::Failed {
                title: "Not saved",
                why: format!("{error:#}"),
            },
        }
    }

    /// The name that a file of this job starts with when nobody chose another.
    #[must_use]
    pub fn file_name(&self) -> String {
        match self.document.path().and_then(Path::file_name) {
            Some(name) => name.to_string_lossy().into_owned(),
            None => job_file::name_for(self.document.job()),
        }
    }
}
