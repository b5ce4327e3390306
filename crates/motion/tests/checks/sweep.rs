//! What a moving door sweeps over, against its own poses and closed forms.

use crate::common::{UNDERSIDE, every_kind, flap, one_leaf};
use flapwright_model::space::SectionPoint;
use flapwright_motion::motion::motion;
use flapwright_motion::outline::{BodyId, arm_outlines, outline_at, reach};
use flapwright_motion::sweep::{ARM_HALF_WIDTH, SectionBlock, Sweep, distance};
use proptest::prelude::*;

fn block(left: f64, low: f64, right: f64, high: f64) -> SectionBlock {
    SectionBlock::new(SectionPoint::new(left, low), SectionPoint::new(right, high))
}

proptest! {
    #![proptest_config(ProptestConfig { failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn the_sweep_holds_every_pose(s in 0.0_f64..=1.0) {
        for (name, card, door) in every_kind() {
            let motion = motion(&card, "A", &door).expect(name);
            let sweep = Sweep::of(&motion, &door);
            let mut bodies = outline_at(&motion, &door, s);
            bodies.extend(arm_outlines(&motion, s, ARM_HALF_WIDTH));
            for (body, corners) in bodies {
                let piece = sweep
                    .pieces
                    .iter()
                    .find(|it| it.body == body && it.from <= s && s <= it.to)
                    .expect("every body has a piece at every s");
                for corner in corners {
                    let dot = [corner, corner, corner];
                    let out = distance(&piece.hull, &dot);
                    prop_assert!(out <= piece.bulge + 1e-9, "{name} {body:?} at {s}: {out}");
                }
            }
        }
    }
}

#[test]
fn sweep_and_reach_agree() {
    for (name, card, door) in every_kind() {
        let motion = motion(&card, "A", &door).expect(name);
        let sweep = Sweep::of(&motion, &door);
        // Arms have a width in the sweep and none in the reach.
        let tops = |arms: bool| {
            sweep
                .pieces
                .iter()
                .filter(move |it| arms || !matches!(it.body, BodyId::Arm(_)))
                .flat_map(|it| it.hull.iter().map(|corner| (corner.y, it.bulge)))
        };
        let low = tops(false)
            .map(|top| top.0)
            .fold(f64::NEG_INFINITY, f64::max);
        let high = tops(true)
            .map(|top| top.0 + top.1)
            .fold(f64::NEG_INFINITY, f64::max);
        let highest = reach(&motion, &door).highest.value;
        assert!(low <= highest + 1e-6, "{name}: {low} above {highest}");
        assert!(highest <= high + 1e-6, "{name}: {highest} above {high}");
    }
}

#[test]
fn a_block_is_met_where_a_triangle_of_3_4_5_says() {
    // Axis at the front face's height, h = 20 below the top edge and e = 15 behind the front:
    // the corner rises by sqrt(20^2 + 15^2) - 20 = 5.
    let mut door = one_leaf(396.0, 18.0);
    door.handle = None;
    let motion = motion(&flap(20.0, -5.0, 60.0), "A", &door).expect("a motion");
    let sweep = Sweep::of(&motion, &door);
    let above = |gap: f64| block(-50.0, UNDERSIDE + gap, 50.0, UNDERSIDE + 60.0);
    assert_eq!(sweep.approach(&above(5.1), 1e-6, |_| true), None);
    let near = sweep.approach(&above(5.1), 1.0, |_| true).expect("near");
    // On the safe side by no more than the bulge of the furthest corner between two poses.
    let bulge = sweep.pieces.iter().map(|it| it.bulge).fold(0.0, f64::max);
    assert!(bulge < 0.03, "{bulge}");
    assert!(
        (0.1 - bulge - 1e-6..=0.1 + 1e-6).contains(&near.gap),
        "{near:?}"
    );
    let met = sweep.approach(&above(4.9), 1.0, |_| true).expect("met");
    assert_eq!(met.gap, 0.0);
    assert!(sweep.first_above(UNDERSIDE + 4.9).is_some());
    assert!(sweep.first_above(UNDERSIDE + 5.1).is_none());
}
