//! `flapwright check`: the findings of a job.

use std::path::PathBuf;

use anyhow::{Result, bail};
use clap::Args;
use flapwright_answer::AppliedRemedy;
use flapwright_model::message::Say;
use flapwright_rules::finding::{Finding, Severity};
use flapwright_rules::inspection::Inspection;
use flapwright_rules::plural::count;
use flapwright_session::Session;
use flapwright_session::action::Action;
use flapwright_session::outcome::Outcome;
use flapwright_words::{Names, Speaker, effect, headline, place, places, reasons, remedy};
use serde_json::{Value, json};

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
    let inspection = &session.document().judged();
    let names = Names::of(session.job());
    let speaker = names.speaker();
    if arguments.json {
        say(&as_json(arguments, inspection, &applied, &speaker)?)?;
    } else {
        as_text(arguments, inspection, &applied, &speaker)?;
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
    speaker: &Speaker<'_>,
) -> Result<String> {
    let findings = inspection.findings.iter();
    let findings: Vec<Value> = findings.map(|it| finding_json(it, speaker)).collect();
    if !arguments.apply_safe {
        return Ok(serde_json::to_string_pretty(&findings)?);
    }
    let applied: Vec<Value> = applied
        .iter()
        .map(|it| {
            let (place, title) = (places(&it.subjects, speaker), speaker.say(&it.kind));
            json!({"check": it.check, "place": place, "title": title})
        })
        .collect();
    let all = json!({"applied": applied, "findings": findings});
    Ok(serde_json::to_string_pretty(&all)?)
}

/// A finding for machines: what it is as data, and what is said of it.
fn finding_json(finding: &Finding, speaker: &Speaker<'_>) -> Value {
    let remedies: Vec<Value> = finding
        .remedies
        .iter()
        .map(|it| {
            json!({
                "kind": it.kind.say().key,
                "title": remedy(it, speaker),
                "effect": effect(it, speaker),
                "safety": it.safety,
            })
        })
        .collect();
    json!({
        "check": finding.check,
        "severity": finding.severity,
        "kind": finding.message.say().key,
        "message": headline(finding, speaker),
        "reasons": reasons(finding, speaker),
        "place": place(finding, speaker),
        "about": finding.about,
        "accepted": finding.accepted,
        "subjects": finding.subjects,
        "numbers": finding.numbers,
        "remedies": remedies,
    })
}

fn as_text(
    arguments: &Arguments,
    inspection: &Inspection,
    applied: &[AppliedRemedy],
    speaker: &Speaker<'_>,
) -> Result<()> {
    for it in applied {
        say(&format!(
            "applied ({}): {}: {}",
            it.check,
            places(&it.subjects, speaker),
            speaker.say(&it.kind)
        ))?;
    }
    if arguments.apply_safe && applied.is_empty() {
        say("no finding has a safe remedy")?;
    }
    for finding in &inspection.findings {
        print(finding, speaker)?;
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

fn print(finding: &Finding, speaker: &Speaker<'_>) -> Result<()> {
    say(&format!(
        "{} ({}): {}",
        finding.severity.word(),
        finding.check,
        headline(finding, speaker)
    ))?;
    if let Some(reason) = &finding.accepted {
        say(&format!("    accepted: {reason}"))?;
    }
    for reason in reasons(finding, speaker) {
        say(&format!("    {reason}"))?;
    }
    for it in &finding.remedies {
        let safe = if it.claims_safe() { ", safe" } else { "" };
        say(&format!(
            "  remedy{safe}: {}: {}",
            remedy(it, speaker),
            effect(it, speaker)
        ))?;
    }
    Ok(())
}
