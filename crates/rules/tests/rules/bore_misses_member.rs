//! The check `bore-misses-member`.
//!
//! Limits are the settings' defaults: common practice, no source.
//!
//! Worked by hand on the plain box: its door is 794 by 594, its sides 322 by 600, bores 4 across in the
//! door and 5 across in the sides.

use crate::common::*;
use crate::findings::*;
use flapwright_model::card::DoorBore;
use flapwright_model::door::Leaves;
use flapwright_model::edges::Edges;
use flapwright_rules::finding::Severity;

#[test]
fn bores_of_a_framed_leaf_lie_in_its_stiles() {
    // Bores 29 in, 4 across: rim at 31. The groove begins 8 before the inner edge of the stile:
    // 39 just holds, less does not. Two bores at each side.
    for (stile, expected) in [(39.0, 0), (38.99, 4), (20.0, 4)] {
        let mut job = with_glass(job(wall_box(), card()));
        the_job_door(&mut job, 0).leaves = Leaves::One(framed(Edges::all(stile), "test glass"));
        let found = severities(&job, "bore-misses-member");
        assert_eq!(found, vec![Severity::Stop; expected], "stile {stile}");
    }
}

/// What is found of bores in a leaf with a frame of these members around glass that reaches 8 into
/// them.
fn in_frame(members: Edges<f64>, bores: Vec<DoorBore>) -> Vec<Told> {
    let mut card = card();
    card.door_bores[0].bores = bores;
    let mut job = with_glass(job(wall_box(), card));
    the_job_door(&mut job, 0).leaves = Leaves::One(framed(members, "test glass"));
    found(&job, "bore-misses-member")
}

#[test]
fn a_bore_is_measured_from_the_groove_on_every_side() {
    let stiles = |left, right, top, bottom| Edges {
        left,
        right,
        top,
        bottom,
    };
    let webs = |members, bore: DoorBore| -> Vec<f64> {
        in_frame(members, vec![bore])
            .iter()
            .map(|it| (number(it, "wood_to_the_groove") * 1e6).round() / 1e6)
            .collect()
    };
    // 29 from each side: rim at 31. Grooves begin 8 before the member's inner edge.
    let beside = || door_bore(14.0, 250.0);
    assert_eq!(webs(stiles(38.0, 60.0, 60.0, 60.0), beside()), [-1.0]);
    assert_eq!(webs(stiles(60.0, 37.0, 60.0, 60.0), beside()), [-2.0]);
    assert_eq!(
        webs(stiles(60.0, 60.0, 60.0, 60.0), beside()),
        Vec::<f64>::new()
    );
    // In the rails, 200 in from the sides: 15 + 20 = 35 below the top edge, rim at 37.
    let in_top = || door_bore(185.0, 20.0);
    assert_eq!(webs(stiles(60.0, 60.0, 44.0, 60.0), in_top()), [-1.0; 2]);
    assert_eq!(
        webs(stiles(60.0, 60.0, 45.0, 60.0), in_top()),
        Vec::<f64>::new()
    );
    // 594 - 15 - 544 = 35 above the bottom edge.
    let in_bottom = || door_bore(185.0, 544.0);
    assert_eq!(webs(stiles(60.0, 60.0, 60.0, 43.0), in_bottom()), [-2.0; 2]);
    assert_eq!(
        webs(stiles(60.0, 60.0, 60.0, 45.0), in_bottom()),
        Vec::<f64>::new()
    );
    // Off the corner of the glass by 1.2 across and 1.5 or 1.6 up: 1.9209 and 2.0 from it, and the
    // bore's radius is 2. Grooves at 52 from the sides and from the top.
    let off = |up: f64| door_bore(52.0 - 1.2 - 15.0, 52.0 - up - 15.0);
    assert_eq!(
        webs(stiles(60.0, 60.0, 60.0, 60.0), off(1.6 + 1e-9)),
        Vec::<f64>::new()
    );
    let near = webs(stiles(60.0, 60.0, 60.0, 60.0), off(1.5));
    assert_eq!(near.len(), 2);
    assert_close(near[0], -0.079_063);
}

#[test]
fn a_bore_in_the_groove_says_how_far_it_reaches() {
    let found = in_frame(Edges::all(38.0), vec![door_bore(14.0, 250.0)]);
    assert_eq!(
        found[0].message,
        "bore-misses-member.into-infill: bore 1, purpose \"arm screw\", by 1 mm, infill \"test glass\", wood_to_the_groove -1 mm"
    );
}
