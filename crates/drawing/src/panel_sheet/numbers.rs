//! The numbers beside the holes.

use euclid::default::Rect;

use super::frame::{Picture, RING};
use super::holes::Hole;
use crate::brush::{Brush, Lettering, corners};
use crate::dimension::{FIGURE, SMALL_FIGURE};
use crate::layout::Crowd;
use crate::list::{Across, Along, At, DisplayList};
use crate::pen::{Ink, Layer, Pen};

/// How far from a hole its number may go, paper mm.
const NEAR: [f64; 3] = [0.2, 1.0, 2.0];
const FAR: [f64; 10] = [0.2, 1.0, 2.0, 4.0, 7.0, 10.0, 14.0, 20.0, 28.0, 40.0];
/// A number farther than this from its hole gets a leader, paper mm.
const LEADER_FROM: f64 = 2.0;

/// Writes each hole's number beside it; `true` when all have theirs. Holes of a fitting and the
/// ends of rows of shelf bores come first.
pub(super) fn draw(list: &mut DisplayList, picture: &Picture<'_>, crowd: &mut Crowd) -> bool {
    let holes: Vec<&Hole> = picture.shown().collect();
    let must = |hole: &&Hole| !hole.in_row || is_row_end(hole, &holes);
    let (first, second): (Vec<&Hole>, Vec<&Hole>) = holes.iter().copied().partition(must);
    let mut placed = 0;
    for hole in first {
        let done = number(list, picture, crowd, hole, FIGURE, &FAR[..5])
            || number(list, picture, crowd, hole, SMALL_FIGURE, &FAR);
        placed += usize::from(done);
    }
    for hole in second {
        placed += usize::from(number(list, picture, crowd, hole, SMALL_FIGURE, &NEAR));
    }
    placed == holes.len()
}

/// First or last of the shelf bores at the same u.
fn is_row_end(hole: &Hole, holes: &[&Hole]) -> bool {
    let row = || {
        holes
            .iter()
            .filter(|other| other.in_row && (other.u - hole.u).abs() < 0.05)
    };
    let lowest = row().map(|other| other.v).fold(f64::INFINITY, f64::min);
    let highest = row().map(|other| other.v).fold(f64::NEG_INFINITY, f64::max);
    hole.v <= lowest || hole.v >= highest
}

fn number(
    list: &mut DisplayList,
    picture: &Picture<'_>,
    crowd: &mut Crowd,
    hole: &Hole,
    height: f64,
    radii: &[f64],
) -> bool {
    let centre = picture.at(hole.u, hole.v);
    let ring = if hole.severity.is_some() { RING } else { 0.0 };
    let radius = picture.radius(hole) + ring;
    let how = Lettering::new(height).held(Along::Middle, Across::Middle);
    let words = hole.number.to_string();
    let size = [how.width(&words) + 0.5, 1.35 * height + 0.2];
    let within = picture.outline().inflate(-0.8, -0.8);
    let radii: Vec<f64> = radii.iter().map(|more| radius + 1.2 + more).collect();
    let leader = |middle: At| {
        let away = gap(middle, size, centre) - radius;
        let share = (away + radius - 0.2) / (middle - centre).length();
        (away > LEADER_FROM).then(|| (centre, centre.lerp(middle, share.min(0.9))))
    };
    let Some(middle) = crowd.place_with_leader(centre, size, &radii, within, leader) else {
        return false;
    };
    let brush = Brush::new(Layer::Bores, Ink::Plain).of(picture.subject(hole));
    if let Some((from, to)) = leader(middle) {
        brush.ink(Ink::Soft).line(list, from, to, Pen::Thin);
    }
    if picture.facts.panel.infill.is_some() {
        // Over hatching and the edges of stiles and rails.
        let blank = crate::layout::around(middle, size);
        brush.ink(Ink::Paper).area(list, corners(blank));
    }
    brush.text(list, middle, words, how);
    true
}

/// From a point to the nearest place of a rectangle, mm.
fn gap(middle: At, size: [f64; 2], point: At) -> f64 {
    let rect: Rect<f64> = crate::layout::around(middle, size);
    let x = (rect.min_x() - point.x)
        .max(point.x - rect.max_x())
        .max(0.0);
    let y = (rect.min_y() - point.y)
        .max(point.y - rect.max_y())
        .max(0.0);
    x.hypot(y)
}
