//! The steps without bores: paper, body, motion, worked example.

use egui::Ui;
use flapwright_model::card::OpeningKind;
use flapwright_model::card_draft::{CardDraft, DraftBodies, DraftExample, Grid};
use flapwright_model::field::{Choices, CutPartField, DraftField, Value};

use super::board::Board;
use super::rows::{cells, take_cells};
use super::table::{Column, Table, table_ui};
use crate::window::tokens::bold;

fn heading(ui: &mut Ui, words: &str) {
    ui.add_space(6.0);
    ui.label(bold(words));
}

/// Name, opening kind, the units of the paper.
pub(super) fn paper_ui(ui: &mut Ui, board: &mut Board<'_>, draft: &mut CardDraft) {
    use DraftField as F;
    board.field(ui, "", draft, F::Name);
    if let Some(Value::Choice(name)) = board.asked(ui, "", draft, F::Kind)
        && let Some(kind) = OpeningKind::named(&name)
    {
        draft.change_kind(kind);
    }
    board.field(ui, "", draft, F::MakerText);
    heading(ui, "Units on the data sheet");
    board.fields(ui, "", draft, &[F::Lengths, F::Loads]);
    heading(ui, "The fitting");
    board.fields(ui, "", draft, &[F::Sides, F::Per, F::Invented]);
}

/// The space that the body takes, adjustment, parts cut to length, notes.
pub(super) fn body_ui(ui: &mut Ui, board: &mut Board<'_>, draft: &mut CardDraft) {
    use DraftField as F;
    ui.label(bold("The space it takes"));
    let body = [
        F::DownFrom,
        F::DownTo,
        F::BackFrom,
        F::BackTo,
        F::Inward,
        F::BodyFront,
    ];
    board.fields(ui, "", draft, &body);
    heading(ui, "What it can be adjusted by");
    board.fields(ui, "", draft, &F::ADJUSTMENT);
    heading(ui, "Parts cut to length");
    cut_parts_ui(ui, board, draft);
    ui.add_space(6.0);
    board.field(ui, "", draft, F::Notes);
}

fn cut_parts_ui(ui: &mut Ui, board: &mut Board<'_>, draft: &mut CardDraft) {
    let columns = CutPartField::COLUMNS;
    let mut grid = Grid::new(columns.map(|it| it.info().label));
    grid.rows = draft
        .cut_parts
        .iter()
        .map(|it| cells(it, &columns))
        .collect();
    let field = |row: usize, column: usize| {
        let path = columns.get(column).map(|it| it.info().path);
        format!("cut_parts[{row}]{}", path.unwrap_or_default())
    };
    let new_row = |_: &Grid, _: usize| vec![String::new(), String::new(), "1".to_owned()];
    let sheet = Table {
        path: "cut_parts",
        name: "Parts cut to length",
        columns: columns
            .iter()
            .zip([150.0, 120.0, 70.0])
            .map(|(it, width)| Column::new(it.info().label, width))
            .collect(),
        field: &field,
        new_row: &new_row,
        datums: Vec::new(),
    };
    if table_ui(ui, board, &sheet, &mut grid).changed {
        draft
            .cut_parts
            .resize_with(grid.rows.len(), Default::default);
        for (row, part) in draft.cut_parts.iter_mut().enumerate() {
            take_cells(part, &columns, &grid, row);
        }
    }
}

/// Pivots and end angle.
pub(super) fn motion_ui(ui: &mut Ui, board: &mut Board<'_>, draft: &mut CardDraft) {
    use DraftField as F;
    board.fields(ui, "", draft, &[F::EndAngle, F::PivotFront]);
    ui.add_space(4.0);
    if draft.kind == OpeningKind::TopHingedFlap {
        let bodies = &mut draft.linkage.bodies;
        let mut table = matches!(bodies, DraftBodies::PoseTable { .. });
        let all = [
            (false, "about a fixed axis"),
            (true, "as a table of places says"),
        ];
        let hint = "A linked hinge has no fixed axis: type the places of a point of the door.";
        if board.choice(ui, "linkage.how", "the door turns", hint, &mut table, &all) {
            *bodies = if table {
                DraftBodies::blank_pose_table()
            } else {
                DraftBodies::blank(draft.kind)
            };
        }
    }
    ui.label(bold(
        "Pivots, door closed: down from the underside of the top, back from the front",
    ));
    board.fields(ui, "", draft, &F::BODIES);
    if let DraftBodies::PoseTable { poses, .. } = &mut draft.linkage.bodies {
        poses_ui(ui, board, poses);
    }
    ui.add_space(6.0);
    board.fields(ui, "", draft, &[F::PathTolerance, F::Damping]);
}

fn poses_ui(ui: &mut Ui, board: &mut Board<'_>, poses: &mut Grid) {
    let field = |row: usize, column: usize| {
        let title = ["angle", "out", "up"]
            .get(column)
            .copied()
            .unwrap_or_default();
        format!("linkage.bodies.poses[{row}] \"{title}\"")
    };
    let new_row = |_: &Grid, _: usize| Vec::new();
    let sheet = Table {
        path: "linkage.bodies.poses",
        name: "Places of the point",
        columns: vec![
            Column::new("opening angle", 100.0),
            Column::new("out", 90.0),
            Column::new("up", 90.0),
        ],
        field: &field,
        new_row: &new_row,
        datums: Vec::new(),
    };
    table_ui(ui, board, &sheet, poses);
}

/// The worked example.
pub(super) fn example_ui(ui: &mut Ui, board: &mut Board<'_>, draft: &mut CardDraft) {
    use DraftField as F;
    let mut has = draft.example.is_some();
    let hint = "A card without an example is not proved, and every sheet says so.";
    let no_yes = [(false, "no"), (true, "yes")];
    if board.choice(
        ui,
        "example.has",
        "the paper has one",
        hint,
        &mut has,
        &no_yes,
    ) {
        draft.example = has.then(DraftExample::default);
    }
    board.fields(ui, "", draft, &F::EXAMPLE);
    if draft.kind == OpeningKind::FoldingPair {
        board.fields(ui, "", draft, &[F::ExampleJoint]);
    }
    let Some(example) = &mut draft.example else {
        return;
    };
    ui.add_space(4.0);
    ui.label(bold(
        "Bores in the side: down from its top end, back from its front",
    ));
    places_ui(
        ui,
        board,
        ("example.side", "Example, side"),
        ["down", "back"],
        &mut example.side,
    );
    ui.add_space(4.0);
    ui.label(bold(
        "Bores in the door: in from its edge, down from its top (no spread ones)",
    ));
    places_ui(
        ui,
        board,
        ("example.door", "Example, door"),
        ["in", "down"],
        &mut example.door,
    );
}

fn places_ui(
    ui: &mut Ui,
    board: &mut Board<'_>,
    (path, name): (&str, &str),
    titles: [&str; 2],
    grid: &mut Grid,
) {
    let field = |row: usize, column: usize| {
        let title = titles.get(column).copied().unwrap_or_default();
        format!("{path}[{row}] \"{title}\"")
    };
    let new_row = |_: &Grid, _: usize| Vec::new();
    let sheet = Table {
        path,
        name,
        columns: titles.map(|title| Column::new(title, 110.0)).to_vec(),
        field: &field,
        new_row: &new_row,
        datums: Vec::new(),
    };
    table_ui(ui, board, &sheet, grid);
}
