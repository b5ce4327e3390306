//! Are two programs the same to whoever drills? Compares what both make of the same jobs: bore
//! lists, machine files and drawings by their numbers, to the last bit; names of files, texts,
//! findings and verdicts are counted and told, since those change on purpose.
//!
//! Everything is read as text or by general readers, none of it by the code that wrote it.

mod bores;
mod drawing;
mod findings;
mod machine;
mod output;
mod sheets;
mod tally;

use std::path::{Path, PathBuf};

use anyhow::{Context, Result, bail};

use output::Outputs;
use tally::{Kind, Tally};

/// The demo jobs in a tree.
const DEMO: &str = "assets/demo";

/// `same OLD NEW …`: true if no geometry differs.
pub(crate) fn command(arguments: &[String]) -> Result<bool> {
    let mut sides = Vec::new();
    let (mut old_jobs, mut new_jobs, mut texts) = (None, None, false);
    let mut rest = arguments.iter();
    while let Some(argument) = rest.next() {
        match argument.as_str() {
            "--old-jobs" => old_jobs = rest.next().map(PathBuf::from),
            "--new-jobs" => new_jobs = rest.next().map(PathBuf::from),
            "--texts" => texts = true,
            side => sides.push(PathBuf::from(side)),
        }
    }
    let [old, new] = sides.as_slice() else {
        bail!("same needs two programs, or two folders of output");
    };
    let old = Side::of(old, old_jobs)?;
    let new = Side::of(new, new_jobs)?;
    let tally = compare(old.folder(), new.folder())?;
    println!("{}", tally.report(texts));
    Ok(tally.same())
}

/// One side of the comparison: a folder that is there, or one that a program filled.
enum Side {
    Given(PathBuf),
    Made(tempfile::TempDir),
}

impl Side {
    /// `path` if it is a folder; else the output of the program there for the jobs of `jobs`, which
    /// are those of the tree that the program lies in unless they are named.
    fn of(path: &Path, jobs: Option<PathBuf>) -> Result<Self> {
        if path.is_dir() {
            return Ok(Self::Given(path.to_path_buf()));
        }
        let program = path
            .canonicalize()
            .with_context(|| format!("no program at {}", path.display()))?;
        let demo = || {
            program
                .ancestors()
                .map(|folder| folder.join(DEMO))
                .find(|demo| demo.is_dir())
        };
        let jobs = jobs.or_else(demo).context("name the folder of its jobs")?;
        let folder = tempfile::tempdir()?;
        output::make(&program, &jobs, folder.path())
            .with_context(|| format!("running {}", path.display()))?;
        Ok(Self::Made(folder))
    }

    fn folder(&self) -> &Path {
        match self {
            Self::Given(path) => path,
            Self::Made(folder) => folder.path(),
        }
    }
}

/// Compares two folders of output, job by job.
fn compare(old: &Path, new: &Path) -> Result<Tally> {
    let (old, new) = (output::read(old)?, output::read(new)?);
    let mut tally = Tally::default();
    let only = |one: &Outputs, other: &Outputs| -> Vec<String> {
        one.keys()
            .filter(|job| !other.contains_key(*job))
            .cloned()
            .collect()
    };
    tally.count(Kind::Jobs, old.len(), only(&old, &new));
    tally.count(Kind::NewJobs, 0, only(&new, &old));
    for (name, old) in &old {
        let Some(new) = new.get(name) else { continue };
        bores::compare(name, old, new, &mut tally)?;
        machine::compare(name, old, new, &mut tally)?;
        sheets::compare(name, old, new, &mut tally)?;
        findings::compare(name, old, new, &mut tally)?;
    }
    Ok(tally)
}

#[cfg(test)]
mod tests;
