//! Whether an exported sheet still shows the panel as it is.

use flapwright_model::part::Subject;
use flapwright_model::record::RecordState;

use super::{BoxContext, Check, Run, finding};
use crate::finding::{Finding, Number, Severity};
use crate::panel_difference::PanelDifference;

const NAME: &str = "stale-sheet";

/// Differences that a sheet cannot show, mm: half of what it is printed to.
const UNSEEN: f64 = 0.05;

pub(super) const CHECK: Check = Check {
    name: NAME,
    page: "\
## What it looks at
Panels whose drilling sheet was exported: size, thickness and every bore of the sheet against the \
panel as it is now. Differences below half of the 0.1 mm that sheets are printed to do not count.

## Why it matters
An old sheet on the bench drills an old panel, and nobody sees it before the door is to be hung.

## Severity
Caution.

## What can be done
Export the sheet again and throw the old one away; or undo the change. When the panel is drilled \
after the old sheet already, mark it as drilled before anything is changed.",
    severities: &[Severity::Caution],
    settings: &[],
    run: Run::Box(look),
};

fn look(context: &BoxContext<'_>, findings: &mut Vec<Finding>) {
    let unit = context.job.unit;
    for record in &context.wall_box.records {
        if record.state != RecordState::SheetExported {
            continue;
        }
        let part = record.part;
        let Some(panel) = context.report.panel(part) else {
            continue;
        };
        let difference = PanelDifference::of(record, panel, UNSEEN);
        if difference.is_empty() {
            continue;
        }
        let revision = if record.revision.is_empty() {
            String::new()
        } else {
            format!(" at revision {}", record.revision)
        };
        let mut it = finding(
            NAME,
            Severity::Caution,
            format!(
                "{}: its sheet was exported{revision} and is out of date: {}; export it again",
                context.panel_words(panel),
                difference.words(unit)
            ),
            vec![Subject::Part(context.part_id(part))],
        );
        it.details = difference.lines(record.state, unit);
        it.numbers = vec![
            Number::mm("largest move of a bore", difference.largest()).worse_when_greater(),
            Number::of("bores moved", number(difference.moved.len()), "").worse_when_greater(),
        ];
        findings.push(it);
    }
}

/// A count as a number of a finding.
fn number(count: usize) -> f64 {
    f64::from(u32::try_from(count).unwrap_or(u32::MAX))
}
