//! The head of a sheet: which panel, how it lies, what must be known before drilling.

use euclid::default::Rect;
use flapwright_model::length::show_mm_tenth;

use super::facts::Facts;
use super::key;
use crate::brush::{Brush, Lettering};
use crate::cautions::INVENTED;
use crate::list::{At, DisplayList, Weight};
use crate::pen::{Ink, Layer, Pen};
use crate::views::severity_ink;
use crate::words::{Block, fitted};

/// Height of the headline, mm (ISO 3098 series).
const HEADLINE: f64 = 7.0;
/// Baseline of the headline to that of the box's name, mm.
const TO_BOX_NAME: f64 = 6.6;
/// Width of the key picture, mm.
const KEY_WIDTH: f64 = 40.0;
/// Least depth of the head, so that the key picture is clear, mm.
const LEAST_DEPTH: f64 = 34.0;
/// Most findings printed in full; the rest are counted.
const MOST_FINDINGS: usize = 4;

/// The head of one sheet, measured but not yet placed.
pub(super) struct Header<'a> {
    facts: &'a Facts<'a>,
    words: Block,
    stuff: Block,
    findings: Option<Block>,
    width: f64,
}

impl<'a> Header<'a> {
    /// A head of this width, mm; `more` is said under the headline, e.g. that a page continues.
    pub(super) fn new(facts: &'a Facts<'a>, width: f64, more: Option<&str>) -> Self {
        let room = width - KEY_WIDTH - 4.0;
        let mut words = Block::new(3.5);
        if let Some(more) = more {
            words.add(more, Weight::Bold, room);
        }
        words.add(facts.face_words(), Weight::Bold, room);
        let mut stuff = Block::new(2.5);
        stuff.add(facts.edges_words(), Weight::Bold, room);
        let size = facts.size.map(show_mm_tenth).join(" × ");
        stuff.add(&format!("{size}, {}", facts.stuff_words()), Weight::Plain, room);
        let fittings = facts.fittings();
        if !fittings.is_empty() {
            let text = format!("Fitting: {}", fittings.join("; "));
            stuff.add(&text, Weight::Plain, room);
        }
        if facts.invented() {
            stuff.add(INVENTED, Weight::Bold, room);
        }
        Self { facts, words, stuff, findings: findings_block(facts, width - 6.0), width }
    }

    /// Depth, mm.
    pub(super) fn depth(&self) -> f64 {
        let text = HEADLINE + TO_BOX_NAME + 2.0 + self.words.depth() + self.stuff.depth() + 2.0;
        let findings = self.findings.as_ref().map_or(0.0, |block| block.depth() + 4.0);
        text.max(LEAST_DEPTH) + findings
    }

    /// Draws it from its upper left corner; `true` when the legend of the opening mark is needed.
    pub(super) fn draw(&self, list: &mut DisplayList, top_left: At) -> bool {
        let brush = Brush::new(Layer::Sheet, Ink::Plain);
        let facts = self.facts;
        let room = self.width - KEY_WIDTH - 4.0;
        let name = facts.panel.name.to_uppercase();
        let (name, height) = fitted(&name, &[HEADLINE, 5.0, 3.5], Weight::Bold, room);
        let mut y = top_left.y - HEADLINE;
        brush.text(list, At::new(top_left.x, y), name, Lettering::new(height).bold());
        let quantity = facts.report.quantity;
        let pieces = if quantity == 1 { "make 1".to_owned() } else { format!("MAKE {quantity}") };
        let which = format!("box “{}”, {pieces}", facts.report.name);
        let (which, height) = fitted(&which, &[3.5, 2.5, 1.8], Weight::Bold, room);
        y -= TO_BOX_NAME;
        brush.text(list, At::new(top_left.x, y), which, Lettering::new(height).bold());
        y -= 2.0;
        self.words.draw(list, brush, At::new(top_left.x, y));
        y -= self.words.depth();
        self.stuff.draw(list, brush, At::new(top_left.x, y));
        let low = top_left.y - self.depth();
        let findings = self.findings.as_ref().map_or(0.0, |block| block.depth() + 4.0);
        let key_room = Rect::from_points([
            At::new(top_left.x + self.width - KEY_WIDTH, top_left.y),
            At::new(top_left.x + self.width, low + findings),
        ]);
        let marked = key::draw(list, facts, key_room);
        if let Some(block) = &self.findings {
            let worst = facts.findings.iter().map(|finding| finding.severity).max();
            let ink = worst.map_or(Ink::Plain, severity_ink);
            let frame = Rect::from_points([
                At::new(top_left.x, low + 1.0),
                At::new(top_left.x + self.width, low + findings - 0.5),
            ]);
            let brush = Brush::new(Layer::Findings, ink);
            brush.rect(list, frame, Pen::Banded);
            block.draw(list, brush, At::new(top_left.x + 3.0, frame.max_y() - 1.6));
        }
        marked
    }
}

fn findings_block(facts: &Facts<'_>, room: f64) -> Option<Block> {
    let title = facts.findings_words()?;
    let mut block = Block::new(2.5);
    block.add(&title, Weight::Bold, room);
    for finding in facts.findings.iter().take(MOST_FINDINGS) {
        let text = format!("{}: {}", finding.severity.word(), finding.message);
        block.add(&text, Weight::Plain, room);
    }
    let more = facts.findings.len().saturating_sub(MOST_FINDINGS);
    if more > 0 {
        block.add(&format!("and {more} more: see the list of findings"), Weight::Plain, room);
    }
    Some(block)
}
