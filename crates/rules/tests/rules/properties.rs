//! Properties that hold for every box, door and place.

use crate::common::*;
use flapwright_model::door::{BoreReference, End};
use flapwright_model::edges::Edges;
use flapwright_model::length::Unit;
use flapwright_model::part::Part;
use proptest::prelude::*;

fn four(range: std::ops::Range<f64>) -> impl Strategy<Value = Edges<f64>> {
    [range.clone(), range.clone(), range.clone(), range].prop_map(|[left, right, top, bottom]| {
        Edges {
            left,
            right,
            top,
            bottom,
        }
    })
}

proptest! {
    #[test]
    fn a_mirrored_box_has_mirrored_bores(
        width in 300.0..2000.0_f64,
        (left, right) in (12.0..30.0_f64, 12.0..30.0_f64),
        reveals in four(-5.0..10.0),
        tweaks in four(-5.0..5.0),
        on_edges in any::<bool>(),
    ) {
        let mut it = wall_box();
        it.width = width;
        it.left = panel(left);
        it.right = panel(right);
        let mut its_door = door(reveals);
        its_door.tweaks = tweaks;
        if on_edges {
            its_door.bores_follow = BoreReference::Edges { vertical: End::Top };
        }
        it.body.door = Some(its_door.clone());
        let mut mirrored = it.clone();
        std::mem::swap(&mut mirrored.left, &mut mirrored.right);
        let swap = |edges: Edges<f64>| Edges { left: edges.right, right: edges.left, ..edges };
        its_door.tweaks = swap(tweaks);
        let mut its_mirrored_door = door(swap(reveals));
        its_mirrored_door.tweaks = its_door.tweaks;
        its_mirrored_door.bores_follow = its_door.bores_follow;
        mirrored.body.door = Some(its_mirrored_door);

        let a = inspect(&job(it, with_hinges(card())));
        let b = inspect(&job(mirrored, with_hinges(card())));
        let sorted = |panel: &flapwright_rules::inspection::PanelReport, mirror: bool| {
            let mut all: Vec<(f64, f64)> = places(panel);
            if mirror {
                for place in &mut all {
                    place.0 = panel.size[0] - place.0;
                }
            }
            all.sort_by(|a, b| a.1.total_cmp(&b.1).then(a.0.total_cmp(&b.0)));
            all
        };
        let pairs = [
            (Part::LeftSide, Part::RightSide, false),
            (Part::RightSide, Part::LeftSide, false),
        ];
        for (one, other, mirror) in pairs {
            let (one, other) = (the_panel(&a.boxes[0], one), the_panel(&b.boxes[0], other));
            assert_near(&sorted(one, false), &sorted(other, mirror));
        }
        assert_near_unordered(
            &sorted(the_leaf(&a.boxes[0], 0), false),
            &sorted(the_leaf(&b.boxes[0], 0), true),
        );
    }

    #[test]
    fn no_reveal_moves_a_bore_in_the_box(reveals in four(-100.0..17.0)) {
        let before = inspect(&job(wall_box(), with_hinges(card())));
        let mut it = wall_box();
        it.body.door = Some(door(reveals));
        let after = inspect(&job(it, with_hinges(card())));
        assert_near(
            &door_bores_in_box(&before.boxes[0], 0),
            &door_bores_in_box(&after.boxes[0], 0),
        );
    }

    #[test]
    fn neither_place_nor_unit_changes_a_bore(
        along_wall in -3000.0..3000.0_f64,
        above_floor in 0.0..2000.0_f64,
    ) {
        let before = inspect(&job(wall_box(), with_hinges(card())));
        let mut it = wall_box();
        it.place = flapwright_model::cabinet::Place { along_wall, above_floor };
        let mut moved = job(it, with_hinges(card()));
        moved.unit = Unit::Inch;
        let after = inspect(&moved);
        for (a, b) in before.boxes[0].panels.iter().zip(&after.boxes[0].panels) {
            prop_assert_eq!(&a.bores, &b.bores);
        }
    }

    #[test]
    fn the_answer_is_the_same_twice_and_never_a_nan(
        size in [60.0..4000.0_f64, 60.0..4000.0, 60.0..2000.0],
        reveals in four(-500.0..500.0),
        tweaks in four(-500.0..500.0),
    ) {
        let mut it = wall_box();
        [it.width, it.height, it.depth] = size;
        it.body.door = Some(door(reveals));
        it.body.door.as_mut().unwrap().tweaks = tweaks;
        let job = job(it, with_hinges(card()));
        let inspection = inspect(&job);
        prop_assert_eq!(&inspection.findings, &inspect(&job).findings);
        for bore in inspection.boxes[0].panels.iter().flat_map(|panel| &panel.bores) {
            let (u, v) = bore.at.uv();
            prop_assert!(u.is_finite() && v.is_finite());
        }
        for number in inspection.findings.iter().flat_map(|finding| &finding.numbers) {
            prop_assert!(number.value.is_finite(), "{:?}", number);
        }
    }
}

#[track_caller]
fn assert_near(a: &[(f64, f64)], b: &[(f64, f64)]) {
    assert_places(a, b);
}

/// As sets: noise in the last digits may order a row of equal heights otherwise.
#[track_caller]
fn assert_near_unordered(a: &[(f64, f64)], b: &[(f64, f64)]) {
    assert_eq!(a.len(), b.len());
    for place in a {
        assert!(
            b.iter()
                .any(|it| (it.0 - place.0).abs() < 1e-9 && (it.1 - place.1).abs() < 1e-9),
            "{place:?} is not among {b:?}"
        );
    }
}
