//! What goes on beside: exports and searches.

use std::path::PathBuf;

use super::Session;
use crate::export::{ExportChoice, Exporting};
use crate::outcome::{ExportEnd, News, Outcome};
use crate::strut_search::StrutSearch;

impl Session {
    pub(super) fn export(&mut self, choice: ExportChoice, folder: PathBuf) -> Outcome {
        match Exporting::start(&self.document, choice, folder, self.wake.clone()) {
            Ok(running) => {
                self.exporting = Some(running);
                Outcome::Shown
            }
            Err(error) => Outcome::Failed {
                title: "Sheets not written",
                why: error.to_string(),
            },
        }
    }

    pub(super) fn stop_export(&self) -> Outcome {
        match &self.exporting {
            Some(running) => {
                running.stop();
                Outcome::Shown
            }
            None => Outcome::Nothing,
        }
    }

    pub(super) fn stop_search(&mut self) -> Outcome {
        match self.search.take() {
            Some(_stopped) => Outcome::Shown,
            None => Outcome::Nothing,
        }
    }

    /// How much of an export is done, 0 to 1; `None` while nothing is written.
    #[must_use]
    pub fn export_progress(&self) -> Option<f32> {
        self.exporting.as_ref().map(Exporting::progress)
    }

    /// How much of a search is done, 0 to 1; `None` while nothing is searched for.
    #[must_use]
    pub fn search_progress(&self) -> Option<f32> {
        self.search.as_ref().map(StrutSearch::progress)
    }

    /// What has finished since it was asked last. What an export wrote is remembered in the job.
    pub fn hear(&mut self) -> Vec<News> {
        let exported = self.exporting.as_ref().and_then(Exporting::poll);
        let found = self.search.as_ref().and_then(StrutSearch::poll);
        let mut news = Vec::new();
        if let Some(end) = exported {
            news.push(self.exported(end));
        }
        if let Some(found) = found {
            self.search = None;
            news.push(News::Mounts(found));
        }
        news
    }

    /// Waits until nothing goes on beside any more, and gives back what has finished.
    pub fn wait(&mut self) -> Vec<News> {
        let mut news = Vec::new();
        if let Some(running) = &self.exporting {
            let end = running.wait();
            news.push(self.exported(end));
        }
        if let Some(running) = self.search.take() {
            news.push(News::Mounts(running.wait()));
        }
        news
    }

    fn exported(&mut self, end: ExportEnd) -> News {
        let running = self.exporting.take();
        if let (ExportEnd::Written(_), Some(running)) = (&end, running)
            && let Some(edit) = running.to_remember(self.job())
        {
            // A record of a box that is gone in the meantime is not made, so this always fits.
            let _outcome = self.change("remember the exported sheets".to_owned(), edit, None);
        }
        News::Export(end)
    }
}
