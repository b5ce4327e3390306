//! Job files on disk.

use std::path::Path;

use anyhow::{Result, anyhow};
use flapwright_files::{read_limited, safe_file_name, write_atomic};
use flapwright_model::file::{LARGEST_FILE, read_job, write_job};
use flapwright_model::job::Job;

/// Reads a job file.
///
/// # Errors
/// When the file cannot be read or is not a sound job; the message names the file, and line and
/// column or the fields.
pub fn read(path: &Path) -> Result<Job> {
    let text = read_limited(path, LARGEST_FILE)?;
    read_job(&text).map_err(|error| anyhow!("{}: {error}", path.display()))
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

/// The name of a file for a job that has none.
#[must_use]
pub fn name_for(job: &Job) -> String {
    format!("{}.ron", safe_file_name(&job.name))
}
