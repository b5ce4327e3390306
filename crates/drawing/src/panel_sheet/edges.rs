//! Names of a panel's edges, their bands, and the zero corner.

use euclid::default::Rect;
use flapwright_model::length::show_mm_tenth;

use super::facts::{FaceEdge, Facts};
use super::frame::{ABOVE, FAR_SIDE, Picture, ZERO_SIDE};
use crate::brush::{Brush, Lettering};
use crate::list::{Across, Along, At, DisplayList};
use crate::pen::{Ink, Layer, Pen};
use crate::running::figures_room;

/// Height of edge names, mm.
const NAME: f64 = 2.5;
/// From line to line of a name of two lines, mm.
const LINE: f64 = 4.0;
/// Radius of the ring at the zero corner, mm.
const RING: f64 = 2.0;

/// What the picture of a panel needs beside its outline, paper mm.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Room {
    /// More at the zero side than running dimensions take.
    pub(super) zero_side: f64,
    /// More at the far side.
    pub(super) far_side: f64,
    /// Depth for the figures at the upright edge, if the panel is shorter than they are.
    pub(super) height: f64,
    /// Width for the figures at the level edge, likewise.
    pub(super) width: f64,
}

/// The room for names and figures of a panel drawn with this outline, paper mm.
pub(super) fn room(facts: &Facts<'_>, outline: [f64; 2]) -> Room {
    let how = Lettering::new(NAME);
    let beside = |edge| {
        let lines = side_lines(facts, edge, outline[1]);
        let widest = lines
            .words
            .iter()
            .map(|line| how.bold().width(line))
            .fold(0.0, f64::max);
        match lines.turned {
            true => LINE * (lines.words.len() as f64 - 1.0),
            false => widest - 2.0,
        }
    };
    let distinct = |distance: &dyn Fn(usize) -> String| {
        let mut figures: Vec<String> = (0..facts.holes.len()).map(distance).collect();
        figures.sort();
        figures.dedup();
        figures_room(figures.len().min(12) + 1)
    };
    let names =
        [FaceEdge::VStart, FaceEdge::VEnd].map(|edge| how.bold().width(&facts.edge_words(edge)));
    Room {
        zero_side: beside(FaceEdge::UStart),
        far_side: beside(FaceEdge::UEnd),
        height: distinct(&|i| show_mm_tenth(facts.holes[i].v)),
        width: distinct(&|i| show_mm_tenth(facts.holes[i].u))
            .max(names[0])
            .max(names[1]),
    }
}

/// Marks the banded edges and writes all four names.
pub(super) fn draw(list: &mut DisplayList, picture: &Picture<'_>) {
    let facts = picture.facts;
    let panel = Brush::new(Layer::Panels, Ink::Plain);
    for edge in FaceEdge::ALL {
        if facts.break_at(edge).is_some() {
            break_line(list, panel, picture.edge_ends(edge));
        } else if edge.band(facts.panel.bands) > 0.0 {
            let [from, to] = picture.edge_ends(edge);
            panel.line(list, from, to, Pen::Banded);
        }
        name(list, picture, edge);
    }
}

/// A continuous narrow line with a zigzag (ISO 128 line type 01.1, restated from memory), a little
/// longer than the edge.
fn break_line(list: &mut DisplayList, brush: Brush, [from, to]: [At; 2]) {
    let along = (to - from) / (to - from).length().max(1e-9);
    let aside = euclid::default::Vector2D::new(-along.y, along.x);
    let middle = from.lerp(to, 0.5);
    let points = vec![
        from - along * 1.5,
        middle - along * 1.4,
        middle - along * 0.7 + aside * 1.6,
        middle + along * 0.7 - aside * 1.6,
        middle + along * 1.4,
        to + along * 1.5,
    ];
    brush.run(list, points, Pen::Thin);
}

fn name(list: &mut DisplayList, picture: &Picture<'_>, edge: FaceEdge) {
    let outline = picture.outline();
    let words = picture.facts.edge_words(edge);
    let brush = Brush::new(Layer::Notes, Ink::Plain);
    let level = Lettering::new(NAME).held(Along::Middle, Across::Baseline);
    // A name wider than its edge runs past the far end: distances are at the zero end.
    let wide = Lettering::new(NAME).bold().width(&words) - outline.width();
    let past = 0.5 * wide.max(0.0);
    let x = if picture.facts.u_runs_left() {
        outline.center().x - past
    } else {
        outline.center().x + past
    };
    match edge {
        FaceEdge::VStart => {
            let at = At::new(x, outline.max_y() + ABOVE - NAME);
            brush.text(list, at, words, level.bold());
        }
        FaceEdge::VEnd => {
            let at = At::new(x, outline.min_y() - 3.0);
            brush.text(list, at, words, level.held(Along::Middle, Across::Top));
        }
        FaceEdge::UStart | FaceEdge::UEnd => {
            let at_zero = edge == FaceEdge::UStart;
            let to_right = at_zero == picture.facts.u_runs_left();
            let lines = side_lines(picture.facts, edge, outline.height());
            side_name(list, brush, &lines, outline, to_right, at_zero);
        }
    }
}

/// The name of an upright edge as it is set.
struct SideLines {
    words: Vec<String>,
    /// Whether it reads from the right, along the edge.
    turned: bool,
}

/// One line along the edge if the edge is long enough; two if that helps; level lines beside a
/// short edge.
fn side_lines(facts: &Facts<'_>, edge: FaceEdge, height: f64) -> SideLines {
    let how = Lettering::new(NAME).bold();
    let whole = facts.edge_words(edge);
    if how.width(&whole) <= height {
        return SideLines {
            words: vec![whole],
            turned: true,
        };
    }
    let mut words = vec![facts.edge_title(edge)];
    words.extend(facts.band_words(edge));
    let turned = words.iter().all(|line| how.width(line) <= height);
    SideLines { words, turned }
}

fn side_name(
    list: &mut DisplayList,
    brush: Brush,
    lines: &SideLines,
    outline: Rect<f64>,
    to_right: bool,
    at_zero: bool,
) {
    let away = if at_zero {
        ZERO_SIDE - 4.0
    } else {
        FAR_SIDE - 4.5
    };
    let edge = if to_right {
        outline.max_x()
    } else {
        outline.min_x()
    };
    let out = if to_right { 1.0 } else { -1.0 };
    let mut how = Lettering::new(NAME);
    if at_zero {
        how = how.bold();
    }
    let count = lines.words.len();
    for (i, words) in lines.words.iter().enumerate() {
        if lines.turned {
            // Turned lines follow each other from left to right.
            let nth = if to_right { i } else { count - 1 - i } as f64;
            let x = edge + out * (away + LINE * nth);
            let across = if to_right {
                Across::Top
            } else {
                Across::Baseline
            };
            let at = At::new(x, outline.center().y);
            brush.text(
                list,
                at,
                words.clone(),
                how.up().held(Along::Middle, across),
            );
        } else {
            let along = if to_right { Along::Start } else { Along::End };
            let y = outline.center().y - LINE * (i as f64 - 0.5 * (count as f64 - 1.0));
            let at = At::new(edge + out * away, y);
            brush.text(list, at, words.clone(), how.held(along, Across::Middle));
        }
    }
}

/// The place of the ring at the zero corner.
pub(super) fn ring_room(picture: &Picture<'_>) -> Rect<f64> {
    let size = 2.0 * RING + 0.8;
    crate::layout::around(picture.zero_corner(), [size, size])
}

/// The ring at the zero corner, two of its quarters filled, and what distances run from.
pub(super) fn zero(list: &mut DisplayList, picture: &Picture<'_>) {
    let corner = picture.zero_corner();
    let left = picture.facts.u_runs_left();
    let brush = Brush::new(Layer::Dimensions, Ink::Plain);
    let blank = Brush::new(Layer::Dimensions, Ink::Paper);
    blank.disc(list, corner, RING);
    brush.circle(list, corner, RING, Pen::Outline);
    let start = if left { 0.0 } else { 90.0 };
    for first in [start, start + 180.0] {
        let mut quarter = vec![corner];
        for step in 0..=6 {
            let angle = f64::to_radians(first + 15.0 * f64::from(step));
            let reach = euclid::default::Vector2D::new(angle.cos(), angle.sin()) * RING;
            quarter.push(corner + reach);
        }
        brush.area(list, quarter);
    }
    let (x, along) = if left {
        (corner.x + 3.5, Along::Start)
    } else {
        (corner.x - 3.5, Along::End)
    };
    let edges = if picture.facts.cut { "CUT" } else { "FINISHED" };
    let lines = [("zero", 3.5, 11.0), (edges, 2.5, 7.0), ("edges", 2.5, 3.4)];
    for (words, height, up) in lines {
        let how = Lettering::new(height).bold().held(along, Across::Baseline);
        brush.text(list, At::new(x, corner.y + up), words, how);
    }
}
