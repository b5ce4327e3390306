//! Doors in the section: closed, open and on the way.

use euclid::default::Rect;
use flapwright_model::part::Subject;
use flapwright_motion::closed::ClosedLeaf;
use flapwright_motion::motion::{Motion, MotionPose, Pose};
use flapwright_rules::inspection::{BoxReport, DoorReport, PanelReport};

use super::leaf_section::{handle, outline, pieces, to_paper};
use super::{LEAST_BORE, ViewOptions, bore_subject, door_subject, grips, leaves_of};
use crate::brush::Brush;
use crate::hatch::{Stuff, hatch, nearest_on_run};
use crate::list::{At, DisplayList};
use crate::pen::{Ink, Layer, Pen};

/// Steps in which the path of the door's lower edge is drawn.
const PATH_STEPS: u32 = 48;

/// A piece that the section plane cuts: blank, hatched, outlined.
pub(super) fn cut(
    list: &mut DisplayList,
    layer: Layer,
    of: Option<Subject>,
    polygon: &[At],
    stuff: Stuff,
) {
    Brush {
        layer,
        ink: Ink::Paper,
        of,
    }
    .area(list, polygon.to_vec());
    let soft = Brush {
        layer: Layer::Hatching,
        ink: Ink::Soft,
        of,
    };
    for (from, to) in hatch(polygon, stuff) {
        soft.line(list, from, to, Pen::Thin);
    }
    Brush {
        layer,
        ink: Ink::Plain,
        of,
    }
    .outline(list, polygon.to_vec(), Pen::Outline);
}

/// A leaf of the report with its closed place.
type Leaf<'a> = (&'a PanelReport, &'a ClosedLeaf);

/// One door: solid at [`ViewOptions::s`], elsewhere in the line type of other positions.
pub(super) fn one_door(
    list: &mut DisplayList,
    report: &BoxReport,
    door: &DoorReport,
    options: &ViewOptions,
) {
    let scale = options.scale;
    let leaves: Vec<Leaf<'_>> = leaves_of(report, door.id)
        .filter_map(|(panel, id)| {
            door.closed
                .leaves
                .iter()
                .find(|leaf| leaf.id == id)
                .map(|leaf| (panel, leaf))
        })
        .collect();
    let motion = door.working_motion();
    let s = if motion.is_some() {
        options.s.clamp(0.0, 1.0)
    } else {
        0.0
    };
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
        arms(list, door_subject(report, door), pose, scale);
        brackets(list, &leaves, pose, scale);
    }
    if s == 0.0 {
        for (panel, leaf) in &leaves {
            leaf_bores(list, panel, leaf, scale);
        }
        grips::door_ends(list, report, door, scale);
        if let (Some(grip), Some((_, leaf))) = (&door.closed.handle, leaves.last()) {
            let corners = handle(leaf, grip, &Pose::CLOSED, scale);
            grips::handle_in_section(list, report, (door.id, &corners), scale);
        }
    }
}

fn pose_of(pose: Option<&MotionPose>, leaf: &ClosedLeaf) -> Pose {
    pose.and_then(|pose| pose.leaf(leaf.id))
        .unwrap_or(Pose::CLOSED)
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
            cut(list, Layer::Doors, of, &piece.corners, piece.stuff);
        }
        if moved {
            let brush = Brush {
                layer: Layer::Doors,
                ink: Ink::Moving,
                of,
            };
            brush.outline(list, outline(leaf, &at, scale), Pen::Outline);
        }
    }
    if let (Some(grip), Some((panel, leaf))) = (&door.closed.handle, leaves.last()) {
        let brush = Brush::new(Layer::Doors, Ink::Plain).of(Subject::Part(panel.id));
        brush.outline(
            list,
            handle(leaf, grip, &pose_of(pose, leaf), scale),
            Pen::Thin,
        );
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
        brush.outline(
            list,
            outline(leaf, &pose_of(pose, leaf), scale),
            Pen::Phantom,
        );
    }
    if let (Some(grip), Some((_, leaf))) = (&door.closed.handle, leaves.last()) {
        brush.outline(
            list,
            handle(leaf, grip, &pose_of(pose, leaf), scale),
            Pen::Phantom,
        );
    }
}

/// The path of the lower front edge of the door.
fn path(list: &mut DisplayList, leaves: &[Leaf<'_>], motion: &Motion, scale: f64) {
    let Some((_, leaf)) = leaves.last() else {
        return;
    };
    let edge = flapwright_model::space::SectionPoint::new(leaf.front_o, leaf.bottom);
    let points = (0..=PATH_STEPS)
        .map(|step| motion.pose(f64::from(step) / f64::from(PATH_STEPS)))
        .map(|pose| to_paper(pose_of(Some(&pose), leaf).apply(edge), scale))
        .collect();
    Brush::new(Layer::Doors, Ink::Soft).run(list, points, Pen::Thin);
}

fn arms(list: &mut DisplayList, of: Subject, pose: &MotionPose, scale: f64) {
    let brush = Brush::new(Layer::Fitting, Ink::Fitting).of(of);
    for (from, to) in &pose.arms {
        let ends = [to_paper(*from, scale), to_paper(*to, scale)];
        brush.line(list, ends[0], ends[1], Pen::Outline);
        for end in ends {
            brush.disc(list, end, 0.8);
        }
    }
}

/// From each arm's end on the door to the leaf that carries it.
fn brackets(list: &mut DisplayList, leaves: &[Leaf<'_>], pose: &MotionPose, scale: f64) {
    let brush = Brush::new(Layer::Fitting, Ink::Fitting);
    for (_, end) in &pose.arms {
        let end = to_paper(*end, scale);
        let nearest = leaves
            .iter()
            .map(|(_, leaf)| outline(leaf, &pose_of(Some(pose), leaf), scale))
            .filter_map(|polygon| nearest_on_run(end, &polygon))
            .min_by(|a, b| (*a - end).length().total_cmp(&(*b - end).length()));
        if let Some(foot) = nearest {
            brush.line(list, end, foot, Pen::Thin);
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
            At::new(
                back - bore.depth_in(thickness) * scale,
                (bore.in_box.y + half) * scale,
            ),
        ]);
        if !drawn.contains(&rect) {
            let brush = Brush::new(Layer::Bores, Ink::Bore).of(bore_subject(panel.id, bore.number));
            brush.rect(list, rect, Pen::Thin);
            drawn.push(rect);
        }
    }
}
