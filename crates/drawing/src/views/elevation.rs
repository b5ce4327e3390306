//! The front view of a box with its doors closed.

use euclid::default::Rect;
use flapwright_model::material::MaterialClass;
use flapwright_model::part::{Part, Subject};
use flapwright_rules::inspection::{BoreSource, BoxReport, DoorReport, PanelReport};

use super::elevation_dimensions::dimensions;
use super::highlight::{Projection, highlight};
use super::visible::outline;
use super::{
    LEAST_BORE, ViewOptions, around, bore_subject, door_subject, front_rect, ghost, grips,
    leaves_of,
};
use crate::brush::{Brush, corners};
use crate::grain::infill_stuff;
use crate::hatch::{Stuff, hatch};
use crate::list::{At, DisplayList};
use crate::opening_mark;
use crate::pen::{Ink, Layer, Pen};

/// Offsets of bores below this are not drawn, workshop mm.
const NO_OFFSET: f64 = 1e-6;

/// The front view: box, doors closed, opening marks, the bores in the doors' backs as if seen
/// through, and the main dimensions.
///
/// Frame: paper mm (workshop mm times the scale), origin at the box's outer lower left corner, x
/// right, y up.
#[must_use]
pub fn elevation(report: &BoxReport, options: &ViewOptions) -> DisplayList {
    let mut list = DisplayList::new();
    let scale = options.scale;
    let doors: Vec<Rect<f64>> = leaves(report)
        .map(|panel| front_rect(&panel.solid, scale))
        .collect();
    grips::whole(&mut list, report, scale);
    around::in_elevation(&mut list, report, options);
    grips::inside_in_front(&mut list, report, scale);
    backgrounds(&mut list, report, scale);
    body(&mut list, report, scale, &doors);
    for panel in leaves(report) {
        leaf(&mut list, report, panel, scale);
    }
    for door in report.doors() {
        mark(&mut list, report, options, door);
        offsets(&mut list, door, scale);
        grips::door_edges(&mut list, report, door, scale);
    }
    for panel in leaves(report) {
        bores(&mut list, panel, scale);
    }
    if options.show_dimensions {
        dimensions(&mut list, report, options);
    }
    let projection = Projection {
        point: |place, scale| At::new(place.x * scale, place.y * scale),
        solid: front_rect,
    };
    ghost::in_elevation(&mut list, report, options);
    highlight(&mut list, report, options, &projection);
    list
}

fn leaves(report: &BoxReport) -> impl Iterator<Item = &PanelReport> {
    report
        .panels
        .iter()
        .filter(|panel| matches!(panel.id.part, Part::Leaf { .. }))
}

/// Blank areas from back to front: they carry what is where, for hit tests.
fn backgrounds(list: &mut DisplayList, report: &BoxReport, scale: f64) {
    let paper = Brush::new(Layer::Panels, Ink::Paper);
    let [width, height, _] = report.outer;
    let whole = Rect::from_points([At::zero(), At::new(width * scale, height * scale)]);
    paper.of(Subject::Box(report.id)).area(list, corners(whole));
    for opening in &report.openings {
        let subject = Subject::Opening(report.id, opening.id);
        paper
            .of(subject)
            .area(list, corners(front_rect(&opening.clear, scale)));
    }
    let behind = report
        .panels
        .iter()
        .filter(|panel| panel.id.part != Part::Back);
    for panel in behind {
        let brush = paper.of(Subject::Part(panel.id));
        brush.area(list, corners(front_rect(&panel.solid, scale)));
    }
}

/// The panels of the box and the face frame, dashed where a door or another panel covers them.
fn body(list: &mut DisplayList, report: &BoxReport, scale: f64, doors: &[Rect<f64>]) {
    let frame: Vec<Rect<f64>> = report.frame.iter().map(|s| front_rect(s, scale)).collect();
    let sides: Vec<Rect<f64>> = report
        .panels
        .iter()
        .filter(|panel| matches!(panel.id.part, Part::LeftSide | Part::RightSide))
        .map(|panel| front_rect(&panel.solid, scale))
        .collect();
    let before: Vec<Rect<f64>> = doors.iter().chain(&frame).copied().collect();
    let before_cross: Vec<Rect<f64>> = before.iter().chain(&sides).copied().collect();
    for panel in &report.panels {
        let covers = match panel.id.part {
            Part::LeftSide | Part::RightSide => &before,
            Part::Top | Part::Bottom | Part::Shelf(_) | Part::Divider(_) => &before_cross,
            Part::Back | Part::Frame | Part::Leaf { .. } => continue,
        };
        let brush = Brush::new(Layer::Panels, Ink::Plain).of(Subject::Part(panel.id));
        outline(
            list,
            brush,
            front_rect(&panel.solid, scale),
            covers,
            Pen::Outline,
        );
    }
    for member in frame {
        outline(
            list,
            Brush::new(Layer::Panels, Ink::Plain),
            member,
            doors,
            Pen::Outline,
        );
    }
}

fn leaf(list: &mut DisplayList, report: &BoxReport, panel: &PanelReport, scale: f64) {
    let brush = Brush::new(Layer::Doors, Ink::Plain).of(Subject::Part(panel.id));
    let rect = front_rect(&panel.solid, scale);
    brush.rect(list, rect, Pen::Outline);
    if let Some(infill) = &panel.infill {
        let members = infill.members;
        let low = rect.min() + euclid::default::Vector2D::new(members.u_end, members.v_end) * scale;
        let high =
            rect.max() - euclid::default::Vector2D::new(members.u_start, members.v_start) * scale;
        let light = Rect::from_points([low, high]);
        brush.rect(list, light, Pen::Thin);
        if let Some(stuff) = hatched_infill(panel) {
            let soft = Brush {
                layer: Layer::Hatching,
                ink: Ink::Soft,
                of: brush.of,
            };
            for (from, to) in hatch(&corners(light), stuff) {
                soft.line(list, from, to, Pen::Thin);
            }
        }
    }
    handle(list, report, panel, scale);
}

/// What of a leaf is hatched though nothing is cut: glass, and solid wood along its grain.
pub(super) fn hatched_infill(panel: &PanelReport) -> Option<Stuff> {
    let infill = panel.infill.as_ref()?;
    match infill.class {
        MaterialClass::Glass | MaterialClass::SolidWood => Some(infill_stuff(panel, infill)),
        MaterialClass::Board | MaterialClass::Metal | MaterialClass::Plastic => None,
    }
}

/// A handle is shown by the line between its screws.
fn handle(list: &mut DisplayList, report: &BoxReport, panel: &PanelReport, scale: f64) {
    let screws: Vec<At> = panel
        .bores
        .iter()
        .filter(|bore| matches!(bore.source, BoreSource::Handle { .. }))
        .map(|bore| At::new(bore.in_box.x * scale, bore.in_box.y * scale))
        .collect();
    let Some(around) = (!screws.is_empty()).then(|| Rect::from_points(&screws)) else {
        return;
    };
    let brush = Brush::new(Layer::Doors, Ink::Plain).of(Subject::Part(panel.id));
    let around = around.inflate(6.0 * scale, 6.0 * scale);
    brush.rect(list, around, Pen::Thin);
    if let Some(door) = panel.id.part.door() {
        grips::handle_in_front(list, report, (door, around), scale);
    }
}

fn mark(list: &mut DisplayList, report: &BoxReport, options: &ViewOptions, door: &DoorReport) {
    let Some(kind) = door.kind else { return };
    let rects =
        leaves_of(report, door.id).map(|(panel, _)| front_rect(&panel.solid, options.scale));
    let Some(whole) = rects.reduce(|a, b| a.union(&b)) else {
        return;
    };
    let brush = Brush::new(Layer::OpeningMark, Ink::Soft).of(door_subject(report, door));
    opening_mark::draw(
        list,
        brush,
        &opening_mark::opening_mark(whole, kind, options.mark),
    );
}

/// Bores in the back of a leaf, seen through.
fn bores(list: &mut DisplayList, panel: &PanelReport, scale: f64) {
    for bore in &panel.bores {
        let brush = Brush::new(Layer::Bores, Ink::Bore).of(bore_subject(panel.id, bore.number));
        let centre = At::new(bore.in_box.x * scale, bore.in_box.y * scale);
        let radius = (0.5 * bore.drill.diameter * scale).max(LEAST_BORE);
        let pen = if radius > 2.0 { Pen::Hidden } else { Pen::Thin };
        brush.circle(list, centre, radius, pen);
        brush.cross(list, centre, radius + 0.8, Pen::Thin);
    }
}

/// From each bore to the place where the fitting needs it.
fn offsets(list: &mut DisplayList, door: &DoorReport, scale: f64) {
    let brush = Brush::new(Layer::Findings, Ink::Fitting);
    for offset in &door.offsets {
        if offset.drilled.is_some() && offset.distance() <= NO_OFFSET {
            continue;
        }
        let needed = At::new(offset.needed.x * scale, offset.needed.y * scale);
        brush.cross(list, needed, 1.6, Pen::Thin);
        if let Some((_, drilled)) = offset.drilled {
            let from = At::new(drilled.x * scale, drilled.y * scale);
            brush.line(list, from, needed, Pen::Thin);
        }
    }
}
