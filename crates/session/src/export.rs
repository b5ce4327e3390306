//! Sheets and bore lists, written on a thread of their own.

use std::path::{Path, PathBuf};

use anyhow::bail;
use flapwright_answer::inspect;
use flapwright_drawing::job_sheets::{PageKind, PageOptions, job_sheets};
use flapwright_export::PngOptions;
use flapwright_export::bores::BoreOptions;
use flapwright_files::write_files;
use flapwright_model::edit::Edit;
use flapwright_model::job::Job;

use crate::bore_files::{BoreFormats, bore_files};
use crate::document::Document;
use crate::job_file::stem;
use crate::outcome::{ExportEnd, Written};
use crate::records::ToRemember;
use crate::sheet_files::{Formats, files_of};
use crate::worker::{GoOn, Wake, Worker};

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
    /// How the bore lists and machine files are laid out.
    pub bore_options: BoreOptions,
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
            bore_options: BoreOptions::default(),
            remember: true,
            drilled: false,
        }
    }
}

impl ExportChoice {
    /// Whether any sheet is written.
    #[must_use]
    pub const fn writes_sheets(&self) -> bool {
        self.pdf || self.png || self.svg
    }

    /// Whether any bore list is written.
    #[must_use]
    pub const fn writes_bores(&self) -> bool {
        self.dxf || self.csv || self.json
    }

    /// Whether bores leave the program: on drilling sheets, templates or in lists. A cover or a
    /// cut list alone says nothing of them.
    #[must_use]
    pub fn sends_bores_out(&self) -> bool {
        let kinds = &self.pages.kinds;
        let sheets = [PageKind::Panel, PageKind::Template, PageKind::BoreList]
            .iter()
            .any(|kind| kinds.contains(kind));
        self.writes_bores() || self.writes_sheets() && sheets
    }

    /// Whether any file is written.
    #[must_use]
    pub const fn writes_something(&self) -> bool {
        self.writes_sheets() || self.writes_bores()
    }
}

/// A running export. Dropping it stops the thread before its next file.
#[derive(Debug)]
pub(crate) struct Exporting {
    worker: Worker<Result<Written, String>>,
    /// The panels as they go out; `None` when the job is to remember nothing.
    remember: Option<ToRemember>,
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
        wake: Wake,
    ) -> std::io::Result<Self> {
        let job = document.job().clone();
        let remember = ToRemember::of(document, &choice);
        let stem = document.path().and_then(stem);
        let worker = Worker::start("sheets", wake, move |go_on| {
            write(&job, stem.as_deref(), &choice, &folder, go_on)
                .map_err(|error| format!("{error:#}"))
        })?;
        Ok(Self { worker, remember })
    }

    /// How much is done, 0 to 1.
    pub(crate) fn progress(&self) -> f32 {
        self.worker.progress()
    }

    /// Asks it to stop. Whether it still could is told by its end.
    pub(crate) fn stop(&self) {
        self.worker.stop();
    }

    /// How it ended, once it has; `None` while it runs.
    pub(crate) fn poll(&self) -> Option<ExportEnd> {
        self.worker.poll().map(|end| self.end(end))
    }

    /// The same, waiting for it.
    pub(crate) fn wait(&self) -> ExportEnd {
        self.end(self.worker.wait())
    }

    fn end(&self, end: Option<Result<Written, String>>) -> ExportEnd {
        match end {
            Some(Ok(written)) => ExportEnd::Written(written),
            Some(Err(why)) if self.worker.stopping() => ExportEnd::Stopped(why),
            Some(Err(why)) => ExportEnd::Failed(why),
            None => ExportEnd::Failed("The writing ended before its time.".to_owned()),
        }
    }

    /// The change that makes the job as it is now remember what went out; `None` when there is
    /// nothing to remember.
    pub(crate) fn to_remember(&self, now: &Job) -> Option<Edit> {
        self.remember.as_ref()?.edit(now)
    }
}

fn write(
    job: &Job,
    stem: Option<&str>,
    choice: &ExportChoice,
    folder: &Path,
    go_on: GoOn<'_>,
) -> anyhow::Result<Written> {
    let mut files = Vec::new();
    let mut stopped = Vec::new();
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
        let made = bore_files(job, stem, formats, &choice.bore_options)?;
        files.extend(made.files);
        stopped = made.stopped;
    }
    if !go_on(1.0) {
        bail!("stopped; nothing was written");
    }
    Ok(Written {
        files: write_files(folder, files)?,
        stopped,
    })
}
