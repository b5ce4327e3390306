//! The files of a set of drilling sheets, ready to be written: the same for window and command
//! line.

use anyhow::{Result, bail};
use flapwright_drawing::job_sheets::{PageOptions, job_sheets};
use flapwright_drawing::sheet::Sheet;
use flapwright_export::{PdfOptions, PngOptions, pdf, png, safe_file_name, unique_names};
use flapwright_model::job::Job;
use flapwright_rules::inspect;

/// Which files are wanted.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Formats {
    /// One PDF with all sheets.
    pub pdf: bool,
    /// One PNG per sheet, at this many dots per inch (150 to 600).
    pub png_dpi: Option<u32>,
}

/// Names and bytes of the files of a job's drilling sheets.
///
/// `stem` is the name of the PDF without its ending; without one it is the job's name.
///
/// # Errors
/// When no panel of the job is drilled, or a sheet cannot be exported.
pub fn sheet_files(
    job: &Job,
    stem: Option<&str>,
    formats: Formats,
) -> Result<Vec<(String, Vec<u8>)>> {
    let sheets = job_sheets(job, &inspect(job), &PageOptions::panels_only());
    if sheets.is_empty() {
        bail!("no panel of this job is drilled; choose a fitting for a door first");
    }
    let mut files = Vec::new();
    if formats.pdf {
        let name = safe_file_name(&format!("{}.pdf", stem.unwrap_or(&job.name)));
        files.push((name, pdf(&sheets, &pdf_options(job))?));
    }
    if let Some(dpi) = formats.png_dpi {
        for sheet in &sheets {
            files.push((png_name(sheet), png(sheet, &PngOptions { dpi })?));
        }
    }
    let names = unique_names(files.iter().map(|(name, _)| name.as_str()));
    Ok(names
        .into_iter()
        .zip(files.into_iter().map(|(_, bytes)| bytes))
        .collect())
}

fn pdf_options(job: &Job) -> PdfOptions {
    PdfOptions {
        title: format!("{}: drilling sheets", job.name),
        author: job.title_block.creator.clone(),
        created: None,
    }
}

fn png_name(sheet: &Sheet) -> String {
    safe_file_name(&format!("{}.png", sheet.slug))
}
