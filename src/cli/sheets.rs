//! `flapwright sheets`: the drilling sheets without a window.

use std::path::{Path, PathBuf};

use anyhow::{Context, Result, bail};
use clap::{Args, value_parser};

use super::{FINE, say};
use crate::job_file;
use crate::sheet_files::{Formats, sheet_files};

#[derive(Debug, Args)]
pub(super) struct Arguments {
    /// Job file
    job: PathBuf,
    /// Folder to write to; made if only its last part is missing
    #[arg(long, value_name = "DIR")]
    out: PathBuf,
    /// Write one PDF with all sheets (the default when no format is named)
    #[arg(long)]
    pdf: bool,
    /// Write one PNG per sheet
    #[arg(long)]
    png: bool,
    /// Resolution of the PNGs in dots per inch, 150 to 600
    #[arg(long, value_name = "N", default_value_t = 300, value_parser = value_parser!(u32).range(150..=600))]
    dpi: u32,
}

pub(super) fn run(arguments: &Arguments) -> Result<u8> {
    let job = job_file::read(&arguments.job)?;
    let formats = Formats {
        pdf: arguments.pdf || !arguments.png,
        png_dpi: arguments.png.then_some(arguments.dpi),
    };
    let name = arguments
        .job
        .file_stem()
        .map(|stem| stem.to_string_lossy().into_owned());
    let files = sheet_files(&job, name.as_deref(), formats)?;
    let made = make_folder(&arguments.out)?;
    let written = flapwright_export::write_files(&arguments.out, files);
    if written.is_err() && made {
        // An empty folder that only this run made is not left behind; one with something in it
        // is not empty and stays.
        drop(std::fs::remove_dir(&arguments.out));
    }
    for path in written? {
        say(&path.display().to_string())?;
    }
    Ok(FINE)
}

/// Makes the folder if only its last part is missing; whether it did.
fn make_folder(folder: &Path) -> Result<bool> {
    if folder.is_dir() {
        return Ok(false);
    }
    if folder.exists() {
        bail!(
            "{} is not a folder; name another one with --out",
            folder.display()
        );
    }
    std::fs::create_dir(folder).with_context(|| {
        format!(
            "cannot make the folder {}; name one whose parent exists and can be written to",
            folder.display()
        )
    })?;
    Ok(true)
}
