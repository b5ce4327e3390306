//! Writing the drilling sheets on a thread of its own.

use std::path::{Path, PathBuf};
use std::sync::mpsc::{Receiver, channel};

use flapwright_export::{PngOptions, write_files};
use flapwright_model::job::Job;

use super::document::Document;
use super::records::ToRemember;
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
    /// Whether the job keeps what was exported, so that a later change is told.
    pub remember: bool,
    /// Whether the panels are drilled from these sheets now: their bores are facts from then on.
    pub drilled: bool,
}

impl Default for ExportChoice {
    fn default() -> Self {
        Self {
            pdf: true,
            png: false,
            dpi: PngOptions::default().dpi,
            remember: true,
            drilled: false,
        }
    }
}

/// What came of it: the files, or why there are none.
pub(crate) type Outcome = Result<Vec<PathBuf>, String>;

/// Sheets that are being written, and what the job is to remember of them.
#[derive(Debug)]
pub(crate) struct Exporting {
    /// Where the outcome comes from.
    pub(crate) outcome: Receiver<Outcome>,
    /// The panels as they go out; `None` when the job is to remember nothing.
    pub(crate) remember: Option<ToRemember>,
}

/// Begins to write the sheets of the job into a folder.
///
/// # Errors
/// When there is no thread to do it.
pub(crate) fn start(
    document: &Document,
    choice: ExportChoice,
    folder: PathBuf,
    context: egui::Context,
) -> Result<Exporting, String> {
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
        Ok(_running) => Ok(Exporting {
            outcome: receiver,
            remember: ToRemember::of(document, choice),
        }),
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
    };
    Ok(write_files(folder, sheet_files(job, stem, formats)?)?)
}
