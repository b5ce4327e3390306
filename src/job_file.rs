//! Job files on disk.

use std::path::Path;

use anyhow::{Context, Result, bail};
use flapwright_export::write_atomic;
use flapwright_model::file::{LARGEST_FILE, read_job, write_job};
use flapwright_model::job::Job;

/// Reads a job file.
///
/// # Errors
/// When the file cannot be read or is not a sound job; the message names the file, and line and
/// column or the fields.
pub fn read(path: &Path) -> Result<Job> {
    let name = path.display();
    let size = std::fs::metadata(path)
        .with_context(|| format!("cannot read {name}"))?
        .len();
    if size > LARGEST_FILE as u64 {
        bail!("{name} has {size} bytes; a job file has at most {LARGEST_FILE}");
    }
    let bytes = std::fs::read(path).with_context(|| format!("cannot read {name}"))?;
    let Ok(text) = String::from_utf8(bytes) else {
        bail!("{name} is not a text in UTF-8; a job file is");
    };
    read_job(&text).map_err(|error| anyhow::anyhow!("{name}: {error}"))
}

/// A file's name without its ending, the first part of the names of what is made from it.
#[must_use]
pub fn stem(path: &Path) -> Option<String> {
    path.file_stem()
        .map(|stem| stem.to_string_lossy().into_owned())
}

/// Writes a job file: beside it first, flushed, then renamed over it.
///
/// # Errors
/// When the folder or the file cannot be written; what was there before is then untouched.
pub fn write(path: &Path, job: &Job) -> Result<()> {
    Ok(write_atomic(path, write_job(job).as_bytes())?)
}
