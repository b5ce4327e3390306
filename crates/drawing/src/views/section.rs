//! The upright section through a box, front at the left, seen towards the left side.

use euclid::default::Rect;
use flapwright_model::part::{Part, Subject};
use flapwright_rules::inspection::{BoreSource, BoxReport, DoorReport, Solid};

use super::highlight::{Projection, highlight};
use super::leaf_section::to_paper;
use super::section_door::{cut, one_door};
use super::{
    LEAST_BORE, ViewOptions, around, bore_subject, door_subject, figure, ghost, grips, side_rect,
};
use crate::brush::{Brush, corners};
use crate::dimension::{Axis, Chain, Stretch, chain};
use crate::grain::{self, Plane, frame_class};
use crate::hatch::Stuff;
use crate::list::{At, DisplayList};
use crate::pen::{Ink, Layer, Pen};

/// The upright section in the middle of the box: cut panels hatched by material, the door at
/// [`ViewOptions::s`] with its arms, the closed door (when it is open) and the fully open one in
/// the line type of other positions, the body and axis of the fitting, and the bores in the side.
///
/// Frame: paper mm (workshop mm times the scale), origin at z = 0 (front edges of the sides),
/// y = 0 (underside of the box); x runs **back**, so the front is at the left; y up.
#[must_use]
pub fn section(report: &BoxReport, options: &ViewOptions) -> DisplayList {
    let mut list = DisplayList::new();
    around::in_section(&mut list, report, options);
    backgrounds(&mut list, report, options.scale);
    cut_panels(&mut list, report, options.scale);
    grips::shelves(&mut list, report, options.scale, side_rect);
    for door in report.doors() {
        fitting(&mut list, report, door, options.scale);
    }
    side_bores(&mut list, report, options.scale);
    for door in report.doors() {
        one_door(&mut list, report, door, options);
        axis_mark(&mut list, report, door, options.scale);
    }
    if options.show_dimensions {
        dimensions(&mut list, report, options);
    }
    let projection = Projection {
        point: |place, scale| At::new(place.z * scale, place.y * scale),
        solid: side_rect,
    };
    ghost::in_section(&mut list, report, options);
    highlight(&mut list, report, options, &projection);
    list
}

fn backgrounds(list: &mut DisplayList, report: &BoxReport, scale: f64) {
    let paper = Brush::new(Layer::Panels, Ink::Paper);
    for panel in report
        .panels
        .iter()
        .filter(|panel| panel.id.part == Part::LeftSide)
    {
        let rect = side_rect(&panel.solid, scale);
        let brush = paper.of(Subject::Part(panel.id));
        brush.area(list, corners(rect));
        Brush {
            ink: Ink::Plain,
            ..brush
        }
        .rect(list, rect, Pen::Thin);
    }
    for opening in &report.openings {
        let subject = Subject::Opening(report.id, opening.id);
        paper
            .of(subject)
            .area(list, corners(side_rect(&opening.clear, scale)));
    }
}

/// What the section plane cuts, except doors: what it is, its place in the box, its material.
pub(super) fn cut_pieces(report: &BoxReport) -> Vec<(Option<Subject>, Solid, Stuff)> {
    let panels = report.panels.iter().filter(|panel| match panel.id.part {
        Part::Top | Part::Bottom | Part::Back | Part::Shelf(_) => true,
        // A divider stands along the plane.
        Part::LeftSide | Part::RightSide | Part::Divider(_) | Part::Frame | Part::Leaf { .. } => {
            false
        }
    });
    let panels = panels.map(|panel| {
        let stuff = grain::of_panel(panel).stuff(panel.class, Plane::Upright);
        (Some(Subject::Part(panel.id)), panel.solid, stuff)
    });
    let middle = 0.5 * report.outer[0];
    let members = report
        .frame
        .iter()
        .filter(|member| member.min.x <= middle && middle <= member.max.x)
        .map(|member| {
            let way = grain::of_member(member);
            let stuff = way.stuff(frame_class(report), Plane::Upright);
            (None, *member, stuff)
        });
    panels.chain(members).collect()
}

fn cut_panels(list: &mut DisplayList, report: &BoxReport, scale: f64) {
    for (of, solid, stuff) in cut_pieces(report) {
        let polygon = corners(side_rect(&solid, scale));
        cut(list, Layer::Panels, of, &polygon, stuff);
    }
}

/// Body of the fitting, dashed.
fn fitting(list: &mut DisplayList, report: &BoxReport, door: &DoorReport, scale: f64) {
    let brush = Brush::new(Layer::Fitting, Ink::Fitting).of(door_subject(report, door));
    let mut drawn: Vec<Rect<f64>> = Vec::new();
    for body in &door.envelopes {
        let rect = side_rect(body, scale);
        if !drawn.contains(&rect) {
            brush.rect(list, rect, Pen::Hidden);
            drawn.push(rect);
        }
    }
}

/// The main axis, over everything else.
fn axis_mark(list: &mut DisplayList, report: &BoxReport, door: &DoorReport, scale: f64) {
    let brush = Brush::new(Layer::Fitting, Ink::Fitting).of(door_subject(report, door));
    if let Some(axis) = door.axis {
        let centre = to_paper(axis, scale);
        brush.circle(list, centre, 1.0, Pen::Thin);
        brush.cross(list, centre, 2.6, Pen::Centre);
    }
}

/// Bores in the left side, which the section looks at; of the right side only those of a fitting
/// that the left side has not, dashed.
fn side_bores(list: &mut DisplayList, report: &BoxReport, scale: f64) {
    let side = |part| {
        report
            .panels
            .iter()
            .find(move |panel| panel.id.part == part)
    };
    let mut seen: Vec<At> = Vec::new();
    for (part, behind) in [(Part::LeftSide, false), (Part::RightSide, true)] {
        let Some(panel) = side(part) else { continue };
        for bore in &panel.bores {
            let centre = At::new(bore.in_box.z * scale, bore.in_box.y * scale);
            let doubled = seen.iter().any(|other| (*other - centre).length() < 1e-6);
            let of_fitting = matches!(
                bore.source,
                BoreSource::Fitting { .. } | BoreSource::Recorded
            );
            if behind && (doubled || !of_fitting) {
                continue;
            }
            seen.push(centre);
            let brush = Brush::new(Layer::Bores, Ink::Bore).of(bore_subject(panel.id, bore.number));
            let radius = (0.5 * bore.drill.diameter * scale).max(LEAST_BORE);
            brush.circle(
                list,
                centre,
                radius,
                if behind { Pen::Hidden } else { Pen::Thin },
            );
            brush.cross(list, centre, radius + 0.7, Pen::Thin);
        }
    }
}

fn dimensions(list: &mut DisplayList, report: &BoxReport, options: &ViewOptions) {
    let brush = Brush::new(Layer::Dimensions, Ink::Plain);
    let scale = options.scale;
    let [_, height, depth] = report.outer;
    let stretch =
        |a: f64, b: f64| Stretch::new(a * scale, b * scale, figure((b - a).abs(), options.unit));
    let row = |axis, line_at, from, stretches| Chain {
        axis,
        line_at,
        from,
        stretches,
        up_to: None,
    };
    let mut below = vec![stretch(0.0, depth)];
    let mut clear_heights = Vec::new();
    let mut clear_depth = Vec::new();
    for opening in &report.openings {
        let clear = &opening.clear;
        clear_heights.push(stretch(clear.min.y, clear.max.y));
        if clear_depth.is_empty() {
            clear_depth.push(stretch(clear.min.z, clear.max.z));
        }
        if let Some(door) = &opening.door
            && below.len() == 1
            && (door.front - door.back).abs() > 0.0
        {
            below.push(stretch(door.front, door.back));
        }
    }
    // Nothing above the box: that is where doors go.
    let back = depth * scale;
    let rows = [
        row(Axis::Level, -21.0, 0.0, below),
        row(Axis::Level, -9.0, 0.0, clear_depth),
        row(Axis::Upright, back + 21.0, back, vec![stretch(0.0, height)]),
        row(Axis::Upright, back + 9.0, back, clear_heights),
    ];
    for row in &rows {
        chain(list, brush, row);
    }
}
