//! Hatching of solid wood: which way the strokes of each part run in each view.

use std::collections::BTreeSet;

use flapwright_answer::inspect;
use flapwright_model::job::Job;
use flapwright_model::material::MaterialClass;
use flapwright_model::part::{LeafId, Part, Subject};
use flapwright_rules::inspection::BoxReport;

use super::super::{elevation, hatchings, plan, section};
use super::options;
use crate::hatch::legend;
use crate::list::{DisplayList, Shape};
use crate::pen::Layer;

const DEMO: &str = include_str!("../../../../../assets/demo/houseboat-galley.ron");
/// Pairs of strokes falling to the right: end grain.
const CROSSED: &[i64] = &[135];
const UPRIGHT: &[i64] = &[90];
const LEVEL: &[i64] = &[0];

/// The demo with changes of its text, everything that was plywood in solid wood.
fn wooden(changes: &[(&str, &str)]) -> Job {
    let mut text = DEMO.to_owned();
    for (from, to) in changes {
        assert!(text.contains(from), "{from}");
        text = text.replace(from, to);
    }
    let mut job: Job = flapwright_model::file::read_job(&text).expect("a sound job");
    for material in &mut job.materials {
        if material.name.ends_with("plywood") {
            material.class = MaterialClass::SolidWood;
        }
    }
    job
}

fn report(job: &Job, name: &str) -> BoxReport {
    let inspection = inspect(job);
    let found = inspection.boxes.iter().find(|report| report.name == name);
    found.expect("the box").as_ref().clone()
}

/// Slopes of a part's hatching, whole degrees from 0 up to below 180. `None`: of no part.
fn slopes(list: &DisplayList, part: Option<Part>) -> BTreeSet<i64> {
    let of_part = |of: Option<Subject>| match of {
        Some(Subject::Part(id)) => Some(id.part) == part,
        _ => part.is_none(),
    };
    list.items
        .iter()
        .filter(|item| item.layer == Layer::Hatching && of_part(item.of))
        .filter_map(|item| match item.shape {
            Shape::Line { from, to, .. } => {
                let slope = (to - from).angle_from_x_axis().to_degrees().round() as i64;
                Some(slope.rem_euclid(180))
            }
            _ => None,
        })
        .collect()
}

/// The part of a box that suits.
fn part(report: &BoxReport, suits: impl Fn(Part) -> bool) -> Part {
    let mut parts = report.panels.iter().map(|panel| panel.id.part);
    parts.find(|it| suits(*it)).expect("the part")
}

fn leaf(report: &BoxReport, wanted: LeafId) -> Part {
    part(
        report,
        |it| matches!(it, Part::Leaf { leaf, .. } if leaf == wanted),
    )
}

#[track_caller]
fn assert_slopes(list: &DisplayList, expected: &[(Part, &[i64])]) {
    for (part, slopes_of_part) in expected {
        let found: Vec<i64> = slopes(list, Some(*part)).into_iter().collect();
        assert_eq!(found, *slopes_of_part, "{part:?}");
    }
}

/// Top, bottom and shelf run left to right, sides and back up and down (the grain of the demo's
/// cut list); the leaf of this box runs left to right.
#[test]
fn each_plane_shows_end_grain_of_what_it_crosses_and_long_grain_of_what_it_follows() {
    let report = report(&wooden(&[]), "mugs");
    let upright = section(&report, &options(0.0));
    assert_slopes(
        &upright,
        &[
            (Part::Top, CROSSED),
            (Part::Bottom, CROSSED),
            (part(&report, |it| matches!(it, Part::Shelf(_))), CROSSED),
            (Part::Back, UPRIGHT),
            (leaf(&report, LeafId::Only), CROSSED),
        ],
    );
    let level = plan(&report, &options(0.0));
    assert_slopes(
        &level,
        &[
            (Part::LeftSide, CROSSED),
            (Part::RightSide, CROSSED),
            (Part::Back, CROSSED),
            (leaf(&report, LeafId::Only), LEVEL),
        ],
    );
}

/// The demo's own maple frame: rails are cut by the upright plane, stiles by the level one, both
/// across their length.
#[test]
fn stiles_and_rails_of_a_framed_leaf_show_end_grain_whatever_its_face_does() {
    for grain in ["Upright", "Across"] {
        let job = wooden(&[("grain: Upright", &format!("grain: {grain}"))]);
        let report = report(&job, "spices");
        for list in [
            section(&report, &options(0.0)),
            plan(&report, &options(0.0)),
        ] {
            let found = slopes(&list, Some(leaf(&report, LeafId::Lower)));
            // The pane's own strokes rise at 45 degrees.
            assert_eq!(found, BTreeSet::from([45, 135]), "{grain}");
        }
    }
}

#[test]
fn a_solid_panel_in_a_frame_follows_the_grain_of_its_leaf() {
    for (grain, front, upright, level) in [
        ("Upright", UPRIGHT, UPRIGHT, CROSSED),
        ("Across", LEVEL, CROSSED, LEVEL),
        // 482 mm wide and some 130 mm high: along the longer side.
        ("None", LEVEL, CROSSED, LEVEL),
    ] {
        let job = wooden(&[
            ("material: \"float glass\"", "material: \"white oak\""),
            ("grain: Upright", &format!("grain: {grain}")),
        ]);
        let report = report(&job, "spices");
        let part = Some(leaf(&report, LeafId::Lower));
        let shown = |list: &DisplayList| slopes(list, part);
        let with_members = |own: &[i64]| own.iter().chain(CROSSED).copied().collect();
        let found: Vec<i64> = shown(&elevation(&report, &options(0.0)))
            .into_iter()
            .collect();
        assert_eq!(found, front, "{grain}");
        let found: BTreeSet<i64> = shown(&section(&report, &options(0.0)));
        assert_eq!(found, with_members(upright), "{grain}");
        let found: BTreeSet<i64> = shown(&plan(&report, &options(0.0)));
        assert_eq!(found, with_members(level), "{grain}");
    }
}

/// In the level section too the stiles of a face frame are cut across; its rails, in the upright
/// one.
#[test]
fn members_of_a_face_frame_show_end_grain() {
    let frame = "frame: Some((thickness: 20.0, material: \"hard maple\", members: (left: 38.0, \
                 right: 38.0, top: 38.0, bottom: 38.0), overhang: (left: 0.0, right: 0.0, top: \
                 0.0, bottom: 0.0), shelf_rail: 38.0))";
    let job = wooden(&[("frame: None", frame)]);
    let report = report(&job, "mugs");
    assert!(!report.frame.is_empty());
    for list in [
        section(&report, &options(0.0)),
        plan(&report, &options(0.0)),
    ] {
        let found: Vec<i64> = slopes(&list, None).into_iter().collect();
        assert_eq!(found, CROSSED);
    }
}

/// A face frame is hatched as the material that it is made of: board has single strokes that rise
/// to the right and no grain.
#[test]
fn a_face_frame_of_board_is_hatched_as_board() {
    let frame = "frame: Some((thickness: 20.0, material: \"MDF\", members: (left: 38.0, right: \
                 38.0, top: 38.0, bottom: 38.0), overhang: (left: 0.0, right: 0.0, top: 0.0, \
                 bottom: 0.0), shelf_rail: 38.0))";
    let report = report(&wooden(&[("frame: None", frame)]), "mugs");
    for list in [
        section(&report, &options(0.0)),
        plan(&report, &options(0.0)),
    ] {
        let found: Vec<i64> = slopes(&list, None).into_iter().collect();
        assert_eq!(found, [45]);
    }
}

/// The grain turns with the leaf: strokes stay parallel to the long edge of its section.
#[test]
fn long_grain_turns_with_an_opening_leaf() {
    let report = report(&wooden(&[("grain: Across", "grain: Upright")]), "mugs");
    let part = leaf(&report, LeafId::Only);
    for s in [0.0, 0.3, 0.7, 1.0] {
        let list = section(&report, &options(s));
        let edge = list.items.iter().find_map(|item| match &item.shape {
            Shape::Polyline { points, .. }
                if item.layer == Layer::Doors
                    && matches!(item.of, Some(Subject::Part(id)) if id.part == part) =>
            {
                Some((points[3] - points[0]).angle_from_x_axis().to_degrees())
            }
            _ => None,
        });
        let edge = (edge.expect("the leaf's outline").round() as i64).rem_euclid(180);
        let found: Vec<i64> = slopes(&list, Some(part)).into_iter().collect();
        assert_eq!(found, [edge], "{s}");
        assert!(s != 0.0 || edge == 90);
    }
}

#[test]
fn the_legend_names_what_the_views_hatch_and_nothing_else() {
    let words = |job: &Job, name| legend(hatchings(&report(job, name))).join("; ");
    let plain: Job = flapwright_model::file::read_job(DEMO).expect("a sound job");
    assert_eq!(words(&plain, "mugs"), "board: single strokes");
    let spices = words(&plain, "spices");
    assert!(spices.contains("across the grain"), "{spices}");
    assert!(!spices.contains("along the grain"), "{spices}");
    assert!(spices.contains("glass"), "{spices}");
    let both = words(&wooden(&[]), "mugs");
    assert!(both.contains("across the grain"), "{both}");
    assert!(both.contains("along the grain"), "{both}");
    assert!(!both.contains("board"), "{both}");
}
