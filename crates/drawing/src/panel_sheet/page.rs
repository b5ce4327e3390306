//! Composing the pages of one panel: paper, scale, picture and hole table.

use euclid::default::Rect;

use super::facts::Facts;
use super::foot::Foot;
use super::header::Header;
use super::picture::{Picture, extent};
use super::table::Table;
use crate::brush::Brush;
use crate::list::{At, DisplayList, Weight};
use crate::paper::Paper;
use crate::pen::{Ink, Layer};
use crate::scale::Scale;
use crate::words::Block;

/// Between picture and hole table, mm.
const BETWEEN: f64 = 6.0;
/// Room below the picture for a note of two lines, mm.
const NOTE: f64 = 9.0;
/// Blank inside the frame, mm.
const INSIDE: f64 = 3.0;
/// So much scale is given up at most to keep the hole table on the sheet: one step of the list.
const ONE_STEP: f64 = 2.5;

/// A page without frame and title block.
pub(super) struct Page {
    pub(super) paper: Paper,
    pub(super) list: DisplayList,
    /// Scale of the picture; `None` on a page that only continues a table.
    pub(super) scale: Option<Scale>,
    pub(super) continued: bool,
}

/// Where things go on the first page.
#[derive(Debug, Clone, Copy)]
struct Plan {
    paper: Paper,
    scale: Scale,
    table: Place,
}

/// Where the hole table goes.
#[derive(Debug, Clone, Copy, PartialEq)]
enum Place {
    Beside,
    Below,
    NextPage,
}

/// The pages of one panel: the sheet and, if the hole table does not fit on it, further pages.
pub(super) fn pages(facts: &Facts<'_>) -> Vec<Page> {
    let table = Table::new(&facts.holes, facts.job.settings.inches_on_sheets);
    let plan = plan(facts, &table);
    let mut pages = vec![first_page(facts, &table, plan)];
    if plan.table == Place::NextPage {
        let mut rest = table;
        while !rest.is_empty() {
            let (page, left) = next_page(facts, &rest);
            pages.push(page);
            if left == rest {
                break;
            }
            rest = left;
        }
    }
    pages
}

/// The largest scale at which picture and table fit on one sheet, upright before turned; with the
/// table on a further page when that would cost more than one step of scale.
fn plan(facts: &Facts<'_>, table: &Table) -> Plan {
    let upright = Paper::of(facts.job.settings.paper);
    let papers = [upright, upright.turned()].map(|paper| (paper, body(facts, paper)));
    let find = |places: &[Place]| {
        Scale::reductions().find_map(|scale| {
            let (size, _) = extent(facts, scale);
            papers.into_iter().find_map(|(paper, body)| {
                let place = places.iter().find(|place| fits(table, body, size, **place))?;
                Some(Plan { paper, scale, table: *place })
            })
        })
    };
    let together = find(&[Place::Beside, Place::Below]);
    let apart = find(&[Place::NextPage]);
    match (together, apart) {
        (Some(one), Some(two)) if two.scale.ratio() > one.scale.ratio() * (ONE_STEP + 1e-9) => two,
        (Some(one), _) => one,
        (None, Some(two)) => two,
        (None, None) => {
            Plan { paper: upright, scale: Scale::new(1, 20000), table: Place::NextPage }
        }
    }
}

/// The part of the page between head and foot.
fn body(facts: &Facts<'_>, paper: Paper) -> Rect<f64> {
    let space = paper.drawing_space();
    let header = Header::new(facts, space.width() - 2.0 * INSIDE, None);
    let foot = Foot::new(facts, space, Some(facts.job.settings.opening_mark));
    let top = space.max_y() - INSIDE - header.depth() - 1.0;
    Rect::from_points([
        At::new(space.min_x() + INSIDE, space.min_y() + foot.depth() + 2.0),
        At::new(space.max_x() - INSIDE, top),
    ])
}

fn fits(table: &Table, body: Rect<f64>, [width, height]: [f64; 2], place: Place) -> bool {
    let height = height + NOTE;
    if width > body.width() || height > body.height() {
        return false;
    }
    match place {
        Place::NextPage => true,
        Place::Beside => {
            table.depth(body.width() - width - BETWEEN, body.height()).is_some()
        }
        Place::Below => table.depth(body.width(), body.height() - height).is_some(),
    }
}

fn first_page(facts: &Facts<'_>, table: &Table, plan: Plan) -> Page {
    let mut list = DisplayList::new();
    let space = plan.paper.drawing_space();
    let header = Header::new(facts, space.width() - 2.0 * INSIDE, None);
    let marked =
        header.draw(&mut list, At::new(space.min_x() + INSIDE, space.max_y() - INSIDE));
    let mark = marked.then_some(facts.job.settings.opening_mark);
    Foot::new(facts, space, mark).draw(&mut list);
    let body = body(facts, plan.paper);
    let ([width, height], [left, above]) = extent(facts, plan.scale);
    let x = match plan.table {
        Place::Beside => body.min_x(),
        Place::Below | Place::NextPage => body.min_x() + 0.5 * (body.width() - width),
    };
    let corner = At::new(x + left, body.max_y() - above);
    let complete = Picture { facts, scale: plan.scale, corner }.draw(&mut list);
    let room = match plan.table {
        Place::Beside => {
            let from = x + width + BETWEEN;
            Some(Rect::from_points([At::new(from, body.min_y()), body.max()]))
        }
        Place::Below => {
            let top = body.max_y() - height - NOTE;
            Some(Rect::from_points([body.min(), At::new(body.max_x(), top)]))
        }
        Place::NextPage => None,
    };
    if let Some(room) = room {
        let _rest = table.draw(&mut list, room);
    }
    let note = match (plan.table == Place::NextPage, complete) {
        (true, _) => "Hole table: next page.",
        (false, false) => "Distances that do not stand at the edges are in the hole table.",
        (false, true) => "",
    };
    let mut words = Block::new(2.5);
    words.add(note, Weight::Bold, width);
    let at = At::new(x, body.max_y() - height - 0.5);
    words.draw(&mut list, Brush::new(Layer::Notes, Ink::Plain), at);
    Page { paper: plan.paper, list, scale: Some(plan.scale), continued: false }
}

fn next_page(facts: &Facts<'_>, table: &Table) -> (Page, Table) {
    let paper = Paper::of(facts.job.settings.paper);
    let mut list = DisplayList::new();
    let space = paper.drawing_space();
    let width = space.width() - 2.0 * INSIDE;
    let header = Header::new(facts, width, Some("Hole table, continued"));
    let marked =
        header.draw(&mut list, At::new(space.min_x() + INSIDE, space.max_y() - INSIDE));
    let foot = Foot::new(facts, space, marked.then_some(facts.job.settings.opening_mark));
    foot.draw(&mut list);
    let room = Rect::from_points([
        At::new(space.min_x() + INSIDE, space.min_y() + foot.depth() + 2.0),
        At::new(space.max_x() - INSIDE, space.max_y() - INSIDE - header.depth() - 2.0),
    ]);
    let (rest, _) = table.draw(&mut list, room);
    (Page { paper, list, scale: None, continued: true }, rest)
}
