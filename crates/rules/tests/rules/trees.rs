//! Openings of boxes with dividers and of boxes whose openings are split both ways. No job has them
//! yet, so the boxes are placed without asking whether the job is sound. Worked by hand.

use crate::common::*;
use flapwright_model::cabinet::WallBox;
use flapwright_model::door::Door;
use flapwright_model::edges::Edges;
use flapwright_model::id::DividerId;
use flapwright_model::opening::{Divider, DividerSplit, FixedShelf, Inside, Opening, ShelfSplit};
use flapwright_model::part::Part;
use flapwright_model::validate::validate;
use flapwright_rules::inspection::BoxReport;
use flapwright_rules::placement::place_box;

fn overlay_door() -> Option<Door> {
    Some(door(Edges::all(3.0)))
}

fn divider(across: f64) -> Divider {
    Divider {
        id: DividerId::default(),
        across,
        gap: 4.0,
        left_overlay: None,
        panel: panel(16.0),
        set_back: 0.0,
        housing: 5.0,
    }
}

/// A shelf of 20 at 300; above it a divider of 16 at 400 with a door on both sides, below one door.
fn split_both_ways() -> WallBox {
    let above = Opening {
        inside: Inside::Divider(Box::new(DividerSplit {
            divider: divider(400.0),
            left: Opening::undivided(overlay_door()),
            right: Opening::undivided(overlay_door()),
        })),
        ..Opening::default()
    };
    let mut wall_box = wall_box();
    wall_box.body = Opening {
        inside: Inside::Shelf(Box::new(ShelfSplit {
            shelf: FixedShelf {
                upper_overlay: Some(12.0),
                ..fixed_shelf(300.0, 20.0, 3.0)
            },
            above,
            below: Opening::undivided(overlay_door()),
        })),
        ..Opening::default()
    };
    wall_box
}

fn placed(wall_box: WallBox) -> (WallBox, BoxReport) {
    let job = job(wall_box, card());
    let report = place_box(&job, &job.boxes[0]);
    (job.boxes[0].clone(), report)
}

#[test]
fn each_opening_has_the_clear_space_between_the_panels_around_it() {
    let (wall_box, report) = placed(split_both_ways());
    let clear: Vec<[f64; 4]> = report
        .openings
        .iter()
        .map(|it| {
            [
                it.clear.min.x,
                it.clear.max.x,
                it.clear.min.y,
                it.clear.max.y,
            ]
        })
        .collect();
    // Panels of 18: inside from 18 to 782 and from 18 to 582.
    assert_eq!(
        clear,
        [
            [18.0, 400.0, 320.0, 582.0],
            [416.0, 782.0, 320.0, 582.0],
            [18.0, 782.0, 18.0, 300.0],
        ]
    );
    let ids: Vec<_> = wall_box.openings().iter().map(|it| it.id).collect();
    let reported: Vec<_> = report.openings.iter().map(|it| it.id).collect();
    assert_eq!(reported, ids, "in reading order");
    let divider = Part::Divider(wall_box.dividers()[0].id);
    assert_eq!(report.openings[0].around.right, divider);
    assert_eq!(report.openings[1].around.left, divider);
    let solid = report.panel(divider).expect("the divider").solid;
    // Housed 5 into the shelf and the top.
    assert_eq!((solid.min.y, solid.max.y), (315.0, 587.0));
    assert_eq!((solid.min.x, solid.max.x), (400.0, 416.0));
}

#[test]
fn doors_share_shelf_and_divider_with_the_doors_beyond() {
    let (_, report) = placed(split_both_ways());
    let overlays: Vec<_> = report.doors().map(|door| door.overlays).collect();
    // Divider: 16 - 4 = 12, 6 and 6. Shelf: the upper doors 12, the lower one 20 - 3 - 12 = 5.
    // Elsewhere 18 - 3 = 15.
    assert_eq!(
        overlays,
        [
            Edges {
                left: 15.0,
                right: 6.0,
                top: 15.0,
                bottom: 12.0
            },
            Edges {
                left: 6.0,
                right: 15.0,
                top: 15.0,
                bottom: 12.0
            },
            Edges {
                left: 15.0,
                right: 15.0,
                top: 5.0,
                bottom: 15.0
            },
        ]
    );
    let edges: Vec<_> = report
        .doors()
        .map(|door| (door.edges.left, door.edges.right))
        .collect();
    assert_eq!(edges, [(3.0, 406.0), (410.0, 797.0), (3.0, 797.0)]);
}

#[test]
fn a_door_before_a_split_opening_covers_all_that_is_inside() {
    let mut wall_box = split_both_ways();
    let Inside::Shelf(split) = &mut wall_box.body.inside else {
        panic!("a shelf")
    };
    let Inside::Divider(parts) = &mut split.above.inside else {
        panic!("a divider")
    };
    parts.left.door = None;
    parts.right.door = None;
    split.above.door = overlay_door();
    let (_, report) = placed(wall_box);
    let doors: Vec<_> = report.doors().map(|door| door.edges).collect();
    assert_eq!(
        doors[0],
        Edges {
            left: 3.0,
            right: 797.0,
            top: 597.0,
            bottom: 308.0
        }
    );
    assert_eq!(doors.len(), 2);
    assert_eq!(doors[1].top, 305.0, "12 + 3 + 5 = 20");
}

#[test]
fn what_cannot_be_built_yet_is_refused_by_name() {
    let divided = validate(&job(split_both_ways(), card()));
    assert_eq!(divided.len(), 1, "{divided:?}");
    assert!(divided[0].field.contains(".divider v"), "{divided:?}");
    let mut wall_box = wall_box();
    split(&mut wall_box, fixed_shelf(300.0, 18.0, 3.0), None);
    wall_box.body.door = overlay_door();
    let before_a_split = validate(&job(wall_box, card()));
    assert_eq!(before_a_split.len(), 1, "{before_a_split:?}");
    assert!(
        before_a_split[0].field.ends_with(".door"),
        "{before_a_split:?}"
    );
}

#[test]
fn shelves_must_stay_inside_the_opening_that_they_split() {
    let mut wall_box = wall_box();
    split(&mut wall_box, fixed_shelf(400.0, 18.0, 3.0), None);
    split(&mut wall_box, fixed_shelf(200.0, 18.0, 3.0), None);
    let mut job = job(wall_box, card());
    assert_eq!(validate(&job), []);
    let lower = job.boxes[0].fixed_shelves()[1].id;
    // The upper shelf's underside is at 400.
    for (up, sound) in [(381.9, true), (382.0, false), (450.0, false), (18.0, false)] {
        let shelf = job.boxes[0]
            .fixed_shelf_mut(lower)
            .expect("the lower shelf");
        shelf.up = up;
        assert_eq!(validate(&job).is_empty(), sound, "at {up}");
    }
}
