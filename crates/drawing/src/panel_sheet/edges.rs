//! Names of a panel's edges, their bands, and the zero corner.

use flapwright_model::length::show_mm_tenth;

use super::facts::{FaceEdge, Facts};
use super::picture::{ABOVE, FAR_SIDE, Picture, ZERO_SIDE};
use crate::brush::{Brush, Lettering};
use crate::dimension::figures_room;
use crate::list::{Across, Along, At, DisplayList};
use crate::pen::{Ink, Layer, Pen};

/// Height of edge names, mm.
const NAME: f64 = 2.5;
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
        let name = how.width(&facts.edge_words(edge));
        if name > outline[1] { name - 2.0 } else { 0.0 }
    };
    let distinct = |distance: &dyn Fn(usize) -> String| {
        let mut figures: Vec<String> = (0..facts.holes.len()).map(distance).collect();
        figures.sort();
        figures.dedup();
        figures_room(figures.len().min(12) + 1)
    };
    let names = [FaceEdge::VStart, FaceEdge::VEnd]
        .map(|edge| 0.5 * (how.width(&facts.edge_words(edge)) + outline[0]));
    Room {
        zero_side: beside(FaceEdge::UStart),
        far_side: beside(FaceEdge::UEnd),
        height: distinct(&|i| show_mm_tenth(facts.holes[i].v)),
        width: distinct(&|i| show_mm_tenth(facts.holes[i].u)).max(names[0]).max(names[1]),
    }
}

/// Marks the banded edges and writes all four names.
pub(super) fn draw(list: &mut DisplayList, picture: &Picture<'_>) {
    let facts = picture.facts;
    let panel = Brush::new(Layer::Panels, Ink::Plain);
    for edge in FaceEdge::ALL {
        if edge.band(facts.panel.bands) > 0.0 {
            let [from, to] = picture.edge_ends(edge);
            panel.line(list, from, to, Pen::Banded);
        }
        name(list, picture, edge);
    }
}

fn name(list: &mut DisplayList, picture: &Picture<'_>, edge: FaceEdge) {
    let outline = picture.outline();
    let words = picture.facts.edge_words(edge);
    let brush = Brush::new(Layer::Notes, Ink::Plain);
    let level = Lettering::new(NAME).held(Along::Middle, Across::Baseline);
    let middle = outline.center();
    match edge {
        FaceEdge::VStart => {
            let at = At::new(middle.x, outline.max_y() + ABOVE - NAME);
            brush.text(list, at, words, level.bold());
        }
        FaceEdge::VEnd => {
            let at = At::new(middle.x, outline.min_y() - 3.0);
            brush.text(list, at, words, level.held(Along::Middle, Across::Top));
        }
        FaceEdge::UStart | FaceEdge::UEnd => {
            let at_zero = edge == FaceEdge::UStart;
            let to_right = at_zero == picture.facts.u_runs_left();
            let away = if at_zero { ZERO_SIDE - 1.5 } else { FAR_SIDE - 2.0 };
            let x = if to_right { outline.max_x() + away } else { outline.min_x() - away };
            side_name(list, brush, words, At::new(x, middle.y), to_right, at_zero, outline.height());
        }
    }
}

/// A name along an upright edge, reading from the right; level where the edge is too short.
fn side_name(
    list: &mut DisplayList,
    brush: Brush,
    words: String,
    at: At,
    to_right: bool,
    at_zero: bool,
    height: f64,
) {
    let mut how = Lettering::new(NAME);
    if at_zero {
        how = how.bold();
    }
    if Lettering::new(NAME).width(&words) > height {
        let inward = if to_right { -2.0 } else { 2.0 };
        let along = if to_right { Along::Start } else { Along::End };
        let at = At::new(at.x + inward, at.y);
        brush.text(list, at, words, how.held(along, Across::Middle));
        return;
    }
    let across = if to_right { Across::Baseline } else { Across::Top };
    brush.text(list, at, words, how.up().held(Along::Middle, across));
}

/// The ring at the zero corner, two of its quarters filled, and what distances run from.
pub(super) fn zero(list: &mut DisplayList, picture: &Picture<'_>) {
    let corner = picture.at(0.0, 0.0);
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
    let (x, along) =
        if left { (corner.x + 3.5, Along::Start) } else { (corner.x - 3.5, Along::End) };
    let edges = if picture.facts.cut { "CUT" } else { "FINISHED" };
    let lines = [("zero", 3.5, 11.0), (edges, 2.5, 7.0), ("edges", 2.5, 3.4)];
    for (words, height, up) in lines {
        let how = Lettering::new(height).bold().held(along, Across::Baseline);
        brush.text(list, At::new(x, corner.y + up), words, how);
    }
}
