//! The two leaves of a folding pair, against plane trigonometry worked by hand.
//!
//! About a joint in the middle of the closed gap g the two edges that lie e before it are
//! sqrt(e² + (g/2)²) from it each, so at an angle p from flat they are g cos(p/2) + 2 e sin(p/2)
//! apart; edges that lie f behind it are g cos(p/2) - 2 f sin(p/2) apart and meet when
//! tan(p/2) = g / (2 f).

use flapwright_motion::leaves::{first_touch, joint_gap};
use flapwright_motion::motion::motion;

use crate::common::*;
use flapwright_model::linkage::Bodies;

/// The angle between the leaves, 0 when flat.
fn folded(motion: &flapwright_motion::motion::Motion, s: f64) -> f64 {
    let leaves = motion.pose(s).leaves;
    leaves[0].1.angle - leaves[1].1.angle
}

fn with_joint(behind: f64) -> flapwright_model::card::Card {
    let mut card = folding();
    if let Bodies::Folding { joint_behind, .. } = &mut card.linkage.bodies {
        *joint_behind = behind;
    }
    card
}

#[test]
fn the_gap_at_the_joint_opens_with_the_angle_between_the_leaves() {
    let door = two_leaves();
    let motion = motion(&with_joint(0.0), "A", &door).expect("it folds");
    for step in 0..=20 {
        let s = f64::from(step) / 20.0;
        let half = folded(&motion, s) / 2.0;
        let expected = 4.0 * half.cos() + 2.0 * 19.0 * half.sin();
        let found = joint_gap(&motion, &door, s).expect("two leaves");
        assert!(
            (found - expected).abs() < 1e-9,
            "at {s}: {found}, {expected}"
        );
    }
    assert_eq!(first_touch(&motion, &door), None);
}

#[test]
fn back_edges_behind_the_joint_meet_when_the_closed_gap_is_used_up() {
    let door = two_leaves();
    let motion = motion(&with_joint(-9.5), "A", &door).expect("it folds");
    let s = first_touch(&motion, &door).expect("9.5 mm of leaf lie behind the joint");
    let angle = folded(&motion, s).to_degrees();
    let expected = 2.0 * (4.0_f64 / 19.0).atan().to_degrees();
    assert!((angle - expected).abs() < 0.01, "{angle}, {expected}");
}

#[test]
fn a_door_of_one_leaf_has_no_joint() {
    let door = one_leaf(396.0, 18.0);
    let motion = motion(&flap(12.0, 4.0, 107.0), "A", &door).expect("it turns");
    assert_eq!(joint_gap(&motion, &door, 0.5), None);
    assert_eq!(first_touch(&motion, &door), None);
}
