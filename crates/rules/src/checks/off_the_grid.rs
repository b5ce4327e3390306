//! Whether the rows of shelf bores could carry the fitting's bores on their own grid.

use flapwright_model::edit::Edit;
use flapwright_model::message::Mm;
use flapwright_model::part::{Part, Subject};

use super::{BoxContext, Check, Run, finding};
use crate::finding::{Finding, Remedy, Safety, Severity};
use crate::inspection::{BoreSource, PanelReport};
use crate::message::{Effect, OffTheGrid, RemedyKind};

const NAME: &str = "off-the-grid";

pub(super) const CHECK: Check = Check {
    name: NAME,
    page: "\
## What it looks at
Sides with rows of shelf bores: fitting bores whose heights are whole steps of the grid from each \
other, and lie off the rows' grid all the same.

## Why it matters
A machine with a row of spindles bores them in one go where they are on the grid, and one by one \
where they are not. Where the fitting's own bores are no whole steps apart no row helps, and \
nothing is said.

## Severity
Note. The step is the setting “bore grid” (default 32 mm, the trade's; 0 turns the check off).

## What can be done
Move the first bore of the rows.",
    severities: &[Severity::Note],
    settings: &["grid_step"],
    run: Run::Box(look),
};

/// Off by less than this is on the grid, mm: half of what sheets are printed to.
const ON_GRID: f64 = 0.05;

fn look(context: &BoxContext<'_>, findings: &mut Vec<Finding>) {
    let step = context.job.settings.grid_step;
    let Some(rows) = context.wall_box.system_rows.as_ref() else {
        return;
    };
    if step <= 0.0 {
        return;
    }
    let sides = context
        .report
        .panels
        .iter()
        .filter(|panel| matches!(panel.id.part, Part::LeftSide | Part::RightSide));
    for panel in sides {
        let Some(off) = off_grid(panel, rows.first, step) else {
            continue;
        };
        let first = rows.first + off;
        let mut it = finding(
            NAME,
            Severity::Note,
            OffTheGrid::Below {
                below_the_grid: Mm(off),
            },
            vec![Subject::Part(panel.id)],
        );

        let mut with = context.wall_box.clone();
        if let Some(rows) = &mut with.system_rows {
            rows.first = first;
        }
        it.remedies.push(Remedy {
            kind: RemedyKind::MoveRows,
            effects: vec![Effect::FirstShelfBore {
                was: Mm(rows.first),
                is: Mm(first),
            }],
            safety: Safety::NeedsALook,
            edit: Edit::replace_box(with),
        });
        findings.push(it);
        // Both sides share their rows; one of them says it.
        return;
    }
}

/// How far below the grid the fitting's bores lie, all alike, mm; `None` when they are on it, or
/// are not on one grid by themselves.
fn off_grid(panel: &PanelReport, first: f64, step: f64) -> Option<f64> {
    let heights: Vec<f64> = panel
        .bores
        .iter()
        .filter(|bore| matches!(bore.source, BoreSource::Fitting { .. }))
        .map(|bore| bore.at.uv().1)
        .collect();
    let base = *heights.first()?;
    let on = |by: f64| {
        let over = by.rem_euclid(step);
        over.min(step - over) < ON_GRID
    };
    if !heights.iter().all(|height| on(height - base)) || on(base - first) {
        return None;
    }
    Some((base - first).rem_euclid(step))
}
