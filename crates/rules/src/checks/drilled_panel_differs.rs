//! Whether a panel that is drilled is the panel that is needed now.

use flapwright_model::acceptance::Topic;
use flapwright_model::part::{Part, Subject};
use flapwright_model::record::{PanelRecord, RecordState};

use super::bores_off_fitting::severity_of;
use super::drilled_panel_remedies::remedies;
use super::{BoxContext, Check, Run, finding};
use crate::finding::{Finding, Number, Severity};
use crate::inspection::PanelReport;
use crate::panel_difference::{Moved, PanelDifference};
use crate::records::as_needed;

const NAME: &str = "drilled-panel-differs";

pub(super) const CHECK: Check = Check {
    name: NAME,
    page: "\
## What it looks at
Every panel that is marked as drilled: its size, its thickness and each of its bores against the \
panel that box, door, card and size need now. Differences up to the setting for bores off the \
fitting do not count.

## Why it matters
Bores in a drilled panel are facts. Whatever is changed in the job afterwards, they stay where they \
are, and the fitting does not.

## Severity
Stop when a bore is needed elsewhere or at another depth or is missing, or when the panel has another \
size. Caution when there are only bores too many, and for the back of a door whose bores the fitting's \
adjustment takes up.

## What can be done
Choose a size whose bores agree with the drilled panel; set the reveals so that the drilled door \
keeps its size and its bores come onto the fitting; or plug and drill again after the list.",
    severities: &[Severity::Caution, Severity::Stop],
    settings: &["off_fitting_ignored"],
    run: Run::Box(look),
};

fn look(context: &BoxContext<'_>, findings: &mut Vec<Finding>) {
    let mut drilled = context
        .wall_box
        .records
        .iter()
        .filter(|record| record.state == RecordState::Drilled)
        .peekable();
    if drilled.peek().is_none() {
        return;
    }
    let needed = as_needed(context.job, context.wall_box);
    for record in drilled {
        let part = record.part;
        match needed.panel(part) {
            Some(panel) => findings.extend(compare(context, record, panel)),
            None => {
                let it = finding(
                    NAME,
                    Severity::Caution,
                    format!(
                        "\"{}\": a panel with {} is marked as drilled and the box has it no longer",
                        context.report.name,
                        crate::plural::count(record.bores.len(), "bore")
                    ),
                    vec![context.box_subject()],
                );
                findings.push(it.about([Topic::Part(context.part_id(part))]));
            }
        }
    }
}

fn compare(context: &BoxContext<'_>, record: &PanelRecord, panel: &PanelReport) -> Option<Finding> {
    let unit = context.job.unit;
    let slack = context.job.settings.off_fitting_ignored;
    let difference = PanelDifference::of(record, panel, slack);
    if difference.is_empty() {
        return None;
    }
    let mut it = finding(
        NAME,
        severity(context, record.part, &difference),
        format!(
            "{} is drilled and is not what is needed now: {}",
            context.panel_words(panel),
            difference.words(unit)
        ),
        vec![Subject::Part(context.part_id(record.part))],
    );
    it.details = difference.lines(record.state, unit);
    it.numbers =
        vec![Number::mm("largest move of a bore", difference.largest()).worse_when_greater()];
    for (what, was, is) in &difference.sizes {
        it.numbers
            .push(Number::mm(format!("{what}, drilled"), *was));
        it.numbers.push(Number::mm(format!("{what}, needed"), *is));
    }
    it.remedies = remedies(context, record, &difference);
    Some(it)
}

fn severity(context: &BoxContext<'_>, part: Part, difference: &PanelDifference) -> Severity {
    if !difference.sizes.is_empty() || !difference.missing.is_empty() {
        return Severity::Stop;
    }
    if difference.moved.is_empty() {
        return Severity::Caution;
    }
    // No adjustment makes a bore deeper.
    if difference.moved.iter().any(Moved::has_other_depth) {
        return Severity::Stop;
    }
    // What is off at a door's back may be within the fitting's adjustment.
    let Some(door_id) = part.door() else {
        return Severity::Stop;
    };
    let adjustment = context
        .wall_box
        .door(door_id)
        .and_then(|door| door.fitting.as_ref())
        .and_then(|choice| context.card(choice))
        .map(|card| card.adjustment);
    let door = context.report.door(door_id);
    match (adjustment, door) {
        (Some(adjustment), Some(door)) => {
            severity_of(context, &door.offsets, &adjustment).unwrap_or(Severity::Caution)
        }
        _ => Severity::Stop,
    }
}
