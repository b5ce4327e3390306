//! The check `rounding-drift`.
//!
//! Worked by hand on the plain box: door 794 by 594, sides 322 by 600, bores of the fitting 82 below
//! the top end of the side, 29 in from the door's sides.

use crate::common::*;
use crate::findings::*;
use flapwright_model::edges::{Edge, Edges};
use flapwright_model::job::Job;
use flapwright_model::length::Unit;
use flapwright_rules::finding::Severity;

#[test]
fn inches_that_are_no_64ths_add_up_no_longer() {
    const NAME: &str = "rounding-drift";
    // 18 mm = 45.35/64, 3 mm = 7.56/64, 15 mm = 37.80/64: 8 + 38 = 46 against 45.
    let mut metric = job(wall_box(), card());
    assert_eq!(found(&metric, NAME), []);
    metric.unit = Unit::Inch;
    let it = &found(&metric, NAME)[0];
    assert_eq!(it.severity, Severity::Note);
    assert_eq!(
        it.message,
        "rounding-drift.drifts: wrong 6, all 6, largest_drift 0.4 mm"
    );
    // 3/4 in = 48/64 and 1/8 in = 8/64: all is whole.
    let inch = 25.4;
    let mut it = wall_box();
    (it.width, it.height) = (32.0 * inch, 24.0 * inch);
    it.left = panel(0.75 * inch);
    it.right = panel(0.75 * inch);
    it.top = across(0.75 * inch);
    it.bottom = across(0.75 * inch);
    it.body.door = Some(door(Edges::all(0.125 * inch)));
    let mut whole = job(it, card());
    whole.unit = Unit::Inch;
    assert_eq!(found(&whole, NAME), []);
}

/// Sides of 3/4 in, a box of 31 1/2 in: every chain is whole, until the reveals say otherwise.
fn inches(left: f64, right: f64) -> Job {
    let inch = 25.4;
    let mut it = wall_box();
    (it.width, it.height) = (31.5 * inch, 24.0 * inch);
    it.left = panel(0.75 * inch);
    it.right = panel(0.75 * inch);
    it.top = across(0.75 * inch);
    it.bottom = across(0.75 * inch);
    it.body.door = Some(door(Edges {
        left,
        right,
        ..Edges::all(0.125 * inch)
    }));
    let mut job = job(it, card());
    job.unit = Unit::Inch;
    job
}

#[test]
fn a_chain_that_adds_up_no_longer_is_shown() {
    const NAME: &str = "rounding-drift";
    assert_eq!(found(&inches(3.175, 3.175), NAME), []);
    // 3.3 mm are 8.315/64 in, so 8; the door, 800.1 - 6.6 = 793.5, is 1999.37/64, so 1999; the box
    // is 2016: 8 + 1999 + 8 = 2015. Overlay and reveal of a side still add up: 40 + 8 = 48.
    let it = the_only(&inches(3.3, 3.3), NAME);
    says(
        &it,
        "rounding-drift.drifts: wrong 1, all 6, largest_drift 0.4 mm",
    );
    assert_close(number(&it, "largest_drift"), 25.4 / 64.0);
    assert_eq!(it.reasons.len(), 1, "{:?}", it.reasons);
    assert_eq!(
        it.reasons[0],
        "rounding-drift.sum: what (chain.reveals-and-width: door a door), parts [3.3 mm; 793.5 mm; 3.3 mm], \
         whole 800.1 mm"
    );
    assert_eq!(it.severity, Severity::Note);
}

#[test]
fn a_tweak_at_the_left_or_right_takes_the_width_out_of_the_sum() {
    const NAME: &str = "rounding-drift";
    for edge in [Edge::Left, Edge::Right] {
        let mut job = inches(3.3, 3.3);
        *the_job_door(&mut job, 0).tweaks.at_mut(edge) = 1.0;
        assert_eq!(found(&job, NAME), [], "{edge:?}");
    }
    let mut job = inches(3.3, 3.3);
    *the_job_door(&mut job, 0).tweaks.at_mut(Edge::Top) = 1.0;
    assert_eq!(found(&job, NAME).len(), 1);
}
