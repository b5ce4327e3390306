//! The upright section through a box, front at the left, seen towards the left side.

use euclid::default::Rect;
use flapwright_model::material::MaterialClass;
use flapwright_model::part::{Part, Subject};
use flapwright_motion::closed::ClosedLeaf;
use flapwright_motion::motion::{Motion, MotionPose, Pose};
use flapwright_rules::inspection::{BoreSource, BoxReport, DoorReport, PanelReport};

use super::leaf_section::{handle, outline, pieces, to_paper};
use super::lit::{Projection, light_up};
use super::{LEAST_BORE, ViewOptions, bore_subject, leaves_of, side_rect};
use crate::brush::{Brush, corners};
use crate::dimension::{Axis, Chain, Stretch, chain};
use crate::hatch::hatch;
use crate::list::{At, DisplayList};
use crate::pen::{Ink, Layer, Pen};
use flapwright_model::length::show_length;

/// Steps in which the path of the door's lower edge is drawn.
const PATH_STEPS: u32 = 48;

/// The upright section in the middle of the box: cut panels hatched by material, the door at
/// [`ViewOptions::s`] with its arms, the closed door (when it is open) and the fully open one in
/// the line type of other positions, the body and axis of the fitting, and the bores in the side.
///
/// Frame: paper mm (workshop mm times the scale), origin at z = 0 (front edges of the sides),
/// y = 0 (underside of the box); x runs **back**, so the front is at the left; y up.
#[must_use]
pub fn section(report: &BoxReport, options: &ViewOptions) -> DisplayList {
    let mut list = DisplayList::new();
    backgrounds(&mut list, report, options.scale);
    cut_panels(&mut list, report, options.scale);
    for (index, opening) in report.openings.iter().enumerate() {
        if let Some(door) = &opening.door {
            fitting(&mut list, report, index, door, options.scale);
        }
    }
    side_bores(&mut list, report, options.scale);
    for (index, opening) in report.openings.iter().enumerate() {
        if let Some(door) = &opening.door {
            one_door(&mut list, report, index, door, options);
        }
    }
    if options.show_dimensions {
        dimensions(&mut list, report, options);
    }
    let projection = Projection {
        point: |place, scale| At::new(place.z * scale, place.y * scale),
        solid: side_rect,
    };
    light_up(&mut list, report, options, &projection);
    list
}

fn backgrounds(list: &mut DisplayList, report: &BoxReport, scale: f64) {
    let paper = Brush::new(Layer::Panels, Ink::Paper);
    for panel in report.panels.iter().filter(|panel| panel.id.part == Part::LeftSide) {
        let rect = side_rect(&panel.solid, scale);
        let brush = paper.of(Subject::Part(panel.id));
        brush.area(list, corners(rect));
        Brush { ink: Ink::Plain, ..brush }.rect(list, rect, Pen::Thin);
    }
    for (opening, found) in report.openings.iter().enumerate() {
        let subject = Subject::Opening { box_index: report.box_index, opening };
        paper.of(subject).area(list, corners(side_rect(&found.clear, scale)));
    }
}

fn cut(list: &mut DisplayList, layer: Layer, of: Option<Subject>, polygon: &[At], class: MaterialClass) {
    Brush { layer, ink: Ink::Paper, of }.area(list, polygon.to_vec());
    let soft = Brush { layer: Layer::Hatching, ink: Ink::Soft, of };
    for (from, to) in hatch(polygon, class) {
        soft.line(list, from, to, Pen::Thin);
    }
    Brush { layer, ink: Ink::Plain, of }.outline(list, polygon.to_vec(), Pen::Outline);
}

/// Everything that the section plane cuts, except doors.
fn cut_panels(list: &mut DisplayList, report: &BoxReport, scale: f64) {
    for panel in &report.panels {
        let is_cut = match panel.id.part {
            Part::Top | Part::Bottom | Part::Back | Part::Shelf(_) => true,
            Part::LeftSide | Part::RightSide | Part::Frame | Part::Leaf { .. } => false,
        };
        if is_cut {
            let polygon = corners(side_rect(&panel.solid, scale));
            cut(list, Layer::Panels, Some(Subject::Part(panel.id)), &polygon, panel.class);
        }
    }
    let middle = 0.5 * report.outer[0];
    for member in &report.frame {
        if member.min.x <= middle && middle <= member.max.x {
            let polygon = corners(side_rect(member, scale));
            cut(list, Layer::Panels, None, &polygon, MaterialClass::SolidWood);
        }
    }
}

/// Body of the fitting (dashed) and its axis.
fn fitting(
    list: &mut DisplayList,
    report: &BoxReport,
    opening: usize,
    door: &DoorReport,
    scale: f64,
) {
    let brush = Brush::new(Layer::Fitting, Ink::Fitting)
        .of(Subject::Opening { box_index: report.box_index, opening });
    let mut drawn: Vec<Rect<f64>> = Vec::new();
    for body in &door.envelopes {
        let rect = side_rect(body, scale);
        if !drawn.contains(&rect) {
            brush.rect(list, rect, Pen::Hidden);
            drawn.push(rect);
        }
    }
    if let Some(axis) = door.axis {
        let centre = to_paper(axis, scale);
        brush.circle(list, centre, 1.0, Pen::Thin);
        brush.cross(list, centre, 2.6, Pen::Centre);
    }
}

/// Bores in the left side, which the section looks at; of the right side only those of a fitting
/// that the left side has not, dashed.
fn side_bores(list: &mut DisplayList, report: &BoxReport, scale: f64) {
    let side = |part| report.panels.iter().find(move |panel| panel.id.part == part);
    let mut seen: Vec<At> = Vec::new();
    for (part, behind) in [(Part::LeftSide, false), (Part::RightSide, true)] {
        let Some(panel) = side(part) else { continue };
        for bore in &panel.bores {
            let centre = At::new(bore.in_box.z * scale, bore.in_box.y * scale);
            let doubled = seen.iter().any(|other| (*other - centre).length() < 1e-6);
            let of_fitting = matches!(bore.source, BoreSource::Fitting { .. });
            if behind && (doubled || !of_fitting) {
                continue;
            }
            seen.push(centre);
            let brush = Brush::new(Layer::Bores, Ink::Bore).of(bore_subject(panel.id, bore.number));
            let radius = (0.5 * bore.drill.diameter * scale).max(LEAST_BORE);
            brush.circle(list, centre, radius, if behind { Pen::Hidden } else { Pen::Thin });
            brush.cross(list, centre, radius + 0.7, Pen::Thin);
        }
    }
}

/// A leaf of the report with its closed place.
type Leaf<'a> = (&'a PanelReport, &'a ClosedLeaf);

fn one_door(
    list: &mut DisplayList,
    report: &BoxReport,
    opening: usize,
    door: &DoorReport,
    options: &ViewOptions,
) {
    let scale = options.scale;
    let leaves: Vec<Leaf<'_>> = leaves_of(report, opening)
        .filter_map(|(panel, id)| {
            door.closed.leaves.iter().find(|leaf| leaf.id == id).map(|leaf| (panel, leaf))
        })
        .collect();
    let motion = door.motion.as_ref().and_then(|motion| motion.as_ref().ok());
    let s = if motion.is_some() { options.s.clamp(0.0, 1.0) } else { 0.0 };
    if let Some(motion) = motion {
        path(list, &leaves, motion, scale);
        if s > 0.0 {
            phantom(list, &leaves, door, None, scale);
        }
        if s < 1.0 {
            phantom(list, &leaves, door, Some(&motion.pose(1.0)), scale);
        }
    }
    let pose = motion.map(|motion| motion.pose(s));
    solid_door(list, &leaves, door, pose.as_ref(), s > 0.0, scale);
    if let Some(pose) = &pose {
        arms(list, report, opening, pose, scale);
    }
    if s == 0.0 {
        for (panel, leaf) in &leaves {
            leaf_bores(list, panel, leaf, scale);
        }
    }
}

fn pose_of(pose: Option<&MotionPose>, leaf: &ClosedLeaf) -> Pose {
    pose.and_then(|pose| pose.leaf(leaf.id)).unwrap_or(Pose::CLOSED)
}

fn solid_door(
    list: &mut DisplayList,
    leaves: &[Leaf<'_>],
    door: &DoorReport,
    pose: Option<&MotionPose>,
    moved: bool,
    scale: f64,
) {
    for (panel, leaf) in leaves {
        let at = pose_of(pose, leaf);
        let of = Some(Subject::Part(panel.id));
        for piece in pieces(leaf, panel, &at, scale) {
            cut(list, Layer::Doors, of, &piece.corners, piece.class);
        }
        if moved {
            let brush = Brush { layer: Layer::Doors, ink: Ink::Moving, of };
            brush.outline(list, outline(leaf, &at, scale), Pen::Outline);
        }
    }
    if let (Some(grip), Some((panel, leaf))) = (&door.closed.handle, leaves.last()) {
        let brush = Brush::new(Layer::Doors, Ink::Plain).of(Subject::Part(panel.id));
        brush.outline(list, handle(leaf, grip, &pose_of(pose, leaf), scale), Pen::Thin);
    }
}

/// The door in a position where it is not shown solid.
fn phantom(
    list: &mut DisplayList,
    leaves: &[Leaf<'_>],
    door: &DoorReport,
    pose: Option<&MotionPose>,
    scale: f64,
) {
    let brush = Brush::new(Layer::Doors, Ink::Moving);
    for (_, leaf) in leaves {
        brush.outline(list, outline(leaf, &pose_of(pose, leaf), scale), Pen::Phantom);
    }
    if let (Some(grip), Some((_, leaf))) = (&door.closed.handle, leaves.last()) {
        brush.outline(list, handle(leaf, grip, &pose_of(pose, leaf), scale), Pen::Phantom);
    }
}

/// The path of the lower front edge of the door.
fn path(list: &mut DisplayList, leaves: &[Leaf<'_>], motion: &Motion, scale: f64) {
    let Some((_, leaf)) = leaves.last() else { return };
    let edge = flapwright_model::space::SectionPoint::new(leaf.front_o, leaf.bottom);
    let points = (0..=PATH_STEPS)
        .map(|step| motion.pose(f64::from(step) / f64::from(PATH_STEPS)))
        .map(|pose| to_paper(pose_of(Some(&pose), leaf).apply(edge), scale))
        .collect();
    Brush::new(Layer::Doors, Ink::Soft).run(list, points, Pen::Thin);
}

fn arms(
    list: &mut DisplayList,
    report: &BoxReport,
    opening: usize,
    pose: &MotionPose,
    scale: f64,
) {
    let brush = Brush::new(Layer::Fitting, Ink::Fitting)
        .of(Subject::Opening { box_index: report.box_index, opening });
    for (from, to) in &pose.arms {
        let ends = [to_paper(*from, scale), to_paper(*to, scale)];
        brush.line(list, ends[0], ends[1], Pen::Outline);
        for end in ends {
            brush.disc(list, end, 0.8);
        }
    }
}

/// Bores in the back of a closed leaf: how deep each goes.
fn leaf_bores(list: &mut DisplayList, panel: &PanelReport, leaf: &ClosedLeaf, scale: f64) {
    let thickness = leaf.front_o - leaf.back_o;
    let mut drawn: Vec<Rect<f64>> = Vec::new();
    for bore in &panel.bores {
        let half = (0.5 * bore.drill.diameter).max(LEAST_BORE / scale);
        let back = -leaf.back_o * scale;
        let rect = Rect::from_points([
            At::new(back, (bore.in_box.y - half) * scale),
            At::new(back - bore.depth_in(thickness) * scale, (bore.in_box.y + half) * scale),
        ]);
        if !drawn.contains(&rect) {
            let brush = Brush::new(Layer::Bores, Ink::Bore).of(bore_subject(panel.id, bore.number));
            brush.rect(list, rect, Pen::Thin);
            drawn.push(rect);
        }
    }
}

fn dimensions(list: &mut DisplayList, report: &BoxReport, options: &ViewOptions) {
    let brush = Brush::new(Layer::Dimensions, Ink::Plain);
    let scale = options.scale;
    let [_, height, depth] = report.outer;
    let stretch = |a: f64, b: f64| {
        Stretch::new(a * scale, b * scale, show_length((b - a).abs(), options.unit))
    };
    let row = |axis, line_at, from, stretches| Chain { axis, line_at, from, stretches };
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
    let (top, back) = (height * scale, depth * scale);
    chain(list, brush, &row(Axis::Level, -9.0, 0.0, below));
    chain(list, brush, &row(Axis::Level, top + 9.0, top, clear_depth));
    chain(list, brush, &row(Axis::Upright, back + 9.0, back, clear_heights));
    chain(list, brush, &row(Axis::Upright, back + 18.0, back, vec![stretch(0.0, height)]));
}
