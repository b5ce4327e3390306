//! The bore lists and machine files of a job, ready to be written: the same for window and command
//! line.

use anyhow::{Result, bail};
use flapwright_answer::inspect;
use flapwright_export::bores::{BoreOptions, bore_list, bores_csv, bores_dxf, bores_json};
use flapwright_files::{safe_file_name, unique_names};
use flapwright_model::job::Job;
use flapwright_rules::plural::count;

/// Which files are wanted.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct BoreFormats {
    /// One DXF per drilled panel.
    pub dxf: bool,
    /// The bore list as CSV.
    pub csv: bool,
    /// The bore list as JSON.
    pub json: bool,
}

/// Files to be written, and what the reader must be told.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct BoreFiles {
    /// Names, each once, and bytes.
    pub files: Vec<(String, Vec<u8>)>,
    /// Panels that must not be drilled yet, in words, e.g. `plates: door, 1 stop open`.
    pub stopped: Vec<String>,
}

/// Names and bytes of a job's bore lists and machine files.
///
/// `stem` is the first part of the lists' names; without one it is the job's name.
///
/// # Errors
/// When no panel of the job is drilled, or a file cannot be put together.
pub fn bore_files(
    job: &Job,
    stem: Option<&str>,
    formats: BoreFormats,
    options: &BoreOptions,
) -> Result<BoreFiles> {
    let list = bore_list(job, &inspect(job), options)?;
    if list.panels.is_empty() {
        bail!("no panel of this job is drilled; choose a fitting for a door first");
    }
    let mut files = Vec::new();
    if formats.dxf {
        for panel in &list.panels {
            files.push((panel.file.clone(), bores_dxf(&list, panel)?));
        }
    }
    let named =
        |ending: &str| safe_file_name(&format!("{}-bores.{ending}", stem.unwrap_or(&job.name)));
    if formats.csv {
        files.push((named("csv"), bores_csv(&list)?));
    }
    if formats.json {
        files.push((named("json"), bores_json(&list)?));
    }
    let names = unique_names(files.iter().map(|(name, _)| name.as_str()));
    let files = names
        .into_iter()
        .zip(files.into_iter().map(|(_, bytes)| bytes))
        .collect();
    let stopped = list.panels.iter().filter(|panel| panel.open_stops > 0);
    let stopped = stopped.map(|panel| {
        let stops = count(panel.open_stops, "stop");
        format!("{}: {}, {stops} open", panel.box_name, panel.panel)
    });
    Ok(BoreFiles {
        files,
        stopped: stopped.collect(),
    })
}
