//! Writing the drilling sheets on a thread of its own.

use std::path::{Path, PathBuf};
use std::sync::mpsc::{Receiver, channel};

use flapwright_drawing::job_sheets::PageOptions;
use flapwright_export::{PngOptions, write_files};
use flapwright_model::job::Job;

use super::document::Document;
use crate::sheet_files::{Formats, sheet_files};

/// How the sheets are written.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct ExportChoice {
    /// All pages in one PDF.
    pub pdf: bool,
    /// One PNG for each page.
    pub png: bool,
    /// Dots per inch of the PNGs.
    pub dpi: u32,
}

impl Default for ExportChoice {
    fn default() -> Self {
        Self {
            pdf: true,
            png: false,
            dpi: PngOptions::default().dpi,
        }
    }
}

/// What came of it: the files, or why there are none.
pub(crate) type Outcome = Result<Vec<PathBuf>, String>;

/// Begins to write the sheets of the job into a folder.
///
/// # Errors
/// When there is no thread to do it.
pub(crate) fn start(
    document: &Document,
    choice: ExportChoice,
    folder: PathBuf,
    context: egui::Context,
) -> Result<Receiver<Outcome>, String> {
    let job = document.job().clone();
    let stem = document
        .path()
        .and_then(Path::file_stem)
        .map(|s| s.to_string_lossy().into_owned());
    let (sender, receiver) = channel();
    let thread = std::thread::Builder::new().name("sheets".to_owned());
    let started = thread.spawn(move || {
        let outcome = write(&job, stem.as_deref(), choice, &folder);
        // A window that is gone needs no answer.
        if sender
            .send(outcome.map_err(|error| format!("{error:#}")))
            .is_ok()
        {
            context.request_repaint();
        }
    });
    match started {
        Ok(_running) => Ok(receiver),
        Err(error) => Err(format!("cannot write the sheets: {error}")),
    }
}

fn write(
    job: &Job,
    stem: Option<&str>,
    choice: ExportChoice,
    folder: &Path,
) -> anyhow::Result<Vec<PathBuf>> {
    let formats = Formats {
        pdf: choice.pdf,
        png_dpi: choice.png.then_some(choice.dpi),
        svg: false,
    };
    Ok(write_files(
        folder,
        sheet_files(job, stem, formats, &PageOptions::default())?,
    )?)
}
