//! The step of the sizes: what each carries, what lifts it, and its columns.

use egui::{Label, RichText, Ui};
use flapwright_model::card_draft::columns::{self, SIZE};
use flapwright_model::card_draft::{CardDraft, Grid};
use flapwright_model::field::{DraftField, SizeColumn};

use super::board::Board;
use super::load_forms::{LoadAsk, load_forms_ui};
use super::table::{Column, Table, table_ui};
use crate::window::tokens::{bold, tokens};

/// Width of a column of the sizes table.
const CELL: f32 = 66.0;

/// What a column of the paper's own means.
const OWN_COLUMN: &str = "A column of the paper: a distance that differs by size names it.";

/// What the step remembers beside the draft.
#[derive(Debug, Clone, Default)]
pub(crate) struct SizesState {
    /// The name of a column that is to be added.
    new_column: String,
    /// The load that is turned into other forms.
    load: LoadAsk,
}

/// What the step asks for.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub(super) struct SizesOutcome {
    /// The chosen row.
    pub(super) row: usize,
    /// Whether readings of a hand scale are to be turned into rows of a spring.
    pub(super) measure: bool,
}

/// Sizes, loads by height, springs.
pub(super) fn sizes_ui(
    ui: &mut Ui,
    board: &mut Board<'_>,
    state: &mut SizesState,
    draft: &mut CardDraft,
) -> SizesOutcome {
    board.field(ui, "", draft, DraftField::LoadGiven);
    let mut strut = draft.sizes.column(columns::STRUT_FORCE).is_some();
    let lifts = [(false, "spring"), (true, "gas strut")];
    let hint = "Struts bring their own columns; springs a table of moments below. Cells of the other \
                kind are dropped; undo brings them back.";
    if board.choice(ui, "sizes.lift", "lifted by", hint, &mut strut, &lifts) {
        if strut {
            draft.lift_by_struts();
        } else {
            draft.lift_by_springs();
        }
    }
    let row = sizes_table(ui, board, draft);
    columns_ui(ui, board, state, draft);
    load_forms_ui(ui, board, &mut state.load, draft, row);
    ui.add_space(6.0);
    ui.label(bold("Masses by height, where the paper has them"));
    loads_ui(ui, board, draft);
    let mut measure = false;
    if !strut {
        ui.add_space(6.0);
        ui.horizontal(|ui| {
            ui.label(bold("Spring moments over the opening angle"));
            let button = ui.small_button("From a hand scale…");
            measure = button
                .on_hover_text("Turns forces read with a hand scale into these rows.")
                .clicked();
        });
        springs_ui(ui, board, draft);
    }
    SizesOutcome { row, measure }
}

fn sizes_table(ui: &mut Ui, board: &mut Board<'_>, draft: &mut CardDraft) -> usize {
    let titles = draft.sizes.titles.clone();
    let column = |title: &String| {
        let own = !columns::is_known(title);
        let width = if title == SIZE || own { 52.0 } else { CELL };
        Column {
            meaning: SizeColumn::titled(title).map_or(OWN_COLUMN, |it| it.meaning),
            ..Column::new(title.clone(), width)
        }
    };
    let field = |row: usize, column: usize| {
        let title = titles.get(column).map_or("", String::as_str);
        format!("sizes[{row}] \"{title}\"")
    };
    // A further size mostly differs in few cells, but a copied load would be a slip.
    let repeats = |title: &str| SizeColumn::titled(title).is_some_and(|it| it.repeats);
    let new_row = |grid: &Grid, at: usize| {
        let before = at.checked_sub(1).and_then(|row| grid.rows.get(row));
        let mut row = before.cloned().unwrap_or_default();
        for (title, cell) in grid.titles.iter().zip(row.iter_mut()) {
            if title == SIZE {
                *cell = (at + 1).to_string();
            } else if !repeats(title) {
                cell.clear();
            }
        }
        row
    };
    let sheet = Table {
        path: "sizes",
        name: "Sizes",
        columns: titles.iter().map(column).collect(),
        field: &field,
        new_row: &new_row,
        datums: Vec::new(),
    };
    egui::ScrollArea::horizontal()
        .id_salt("sizes table")
        .show(ui, |ui| table_ui(ui, board, &sheet, &mut draft.sizes).row)
        .inner
}

/// The paper's own columns.
fn columns_ui(ui: &mut Ui, board: &mut Board<'_>, state: &mut SizesState, draft: &mut CardDraft) {
    ui.horizontal(|ui| {
        ui.label("column of the paper");
        board.bare(
            ui,
            "sizes.new_column",
            "name of a new column",
            60.0,
            &mut state.new_column,
        );
        let name = state.new_column.trim().to_owned();
        let button = egui::Button::new("Add column").small();
        let hint = "For a distance that differs by size: type its letter here and again where the \
                    distance is asked for.";
        if ui
            .add_enabled(!name.is_empty(), button)
            .on_hover_text(hint)
            .clicked()
            && draft.sizes.add_column(&name)
        {
            state.new_column.clear();
        }
        let chosen = board.sheets.get(&board.id("sizes")).map(|it| it.at.1);
        let own = chosen
            .and_then(|column| {
                draft
                    .sizes
                    .titles
                    .get(column)
                    .map(|title| (column, title.clone()))
            })
            .filter(|(_, title)| !columns::is_known(title));
        if let Some((column, title)) = own
            && ui.small_button(format!("Remove column {title}")).clicked()
        {
            draft.sizes.remove_column(column);
        }
    });
    let id = board.id("sizes.new_column");
    let entered = board.go == Some(super::board::Go::After(id));
    if entered && !state.new_column.trim().is_empty() {
        if draft.sizes.add_column(state.new_column.trim()) {
            state.new_column.clear();
        }
        board.go = None;
        ui.memory_mut(|memory| memory.request_focus(id));
        ui.ctx().request_repaint();
    }
}

fn loads_ui(ui: &mut Ui, board: &mut Board<'_>, draft: &mut CardDraft) {
    let field = |row: usize, column: usize| {
        let title = ["size", "of", "height", "min", "max"]
            .get(column)
            .copied()
            .unwrap_or_default();
        format!("loads[{row}] \"{title}\"")
    };
    let first = draft.sizes.under(0, SIZE).to_owned();
    let new_row = move |grid: &Grid, at: usize| {
        let before = at.checked_sub(1).and_then(|row| grid.rows.get(row));
        before.map_or_else(
            || vec![first.clone(), "door".to_owned()],
            |row| row.iter().take(2).cloned().collect(),
        )
    };
    let sheet = Table {
        path: "loads",
        name: "Masses by height",
        columns: vec![
            Column::new("size", 60.0),
            Column {
                words: &["door", "box"],
                ..Column::new("height of the", 90.0)
            },
            Column::new("height", 80.0),
            Column::new("least mass", 80.0),
            Column::new("greatest mass", 90.0),
        ],
        field: &field,
        new_row: &new_row,
        datums: Vec::new(),
    };
    table_ui(ui, board, &sheet, &mut draft.loads);
}

fn springs_ui(ui: &mut Ui, board: &mut Board<'_>, draft: &mut CardDraft) {
    let field = |row: usize, column: usize| {
        let title = ["size", "angle", "weakest", "strongest"]
            .get(column)
            .copied()
            .unwrap_or_default();
        format!("springs[{row}] \"{title}\"")
    };
    let first = draft.sizes.under(0, SIZE).to_owned();
    let new_row = move |grid: &Grid, at: usize| {
        let before = at.checked_sub(1).and_then(|row| grid.rows.get(row));
        vec![before.and_then(|row| row.first()).unwrap_or(&first).clone()]
    };
    let sheet = Table {
        path: "springs",
        name: "Spring moments",
        columns: vec![
            Column::new("size", 60.0),
            Column::new("angle", 80.0),
            Column::new("weakest setting", 110.0),
            Column::new("strongest setting", 120.0),
        ],
        field: &field,
        new_row: &new_row,
        datums: Vec::new(),
    };
    table_ui(ui, board, &sheet, &mut draft.springs);
    let told = "+ lifts the door. A spring with one setting has the same moment in both columns.";
    ui.add(Label::new(RichText::new(told).small().color(tokens(ui).text_soft)).wrap());
}
