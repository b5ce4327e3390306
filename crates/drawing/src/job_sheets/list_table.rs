//! Tables of lists: columns as wide as they need, words broken into lines, groups of rows.

use crate::brush::{Brush, Lettering};
use crate::edge_mark::{self, EdgeMark};
use crate::list::{Across, Along, At, DisplayList, Weight};
use crate::pen::{Ink, Layer, Pen};
use crate::text::width;
use crate::words::{line_pitch, wrap};

/// Height of the words in a table, mm (ISO 3098 series).
const WORDS: f64 = 2.5;
/// Blank at both sides of a cell, mm.
const PAD: f64 = 1.2;
/// Blank above and below the words of a row, mm.
const AIR: f64 = 0.9;
/// No column of words gets narrower than this, mm.
const LEAST: f64 = 14.0;

/// A column of a table.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Column {
    head: &'static str,
    kind: ColumnKind,
}

#[derive(Debug, Clone, Copy, PartialEq)]
enum ColumnKind {
    /// Ends at the right, never broken.
    Number,
    /// Broken into lines where it is wider than this, mm.
    Words(f64),
    /// Small pictures.
    Mark,
}

impl Column {
    pub(super) const fn number(head: &'static str) -> Self {
        let kind = ColumnKind::Number;
        Self { head, kind }
    }

    pub(super) const fn words(head: &'static str, most: f64) -> Self {
        let kind = ColumnKind::Words(most);
        Self { head, kind }
    }

    pub(super) const fn mark(head: &'static str) -> Self {
        let kind = ColumnKind::Mark;
        Self { head, kind }
    }
}

/// What stands in one cell.
#[derive(Debug, Clone, PartialEq)]
pub(super) enum Cell {
    Words(String),
    /// The mark of edge bands and grain.
    Edges(EdgeMark),
}

impl From<String> for Cell {
    fn from(words: String) -> Self {
        Self::Words(words)
    }
}

impl From<&str> for Cell {
    fn from(words: &str) -> Self {
        Self::Words(words.to_owned())
    }
}

#[derive(Debug, Clone, PartialEq)]
enum Row {
    /// Stands over the rows that follow, across the whole table.
    Group(String),
    Cells(Vec<Cell>),
}

/// A table of a list.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct ListTable {
    columns: Vec<Column>,
    rows: Vec<Row>,
}

impl ListTable {
    pub(super) fn new(columns: impl Into<Vec<Column>>) -> Self {
        Self {
            columns: columns.into(),
            rows: Vec::new(),
        }
    }

    pub(super) fn group(&mut self, words: impl Into<String>) {
        self.rows.push(Row::Group(words.into()));
    }

    pub(super) fn row(&mut self, cells: impl Into<Vec<Cell>>) {
        self.rows.push(Row::Cells(cells.into()));
    }

    pub(super) fn is_empty(&self) -> bool {
        self.rows.is_empty()
    }

    /// Widths and lines for a table at most this wide, mm.
    pub(super) fn lay(&self, room: f64) -> Laid<'_> {
        let widths = self.widths(room);
        let rows = self.rows.iter().map(|row| lay_row(row, &widths)).collect();
        let mut again: Vec<Option<LaidRow>> = Vec::new();
        let mut group = None;
        for row in &self.rows {
            again.push(match row {
                Row::Group(words) => {
                    group = Some(Row::Group(format!("{words}, continued")));
                    None
                }
                Row::Cells(_) => group.as_ref().map(|group| lay_row(group, &widths)),
            });
        }
        Laid {
            columns: &self.columns,
            widths,
            rows,
            again,
        }
    }

    fn widths(&self, room: f64) -> Vec<f64> {
        let cells = |i: usize| {
            self.rows.iter().filter_map(move |row| match row {
                Row::Group(_) => None,
                Row::Cells(cells) => cells.get(i),
            })
        };
        let mut widths: Vec<f64> = self
            .columns
            .iter()
            .enumerate()
            .map(|(i, column)| {
                let natural = cells(i)
                    .map(|cell| match cell {
                        Cell::Words(words) => width(words, WORDS, Weight::Plain),
                        Cell::Edges(_) => edge_mark::SIZE[0],
                    })
                    .fold(width(column.head, WORDS, Weight::Bold), f64::max);
                let natural = natural + 2.0 * PAD + 0.01;
                match column.kind {
                    ColumnKind::Words(most) => natural.min(most),
                    ColumnKind::Number | ColumnKind::Mark => natural,
                }
            })
            .collect();
        // The widest column of words gives way until all fit.
        loop {
            let over = widths.iter().sum::<f64>() - room;
            if over <= 1e-9 {
                return widths;
            }
            let least = |column: &Column| {
                LEAST.max(width(column.head, WORDS, Weight::Bold) + 2.0 * PAD + 0.01)
            };
            let widest = self
                .columns
                .iter()
                .enumerate()
                .filter(|(i, column)| {
                    matches!(column.kind, ColumnKind::Words(_)) && widths[*i] > least(column) + 1e-9
                })
                .max_by(|(a, _), (b, _)| widths[*a].total_cmp(&widths[*b]));
            let Some((i, column)) = widest else {
                return widths;
            };
            widths[i] = (widths[i] - over.clamp(0.5, 4.0)).max(least(column));
        }
    }
}

fn lay_row(row: &Row, widths: &[f64]) -> LaidRow {
    match row {
        Row::Group(words) => {
            let room = widths.iter().sum::<f64>() - 2.0 * PAD;
            let lines = wrap(words, WORDS, Weight::Bold, room);
            let depth = line_pitch(WORDS) * lines.len().max(1) as f64 + 3.0 * AIR;
            LaidRow {
                group: Some(lines),
                cells: Vec::new(),
                depth,
            }
        }
        Row::Cells(cells) => {
            let cells: Vec<LaidCell> = cells
                .iter()
                .zip(widths)
                .map(|(cell, room)| match cell {
                    Cell::Words(words) => {
                        LaidCell::Lines(wrap(words, WORDS, Weight::Plain, room - 2.0 * PAD))
                    }
                    Cell::Edges(mark) => LaidCell::Edges(*mark),
                })
                .collect();
            let depth = cells
                .iter()
                .map(|cell| match cell {
                    LaidCell::Lines(lines) => line_pitch(WORDS) * lines.len().max(1) as f64,
                    LaidCell::Edges(_) => edge_mark::SIZE[1] + 0.6,
                })
                .fold(0.0, f64::max);
            LaidRow {
                group: None,
                cells,
                depth: depth + AIR,
            }
        }
    }
}

struct LaidRow {
    group: Option<Vec<String>>,
    cells: Vec<LaidCell>,
    depth: f64,
}

enum LaidCell {
    Lines(Vec<String>),
    Edges(EdgeMark),
}

/// A table with its widths and lines.
pub(super) struct Laid<'a> {
    columns: &'a [Column],
    widths: Vec<f64>,
    rows: Vec<LaidRow>,
    /// For each row of a group: the group's heading where the table goes on at this row.
    again: Vec<Option<LaidRow>>,
}

const BRUSH: Brush = Brush::new(Layer::Sheet, Ink::Plain);

impl Laid<'_> {
    pub(super) fn count(&self) -> usize {
        self.rows.len()
    }

    /// Of all columns, mm.
    pub(super) fn width(&self) -> f64 {
        self.widths.iter().sum()
    }

    /// Of all rows without the head, mm.
    pub(super) fn depth(&self) -> f64 {
        self.rows.iter().map(|row| row.depth).sum()
    }

    /// Draws rows from number `from` on, as many as go into `room`, below a head; gives back the
    /// number of the next row and the depth used, mm. Where it goes on within a group, the group's
    /// heading stands again.
    pub(super) fn draw(
        &self,
        list: &mut DisplayList,
        top_left: At,
        from: usize,
        room: f64,
    ) -> (usize, f64) {
        let has_head = self.columns.iter().any(|column| !column.head.is_empty());
        let head = if has_head {
            line_pitch(WORDS) + AIR
        } else {
            0.5
        };
        let again = self.again.get(from).and_then(Option::as_ref);
        let again = again.filter(|_| from > 0);
        let mut used = head + again.map_or(0.0, |row| row.depth);
        let mut next = from;
        while let Some(row) = self.rows.get(next) {
            // A group's heading is not left behind without a row of its own.
            let with = row.group.as_ref().and(self.rows.get(next + 1));
            let needed = row.depth + with.map_or(0.0, |row| row.depth);
            if used + needed > room {
                break;
            }
            used += row.depth;
            next += 1;
        }
        if next == from {
            return (from, 0.0);
        }
        if has_head {
            self.draw_head(list, top_left);
        }
        let right = top_left.x + self.width();
        let mut y = top_left.y - head;
        BRUSH.line(
            list,
            At::new(top_left.x, y),
            At::new(right, y),
            Pen::Outline,
        );
        for row in again.into_iter().chain(&self.rows[from..next]) {
            self.draw_row(list, row, At::new(top_left.x, y));
            y -= row.depth;
            BRUSH.line(list, At::new(top_left.x, y), At::new(right, y), Pen::Thin);
        }
        (next, used)
    }

    fn draw_head(&self, list: &mut DisplayList, top_left: At) {
        let y = top_left.y - WORDS - 0.3;
        let mut x = top_left.x;
        for (column, own) in self.columns.iter().zip(&self.widths) {
            let how = Lettering::new(WORDS).bold();
            let (at, how) = match column.kind {
                ColumnKind::Number => (
                    At::new(x + own - PAD, y),
                    how.held(Along::End, Across::Baseline),
                ),
                ColumnKind::Words(_) | ColumnKind::Mark => (At::new(x + PAD, y), how),
            };
            BRUSH.text(list, at, column.head, how);
            x += own;
        }
    }

    fn draw_row(&self, list: &mut DisplayList, row: &LaidRow, top_left: At) {
        if let Some(lines) = &row.group {
            let mut y = top_left.y - row.depth + AIR + 0.6;
            for line in lines.iter().rev() {
                let at = At::new(top_left.x + PAD, y);
                BRUSH.text(list, at, line.clone(), Lettering::new(WORDS).bold());
                y += line_pitch(WORDS);
            }
            return;
        }
        let mut x = top_left.x;
        for ((column, own), cell) in self.columns.iter().zip(&self.widths).zip(&row.cells) {
            match cell {
                LaidCell::Lines(lines) => {
                    let mut y = top_left.y - WORDS - 0.5 * AIR - 0.35;
                    for line in lines {
                        let how = Lettering::new(WORDS);
                        let (at, how) = match column.kind {
                            ColumnKind::Number => (
                                At::new(x + own - PAD, y),
                                how.held(Along::End, Across::Baseline),
                            ),
                            ColumnKind::Words(_) | ColumnKind::Mark => (At::new(x + PAD, y), how),
                        };
                        BRUSH.text(list, at, line.clone(), how);
                        y -= line_pitch(WORDS);
                    }
                }
                LaidCell::Edges(mark) => {
                    let middle = At::new(
                        x + 0.5 * own,
                        top_left.y - 0.5 * (edge_mark::SIZE[1] + 0.6 + AIR),
                    );
                    edge_mark::draw(list, BRUSH, middle, *mark);
                }
            }
            x += own;
        }
    }
}
