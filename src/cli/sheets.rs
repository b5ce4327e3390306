//! `flapwright sheets`: the drilling sheets without a window.

use std::path::PathBuf;

use anyhow::Result;
use clap::{Args, value_parser};
use flapwright_drawing::job_sheets::{Orientation, PageKind, PageOptions};
use flapwright_drawing::scale::Scale;
use flapwright_model::job::PaperChoice;
use flapwright_session::export::ExportChoice;

use super::{FINE, export};

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
    /// Write the PDF in the file format for keeping, PDF/A-1b (tried with Apache PDFBox
    /// Preflight); it carries the job's date of issue
    #[arg(long)]
    archive: bool,
    /// Write one PNG per sheet
    #[arg(long)]
    png: bool,
    /// Resolution of the PNGs in dots per inch, 150 to 600
    #[arg(long, value_name = "N", default_value_t = 300, value_parser = value_parser!(u32).range(150..=600))]
    dpi: u32,
    /// Write one SVG per sheet, in real millimetres, one group per run of a layer
    #[arg(long)]
    svg: bool,
    /// Which pages, with commas between; all but the full-size templates without it
    #[arg(long, value_name = "PAGES", value_delimiter = ',', value_parser = page_kind)]
    pages: Vec<PageKind>,
    /// Paper in place of the job's own
    #[arg(long, value_name = "PAPER", value_parser = ["A4", "A3", "letter", "tabloid"], ignore_case = true)]
    paper: Option<String>,
    /// Which way up the paper lies
    #[arg(long, value_name = "WAY", value_parser = ["best", "upright", "lying"], default_value = "best")]
    turn: String,
    /// No drawing larger than this; without it each page has the largest scale that fits.
    /// Full-size templates stay full size
    #[arg(long, value_name = "SCALE", value_parser = scale)]
    scale: Option<Scale>,
}

impl Arguments {
    fn page_options(&self) -> PageOptions {
        let options = if self.pages.is_empty() {
            PageOptions::default()
        } else {
            PageOptions::of(self.pages.iter().copied())
        };
        let paper = self.paper.as_ref().map(|name| {
            // The parser lets no other name through.
            match name.to_ascii_lowercase().as_str() {
                "a3" => PaperChoice::A3,
                "letter" => PaperChoice::Letter,
                "tabloid" => PaperChoice::Tabloid,
                _ => PaperChoice::A4,
            }
        });
        PageOptions {
            paper,
            orientation: match self.turn.as_str() {
                "upright" => Orientation::Upright,
                "lying" => Orientation::Lying,
                _ => Orientation::Best,
            },
            largest_scale: self.scale.unwrap_or(options.largest_scale),
            ..options
        }
    }
}

fn scale(words: &str) -> Result<Scale, String> {
    Scale::limits()
        .find(|scale| scale.words() == words.trim())
        .ok_or_else(|| {
            let all: Vec<String> = Scale::limits().map(Scale::words).collect();
            format!(
                "there is no such largest scale; choose from {}",
                all.join(", ")
            )
        })
}

fn page_kind(name: &str) -> Result<PageKind, String> {
    PageKind::from_name(name.trim()).ok_or_else(|| {
        let names = PageKind::ALL.map(PageKind::name).join(", ");
        format!("there are no such pages; choose from {names}")
    })
}

pub(super) fn run(arguments: &Arguments) -> Result<u8> {
    let choice = ExportChoice {
        pdf: arguments.pdf || arguments.archive || !(arguments.png || arguments.svg),
        archive: arguments.archive,
        png: arguments.png,
        dpi: arguments.dpi,
        svg: arguments.svg,
        pages: arguments.page_options(),
        remember: false,
        ..ExportChoice::default()
    };
    export::run(&arguments.job, &arguments.out, choice)?;
    Ok(FINE)
}
