//! Which part of an edge is seen and which lies behind something.

use euclid::default::Rect;

use crate::brush::{Brush, corners};
use crate::list::{At, DisplayList};
use crate::pen::Pen;

/// Lengths below this are nothing, paper mm.
const NOTHING: f64 = 1e-6;

/// Draws the outline of `rect`: visible where no cover lies over it, dashed where one does. An
/// edge that runs along the border of a cover is seen.
pub(super) fn outline(
    list: &mut DisplayList,
    brush: Brush,
    rect: Rect<f64>,
    covers: &[Rect<f64>],
    pen: Pen,
) {
    let around = corners(rect);
    let next = around.iter().cycle().skip(1);
    for (from, to) in around.iter().zip(next) {
        for (a, b, hidden) in pieces(*from, *to, covers) {
            brush.line(list, a, b, if hidden { Pen::Hidden } else { pen });
        }
    }
}

/// A level or upright stroke cut at the borders of the covers; neighbouring pieces that are both
/// hidden or both seen are one.
fn pieces(from: At, to: At, covers: &[Rect<f64>]) -> Vec<(At, At, bool)> {
    let along = to - from;
    let length = along.length();
    if length < NOTHING {
        return Vec::new();
    }
    let level = along.y.abs() < along.x.abs();
    let mut cuts = vec![0.0, 1.0];
    for cover in covers {
        let (low, high) = (cover.min(), cover.max());
        let borders = if level {
            [low.x, high.x]
        } else {
            [low.y, high.y]
        };
        let (start, run) = if level {
            (from.x, along.x)
        } else {
            (from.y, along.y)
        };
        cuts.extend(borders.map(|border| (border - start) / run));
    }
    cuts.retain(|cut| (0.0..=1.0).contains(cut));
    cuts.sort_by(f64::total_cmp);
    let mut found: Vec<(At, At, bool)> = Vec::new();
    for pair in cuts.windows(2) {
        if (pair[1] - pair[0]) * length < NOTHING {
            continue;
        }
        let (a, b) = (from + along * pair[0], from + along * pair[1]);
        let middle = a.lerp(b, 0.5);
        let hidden = covers.iter().any(|cover| {
            let inner = cover.inflate(-NOTHING, -NOTHING);
            middle.x > inner.min_x()
                && middle.x < inner.max_x()
                && middle.y > inner.min_y()
                && middle.y < inner.max_y()
        });
        match found.last_mut() {
            Some(last) if last.2 == hidden => last.1 = b,
            _ => found.push((a, b, hidden)),
        }
    }
    found
}

#[cfg(test)]
mod tests {
    use super::*;

    fn rect(x0: f64, y0: f64, x1: f64, y1: f64) -> Rect<f64> {
        Rect::from_points([At::new(x0, y0), At::new(x1, y1)])
    }

    #[test]
    fn an_edge_behind_a_cover_is_cut_at_its_borders() {
        let found = pieces(
            At::new(0.0, 5.0),
            At::new(10.0, 5.0),
            &[rect(2.0, 0.0, 6.0, 9.0)],
        );
        let spans: Vec<(f64, f64, bool)> = found.iter().map(|(a, b, h)| (a.x, b.x, *h)).collect();
        assert_eq!(
            spans,
            [(0.0, 2.0, false), (2.0, 6.0, true), (6.0, 10.0, false)]
        );
    }

    #[test]
    fn an_edge_along_a_border_is_seen_and_touching_covers_hide_as_one() {
        let along = pieces(
            At::new(0.0, 0.0),
            At::new(10.0, 0.0),
            &[rect(2.0, 0.0, 6.0, 9.0)],
        );
        assert_eq!(along.len(), 1);
        assert!(!along[0].2);
        let covers = [rect(-1.0, 0.0, 5.0, 9.0), rect(5.0, 0.0, 11.0, 9.0)];
        let hidden = pieces(At::new(0.0, 3.0), At::new(10.0, 3.0), &covers);
        assert_eq!(hidden.len(), 1);
        assert!(hidden[0].2);
    }
}
