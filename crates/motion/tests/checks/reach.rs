//! How far a moving door comes, against closed forms.

use crate::common::{UNDERSIDE, every_kind, flap, one_leaf};
use flapwright_motion::motion::motion;
use flapwright_motion::outline::{BodyId, arm_outlines, outline_at, reach};

#[test]
fn the_top_edge_of_a_flap_rises_by_the_reveal_it_needs() {
    // Axis h = 20 below the top edge and e = 15 behind the front face: sqrt(h^2 + e^2) - h = 5.
    let mut door = one_leaf(396.0, 18.0);
    door.handle = None;
    let motion = motion(&flap(20.0, -5.0, 60.0), "A", &door).expect("a motion");
    let reach = reach(&motion, &door);
    assert!((reach.top_rise - 5.0).abs() < 1e-6, "{reach:?}");
    assert!((reach.highest.value - (UNDERSIDE + 5.0)).abs() < 1e-6);
    // It is highest when the corner is straight above the axis: tan q = 15 / 20.
    let angle = reach.highest.s * 60.0;
    assert!(
        (angle - (0.75_f64).atan().to_degrees()).abs() < 1e-2,
        "{angle}"
    );
}

#[test]
fn a_flap_about_its_top_inner_edge_sweeps_the_published_radius() {
    let mut door = one_leaf(396.0, 18.0);
    door.handle = None;
    let motion = motion(&flap(0.0, -2.0, 90.0), "A", &door).expect("a motion");
    let reach = reach(&motion, &door);
    // Check values: swept radius 396.409, the outer top corner 18 above the axis at 90 degrees.
    assert!(
        (reach.furthest_out.value - 2.0 - 396.409).abs() < 5e-4,
        "{reach:?}"
    );
    assert!((reach.top_rise - 18.0).abs() < 1e-6, "{reach:?}");
    assert!((reach.lowest_open - UNDERSIDE).abs() < 1e-9, "{reach:?}");
}

#[test]
fn no_corner_ever_leaves_the_reach() {
    for (name, card, door) in every_kind() {
        let motion = motion(&card, "A", &door).expect(name);
        let reach = reach(&motion, &door);
        for step in 0..=2000_u16 {
            let s = f64::from(step) / 2000.0;
            for (body, corners) in outline_at(&motion, &door, s) {
                for corner in corners {
                    let over = (corner.y - reach.highest.value)
                        .max(corner.x - reach.furthest_out.value)
                        .max(reach.furthest_in.value - corner.x);
                    assert!(over < 1e-5, "{name} {body:?} at {s}: {over} mm outside");
                }
            }
        }
    }
}

#[test]
fn outlines_are_rectangles_of_unchanged_area_that_run_counter_clockwise() {
    for (name, card, door) in every_kind() {
        let motion = motion(&card, "A", &door).expect(name);
        let area = |corners: &[flapwright_model::space::SectionPoint]| {
            let next = corners.iter().cycle().skip(1);
            corners
                .iter()
                .zip(next)
                .map(|(a, b)| a.x * b.y - b.x * a.y)
                .sum::<f64>()
                / 2.0
        };
        let closed = outline_at(&motion, &door, 0.0);
        assert_eq!(
            closed.len(),
            door.leaves.len() + 1,
            "{name}: leaves and a handle"
        );
        for ((body, start), (_, end)) in closed.iter().zip(outline_at(&motion, &door, 0.7)) {
            assert!(area(start) > 0.0, "{name} {body:?}");
            assert!((area(start) - area(&end)).abs() < 1e-6, "{name} {body:?}");
        }
        let arms = arm_outlines(&motion, 0.4, 5.0);
        for ((body, corners), arm) in arms.iter().zip(motion.pose(0.4).arms) {
            assert!(matches!(body, BodyId::Arm(_)));
            let length = (arm.1 - arm.0).length();
            assert!(
                (area(corners) - 10.0 * length).abs() < 1e-6,
                "{name} {body:?}"
            );
        }
    }
}
