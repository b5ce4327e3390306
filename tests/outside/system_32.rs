//! The 32 mm system of the trade: a grown convention, no norm (magazine HolzWerken, "System 32 -
//! Segen oder Fluch?"; Wikipedia, "32 mm cabinetmaking system").

use flapwright_model::cabinet::{Back, CornerJoint, SystemRows, WallBox};
use flapwright_model::opening::Opening;
use flapwright_model::part::Part;
use flapwright_rules::inspection::{BoreSource, PanelReport};
use flapwright_rules::placement::place_box;

/// The left side of a box without doors, its top and bottom between the sides, open at the back.
fn side(height: f64, depth: f64, rows: SystemRows) -> PanelReport {
    let mut job = flapwright_session::shipped::demo_job().unwrap();
    let mut wall_box: WallBox = job.boxes.remove(0);
    wall_box.height = height;
    wall_box.depth = depth;
    wall_box.joint = CornerJoint::BetweenSides;
    wall_box.back = Back::Open;
    wall_box.body = Opening::undivided(None);
    wall_box.system_rows = Some(rows);
    let report = place_box(&job, &wall_box);
    report
        .panels
        .into_iter()
        .find(|panel| panel.id.part == Part::LeftSide)
        .unwrap()
}

fn rows(first: f64) -> SystemRows {
    SystemRows {
        front: 37.0,
        rear: 37.0,
        first,
        last: first,
        diameter: 5.0,
        depth: 13.0,
    }
}

/// v of the bores of the front row, u of the rear row.
fn front_row(panel: &PanelReport) -> Vec<f64> {
    panel
        .bores
        .iter()
        .filter(|bore| bore.source == BoreSource::SystemRow)
        .map(|bore| bore.at.uv())
        .filter(|(u, _)| (u - 37.0).abs() < 1e-9)
        .map(|(_, v)| v)
        .collect()
}

#[test]
fn a_side_586_deep_has_its_rows_512_apart() {
    // Published (reukauff.de, "woodworking"): 586 - 2 x 37 = 512 = 16 x 32.
    let panel = side(1984.0, 586.0, rows(32.0));
    let rear = panel
        .bores
        .iter()
        .map(|bore| bore.at.uv().0)
        .fold(0.0, f64::max);
    assert_eq!(rear - 37.0, 512.0);
}

#[test]
fn six_steps_behind_a_row_at_37_the_next_is_at_229() {
    // Common practice, no source: 37 + 6 x 32 = 229; a side 229 + 37 = 266 deep has its rear row
    // there.
    let panel = side(720.0, 266.0, rows(40.0));
    let rear = panel
        .bores
        .iter()
        .map(|bore| bore.at.uv().0)
        .fold(0.0, f64::max);
    assert_eq!(rear, 229.0);
}

#[test]
fn a_side_1984_high_with_32_at_each_end_has_61_bores_in_a_row() {
    // Published (same page): 1984 = 62 x 32.
    let row = front_row(&side(1984.0, 586.0, rows(32.0)));
    assert_eq!(row.len(), 61);
    assert_eq!((row[0], row[60]), (32.0, 1984.0 - 32.0));
}

#[test]
fn a_side_720_high_with_40_at_each_end_has_21_bores() {
    // Arithmetic after the rule height = 2 B + 32 k (HolzWerken): (720 - 80) / 32 = 20 steps.
    let row = front_row(&side(720.0, 330.0, rows(40.0)));
    assert_eq!(row.len(), 21);
    assert_eq!(row[20], 680.0);
}

#[test]
fn with_16_mm_panels_720_is_balanced_and_with_18_mm_it_is_not() {
    // Arithmetic after the same rule with B = half a thickness: 720 = 2 x 8 + 32 x 22, while
    // (720 - 18) / 32 = 21.9375.
    let row = front_row(&side(720.0, 330.0, rows(8.0)));
    assert_eq!(row.last().copied(), Some(720.0 - 8.0));
    let row = front_row(&side(720.0, 330.0, rows(9.0)));
    assert_ne!(row.last().copied(), Some(720.0 - 9.0));
}

#[test]
fn every_position_counts_from_the_zero_corner() {
    // 20 pitches are 640 mm; laid out in inches of 1-1/4 they would be 635.
    let row = front_row(&side(1984.0, 586.0, rows(32.0)));
    for (step, v) in row.iter().enumerate() {
        assert_eq!(*v, 32.0 + 32.0 * step as f64);
    }
}
