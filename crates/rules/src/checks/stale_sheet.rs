//! Whether an exported sheet still shows the panel as it is.

use flapwright_model::message::{Count, Mm};
use flapwright_model::part::Subject;
use flapwright_model::record::RecordState;

use super::{BoxContext, Check, Run, finding};
use crate::finding::{Finding, Severity};
use crate::message::StaleSheet;
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
    for record in &context.wall_box.records {
        if record.state != RecordState::SheetExported {
            continue;
        }
        let part = record.part;
        let Some(panel) = context.report.panel(part) else {
            continue;
        };
        let difference = PanelDifference::of(record, panel, UNSEEN);
        let mut parts = difference.parts().into_iter();
        let Some(first) = parts.next() else {
            continue;
        };

        let mut it = finding(
            NAME,
            Severity::Caution,
            StaleSheet::OutOfDate {
                first,
                largest_move_of_a_bore: Mm(difference.largest()),
                bores_moved: Count(difference.moved.len()),
            },
            vec![Subject::Part(context.part_id(part))],
        );
        if !record.revision.is_empty() {
            it.because(StaleSheet::Revision {
                revision: record.revision.clone(),
            });
        }
        for more in parts {
            it.because(more);
        }
        for line in difference.lines(record.state) {
            it.because(line);
        }
        it.because(StaleSheet::ExportAgain);
        findings.push(it);
    }
}
