//! The command line.

mod bores;
mod card;
mod check;
mod explain;
mod export;
mod sheets;
mod sizes;

use std::io::{self, Write as _};
use std::path::PathBuf;
use std::process::ExitCode;

use anyhow::Result;
use clap::{Parser, Subcommand};

use flapwright_session::{job_file, shipped};

use crate::window;

/// Done, and nothing to object to.
const FINE: u8 = 0;
/// The job has a finding of severity stop.
const STOPPED: u8 = 1;
/// The input could not be used, or the output not be written.
const BAD_INPUT: u8 = 2;

/// Turns a wall cabinet with a lift-up door into parts that fit the first time.
///
/// Without a command it opens the window: on JOB, or on an unsaved copy of the demo job.
#[derive(Debug, Parser)]
#[command(version, about, long_about = None, args_conflicts_with_subcommands = true)]
struct Arguments {
    #[command(subcommand)]
    command: Option<Command>,
    /// Job file to open in the window
    job: Option<PathBuf>,
}

#[derive(Debug, Subcommand)]
enum Command {
    /// Write the drilling sheets of a job
    Sheets(sheets::Arguments),
    /// Write the bores of a job for a machine: DXF, CSV, JSON
    Bores(bores::Arguments),
    /// Print the findings of a job; ends with 1 if one of them is a stop, with 2 on bad input
    Check(check::Arguments),
    /// Print a verdict on every size of fitting for each door, the best first
    Sizes(sizes::Arguments),
    /// Look at fitting cards as files
    Card(card::Arguments),
    /// Print what a check looks at and why, or list all checks
    Explain(explain::Arguments),
}

/// Runs the command line and returns the exit code: 0 done, 1 a finding of severity stop
/// (`check`), 2 bad input.
#[must_use]
pub fn main() -> ExitCode {
    let arguments = Arguments::parse();
    let outcome = match arguments.command {
        Some(Command::Sheets(arguments)) => sheets::run(&arguments),
        Some(Command::Bores(arguments)) => bores::run(&arguments),
        Some(Command::Check(arguments)) => check::run(&arguments),
        Some(Command::Sizes(arguments)) => sizes::run(&arguments),
        Some(Command::Card(arguments)) => card::run(&arguments),
        Some(Command::Explain(arguments)) => explain::run(&arguments),
        None => open_window(arguments.job),
    };
    match outcome {
        Ok(code) => ExitCode::from(code),
        Err(error) => {
            // A reader that went away (`| head`) is no failure of ours.
            let gone = error.chain().any(|cause| {
                cause
                    .downcast_ref::<io::Error>()
                    .is_some_and(|error| error.kind() == io::ErrorKind::BrokenPipe)
            });
            if gone {
                return ExitCode::from(FINE);
            }
            eprintln!("flapwright: {error:#}");
            ExitCode::from(BAD_INPUT)
        }
    }
}

fn open_window(path: Option<PathBuf>) -> Result<u8> {
    let job = match &path {
        Some(path) => job_file::read(path)?,
        None => shipped::demo_job()?,
    };
    window::run(job, path).map_err(|error| {
        anyhow::anyhow!("{error}; `flapwright sheets JOB.ron --out DIR` makes sheets without one")
    })?;
    Ok(FINE)
}

/// Prints a line to standard output; an error, not a panic, when nobody reads it.
fn say(line: &str) -> Result<()> {
    Ok(writeln!(io::stdout().lock(), "{line}")?)
}
