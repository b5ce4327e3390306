//! The foot of a sheet: cautions, legend and scale bar.

use euclid::default::Rect;
use flapwright_model::job::OpeningMark;

use super::facts::{FaceEdge, Facts};
use crate::brush::{Brush, Lettering, corners};
use crate::grain::infill_stuff;
use crate::hatch;
use crate::list::{Across, Along, At, DisplayList, Weight};
use crate::opening_mark;
use crate::pen::{Ink, Layer, Pen};
use crate::title_block;
use crate::words::Block;

/// Depth of the strip with the scale bar above the title block, mm.
const STRIP: f64 = 9.0;
/// True length of the scale bar on paper, mm.
const BAR: f64 = 100.0;
/// Room beside the title block that is wide enough for running words, mm.
const LEAST_BESIDE: f64 = 60.0;
/// Papers wider than this have room for larger words, mm.
const LARGE_PAPER: f64 = 260.0;

/// Where the running words of a sheet stand.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) enum Words {
    /// At the left of the title block where that leaves room, else across the sheet above it.
    AtFoot,
    /// Below the hole table, in its column of this width, mm.
    InColumn(f64),
}

/// Cautions and legend of one sheet, measured but not yet placed.
pub(super) struct Foot {
    blocks: [Block; 2],
    words: Words,
    space: Rect<f64>,
}

/// Whether the title block of this drawing space leaves room for words at its left.
pub(super) fn has_room_beside(space: Rect<f64>) -> bool {
    title_block::place(space).min_x() - space.min_x() >= LEAST_BESIDE
}

impl Foot {
    /// The foot in this drawing space; `mark` when an opening mark is on the sheet.
    pub(super) fn new(
        facts: &Facts<'_>,
        space: Rect<f64>,
        mark: Option<OpeningMark>,
        words: Words,
    ) -> Self {
        let room = match words {
            Words::InColumn(width) => width,
            Words::AtFoot if has_room_beside(space) => {
                title_block::place(space).min_x() - space.min_x() - 6.0
            }
            Words::AtFoot => 0.5 * space.width() - 5.0,
        };
        let large = space.width() > LARGE_PAPER && space.height() > LARGE_PAPER;
        let mut cautions = Block::new(if large { 2.5 } else { 1.8 });
        cautions.add("BEFORE YOU DRILL", Weight::Bold, room);
        for caution in facts.cautions() {
            cautions.add(&format!("• {caution}"), Weight::Plain, room);
        }
        let mut legend = Block::new(1.8);
        legend.add("HOW TO READ THIS SHEET", Weight::Bold, room);
        for words in legend_words(facts, mark) {
            legend.add(&words, Weight::Plain, room);
        }
        Self {
            blocks: [cautions, legend],
            words,
            space,
        }
    }

    /// Depth of both blocks one below the other, mm.
    pub(super) fn column_depth(&self) -> f64 {
        self.blocks[0].depth() + self.blocks[1].depth() + 3.0
    }

    /// Depth above the lower edge of the drawing space, mm.
    pub(super) fn depth(&self) -> f64 {
        let strip = title_block::HEIGHT + STRIP;
        match self.words {
            Words::InColumn(_) => strip,
            Words::AtFoot if has_room_beside(self.space) => strip.max(self.column_depth() + 2.0),
            Words::AtFoot => strip + self.blocks[0].depth().max(self.blocks[1].depth()) + 3.0,
        }
    }

    /// Draws all but the title block. `column` is the lower left corner of the column that
    /// [`Words::InColumn`] speaks of.
    pub(super) fn draw(&self, list: &mut DisplayList, column: At) {
        let brush = Brush::new(Layer::Notes, Ink::Plain);
        let top = self.space.min_y() + self.depth();
        let x = self.space.min_x() + 3.0;
        let ends = [
            At::new(self.space.min_x(), top),
            At::new(self.space.max_x(), top),
        ];
        Brush::new(Layer::Sheet, Ink::Plain).line(list, ends[0], ends[1], Pen::Thin);
        let [cautions, legend] = &self.blocks;
        let (first, second) = match self.words {
            Words::InColumn(_) => {
                let first = At::new(column.x, column.y + self.column_depth() - 0.5);
                (first, At::new(first.x, first.y - cautions.depth() - 1.5))
            }
            Words::AtFoot => {
                let first = At::new(x, top - 1.5);
                let below = At::new(x, first.y - cautions.depth() - 1.5);
                let beside = At::new(self.space.center().x + 2.0, first.y);
                (
                    first,
                    if has_room_beside(self.space) {
                        below
                    } else {
                        beside
                    },
                )
            }
        };
        cautions.draw(list, brush, first);
        legend.draw(list, brush, second);
        scale_bar(list, title_block::place(self.space));
    }
}

/// A bar of [`BAR`] mm on paper, whatever the scale, to check the print with a rule.
fn scale_bar(list: &mut DisplayList, block: Rect<f64>) {
    let brush = Brush::new(Layer::Sheet, Ink::Plain);
    let (x, y) = (block.min_x() + 4.0, block.max_y() + 2.0);
    for step in 0..10 {
        let from = x + BAR / 10.0 * f64::from(step);
        let field = Rect::from_points([At::new(from, y), At::new(from + BAR / 10.0, y + 1.6)]);
        if step % 2 == 0 {
            brush.area(list, corners(field));
        }
    }
    let whole = Rect::from_points([At::new(x, y), At::new(x + BAR, y + 1.6)]);
    brush.rect(list, whole, Pen::Thin);
    let how = Lettering::new(1.8).held(Along::Middle, Across::Baseline);
    for (share, words) in [(0.0, "0"), (0.5, "50"), (1.0, "100 mm")] {
        brush.text(list, At::new(x + share * BAR, y + 2.6), words, how);
    }
    let lines = [
        "Check the print: this bar is 100 mm long.",
        "If it is not, measure nothing on it.",
    ];
    for (i, words) in lines.into_iter().enumerate() {
        let at = At::new(x + BAR + 8.0, y + 3.6 - 3.2 * i as f64);
        brush.text(list, at, words, Lettering::new(1.8));
    }
}

fn legend_words(facts: &Facts<'_>, mark: Option<OpeningMark>) -> Vec<String> {
    let mut words = vec![
        "u runs along the upper edge of the picture, v down, both from the ring marked zero; each \
         distance stands for itself, none is added to another."
            .to_owned(),
        "Circles: holes at true diameter and scale, very small ones enlarged. Numbers: see the \
         hole table."
            .to_owned(),
    ];
    if FaceEdge::ALL
        .iter()
        .any(|edge| edge.band(facts.panel.bands) > 0.0)
    {
        words.push("Extra thick line: edge with a band.".to_owned());
    }
    if let Some(infill) = &facts.panel.infill {
        words.push(format!(
            "Hatching, {}.",
            hatch::words(infill_stuff(facts.panel, infill))
        ));
    }
    if facts.holes.iter().any(|hole| hole.severity.is_some()) {
        words.push("Ring around a hole: a finding is open for it.".to_owned());
    }
    if let Some(mark) = mark {
        let kinds = facts.report.doors().filter_map(|door| door.kind);
        let with_arrow = kinds.into_iter().any(opening_mark::rises);
        words.push(opening_mark::legend(mark, with_arrow));
    }
    words
}
