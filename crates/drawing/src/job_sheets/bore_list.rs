//! The list of all bores of all panels.

use flapwright_model::length::{show_inch_64, show_mm_tenth};
use flapwright_rules::fingerprint::{fingerprint, grouped};
use flapwright_rules::inspection::{BoxReport, PanelReport};

use super::flow::{Flow, Theme};
use super::list_table::{Cell, Column, ListTable};
use super::setup::SheetSetup;
use crate::cautions::{Context, cautions};
use crate::draft::Draft;
use crate::page_kind::PageKind;
use crate::panel_sheet::facts::Facts;
use crate::text::set_fractions;

/// The pages of the list; none when nothing is drilled.
pub(super) fn pages(setup: &SheetSetup<'_>) -> Vec<Draft> {
    let inches = setup.job.settings.inches_on_sheets;
    let mut columns = vec![
        Column::number("No"),
        Column::number("u"),
        Column::number("v"),
    ];
    if inches {
        columns.extend([Column::number("u in"), Column::number("v in")]);
    }
    columns.extend([
        Column::number("Ø"),
        Column::number("depth"),
        Column::words("for", 80.0),
    ]);
    let mut table = ListTable::new(columns);
    for (report, panel) in setup.drilled() {
        let facts = Facts::new(setup.job, setup.inspection, report, panel);
        table.group(group_words(report, panel, facts.cut));
        for hole in &facts.holes {
            let mut cells: Vec<Cell> = vec![
                hole.number.to_string().into(),
                show_mm_tenth(hole.u).into(),
                show_mm_tenth(hole.v).into(),
            ];
            if inches {
                cells.extend([hole.u, hole.v].map(|it| set_fractions(&show_inch_64(it)).into()));
            }
            cells.extend([
                show_mm_tenth(hole.diameter).into(),
                hole.depth_words().into(),
                hole.purpose.clone().into(),
            ]);
            table.row(cells);
        }
    }
    if table.is_empty() {
        return Vec::new();
    }
    let theme = Theme {
        kind: PageKind::BoreList,
        title: "List of bores".to_owned(),
        headline: "LIST OF BORES".to_owned(),
        lead: vec![
            "mm from the zero corner of each panel, as its drilling sheet marks it. Sides: u from \
             the front edge, v from the top end, on the inner face. Tops and shelves: u from the \
             box-left end, v from the front edge, on the underside. Doors: u from the box-right \
             edge, v from the top edge, on the BACK."
                .to_owned(),
        ],
        cautions: cautions(Context {
            blind: true,
            ..Context::default()
        }),
        invented: setup.invented(),
    };
    let mut flow = Flow::new(setup, theme);
    flow.table_in_columns(&table);
    flow.finish()
}

fn group_words(report: &BoxReport, panel: &PanelReport, cut: bool) -> String {
    let edges = if cut { "CUT edges" } else { "finished edges" };
    format!(
        "{}: {}, make {}, from {edges}, bores {}",
        report.name,
        panel.name,
        report.quantity,
        grouped(&fingerprint(panel))
    )
}
