//! The small map of a template's pages.

use euclid::default::Rect;

use super::template_tile::{Tile, Tiling};
use crate::brush::{Brush, Lettering, corners};
use crate::list::{Across, Along, At, DisplayList};
use crate::pen::{Ink, Layer, Pen};

/// Room for the words below the map, mm.
const WORDS: f64 = 8.0;

/// Draws the map into `room`: this page's tile filled, tiles that are not printed crossed out.
pub(super) fn draw(
    list: &mut DisplayList,
    room: Rect<f64>,
    tiling: &Tiling,
    printed: &[Tile],
    this: Tile,
) {
    let brush = Brush::new(Layer::Sheet, Ink::Plain);
    let [columns, rows] = tiling.count;
    let high = room.height() - WORDS;
    let side = |axis: usize| tiling.window[axis] * tiling.count[axis] as f64;
    let ratio = (room.width() / side(0)).min(high / side(1));
    let [width, height] = tiling.window.map(|length| length * ratio);
    let left = room.center().x - 0.5 * width * columns as f64;
    for row in 0..rows {
        for column in 0..columns {
            let corner = At::new(
                left + width * column as f64,
                room.max_y() - height * row as f64,
            );
            let cell = Rect::from_points([corner, At::new(corner.x + width, corner.y - height)]);
            let tile = Tile { row, column };
            if tile == this {
                brush.area(list, corners(cell));
            } else if !printed.contains(&tile) {
                let soft = brush.ink(Ink::Soft);
                soft.line(list, cell.min(), cell.max(), Pen::Thin);
                let other = [
                    At::new(cell.min_x(), cell.max_y()),
                    At::new(cell.max_x(), cell.min_y()),
                ];
                soft.line(list, other[0], other[1], Pen::Thin);
            }
            brush.rect(list, cell, Pen::Thin);
        }
    }
    let how = Lettering::new(1.8).held(Along::Middle, Across::Baseline);
    let left_out = tiling.pages() - printed.len();
    let lines = [
        format!("map: {columns} across, {rows} down"),
        match left_out {
            0 => "all printed".to_owned(),
            some => format!("{some} crossed out: not printed"),
        },
    ];
    for (i, words) in lines.into_iter().enumerate() {
        let y = room.min_y() + WORDS - 3.4 - 3.0 * i as f64;
        brush.text(list, At::new(room.center().x, y), words, how);
    }
}
