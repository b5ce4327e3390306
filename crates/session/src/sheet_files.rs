//! The files of a set of drilling sheets, ready to be written: the same for window and command
//! line.

use anyhow::{Result, anyhow, bail};
use flapwright_answer::inspect;
use flapwright_drawing::job_sheets::{PageOptions, job_sheets};
use flapwright_drawing::sheet::Sheet;
use flapwright_export::{
    PdfFile, PdfOptions, PngOptions, SvgOptions, UtcTime, check, pictures, svg,
};
use flapwright_files::{safe_file_name, unique_names};
use flapwright_model::job::Job;

/// Which files are wanted.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Formats {
    /// One PDF with all sheets.
    pub pdf: bool,
    /// Whether that PDF is an archive file, PDF/A-1b; it carries the job's date of issue.
    pub archive: bool,
    /// One PNG per sheet, at this many dots per inch (150 to 600).
    pub png_dpi: Option<u32>,
    /// One SVG per sheet.
    pub svg: bool,
}

/// Names and bytes of the files of a job's sheets.
///
/// `stem` is the name of the PDF without its ending; without one it is the job's name.
///
/// # Errors
/// When there is no such page, or one cannot be exported.
pub fn sheet_files(
    job: &Job,
    stem: Option<&str>,
    formats: Formats,
    pages: &PageOptions,
) -> Result<Vec<(String, Vec<u8>)>> {
    let sheets = job_sheets(job, &inspect(job), pages);
    files_of(job, stem, formats, &sheets, &mut |_| true)
}

/// Names and bytes of the files of sheets that are made already. `go_on` is told how much is done,
/// 0 to 1, before each page of each file, and says whether to go on.
///
/// # Errors
/// When there is no sheet, one cannot be exported, or it was told to stop.
pub fn files_of(
    job: &Job,
    stem: Option<&str>,
    formats: Formats,
    sheets: &[Sheet],
    go_on: &mut dyn FnMut(f32) -> bool,
) -> Result<Vec<(String, Vec<u8>)>> {
    if sheets.is_empty() {
        bail!(
            "there is no such page: no panel of this job is drilled; choose a fitting for a door \
             first, or other pages"
        );
    }
    let mut files = Vec::new();
    let kinds = [formats.pdf, formats.png_dpi.is_some(), formats.svg];
    let count = sheets.len() * kinds.into_iter().filter(|wanted| *wanted).count();
    let mut done = 0;
    let mut next = || {
        let part = done as f32 / count.max(1) as f32;
        done += 1;
        if go_on(part) {
            Ok(())
        } else {
            bail!("stopped; nothing was written")
        }
    };
    if formats.pdf {
        let mut file = PdfFile::new(&pdf_options(job, formats.archive)?)?;
        for sheet in sheets {
            next()?;
            file.add(sheet)?;
        }
        let name = safe_file_name(&format!("{}.pdf", stem.unwrap_or(&job.name)));
        files.push((name, file.finish()?));
    }
    if let Some(dpi) = formats.png_dpi {
        pictures(sheets, &PngOptions { dpi }, |sheet, picture| {
            next()?;
            files.push((sheet_name(sheet, "png"), picture));
            anyhow::Ok(())
        })?;
    }
    if formats.svg {
        for sheet in sheets {
            next()?;
            check(sheet)?;
            let page = svg(sheet, &SvgOptions::default());
            files.push((sheet_name(sheet, "svg"), page.into_bytes()));
        }
    }
    let names = unique_names(files.iter().map(|(name, _)| name.as_str()));
    Ok(names
        .into_iter()
        .zip(files.into_iter().map(|(_, bytes)| bytes))
        .collect())
}

fn pdf_options(job: &Job, archive: bool) -> Result<PdfOptions> {
    Ok(PdfOptions {
        title: format!("{}: drilling sheets", job.name),
        author: job.title_block.creator.clone(),
        created: archive.then(|| issued(job)).transpose()?,
        archive,
    })
}

/// The first moment of the job's day of issue: no clock, so that the same job gives the same file.
fn issued(job: &Job) -> Result<UtcTime> {
    let words = &job.title_block.date_of_issue;
    let day: jiff::civil::Date = words.trim().parse().map_err(|_unread: jiff::Error| {
        anyhow!(
            "an archive PDF carries the date of issue, and the job's date of issue \
             (`title_block.date_of_issue`) is `{words}`; write it as year-month-day, such as \
             2026-01-31, or write a plain PDF"
        )
    })?;
    let number = |part: i8| u8::try_from(part).unwrap_or_default();
    Ok(UtcTime {
        year: u16::try_from(day.year()).unwrap_or_default(),
        month: number(day.month()),
        day: number(day.day()),
        hour: 0,
        minute: 0,
        second: 0,
    })
}

fn sheet_name(sheet: &Sheet, ending: &str) -> String {
    safe_file_name(&format!("{}.{ending}", sheet.slug))
}
