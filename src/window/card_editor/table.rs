//! A small table as in a spreadsheet: arrows move, typing replaces, Enter goes down, Tab right.
//!
//! The table keeps the keyboard under one name, also while a cell is typed in, so that keys that
//! come fast are done in their order.

use std::collections::BTreeSet;
use std::ops::RangeInclusive;

use egui::{
    Align2, Event, EventFilter, FontId, Id, Key, Label, Modifiers, Pos2, Rect, RichText, Sense, Ui,
    Vec2, WidgetInfo,
};
use flapwright_model::card_draft::Grid;

use super::board::{Board, Go, Problems, Stop};
use super::table_keys::{self, Moved};
use crate::window::tokens::{toggle, tokens};

/// Height of a row without and with a datum under the number, of the titles, and width of the
/// number before a row.
const ROW: f32 = 23.0;
const TALL_ROW: f32 = 36.0;
const HEAD: f32 = 32.0;
const NUMBER: f32 = 24.0;

/// One column.
#[derive(Debug, Clone, Default)]
pub(crate) struct Column {
    /// Title.
    pub(crate) title: String,
    /// Width, points.
    pub(crate) width: f32,
    /// What it means, told under the table where a cell of it is chosen.
    pub(crate) meaning: &'static str,
    /// What a cell may hold, where it is one of a few.
    pub(crate) words: &'static [&'static str],
    /// Datums that a cell may count from, with its numbers in [`Table::datums`].
    pub(crate) datums: Vec<&'static str>,
}

impl Column {
    /// A column of numbers or short texts.
    pub(crate) fn new(title: impl Into<String>, width: f32) -> Self {
        Self {
            title: title.into(),
            width,
            ..Self::default()
        }
    }
}

/// What a table is.
pub(crate) struct Table<'a> {
    /// Path of its fields.
    pub(crate) path: &'a str,
    /// Name, as a screen reader says it.
    pub(crate) name: &'a str,
    /// Columns.
    pub(crate) columns: Vec<Column>,
    /// Name of the field of a row and column, as problems name it.
    pub(crate) field: &'a dyn Fn(usize, usize) -> String,
    /// What a new row begins with.
    pub(crate) new_row: &'a dyn Fn(&Grid, usize) -> Vec<String>,
    /// Which datum each cell counts from.
    pub(crate) datums: Vec<Vec<usize>>,
}

/// What a table remembers between frames.
#[derive(Debug, Clone, Default)]
pub(crate) struct TableState {
    /// Chosen cell: row, column.
    pub(crate) at: (usize, usize),
    /// The other corner of what is chosen.
    pub(crate) corner: (usize, usize),
    /// Where a run of Tabs began.
    pub(crate) run: usize,
    /// What is typed, and where in it, in characters. It is in the cell already, so that it is not
    /// lost when the table goes out of sight.
    pub(crate) edit: Option<(String, usize)>,
    /// What the cell held before that.
    pub(crate) before: String,
    /// Whether it had the keyboard in the last frame.
    pub(crate) focused: bool,
    /// The cell that was chosen in the last frame.
    pub(crate) seen: Option<(usize, usize)>,
    /// Why something was not taken.
    pub(crate) told: Option<String>,
}

impl TableState {
    /// Rows and columns that are chosen.
    pub(crate) fn chosen(&self) -> (RangeInclusive<usize>, RangeInclusive<usize>) {
        let span = |a: usize, b: usize| a.min(b)..=a.max(b);
        (
            span(self.at.0, self.corner.0),
            span(self.at.1, self.corner.1),
        )
    }

    /// Chooses one cell.
    pub(crate) fn choose(&mut self, row: usize, column: usize) {
        self.at = (row, column);
        self.corner = self.at;
        self.edit = None;
    }
}

/// What was done to a table.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub(crate) struct Outcome {
    /// Whether a cell or a datum changed, or rows came or went.
    pub(crate) changed: bool,
    /// A row that was put in.
    pub(crate) inserted: Option<usize>,
    /// A row that was taken out.
    pub(crate) removed: Option<usize>,
    /// Datums that changed: row, column, number.
    pub(crate) datum: Option<(usize, usize, usize)>,
    /// The chosen row.
    pub(crate) row: usize,
}

/// Shows a table and does what the keys say.
pub(crate) fn table_ui(
    ui: &mut Ui,
    board: &mut Board<'_>,
    sheet: &Table<'_>,
    grid: &mut Grid,
) -> Outcome {
    let id = board.id(sheet.path);
    grid.tidy();
    let mut state = board.sheets.remove(&id).unwrap_or_default();
    let mut outcome = Outcome::default();
    within(&mut state, grid);
    let focused = ui.memory(|memory| memory.has_focus(id));
    if focused && !state.focused {
        state.run = state.at.1;
    }
    state.focused = focused;
    if focused {
        let moved = table_keys::keys(ui, &mut state, grid, sheet, &mut outcome);
        match moved {
            Moved::Within => {}
            Moved::Past => board.go = Some(Go::After(id)),
            Moved::Ahead => board.go = Some(Go::Before(id)),
        }
        let filter = EventFilter {
            tab: true,
            horizontal_arrows: true,
            vertical_arrows: true,
            escape: state.edit.is_some(),
        };
        ui.memory_mut(|memory| memory.set_focus_lock_filter(id, filter));
    } else if state.edit.is_some() {
        table_keys::take_typed(&mut state, grid, sheet, &mut outcome);
    }
    within(&mut state, grid);
    paint_ui(ui, id, board.problems, sheet, grid, &mut state);
    bar_ui(ui, board, sheet, grid, &mut state, &mut outcome);
    outcome.row = state.at.0;
    let fields = (0..grid.rows.len())
        .flat_map(|row| (0..grid.titles.len()).map(move |column| (row, column)))
        .map(|(row, column)| ((sheet.field)(row, column), Some((row, column))))
        .chain([(sheet.path.to_owned(), None)])
        .collect();
    board.stops.push(Stop { id, fields });
    board.sheets.insert(id, state);
    outcome
}

/// Keeps the chosen cells inside the table.
fn within(state: &mut TableState, grid: &Grid) {
    let last = (
        grid.rows.len().saturating_sub(1),
        grid.titles.len().saturating_sub(1),
    );
    let least = |at: (usize, usize)| (at.0.min(last.0), at.1.min(last.1));
    state.at = least(state.at);
    state.corner = least(state.corner);
}

/// Where everything of a table is.
struct Places<'a> {
    rect: Rect,
    columns: &'a [Column],
    row: f32,
}

impl Places<'_> {
    fn left(&self, column: usize) -> f32 {
        let before: f32 = self.columns.iter().take(column).map(|it| it.width).sum();
        self.rect.min.x + NUMBER + before
    }

    fn cell(&self, row: usize, column: usize) -> Rect {
        #[expect(clippy::cast_precision_loss, reason = "at most a thousand rows")]
        let top = self.rect.min.y + HEAD + self.row * row as f32;
        let width = self.columns.get(column).map_or(0.0, |it| it.width);
        Rect::from_min_size(
            Pos2::new(self.left(column), top),
            Vec2::new(width, self.row),
        )
    }

    fn at(&self, rows: usize, place: Pos2) -> Option<(usize, usize)> {
        let found = (0..rows).find(|row| self.cell(*row, 0).y_range().contains(place.y))?;
        let column = (0..self.columns.len())
            .find(|column| self.cell(found, *column).x_range().contains(place.x))?;
        Some((found, column))
    }
}

fn paint_ui(
    ui: &mut Ui,
    id: Id,
    problems: &Problems,
    sheet: &Table<'_>,
    grid: &Grid,
    state: &mut TableState,
) {
    let tall = sheet.columns.iter().any(|it| !it.datums.is_empty());
    let row_height = if tall { TALL_ROW } else { ROW };
    let width: f32 = sheet.columns.iter().map(|it| it.width).sum();
    #[expect(clippy::cast_precision_loss, reason = "at most a thousand rows")]
    let height = HEAD + row_height * grid.rows.len() as f32;
    let size = Vec2::new(NUMBER + width + 1.0, height + 1.0);
    let (rect, _) = ui.allocate_exact_size(size, Sense::hover());
    let response = ui.interact(rect, id, Sense::click());
    let places = Places {
        rect,
        columns: &sheet.columns,
        row: row_height,
    };
    if let Some(place) = response
        .interact_pointer_pos()
        .filter(|_| response.clicked())
        && let Some((row, column)) = places.at(grid.rows.len(), place)
    {
        if state.at != (row, column) {
            state.choose(row, column);
        }
        state.run = column;
        if response.double_clicked() {
            let text = grid.cell(row, column).to_owned();
            let end = text.chars().count();
            state.before.clone_from(&text);
            state.edit = Some((text, end));
        }
        response.request_focus();
    }
    let focused = response.has_focus();
    let said = format!(
        "{}, row {}, {}: {}",
        sheet.name,
        state.at.0 + 1,
        grid.titles.get(state.at.1).map_or("", String::as_str),
        grid.cell(state.at.0, state.at.1)
    );
    response.widget_info(|| WidgetInfo::labeled(egui::Role::Table, true, said.as_str()));
    let cells = Cells {
        places,
        problems,
        sheet,
        grid,
        state,
        focused,
    };
    cells.paint(ui);
    let chosen = cells.places.cell(state.at.0, state.at.1);
    let moved = state.seen != Some(state.at);
    state.seen = Some(state.at);
    if focused && (moved || response.gained_focus()) {
        ui.scroll_to_rect(chosen.expand(4.0), None);
    }
}

/// What is painted of a table.
struct Cells<'a> {
    places: Places<'a>,
    problems: &'a Problems,
    sheet: &'a Table<'a>,
    grid: &'a Grid,
    state: &'a TableState,
    focused: bool,
}

impl Cells<'_> {
    fn paint(&self, ui: &Ui) {
        let tokens = tokens(ui);
        let painter = ui.painter();
        let whole = self.places.rect;
        let small = egui::TextStyle::Small.resolve(ui.style());
        painter.rect_filled(whole.with_min_y(whole.min.y + HEAD), 0.0, tokens.field);
        let body = egui::TextStyle::Body.resolve(ui.style());
        for (column, spec) in self.sheet.columns.iter().enumerate() {
            let left = self.places.left(column);
            let head =
                Rect::from_min_size(Pos2::new(left, whole.min.y), Vec2::new(spec.width, HEAD));
            let galley = painter.layout(
                spec.title.clone(),
                small.clone(),
                tokens.text_soft,
                spec.width - 6.0,
            );
            let at = Pos2::new(left + 4.0, head.max.y - galley.size().y - 2.0);
            painter
                .with_clip_rect(head.intersect(ui.clip_rect()))
                .galley(at, galley, tokens.text_soft);
        }
        let (rows, columns) = self.state.chosen();
        let wrong: BTreeSet<&str> = self
            .problems
            .all()
            .iter()
            .map(|it| it.field.as_str())
            .collect();
        for row in 0..self.grid.rows.len() {
            let first = self.places.cell(row, 0);
            if !ui.is_rect_visible(Rect::from_x_y_ranges(whole.x_range(), first.y_range())) {
                continue;
            }
            painter.text(
                Pos2::new(whole.min.x + NUMBER - 6.0, first.center().y),
                Align2::RIGHT_CENTER,
                row + 1,
                small.clone(),
                tokens.text_soft,
            );
            for column in 0..self.sheet.columns.len() {
                let chosen = rows.contains(&row) && columns.contains(&column);
                let field = (self.sheet.field)(row, column);
                let bad = wrong.contains(field.as_str());
                self.cell(ui, (row, column), chosen, bad, (&body, &small));
            }
        }
        let cell = self.places.cell(self.state.at.0, self.state.at.1);
        if !self.grid.rows.is_empty() {
            let ink = if self.focused {
                tokens.accent
            } else {
                tokens.line
            };
            let stroke = egui::Stroke::new(2.0, ink);
            painter.rect_stroke(cell, 0.0, stroke, egui::StrokeKind::Inside);
        }
    }

    fn cell(
        &self,
        ui: &Ui,
        at: (usize, usize),
        chosen: bool,
        bad: bool,
        fonts: (&FontId, &FontId),
    ) {
        let tokens = tokens(ui);
        let (row, column) = at;
        let rect = self.places.cell(row, column);
        let painter = ui.painter().with_clip_rect(rect.intersect(ui.clip_rect()));
        let several = self.state.at != self.state.corner;
        if chosen && self.focused && several {
            painter.rect_filled(rect, 0.0, tokens.chosen);
        }
        painter.rect_stroke(
            rect,
            0.0,
            egui::Stroke::new(1.0, tokens.line),
            egui::StrokeKind::Inside,
        );
        let text = self.grid.rows.get(row).and_then(|cells| cells.get(column));
        let text = text.map_or("", String::as_str);
        let datum = self.datum(row, column);
        let middle = match datum {
            Some(words) => {
                let ink = tokens.text_soft;
                let place = rect.left_bottom() + Vec2::new(4.0, -2.0);
                painter.text(place, Align2::LEFT_BOTTOM, words, fonts.1.clone(), ink);
                rect.min.y + 11.0
            }
            None => rect.center().y,
        };
        let place = Pos2::new(rect.min.x + 5.0, middle);
        if let Some((typed, caret)) = self.state.edit.as_ref().filter(|_| at == self.state.at) {
            let galley = painter.layout_no_wrap(typed.clone(), fonts.0.clone(), tokens.text);
            let corner = place - Vec2::new(0.0, galley.size().y / 2.0);
            let mark = galley.pos_from_cursor(egui::text::CCursor::new(*caret));
            painter.galley(corner, galley, tokens.text);
            let mark = mark.translate(corner.to_vec2());
            painter.vline(
                mark.min.x,
                mark.y_range(),
                egui::Stroke::new(1.5, tokens.accent),
            );
            return;
        }
        if bad && text.trim().is_empty() {
            painter.text(
                place,
                Align2::LEFT_CENTER,
                "·····",
                fonts.1.clone(),
                tokens.caution,
            );
        } else {
            let ink = if bad { tokens.stop } else { tokens.text };
            painter.text(place, Align2::LEFT_CENTER, text, fonts.0.clone(), ink);
        }
        if bad && !text.trim().is_empty() {
            painter.hline(
                rect.x_range().shrink(3.0),
                rect.max.y - 2.0,
                egui::Stroke::new(1.5, tokens.stop),
            );
        }
    }

    fn datum(&self, row: usize, column: usize) -> Option<&'static str> {
        let number = *self.sheet.datums.get(row)?.get(column)?;
        self.sheet.columns.get(column)?.datums.get(number).copied()
    }
}

/// Under a table: the problem of the chosen cell, its datums, and the buttons of its rows.
fn bar_ui(
    ui: &mut Ui,
    board: &Board<'_>,
    sheet: &Table<'_>,
    grid: &mut Grid,
    state: &mut TableState,
    outcome: &mut Outcome,
) {
    let (row, column) = state.at;
    if grid.rows.is_empty() {
        ui.label(RichText::new("No row yet.").color(tokens(ui).text_soft));
    }
    if let Some(now) = sheet.datums.get(row).and_then(|row| row.get(column))
        && let Some(spec) = sheet.columns.get(column).filter(|it| !it.datums.is_empty())
    {
        ui.horizontal_wrapped(|ui| {
            let told = format!("row {}, {} counts from", row + 1, spec.title);
            ui.label(RichText::new(told).small().color(tokens(ui).text_soft));
            for (number, words) in spec.datums.iter().enumerate() {
                let button =
                    toggle(ui, number == *now, *words).on_hover_text("F4 takes the next one");
                if button.clicked() && number != *now {
                    outcome.datum = Some((row, column, number));
                    outcome.changed = true;
                }
            }
        });
    }
    if let Some(spec) = sheet
        .columns
        .get(column)
        .filter(|it| !it.meaning.is_empty())
    {
        let told = format!("{}: {}", spec.title, spec.meaning);
        ui.add(Label::new(RichText::new(told).small().color(tokens(ui).text_soft)).wrap());
    }
    let field = (sheet.field)(row, column);
    let problem = board
        .problems
        .at(&field)
        .find(|it| !Problems::is_missing(it));
    let told = problem.map(|it| format!("row {}: {}; {}", row + 1, it.what, it.remedy));
    for text in told.into_iter().chain(state.told.clone()) {
        ui.add(Label::new(RichText::new(text).small().color(tokens(ui).stop)).wrap());
    }
    ui.horizontal(|ui| {
        let add = egui::Button::new("Add row").small();
        if ui.add(add).on_hover_text("Ctrl+Enter").clicked() {
            table_keys::insert_row(state, grid, sheet, outcome);
        }
        let some = !grid.rows.is_empty();
        let remove = egui::Button::new("Remove row").small();
        if ui
            .add_enabled(some, remove)
            .on_hover_text("Ctrl+Backspace")
            .clicked()
        {
            table_keys::remove_row(state, grid, outcome);
        }
    });
}

/// Events that the keyboard of a table looks at.
pub(crate) fn is_key(event: &Event) -> Option<(Key, Modifiers)> {
    match event {
        Event::Key {
            key,
            pressed: true,
            modifiers,
            ..
        } => Some((*key, *modifiers)),
        _ => None,
    }
}
