//! The mark of a cut list that shows which edges of a part are banded and how its grain runs.

use euclid::default::Rect;
use flapwright_rules::inspection::FaceBands;

use crate::brush::Brush;
use crate::layout::around;
use crate::list::{At, DisplayList};
use crate::pen::Pen;

/// Width and height of the mark, mm.
pub(crate) const SIZE: [f64; 2] = [12.0, 5.0];
/// From the part's outline to the stroke of a band, mm.
const OFF: f64 = 0.8;

/// What a mark shows.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) struct EdgeMark {
    /// Bands by the edges of the part's drawn face.
    pub(crate) bands: FaceBands,
    /// Whether the part's length is along u of that face, else along v.
    pub(crate) length_along_u: bool,
    /// Whether it has a grain; it always runs along the length.
    pub(crate) grain: bool,
}

/// Draws a small rectangle about `middle`, the part's length level; banded edges stand off it as
/// thick strokes, a double arrow is the grain. Where the length is along v the picture is turned
/// so that u runs up.
pub(crate) fn draw(list: &mut DisplayList, brush: Brush, middle: At, mark: EdgeMark) {
    let bands = mark.bands;
    let part: Rect<f64> = around(middle, [SIZE[0] - 2.6, SIZE[1] - 2.6]);
    brush.rect(list, part, Pen::Thin);
    let [left, right, top, bottom] = if mark.length_along_u {
        [bands.u_start, bands.u_end, bands.v_start, bands.v_end]
    } else {
        // A quarter turn: the start of v goes to the left, the start of u to the bottom.
        [bands.v_start, bands.v_end, bands.u_end, bands.u_start]
    };
    let (low, high) = (part.min(), part.max());
    let (x, y) = ([low.x - OFF, high.x + OFF], [low.y - OFF, high.y + OFF]);
    for (band, from, to) in [
        (left, At::new(x[0], low.y), At::new(x[0], high.y)),
        (right, At::new(x[1], low.y), At::new(x[1], high.y)),
        (top, At::new(low.x, y[1]), At::new(high.x, y[1])),
        (bottom, At::new(low.x, y[0]), At::new(high.x, y[0])),
    ] {
        if band > 0.0 {
            brush.line(list, from, to, Pen::Frame);
        }
    }
    if mark.grain {
        let reach = 0.5 * part.width() - 1.4;
        for sign in [1.0, -1.0] {
            let tip = At::new(middle.x + sign * reach, middle.y);
            brush.line(list, middle, tip, Pen::Thin);
            for up in [0.6, -0.6] {
                let barb = At::new(tip.x - sign * 1.1, tip.y + up);
                brush.line(list, tip, barb, Pen::Thin);
            }
        }
    }
}
