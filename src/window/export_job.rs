//! Writing sheets and bore lists on a thread of its own.

use std::path::{Path, PathBuf};
use std::sync::Arc;
use std::sync::atomic::{AtomicBool, AtomicU16, Ordering};
use std::sync::mpsc::{Receiver, TryRecvError, channel};

use anyhow::bail;
use flapwright_drawing::job_sheets::{PageKind, PageOptions, job_sheets};
use flapwright_export::PngOptions;
use flapwright_export::bores::BoreOptions;
use flapwright_files::write_files;
use flapwright_model::job::Job;
use flapwright_rules::inspect;

use super::document::Document;
use super::records::ToRemember;
use crate::bore_files::{BoreFormats, bore_files};
use crate::sheet_files::{Formats, files_of};

/// Progress is told in these parts of the whole.
const PARTS: f32 = 1000.0;

/// What is written.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct ExportChoice {
    /// All pages in one PDF.
    pub pdf: bool,
    /// Whether that PDF is an archive file.
    pub archive: bool,
    /// One PNG for each page.
    pub png: bool,
    /// Dots per inch of the PNGs.
    pub dpi: u32,
    /// One SVG for each page.
    pub svg: bool,
    /// Which pages, on what paper.
    pub pages: PageOptions,
    /// One DXF for each drilled panel.
    pub dxf: bool,
    /// The bore list as CSV.
    pub csv: bool,
    /// The bore list as JSON.
    pub json: bool,
    /// Whether the job keeps what was exported, so that a later change is told.
    pub remember: bool,
    /// Whether the panels are drilled from these sheets now: their bores are facts from then on.
    pub drilled: bool,
}

impl Default for ExportChoice {
    fn default() -> Self {
        Self {
            pdf: true,
            archive: false,
            png: false,
            dpi: PngOptions::default().dpi,
            svg: false,
            pages: PageOptions::default(),
            dxf: false,
            csv: false,
            json: false,
            remember: true,
            drilled: false,
        }
    }
}

impl ExportChoice {
    /// Whether any sheet is written.
    pub(crate) const fn writes_sheets(&self) -> bool {
        self.pdf || self.png || self.svg
    }

    /// Whether any bore list is written.
    pub(crate) const fn writes_bores(&self) -> bool {
        self.dxf || self.csv || self.json
    }

    /// Whether bores leave the program: on drilling sheets, templates or in lists. A cover or a
    /// cut list alone says nothing of them.
    pub(crate) fn sends_bores_out(&self) -> bool {
        let kinds = &self.pages.kinds;
        let sheets = [PageKind::Panel, PageKind::Template, PageKind::BoreList]
            .iter()
            .any(|kind| kinds.contains(kind));
        self.writes_bores() || self.writes_sheets() && sheets
    }

    /// Whether any file is written.
    pub(crate) const fn writes_something(&self) -> bool {
        self.writes_sheets() || self.writes_bores()
    }
}

/// What came of it: the files, or why there are none.
pub(crate) type Outcome = Result<Vec<PathBuf>, String>;

/// A running export. Dropping it stops the thread before its next file.
#[derive(Debug)]
pub(crate) struct Exporting {
    receiver: Receiver<Outcome>,
    shared: Arc<Shared>,
    /// The panels as they go out; `None` when the job is to remember nothing.
    pub(crate) remember: Option<ToRemember>,
}

#[derive(Debug, Default)]
struct Shared {
    stop: AtomicBool,
    done: AtomicU16,
}

impl Exporting {
    /// Begins to write into a folder.
    ///
    /// # Errors
    /// When there is no thread to do it.
    pub(crate) fn start(
        document: &Document,
        choice: ExportChoice,
        folder: PathBuf,
        context: egui::Context,
    ) -> Result<Self, String> {
        let job = document.job().clone();
        let remember = ToRemember::of(document, &choice);
        let stem = document
            .path()
            .and_then(Path::file_stem)
            .map(|s| s.to_string_lossy().into_owned());
        let shared = Arc::new(Shared::default());
        let theirs = Arc::clone(&shared);
        let (sender, receiver) = channel();
        let thread = std::thread::Builder::new().name("sheets".to_owned());
        let started = thread.spawn(move || {
            let outcome = write(&job, stem.as_deref(), &choice, &folder, &mut |done| {
                let part = (done.clamp(0.0, 1.0) * PARTS) as u16;
                theirs.done.store(part, Ordering::Relaxed);
                context.request_repaint();
                !theirs.stop.load(Ordering::Relaxed)
            });
            // A window that is gone needs no answer.
            if sender
                .send(outcome.map_err(|error| format!("{error:#}")))
                .is_ok()
            {
                context.request_repaint();
            }
        });
        match started {
            Ok(_running) => Ok(Self {
                receiver,
                shared,
                remember,
            }),
            Err(error) => Err(format!("cannot write the sheets: {error}")),
        }
    }

    /// How much is done, 0 to 1.
    pub(crate) fn progress(&self) -> f32 {
        f32::from(self.shared.done.load(Ordering::Relaxed)) / PARTS
    }

    /// Asks the thread to stop before its next file. Whether it still could is told by the outcome.
    pub(crate) fn stop(&self) {
        self.shared.stop.store(true, Ordering::Relaxed);
    }

    /// Whether it was asked to stop.
    pub(crate) fn stopping(&self) -> bool {
        self.shared.stop.load(Ordering::Relaxed)
    }

    /// What came of it, once it is; `None` while it runs.
    pub(crate) fn poll(&self) -> Option<Outcome> {
        match self.receiver.try_recv() {
            Ok(outcome) => Some(outcome),
            Err(TryRecvError::Empty) => None,
            Err(TryRecvError::Disconnected) => {
                Some(Err("The writing ended before its time.".to_owned()))
            }
        }
    }
}

impl Drop for Exporting {
    fn drop(&mut self) {
        self.stop();
    }
}

fn write(
    job: &Job,
    stem: Option<&str>,
    choice: &ExportChoice,
    folder: &Path,
    go_on: &mut dyn FnMut(f32) -> bool,
) -> anyhow::Result<Vec<PathBuf>> {
    let mut files = Vec::new();
    if choice.writes_sheets() {
        let formats = Formats {
            pdf: choice.pdf,
            archive: choice.archive,
            png_dpi: choice.png.then_some(choice.dpi),
            svg: choice.svg,
        };
        let sheets = job_sheets(job, &inspect(job), &choice.pages);
        files.extend(files_of(job, stem, formats, &sheets, go_on)?);
    }
    if choice.writes_bores() {
        let formats = BoreFormats {
            dxf: choice.dxf,
            csv: choice.csv,
            json: choice.json,
        };
        files.extend(bore_files(job, stem, formats, &BoreOptions::default())?.files);
    }
    if !go_on(1.0) {
        bail!("stopped; nothing was written");
    }
    Ok(write_files(folder, files)?)
}
