//! `flapwright sheets`: the drilling sheets without a window.

use std::path::PathBuf;

use anyhow::Result;
use clap::{Args, value_parser};

use super::{FINE, out_folder};
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
    /// Write one SVG per sheet, in real millimetres, one group per run of a layer
    #[arg(long)]
    svg: bool,
}

pub(super) fn run(arguments: &Arguments) -> Result<u8> {
    let job = job_file::read(&arguments.job)?;
    let formats = Formats {
        pdf: arguments.pdf || !(arguments.png || arguments.svg),
        png_dpi: arguments.png.then_some(arguments.dpi),
        svg: arguments.svg,
    };
    let stem = job_file::stem(&arguments.job);
    out_folder::write(&arguments.out, sheet_files(&job, stem.as_deref(), formats)?)?;
    Ok(FINE)
}
