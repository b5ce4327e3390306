//! The small front view that shows where in its box the panel is.

use euclid::default::Rect;
use flapwright_model::part::Part;
use flapwright_rules::inspection::PanelReport;

use super::facts::Facts;
use crate::brush::{Brush, Lettering, corners};
use crate::list::{Across, Along, At, DisplayList};
use crate::opening_mark::{draw as draw_mark, opening_mark};
use crate::pen::{Ink, Layer, Pen};

/// A marked panel is drawn at least this thick, paper mm.
const LEAST: f64 = 1.0;

/// Draws the front view of the box into `room` (paper mm), the panel filled. `true` when an
/// opening mark is in it, which asks for the legend.
pub(super) fn draw(list: &mut DisplayList, facts: &Facts<'_>, room: Rect<f64>) -> bool {
    let caption = 3.4;
    let [width, height, _] = facts.report.outer;
    let picture = Rect::from_points([
        At::new(room.min_x() + 2.0, room.min_y() + caption),
        At::new(room.max_x() - 2.0, room.max_y() - 1.5),
    ]);
    let ratio = (picture.width() / width).min(picture.height() / height);
    let corner = At::new(
        picture.center().x - 0.5 * width * ratio,
        picture.center().y - 0.5 * height * ratio,
    );
    let rect_of = |panel: &PanelReport| {
        let (low, high) = (panel.solid.min, panel.solid.max);
        let at = |x: f64, y: f64| At::new(corner.x + x * ratio, corner.y + y * ratio);
        Rect::from_points([at(low.x, low.y), at(high.x, high.y)])
    };
    let is_leaf = |panel: &&PanelReport| matches!(panel.id.part, Part::Leaf { .. });
    let brush = Brush::new(Layer::Sheet, Ink::Plain);
    let whole = Rect::from_points([
        corner,
        At::new(corner.x + width * ratio, corner.y + height * ratio),
    ]);
    brush.rect(list, whole, Pen::Thin);
    for panel in facts.report.panels.iter().filter(|panel| panel.id.part != Part::Back) {
        brush.rect(list, rect_of(panel), Pen::Thin);
    }
    let marked = rect_of(facts.panel);
    let x = (0.5 * (LEAST - marked.width())).max(0.0);
    let y = (0.5 * (LEAST - marked.height())).max(0.0);
    let ink = if is_leaf(&facts.panel) { Ink::Soft } else { Ink::Plain };
    brush.ink(ink).area(list, corners(marked.inflate(x, y)));
    if is_leaf(&facts.panel) {
        brush.rect(list, marked, Pen::Outline);
    }
    let mut has_mark = false;
    for (index, opening) in facts.report.openings.iter().enumerate() {
        let Some(kind) = opening.door.as_ref().and_then(|door| door.kind) else { continue };
        let leaves = facts.report.panels.iter().filter(
            |panel| matches!(panel.id.part, Part::Leaf { opening, .. } if opening == index),
        );
        if let Some(door) = leaves.map(rect_of).reduce(|a, b| a.union(&b)) {
            let mark = opening_mark(door, kind, facts.job.settings.opening_mark);
            draw_mark(list, Brush::new(Layer::OpeningMark, Ink::Plain), &mark);
            has_mark = true;
        }
    }
    let how = Lettering::new(1.8).held(Along::Middle, Across::Baseline);
    let at = At::new(room.center().x, room.min_y() + 0.6);
    brush.text(list, at, "box seen from the FRONT", how);
    has_mark
}
