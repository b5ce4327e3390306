//! The output of a program for a folder of jobs: making it, and reading it back as texts.
//!
//! One folder a job, named after it, however deep below the top: its files may lie anywhere in it
//! and have any names; an ending says what a file is.

use std::collections::BTreeMap;
use std::ffi::OsStr;
use std::path::{Path, PathBuf};
use std::process::{Command, Stdio};

use anyhow::{Context, Result, bail};

/// The texts that a program wrote for one job, each list in the order of the file names.
#[derive(Debug, Default)]
pub(super) struct Output {
    /// Bore lists, findings and verdicts.
    pub(super) json: Vec<String>,
    /// Bore lists once more.
    pub(super) csv: Vec<String>,
    /// Machine files.
    pub(super) dxf: Vec<String>,
    /// Pages, one each.
    pub(super) svg: Vec<String>,
}

/// The output for each job, by the job's name.
pub(super) type Outputs = BTreeMap<String, Output>;

/// Runs `program` on each job (`*.ron`) of the folder `jobs` and writes what it gives into `into`.
///
/// # Errors
///
/// If there is no job, or the program refuses one. Open stops are no refusal.
pub(super) fn make(program: &Path, jobs: &Path, into: &Path) -> Result<()> {
    let mut files = list(jobs)?;
    files.retain(|path| path.extension() == Some(OsStr::new("ron")));
    if files.is_empty() {
        bail!("no job in {}", jobs.display());
    }
    for job in files {
        let folder = into.join(job.file_stem().unwrap_or_default());
        for part in ["bores", "sheets", "templates"] {
            std::fs::create_dir_all(folder.join(part))?;
        }
        let run = |arguments: &[&str], out: &str| {
            let mut command = Command::new(program);
            command.arg(arguments[0]).arg(&job).args(&arguments[1..]);
            if !out.is_empty() {
                command.arg("--out").arg(folder.join(out));
            }
            output_of(&mut command)
        };
        run(&["bores", "--dxf", "--csv", "--json"], "bores")?;
        run(&["sheets", "--svg"], "sheets")?;
        run(&["sheets", "--svg", "--pages", "templates"], "templates")?;
        std::fs::write(folder.join("check.json"), run(&["check", "--json"], "")?)?;
        std::fs::write(folder.join("sizes.json"), run(&["sizes", "--json"], "")?)?;
    }
    Ok(())
}

/// What a command prints; its own exit status 1 says that a stop is open.
fn output_of(command: &mut Command) -> Result<Vec<u8>> {
    let ran = command.stdin(Stdio::null()).output()?;
    if ran.status.code().is_none_or(|code| code > 1) {
        bail!(
            "{command:?} ended with {}: {}",
            ran.status,
            String::from_utf8_lossy(&ran.stderr)
        );
    }
    Ok(ran.stdout)
}

/// Reads a folder of output; the first folder below `top` names the job.
///
/// # Errors
///
/// If a file cannot be read, or nothing is there to compare.
pub(super) fn read(top: &Path) -> Result<Outputs> {
    let mut jobs = Outputs::new();
    for path in walk(top)? {
        let Some(ending) = path.extension().and_then(OsStr::to_str) else {
            continue;
        };
        let below = path.strip_prefix(top)?;
        let job = below.parent().and_then(|parent| parent.components().next());
        let job = job.map_or_else(String::new, |job| job.as_os_str().to_string_lossy().into());
        let output = jobs.entry(job).or_default();
        let texts = match ending {
            "json" => &mut output.json,
            "csv" => &mut output.csv,
            "dxf" => &mut output.dxf,
            "svg" => &mut output.svg,
            _ => continue,
        };
        let text = std::fs::read_to_string(&path);
        texts.push(text.with_context(|| format!("reading {}", path.display()))?);
    }
    if jobs.is_empty() {
        bail!("nothing to compare in {}", top.display());
    }
    Ok(jobs)
}

/// The files below a folder, in the order of their paths.
fn walk(folder: &Path) -> Result<Vec<PathBuf>> {
    let mut files = Vec::new();
    for path in list(folder)? {
        if path.is_dir() {
            files.extend(walk(&path)?);
        } else {
            files.push(path);
        }
    }
    Ok(files)
}

/// What lies in a folder, in order.
fn list(folder: &Path) -> Result<Vec<PathBuf>> {
    let entries =
        std::fs::read_dir(folder).with_context(|| format!("reading {}", folder.display()));
    let mut paths = Vec::new();
    for entry in entries? {
        paths.push(entry?.path());
    }
    paths.sort();
    Ok(paths)
}
