//! Composing the pages of one panel: paper, scale, picture and hole table.

use euclid::default::Rect;

use super::broken;
use super::facts::Facts;
use super::foot::{Foot, Words, has_room_beside};
use super::frame::Picture;
use super::header::Header;
use super::page_parts::{INSIDE, Page, body, leaves_out, next_pages};
use super::picture::extent;
use super::table::Table;
use super::table_section::Style;
use crate::brush::Brush;
use crate::fit::Fit;
use crate::list::{At, DisplayList, Weight};
use crate::paper::Paper;
use crate::pen::{Ink, Layer};
use crate::scale::Scale;
use crate::words::Block;

/// Between picture and hole table, mm.
const BETWEEN: f64 = 5.0;
/// Between hole table and running words in one column, mm.
const COLUMN_GAP: f64 = 2.0;
/// Height of the capitals of notes, mm.
const NOTE_HEIGHT: f64 = 2.5;
/// Words beside a picture without a table need at least this width, mm.
const LEAST_COLUMN: f64 = 50.0;
/// Words at the foot take no more than this, mm: so much more a column of its own can give.
const MOST_WORDS: f64 = 80.0;
/// With more holes than this no scale is given up: the picture would be a thicket.
const MANY_HOLES: usize = 30;
/// So much scale is given up at most to keep the hole table on the sheet.
const MOST_SCALE_LOST: f64 = 4.0;

/// Where things go on the first page.
struct Plan<'a> {
    paper: Paper,
    scale: Scale,
    table: &'a Table,
    place: Place,
    words: Words,
}

/// Where the hole table goes.
#[derive(Debug, Clone, Copy, PartialEq)]
enum Place {
    Beside,
    Below,
    NextPage,
}

/// The pages of one panel: the sheet and, if the hole table does not fit on it, further pages.
pub(super) fn pages(facts: &Facts<'_>, fit: &Fit) -> Vec<Page> {
    let inches = facts.job.settings.inches_on_sheets;
    let table = |style| Table::new(&facts.holes, inches, style);
    let (clear, small) = (Style::CLEAR.map(table), Style::SMALL.map(table));
    let plan = plan(facts, fit, &clear, &small);
    if broken::is_better(facts, plan.scale, leaves_out(facts, plan.scale))
        && let Some(pages) = broken::pages(facts, fit, plan.scale)
    {
        return pages;
    }
    let mut pages = vec![first_page(facts, &plan)];
    if plan.place == Place::NextPage {
        pages.extend(next_pages(facts, fit.first_paper(), plan.table.clone()));
    }
    pages
}

/// The largest scale at which picture and table fit on one sheet, upright before turned; with a
/// smaller table, or with the table on a further page, when that would cost too much scale.
fn plan<'a>(facts: &Facts<'_>, fit: &Fit, clear: &'a [Table], small: &'a [Table]) -> Plan<'a> {
    let papers: Vec<(Paper, Rect<f64>)> = fit
        .papers
        .iter()
        .map(|paper| (*paper, body(facts, *paper, Words::AtFoot)))
        .collect();
    let find = |places: &[Place], tables: &'a [Table]| {
        fit.scales().find_map(|scale| {
            let mut size = extent(facts, scale).0;
            let may_fit =
                |body: &Rect<f64>| size[0] <= body.width() && size[1] <= body.height() + MOST_WORDS;
            if !papers.iter().any(|(_, body)| may_fit(body)) {
                return None;
            }
            size[1] += note_depth(&notes(facts, scale, size[0], places == [Place::NextPage]));
            papers.iter().copied().find_map(|(paper, body)| {
                places.iter().find_map(|place| {
                    tables.iter().find_map(|table| {
                        let words = fits(facts, table, (paper, body), size, *place)?;
                        Some(Plan {
                            paper,
                            scale,
                            table,
                            place: *place,
                            words,
                        })
                    })
                })
            })
        })
    };
    let most_lost = if facts.holes.len() > MANY_HOLES {
        1.0
    } else {
        MOST_SCALE_LOST
    };
    let on_sheet = [Place::Beside, Place::Below];
    let apart = find(&[Place::NextPage], clear);
    let best = apart.as_ref().map_or(0.0, |plan| plan.scale.ratio());
    // A smaller picture that leaves something out is worth no table beside it.
    let clear_apart = apart
        .as_ref()
        .is_some_and(|plan| !leaves_out(facts, plan.scale));
    let enough = |plan: &Plan<'_>| {
        best <= plan.scale.ratio() * (most_lost + 1e-9)
            && !(clear_apart && leaves_out(facts, plan.scale))
    };
    find(&on_sheet, clear)
        .filter(enough)
        .or_else(|| find(&on_sheet, small).filter(enough))
        .or(apart)
        .unwrap_or(Plan {
            paper: fit.first_paper(),
            scale: Scale::new(1, 20000),
            table: &clear[0],
            place: Place::NextPage,
            words: Words::AtFoot,
        })
}

/// Where the running words go when picture and table fit like this; `None` when they do not.
fn fits(
    facts: &Facts<'_>,
    table: &Table,
    (paper, body): (Paper, Rect<f64>),
    [width, height]: [f64; 2],
    place: Place,
) -> Option<Words> {
    if width > body.width() {
        return None;
    }
    let space = paper.drawing_space();
    let column = body.width() - width - BETWEEN;
    // The words in the column beside the picture leave more depth to both.
    let in_column = |beside: &dyn Fn(f64) -> bool| {
        let words = Words::InColumn(column);
        let mark = Some(facts.job.settings.opening_mark);
        let foot = Foot::new(facts, space, mark, words);
        let deeper = Foot::new(facts, space, mark, Words::AtFoot).depth() - foot.depth();
        let depth = body.height() + deeper;
        let left = depth - foot.column_depth() - COLUMN_GAP;
        (height <= depth && left >= 0.0 && beside(left)).then_some(words)
    };
    match place {
        Place::NextPage if height <= body.height() => Some(Words::AtFoot),
        Place::NextPage if column < LEAST_COLUMN => None,
        Place::NextPage => in_column(&|_| true),
        Place::Below => {
            table.depth(body.width(), body.height() - height)?;
            Some(Words::AtFoot)
        }
        Place::Beside => {
            let at_foot = has_room_beside(space)
                && height <= body.height()
                && table.depth(column, body.height()).is_some();
            if at_foot {
                return Some(Words::AtFoot);
            }
            in_column(&|left| table.depth(column, left).is_some())
        }
    }
}

/// What the reader must be told under a picture of this scale and width, found by drawing it
/// aside.
fn notes(facts: &Facts<'_>, scale: Scale, width: f64, table_follows: bool) -> Block {
    let mut aside = DisplayList::new();
    let corner = At::zero();
    let mut words = Picture {
        facts,
        scale,
        corner,
    }
    .draw(&mut aside);
    words.extend(facts.outside_words());
    if table_follows {
        words.insert(0, "Hole table: next page.");
    }
    let mut block = Block::new(NOTE_HEIGHT);
    block.add(&words.join(" "), Weight::Bold, width);
    block
}

/// Depth of the notes with the blank around them, mm.
fn note_depth(notes: &Block) -> f64 {
    notes.depth() + 2.0
}

fn first_page(facts: &Facts<'_>, plan: &Plan<'_>) -> Page {
    let mut list = DisplayList::new();
    let space = plan.paper.drawing_space();
    let header = Header::new(facts, space.width() - 2.0 * INSIDE, None);
    let marked = header.draw(
        &mut list,
        At::new(space.min_x() + INSIDE, space.max_y() - INSIDE),
    );
    let body = body(facts, plan.paper, plan.words);
    let ([width, height], [left, above]) = extent(facts, plan.scale);
    let x = match (plan.place, plan.words) {
        (Place::Beside, _) | (_, Words::InColumn(_)) => body.min_x(),
        (Place::Below | Place::NextPage, Words::AtFoot) => {
            body.min_x() + 0.5 * (body.width() - width)
        }
    };
    let column = At::new(x + width + BETWEEN, body.min_y());
    let mark = marked.then_some(facts.job.settings.opening_mark);
    let foot = Foot::new(facts, space, mark, plan.words);
    foot.draw(&mut list, column);
    let corner = At::new(x + left, body.max_y() - above);
    Picture {
        facts,
        scale: plan.scale,
        corner,
    }
    .draw(&mut list);
    let notes = notes(facts, plan.scale, width, plan.place == Place::NextPage);
    let note_at = At::new(x, body.max_y() - height - 0.5);
    notes.draw(&mut list, Brush::new(Layer::Notes, Ink::Plain), note_at);
    let room = match plan.place {
        Place::Beside => {
            let below = match plan.words {
                Words::InColumn(_) => foot.column_depth() + COLUMN_GAP,
                Words::AtFoot => 0.0,
            };
            Rect::from_points([At::new(column.x, column.y + below), body.max()])
        }
        Place::Below => {
            let top = body.max_y() - height - note_depth(&notes);
            Rect::from_points([body.min(), At::new(body.max_x(), top)])
        }
        Place::NextPage => Rect::zero(),
    };
    if plan.place != Place::NextPage {
        let _rest = plan.table.draw(&mut list, room);
    }
    Page {
        paper: plan.paper,
        list,
        scale: Some(plan.scale),
        more: String::new(),
    }
}
