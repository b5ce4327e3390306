//! A part of the hole table with one set of columns.

use euclid::default::Rect;

use crate::brush::{Brush, Lettering};
use crate::dimension::{FIGURE, SMALL_FIGURE};
use crate::list::{Across, Along, At, DisplayList, Weight};
use crate::pen::{Ink, Layer, Pen};
use crate::text::width;
use crate::words::wrap;

/// Height of one line of the table over the height of its figures: fractions rise 0.2 above the
/// capitals.
const LINE: f64 = 1.8;
/// Blank at both ends of a cell, mm.
const PAD: f64 = 0.9;
/// Between two strips of the table, mm.
const GUTTER: f64 = 4.0;
/// How a table is set.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Style {
    /// Height of figures and words, mm.
    pub(super) height: f64,
    /// Purposes wider than this are broken into lines, mm.
    pub(super) purpose_room: f64,
}

impl Style {
    /// From where there is room to where there is little.
    pub(super) const CLEAR: [Self; 3] = [
        Self::new(FIGURE, 46.0),
        Self::new(FIGURE, 30.0),
        Self::new(FIGURE, 20.0),
    ];
    /// For tables that do not fit on their sheet otherwise.
    pub(super) const SMALL: [Self; 2] =
        [Self::new(SMALL_FIGURE, 32.0), Self::new(SMALL_FIGURE, 18.0)];

    const fn new(height: f64, purpose_room: f64) -> Self {
        Self {
            height,
            purpose_room,
        }
    }

    fn line(self) -> f64 {
        LINE * self.height
    }
}

/// A part of the table with one set of columns.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Section {
    /// Stands over the columns; for shelf bores what they have in common.
    caption: String,
    style: Style,
    heads: Vec<&'static str>,
    rows: Vec<Row>,
    widths: Vec<f64>,
}

#[derive(Debug, Clone, PartialEq)]
pub(super) struct Row {
    pub(super) cells: Vec<String>,
    /// The last cell in lines, where it is a purpose.
    pub(super) purpose: Vec<String>,
    pub(super) ink: Ink,
}

impl Row {
    fn depth(&self, line: f64) -> f64 {
        line * self.purpose.len().max(1) as f64
    }
}

impl Section {
    pub(super) fn new(
        caption: String,
        style: Style,
        heads: Vec<&'static str>,
        rows: Vec<Row>,
    ) -> Self {
        let cell = |row: &Row, i: usize| {
            let one = row
                .cells
                .get(i)
                .map(|text| width(text, style.height, Weight::Plain));
            let lines = || {
                row.purpose
                    .iter()
                    .map(|line| width(line, style.height, Weight::Plain))
                    .fold(0.0, f64::max)
            };
            one.unwrap_or_else(lines)
        };
        let widths = heads
            .iter()
            .enumerate()
            .map(|(i, head)| {
                let widest = rows.iter().map(|row| cell(row, i)).fold(0.0, f64::max);
                widest.max(width(head, style.height, Weight::Bold)) + 2.0 * PAD
            })
            .collect();
        Self {
            caption,
            style,
            heads,
            rows,
            widths,
        }
    }

    /// How many rows it has.
    pub(super) fn len(&self) -> usize {
        self.rows.len()
    }

    /// Whether no row is left.
    pub(super) fn is_empty(&self) -> bool {
        self.rows.is_empty()
    }

    /// The section without its first rows.
    pub(super) fn after(&self, drawn: usize) -> Self {
        Self {
            rows: self.rows[drawn..].to_vec(),
            ..self.clone()
        }
    }

    fn width(&self) -> f64 {
        self.widths.iter().sum()
    }

    /// How many rows go into each strip of this depth.
    fn fill(&self, strips: usize, depth: f64) -> Vec<usize> {
        let line = self.style.line();
        let mut counts = Vec::new();
        let mut rows = self.rows.iter().peekable();
        for _ in 0..strips {
            let mut used = 0.0;
            let mut count = 0;
            while let Some(row) = rows.next_if(|row| used + row.depth(line) <= depth + 1e-9) {
                used += row.depth(line);
                count += 1;
            }
            counts.push(count);
        }
        counts
    }

    /// Draws what goes into `room`; gives back the number of rows drawn and the depth used.
    pub(super) fn draw(&self, list: &mut DisplayList, room: Rect<f64>) -> (usize, f64) {
        let line = self.style.line();
        let most = ((room.width() + GUTTER) / (self.width() + GUTTER) + 1e-9).floor() as usize;
        let caption = wrap(
            &self.caption,
            self.style.height,
            Weight::Bold,
            room.width().max(self.width()),
        );
        let head = line * (caption.len() as f64 + 1.0) + 1.0;
        let depth = room.height() - head - 1.0;
        if most == 0 || depth < line {
            return (0, 0.0);
        }
        let whole: f64 = self.rows.iter().map(|row| row.depth(line)).sum();
        // The fewest strips that hold all, each no deeper than it must be.
        let strips =
            (1..=most).find(|n| self.fill(*n, depth).iter().sum::<usize>() == self.rows.len());
        let counts = match strips {
            Some(n) => {
                let lines = (whole / line).round() as usize;
                let least = lines.div_ceil(n);
                let fair = (least..=lines)
                    .map(|lines| self.fill(n, line * lines as f64))
                    .find(|counts| counts.iter().sum::<usize>() == self.rows.len());
                fair.unwrap_or_else(|| self.fill(n, depth))
            }
            None => self.fill(most, depth),
        };
        self.draw_strips(list, room, &caption, &counts, head)
    }

    fn draw_strips(
        &self,
        list: &mut DisplayList,
        room: Rect<f64>,
        caption: &[String],
        counts: &[usize],
        head: f64,
    ) -> (usize, f64) {
        let line = self.style.line();
        let brush = Brush::new(Layer::Sheet, Ink::Plain);
        let mut y = room.max_y();
        for words in caption {
            y -= line;
            let at = At::new(room.min_x(), y + 0.44 * self.style.height);
            brush.text(
                list,
                at,
                words.clone(),
                Lettering::new(self.style.height).bold(),
            );
        }
        let mut rows = self.rows.as_slice();
        let mut deepest: f64 = 0.0;
        let mut drawn = 0;
        for (i, count) in counts.iter().filter(|count| **count > 0).enumerate() {
            let (these, others) = rows.split_at(*count);
            let x = room.min_x() + i as f64 * (self.width() + GUTTER);
            deepest = deepest.max(self.draw_strip(list, At::new(x, y), these));
            drawn += count;
            rows = others;
        }
        (drawn, head + deepest + 1.0)
    }

    /// One strip with its heads; gives back the depth of its rows.
    fn draw_strip(&self, list: &mut DisplayList, top_left: At, rows: &[Row]) -> f64 {
        let line = self.style.line();
        let brush = Brush::new(Layer::Sheet, Ink::Plain);
        let base = top_left.y - line + 0.44 * self.style.height;
        for (i, head) in self.heads.iter().enumerate() {
            let (at, how) = self.cell_place(i, At::new(top_left.x, base));
            brush.text(list, at, *head, how.bold());
        }
        let rule = |list: &mut DisplayList, y: f64, pen: Pen| {
            brush.line(
                list,
                At::new(top_left.x, y),
                At::new(top_left.x + self.width(), y),
                pen,
            );
        };
        let start = top_left.y - line - 0.3;
        rule(list, start, Pen::Outline);
        let mut y = start;
        for row in rows {
            let ink = brush.ink(row.ink);
            for (i, text) in row.cells.iter().enumerate() {
                let (at, how) =
                    self.cell_place(i, At::new(top_left.x, y - line + 0.44 * self.style.height));
                ink.text(list, at, text.clone(), how);
            }
            for (j, words) in row.purpose.iter().enumerate() {
                let base = y - line * (j as f64 + 1.0) + 0.44 * self.style.height;
                let (at, how) = self.cell_place(row.cells.len(), At::new(top_left.x, base));
                ink.text(list, at, words.clone(), how);
            }
            y -= row.depth(line);
            rule(list, y, Pen::Thin);
        }
        start - y
    }

    /// Numbers end at the right of their column, words start at its left.
    fn cell_place(&self, i: usize, strip: At) -> (At, Lettering) {
        let before: f64 = self.widths.iter().take(i).sum();
        let own = self.widths.get(i).copied().unwrap_or_default();
        let words = self.heads.get(i) == Some(&"for");
        let how = Lettering::new(self.style.height);
        if words {
            (At::new(strip.x + before + PAD, strip.y), how)
        } else {
            let at = At::new(strip.x + before + own - PAD, strip.y);
            (at, how.held(Along::End, Across::Baseline))
        }
    }
}
