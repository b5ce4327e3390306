//! Views of the demonstration job.

mod grain_hatching;
mod grips;
mod subjects;

use flapwright_answer::inspect;
use flapwright_model::job::{Job, OpeningMark};
use flapwright_model::part::{BoreId, Part, Subject};
use flapwright_rules::finding::Severity;
use flapwright_rules::inspection::{BoxReport, Inspection};

use super::{ViewOptions, elevation, hit, section};
use crate::list::{At, DisplayList, Shape};
use crate::overlap::overlapping_texts;
use crate::pen::{Ink, Layer, Pen};

pub(super) fn demo_job() -> Job {
    let text = include_str!("../../../../assets/demo/houseboat-galley.ron");
    flapwright_model::file::read_job(text).expect("the demo job is sound")
}

pub(super) fn demo() -> Inspection {
    inspect(&demo_job())
}

pub(super) fn options(s: f64) -> ViewOptions {
    ViewOptions {
        scale: 0.2,
        s,
        ..ViewOptions::default()
    }
}

fn every_box(check: impl Fn(&BoxReport)) {
    let inspection = demo();
    assert!(!inspection.boxes.is_empty());
    inspection.boxes.iter().map(AsRef::as_ref).for_each(check);
}

fn layer_points(list: &DisplayList, layer: Layer, pen: Pen) -> Vec<At> {
    let points = |item: &crate::list::Item| match &item.shape {
        Shape::Polyline {
            points, pen: own, ..
        } if item.layer == layer && *own == pen => points.clone(),
        _ => Vec::new(),
    };
    list.items.iter().flat_map(points).collect()
}

#[test]
fn a_bore_of_a_leaf_is_found_where_it_is() {
    every_box(|report| {
        let list = elevation(report, &options(0.0));
        for panel in &report.panels {
            if !matches!(panel.id.part, Part::Leaf { .. }) {
                continue;
            }
            for bore in &panel.bores {
                let at = At::new(bore.in_box.x * 0.2, bore.in_box.y * 0.2);
                let found = hit(&list, at, 0.5);
                let expected = Subject::Bore(BoreId {
                    part: panel.id,
                    number: bore.number,
                });
                assert!(
                    matches!(found, Some(Subject::Bore(_))),
                    "{found:?} for {expected:?}"
                );
            }
            let middle = panel.solid.center();
            let beside = At::new(middle.x * 0.2, (panel.solid.min.y + 1.0) * 0.2);
            assert_eq!(hit(&list, beside, 0.01), Some(Subject::Part(panel.id)));
        }
        assert_eq!(hit(&list, At::new(-200.0, -200.0), 1.0), None);
    });
}

#[test]
fn side_bores_are_found_in_the_section() {
    every_box(|report| {
        let list = section(report, &options(0.0));
        let left = report
            .panels
            .iter()
            .find(|panel| panel.id.part == Part::LeftSide);
        for bore in &left.expect("left side").bores {
            let at = At::new(bore.in_box.z * 0.2, bore.in_box.y * 0.2);
            assert!(
                matches!(hit(&list, at, 0.2), Some(Subject::Bore(_))),
                "{bore:?}"
            );
        }
    });
}

#[test]
fn the_front_is_at_the_left_and_an_open_door_leaves_a_phantom_closed_one() {
    every_box(|report| {
        let Some(door) = report.doors().next() else {
            return;
        };
        let closed = section(report, &options(0.0));
        let front = layer_points(&closed, Layer::Doors, Pen::Outline);
        let least = front
            .iter()
            .map(|point| point.x)
            .fold(f64::INFINITY, f64::min);
        assert!(
            (least - door.front * 0.2).abs() < 1e-6,
            "{least} {}",
            door.front
        );
        let open = section(report, &options(0.5));
        let phantom = layer_points(&open, Layer::Doors, Pen::Phantom);
        for leaf in &door.closed.leaves {
            let corner = At::new(-leaf.back_o * 0.2, leaf.bottom * 0.2);
            let near = phantom
                .iter()
                .any(|point| (*point - corner).length() < 1e-6);
            assert!(near, "closed corner {corner:?}");
        }
        assert_ne!(layer_points(&open, Layer::Doors, Pen::Outline), front);
    });
}

#[test]
fn figures_keep_apart_at_any_zoom() {
    every_box(|report| {
        for scale in [0.05, 0.1, 0.2, 0.5] {
            for options in [options(0.0), options(1.0)] {
                let options = ViewOptions { scale, ..options };
                for list in [elevation(report, &options), section(report, &options)] {
                    let overlaps = overlapping_texts(&list);
                    assert!(
                        overlaps.is_empty(),
                        "{} at {scale}: {overlaps:?}",
                        report.name
                    );
                }
            }
        }
    });
}

#[test]
fn what_is_lit_is_marked_in_its_severity() {
    every_box(|report| {
        let panel = report.panels.iter().find(|panel| !panel.bores.is_empty());
        let panel = panel.expect("a drilled panel");
        let id = BoreId {
            part: panel.id,
            number: panel.bores[0].number,
        };
        let lit = vec![(Subject::Bore(id), Severity::Stop)];
        let options = ViewOptions {
            lit,
            ..options(0.0)
        };
        for list in [elevation(report, &options), section(report, &options)] {
            let marked = list.items.iter().any(|item| {
                item.layer == Layer::Findings
                    && item.ink == Ink::Stop
                    && item.of == Some(Subject::Bore(id))
            });
            assert!(marked);
        }
    });
}

#[test]
fn the_opening_mark_follows_the_convention() {
    every_box(|report| {
        let pens = |mark| {
            let list = elevation(
                report,
                &ViewOptions {
                    mark,
                    ..options(0.0)
                },
            );
            let lines = list
                .items
                .into_iter()
                .filter(|item| item.layer == Layer::OpeningMark);
            let pen = |item: crate::list::Item| match item.shape {
                Shape::Line { from, to, pen } if from.x != to.x => Some((from.y > to.y, pen)),
                _ => None,
            };
            lines.filter_map(pen).collect::<Vec<_>>()
        };
        // Feet at the top and apex below, continuous; feet below and apex at the top, dashed.
        assert!(
            pens(OpeningMark::ApexAtOpeningSide)
                .iter()
                .all(|p| *p == (true, Pen::Thin))
        );
        assert!(
            pens(OpeningMark::ApexAtHinge)
                .iter()
                .all(|p| *p == (false, Pen::Hidden))
        );
        assert!(!pens(OpeningMark::ApexAtHinge).is_empty());
    });
}

#[test]
fn two_runs_give_the_same_list() {
    let (a, b) = (demo(), demo());
    for (a, b) in a.boxes.iter().zip(&b.boxes) {
        assert_eq!(elevation(a, &options(0.3)), elevation(b, &options(0.3)));
        assert_eq!(section(a, &options(0.3)), section(b, &options(0.3)));
    }
}
