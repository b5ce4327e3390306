//! Cards and doors full of odd numbers: refused in words or moved, never a panic, never
//! not-a-number.

use flapwright_model::lift::Strut;
use flapwright_model::linkage::Bodies;
use flapwright_model::message::Say as _;
use flapwright_motion::drive::{Drive, DriveState};
use flapwright_motion::dynamics::release;
use flapwright_motion::gravity::{Level, Weights};
use flapwright_motion::motion::motion;
use flapwright_motion::outline::reach;
use flapwright_motion::statics::{Grip, Setup, curves};
use proptest::prelude::{Just, ProptestConfig, Strategy, any, prop_assert, prop_oneof, proptest};

use crate::common::{card, long_strut, one_leaf, pivot, plates, two_leaves, with_strut};

/// Mostly places in a box, at times anything.
fn number() -> impl Strategy<Value = f64> {
    prop_oneof![
        8 => -50.0_f64..400.0,
        1 => Just(0.0),
        1 => prop_oneof![Just(f64::NAN), Just(f64::INFINITY), any::<f64>()],
    ]
}

proptest! {
    #![proptest_config(ProptestConfig { failure_persistence: None, cases: 600, ..ProptestConfig::default() })]

    #[test]
    fn nothing_comes_out_that_is_not_a_number(
        kind in 0..4_u8,
        n in proptest::array::uniform8(number()),
        end in prop_oneof![9 => 1.0_f64..200.0, 1 => number()],
        force in number(),
        kilograms in prop_oneof![9 => 0.1_f64..20.0, 1 => Just(0.0)],
    ) {
        let (one, two) = (pivot(n[0], n[1]), pivot(n[2], n[3]));
        let (three, four) = (pivot(n[4], n[5]), pivot(n[6], n[7]));
        let bodies = match kind {
            0 => Bodies::FixedAxis { axis: one },
            1 => Bodies::Parallel {
                box_pivot: one,
                door_pivot: two,
                second_down: n[4],
                second_back: n[5],
            },
            2 => Bodies::Folding {
                axis: one,
                joint_behind: n[2],
                link_box: three,
                link_below_joint: n[6],
                link_behind: n[7],
            },
            _ => Bodies::TwoArms {
                box_first: one,
                door_first: two,
                box_second: three,
                door_second: four,
            },
        };
        let door = if kind == 2 { two_leaves() } else { one_leaf(396.0, 18.0) };
        let card = with_strut(card(bodies, end), Strut { force, ..long_strut() });
        let motion = match motion(&card, "A", &door) {
            Ok(motion) => motion,
            Err(error) => {
                // A limit that is said is a number, whatever garbage came in.
                for it in error.say().arguments {
                    if let Some((number, _)) = it.value.number() {
                        prop_assert!(!number.is_nan(), "{error:?}");
                    }
                }
                return Ok(());
            }
        };
        let reach = reach(&motion, &door);
        for number in [reach.highest.value, reach.furthest_out.value, reach.lowest_open] {
            prop_assert!(number.is_finite());
        }
        let state = DriveState { pieces: 2, setting: 0.5, celsius: 20.0 };
        let drive = Drive::new(&card, &card.sizes[0], &door, &motion, &state);
        let drive = drive.unwrap_or(Drive::NOTHING);
        let weights = Weights::of(&door, &plates(&door, kilograms));
        let setup =
            Setup { motion: &motion, weights: &weights, drive: &drive, grip: Grip::of(&door) };
        for point in curves(&setup, 40).points {
            prop_assert!(point.balance(Level::High).is_finite(), "{:?}", point);
            if let Some(force) = point.opening_force(Level::Low) {
                prop_assert!(force.is_finite());
            }
        }
        let fall = release(&setup, Level::Likely, 0.7, 0.0);
        for moment in fall.path {
            prop_assert!(moment.speed.is_finite() && moment.time.is_finite(), "{:?}", moment);
        }
    }
}
