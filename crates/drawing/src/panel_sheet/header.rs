//! The head of a sheet: which panel, how it lies, what must be known before drilling.

use euclid::default::Rect;
use flapwright_model::length::show_mm_tenth;
use flapwright_rules::finding::Severity;
use flapwright_rules::inspection::Face;
use flapwright_words::{Names, headline_in_box};

use super::facts::Facts;
use super::key;
use crate::brush::{Brush, Lettering, corners};
use crate::cautions::INVENTED;
use crate::list::{Across, Along, At, DisplayList, Weight};
use crate::pen::{Ink, Layer, Pen};
use crate::text;
use crate::views::severity_ink;
use crate::words::{Block, fitted};

/// Height of the headline, mm (ISO 3098 series).
const HEADLINE: f64 = 7.0;
/// Height of the box's name where room is short, mm.
const BOX_NAME: f64 = 3.5;
/// Baseline of the headline to that of the box's name below it, mm.
const SECOND_LINE: f64 = 6.4;
/// Least blank between the headline and the box's name, mm.
const GAP: f64 = 5.0;
/// Width of the key picture, mm.
const KEY_WIDTH: f64 = 36.0;
/// Least depth of the head, so that the key picture is clear, mm.
const LEAST_DEPTH: f64 = 30.0;
/// Depth of the bar that says that a back is shown, mm.
const BAR: f64 = 6.5;
/// What it says.
const BACK: &str = "THIS IS THE BACK – DRILL HERE, NEVER FROM THE FRONT";
/// Most findings printed in full; the rest are counted.
const MOST_FINDINGS: usize = 4;

/// The head of one sheet, measured but not yet placed.
pub(super) struct Header<'a> {
    facts: &'a Facts<'a>,
    /// Whether the box has a line of its own under the headline.
    two_lines: bool,
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
        stuff.add(
            &format!("{size}, {}", facts.stuff_words()),
            Weight::Plain,
            room,
        );
        let fittings = facts.fittings();
        if !fittings.is_empty() {
            let text = format!("Fitting: {}", fittings.join("; "));
            stuff.add(&text, Weight::Plain, room);
        }
        if let Some(axis) = facts.axis_words() {
            stuff.add(&axis, Weight::Plain, room);
        }
        stuff.add(&facts.match_words(), Weight::Bold, room);
        if facts.invented() {
            stuff.add(INVENTED, Weight::Bold, room);
        }
        let headline = text::width(&facts.headline(), HEADLINE, Weight::Bold)
            + GAP
            + text::width(&box_words(facts), BOX_NAME, Weight::Bold);
        Self {
            two_lines: headline > room,
            facts,
            words,
            stuff,
            findings: findings_block(facts, width - 6.0),
            width,
        }
    }

    /// Depth, mm.
    pub(super) fn depth(&self) -> f64 {
        let text = self.headline_depth() + self.words.depth() + self.stuff.depth() + 2.0;
        text.max(LEAST_DEPTH) + self.findings_depth()
    }

    fn headline_depth(&self) -> f64 {
        let bar = if self.is_back() { BAR + 2.0 } else { 0.0 };
        HEADLINE + 3.0 + bar + if self.two_lines { SECOND_LINE } else { 0.0 }
    }

    /// Whether the sheet could be taken for a drawing of a front.
    fn is_back(&self) -> bool {
        self.facts.panel.face == Face::DoorBack
    }

    /// White words on a black bar: this is the back.
    fn back_bar(&self, list: &mut DisplayList, brush: Brush, low: At) {
        let room = self.width - KEY_WIDTH - 4.0;
        let bar = Rect::from_points([low, At::new(low.x + room, low.y + BAR)]);
        brush.area(list, corners(bar));
        let (words, height) = fitted(BACK, &[3.5, 2.5, 1.8], Weight::Bold, room - 4.0);
        let how = Lettering::new(height)
            .bold()
            .held(Along::Middle, Across::Middle);
        brush.ink(Ink::Paper).text(list, bar.center(), words, how);
    }

    fn findings_depth(&self) -> f64 {
        self.findings
            .as_ref()
            .map_or(0.0, |block| block.depth() + 4.0)
    }

    /// Draws it from its upper left corner; `true` when the legend of the opening mark is needed.
    pub(super) fn draw(&self, list: &mut DisplayList, top_left: At) -> bool {
        let brush = Brush::new(Layer::Sheet, Ink::Plain);
        self.headline(list, brush, At::new(top_left.x, top_left.y - HEADLINE));
        let mut y = top_left.y - self.headline_depth();
        if self.is_back() {
            self.back_bar(list, brush, At::new(top_left.x, y + 1.0));
        }
        self.words.draw(list, brush, At::new(top_left.x, y));
        y -= self.words.depth();
        self.stuff.draw(list, brush, At::new(top_left.x, y));
        let low = top_left.y - self.depth();
        let right = top_left.x + self.width;
        let key_room = Rect::from_points([
            At::new(right - KEY_WIDTH, top_left.y),
            At::new(right, low + self.findings_depth()),
        ]);
        if let Some(block) = &self.findings {
            let worst = self
                .facts
                .findings
                .iter()
                .map(|finding| finding.severity)
                .max();
            let frame = Rect::from_points([
                At::new(top_left.x, low + 1.0),
                At::new(right, low + self.findings_depth() - 0.5),
            ]);
            let brush = Brush::new(Layer::Findings, worst.map_or(Ink::Plain, severity_ink));
            let pen = if worst == Some(Severity::Note) {
                Pen::Thin
            } else {
                Pen::Banded
            };
            brush.rect(list, frame, pen);
            block.draw(list, brush, At::new(top_left.x + 3.0, frame.max_y() - 1.6));
        }
        key::draw(list, self.facts, key_room)
    }

    /// Panel at the left, box and number of pieces at the right, on one baseline; below each other
    /// where that would make either small.
    fn headline(&self, list: &mut DisplayList, brush: Brush, at: At) {
        let room = self.width - KEY_WIDTH - 4.0;
        let which = box_words(self.facts);
        let name = self.facts.headline();
        if self.two_lines {
            let (name, height) = fitted(&name, &[HEADLINE, 5.0, 3.5, 2.5], Weight::Bold, room);
            brush.text(list, at, name, Lettering::new(height).bold());
            let (which, height) = fitted(&which, &[BOX_NAME, 2.5, 1.8], Weight::Bold, room);
            let below = At::new(at.x, at.y - SECOND_LINE);
            brush.text(list, below, which, Lettering::new(height).bold());
            return;
        }
        let left = room - text::width(&name, HEADLINE, Weight::Bold) - GAP;
        let (which, height) = fitted(&which, &[5.0, BOX_NAME], Weight::Bold, left);
        let right = At::new(
            at.x + room - text::width(&which, height, Weight::Bold),
            at.y,
        );
        brush.text(list, right, which, Lettering::new(height).bold());
        brush.text(list, at, name, Lettering::new(HEADLINE).bold());
    }
}

/// Box and number of pieces.
fn box_words(facts: &Facts<'_>) -> String {
    let pieces = match facts.report.quantity {
        1 => "make 1".to_owned(),
        many => format!("MAKE {many}"),
    };
    format!("{pieces} for box “{}”", facts.report.name)
}

fn findings_block(facts: &Facts<'_>, room: f64) -> Option<Block> {
    let title = facts.findings_words()?;
    let mut block = Block::new(2.5);
    block.add(&title, Weight::Bold, room);
    let names = Names::of(facts.job);
    let speaker = names.speaker();
    for finding in facts.findings.iter().take(MOST_FINDINGS) {
        // Whose sheet this is stands above; other boxes are named in full, so that none is taken
        // for another.
        let text = format!(
            "{}: {}",
            finding.severity.word(),
            headline_in_box(finding, facts.report.id, &speaker)
        );
        block.add(&text, Weight::Plain, room);
    }
    let more = facts.findings.len().saturating_sub(MOST_FINDINGS);
    if more > 0 {
        block.add(
            &format!("and {more} more: see the list of findings"),
            Weight::Plain,
            room,
        );
    }
    Some(block)
}
