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

/// A front view at a place on the sheet.
struct Front {
    /// Paper mm per workshop mm.
    ratio: f64,
    /// Where the box's lower left corner is.
    corner: At,
}

impl Front {
    /// The largest at which box and doors fit into `room`.
    fn new(facts: &Facts<'_>, room: Rect<f64>) -> Self {
        let [width, height, _] = facts.report.outer;
        let whole = Rect::from_points([At::zero(), At::new(width, height)]);
        let one = Self {
            ratio: 1.0,
            corner: At::zero(),
        };
        let all = facts
            .report
            .panels
            .iter()
            .fold(whole, |all, panel| all.union(&one.rect(panel)));
        let ratio = (room.width() / all.width()).min(room.height() / all.height());
        let corner = room.center() - all.center().to_vector() * ratio;
        Self { ratio, corner }
    }

    fn rect(&self, panel: &PanelReport) -> Rect<f64> {
        let place = |x: f64, y: f64| {
            At::new(
                self.corner.x + x * self.ratio,
                self.corner.y + y * self.ratio,
            )
        };
        let (low, high) = (panel.solid.min, panel.solid.max);
        Rect::from_points([place(low.x, low.y), place(high.x, high.y)])
    }
}

/// Draws the front view of the box into `room` (paper mm), the panel filled. `true` when an
/// opening mark is in it, which asks for the legend.
pub(super) fn draw(list: &mut DisplayList, facts: &Facts<'_>, room: Rect<f64>) -> bool {
    let front = Front::new(
        facts,
        Rect::from_points([
            At::new(room.min_x() + 2.0, room.min_y() + 3.4),
            At::new(room.max_x() - 2.0, room.max_y() - 1.5),
        ]),
    );
    let brush = Brush::new(Layer::Sheet, Ink::Plain);
    let seen = facts
        .report
        .panels
        .iter()
        .filter(|panel| panel.id.part != Part::Back);
    for panel in seen {
        brush.rect(list, front.rect(panel), Pen::Thin);
    }
    let is_leaf = matches!(facts.panel.id.part, Part::Leaf { .. });
    let marked = front.rect(facts.panel);
    let x = (0.5 * (LEAST - marked.width())).max(0.0);
    let y = (0.5 * (LEAST - marked.height())).max(0.0);
    let ink = if is_leaf { Ink::Soft } else { Ink::Plain };
    brush.ink(ink).area(list, corners(marked.inflate(x, y)));
    if is_leaf {
        brush.rect(list, marked, Pen::Outline);
    }
    let how = Lettering::new(1.8).held(Along::Middle, Across::Baseline);
    let at = At::new(room.center().x, room.min_y() + 0.6);
    brush.text(list, at, "box seen from the FRONT", how);
    marks(list, facts, &front)
}

/// The opening marks of all doors; `true` when there is one.
fn marks(list: &mut DisplayList, facts: &Facts<'_>, front: &Front) -> bool {
    let mut has_mark = false;
    for door in facts.report.doors() {
        let Some(kind) = door.kind else { continue };
        let panels = facts.report.panels.iter();
        let leaves = panels.filter(|panel| panel.id.part.door() == Some(door.id));
        let rects = leaves.map(|panel| front.rect(panel));
        if let Some(door) = rects.reduce(|a, b| a.union(&b)) {
            let mark = opening_mark(door, kind, facts.job.settings.opening_mark);
            draw_mark(list, Brush::new(Layer::OpeningMark, Ink::Plain), &mark);
            has_mark = true;
        }
    }
    has_mark
}
