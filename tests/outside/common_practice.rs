//! Facts of the trade: common practice, no source. The arithmetic can be redone by hand; distances
//! are those of the invented demo.

use std::sync::Arc;

use flapwright_answer::inspect;
use flapwright_model::edges::Edge;
use flapwright_model::id::DoorId;
use flapwright_model::part::{LeafId, Part};
use flapwright_rules::inspection::BoxReport;

fn the_box(name: &str) -> Arc<BoxReport> {
    let job = flapwright_session::shipped::demo_job().unwrap();
    inspect(&job)
        .boxes
        .into_iter()
        .find(|report| report.name == name)
        .unwrap()
}

/// The door of a box that has one.
fn only_door(report: &BoxReport) -> DoorId {
    report.doors().next().unwrap().id
}

/// The shelf of a box that is drilled.
fn only_shelf(report: &BoxReport) -> Part {
    let mut panels = report.panels.iter();
    let shelf = panels.find(|it| matches!(it.id.part, Part::Shelf(_)) && !it.bores.is_empty());
    shelf.unwrap().id.part
}

#[track_caller]
fn has_bore(report: &BoxReport, part: Part, purpose: &str, u: f64, v: f64) {
    let panel = report
        .panels
        .iter()
        .find(|panel| panel.id.part == part)
        .unwrap();
    let found = panel.bores.iter().any(|bore| {
        let (at_u, at_v) = bore.at.uv();
        bore.drill.purpose == purpose && (at_u - u).abs() < 1e-6 && (at_v - v).abs() < 1e-6
    });
    assert!(
        found,
        "{}: no {purpose} at u {u}, v {v}: {:#?}",
        panel.name, panel.bores
    );
}

#[test]
fn an_eighth_reveal_on_a_three_quarter_side_gives_a_five_eighths_overlay() {
    let plates = the_box("plates");
    let door = plates.openings[0].door.as_ref().unwrap();
    for edge in [Edge::Left, Edge::Right] {
        // 3/4 - 1/8 = 5/8 in = 15.875 mm.
        assert!((door.overlays.at(edge) - 15.875).abs() < 1e-9);
    }
}

#[test]
fn side_bores_lie_below_the_top_end_by_top_thickness_and_distance() {
    // mugs: top 18 between the sides; Wren size 2 needs 71 and 118 below the top.
    let mugs = the_box("mugs");
    for side in [Part::LeftSide, Part::RightSide] {
        has_bore(&mugs, side, "stay screw", 67.0, 18.0 + 71.0);
        has_bore(&mugs, side, "stay screw", 163.0, 18.0 + 71.0);
        has_bore(&mugs, side, "stay screw", 115.0, 18.0 + 118.0);
    }
}

#[test]
fn below_a_fixed_shelf_the_fitting_measures_from_that_shelf() {
    // mugs: 540 high, the shelf's underside 224 up: 316 below the top end. Dipper needs 148 and
    // 184 below that.
    let mugs = the_box("mugs");
    has_bore(
        &mugs,
        Part::LeftSide,
        "strut bracket screw",
        25.0,
        316.0 + 148.0,
    );
    has_bore(
        &mugs,
        Part::RightSide,
        "strut bracket screw",
        25.0,
        316.0 + 184.0,
    );
}

#[test]
fn door_bores_lie_at_overlay_plus_distance_from_the_edges() {
    // plates: overlays 15.875; Heron needs 24 in and 259 down, 47 in and 295 down. The back shows
    // the right fitting at the left.
    let plates = the_box("plates");
    let leaf = Part::Leaf {
        door: only_door(&plates),
        leaf: LeafId::Only,
    };
    has_bore(
        &plates,
        leaf,
        "arm bracket screw",
        15.875 + 24.0,
        15.875 + 259.0,
    );
    has_bore(
        &plates,
        leaf,
        "arm bracket screw",
        15.875 + 47.0,
        15.875 + 295.0,
    );
    // Door 700 - 2 x 3.175 = 693.65 wide.
    has_bore(
        &plates,
        leaf,
        "arm bracket screw",
        693.65 - 39.875,
        15.875 + 259.0,
    );
}

#[test]
fn hinges_of_a_folding_pair_hang_on_its_joint() {
    // spices: right overlay 16.5, left 15, clear width 564, so the leaf is 595.5 wide; cups 119
    // inside the clear width and 22 below the joint, whose gap takes 1.5.
    let spices = the_box("spices");
    let lower = Part::Leaf {
        door: only_door(&spices),
        leaf: LeafId::Lower,
    };
    has_bore(&spices, lower, "joint hinge cup", 16.5 + 119.0, 22.0 - 1.5);
    has_bore(
        &spices,
        lower,
        "joint hinge cup",
        595.5 - 15.0 - 119.0,
        22.0 - 1.5,
    );
    has_bore(
        &spices,
        lower,
        "link bracket screw",
        16.5 + 19.0,
        135.0 - 1.5,
    );
}

#[test]
fn plates_of_hinges_in_a_housed_shelf_count_from_its_own_end() {
    // mugs: shelf housed 6 into the side; first plate 119 inside the clear width, screws 17.5
    // beside its middle.
    let mugs = the_box("mugs");
    has_bore(
        &mugs,
        only_shelf(&mugs),
        "hinge plate screw",
        6.0 + 119.0 - 17.5,
        46.0,
    );
}
