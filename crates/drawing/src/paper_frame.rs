//! The frame of a sheet, and on A sizes what ISO 5457 puts around it: centring marks, grid
//! references and trim marks.
//!
//! Sizes are those of ISO 5457 restated second-hand by public templates: grid fields 50 mm long in
//! a band 5 mm wide, counted from the centring marks; letters 3.5 mm; lines 0.35 and 0.7 mm; trim
//! marks of two rectangles 10 by 5 mm. That letters run down and numbers across, that `I` and `O`
//! are left out and that A4 has references at the top and the right only is restated from memory.
//! Letter and Tabloid claim no standard and have the frame alone.

use euclid::default::Rect;

use crate::brush::{Brush, Lettering, corners};
use crate::list::{Across, Along, At, DisplayList};
use crate::paper::Paper;
use crate::pen::{Ink, Layer, Pen};

/// Length of a grid field, mm.
const FIELD: f64 = 50.0;
/// Width of the band of grid references, mm.
const BAND: f64 = 5.0;
/// Height of grid letters, mm.
const LETTER: f64 = 3.5;
/// How far a centring mark runs into the drawing space, mm.
const CENTRING: f64 = 5.0;
/// A remainder of a grid field shorter than this has no reference of its own, mm.
const LEAST_FIELD: f64 = 8.0;
const LETTERS: &[u8] = b"ABCDEFGHJKLMNPQRSTUVWXYZ";

/// Draws the frame and, on A sizes, the marks around it.
pub(crate) fn draw(list: &mut DisplayList, paper: Paper) {
    let space = paper.drawing_space();
    Brush::new(Layer::Sheet, Ink::Plain).rect(list, space, Pen::Frame);
    if paper.is_iso() {
        let border = Brush::new(Layer::Border, Ink::Plain);
        trim_marks(list, border, paper);
        centring_marks(list, border, paper, space);
        grid(list, border, paper, space);
    }
}

fn trim_marks(list: &mut DisplayList, brush: Brush, paper: Paper) {
    let (right, top) = (paper.width, paper.height);
    for (x, y, dx, dy) in [
        (0.0, 0.0, 1.0, 1.0),
        (right, 0.0, -1.0, 1.0),
        (right, top, -1.0, -1.0),
        (0.0, top, 1.0, -1.0),
    ] {
        for (along, up) in [(10.0, 5.0), (5.0, 10.0)] {
            let mark = Rect::from_points([At::new(x, y), At::new(x + dx * along, y + dy * up)]);
            brush.area(list, corners(mark));
        }
    }
}

/// At the middles of the **trimmed** sheet's sides.
fn centring_marks(list: &mut DisplayList, brush: Brush, paper: Paper, space: Rect<f64>) {
    let (x, y) = (0.5 * paper.width, 0.5 * paper.height);
    for (from, to) in [
        (At::new(x, space.max_y() + BAND), At::new(x, space.max_y())),
        (At::new(x, space.min_y() - BAND), At::new(x, space.min_y())),
        (At::new(space.min_x() - BAND, y), At::new(space.min_x(), y)),
        (At::new(space.max_x() + BAND, y), At::new(space.max_x(), y)),
    ] {
        brush.line(list, from, to, Pen::Frame);
    }
    // The inner half of each mark only where the space is free for it: at the left and the right.
    let inward = [
        (At::new(space.max_x(), y), -CENTRING),
        (At::new(space.min_x(), y), CENTRING),
    ];
    for (at, by) in inward {
        let reach = by.signum() * 1.5;
        brush.line(list, at, At::new(at.x + reach, at.y), Pen::Frame);
    }
}

fn grid(list: &mut DisplayList, brush: Brush, paper: Paper, space: Rect<f64>) {
    let outer = space.inflate(BAND, BAND);
    brush.rect(list, outer, Pen::Grid);
    let small = paper.name == "A4";
    let across = stops(space.min_x(), space.max_x(), 0.5 * paper.width);
    let down = stops(space.min_y(), space.max_y(), 0.5 * paper.height);
    let how = Lettering::new(LETTER).held(Along::Middle, Across::Middle);
    let mut edges = vec![(space.max_y(), BAND)];
    if !small {
        edges.push((space.min_y(), -BAND));
    }
    for (y, out) in edges {
        for (number, field) in across.windows(2).enumerate() {
            if let [from, to] = field {
                let middle = At::new(0.5 * (from + to), y + 0.5 * out);
                brush.text(list, middle, (number + 1).to_string(), how);
                if number > 0 {
                    brush.line(list, At::new(*from, y), At::new(*from, y + out), Pen::Grid);
                }
            }
        }
    }
    let mut edges = vec![(space.max_x(), BAND)];
    if !small {
        edges.push((space.min_x(), -BAND));
    }
    let rows = down.len() - 1;
    for (x, out) in edges {
        for (row, field) in down.windows(2).enumerate() {
            if let ([from, to], Some(letter)) = (field, LETTERS.get(rows - 1 - row)) {
                let middle = At::new(x + 0.5 * out, 0.5 * (from + to));
                brush.text(list, middle, char::from(*letter).to_string(), how);
                if row > 0 {
                    brush.line(list, At::new(x, *from), At::new(x + out, *from), Pen::Grid);
                }
            }
        }
    }
}

/// Borders of the fields between two edges, counted from the centring mark; a short remainder
/// belongs to its neighbour.
fn stops(low: f64, high: f64, middle: f64) -> Vec<f64> {
    let below = ((middle - low) / FIELD).floor();
    let mut at = middle - below * FIELD;
    let mut stops = vec![low];
    while at < high - LEAST_FIELD {
        if at > low + LEAST_FIELD {
            stops.push(at);
        }
        at += FIELD;
    }
    stops.push(high);
    stops
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::list::Shape;

    fn letters(paper: Paper) -> String {
        let mut list = DisplayList::new();
        draw(&mut list, paper);
        let text = |item: &crate::list::Item| match &item.shape {
            Shape::Text { text, .. } => Some(text.clone()),
            _ => None,
        };
        list.items.iter().filter_map(text).collect()
    }

    /// ISO 5457 restated second-hand: fields of 50 mm counted from the centring marks. A3 lying
    /// has 8 of them across and 6 down (from memory), A4 upright 4 and 6.
    #[test]
    fn a_sizes_have_their_fields_and_inch_papers_none() {
        assert_eq!(letters(Paper::A3.turned()), "1234567812345678FEDCBAFEDCBA");
        assert_eq!(letters(Paper::A4), "1234FEDCBA");
        assert_eq!(letters(Paper::LETTER), "");
        assert_eq!(letters(Paper::TABLOID.turned()), "");
    }

    #[test]
    fn nothing_leaves_the_paper() {
        for paper in [Paper::A4, Paper::A3.turned()] {
            let mut list = DisplayList::new();
            draw(&mut list, paper);
            let whole = Rect::from_points([At::zero(), At::new(paper.width, paper.height)]);
            assert!(whole.contains_rect(&list.bounds().expect("a frame")));
        }
    }
}
