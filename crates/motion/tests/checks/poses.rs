//! Poses of every opening kind against closed forms and published values.

use crate::common::{
    card, every_kind, folding, one_leaf, over_the_top, parallel, pivot, two_leaves,
};
use flapwright_model::card::OpeningKind;
use flapwright_model::linkage::{Bodies, FlapPose};
use flapwright_model::message::{AsTyped, Count, Degrees, Mm, Word};
use flapwright_model::part::LeafId;
use flapwright_model::space::{SectionPoint, SectionVector};
use flapwright_motion::motion::{Pose, motion};
use flapwright_motion::{MotionError, WhichNumber};

const STEPS: u16 = 400;

fn shares() -> impl Iterator<Item = f64> {
    (0..=STEPS).map(|step| f64::from(step) / f64::from(STEPS))
}

fn direction(from: SectionPoint, to: SectionPoint) -> f64 {
    let along = to - from;
    along.y.atan2(along.x).to_degrees()
}

#[test]
fn every_kind_starts_closed() {
    for (name, card, door) in every_kind() {
        let motion = motion(&card, "A", &door).expect(name);
        for (leaf, pose) in motion.pose(0.0).leaves {
            assert!(pose.angle.abs() < 1e-9, "{name} {leaf:?}: {pose:?}");
            assert!(pose.shift.length() < 1e-9, "{name} {leaf:?}: {pose:?}");
        }
    }
}

#[test]
fn every_kind_ends_at_its_end_angle_and_s_is_clamped() {
    for (name, card, door) in every_kind() {
        let motion = motion(&card, "A", &door).expect(name);
        let end = card.linkage.end_degrees.to_radians();
        assert!((motion.end_angle() - end).abs() < 1e-12);
        assert_eq!(motion.pose(7.0), motion.pose(1.0), "{name}");
        assert_eq!(motion.pose(-1.0), motion.pose(0.0), "{name}");
        assert_eq!(motion.pose(f64::NAN), motion.pose(0.0), "{name}");
    }
}

#[test]
fn no_link_changes_its_length_and_no_body_jumps() {
    for (name, card, door) in every_kind() {
        let motion = motion(&card, "A", &door).expect(name);
        let closed = motion.pose(0.0);
        let mut before = closed.clone();
        for s in shares() {
            let now = motion.pose(s);
            for (arm, start) in now.arms.iter().zip(&closed.arms) {
                let change = (arm.1 - arm.0).length() - (start.1 - start.0).length();
                assert!(
                    change.abs() < 1e-9,
                    "{name} at {s}: an arm is {change} mm longer"
                );
            }
            for ((leaf, pose), (_, last)) in now.leaves.iter().zip(&before.leaves) {
                // No leaf turns more than 6 times as fast as the input in these doors.
                let turn = (pose.angle - last.angle).abs();
                let limit = 6.0 * motion.end_angle() / f64::from(STEPS);
                assert!(turn <= limit, "{name} {leaf:?} at {s}: turned by {turn}");
            }
            before = now;
        }
    }
}

#[test]
fn the_arms_stay_joined_to_the_door() {
    for (name, card, door) in every_kind() {
        let motion = motion(&card, "A", &door).expect(name);
        let closed = motion.pose(0.0);
        for s in shares() {
            let now = motion.pose(s);
            let (_, carrier) = now.leaves.last().expect("a leaf");
            for (arm, start) in now.arms.iter().zip(&closed.arms) {
                let apart = (carrier.apply(start.1) - arm.1).length();
                assert!(apart < 1e-9, "{name} at {s}: {apart} mm apart");
            }
        }
    }
}

#[test]
fn the_rate_is_the_slope_of_the_pose() {
    for (name, card, door) in every_kind() {
        let motion = motion(&card, "A", &door).expect(name);
        let corner = SectionPoint::new(20.0, 310.0);
        let step = 1e-6;
        for s in (1..77).map(|step| 0.013 * f64::from(step)) {
            let (low, high) = (motion.pose(s - step), motion.pose(s + step));
            let input = high.input - low.input;
            for ((leaf, rate), (_, pose)) in motion.velocity(s).iter().zip(motion.pose(s).leaves) {
                let end = high.leaf(*leaf).expect("leaf");
                let start = low.leaf(*leaf).expect("leaf");
                let turn = (end.angle - start.angle) / input;
                let path: SectionVector = (end.apply(corner) - start.apply(corner)) / input;
                let off = (rate.of_point(&pose, corner) - path).length();
                assert!(
                    (rate.turn - turn).abs() < 1e-6,
                    "{name} {leaf:?} at {s}: turn {turn}"
                );
                assert!(
                    off < 1e-4,
                    "{name} {leaf:?} at {s}: off by {off} mm per radian"
                );
            }
        }
    }
}

#[test]
fn a_parallel_rising_door_stays_upright_and_its_arms_stay_parallel() {
    let motion = motion(&parallel(), "A", &one_leaf(396.0, 18.0)).expect("a motion");
    for s in shares() {
        let pose = motion.pose(s);
        let (_, door) = pose.leaves[0];
        assert!(door.angle.abs() < 1e-9);
        let [first, second] = [pose.arms[0], pose.arms[1]];
        let across = (first.1 - first.0).cross(second.1 - second.0);
        assert!(across.abs() < 1e-9);
        // An arm of 260 mm that starts 40 degrees below level: its end is at
        // 260 (cos(q - 40 degrees), sin(q - 40 degrees)).
        let angle = 95_f64.to_radians() * s - 40_f64.to_radians();
        let expected = SectionVector::new(angle.cos(), angle.sin()) * 260.0;
        assert!((first.1 - first.0 - expected).length() < 1e-9);
    }
}

#[test]
fn a_flap_turns_its_lower_edge_out_and_then_up() {
    let axis = SectionPoint::new(0.0, 0.0);
    let hanging = SectionPoint::new(0.0, -400.0);
    let quarter = Pose::about(axis, 90_f64.to_radians()).apply(hanging);
    assert!((quarter - SectionPoint::new(400.0, 0.0)).length() < 1e-9);
    let half = Pose::about(axis, 180_f64.to_radians()).apply(hanging);
    assert!((half - SectionPoint::new(0.0, 400.0)).length() < 1e-9);
}

#[test]
fn a_table_of_poses_passes_through_its_rows() {
    let motion =
        motion(&crate::common::linked_flap(), "A", &one_leaf(396.0, 18.0)).expect("a motion");
    // The reference of the test's card: 15 above the underside, 2 before the front.
    let reference = SectionPoint::new(2.0, crate::common::UNDERSIDE + 15.0);
    for (degrees, out, up) in [(0.0, 0.0, 0.0), (45.0, 9.0, -6.0)] {
        let pose = motion.pose(degrees / 107.0);
        let moved = pose.leaves[0].1.apply(reference) - reference;
        assert!(
            (moved - SectionVector::new(out, up)).length() < 1e-9,
            "{degrees}: {moved:?}"
        );
        assert!((pose.leaves[0].1.angle.to_degrees() - degrees).abs() < 1e-9);
    }
}

#[test]
fn poses_taken_from_a_fixed_axis_turn_about_it() {
    // A point r below its axis goes out by r sin q and up by r (1 - cos q).
    let r = 100.0;
    let poses = (0..=22_u8)
        .map(|row| {
            let degrees = f64::from(row) * 5.0;
            let (sin, cos) = degrees.to_radians().sin_cos();
            FlapPose {
                degrees,
                out: r * sin,
                up: r * (1.0 - cos),
            }
        })
        .collect();
    let table = Bodies::PoseTable {
        reference: pivot(r, 0.0),
        poses,
    };
    let door = one_leaf(396.0, 18.0);
    let table = motion(&card(table, 107.0), "A", &door).expect("a table");
    let axis = Bodies::FixedAxis {
        axis: pivot(0.0, 0.0),
    };
    let axis = motion(&card(axis, 107.0), "A", &door).expect("an axis");
    let corner = SectionPoint::new(20.0, 310.0);
    for step in 0..=214_u8 {
        let s = f64::from(step) / 214.0;
        let (a, b) = (table.pose(s).leaves[0].1, axis.pose(s).leaves[0].1);
        let off = (a.apply(corner) - b.apply(corner)).length();
        assert!(off < 0.01, "s {s}: {off} mm apart");
    }
}

/// A crank of 40, a coupler of 120, a rocker of 80 on a ground line of 100 that lies level, the
/// crank at 30 degrees when closed: there the coupler is at 22.4090 degrees.
fn textbook() -> Bodies {
    let crank = SectionVector::new(30_f64.to_radians().cos(), 30_f64.to_radians().sin()) * 40.0;
    let lean = 22.4090_f64.to_radians();
    let coupler = SectionVector::new(lean.cos(), lean.sin()) * 120.0;
    let (out, up) = (crank.x + coupler.x, crank.y + coupler.y);
    Bodies::TwoArms {
        box_first: pivot(300.0, 200.0),
        door_first: pivot(300.0 - crank.y, 200.0 - crank.x),
        box_second: pivot(300.0, 100.0),
        door_second: pivot(300.0 - up, 200.0 - out),
    }
}

#[test]
fn the_textbook_four_bar_has_the_published_angles_and_speeds() {
    let motion = motion(
        &crate::common::card(textbook(), 90.0),
        "A",
        &one_leaf(396.0, 18.0),
    )
    .expect("a motion");
    let closed = motion.pose(0.0);
    // Crank, coupler and rocker angle; rocker speed per crank speed. Four-bar 40/120/80/100, open
    // branch, of the check values; at 40 degrees it is example 4-1 of a textbook on machinery.
    for (crank, coupler, rocker, speed) in [
        (30.0, 22.4090, 55.2678, Some(0.121_736)),
        (40.0, 20.2979, 57.3249, None),
        (60.0, 18.3760, 64.9435, Some(0.457_349)),
        (90.0, 18.8879, 80.2569, Some(0.538_981)),
        (120.0, 21.9643, 96.2504, Some(0.514_312)),
    ] {
        let s = (crank - 30.0) / 90.0;
        let pose = motion.pose(s);
        let [first, second] = [pose.arms[0], pose.arms[1]];
        assert!((direction(first.0, first.1) - crank).abs() < 1e-9);
        assert!(
            (direction(first.1, second.1) - coupler).abs() < 2e-4,
            "coupler at {crank}"
        );
        assert!(
            (direction(second.0, second.1) - rocker).abs() < 2e-4,
            "rocker at {crank}"
        );
        let turned = pose.leaves[0].1.angle.to_degrees();
        assert!(
            (turned - (coupler - 22.4090)).abs() < 2e-4,
            "door at {crank}: {turned}"
        );
        if let Some(speed) = speed {
            let rate = motion.velocity(s)[0].1;
            let path = rate.of_point(&pose.leaves[0].1, closed.arms[1].1);
            let found = (second.1 - second.0).cross(path) / (80.0 * 80.0);
            assert!((found - speed).abs() < 1e-5, "speed at {crank}: {found}");
        }
    }
}

#[test]
fn the_lower_leaf_of_a_folding_pair_folds_towards_the_box() {
    let door = two_leaves();
    let motion = motion(&folding(), "A", &door).expect("a motion");
    let open = motion.pose(1.0);
    let upper = open.leaf(LeafId::Upper).expect("upper leaf");
    let lower = open.leaf(LeafId::Lower).expect("lower leaf");
    assert!((upper.angle.to_degrees() - 100.0).abs() < 1e-9);
    assert!(
        lower.angle < 0.0,
        "lower leaf turned by {} degrees",
        lower.angle.to_degrees()
    );
    // Both leaves agree on where the joint is.
    let joint = SectionPoint::new(2.0, door.joint_y.expect("a joint"));
    for s in shares() {
        let pose = motion.pose(s);
        let [upper, lower] = [pose.leaves[0].1, pose.leaves[1].1];
        assert!((upper.apply(joint) - lower.apply(joint)).length() < 1e-9);
    }
}

#[test]
fn an_over_the_top_door_goes_out_and_up_and_then_back_over_the_box() {
    let motion = motion(&over_the_top(), "A", &one_leaf(396.0, 18.0)).expect("a motion");
    let middle = SectionPoint::new(11.0, 502.0);
    let at = |s: f64| motion.pose(s).leaves[0].1.apply(middle);
    assert!(
        at(0.2).x > middle.x && at(0.2).y > middle.y,
        "{:?}",
        at(0.2)
    );
    assert!(at(1.0).y > 700.0, "{:?}", at(1.0));
    assert!(at(1.0).x < at(0.5).x, "{:?} {:?}", at(1.0), at(0.5));
}

#[test]
fn a_linkage_that_cannot_close_names_the_link_and_the_angle() {
    // Crank 100 from (-200, 400) starting level; rocker pivot 150 straight out from the crank's
    // axis; coupler 200, rocker 150. D^2 = 150^2 + 100^2 - 2 150 100 cos q reaches
    // (200 - 150)^2 = 2500 at cos q = 1 and (200 + 150)^2 never: it can always close from
    // D = 50 on. With a coupler of 60 and a rocker of 100 it fails where D = 160:
    // cos q = (32500 - 25600) / 30000 = 0.23.
    let (axis, pin) = (pivot(300.0, 200.0), SectionPoint::new(-100.0, 400.0));
    // Two circles about (-100, 400) with 60 and about (-50, 400) with 100.
    let along = (60.0_f64 * 60.0 - 100.0 * 100.0 + 50.0 * 50.0) / 100.0;
    let height = (3600.0 - along * along).sqrt();
    let joined = SectionPoint::new(pin.x + along, pin.y + height);
    let bodies = Bodies::TwoArms {
        box_first: axis,
        door_first: pivot(300.0, 100.0),
        box_second: pivot(300.0, 50.0),
        door_second: pivot(700.0 - joined.y, -joined.x),
    };
    let door = one_leaf(396.0, 18.0);
    let limit = 0.23_f64.acos().to_degrees();
    let failed =
        motion(&crate::common::card(bodies.clone(), 100.0), "A", &door).expect_err("too far");
    let MotionError::CannotClose {
        link,
        at: Degrees(degrees),
    } = failed
    else {
        panic!("{failed:?}")
    };
    assert_eq!(link, Word("second-arm"));
    assert!(
        (degrees - limit).abs() < 1e-9,
        "{degrees} instead of {limit}"
    );
    motion(&crate::common::card(bodies, limit - 0.01), "A", &door)
        .expect("closes before that angle");
}

#[test]
fn wrong_cards_are_refused_by_what_is_wrong() {
    let door = one_leaf(396.0, 18.0);
    let refuse = |bodies: Bodies, end: f64| {
        motion(&crate::common::card(bodies, end), "A", &door).expect_err("a wrong card")
    };
    let flap = || Bodies::FixedAxis {
        axis: pivot(10.0, 5.0),
    };
    let zero = refuse(flap(), 0.0);
    assert!(
        matches!(zero, MotionError::EndAngle { angle: AsTyped(it), .. } if it == 0.0),
        "{zero:?}"
    );
    let name = Word("end-angle");
    assert_eq!(
        refuse(flap(), f64::NAN),
        MotionError::NotFinite {
            number: WhichNumber::Named { name }
        }
    );
    let axis = pivot(0.0, f64::NAN);
    assert_eq!(
        refuse(Bodies::FixedAxis { axis }, 90.0),
        MotionError::NotFinite {
            number: WhichNumber::OfPivot {
                pivot: Word("axis-of-flap"),
                way: Word("way-back"),
            }
        }
    );
    let arm = |box_pivot, door_pivot| Bodies::Parallel {
        box_pivot,
        door_pivot,
        second_down: 50.0,
        second_back: 0.0,
    };
    let arm_of_nothing = refuse(arm(pivot(50.0, 50.0), pivot(50.0, 50.0)), 90.0);
    assert_eq!(
        arm_of_nothing,
        MotionError::NoLength {
            arm: Word("first-arm")
        }
    );
    let in_panel = refuse(arm(pivot(-5.0, 50.0), pivot(50.0, 0.0)), 90.0);
    assert!(
        matches!(in_panel, MotionError::PivotInPanel { above: Mm(it), .. } if (it - 5.0).abs() < 1e-9),
        "{in_panel:?}"
    );
    let empty = Bodies::PoseTable {
        reference: pivot(0.0, 0.0),
        poses: Vec::new(),
    };
    assert_eq!(refuse(empty, 90.0), MotionError::PosesMissing);
    let pair = motion(&folding(), "A", &door).expect_err("one leaf");
    assert_eq!(
        pair,
        MotionError::LeafCount {
            kind: Word("folding-pair"),
            needed: Count(2),
            found: Count(1),
        }
    );
    let unknown = motion(&folding(), "Z", &two_leaves()).expect_err("no such size");
    assert_eq!(
        unknown,
        MotionError::UnknownSize {
            size: "Z".to_owned()
        }
    );
    let mut mixed = folding();
    mixed.kind = OpeningKind::TopHingedFlap;
    assert_eq!(
        motion(&mixed, "A", &two_leaves()).expect_err("mixed"),
        MotionError::KindAndBodies {
            kind: Word("top-hinged-flap"),
            bodies: Word("folding-pair"),
        }
    );
}

#[test]
fn parallel_arms_may_not_come_into_line_with_their_pivots() {
    // Arms straight out, second arm 30 below and 30 in front of the first: the line through the
    // pivots points 45 degrees down, so the arms, turning up, meet its other end at 135 degrees;
    // with the second arm behind instead it points 45 degrees up into the way.
    let arm = |second_back| Bodies::Parallel {
        box_pivot: pivot(200.0, 200.0),
        door_pivot: pivot(200.0, 10.0),
        second_down: 30.0,
        second_back,
    };
    let door = one_leaf(396.0, 18.0);
    assert!(motion(&card(arm(-30.0), 60.0), "A", &door).is_ok());
    assert!(motion(&card(arm(30.0), 44.0), "A", &door).is_ok());
    let refused = motion(&card(arm(30.0), 60.0), "A", &door).expect_err("in line");
    assert!(
        matches!(refused, MotionError::ArmsInLine { at: Degrees(it) } if (it - 45.0).abs() < 1e-9),
        "{refused:?}"
    );
}
