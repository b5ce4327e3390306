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
    let inspection = inspect(&job);
    if arguments.json {
        say(&serde_json::to_string_pretty(&inspection.findings)?)?;
    } else {
        for finding in &inspection.findings {
            print(finding)?;
        }
        let accepted = inspection
            .findings
            .iter()
            .filter(|it| it.accepted.is_some())
            .count();
        let accepted = if accepted == 0 {
            String::new()
        } else {
            format!(", {accepted} accepted")
        };
        say(&format!(
            "{}, {}, {}{accepted}",
            count(inspection.open(Severity::Stop), "stop"),
            count(inspection.open(Severity::Caution), "caution"),
            count(inspection.open(Severity::Note), "note")
        ))?;
    }
    Ok(if inspection.open(Severity::Stop) > 0 {
        STOPPED
    } else {
        FINE
    })
}

fn print(finding: &Finding) -> Result<()> {
    say(&format!(
        "{} ({}): {}",
        finding.severity.word(),
        finding.check,
        finding.message
    ))?;
    if let Some(reason) = &finding.accepted {
        say(&format!("    accepted: {reason}"))?;
    }
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
