//! A small table of texts with titles, that a spreadsheet can be pasted into.

use serde::{Deserialize, Serialize};

use crate::validate::Problem;

/// A table of texts. Every row has a cell for each title; [`Grid::tidy`] sees to it after the
/// fields were changed by hand or read from a file.
#[derive(Debug, Clone, PartialEq, Eq, Default, Serialize, Deserialize)]
#[serde(deny_unknown_fields, default)]
pub struct Grid {
    /// Titles of the columns.
    pub titles: Vec<String>,
    /// The rows.
    pub rows: Vec<Vec<String>>,
}

/// What a paste has changed.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Pasted {
    /// Rows written, from the first one on.
    pub rows: usize,
    /// Columns written.
    pub columns: usize,
    /// Rows that were added for it.
    pub added: usize,
}

impl Grid {
    /// Most rows of a grid.
    pub const MOST_ROWS: usize = 1000;

    /// An empty table with these titles.
    pub fn new<T: Into<String>>(titles: impl IntoIterator<Item = T>) -> Self {
        Self {
            titles: titles.into_iter().map(Into::into).collect(),
            rows: Vec::new(),
        }
    }

    /// The same with another row; missing cells are empty.
    #[must_use]
    pub fn with<T: Into<String>>(mut self, row: impl IntoIterator<Item = T>) -> Self {
        self.rows.push(row.into_iter().map(Into::into).collect());
        self.tidy();
        self
    }

    /// Gives every row a cell for each title; cells beyond the titles are dropped if empty.
    pub fn tidy(&mut self) {
        let wide = self.titles.len();
        for row in &mut self.rows {
            while row.len() > wide && row.last().is_some_and(String::is_empty) {
                row.pop();
            }
            if row.len() < wide {
                row.resize(wide, String::new());
            }
        }
    }

    /// The number of the column of that title.
    #[must_use]
    pub fn column(&self, title: &str) -> Option<usize> {
        self.titles.iter().position(|it| it == title)
    }

    /// A cell without blanks around it; empty where there is none.
    #[must_use]
    pub fn cell(&self, row: usize, column: usize) -> &str {
        self.rows
            .get(row)
            .and_then(|row| row.get(column))
            .map_or("", |cell| cell.trim())
    }

    /// The cell of a row under a title; empty where there is none.
    #[must_use]
    pub fn under(&self, row: usize, title: &str) -> &str {
        self.column(title)
            .map_or("", |column| self.cell(row, column))
    }

    /// Adds a column, empty; `false` when the title is taken.
    pub fn add_column(&mut self, title: &str) -> bool {
        if self.column(title).is_some() {
            return false;
        }
        self.tidy();
        self.titles.push(title.to_owned());
        self.tidy();
        true
    }

    /// Takes a column out with its cells.
    pub fn remove_column(&mut self, column: usize) {
        if column >= self.titles.len() {
            return;
        }
        self.tidy();
        self.titles.remove(column);
        for row in &mut self.rows {
            row.remove(column);
        }
    }

    /// Writes tab-separated text into the cells from `row` and `column` on, as a spreadsheet puts
    /// it on the clipboard: rows by line, cells by tab, a cell in quotes where it holds either.
    /// Rows are added as needed.
    ///
    /// # Errors
    /// A [`Problem`] when the text is wider than the columns to the right of `column`, or needs
    /// more than [`Grid::MOST_ROWS`] rows; the grid is then as it was.
    pub fn paste(&mut self, row: usize, column: usize, text: &str) -> Result<Pasted, Problem> {
        let cells = split(text);
        let columns = cells.iter().map(Vec::len).max().unwrap_or(0);
        let room = self.titles.len().saturating_sub(column);
        if columns > room {
            return Err(Problem::new(
                "the pasted text",
                format!("has {columns} columns; from here on the table has {room}"),
                "paste further left, or add columns first",
            ));
        }
        let needed = row.saturating_add(cells.len());
        if needed > Self::MOST_ROWS {
            return Err(Problem::new(
                "the pasted text",
                format!(
                    "needs {needed} rows; a table has at most {}",
                    Self::MOST_ROWS
                ),
                "paste fewer rows",
            ));
        }
        let before = self.rows.len();
        if needed > before && !cells.is_empty() {
            self.rows.resize(needed, Vec::new());
        }
        self.tidy();
        for (line, cells) in self.rows.iter_mut().skip(row).zip(&cells) {
            for (cell, text) in line.iter_mut().skip(column).zip(cells) {
                cell.clone_from(text);
            }
        }
        Ok(Pasted {
            rows: cells.len(),
            columns,
            added: self.rows.len() - before,
        })
    }

    /// The cells of these rows and columns as tab-separated text, in the way [`Grid::paste`] reads.
    #[must_use]
    pub fn copy(&self, rows: std::ops::Range<usize>, columns: std::ops::Range<usize>) -> String {
        let mut text = String::new();
        for row in rows {
            for column in columns.clone() {
                if column > columns.start {
                    text.push('\t');
                }
                let cell = self
                    .rows
                    .get(row)
                    .and_then(|row| row.get(column))
                    .map_or("", String::as_str);
                if cell.starts_with('"') || cell.contains(['\t', '\n', '\r']) {
                    text.push('"');
                    text.push_str(&cell.replace('"', "\"\""));
                    text.push('"');
                } else {
                    text.push_str(cell);
                }
            }
            text.push('\n');
        }
        text
    }
}

/// Tab-separated text as cells. A cell that begins with a quote and has its closing quote right
/// before a tab, a line end or the end is unquoted; any other quote (an inch mark) stays.
fn split(text: &str) -> Vec<Vec<String>> {
    let text = text.replace("\r\n", "\n").replace('\r', "\n");
    let mut rows = Vec::new();
    let mut row = Vec::new();
    let mut rest = text.as_str();
    while !rest.is_empty() {
        let (cell, after) = quoted(rest).unwrap_or_else(|| {
            let end = rest.find(['\t', '\n']).unwrap_or(rest.len());
            let (cell, after) = rest.split_at(end);
            (cell.trim().to_owned(), after)
        });
        row.push(cell);
        rest = match after.strip_prefix('\t') {
            Some(more) => {
                if more.is_empty() {
                    row.push(String::new());
                }
                more
            }
            None => {
                rows.push(std::mem::take(&mut row));
                after.strip_prefix('\n').unwrap_or(after)
            }
        };
    }
    if !row.is_empty() {
        rows.push(row);
    }
    rows
}

/// A quoted cell at the start of `text` and what follows it.
fn quoted(text: &str) -> Option<(String, &str)> {
    let mut rest = text.strip_prefix('"')?;
    let mut cell = String::new();
    loop {
        let (inside, after) = rest.split_once('"')?;
        cell.push_str(inside);
        if let Some(more) = after.strip_prefix('"') {
            cell.push('"');
            rest = more;
        } else if after.is_empty() || after.starts_with(['\t', '\n']) {
            return Some((cell, after));
        } else {
            return None;
        }
    }
}
