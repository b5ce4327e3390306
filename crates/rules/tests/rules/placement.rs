//! Placement: every expected number is arithmetic that can be redone by hand from the numbers in
//! the test. The rules themselves are common practice, no source.

use crate::common::*;
use flapwright_model::cabinet::{Back, CornerJoint};
use flapwright_model::card::{DownFrom, PerSize};
use flapwright_model::door::DoorFit;
use flapwright_model::edges::Edges;
use flapwright_model::part::Part;

#[test]
fn bores_below_the_top_run_from_the_top_end_of_the_side() {
    // Top 18 between the sides: v = 18 + 64 = 82. Top over the sides: v = 64.
    let report = inspect(&job(wall_box(), card()));
    let expected = [(41.0, 82.0), (137.0, 82.0)];
    assert_places(
        &places(the_panel(&report.boxes[0], Part::LeftSide)),
        &expected,
    );
    assert_places(
        &places(the_panel(&report.boxes[0], Part::RightSide)),
        &expected,
    );

    let mut over = wall_box();
    over.joint = CornerJoint::OverSides;
    let report = inspect(&job(over, card()));
    let expected = [(41.0, 64.0), (137.0, 64.0)];
    assert_places(
        &places(the_panel(&report.boxes[0], Part::LeftSide)),
        &expected,
    );
}

#[test]
fn a_top_set_down_moves_the_bores_down_with_it() {
    let mut lowered = wall_box();
    lowered.top.set_in = 25.0;
    let report = inspect(&job(lowered, card()));
    // 25 + 18 + 64 = 107.
    let expected = [(41.0, 107.0), (137.0, 107.0)];
    assert_places(
        &places(the_panel(&report.boxes[0], Part::LeftSide)),
        &expected,
    );
}

#[test]
fn a_three_quarter_side_with_an_eighth_reveal_has_a_five_eighths_overlay() {
    // 3/4 in - 1/8 in = 5/8 in: 19.05 - 3.175 = 15.875 mm.
    let mut it = wall_box();
    it.left = panel(19.05);
    it.body.door = Some(door(Edges::all(3.175)));
    let report = inspect(&job(it, card()));
    assert_close(the_door(&report.boxes[0], 0).overlays.left, 15.875);
}

#[test]
fn left_and_right_of_the_door_cross_over_once_on_its_back() {
    // Door 801 wide, left overlay 15.875, right overlay 3, d = 14. On the back the right fitting's
    // bore is at 3 + 14 = 17, the left one's at 801 - 15.875 - 14 = 771.125.
    let mut it = wall_box();
    it.left = panel(19.0);
    it.right = panel(19.0);
    // Clear width = 801 - 15.875 - 3 = 782.125.
    it.width = 782.125 + 38.0;
    let reveals = Edges {
        left: 19.0 - 15.875,
        right: 16.0,
        top: 3.0,
        bottom: 3.0,
    };
    it.body.door = Some(door(reveals));
    let report = inspect(&job(it, card()));
    let leaf = the_leaf(&report.boxes[0], 0);
    assert_close(leaf.size[0], 801.0);
    // Top overlay 15: v = 15 + 90 and 15 + 122.
    let expected = [
        (17.0, 105.0),
        (771.125, 105.0),
        (17.0, 137.0),
        (771.125, 137.0),
    ];
    assert_places(&places(leaf), &expected);
}

#[test]
fn a_door_bore_lies_at_overlay_plus_its_distance_for_each_size() {
    let mut card = card();
    let mut second = card.sizes[0].clone();
    second.name = "2".to_owned();
    card.sizes.push(second);
    card.door_bores[0].bores[0].down.by =
        PerSize::BySize([("1".to_owned(), 90.0), ("2".to_owned(), 117.0)].into());
    for (size, h) in [("1", 90.0), ("2", 117.0)] {
        let mut it = wall_box();
        it.body
            .door
            .as_mut()
            .unwrap()
            .fitting
            .as_mut()
            .unwrap()
            .size = size.to_owned();
        let report = inspect(&job(it, card.clone()));
        // Overlay 15 all around: u = 15 + 14 for the right fitting, v = 15 + h.
        let at = places(the_leaf(&report.boxes[0], 0));
        assert!(at.contains(&(29.0, 15.0 + h)), "size {size}: {at:?}");
    }
}

#[test]
fn a_reveal_moves_the_edge_and_not_the_bores() {
    let before = inspect(&job(wall_box(), card()));
    let mut wider = wall_box();
    let reveals = Edges {
        left: 1.0,
        right: 7.0,
        top: 11.0,
        bottom: 5.0,
    };
    wider.body.door = Some(door(reveals));
    let after = inspect(&job(wider, card()));
    assert_places(
        &door_bores_in_box(&after.boxes[0], 0),
        &door_bores_in_box(&before.boxes[0], 0),
    );
    for side in [Part::LeftSide, Part::RightSide] {
        assert_places(
            &places(the_panel(&after.boxes[0], side)),
            &places(the_panel(&before.boxes[0], side)),
        );
    }
    // The distance on the door follows: top overlay 18 - 11 = 7, v = 7 + 90 = 97.
    assert_close(places(the_leaf(&after.boxes[0], 0))[0].1, 97.0);
}

#[test]
fn below_a_fixed_shelf_the_same_card_measures_from_that_shelf() {
    let mut it = wall_box();
    split(
        &mut it,
        fixed_shelf(250.0, 19.0, 3.0),
        Some(door(Edges::all(3.0))),
    );
    let report = inspect(&job(it, card()));
    let side = the_panel(&report.boxes[0], Part::LeftSide);
    // First opening: v = 18 + 64 = 82. Below the shelf: 600 - 250 + 64 = 414.
    let expected = [(41.0, 82.0), (137.0, 82.0), (41.0, 414.0), (137.0, 414.0)];
    assert_places(&places(side), &expected);
    // The shelf is shared: overlays (19 - 3) / 2 = 8. On the lower door v = 8 + 90.
    assert_close(the_door(&report.boxes[0], 0).overlays.bottom, 8.0);
    assert_close(the_door(&report.boxes[0], 1).overlays.top, 8.0);
    assert_close(places(the_leaf(&report.boxes[0], 1))[0].1, 98.0);
}

#[test]
fn an_inset_door_pushes_the_front_datum_back() {
    let mut it = wall_box();
    let door = it.body.door.as_mut().unwrap();
    door.fit = DoorFit::Inset {
        gaps: Edges::all(2.0),
        set_back: 1.5,
    };
    let report = inspect(&job(it, card()));
    // Door 19 thick, set back 1.5: 41 + 20.5 and 137 + 20.5.
    let expected = [(61.5, 82.0), (157.5, 82.0)];
    assert_places(
        &places(the_panel(&report.boxes[0], Part::LeftSide)),
        &expected,
    );
    // Overlay is minus the gap: u = -2 + 14, v = -2 + 90.
    assert_close(the_door(&report.boxes[0], 0).overlays.left, -2.0);
    let at = places(the_leaf(&report.boxes[0], 0));
    assert_close(at[0].0, 12.0);
    assert_close(at[0].1, 88.0);
}

#[test]
fn behind_a_face_frame_distances_count_from_the_mounting_face() {
    // Stile 38, frame 19 inward of the side's inner face, overlay 12, d = 14:
    // packing 19 gives 12 + 0 + 14 = 26; packing 0 gives 12 - 19 + 14 = 7.
    for (packing, expected, cautions) in [(19.0, 26.0, 0), (0.0, 7.0, 1)] {
        let mut it = wall_box();
        it.left = panel(19.0);
        it.right = panel(19.0);
        it.frame = Some(face_frame(20.0, 38.0, 19.0));
        let mut its_door = door(Edges::all(38.0 - 12.0));
        its_door.fitting.as_mut().unwrap().packing = packing;
        it.body.door = Some(its_door);
        let report = inspect(&job(it, card()));
        assert_close(places(the_leaf(&report.boxes[0], 0))[0].0, expected);
        let found = report
            .findings
            .iter()
            .filter(|it| it.check == "frame-blocks-fitting")
            .count();
        assert_eq!(found, cautions, "packing {packing}");
    }
}

#[test]
fn vertical_datums_differ_behind_a_rail_and_agree_without_one() {
    let mut by_rail = card();
    by_rail.side_bores[0].down.from = DownFrom::FrameRailUnderside;
    let report = inspect(&job(wall_box(), by_rail.clone()));
    assert_close(
        places(the_panel(&report.boxes[0], Part::LeftSide))[0].1,
        82.0,
    );
    let mut it = wall_box();
    it.frame = Some(face_frame(20.0, 38.0, 12.0));
    it.body.door = Some(door(Edges::all(10.0)));
    let report = inspect(&job(it, by_rail));
    // The rail hangs 12 below the top's underside: 18 + 12 + 64 = 94; the other bore stays at 82.
    let at = places(the_panel(&report.boxes[0], Part::LeftSide));
    assert_places(&at, &[(137.0, 82.0), (41.0, 94.0)]);
}

#[test]
fn the_underside_counts_from_the_panels_own_end_and_front_edge() {
    let mut card = card();
    card.side_bores.clear();
    let mut plated = with_hinges(card);
    // One bore 100 inside the left inner face, 37 behind the side fronts.
    plated.top_bores[0].spread = None;
    plated.top_bores[0].bores[0].across = flapwright_model::card::Distance {
        from: flapwright_model::card::AcrossFrom::MountingFace,
        by: PerSize::All(100.0),
    };
    plated.top_bores[0].bores[0].back.by = PerSize::All(37.0);
    // Over 18 mm sides: u = 118.
    let mut over = wall_box();
    over.joint = CornerJoint::OverSides;
    let report = inspect(&job(over, plated.clone()));
    assert_places(
        &places(the_panel(&report.boxes[0], Part::Top))[..1],
        &[(118.0, 37.0)],
    );
    // Housed 6 into the sides, set back 20: u = 106, v = 17.
    let mut housed = wall_box();
    housed.top.housing = 6.0;
    housed.top.set_back = 20.0;
    let report = inspect(&job(housed, plated));
    assert_places(
        &places(the_panel(&report.boxes[0], Part::Top))[..1],
        &[(106.0, 17.0)],
    );
}

#[test]
fn a_spread_group_has_its_ends_inset_and_the_rest_equally_apart() {
    // Clear width 800 - 36 = 764: three, at 70, 382 and 694 from the left inner face.
    let report = inspect(&job(wall_box(), with_hinges(card())));
    let cups: Vec<f64> = the_leaf(&report.boxes[0], 0)
        .bores
        .iter()
        .filter(|bore| bore.drill.purpose == "hinge cup")
        .map(|bore| bore.in_box.x - 18.0)
        .collect();
    // From the back u runs the other way: the first in the table is the one at box-right.
    assert_eq!(cups, [694.0, 382.0, 70.0]);
    let plates: Vec<f64> = the_panel(&report.boxes[0], Part::Top)
        .bores
        .iter()
        .map(|bore| bore.at.uv().0)
        .collect();
    // The top stands between the sides: u from its own left end = inner face; 11 beside each.
    assert_eq!(plates, [81.0, 393.0, 705.0]);
}

#[test]
fn a_narrow_box_gets_fewer_of_a_spread_group() {
    let mut it = wall_box();
    it.width = 600.0 + 36.0;
    let report = inspect(&job(it, with_hinges(card())));
    assert_eq!(the_panel(&report.boxes[0], Part::Top).bores.len(), 2);
}

#[test]
fn a_grooved_back_does_not_shorten_the_sides_and_a_laid_on_one_does() {
    for (back, depth) in [
        (Back::LaidOn { panel: panel(8.0) }, 322.0),
        (
            Back::Grooved {
                panel: panel(8.0),
                inset: 10.0,
                groove: 9.0,
            },
            330.0,
        ),
        (
            Back::Rebated {
                panel: panel(8.0),
                lap: 9.0,
            },
            330.0,
        ),
        (Back::Open, 330.0),
    ] {
        let mut it = wall_box();
        it.back = back.clone();
        let report = inspect(&job(it, card()));
        let side = the_panel(&report.boxes[0], Part::LeftSide);
        assert_close(side.size[0], depth);
    }
}
