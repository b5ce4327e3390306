//! The folder that files are written to.

use std::path::{Path, PathBuf};

use anyhow::{Context, Result, bail};
use flapwright_files::write_files;

use super::say;

/// Writes a set of files into a folder, all or none, and prints their paths. The folder is made if
/// only its last part is missing.
pub(super) fn write(folder: &Path, files: Vec<(String, Vec<u8>)>) -> Result<()> {
    let made = make(folder)?;
    let written: Result<Vec<PathBuf>, _> = write_files(folder, files);
    if written.is_err() && made {
        // An empty folder that only this run made is not left behind; one with something in it
        // is not empty and stays.
        drop(std::fs::remove_dir(folder));
    }
    for path in written? {
        say(&path.display().to_string())?;
    }
    Ok(())
}

/// Makes the folder if only its last part is missing; whether it did.
fn make(folder: &Path) -> Result<bool> {
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
