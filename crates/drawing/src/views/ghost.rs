//! A change that is shown before it is applied: the box as it would be, over the box as it is.

use flapwright_model::part::{LeafId, Part};
use flapwright_rules::inspection::{BoreSource, BoxReport, DoorReport, PanelReport, PlacedBore};

use super::common::{LEAST_BORE, front_rect, leaves_of, side_rect};
use super::leaf_section::outline;
use super::options::ViewOptions;
use crate::brush::Brush;
use crate::list::{At, DisplayList};
use crate::pen::{Ink, Layer, Pen};

/// Places that differ by less are the same, mm.
const SAME: f64 = 1e-6;

const BRUSH: Brush = Brush::new(Layer::Preview, Ink::Ghost);

/// The front of the box as it would be: edges of the leaves, panels that move, and bores in the
/// doors' backs; wide and filled where they differ from now.
pub(super) fn in_elevation(list: &mut DisplayList, report: &BoxReport, options: &ViewOptions) {
    let Some(ghost) = &options.ghost else { return };
    let scale = options.scale;
    for panel in &ghost.panels {
        let is_leaf = matches!(panel.id.part, Part::Leaf { .. });
        let now = same_panel(report, panel);
        let moves = now.is_none_or(|now| !same_place(now, panel));
        if is_leaf || moves && panel.id.part != Part::Back {
            let pen = if moves { Pen::Outline } else { Pen::Thin };
            BRUSH.rect(list, front_rect(&panel.solid, scale), pen);
        }
        if is_leaf {
            for bore in &panel.bores {
                let at = At::new(bore.in_box.x * scale, bore.in_box.y * scale);
                ring(list, at, bore, !has_bore(now, bore), scale);
            }
        }
    }
}

/// The section of the box as it would be: leaves at [`ViewOptions::s`] and fully open, panels that
/// move, and bores of fittings in the left side.
pub(super) fn in_section(list: &mut DisplayList, report: &BoxReport, options: &ViewOptions) {
    let Some(ghost) = &options.ghost else { return };
    let scale = options.scale;
    for panel in &ghost.panels {
        let now = same_panel(report, panel);
        let moves = now.is_none_or(|now| !same_place(now, panel));
        match panel.id.part {
            Part::Top | Part::Bottom | Part::Back | Part::Shelf(_) if moves => {
                BRUSH.rect(list, side_rect(&panel.solid, scale), Pen::Outline);
            }
            Part::LeftSide => {
                if moves {
                    BRUSH.rect(list, side_rect(&panel.solid, scale), Pen::Outline);
                }
                let of_fitting = |bore: &&PlacedBore| {
                    matches!(
                        bore.source,
                        BoreSource::Fitting { .. } | BoreSource::AsDrilled { .. }
                    )
                };
                for bore in panel.bores.iter().filter(of_fitting) {
                    let at = At::new(bore.in_box.z * scale, bore.in_box.y * scale);
                    ring(list, at, bore, !has_bore(now, bore), scale);
                }
            }
            _ => {}
        }
    }
    for door in ghost.doors() {
        leaves_at(list, (ghost, door), report.door(door.id), options);
    }
}

fn leaves_at(
    list: &mut DisplayList,
    (ghost, door): (&BoxReport, &DoorReport),
    now: Option<&DoorReport>,
    options: &ViewOptions,
) {
    for (s, pen) in [(options.s, Pen::Outline), (1.0, Pen::Phantom)] {
        let there = leaf_outlines(ghost, door, s, options.scale);
        let here = now.map(|now| leaf_outlines(ghost, now, s, options.scale));
        for (leaf, points) in there {
            let same = here.as_ref().is_some_and(|here| {
                here.iter()
                    .any(|(id, run)| *id == leaf && same_run(run, &points))
            });
            match (same, pen) {
                (true, Pen::Phantom) => {}
                (true, _) => BRUSH.outline(list, points, Pen::Thin),
                (false, pen) => BRUSH.outline(list, points, pen),
            }
        }
    }
}

/// The outlines of a door's leaves at `s`, closed where nothing moves it.
fn leaf_outlines(
    report: &BoxReport,
    door: &DoorReport,
    s: f64,
    scale: f64,
) -> Vec<(LeafId, Vec<At>)> {
    let motion = door.working_motion();
    let pose = motion.map(|motion| motion.pose(s.clamp(0.0, 1.0)));
    leaves_of(report, door.id)
        .filter_map(|(_, id)| {
            let leaf = door.closed.leaves.iter().find(|leaf| leaf.id == id)?;
            let at = pose.as_ref().and_then(|pose| pose.leaf(id));
            let at = at.unwrap_or(flapwright_motion::motion::Pose::CLOSED);
            Some((id, outline(leaf, &at, scale)))
        })
        .collect()
}

fn ring(list: &mut DisplayList, at: At, bore: &PlacedBore, differs: bool, scale: f64) {
    let radius = (0.5 * bore.drill.diameter * scale).max(LEAST_BORE);
    if differs {
        let ring = radius.max(0.8) + 0.6;
        BRUSH.disc(list, at, radius);
        BRUSH.circle(list, at, ring, Pen::Outline);
        BRUSH.cross(list, at, ring + 1.0, Pen::Thin);
    } else {
        BRUSH.circle(list, at, radius + 0.6, Pen::Thin);
    }
}

fn same_panel<'a>(report: &'a BoxReport, of: &PanelReport) -> Option<&'a PanelReport> {
    report.panel(of.id.part)
}

fn same_place(a: &PanelReport, b: &PanelReport) -> bool {
    let apart = (a.solid.min - b.solid.min).abs() + (a.solid.max - b.solid.max).abs();
    apart.x + apart.y + apart.z < SAME
}

/// Whether the panel has that bore now: there in the box, with that diameter and depth.
fn has_bore(now: Option<&PanelReport>, bore: &PlacedBore) -> bool {
    now.is_some_and(|now| {
        now.bores.iter().any(|it| {
            (it.in_box - bore.in_box).length() < SAME
                && (it.drill.diameter - bore.drill.diameter).abs() < SAME
                && it.drill.depth == bore.drill.depth
        })
    })
}

fn same_run(a: &[At], b: &[At]) -> bool {
    a.len() == b.len() && a.iter().zip(b).all(|(a, b)| (*a - *b).length() < SAME)
}

#[cfg(test)]
mod tests {
    use std::sync::Arc;

    use flapwright_answer::inspect;
    use flapwright_model::door::DoorFit;
    use flapwright_model::edges::Edge;
    use flapwright_model::file::read_job;

    use super::*;
    use crate::list::Shape;
    use crate::views::tests::demo;
    use crate::views::{elevation, section};

    fn ghost_items(list: &DisplayList) -> Vec<&Shape> {
        list.items
            .iter()
            .filter(|item| item.layer == Layer::Preview)
            .map(|item| &item.shape)
            .collect()
    }

    #[test]
    fn a_wider_reveal_shows_the_new_edge_wide_and_the_bores_as_they_are() {
        let text = include_str!("../../../../assets/demo/houseboat-galley.ron");
        let mut job = read_job(text).expect("the demo job is sound");
        let door = job.boxes[1].body.door.as_mut().expect("a door");
        let DoorFit::Overlay { reveals } = &mut door.fit else {
            panic!("the demo's second box has an overlay door");
        };
        *reveals.at_mut(Edge::Top) += 10.0;
        let there = Arc::clone(&inspect(&job).boxes[1]);
        let inspection = demo();
        let here = &inspection.boxes[1];
        let options = ViewOptions {
            scale: 0.2,
            ghost: Some(Arc::clone(&there)),
            ..ViewOptions::default()
        };
        let list = elevation(here, &options);
        let shapes = ghost_items(&list);
        let top = |report: &BoxReport| {
            let leaf = report
                .panels
                .iter()
                .find(|panel| matches!(panel.id.part, Part::Leaf { .. }))
                .expect("a leaf");
            leaf.solid.max.y
        };
        // A reveal of 10 mm more lowers the door's edge by 10 mm.
        assert!((top(here) - top(&there) - 10.0).abs() < 1e-9);
        let wide: Vec<f64> = shapes
            .iter()
            .filter_map(|shape| match shape {
                Shape::Polyline {
                    points,
                    pen: Pen::Outline,
                    ..
                } => points.iter().map(|at| at.y).reduce(f64::max),
                _ => None,
            })
            .collect();
        assert_eq!(wide.len(), 1);
        assert!((wide[0] - 0.2 * (top(here) - 10.0)).abs() < 1e-9);
        let filled = |shape: &&&Shape| matches!(shape, Shape::Circle { filled: true, .. });
        assert_eq!(shapes.iter().filter(filled).count(), 0, "no bore moves");
        assert!(!ghost_items(&section(here, &options)).is_empty());
    }

    #[test]
    fn without_a_ghost_nothing_is_drawn_as_one() {
        let inspection = demo();
        for report in &inspection.boxes {
            let list = elevation(report, &ViewOptions::default());
            assert!(ghost_items(&list).is_empty());
        }
    }
}
