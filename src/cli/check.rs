//! `flapwright check`: the findings of a job.

use std::path::PathBuf;

use anyhow::{Result, bail};
use clap::Args;
use flapwright_rules::AppliedRemedy;
use flapwright_rules::finding::{Finding, Severity};
use flapwright_rules::inspection::Inspection;
use flapwright_rules::plural::count;
use flapwright_session::Session;
use flapwright_session::action::Action;
use flapwright_session::outcome::Outcome;

use super::{FINE, STOPPED, say};

#[derive(Debug, Args)]
pub(super) struct Arguments {
    /// Job file
    job: PathBuf,
    /// Print the findings as JSON
    #[arg(long)]
    json: bool,
    /// Apply every remedy that clears its finding and adds no stop, and write the job back
    #[arg(long)]
    apply_safe: bool,
    /// Write the remedied job here and leave JOB as it is
    #[arg(long, value_name = "FILE", requires = "apply_safe")]
    out: Option<PathBuf>,
}

pub(super) fn run(arguments: &Arguments) -> Result<u8> {
    let mut session = Session::open(arguments.job.clone())?;
    let applied = if arguments.apply_safe {
        apply_safe(&mut session, arguments)?
    } else {
        Vec::new()
    };
    let inspection = session.inspection();
    if arguments.json {
        say(&as_json(arguments, inspection, &applied)?)?;
    } else {
        as_text(arguments, inspection, &applied)?;
    }
    Ok(if inspection.open(Severity::Stop) > 0 {
        STOPPED
    } else {
        FINE
    })
}

/// Applies every safe remedy and writes the job; one that needed nothing is not written over itself.
fn apply_safe(session: &mut Session, arguments: &Arguments) -> Result<Vec<AppliedRemedy>> {
    let applied = match session.apply(Action::ApplySafe) {
        Outcome::Remedied(applied) => applied,
        _ => Vec::new(),
    };
    let write = match &arguments.out {
        Some(path) => Action::SaveAs(path.clone()),
        None if applied.is_empty() => return Ok(applied),
        None => Action::Save,
    };
    if let Outcome::Failed { why, .. } = session.apply(write) {
        bail!(why);
    }
    Ok(applied)
}

/// The findings; with remedies applied also what was done.
fn as_json(
    arguments: &Arguments,
    inspection: &Inspection,
    applied: &[AppliedRemedy],
) -> Result<String> {
    if !arguments.apply_safe {
        return Ok(serde_json::to_string_pretty(&inspection.findings)?);
    }
    let applied: Vec<serde_json::Value> = applied
        .iter()
        .map(|it| serde_json::json!({"check": it.check, "place": it.place, "title": it.title}))
        .collect();
    let all = serde_json::json!({"applied": applied, "findings": inspection.findings});
    Ok(serde_json::to_string_pretty(&all)?)
}

fn as_text(
    arguments: &Arguments,
    inspection: &Inspection,
    applied: &[AppliedRemedy],
) -> Result<()> {
    for it in applied {
        say(&format!(
            "applied ({}): {}: {}",
            it.check, it.place, it.title
        ))?;
    }
    if arguments.apply_safe && applied.is_empty() {
        say("no finding has a safe remedy")?;
    }
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
    ))
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
