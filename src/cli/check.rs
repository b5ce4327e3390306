//! `flapwright check`: the findings of a job.

use std::path::PathBuf;

use anyhow::Result;
use clap::Args;
use flapwright_rules::finding::{Finding, Severity};
use flapwright_rules::inspect;
use flapwright_rules::say::count;

use super::{FINE, STOPPED, say};
use crate::job_file;

#[derive(Debug, Args)]
pub(super) struct Arguments {
    /// Job file
    job: PathBuf,
    /// Print the findings as JSON
    #[arg(long)]
    json: bool,
}

pub(super) fn run(arguments: &Arguments) -> Result<u8> {
    let job = job_file::read(&arguments.job)?;
    let findings = inspect(&job).findings;
    if arguments.json {
        say(&serde_json::to_string_pretty(&findings)?)?;
    } else {
        for finding in &findings {
            print(finding)?;
        }
        let number = |severity| findings.iter().filter(|it| it.severity == severity).count();
        say(&format!(
            "{}, {}, {}",
            count(number(Severity::Stop), "stop"),
            count(number(Severity::Caution), "caution"),
            count(number(Severity::Note), "note")
        ))?;
    }
    let stopped = findings
        .iter()
        .any(|finding| finding.severity == Severity::Stop);
    Ok(if stopped { STOPPED } else { FINE })
}

fn print(finding: &Finding) -> Result<()> {
    say(&format!(
        "{} ({}): {}",
        finding.severity.word(),
        finding.check,
        finding.message
    ))?;
    for detail in &finding.details {
        say(&format!("    {detail}"))?;
    }
    for remedy in &finding.remedies {
        let safe = if remedy.safe { ", safe" } else { "" };
        say(&format!(
            "  remedy{safe}: {}: {}",
            remedy.title, remedy.effect
        ))?;
    }
    Ok(())
}
