//! The check `top-edge-hits-panel`.
//!
//! The test card's axis is 4 below the underside of the top and 2 behind the side fronts. The
//! door's top edge is at 597 (600 less the reveal of 3), its back 2 and its front 21 before the
//! sides; the underside is at 582, so the axis is at 578: h = 19 below the top edge, e = 23 behind
//! the front. The top front corner rises by sqrt(19^2 + 23^2) - 19 = 29.8329 - 19 = 10.8329.
//!
//! The test card's axis is 4 below the underside of the top and 2 behind the side fronts, at 578
//! above the box's own underside; boxes hang at 1500. The door's back is 4 and its front 23 before
//! the axis, its top edge 19 above and its bottom edge 575 below it. Depth counts from the wall: the
//! side fronts are at 330, the axis at 328.

use crate::common::*;
use crate::findings::*;
use crate::worked::{flap, inset_flap};
use flapwright_model::card::{BackFrom, PerSize};
use flapwright_model::door::DoorFit;
use flapwright_model::edges::Edges;
use flapwright_model::edit::apply;
use flapwright_model::linkage::{Bodies, Pivot};
use flapwright_rules::finding::Severity;

#[test]
fn the_top_edge_of_an_inset_flap_needs_the_gap_that_it_swings_through() {
    const NAME: &str = "top-edge-hits-panel";
    assert_eq!(found(&inset_flap(1.1), NAME), []);
    let tight = inset_flap(0.9);
    let findings = found(&tight, NAME);
    assert_eq!(findings.len(), 1, "{findings:?}");
    assert_eq!(findings[0].severity, Severity::Stop);
    let rise = findings[0].numbers[0].value;
    assert!((rise - 1.0).abs() < 1e-6, "{rise}");
    // 1 for the rise and 2 for the least clearance.
    let remedy = &findings[0].remedies[0];
    assert!(remedy.kind.ends_with("3 mm"), "{}", remedy.kind);
    let mut job = tight.clone();
    let undo = apply(&mut job, remedy.edit.clone()).expect("the remedy fits");
    assert_eq!(severities(&job, NAME), []);
    apply(&mut job, undo).expect("the undo fits");
    assert_eq!(job, tight);
}

#[test]
fn an_inset_flap_in_a_face_frame_swings_up_to_the_rail_that_is_above_it() {
    // The rail hangs 12 below the underside at 582: its own is at 570. The axis is 40 below the
    // door's top edge and 9 behind its front: the front top corner is 41 from it (9, 40, 41 is a
    // Pythagorean triple) and rises by 1. The panel itself is 12 further up.
    let with = |gap: f64| {
        let mut job = flap(100.0, 0.0, 1500.0);
        job.settings.weights.remove("top-edge-hits-panel");
        let mut frame = face_frame(20.0, 40.0, 0.0);
        frame.overhang.top = 12.0;
        job.boxes[0].frame = Some(frame);
        let it = the_job_door(&mut job, 0);
        it.fit = DoorFit::Inset {
            gaps: Edges {
                top: gap,
                ..Edges::all(3.0)
            },
            set_back: 0.0,
        };
        // The door's front is level with the frame's, 20 before the sides; what is counted from the
        // frame's front counts from 19 behind that.
        job.cards[0].card.linkage.front = BackFrom::FrameFront;
        job.cards[0].card.linkage.bodies = Bodies::FixedAxis {
            axis: Pivot {
                down: PerSize::All(12.0 + gap + 40.0),
                back: PerSize::All(-10.0),
            },
        };
        let report = inspect(&job);
        let door = the_door(&report.boxes[0], 0);
        let axis = door.axis.expect("the flap turns about an axis");
        assert_close(door.edges.top - axis.y, 40.0);
        assert_close(-door.front - axis.x, 9.0);
        severities(&job, "top-edge-hits-panel")
    };
    assert_eq!(with(1.1), []);
    assert_eq!(with(0.9), [Severity::Stop]);
}
