//! The check `frame-blocks-fitting`.
//!
//! The plain box is 800 by 600 with panels of 18: reveals of 3 are overlays of 15, its door is 794 by
//! 594.

use crate::common::*;
use crate::findings::*;
use flapwright_model::card::FittedSides;
use flapwright_model::edit::apply;
use flapwright_model::job::Job;
use flapwright_rules::finding::{Severity, Worse};

const FRAME: &str = "frame-blocks-fitting";

/// Stiles that stand in by 12 at the left and 5 at the right.
fn with_frame(sides: FittedSides, packing: f64) -> Job {
    let mut card = card();
    card.sides = sides;
    let mut wall_box = wall_box();
    let mut frame = face_frame(20.0, 40.0, 0.0);
    frame.overhang.left = 12.0;
    frame.overhang.right = 5.0;
    wall_box.frame = Some(frame);
    let mut job = job(wall_box, card);
    let fitting = the_job_door(&mut job, 0).fitting.as_mut();
    fitting.expect("a fitting").packing = packing;
    job
}

#[test]
fn a_stile_before_the_fitting_is_told_by_side_and_by_what_the_packing_leaves() {
    for (sides, packing, said) in [
        (FittedSides::Both, 0.0, Some(("left; right", 12.0))),
        (FittedSides::Both, 2.5, Some(("left; right", 9.5))),
        (FittedSides::Both, 5.0, Some(("left", 7.0))),
        (FittedSides::Both, 11.9, Some(("left", 0.1))),
        (FittedSides::Both, 12.0, None),
        (FittedSides::RightOnly, 0.0, Some(("right", 5.0))),
        (FittedSides::RightOnly, 5.0, None),
        (FittedSides::LeftOnly, 5.0, Some(("left", 7.0))),
    ] {
        let all = found(&with_frame(sides, packing), FRAME);
        let Some((at, before)) = said else {
            assert_eq!(all, []);
            continue;
        };
        assert_eq!(all.len(), 1);
        assert_eq!(
            all[0].message,
            format!(
                "frame-blocks-fitting.in-front: sides [{at}], frame_before_the_fitting {before} mm"
            )
        );
        assert_eq!(all[0].severity, Severity::Caution);
        assert_eq!(all[0].subjects, [FIRST_DOOR]);
        assert_numbers(
            &all[0],
            &[("frame_before_the_fitting", before, "mm", Worse::Either)],
        );
    }
}

#[test]
fn packing_out_to_the_deeper_stile_clears_both_and_is_undone() {
    let mut job = with_frame(FittedSides::Both, 2.5);
    let before = job.clone();
    let remedy = the_only(&job, FRAME).remedies.remove(0);
    assert_eq!(remedy.kind, "remedy.pack-out");
    assert_eq!(
        remedy.effects,
        "effect.packing: was 2.5 mm, is 12 mm; effect.bores-move-in: by 9.5 mm"
    );
    assert!(!remedy.safe, "it moves bores");
    let undo = apply(&mut job, remedy.edit).expect("a sound job");
    let fitting = the_job_door(&mut job, 0).fitting.as_ref();
    assert_close(fitting.expect("a fitting").packing, 12.0);
    assert_eq!(found(&job, FRAME), []);
    apply(&mut job, undo).expect("undone");
    assert_eq!(job, before);
}
