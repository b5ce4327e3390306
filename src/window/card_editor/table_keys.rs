//! What the keys do in a table.

use egui::{Event, Key, Modifiers, Ui};
use flapwright_model::card_draft::Grid;

use super::table::{Outcome, Table, TableState, is_key};

/// Where the keys led.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Moved {
    /// Nowhere, or to another cell.
    Within,
    /// Out of the table at its end.
    Past,
    /// Out of the table at its beginning.
    Ahead,
}

/// Does the keys of this frame, one after the other.
pub(super) fn keys(
    ui: &Ui,
    state: &mut TableState,
    grid: &mut Grid,
    sheet: &Table<'_>,
    outcome: &mut Outcome,
) -> Moved {
    let events = ui.input_mut(|input| std::mem::take(&mut input.events));
    let mut moved = Moved::Within;
    let mut left = Vec::new();
    for event in events {
        if moved != Moved::Within {
            left.push(event);
            continue;
        }
        let mut hand = Hand {
            ui,
            state,
            grid,
            sheet,
            outcome,
        };
        match hand.event(&event) {
            Some(to) => moved = to,
            None => left.push(event),
        }
    }
    ui.input_mut(|input| input.events = left);
    moved
}

/// One table under the keyboard.
struct Hand<'a, 'b> {
    ui: &'a Ui,
    state: &'a mut TableState,
    grid: &'a mut Grid,
    sheet: &'a Table<'b>,
    outcome: &'a mut Outcome,
}

impl Hand<'_, '_> {
    /// Does an event; `None` when it is none of the table's.
    fn event(&mut self, event: &Event) -> Option<Moved> {
        match event {
            Event::Text(text) => self.text(text),
            Event::Paste(text) => {
                self.paste(text);
                Some(Moved::Within)
            }
            Event::Copy | Event::Cut => {
                self.copy();
                if *event == Event::Cut {
                    self.clear();
                }
                Some(Moved::Within)
            }
            _ => {
                let (key, modifiers) = is_key(event)?;
                if self.state.edit.is_some() {
                    self.edit_key(key, modifiers)
                } else {
                    self.move_key(key, modifiers)
                }
            }
        }
    }

    fn text(&mut self, text: &str) -> Option<Moved> {
        if text.is_empty() {
            return None;
        }
        if self.grid.rows.is_empty() {
            insert_row(self.state, self.grid, self.sheet, self.outcome);
        }
        self.state.told = None;
        let (row, column) = self.state.at;
        if self.state.edit.is_none() {
            self.state.before = self.grid.cell(row, column).to_owned();
        }
        let (typed, caret) = self.state.edit.get_or_insert_default();
        let at = byte_of(typed, *caret);
        typed.insert_str(at, text);
        *caret += text.chars().count();
        self.show_typed();
        Some(Moved::Within)
    }

    /// Puts what is typed so far into its cell.
    fn show_typed(&mut self) {
        if let Some((typed, _)) = &self.state.edit {
            set(self.grid, self.state.at, typed.trim(), self.outcome);
        }
    }

    fn paste(&mut self, text: &str) {
        if self.state.edit.is_some() {
            let line = text.lines().next().unwrap_or_default();
            self.text(line);
            return;
        }
        if self.grid.rows.is_empty() {
            insert_row(self.state, self.grid, self.sheet, self.outcome);
        }
        let (rows, columns) = self.state.chosen();
        let at = (*rows.start(), *columns.start());
        match self.grid.paste(at.0, at.1, text) {
            Ok(pasted) => {
                self.outcome.changed = true;
                self.state.at = at;
                let end = |from: usize, count: usize| from + count.saturating_sub(1);
                self.state.corner = (end(at.0, pasted.rows), end(at.1, pasted.columns));
                self.state.told = None;
            }
            Err(problem) => {
                self.state.told = Some(format!(
                    "{} {}; {}",
                    problem.field, problem.what, problem.remedy
                ));
            }
        }
    }

    fn copy(&self) {
        let (rows, columns) = self.state.chosen();
        let text = self.grid.copy(
            *rows.start()..*rows.end() + 1,
            *columns.start()..*columns.end() + 1,
        );
        self.ui.ctx().copy_text(text);
    }

    fn clear(&mut self) {
        let (rows, columns) = self.state.chosen();
        for row in rows {
            for column in columns.clone() {
                set(self.grid, (row, column), "", self.outcome);
            }
        }
    }

    /// A key while a cell is typed in.
    fn edit_key(&mut self, key: Key, modifiers: Modifiers) -> Option<Moved> {
        if modifiers.command && !matches!(key, Key::Enter | Key::Backspace | Key::D) {
            return None;
        }
        let (typed, caret) = self.state.edit.as_mut()?;
        let end = typed.chars().count();
        match key {
            Key::ArrowLeft => *caret = caret.saturating_sub(1),
            Key::ArrowRight => *caret = (*caret + 1).min(end),
            Key::Home => *caret = 0,
            Key::End => *caret = end,
            Key::Backspace if !modifiers.command && *caret > 0 => {
                *caret -= 1;
                typed.remove(byte_of(typed, *caret));
            }
            Key::Delete if *caret < end => {
                typed.remove(byte_of(typed, *caret));
            }
            Key::Backspace | Key::Delete => {}
            Key::Escape => {
                self.state.edit = None;
                set(self.grid, self.state.at, &self.state.before, self.outcome);
            }
            Key::F4 | Key::Enter | Key::Tab | Key::ArrowUp | Key::ArrowDown | Key::D => {
                if key == Key::D && !modifiers.command {
                    return None;
                }
                take_typed(self.state, self.grid, self.sheet, self.outcome);
                return self.move_key(key, modifiers);
            }
            _ => return None,
        }
        self.show_typed();
        Some(Moved::Within)
    }

    /// A key on a chosen cell.
    fn move_key(&mut self, key: Key, modifiers: Modifiers) -> Option<Moved> {
        let (row, column) = self.state.at;
        let last = (
            self.grid.rows.len().saturating_sub(1),
            self.grid.titles.len().saturating_sub(1),
        );
        if modifiers.command {
            match key {
                Key::Enter => insert_row(self.state, self.grid, self.sheet, self.outcome),
                Key::Backspace => remove_row(self.state, self.grid, self.outcome),
                Key::D => self.take_from_above(),
                Key::A => {
                    self.state.at = (0, 0);
                    self.state.corner = last;
                }
                Key::Home => self.state.choose(0, 0),
                Key::End => self.state.choose(last.0, last.1),
                _ => return None,
            }
            return Some(Moved::Within);
        }
        if modifiers.alt {
            return None;
        }
        match (key, modifiers.shift) {
            (Key::Tab, false) if column < last.1 => self.state.choose(row, column + 1),
            (Key::Tab, false) if row < last.0 => self.state.choose(row + 1, 0),
            (Key::Tab, false) => return Some(Moved::Past),
            (Key::Tab, true) if column > 0 => self.state.choose(row, column - 1),
            (Key::Tab, true) if row > 0 => self.state.choose(row - 1, last.1),
            (Key::Tab, true) => return Some(Moved::Ahead),
            (Key::Enter, false) if row < last.0 => self.state.choose(row + 1, self.state.run),
            (Key::Enter, false) => return Some(Moved::Past),
            (Key::Enter, true) if row > 0 => self.state.choose(row - 1, column),
            (Key::Enter, true) => return Some(Moved::Ahead),
            (Key::Delete | Key::Backspace, _) => self.clear(),
            (Key::F2, _) => {
                let text = self.grid.cell(row, column).to_owned();
                let end = text.chars().count();
                self.state.before.clone_from(&text);
                self.state.edit = Some((text, end));
            }
            (Key::F4, back) => self.next_datum(back),
            _ => return self.arrow(key, modifiers.shift, last),
        }
        Some(Moved::Within)
    }

    fn arrow(&mut self, key: Key, stretch: bool, last: (usize, usize)) -> Option<Moved> {
        let (row, column) = if stretch {
            self.state.corner
        } else {
            self.state.at
        };
        let (row, column) = match key {
            Key::ArrowUp => (row.saturating_sub(1), column),
            Key::ArrowDown => ((row + 1).min(last.0), column),
            Key::ArrowLeft => (row, column.saturating_sub(1)),
            Key::ArrowRight => (row, (column + 1).min(last.1)),
            Key::Home => (row, 0),
            Key::End => (row, last.1),
            Key::Space => return Some(Moved::Within),
            _ => return None,
        };
        if stretch {
            self.state.corner = (row, column);
        } else {
            self.state.choose(row, column);
            self.state.run = column;
        }
        Some(Moved::Within)
    }

    /// Takes the cell above, datum and all.
    fn take_from_above(&mut self) {
        let (row, column) = self.state.at;
        let Some(above) = row.checked_sub(1) else {
            return;
        };
        let text = self.grid.cell(above, column).to_owned();
        set(self.grid, (row, column), &text, self.outcome);
        let datum = |row: usize| self.sheet.datums.get(row)?.get(column).copied();
        if let Some(number) = datum(above).filter(|_| self.has_datums(column))
            && datum(row) != Some(number)
        {
            self.outcome.datum = Some((row, column, number));
            self.outcome.changed = true;
        }
    }

    fn has_datums(&self, column: usize) -> bool {
        self.sheet
            .columns
            .get(column)
            .is_some_and(|it| !it.datums.is_empty())
    }

    /// The next datum of a cell, or the next of the words that it may hold.
    fn next_datum(&mut self, back: bool) {
        let (row, column) = self.state.at;
        let Some(spec) = self.sheet.columns.get(column) else {
            return;
        };
        let step = |now: usize, count: usize| {
            let by = if back { count.saturating_sub(1) } else { 1 };
            (now + by) % count.max(1)
        };
        if let Some(now) = self.sheet.datums.get(row).and_then(|row| row.get(column))
            && !spec.datums.is_empty()
        {
            self.outcome.datum = Some((row, column, step(*now, spec.datums.len())));
            self.outcome.changed = true;
        } else if !spec.words.is_empty() {
            let cell = self.grid.cell(row, column);
            let now = spec.words.iter().position(|word| *word == cell);
            let next = now.map_or(0, |now| step(now, spec.words.len()));
            if let Some(word) = spec.words.get(next) {
                set(self.grid, (row, column), word, self.outcome);
            }
        }
    }
}

/// Puts what is typed into its cell.
pub(super) fn take_typed(
    state: &mut TableState,
    grid: &mut Grid,
    sheet: &Table<'_>,
    outcome: &mut Outcome,
) {
    let Some((typed, _)) = state.edit.take() else {
        return;
    };
    let typed = typed.trim();
    let words = sheet.columns.get(state.at.1).map_or(&[][..], |it| it.words);
    let lower = typed.to_lowercase();
    let word = words
        .iter()
        .find(|word| !lower.is_empty() && word.to_lowercase().starts_with(&lower));
    set(grid, state.at, word.map_or(typed, |word| *word), outcome);
}

/// Puts a row under the chosen one.
pub(super) fn insert_row(
    state: &mut TableState,
    grid: &mut Grid,
    sheet: &Table<'_>,
    outcome: &mut Outcome,
) {
    if grid.rows.len() >= Grid::MOST_ROWS {
        state.told = Some(format!("A table has at most {} rows.", Grid::MOST_ROWS));
        return;
    }
    let at = if grid.rows.is_empty() {
        0
    } else {
        state.at.0 + 1
    };
    let row = (sheet.new_row)(grid, at);
    grid.rows.insert(at.min(grid.rows.len()), row);
    grid.tidy();
    state.choose(at, state.run.min(grid.titles.len().saturating_sub(1)));
    outcome.inserted = Some(at);
    outcome.changed = true;
}

/// Takes the chosen row out.
pub(super) fn remove_row(state: &mut TableState, grid: &mut Grid, outcome: &mut Outcome) {
    let row = state.at.0;
    if row >= grid.rows.len() {
        return;
    }
    grid.rows.remove(row);
    state.choose(row.min(grid.rows.len().saturating_sub(1)), state.at.1);
    outcome.removed = Some(row);
    outcome.changed = true;
}

fn set(grid: &mut Grid, at: (usize, usize), text: &str, outcome: &mut Outcome) {
    if let Some(cell) = grid.rows.get_mut(at.0).and_then(|row| row.get_mut(at.1))
        && cell != text
    {
        text.clone_into(cell);
        outcome.changed = true;
    }
}

/// Where in a text its character of that number begins.
fn byte_of(text: &str, character: usize) -> usize {
    text.char_indices()
        .nth(character)
        .map_or(text.len(), |it| it.0)
}
