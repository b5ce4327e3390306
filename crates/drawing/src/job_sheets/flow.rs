//! Running text, tables and pictures one below the other, over as many pages as they take.

use euclid::default::Rect;

use super::head_foot::{Head, INSIDE, WORDS, foot};
use super::list_table::{Laid, ListTable};
use super::setup::SheetSetup;
use crate::brush::{Brush, Lettering};
use crate::draft::Draft;
use crate::list::{At, DisplayList, Weight};
use crate::page_kind::PageKind;
use crate::paper::Paper;
use crate::pen::{Ink, Layer};
use crate::words::{Block, fitted};

/// Height of captions over tables, mm (ISO 3098 series).
const CAPTION: f64 = 3.5;
/// At the end of a page no caption stands without so much below it, mm.
const WITH_CAPTION: f64 = 22.0;

/// Between tables set side by side, mm.
const BETWEEN_COLUMNS: f64 = 8.0;
/// No page has more columns than this.
const MOST_COLUMNS: usize = 4;
/// Narrow columns break words into lines; so much deeper than whole a table may get by that.
const MOST_DEEPER: f64 = 1.2;

/// What stands on every page of a flow.
pub(super) struct Theme {
    pub(super) kind: PageKind,
    pub(super) title: String,
    pub(super) headline: String,
    /// Said below the headline of the first page.
    pub(super) lead: Vec<String>,
    /// Cautions at the foot of every page.
    pub(super) cautions: Vec<&'static str>,
    pub(super) invented: bool,
}

/// Pages that are being filled.
pub(super) struct Flow {
    theme: Theme,
    paper: Paper,
    done: Vec<DisplayList>,
    list: DisplayList,
    body: Rect<f64>,
    y: f64,
}

const BRUSH: Brush = Brush::new(Layer::Sheet, Ink::Plain);

impl Flow {
    pub(super) fn new(setup: &SheetSetup<'_>, theme: Theme) -> Self {
        let mut flow = Self {
            theme,
            paper: setup.list_paper(),
            done: Vec::new(),
            list: DisplayList::new(),
            body: Rect::zero(),
            y: 0.0,
        };
        flow.open();
        flow
    }

    /// Starts a page: headline, lead, cautions.
    fn open(&mut self) {
        let space = self.paper.drawing_space();
        let first = self.done.is_empty();
        let more = if first { "" } else { ", continued" };
        let head = Head {
            headline: &format!("{}{more}", self.theme.headline),
            lead: if first { &self.theme.lead } else { &[] },
            invented: self.theme.invented,
            free_right: 0.0,
        };
        let top = head.draw(&mut self.list, self.paper);
        let low = foot(&mut self.list, self.paper, &self.theme.cautions, &[], WORDS);
        self.body = Rect::from_points([
            At::new(space.min_x() + INSIDE, low + 2.0),
            At::new(space.max_x() - INSIDE, top),
        ]);
        self.y = top;
    }

    fn turn_page(&mut self) {
        self.done.push(std::mem::take(&mut self.list));
        self.open();
    }

    pub(super) fn width(&self) -> f64 {
        self.body.width()
    }

    /// Makes room of this depth and takes it: on this page, else on the next. Gives back the upper
    /// left corner; more than a whole page is never given.
    pub(super) fn take(&mut self, depth: f64) -> (At, &mut DisplayList) {
        if self.y - depth < self.body.min_y() && self.y < self.body.max_y() {
            self.turn_page();
        }
        let at = At::new(self.body.min_x(), self.y);
        self.y -= depth;
        (at, &mut self.list)
    }

    /// A little blank, unless the page has just begun.
    pub(super) fn blank(&mut self, depth: f64) {
        if self.y < self.body.max_y() {
            self.y -= depth;
        }
    }

    /// A heading over what follows, kept with the beginning of it.
    pub(super) fn caption(&mut self, words: &str) {
        self.blank(3.0);
        if self.y - WITH_CAPTION < self.body.min_y() {
            self.turn_page();
        }
        let width = self.width();
        let (words, height) = fitted(words, &[CAPTION, WORDS], Weight::Bold, width);
        let (at, list) = self.take(CAPTION + 2.0);
        let base = At::new(at.x, at.y - CAPTION);
        BRUSH.text(list, base, words, Lettering::new(height).bold());
    }

    /// Paragraphs of running words; a paragraph is not parted.
    pub(super) fn paragraph(&mut self, words: &str, weight: Weight) {
        let mut block = Block::new(WORDS);
        block.add(words, weight, self.width());
        let (at, list) = self.take(block.depth());
        block.draw(list, BRUSH, at);
    }

    /// A table, its head repeated on each page.
    pub(super) fn table(&mut self, table: &ListTable) {
        let laid = table.lay(self.width());
        self.lay_down(&laid, 1);
    }

    /// A long table, set in columns side by side where the paper is wide enough.
    pub(super) fn table_in_columns(&mut self, table: &ListTable) {
        let whole = table.lay(self.width());
        let columns = (2..=MOST_COLUMNS).rev().find_map(|count| {
            let gaps = BETWEEN_COLUMNS * (count - 1) as f64;
            let room = (self.width() - gaps) / count as f64;
            let laid = table.lay(room);
            let fits = laid.width() <= room && laid.depth() <= MOST_DEEPER * whole.depth();
            fits.then_some((laid, count))
        });
        let (laid, count) = columns.unwrap_or((whole, 1));
        self.lay_down(&laid, count);
    }

    /// Down each column, then across the page, then on to the next page.
    fn lay_down(&mut self, laid: &Laid<'_>, columns: usize) {
        let mut from = 0;
        while from < laid.count() {
            let (top, begun) = (self.y, from);
            let room = top - self.body.min_y();
            for column in 0..columns {
                let across = (laid.width() + BETWEEN_COLUMNS) * column as f64;
                let at = At::new(self.body.min_x() + across, top);
                let (next, used) = laid.draw(&mut self.list, at, from, room);
                self.y = self.y.min(top - used);
                from = next;
                if from >= laid.count() {
                    break;
                }
            }
            if from == begun && top >= self.body.max_y() {
                // Not one row goes onto an empty page: no paper is so small, but stop all the same.
                break;
            }
            if from < laid.count() {
                self.turn_page();
            }
        }
    }

    /// The pages.
    pub(super) fn finish(mut self) -> Vec<Draft> {
        self.done.push(self.list);
        let Theme { kind, title, .. } = self.theme;
        let paper = self.paper;
        self.done
            .into_iter()
            .enumerate()
            .map(|(i, list)| {
                let more = if i == 0 { "" } else { ", continued" };
                Draft::of_job(kind, format!("{title}{more}"), paper, list)
            })
            .collect()
    }
}
