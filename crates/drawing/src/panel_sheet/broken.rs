//! A long narrow panel, drawn in parts at a clear scale: breaks with match marks, one zero.

use euclid::default::Rect;
use flapwright_model::length::show_mm_tenth;

use super::facts::{Break, FaceEdge, Facts};
use super::foot::{Foot, Words};
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

/// A panel so much longer than wide may be broken.
const LONG: f64 = 4.0;
/// A narrow side smaller than this is too small to be read, paper mm.
const LEAST_NARROW: f64 = 8.0;
/// One that is wider shows all that matters even where some numbers have no room, paper mm.
const CLEARLY_WIDE: f64 = 20.0;
/// Between parts, mm.
const BETWEEN: f64 = 4.0;
/// A break keeps so far from the rims of holes, paper mm.
const CLEAR: f64 = 3.0;
/// More parts than this are no clearer than a small picture.
const MOST_PARTS: usize = 26;

/// Which way a panel is long.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum Long {
    U,
    V,
}

/// Whether the panel is better drawn in parts than whole at this scale.
pub(super) fn is_better(facts: &Facts<'_>, whole: Scale, something_left_out: bool) -> bool {
    let [u, v] = facts.size;
    let (long, narrow) = (u.max(v), u.min(v));
    let wide = narrow * whole.ratio();
    facts.panel.infill.is_none()
        && long >= LONG * narrow
        && (wide < LEAST_NARROW || (something_left_out && wide < CLEARLY_WIDE))
        && whole.ratio() < 1.0
}

/// How a panel is broken.
struct Plan {
    paper: Paper,
    scale: Scale,
    long: Long,
    /// Breaks from zero, mm, in rising order.
    breaks: Vec<f64>,
    /// Parts on one page.
    per_page: usize,
}

/// The pages of a panel drawn in parts; `None` where no scale is clearer than `whole`.
pub(super) fn pages(facts: &Facts<'_>, fit: &Fit, whole: Scale) -> Option<Vec<Page>> {
    let plan = plan(facts, fit, whole)?;
    let parts = parts(facts, &plan);
    let table = Table::new(
        &facts.holes,
        facts.job.settings.inches_on_sheets,
        Style::CLEAR[0],
    );
    let mut pages = Vec::new();
    let mut rest = table.clone();
    let count = parts.len().div_ceil(plan.per_page);
    for (i, some) in parts.chunks(plan.per_page).enumerate() {
        let last = i + 1 == count;
        let table = last.then_some(&table);
        let (mut page, left) = page(facts, &plan, some, (i, count), table);
        if i > 0 {
            page.more = format!(", part {}", i + 1);
        }
        if let Some(left) = left {
            rest = left;
        }
        pages.push(page);
    }
    pages.extend(next_pages(facts, plan.paper, rest));
    Some(pages)
}

fn plan(facts: &Facts<'_>, fit: &Fit, whole: Scale) -> Option<Plan> {
    let [u, v] = facts.size;
    let long = if u >= v { Long::U } else { Long::V };
    let scales: Vec<Scale> = fit
        .scales()
        .filter(|scale| scale.ratio() > whole.ratio() && u.min(v) * scale.ratio() >= LEAST_NARROW)
        .collect();
    // The smallest scale that leaves nothing out; else the smallest that is clear at all.
    let at = |scale: Scale| {
        fit.papers
            .iter()
            .filter_map(|paper| on_paper(facts, *paper, scale, long))
            .min_by_key(|plan| (plan.breaks.len() + 1).div_ceil(plan.per_page))
    };
    let mut plans = scales.iter().rev().filter_map(|scale| at(*scale));
    let first = plans.next()?;
    let complete = |plan: &Plan| {
        parts(facts, plan)
            .iter()
            .all(|part| !leaves_out(part, plan.scale))
    };
    if complete(&first) {
        return Some(first);
    }
    plans.find(complete).or(Some(first))
}

fn on_paper(facts: &Facts<'_>, paper: Paper, scale: Scale, long: Long) -> Option<Plan> {
    let room = parts_room(facts, paper);
    let axis = if long == Long::U { 0 } else { 1 };
    let (across, along) = if long == Long::U {
        (room.height(), room.width())
    } else {
        (room.width(), room.height())
    };
    // The longest part that fits: names and figures at the ends take the same room everywhere.
    let mut trial = facts.clone();
    trial.size[axis] = along / scale.ratio();
    trial.breaks = vec![
        Break {
            edge: ends(long)[0],
            mark: 'W',
            at: 4000.0,
        },
        Break {
            edge: ends(long)[1],
            mark: 'W',
            at: 4000.0,
        },
    ];
    let size = extent(&trial, scale).0;
    let beside = size[axis] - along;
    let longest = (along - beside) / scale.ratio();
    if longest <= 0.0 {
        return None;
    }
    let whole = facts.size[axis];
    let count = (whole / longest).ceil().max(1.0);
    let wide = size[1 - axis] + BETWEEN;
    let per_page = ((across + BETWEEN) / wide).floor() as usize;
    if per_page == 0 || count as usize > MOST_PARTS {
        return None;
    }
    // A break may have to move away from a hole: parts are a little shorter than they could be.
    let mut breaks = Vec::new();
    let mut from = 0.0;
    for left in (1..count as usize).rev() {
        let fair = from + (whole - from) / (left as f64 + 1.0);
        let at = clear_of_holes(facts, axis, fair, scale)?;
        if at - from > longest || at <= from {
            return None;
        }
        breaks.push(at);
        from = at;
    }
    (whole - from <= longest).then_some(Plan {
        paper,
        scale,
        long,
        breaks,
        per_page,
    })
}

const fn ends(long: Long) -> [FaceEdge; 2] {
    match long {
        Long::U => [FaceEdge::UStart, FaceEdge::UEnd],
        Long::V => [FaceEdge::VStart, FaceEdge::VEnd],
    }
}

/// The place nearest to `wanted` at which a break cuts no hole, mm from zero.
fn clear_of_holes(facts: &Facts<'_>, axis: usize, wanted: f64, scale: Scale) -> Option<f64> {
    let free = |at: f64| {
        facts.holes.iter().all(|hole| {
            let own = if axis == 0 { hole.u } else { hole.v };
            (own - at).abs() > 0.5 * hole.diameter + CLEAR / scale.ratio()
        })
    };
    let looser = |at: f64| {
        facts.holes.iter().all(|hole| {
            let own = if axis == 0 { hole.u } else { hole.v };
            (own - at).abs() > 0.5 * hole.diameter + 0.5
        })
    };
    let steps = || (0..400_u32).map(|step| 0.5 * f64::from(step));
    let tries = || steps().flat_map(|by| [wanted - by, wanted + by]);
    tries()
        .find(|at| free(*at))
        .or_else(|| tries().find(|at| looser(*at)))
}

/// The facts of each part, in order from zero.
fn parts<'a>(facts: &Facts<'a>, plan: &Plan) -> Vec<Facts<'a>> {
    let axis = if plan.long == Long::U { 0 } else { 1 };
    let mut stops = vec![0.0];
    stops.extend(&plan.breaks);
    stops.push(facts.size[axis]);
    let last = stops.len() - 2;
    stops
        .windows(2)
        .enumerate()
        .filter_map(|(i, pair)| {
            let [from, to] = *pair else { return None };
            let mut part = facts.clone();
            part.start[axis] = from;
            part.size[axis] = to - from;
            part.holes.retain(|hole| {
                let own = if axis == 0 { hole.u } else { hole.v };
                (from..to).contains(&own) || (i == last && own >= to) || (i == 0 && own < from)
            });
            let mark = |number: usize| char::from(b'A' + (number % 26) as u8);
            let [start, end] = ends(plan.long);
            if i > 0 {
                let edge = start;
                part.breaks.push(Break {
                    edge,
                    mark: mark(i - 1),
                    at: from,
                });
            }
            if i < last {
                let edge = end;
                part.breaks.push(Break {
                    edge,
                    mark: mark(i),
                    at: to,
                });
            }
            Some(part)
        })
        .collect()
}

/// What is said under the parts.
fn note(facts: &Facts<'_>, width: f64, (page, pages): (usize, usize)) -> Block {
    let mut block = Block::new(2.5);
    let pages = if pages > 1 {
        format!(" Parts, page {} of {pages}.", page + 1)
    } else {
        String::new()
    };
    let long = facts.size[0].max(facts.size[1]);
    let left_out = facts.outside_words().map_or_else(
        || "; nothing is left out.".to_owned(),
        |words| format!(". {words}"),
    );
    block.add(
        &format!(
            "The panel of {} is drawn in parts that meet at breaks with the same mark{left_out} All \
             distances run from the one zero.{pages}",
            show_mm_tenth(long)
        ),
        Weight::Bold,
        width,
    );
    block
}

/// Room for parts between head and note.
fn parts_room(facts: &Facts<'_>, paper: Paper) -> Rect<f64> {
    let body = body(facts, paper, Words::AtFoot);
    let note = note(facts, body.width(), (25, 26)).depth() + 2.0;
    Rect::from_points([
        At::new(body.min_x(), body.min_y() + note),
        At::new(body.max_x(), body.max_y()),
    ])
}

/// One page of parts; with a table, as much of it as goes below them, and what is left.
fn page(
    facts: &Facts<'_>,
    plan: &Plan,
    parts: &[Facts<'_>],
    number: (usize, usize),
    table: Option<&Table>,
) -> (Page, Option<Table>) {
    let mut list = DisplayList::new();
    let space = plan.paper.drawing_space();
    let header = Header::new(facts, space.width() - 2.0 * INSIDE, None);
    let corner = At::new(space.min_x() + INSIDE, space.max_y() - INSIDE);
    let marked = header.draw(&mut list, corner);
    let mark = marked.then_some(facts.job.settings.opening_mark);
    Foot::new(facts, space, mark, Words::AtFoot).draw(&mut list, At::zero());
    let room = parts_room(facts, plan.paper);
    let mut at = At::new(room.min_x(), room.max_y());
    let mut low = room.max_y();
    for part in parts {
        let ([width, height], [left, above]) = extent(part, plan.scale);
        Picture {
            facts: part,
            scale: plan.scale,
            corner: At::new(at.x + left, at.y - above),
        }
        .draw(&mut list);
        low = low.min(at.y - height);
        match plan.long {
            Long::U => at.y -= height + BETWEEN,
            Long::V => at.x += width + BETWEEN,
        }
    }
    let words = note(facts, room.width(), number);
    let brush = Brush::new(Layer::Notes, Ink::Plain);
    words.draw(&mut list, brush, At::new(room.min_x(), low - 1.0));
    let below = low - 1.0 - words.depth() - 2.0;
    let rest = table.map(|table| {
        let body = body(facts, plan.paper, Words::AtFoot);
        if below - body.min_y() < 15.0 {
            return table.clone();
        }
        let free = Rect::from_points([body.min(), At::new(body.max_x(), below)]);
        table.draw(&mut list, free).0
    });
    let page = Page {
        paper: plan.paper,
        list,
        scale: Some(plan.scale),
        more: String::new(),
    };
    (page, rest)
}
