//! The check `box-too-shallow`.
//!
//! All limits are those of the invented test card; what is expected is worked out beside each.
//!
//! The plain box's weighed door of 6 kg has its middle 278 mm below and 13.5 mm before its axis: its
//! lift moment is 58.8399 N times (0.278 sin q + 0.0135 cos q) m, the weight of 6 kg at standard
//! gravity.

use crate::common::*;
use crate::findings::*;
use flapwright_model::card::{BackFrom, PerSize};
use flapwright_model::door::DoorFit;
use flapwright_model::edges::Edges;
use flapwright_model::edit::apply;
use flapwright_rules::finding::Worse;

/// 330 deep over all with a back of 8 laid on: 322 clear; behind an inset door of 19 it is 303.
#[test]
fn a_box_is_as_deep_as_its_fitting_needs() {
    for (least, body, inset, expected) in [
        (322.0, 322.0, false, vec![]),
        (322.1, 100.0, false, vec![322.1]),
        (100.0, 322.1, false, vec![322.1]),
        (322.2, 322.1, false, vec![322.2]),
        (303.0, 303.0, true, vec![]),
        (303.1, 100.0, true, vec![303.1]),
    ] {
        let mut card = card();
        card.sizes[0].least_inner_depth = least;
        card.envelope.back_to = PerSize::All(body);
        let mut job = job(wall_box(), card);
        if inset {
            the_job_door(&mut job, 0).fit = DoorFit::Inset {
                gaps: Edges::all(2.0),
                set_back: 0.0,
            };
        }
        let needed: Vec<f64> = found(&job, "box-too-shallow")
            .iter()
            .map(|it| it.numbers[1].value)
            .collect();
        assert_eq!(needed, expected, "{least}, {body}");
    }
}

#[test]
fn a_shorter_size_clears_a_shallow_box() {
    let mut card = card();
    let mut short = card.sizes[0].clone();
    short.name = "0".to_owned();
    card.sizes[0].least_inner_depth = 400.0;
    card.sizes.push(short);
    let mut job = job(wall_box(), card);
    let before = job.clone();
    let remedies = found(&job, "box-too-shallow")[0].remedies.clone();
    assert_eq!(remedies.len(), 1);
    assert!(remedies[0].safe, "{}", remedies[0].kind);
    let undo = apply(&mut job, remedies[0].edit.clone()).expect("a sound job");
    assert!(found(&job, "box-too-shallow").is_empty());
    apply(&mut job, undo).expect("undone");
    assert_eq!(job, before);
}

#[test]
fn the_depth_that_lacks_most_is_the_one_that_is_told() {
    // 322 behind the sides; a face frame of 20 stands before them: 342 behind its front.
    let with = |least: f64, body: f64| {
        let mut card = card();
        card.linkage.front = BackFrom::FrameFront;
        card.sizes[0].least_inner_depth = least;
        card.envelope.front = BackFrom::SideFront;
        card.envelope.back_to = PerSize::All(body);
        let mut wall_box = wall_box();
        wall_box.frame = Some(face_frame(20.0, 30.0, 0.0));
        found(&job(wall_box, card), "box-too-shallow")
    };
    assert_eq!(with(342.0, 322.0), []);
    for (least, body, there, needed, said) in [
        (
            344.0,
            327.0,
            322.0,
            327.0,
            "under 5 mm, clear_depth 322 mm, least_clear_depth 327 mm",
        ),
        (
            347.0,
            324.0,
            342.0,
            347.0,
            "under 5 mm, clear_depth 342 mm, least_clear_depth 347 mm",
        ),
    ] {
        let found = with(least, body);
        assert_eq!(found.len(), 1);
        assert!(found[0].message.ends_with(said), "{}", found[0].message);
        assert_numbers(
            &found[0],
            &[
                ("clear_depth", there, "mm", Worse::Smaller),
                ("least_clear_depth", needed, "mm", Worse::Greater),
            ],
        );
        assert_eq!(found[0].subjects, [FIRST_DOOR]);
    }
}
