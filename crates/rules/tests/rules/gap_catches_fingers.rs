//! The checks `gap-catches-fingers` and `leaves-meet`.
//!
//! The test card's axis is 4 below the underside of the top and 2 behind the side fronts. The
//! door's top edge is at 597 (600 less the reveal of 3), its back 2 and its front 21 before the
//! sides; the underside is at 582, so the axis is at 578: h = 19 below the top edge, e = 23 behind
//! the front. The top front corner rises by sqrt(19^2 + 23^2) - 19 = 29.8329 - 19 = 10.8329.

use crate::common::*;
use crate::findings::*;
use crate::worked::{inset_flap, low_flap, parallel};
use flapwright_model::card::PerSize;
use flapwright_model::door::{DoorFit, Leaves};
use flapwright_model::edges::Edges;
use flapwright_model::id::DoorId;
use flapwright_model::job::Job;
use flapwright_model::linkage::{Bodies, Pivot};
use flapwright_rules::finding::Severity;

/// A folding pair about an axis at the top, the joint `behind` the backs of the leaves.
fn folding(behind: f64) -> Job {
    let (mut wall_box, _) = low_flap();
    let card = folding_card(behind);
    wall_box.body.door.as_mut().expect("a door").leaves = Leaves::Two {
        upper: leaf(19.0),
        lower: leaf(19.0),
        joint_down: 275.0,
        joint_gap: 3.0,
    };
    job(wall_box, card)
}

#[test]
fn leaves_meet_when_the_joint_lies_before_their_backs() {
    // Folded back to back about a joint behind the backs they keep 2 e apart; about a joint in the
    // middle of the thickness the back edges meet when 2 e sin(p/2) = 3, early on the way.
    assert_eq!(severities(&folding(4.0), "leaves-meet"), []);
    assert_eq!(severities(&folding(-9.5), "leaves-meet"), [Severity::Stop]);
}

#[test]
fn the_gap_of_a_folding_pair_that_opens_through_the_band_is_a_note() {
    assert_eq!(
        severities(&folding(4.0), "gap-catches-fingers"),
        [Severity::Note]
    );
    let mut wide = folding(4.0);
    // The gap never becomes wider than 3 + 2 * 23 = 49.
    wide.settings.finger_gap.min = 49.1;
    wide.settings.finger_gap.max = 60.0;
    assert_eq!(severities(&wide, "gap-catches-fingers"), []);
}

/// An inset flap that turns to level about an axis h below its top edge and e behind its front. The
/// top front corner comes sqrt(h² + e²) above the axis, and level the front face lies e above it: so
/// the gap to the panel is the closed one less sqrt(h² + e²) - h at its least, and the closed one
/// and h - e at its widest.
fn level_flap(gap: f64, h: f64, e: f64) -> Job {
    let mut job = inset_flap(gap);
    job.cards[0].card.linkage.end_degrees = 90.0;
    job.cards[0].card.linkage.bodies = Bodies::FixedAxis {
        axis: Pivot {
            down: PerSize::All(h + gap),
            back: PerSize::All(e - 19.0),
        },
    };
    job
}

#[test]
fn the_gap_between_a_flap_and_the_panel_above_is_told_where_it_closes_on_fingers() {
    const NAME: &str = "gap-catches-fingers";
    // 5, 12, 13: the gap goes from 3 to 2 and then to 10.
    let mut job = level_flap(3.0, 12.0, 5.0);
    let told = found(&job, NAME);
    assert_eq!(told.len(), 1, "{told:?}");
    assert_eq!(told[0].severity, Severity::Note);
    assert_eq!(
        told[0].message,
        "gap-catches-fingers.catches: between below-panel, closed 3 mm, widest 10 mm, least 2 mm"
    );
    job.settings.finger_gap.min = 9.9;
    assert_eq!(found(&job, NAME).len(), 1);
    job.settings.finger_gap.min = 10.1;
    assert_eq!(found(&job, NAME), []);
    // From 12 to 11 and then to 19: always too wide for the band to close on anything in it.
    let mut wide = level_flap(12.0, 12.0, 5.0);
    wide.settings.finger_gap.max = 11.1;
    assert_eq!(found(&wide, NAME).len(), 1);
    wide.settings.finger_gap.max = 10.9;
    assert_eq!(found(&wide, NAME), []);
}

#[test]
fn the_gap_to_the_closed_door_above_is_told_as_well() {
    // The upper inset door ends 3 above a shelf of this thickness: closed, 3 + thickness + 3 above
    // the lower one, at the least 1 less.
    let with = |thickness: f64| {
        let mut job = level_flap(3.0, 12.0, 5.0);
        let wall_box = &mut job.boxes[0];
        let mut lower = wall_box.body.door.clone().expect("a door");
        lower.id = DoorId::default();
        let upper = wall_box.body.door.as_mut().expect("a door");
        upper.fitting = None;
        upper.fit = DoorFit::Inset {
            gaps: Edges::all(3.0),
            set_back: 0.0,
        };
        split(wall_box, fixed_shelf(300.0, thickness, 3.0), Some(lower));
        found(&job, "gap-catches-fingers")
    };
    assert_eq!(with(20.1).len(), 1, "only the one to the panel");
    let told = with(19.9);
    assert_eq!(told.len(), 2, "{told:?}");
    assert_eq!(
        told[1].message,
        "gap-catches-fingers.catches: between below-door, closed 25.9 mm, widest 32.9 mm, least 24.9 mm"
    );
    assert_ne!(told[0].about, told[1].about);
}

#[test]
fn a_door_that_leaves_the_box_with_all_its_edges_is_not_looked_at() {
    assert_eq!(found(&parallel(200.0), "gap-catches-fingers"), []);
}
