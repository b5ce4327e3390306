//! Head and foot that the pages of a set have in common.

use crate::brush::{Brush, Lettering};
use crate::cautions::INVENTED;
use crate::list::{At, DisplayList, Weight};
use crate::paper::Paper;
use crate::pen::{Ink, Layer, Pen};
use crate::title_block;
use crate::words::{Block, fitted};

/// Blank inside the frame, mm.
pub(super) const INSIDE: f64 = 3.0;
/// Height of the headline, mm (ISO 3098 series).
const HEADLINE: f64 = 7.0;
/// Height of running words, mm (ISO 3098 series).
pub(super) const WORDS: f64 = 2.5;

const BRUSH: Brush = Brush::new(Layer::Sheet, Ink::Plain);

/// What stands at the head of a page.
pub(super) struct Head<'a> {
    pub(super) headline: &'a str,
    pub(super) lead: &'a [String],
    pub(super) invented: bool,
    /// So much is left free at the right, mm.
    pub(super) free_right: f64,
}

impl Head<'_> {
    /// Draws it at the top of the drawing space; gives back its lower edge.
    pub(super) fn draw(&self, list: &mut DisplayList, paper: Paper) -> f64 {
        let space = paper.drawing_space();
        let width = space.width() - 2.0 * INSIDE - self.free_right;
        let left = space.min_x() + INSIDE;
        let heights = [HEADLINE, 5.0, 3.5, WORDS];
        let (headline, height) = fitted(self.headline, &heights, Weight::Bold, width);
        let mut y = space.max_y() - INSIDE - HEADLINE;
        BRUSH.text(
            list,
            At::new(left, y),
            headline,
            Lettering::new(height).bold(),
        );
        y -= 4.0;
        let mut lead = Block::new(WORDS);
        if self.invented {
            lead.add(INVENTED, Weight::Bold, width);
        }
        for words in self.lead {
            lead.add(words, Weight::Plain, width);
        }
        lead.draw(list, BRUSH, At::new(left, y));
        y - lead.depth() - 1.5
    }
}

/// Draws cautions (and what else is to be read) above the title block; gives back their upper
/// edge.
pub(super) fn foot(
    list: &mut DisplayList,
    paper: Paper,
    cautions: &[&str],
    legend: &[String],
    height: f64,
) -> f64 {
    let space = paper.drawing_space();
    let low = space.min_y() + title_block::HEIGHT;
    if cautions.is_empty() && legend.is_empty() {
        return low;
    }
    let both = !cautions.is_empty() && !legend.is_empty();
    let room = if both {
        0.5 * space.width() - 5.0
    } else {
        space.width() - 2.0 * INSIDE
    };
    let mut left = Block::new(height);
    if !cautions.is_empty() {
        left.add("CAUTIONS", Weight::Bold, room);
    }
    for caution in cautions {
        left.add(&format!("• {caution}"), Weight::Plain, room);
    }
    let mut right = Block::new(height);
    if !legend.is_empty() {
        right.add("HOW TO READ THIS PAGE", Weight::Bold, room);
    }
    for words in legend {
        right.add(words, Weight::Plain, room);
    }
    let top = low + left.depth().max(right.depth()) + 2.5;
    let ends = [At::new(space.min_x(), top), At::new(space.max_x(), top)];
    BRUSH.line(list, ends[0], ends[1], Pen::Thin);
    let notes = Brush::new(Layer::Notes, Ink::Plain);
    let x = space.min_x() + INSIDE;
    left.draw(list, notes, At::new(x, top - 1.8));
    let x = if both { space.center().x + 2.0 } else { x };
    right.draw(list, notes, At::new(x, top - 1.8));
    top
}

/// Revision of the job and fingerprint of a panel's bores, as every page of that panel prints
/// them.
pub(crate) fn match_words(revision: &str, fingerprint: &str) -> String {
    let revision = match revision.trim() {
        "" => "none".to_owned(),
        some => some.to_owned(),
    };
    format!(
        "Bores {}, revision {revision}",
        flapwright_rules::fingerprint::grouped(fingerprint)
    )
}

/// How many boxes are made, in words for a headline.
pub(super) fn pieces(quantity: u32) -> String {
    match quantity {
        1 => "make 1".to_owned(),
        many => format!("MAKE {many}"),
    }
}
