//! Struts and ropes against published values.

use flapwright_model::lift::Strut;
use flapwright_model::message::{Mm, Word};
use flapwright_motion::drive::{Drive, DriveError, DriveState};
use flapwright_motion::motion::motion;
use proptest::prelude::{ProptestConfig, prop_assert, proptest};

use crate::case::{Case, PAIR};
use crate::common::{every_kind, flap, long_strut, one_leaf, plates, with_strut};

#[test]
fn the_textbook_trapdoor_hangs_on_its_rope() {
    // A trapdoor of 300 N stands 30 degrees above the floor: open by 120 degrees from hanging.
    // A rope from its middle runs down at 20 degrees to the floor, towards the hinge. The book
    // prints a tension of 1500 N; in full it is 300 cos 30 / (2 sin 10) x 2 = 1496.172 N.
    let mut door = one_leaf(1000.0, 0.02);
    door.handle = None;
    let axis_o = door.leaves[0].back_o + 0.01;
    let mut card = flap(0.0, -axis_o, 120.0);
    let (out, up) = (
        500.0 * 30_f64.to_radians().cos(),
        500.0 * 30_f64.to_radians().sin(),
    );
    let rope = (
        1000.0 * 20_f64.to_radians().cos(),
        1000.0 * 20_f64.to_radians().sin(),
    );
    card = with_strut(
        card,
        Strut {
            box_back: -(axis_o + out - rope.0),
            box_down: -(up - rope.1),
            door_down: 500.0,
            door_back: -0.01,
            force: 1.0,
            progression: 1.0,
            stroke: 3000.0,
            extended: 3000.0,
            friction: 0.0,
        },
    );
    let one = DriveState { pieces: 1, ..PAIR };
    let case = Case::new(&card, &door, &plates(&door, 300.0 / 9.806_65), &one);
    let point = case.at(120.0);
    let arm = point.push.strut.expect("a strut").arm / 1000.0;
    let tension = point.lift.likely / arm.abs();
    assert!((tension - 1496.172).abs() < 5e-3, "{tension}");
}

#[test]
fn a_gas_strut_has_the_published_force_over_stroke_and_temperature() {
    // An 8 mm rod at 10 MPa: 502.655 N; 20 cm3 and 100 mm of stroke: 1.33570 times that.
    // At half the stroke an enclosed gas has 502.655 / (1 - 0.502655 x 5 / 20) N.
    let mut door = one_leaf(400.0, 18.0);
    door.handle = None;
    let strut = |box_back: f64| Strut {
        box_down: 300.0,
        box_back,
        door_down: 300.0,
        door_back: 0.0,
        force: 502.655,
        progression: 1.335_70,
        stroke: 100.0,
        extended: 300.0,
        friction: 0.0,
    };
    // Closed, the strut is level: its length is its distance back plus the 2 mm of the door.
    let closed = |length: f64, celsius: f64| {
        let card = with_strut(flap(0.0, -2.0, 0.001), strut(length - 2.0));
        let state = DriveState {
            pieces: 1,
            celsius,
            ..PAIR
        };
        let case = Case::new(&card, &door, &plates(&door, 5.0), &state);
        let found = case.at(0.0).push.strut.expect("a strut");
        assert!((found.length - length).abs() < 1e-9);
        found.force
    };
    assert!((closed(299.0, 20.0) - 502.655 / (1.0 - 0.002_513_27)).abs() < 2e-3);
    assert!((closed(200.001, 20.0) - 671.39).abs() < 1e-2);
    assert!(
        (closed(250.0, 20.0) - 574.900).abs() < 2e-2,
        "{}",
        closed(250.0, 20.0)
    );
    assert!((closed(250.0, 0.0) / closed(250.0, 20.0) - 0.931_78).abs() < 5e-6);
    assert!((closed(250.0, 40.0) / closed(250.0, 20.0) - 1.068_22).abs() < 5e-6);
}

#[test]
fn a_strut_beyond_its_stroke_is_refused_with_the_angle() {
    let door = one_leaf(400.0, 18.0);
    let short = Strut {
        extended: 250.0,
        stroke: 100.0,
        ..long_strut()
    };
    let card = with_strut(flap(12.0, -2.0, 107.0), short);
    let motion = motion(&card, "A", &door).expect("a motion");
    let refused = Drive::new(&card, &card.sizes[0], &door, &motion, &PAIR).expect_err("short");
    assert!(
        matches!(
            refused,
            DriveError::Stretched {
                extended: Mm(250.0),
                ..
            }
        ),
        "{refused:?}"
    );
    let wrong = with_strut(
        flap(0.0, -2.0, 107.0),
        Strut {
            force: f64::NAN,
            ..long_strut()
        },
    );
    let refused = Drive::new(&wrong, &wrong.sizes[0], &door, &motion, &PAIR).expect_err("NaN");
    assert!(
        matches!(
            refused,
            DriveError::Number {
                what: Word("strut-force"),
                ..
            }
        ),
        "{refused:?}"
    );
}

proptest! {
    #![proptest_config(ProptestConfig { failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn the_arm_of_a_strut_is_the_slope_of_its_length(
        s in 0.01_f64..0.99,
        box_down in 60.0_f64..400.0,
        box_back in 20.0_f64..250.0,
    ) {
        let strut = Strut { box_down, box_back, ..long_strut() };
        for (name, card, door) in every_kind() {
            if name == "table of poses" {
                continue;
            }
            let card = with_strut(card, strut);
            let case = Case::new(&card, &door, &plates(&door, 5.0), &PAIR);
            let step = 1e-6;
            let length = |s| case.drive.at(&case.motion, s).strut.map_or(f64::NAN, |at| at.length);
            let slope = (length(s + step) - length(s - step))
                / (2.0 * step * case.motion.end_angle());
            let arm = case.drive.at(&case.motion, s).strut.map_or(f64::NAN, |at| at.arm);
            prop_assert!((arm - slope).abs() < 1e-4, "{}: {} and {}", name, arm, slope);
        }
    }
}
