//! The check `linkage-cannot-close`.
//!
//! Limits are the settings' defaults: common practice, no source.
//!
//! The plain box is 800 by 600 with panels of 18: reveals of 3 are overlays of 15, its door is 794 by
//! 594.

use crate::common::*;
use crate::findings::*;
use flapwright_model::door::Leaves;
use flapwright_model::edges::Edges;
use flapwright_model::edit::apply;
use flapwright_model::linkage::Bodies;
use flapwright_rules::finding::Severity;

#[test]
fn a_door_of_two_leaves_on_a_flap_fitting_gets_a_remedy() {
    let mut job = job(wall_box(), card());
    the_job_door(&mut job, 0).leaves = Leaves::Two {
        upper: leaf(19.0),
        lower: leaf(19.0),
        joint_down: 280.0,
        joint_gap: 3.0,
    };
    let found = found(&job, "linkage-cannot-close");
    assert_eq!(found[0].severity, Severity::Stop);
    apply(&mut job, found[0].remedies[0].edit.clone()).unwrap();
    assert_eq!(severities(&job, "linkage-cannot-close"), []);
}

const LINKAGE: &str = "linkage-cannot-close";

#[test]
fn a_door_of_one_leaf_on_a_folding_pair_is_halved() {
    // Its top edge at 600 - 23 = 577, its bottom edge at 3: middle at 290, 292 below 582.
    let mut wall_box = wall_box();
    wall_box.body.door = Some(door(Edges {
        top: 23.0,
        ..Edges::all(3.0)
    }));
    let mut job = job(wall_box, folding_card(4.0));
    let before = job.clone();
    let it = the_only(&job, LINKAGE);
    assert_eq!(
        it.message,
        "linkage-cannot-close.no-motion: why (no-motion.leaf-count: kind folding-pair, needed 2, found 1)"
    );
    assert_eq!(it.severity, Severity::Stop);
    assert_eq!(it.subjects, [FIRST_DOOR]);
    let remedy = &it.remedies[0];
    assert_eq!(remedy.kind, "remedy.two-leaves");
    assert_eq!(
        remedy.effects,
        "effect.leaves-alike: joint 292 mm, gap 3 mm"
    );
    assert!(!remedy.safe);
    let undo = apply(&mut job, remedy.edit.clone()).expect("a sound job");
    let Leaves::Two {
        upper,
        lower,
        joint_down,
        joint_gap,
    } = &the_job_door(&mut job, 0).leaves
    else {
        panic!("two leaves")
    };
    assert_eq!((upper, lower), (&leaf(19.0), &leaf(19.0)));
    assert_close(*joint_down, 292.0);
    assert_close(*joint_gap, 3.0);
    assert_eq!(found(&job, LINKAGE), []);
    apply(&mut job, undo).expect("undone");
    assert_eq!(job, before);
}

#[test]
fn a_door_of_two_leaves_on_a_flap_becomes_one_like_the_upper_leaf() {
    let mut job = job(wall_box(), card());
    the_job_door(&mut job, 0).leaves = Leaves::Two {
        upper: leaf(22.0),
        lower: leaf(16.0),
        joint_down: 280.0,
        joint_gap: 3.0,
    };
    let it = the_only(&job, LINKAGE);
    assert_eq!(
        it.message,
        "linkage-cannot-close.no-motion: why (no-motion.leaf-count: kind top-hinged-flap, needed 1, found 2)"
    );
    let remedy = &it.remedies[0];
    assert_eq!(remedy.kind, "remedy.one-leaf");
    assert_eq!(remedy.effects, "effect.leaf-like-upper");
    assert!(!remedy.safe);
    apply(&mut job, remedy.edit.clone()).expect("a sound job");
    assert_eq!(the_job_door(&mut job, 0).leaves, Leaves::One(leaf(22.0)));
}

#[test]
fn links_that_do_not_reach_are_a_stop_that_no_other_leaves_clear() {
    // The link is hinged 100 below the joint and hypot(185, 54) = 193 long: together they reach
    // 293. The joint goes from 275 below to about as much before the axis, and there it is more
    // than 400 from the link's place in the box, 190 below and 83 behind.
    let mut card = folding_card(4.0);
    if let Bodies::Folding {
        link_below_joint, ..
    } = &mut card.linkage.bodies
    {
        *link_below_joint = 100.0;
    }
    let mut wall_box = wall_box();
    wall_box.body.door.as_mut().expect("a door").leaves = Leaves::Two {
        upper: leaf(19.0),
        lower: leaf(19.0),
        joint_down: 275.0,
        joint_gap: 3.0,
    };
    let it = the_only(&job(wall_box, card), LINKAGE);
    assert!(
        it.message
            .contains("no-motion.cannot-close: link guiding-link, at "),
        "{}",
        it.message
    );
    assert_eq!(it.remedies, []);
}
