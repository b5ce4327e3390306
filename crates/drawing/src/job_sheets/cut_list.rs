//! The cut list.

use flapwright_model::length::show_mm_tenth;

use super::cut_rows::{CutRow, is_bar, rows};
use super::flow::{Flow, Theme};
use super::list_table::{Cell, Column, ListTable};
use super::setup::SheetSetup;
use crate::cautions::{Context, cautions};
use crate::draft::Draft;
use crate::edge_mark::EdgeMark;
use crate::page_kind::PageKind;

const COLUMNS: [Column; 9] = [
    Column::words("part", 60.0),
    Column::number("pcs"),
    Column::number("cut length"),
    Column::number("width"),
    Column::number("finished"),
    Column::number("thick"),
    Column::words("material", 34.0),
    Column::mark("mark"),
    Column::words("edge bands", 60.0),
];

/// The pages of the cut list; none for a job without boxes.
pub(super) fn pages(setup: &SheetSetup<'_>) -> Vec<Draft> {
    let mut table = ListTable::new(COLUMNS);
    for report in &setup.inspection.boxes {
        let boxes = match report.quantity {
            1 => "1 box".to_owned(),
            many => format!("{many} boxes; pieces are for all of them"),
        };
        table.group(format!("{}: {boxes}", report.name));
        for row in rows(setup.job, report) {
            table.row(cells(&row));
        }
    }
    if table.is_empty() {
        return Vec::new();
    }
    let theme = Theme {
        kind: PageKind::CutList,
        title: "Cut list".to_owned(),
        headline: "CUT LIST".to_owned(),
        lead: vec![
            "Sizes in mm. Cut = finished less the edge bands: saw to the cut size. Length runs \
             along the grain; without grain it is the longer side. In the mark the length lies \
             level; thick strokes are banded edges, the double arrow is the grain."
                .to_owned(),
            "Grooves, housings and joints are not added; panels housed or grooved have their \
             whole size, hidden parts included."
                .to_owned(),
        ],
        cautions: cautions(Context {
            cutting: true,
            ..Context::default()
        }),
        invented: setup.invented(),
    };
    let mut flow = Flow::new(setup, theme);
    flow.table_in_columns(&table);
    flow.finish()
}

fn cells(row: &CutRow) -> Vec<Cell> {
    let [length, width] = row.cut.map(show_mm_tenth);
    if is_bar(row) {
        return vec![
            row.name.clone().into(),
            row.pieces.to_string().into(),
            length.into(),
            "–".into(),
            "–".into(),
            "–".into(),
            row.material.clone().into(),
            "".into(),
            "cut to length".into(),
        ];
    }
    let finished = row.finished.map(show_mm_tenth).join(" × ");
    vec![
        row.name.clone().into(),
        row.pieces.to_string().into(),
        length.into(),
        width.into(),
        finished.into(),
        row.thickness.map_or_else(String::new, show_mm_tenth).into(),
        row.material.clone().into(),
        Cell::Edges(EdgeMark {
            bands: row.bands,
            length_along_u: row.length_along_u,
            grain: row.grain,
        }),
        row.edges.clone().into(),
    ]
}
