//! How each fitting is set, and what is said of its size.

use flapwright_model::length::Unit;
use flapwright_motion::reason::Reason;
use flapwright_motion::sizes::Verdict;
use flapwright_rules::mechanics::mechanics;

use super::fitting_words::lines;
use super::flow::{Flow, Theme};
use super::list_table::{Cell, Column, ListTable};
use super::setup::SheetSetup;
use crate::cautions::{Context, cautions};
use crate::draft::Draft;
use crate::page_kind::PageKind;

/// The pages; none when no door has a fitting.
pub(super) fn pages(setup: &SheetSetup<'_>) -> Vec<Draft> {
    if setup.fittings().next().is_none() {
        return Vec::new();
    }
    let theme = Theme {
        kind: PageKind::FittingSettings,
        title: "Fitting settings".to_owned(),
        headline: "FITTING SETTINGS".to_owned(),
        lead: vec![
            "Reckoned from the card and the door's mass as a range. Settings are where to start; \
             the fitting's own instructions decide."
                .to_owned(),
        ],
        cautions: cautions(Context {
            leaf: true,
            setting: true,
            ..Context::default()
        }),
        invented: setup.invented(),
    };
    let mut flow = Flow::new(setup, theme);
    for (box_index, opening, _) in setup.fittings() {
        one_door(setup, &mut flow, box_index, opening);
    }
    flow.finish()
}

fn one_door(setup: &SheetSetup<'_>, flow: &mut Flow, box_index: usize, opening: usize) {
    let job = setup.job;
    let (Some(wall_box), Some(report)) = (
        job.boxes.get(box_index),
        setup.inspection.boxes.get(box_index),
    ) else {
        return;
    };
    let choice = wall_box
        .openings
        .get(opening)
        .and_then(|it| it.door.as_ref()?.fitting.as_ref());
    let door = report.openings.get(opening).and_then(|it| it.door.as_ref());
    let (Some(choice), Some(door)) = (choice, door) else {
        return;
    };
    let found = mechanics(job, wall_box, report, opening);
    let which = if report.openings.len() > 1 {
        format!(", opening {} from the top", opening + 1)
    } else {
        String::new()
    };
    let boxes = match report.quantity {
        1 => String::new(),
        many => format!(" (in each of {many} boxes)"),
    };
    flow.caption(&format!("{}{which}{boxes}", report.name));
    let mut table = ListTable::new([Column::words("", 30.0), Column::words("", 400.0)]);
    for (label, words) in lines(job, choice, door, found.as_ref()) {
        table.row([Cell::from(label), Cell::from(words)]);
    }
    flow.table(&table);
    if let Some(found) = &found {
        flow.blank(2.0);
        flow.table(&sizes(
            &found.verdicts,
            &choice.card,
            &choice.size,
            job.unit,
        ));
    }
}

/// All sizes of this opening kind with the gravest reason for each.
fn sizes(verdicts: &[Verdict], card: &str, size: &str, unit: Unit) -> ListTable {
    let mut table = ListTable::new([
        Column::words("size", 50.0),
        Column::words("verdict", 24.0),
        Column::words("because", 400.0),
    ]);
    for verdict in verdicts {
        let chosen = if verdict.card == card && verdict.size == size {
            " (chosen)"
        } else {
            ""
        };
        let because = verdict
            .reasons
            .first()
            .map_or_else(String::new, |reason: &Reason| reason.text(unit));
        table.row([
            Cell::from(format!("{}, size {}{chosen}", verdict.card, verdict.size)),
            Cell::from(verdict.grade.words()),
            Cell::from(because),
        ]);
    }
    table
}
