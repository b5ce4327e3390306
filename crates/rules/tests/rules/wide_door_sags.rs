//! The check `wide-door-sags`.
//!
//! The plain box's door of 6 kg hangs on an axis 278 mm above and 13.5 mm behind its middle: its
//! axis is 4 below the underside at 582 and 2 behind the front edges, its middle 300 above the
//! floor of the box and, 19 thick on 2 mm bumpers, 11.5 before the edges. Its lift moment is
//! m g (0.278 sin q + 0.0135 cos q), the moment of a weight about an axis (OpenStax University
//! Physics, 12.1): 15.971 N·m open at 100 degrees, at most 16.377, closed 0.794. A spring that
//! gives the same moment everywhere makes every limit a sum of two numbers.
//!
//! Worked by hand on the plain box: door 794 by 594, sides 322 by 600, bores of the fitting 82 below
//! the top end of the side, 29 in from the door's sides.

use crate::common::*;
use crate::findings::*;
use flapwright_model::door::{BuildUp, Grain};
use flapwright_model::edit::apply;
use flapwright_model::job::Job;
use flapwright_model::material::{MaterialClass, Stiffness};
use flapwright_rules::finding::Severity;

/// 6 kg over 794 mm; between arms 14 mm from inner faces 764 mm apart: L = 736 mm. With
/// I = 594 x 19^3 / 12 = 339 520.5 mm4 and w = 6 x 9.80665 / 794 = 0.0741057 N/mm the sag of an
/// evenly loaded beam on two supports, 5 w L^4 / (384 E I), is 833.94 / E mm; the limit is
/// 736 / 144 = 5.111 mm, so E = 163.2 N/mm2 just holds.
fn stiff(along: f64, across: Option<f64>) -> Job {
    let mut card = card();
    card.linkage.end_degrees = 90.0;
    let mut job = weighed(6.0, 0.0, card);
    job.materials[0].stiffness = Some(Stiffness {
        along,
        across,
        source: "invented".to_owned(),
    });
    job
}

fn grained(mut job: Job, class: MaterialClass, to: Grain) -> Job {
    job.materials[0].class = class;
    if let flapwright_model::door::Leaves::One(leaf) = &mut the_job_door(&mut job, 0).leaves {
        leaf.grain = to;
    }
    job
}

#[test]
fn a_wide_door_bends_like_a_beam() {
    assert_eq!(severities(&stiff(163.2, None), "wide-door-sags"), []);
    let sags = found(&stiff(163.1, None), "wide-door-sags");
    assert_eq!(sags.len(), 1);
    assert!((sags[0].numbers[0].value - 833.94 / 163.1).abs() < 1e-3);
    let mut unknown = stiff(1.0, None);
    unknown.materials[0].stiffness = None;
    assert_eq!(severities(&unknown, "wide-door-sags"), []);
    let mut strict = stiff(163.2, None);
    strict.settings.sag_ratio = 145.0;
    assert_eq!(severities(&strict, "wide-door-sags"), [Severity::Caution]);
}

#[test]
fn the_grain_says_which_stiffness_bears() {
    use MaterialClass::{Board, SolidWood};
    for (class, grain, across, expected) in [
        (Board, Grain::Across, Some(100.0), 0),
        (Board, Grain::Upright, Some(100.0), 1),
        (Board, Grain::None, Some(100.0), 1),
        (Board, Grain::Upright, None, 0),
        (SolidWood, Grain::Upright, Some(100.0), 1),
        (SolidWood, Grain::Upright, None, 0),
        (SolidWood, Grain::Across, None, 0),
    ] {
        let job = grained(stiff(200.0, across), class, grain);
        let found = found(&job, "wide-door-sags").len();
        assert_eq!(found, expected, "{class:?} {grain:?} {across:?}");
    }
    let soft = grained(stiff(100.0, None), SolidWood, Grain::Upright);
    assert_eq!(severities(&soft, "wide-door-sags"), []);
}

#[test]
fn a_thicker_leaf_clears_the_sag_and_undo_restores() {
    let mut job = stiff(120.0, None);
    let before = job.clone();
    let it = found(&job, "wide-door-sags").remove(0);
    // 19 x sqrt(833.94 / 120 / 5.111) = 22.2, so 23 mm.
    assert_eq!(it.remedies[0].kind, "remedy.thickness: to 23 mm");
    let undo = apply(&mut job, it.remedies[0].edit.clone()).expect("a sound job");
    let BuildUp::Plain { thickness, .. } = the_job_door(&mut job, 0).leaves.first().build else {
        panic!("a plain leaf")
    };
    assert_close(thickness, 23.0);
    assert_eq!(severities(&job, "wide-door-sags"), []);
    apply(&mut job, undo).expect("undone");
    assert_eq!(job, before);
}

#[test]
fn hinges_alone_are_the_supports_where_the_card_has_no_arms() {
    // Three hinges, 70 in from faces 764 apart: 312 between; the sag falls with the fourth power,
    // by (312 / 736)^4 = 0.0323, and the limit with the first.
    let mut job = stiff(20.0, None);
    job.cards[0].card = with_hinges(job.cards[0].card.clone());
    job.cards[0].card.door_bores.remove(0);
    assert_eq!(severities(&job, "wide-door-sags"), []);
    job.materials[0].stiffness.as_mut().expect("known").along = 12.4;
    // 833.94 x 0.032295 / 12.4 = 2.1719 mm against 312 / 144 = 2.1667 mm.
    assert_eq!(severities(&job, "wide-door-sags"), [Severity::Caution]);
    job.materials[0].stiffness.as_mut().expect("known").along = 12.5;
    assert_eq!(severities(&job, "wide-door-sags"), []);
}

#[test]
fn a_sagging_door_says_the_limit_and_how_thick_it_would_have_to_be() {
    const NAME: &str = "wide-door-sags";
    // See the tests of this check: 833.94 / E over 736 mm between the arms, at most 736 / 144.
    let mut job = weighed(6.0, 0.0, card());
    job.cards[0].card.linkage.end_degrees = 90.0;
    job.materials[0].stiffness = Some(Stiffness {
        along: 80.0,
        across: None,
        source: "invented".to_owned(),
    });
    let it = the_only(&job, NAME);
    // 833.94 / 80 = 10.424 against 5.111.
    assert!(
        (number(&it, "sag") - 10.424).abs() < 1e-3,
        "{:?}",
        it.numbers
    );
    assert_close(number(&it, "limit"), 736.0 / 144.0);
    says(
        &it,
        "limit 5.1 mm; wide-door-sags.span: span 736 mm, ratio 144",
    );
    // 19 x sqrt(10.424 / 5.111) = 27.13, so 28.
    assert_eq!(it.remedies[0].kind, "remedy.thickness: to 28 mm");
    assert_eq!(
        it.remedies[0].effects,
        "effect.thickness: was 19 mm, is 28 mm; effect.sags-at-most: sag 4.8 mm"
    );
    assert!(!it.remedies[0].safe);
    clears(&job, &it, 0);
    // Nobody makes a door 60 thick: 19 x sqrt(s / 5.111) = 60 at s = 50.97, so at E = 16.36.
    let remedies = |along: f64| {
        let mut job = job.clone();
        job.materials[0].stiffness.as_mut().expect("known").along = along;
        the_only(&job, NAME).remedies.len()
    };
    assert_eq!(remedies(16.4), 1);
    assert_eq!(remedies(16.3), 0);
}
