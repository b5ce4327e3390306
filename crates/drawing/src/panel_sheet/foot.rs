//! The foot of a sheet: cautions, legend and scale bar.

use euclid::default::Rect;
use flapwright_model::job::OpeningMark;

use super::facts::{FaceEdge, Facts};
use crate::brush::{Brush, Lettering, corners};
use crate::hatch;
use crate::list::{Across, Along, At, DisplayList, Weight};
use crate::opening_mark;
use crate::pen::{Ink, Layer, Pen};
use crate::title_block;
use crate::words::Block;

/// Depth of the strip with the scale bar above the title block, mm.
const STRIP: f64 = 9.0;
/// True length of the scale bar on paper, mm.
pub(super) const BAR: f64 = 100.0;

/// The foot of one sheet, measured but not yet placed.
pub(super) struct Foot {
    cautions: Block,
    legend: Block,
    beside: bool,
    space: Rect<f64>,
}

impl Foot {
    /// The foot in this drawing space; `mark` when an opening mark is on the sheet.
    pub(super) fn new(facts: &Facts<'_>, space: Rect<f64>, mark: Option<OpeningMark>) -> Self {
        let block = title_block::place(space);
        let left = block.min_x() - space.min_x();
        let beside = left > 60.0;
        let room = if beside { left - 6.0 } else { 0.5 * space.width() - 5.0 };
        let height = if beside && left < 150.0 { 1.8 } else { 2.5 };
        let mut cautions = Block::new(height);
        cautions.add("Before you drill", Weight::Bold, room);
        for caution in facts.cautions() {
            cautions.add(caution, Weight::Plain, room);
        }
        let mut legend = Block::new(1.8);
        for words in legend_words(facts, mark) {
            legend.add(&words, Weight::Plain, room);
        }
        Self { cautions, legend, beside, space }
    }

    /// Depth above the lower edge of the drawing space, mm.
    pub(super) fn depth(&self) -> f64 {
        let strip = title_block::HEIGHT + STRIP;
        if self.beside {
            strip.max(self.cautions.depth() + self.legend.depth() + 5.0)
        } else {
            strip + self.cautions.depth().max(self.legend.depth()) + 3.0
        }
    }

    /// Draws all but the title block.
    pub(super) fn draw(&self, list: &mut DisplayList) {
        let brush = Brush::new(Layer::Notes, Ink::Plain);
        let top = self.space.min_y() + self.depth();
        let x = self.space.min_x() + 3.0;
        let rule = |list: &mut DisplayList, y: f64| {
            let ends = [At::new(self.space.min_x(), y), At::new(self.space.max_x(), y)];
            Brush::new(Layer::Sheet, Ink::Plain).line(list, ends[0], ends[1], Pen::Thin);
        };
        rule(list, top);
        self.cautions.draw(list, brush, At::new(x, top - 1.5));
        if self.beside {
            let below = top - 2.5 - self.cautions.depth();
            self.legend.draw(list, brush, At::new(x, below));
        } else {
            let right = At::new(self.space.center().x + 2.0, top - 1.5);
            self.legend.draw(list, brush, right);
        }
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
    let lines = ["Check the print: this bar is 100 mm long.", "If it is not, measure nothing on it."];
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
    if FaceEdge::ALL.iter().any(|edge| edge.band(facts.panel.bands) > 0.0) {
        words.push("Extra thick line: edge with a band.".to_owned());
    }
    if let Some(infill) = &facts.panel.infill {
        words.push(format!("Hatching, {}.", hatch::words(infill.class)));
    }
    if facts.holes.iter().any(|hole| hole.severity.is_some()) {
        words.push("Heavy ring: a finding is open for this hole.".to_owned());
    }
    if let Some(mark) = mark {
        words.push(opening_mark::legend(mark).to_owned());
    }
    words
}
