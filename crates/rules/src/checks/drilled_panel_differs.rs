//! Whether a panel that is drilled is the panel that is needed now.

use flapwright_model::acceptance::Topic;
use flapwright_model::message::{Count, Mm};
use flapwright_model::part::{Part, Subject};
use flapwright_model::record::{PanelRecord, RecordState};

use super::bores_off_fitting::severity_of;
use super::drilled_panel_remedies::remedies;
use super::{BoxContext, Check, Run, finding};
use crate::finding::{Finding, Severity};
use crate::inspection::PanelReport;
use crate::message::{DrilledPanelDiffers, PanelDiffers};
use crate::panel_difference::{Moved, PanelDifference};
use crate::records::as_needed;

const NAME: &str = "drilled-panel-differs";

pub(super) const CHECK: Check = Check {
    name: NAME,
    page: "\
## What it looks at
Every panel that is marked as drilled: its size, its thickness and each of its bores against the \
panel that box, door, card and size need now. Differences up to the setting “off fitting” do not \
count.

## Why it matters
Bores in a drilled panel are facts. Whatever is changed in the job afterwards, they stay where \
they are, and the fitting does not.

## Severity
Stop when a bore is needed elsewhere or at another depth or is missing, or when the panel has \
another size. Caution when there are only bores too many, and for the back of a door whose bores \
the fitting's adjustment takes up.

## What can be done
Choose a size whose bores agree with the drilled panel; set the reveals so that the drilled door \
keeps its size and its bores come onto the fitting; or plug and drill again as listed.",
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
                    DrilledPanelDiffers::Gone {
                        bores: Count(record.bores.len()),
                    },
                    vec![context.box_subject()],
                );
                findings.push(it.about([Topic::Part(context.part_id(part))]));
            }
        }
    }
}

fn compare(context: &BoxContext<'_>, record: &PanelRecord, panel: &PanelReport) -> Option<Finding> {
    let slack = context.job.settings.off_fitting_ignored;
    let difference = PanelDifference::of(record, panel, slack);
    let parts = difference.parts();
    let first = parts.first()?.clone();
    let mut it = finding(
        NAME,
        severity(context, record.part, &difference),
        differs(&difference, first),
        vec![Subject::Part(context.part_id(record.part))],
    );
    for more in parts.into_iter().skip(1) {
        it.because(more);
    }
    for line in difference.lines(record.state) {
        it.because(line);
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

/// What is said of a drilled panel, its most important difference first.
fn differs(difference: &PanelDifference, first: PanelDiffers) -> DrilledPanelDiffers {
    let size = |what: &str| {
        let mut sizes = difference.sizes.iter();
        let its = sizes.find(|(name, _, _)| name.0 == what);
        its.map_or((None, None), |(_, was, is)| (Some(Mm(*was)), Some(Mm(*is))))
    };
    let (width, height) = (size("width"), size("height"));
    let (depth, thickness) = (size("depth"), size("thickness"));
    DrilledPanelDiffers::Differs {
        first,
        largest_move_of_a_bore: Mm(difference.largest()),
        width_drilled: width.0,
        width_needed: width.1,
        height_drilled: height.0,
        height_needed: height.1,
        depth_drilled: depth.0,
        depth_needed: depth.1,
        thickness_drilled: thickness.0,
        thickness_needed: thickness.1,
    }
}
