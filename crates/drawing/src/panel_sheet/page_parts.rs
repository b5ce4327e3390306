//! What whole pages and pages of parts have in common.

use euclid::default::Rect;

use super::facts::Facts;
use super::foot::{Foot, Words};
use super::frame::Picture;
use super::header::Header;
use super::table::Table;
use crate::list::{At, DisplayList};
use crate::paper::Paper;
use crate::scale::Scale;

/// Blank inside the frame, mm.
pub(super) const INSIDE: f64 = 3.0;

/// A page without frame and title block.
pub(super) struct Page {
    pub(super) paper: Paper,
    pub(super) list: DisplayList,
    /// Scale of the picture; `None` on a page that only continues a table.
    pub(super) scale: Option<Scale>,
    /// What the title says beyond the panel's name.
    pub(super) more: String,
}

/// Whether a picture at this scale has no room for some figure or number.
pub(super) fn leaves_out(facts: &Facts<'_>, scale: Scale) -> bool {
    let picture = Picture {
        facts,
        scale,
        corner: At::zero(),
    };
    !picture.draw(&mut DisplayList::new()).is_empty()
}

/// The pages of what is left of a hole table.
pub(super) fn next_pages(facts: &Facts<'_>, paper: Paper, mut rest: Table) -> Vec<Page> {
    let mut pages = Vec::new();
    while !rest.is_empty() {
        let (page, left) = next_page(facts, paper, &rest);
        pages.push(page);
        if left == rest {
            break;
        }
        rest = left;
    }
    pages
}

/// The part of the page between head and foot.
pub(super) fn body(facts: &Facts<'_>, paper: Paper, words: Words) -> Rect<f64> {
    let space = paper.drawing_space();
    let header = Header::new(facts, space.width() - 2.0 * INSIDE, None);
    let foot = Foot::new(facts, space, Some(facts.job.settings.opening_mark), words);
    let top = space.max_y() - INSIDE - header.depth() - 1.0;
    Rect::from_points([
        At::new(space.min_x() + INSIDE, space.min_y() + foot.depth() + 1.5),
        At::new(space.max_x() - INSIDE, top),
    ])
}

fn next_page(facts: &Facts<'_>, paper: Paper, table: &Table) -> (Page, Table) {
    let mut list = DisplayList::new();
    let space = paper.drawing_space();
    let width = space.width() - 2.0 * INSIDE;
    let header = Header::new(facts, width, Some("Hole table, continued"));
    let marked = header.draw(
        &mut list,
        At::new(space.min_x() + INSIDE, space.max_y() - INSIDE),
    );
    let mark = marked.then_some(facts.job.settings.opening_mark);
    let foot = Foot::new(facts, space, mark, Words::AtFoot);
    foot.draw(&mut list, At::zero());
    let room = Rect::from_points([
        At::new(space.min_x() + INSIDE, space.min_y() + foot.depth() + 2.0),
        At::new(
            space.max_x() - INSIDE,
            space.max_y() - INSIDE - header.depth() - 2.0,
        ),
    ]);
    let (rest, _) = table.draw(&mut list, room);
    (
        Page {
            paper,
            list,
            scale: None,
            more: ", hole table".to_owned(),
        },
        rest,
    )
}
