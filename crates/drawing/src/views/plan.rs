//! The level section through a box, seen from above, front at the bottom.

use euclid::default::Rect;
use flapwright_model::part::{Part, Subject};
use flapwright_rules::inspection::{BoxReport, PanelReport, Solid};

use super::common::{door_subject, figure};
use super::options::ViewOptions;
use super::section_door::cut;
use crate::brush::{Brush, corners};
use crate::dimension::{Axis, Chain, Stretch, chain};
use crate::grain::{self, Plane, frame_class};
use crate::hatch::Stuff;
use crate::list::{At, DisplayList};
use crate::pen::{Ink, Layer, Pen};

/// Where the plane cuts the highest opening: this share of its height up from its bottom. Not the
/// middle, where the joint of a folding pair may be.
const CUT_AT: f64 = 0.4;
/// Distance of the first dimension line from the outline and of the second one, paper mm.
const ROWS: [f64; 2] = [9.0, 21.0];

/// The level section through the highest opening, door closed: cut panels hatched by material,
/// the panel below in thin lines, bodies of fittings dashed, and the main dimensions.
///
/// Frame: paper mm (workshop mm times the scale), origin at x = 0 (left outer face), z = 0 (front
/// edges of the sides); x right, z (back) **up**, so the front is at the bottom.
#[must_use]
pub fn plan(report: &BoxReport, options: &ViewOptions) -> DisplayList {
    let mut list = DisplayList::new();
    let scale = options.scale;
    let y = cut_height(report);
    below(&mut list, report, y, scale);
    for piece in cut_pieces(report) {
        let polygon = corners(piece.rect.scale(scale, scale));
        cut(&mut list, piece.layer, piece.of, &polygon, piece.stuff);
    }
    bodies(&mut list, report, y, scale);
    if options.show_dimensions {
        dimensions(&mut list, report, options);
    }
    list
}

fn cut_height(report: &BoxReport) -> f64 {
    report
        .openings
        .first()
        .map_or(0.5 * report.outer[1], |opening| {
            let clear = &opening.clear;
            clear.min.y + CUT_AT * (clear.max.y - clear.min.y)
        })
}

/// The plan of a solid, workshop mm.
fn rect_of(solid: &Solid) -> Rect<f64> {
    Rect::from_points([
        At::new(solid.min.x, solid.min.z),
        At::new(solid.max.x, solid.max.z),
    ])
}

/// A piece that the plane cuts.
pub(super) struct CutPiece {
    layer: Layer,
    of: Option<Subject>,
    /// Workshop mm.
    rect: Rect<f64>,
    pub(super) stuff: Stuff,
}

/// Everything that the plane cuts, closed doors and face frame too.
pub(super) fn cut_pieces(report: &BoxReport) -> Vec<CutPiece> {
    let y = cut_height(report);
    let is_cut = |solid: &Solid| solid.min.y < y && y < solid.max.y;
    let mut found = Vec::new();
    for panel in report.panels.iter().filter(|it| is_cut(&it.solid)) {
        let layer = match panel.id.part {
            Part::Leaf { .. } => Layer::Doors,
            Part::LeftSide
            | Part::RightSide
            | Part::Top
            | Part::Bottom
            | Part::Back
            | Part::Shelf(_)
            | Part::Divider(_)
            | Part::Frame => Layer::Panels,
        };
        let of = Some(Subject::Part(panel.id));
        found.extend(pieces(panel).into_iter().map(|(rect, stuff)| CutPiece {
            layer,
            of,
            rect,
            stuff,
        }));
    }
    for member in report.frame.iter().filter(|it| is_cut(it)) {
        found.push(CutPiece {
            layer: Layer::Panels,
            of: None,
            rect: rect_of(member),
            stuff: grain::of_member(member).stuff(frame_class(report), Plane::Level),
        });
    }
    found
}

/// What the plane cuts of a panel: the whole, or the stiles and what they hold.
fn pieces(panel: &PanelReport) -> Vec<(Rect<f64>, Stuff)> {
    let whole = rect_of(&panel.solid);
    let Some(infill) = &panel.infill else {
        let stuff = grain::of_panel(panel).stuff(panel.class, Plane::Level);
        return vec![(whole, stuff)];
    };
    let stile = grain::STILE.stuff(panel.class, Plane::Level);
    // u runs from the box-right edge of a leaf.
    let left = whole.min_x() + infill.members.u_end;
    let right = whole.max_x() - infill.members.u_start;
    let back = whole.max_y() - infill.behind;
    let part = |x0, x1, z0, z1| Rect::from_points([At::new(x0, z0), At::new(x1, z1)]);
    let held = part(
        left - infill.tongue,
        right + infill.tongue,
        back - infill.thickness,
        back,
    );
    vec![
        (
            part(whole.min_x(), left, whole.min_y(), whole.max_y()),
            stile,
        ),
        (
            part(right, whole.max_x(), whole.min_y(), whole.max_y()),
            stile,
        ),
        (
            held,
            grain::of_infill(panel, infill).stuff(infill.class, Plane::Level),
        ),
    ]
}

/// The first panel that is seen below the plane.
fn below(list: &mut DisplayList, report: &BoxReport, y: f64, scale: f64) {
    let seen = report
        .panels
        .iter()
        .filter(|panel| matches!(panel.id.part, Part::Bottom | Part::Shelf(_)))
        .filter(|panel| panel.solid.max.y <= y)
        .max_by(|a, b| a.solid.max.y.total_cmp(&b.solid.max.y));
    if let Some(panel) = seen {
        let brush = Brush::new(Layer::Panels, Ink::Plain).of(Subject::Part(panel.id));
        brush.rect(list, rect_of(&panel.solid).scale(scale, scale), Pen::Thin);
    }
}

/// Bodies of the highest opening's fittings, wherever they are above or below the plane.
fn bodies(list: &mut DisplayList, report: &BoxReport, y: f64, scale: f64) {
    for place in &report.openings {
        let holds = place.clear.min.y < y && y < place.clear.max.y;
        let Some(door) = place.door.as_ref().filter(|_| holds) else {
            continue;
        };
        let brush = Brush::new(Layer::Fitting, Ink::Fitting).of(door_subject(report, door));
        for body in &door.envelopes {
            brush.rect(list, rect_of(body).scale(scale, scale), Pen::Hidden);
        }
    }
}

fn dimensions(list: &mut DisplayList, report: &BoxReport, options: &ViewOptions) {
    let brush = Brush::new(Layer::Dimensions, Ink::Plain);
    let scale = options.scale;
    let [width, _, depth] = report.outer;
    let stretch =
        |a: f64, b: f64| Stretch::new(a * scale, b * scale, figure((b - a).abs(), options.unit));
    let front = report
        .panels
        .iter()
        .map(|panel| panel.solid.min.z)
        .fold(0.0, f64::min)
        * scale;
    let clear = report.openings.first().map(|opening| opening.clear);
    let mut rows = vec![(Axis::Level, front - ROWS[1], front, stretch(0.0, width))];
    if let Some(clear) = clear {
        let inner = stretch(clear.min.x, clear.max.x);
        rows.push((Axis::Level, front - ROWS[0], front, inner));
        let right = width * scale;
        let inner = stretch(clear.min.z, clear.max.z);
        rows.push((Axis::Upright, right + ROWS[1], right, stretch(0.0, depth)));
        rows.push((Axis::Upright, right + ROWS[0], right, inner));
    }
    for (axis, line_at, from, one) in rows {
        let stretches = vec![one];
        chain(
            list,
            brush,
            &Chain {
                axis,
                line_at,
                from,
                stretches,
                up_to: None,
            },
        );
    }
}
