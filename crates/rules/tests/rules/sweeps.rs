//! Checks on the way of a door: holds, just holds, just fails, remedy. Worked by hand.
//!
//! The test card's axis is 4 below the underside of the top and 2 behind the side fronts. The
//! door's top edge is at 597 (600 less the reveal of 3), its back 2 and its front 21 before the
//! sides; the underside is at 582, so the axis is at 578: h = 19 below the top edge, e = 23 behind
//! the front. The top front corner rises by sqrt(19^2 + 23^2) - 19 = 29.8329 - 19 = 10.8329.

use crate::common::*;
use crate::findings::*;
use flapwright_model::cabinet::{Place, WallBox};
use flapwright_model::card::{Card, OpeningKind, PerSize};
use flapwright_model::door::{DoorFit, Handle, Leaves};
use flapwright_model::edges::Edges;
use flapwright_model::edit::apply;
use flapwright_model::id::{DoorId, ObstacleId};
use flapwright_model::job::Job;
use flapwright_model::linkage::{Bodies, Pivot};
use flapwright_model::opening::Inside;
use flapwright_model::room::{Extent, Obstacle};
use flapwright_rules::finding::Severity;

/// sqrt(19^2 + 23^2), by hand.
const RADIUS: f64 = 29.832_867_78;

/// A box 600 high at 1500 above the floor: the door's highest place is 1500 + 578 + RADIUS... or
/// its lower edge, 575 below the axis, when opened past level. At 100 degrees it is that edge; so
/// the flap of these tests ends at 80 degrees, where it stays below.
fn low_flap() -> (WallBox, Card) {
    let mut card = card();
    card.linkage.end_degrees = 80.0;
    let mut wall_box = wall_box();
    wall_box.place = Place {
        along_wall: 0.0,
        above_floor: 1500.0,
    };
    (wall_box, card)
}

fn under(ceiling: f64) -> Job {
    let (wall_box, card) = low_flap();
    let mut job = job(wall_box, card);
    job.room.ceiling = ceiling;
    job
}

#[test]
fn a_door_keeps_the_least_clearance_below_the_ceiling() {
    const NAME: &str = "door-hits-ceiling";
    let highest = 1500.0 + 578.0 + RADIUS;
    assert_eq!(severities(&under(highest + 2.01), NAME), []);
    assert_eq!(
        severities(&under(highest + 1.99), NAME),
        [Severity::Caution]
    );
    assert_eq!(
        severities(&under(highest + 0.01), NAME),
        [Severity::Caution]
    );
    assert_eq!(severities(&under(highest - 0.01), NAME), [Severity::Stop]);
}

#[test]
fn hanging_the_box_lower_clears_the_ceiling_and_can_be_undone() {
    const NAME: &str = "door-hits-ceiling";
    let before = under(1500.0 + 578.0 + RADIUS - 3.0);
    let mut job = before.clone();
    let found_before = found(&job, NAME);
    let remedy = &found_before[0].remedies[0];
    // 3 into the ceiling and 2 of clearance.
    assert_eq!(remedy.kind, "remedy.lower-box: by 5 mm");
    assert!(!remedy.safe, "where a box hangs is for a person to say");
    let back = apply(&mut job, remedy.edit.clone()).expect("the remedy fits");
    assert_eq!(severities(&job, NAME), []);
    let _redo = apply(&mut job, back).expect("undo fits");
    assert_eq!(job, before);
}

fn lamp(from: f64, above_floor: f64) -> Job {
    let mut job = under(3000.0);
    job.room.obstacles.push(Obstacle {
        id: ObstacleId::default(),
        name: "lamp".to_owned(),
        along_wall: Extent {
            from,
            to: from + 50.0,
        },
        above_floor: Extent {
            from: above_floor,
            to: above_floor + 100.0,
        },
        // Right over the axis, 2 behind the fronts of a box 330 deep: from 300 to 360.
        from_wall: Extent {
            from: 300.0,
            to: 360.0,
        },
    });
    job
}

#[test]
fn a_door_meets_a_lamp_only_where_it_passes_across_it() {
    const NAME: &str = "door-hits-obstacle";
    let highest = 1500.0 + 578.0 + RADIUS;
    assert_eq!(severities(&lamp(100.0, highest + 2.1), NAME), []);
    assert_eq!(
        severities(&lamp(100.0, highest + 1.5), NAME),
        [Severity::Caution]
    );
    assert_eq!(
        severities(&lamp(100.0, highest - 0.1), NAME),
        [Severity::Stop]
    );
    // The door ends at 797 along the wall.
    assert_eq!(
        severities(&lamp(796.9, highest - 0.1), NAME),
        [Severity::Stop]
    );
    assert_eq!(severities(&lamp(797.0, highest - 0.1), NAME), []);
}

#[test]
fn a_door_meets_the_box_that_hangs_close_above_it() {
    const NAME: &str = "door-hits-neighbour";
    // The upper box's door is inset by nothing: it starts 3 above its underside. The lower door's
    // corner rises to 578 + RADIUS = 607.833 above the lower underside, 10.833 past its top edge,
    // and there it is 2 behind the fronts, straight below the upper box.
    let above = |gap: f64| {
        let mut job = under(5000.0);
        let mut upper = copy_of(&job.boxes[0]);
        upper.name = "upper".to_owned();
        upper.place.above_floor += 600.0 + gap;
        upper.body.door = None;
        add_box(&mut job, upper);
        job
    };
    assert_eq!(severities(&above(7.9), NAME), []);
    assert_eq!(severities(&above(7.7), NAME), [Severity::Stop]);
}

#[test]
fn an_open_door_below_head_height_is_a_caution() {
    const NAME: &str = "open-door-at-head-height";
    // Turned by 90 degrees about the axis the door's back lies 4 above it (the back stood 2 - -2
    // = 4 before it), level: the lowest place is the axis's height plus 4.
    let at = |above_floor: f64| {
        let (mut wall_box, mut card) = low_flap();
        card.linkage.end_degrees = 90.0;
        wall_box.place.above_floor = above_floor;
        let mut job = job(wall_box, card);
        job.room.ceiling = 4000.0;
        job
    };
    let just = 1850.0 - 578.0 - 4.0;
    assert_eq!(severities(&at(just + 0.01), NAME), []);
    assert_eq!(severities(&at(just - 0.01), NAME), [Severity::Caution]);
    let mut short = at(just - 0.01);
    // It stands out 575 + ... less than 600 past its closed front.
    short.settings.head_allowance = 600.0;
    assert_eq!(severities(&short, NAME), []);
}

#[test]
fn a_handle_above_the_reach_is_a_caution() {
    const NAME: &str = "handle-out-of-reach";
    // Level, the handle's middle (15 before the front, 23 + 15 = 38 before the axis) lies 38 above
    // the axis.
    let at = |above_floor: f64| {
        let (mut wall_box, mut card) = low_flap();
        card.linkage.end_degrees = 90.0;
        wall_box.place.above_floor = above_floor;
        let door = wall_box.body.door.as_mut().expect("a door");
        door.handle = Some(Handle {
            mass: 0.1,
            up: 30.0,
            right_of_middle: 0.0,
            projection: 30.0,
            length: 160.0,
            screws: None,
        });
        let mut job = job(wall_box, card);
        job.room.ceiling = 4000.0;
        job
    };
    let just = 1950.0 - 578.0 - 38.0;
    assert_eq!(severities(&at(just - 0.01), NAME), []);
    assert_eq!(severities(&at(just + 0.01), NAME), [Severity::Caution]);
}

#[test]
fn a_shelf_in_the_body_of_the_fitting_is_a_stop() {
    const NAME: &str = "fitting-hits-shelf";
    // The body reaches 160 below the underside at 582: down to 422. The shelf is 18 thick.
    let shelf = |up: f64| {
        let (mut wall_box, card) = low_flap();
        lay(&mut wall_box, up, across(18.0));
        job(wall_box, card)
    };
    assert_eq!(severities(&shelf(404.0), NAME), []);
    assert_eq!(severities(&shelf(404.1), NAME), [Severity::Stop]);
}

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

/// A parallel-rising door on two arms from (100 behind, 100 down) to (5 behind, 300 down), the
/// second arm 40 below the first, over an adjustable shelf whose underside is at `up`.
fn parallel(up: f64) -> Job {
    let (mut wall_box, mut card) = low_flap();
    card.kind = OpeningKind::ParallelRisingDoor;
    let pivot = |down, back| Pivot {
        down: PerSize::All(down),
        back: PerSize::All(back),
    };
    card.linkage.bodies = Bodies::Parallel {
        box_pivot: pivot(100.0, 100.0),
        door_pivot: pivot(300.0, 5.0),
        second_down: 40.0,
        second_back: 0.0,
    };
    lay(&mut wall_box, up, across(18.0));
    job(wall_box, card)
}

#[test]
fn an_arm_that_meets_a_shelf_is_a_stop() {
    // The lower arm ends at 582 - 340 = 242, at (95, -200) from its pivot: a bar 12 wide at that
    // slope reaches 6 * 95 / 221.416 = 2.574 below its end. It only rises when the door opens.
    const NAME: &str = "fitting-hits-shelf";
    let just = 242.0 - 2.574 - 18.0;
    assert_eq!(found(&parallel(just - 0.2), NAME), []);
    let met = found(&parallel(just + 0.2), NAME);
    assert_eq!(met.len(), 1, "{met:?}");
    assert_eq!(
        met[0].message,
        "fitting-hits-shelf.hits: hits arm-hits, obstacle a shelf, met_at 0°"
    );
}

#[test]
fn the_body_of_a_fitting_keeps_out_of_the_face_frame() {
    const NAME: &str = "fitting-hits-shelf";
    // The frame stands 12 inward of the side, and the body begins `behind` the side fronts, where
    // the frame ends.
    let with = |behind: f64| {
        let (mut wall_box, mut card) = low_flap();
        wall_box.frame = Some(face_frame(20.0, 30.0, 12.0));
        card.envelope.back_from = behind;
        found(&job(wall_box, card), NAME)
    };
    assert_eq!(with(0.0), []);
    let met = with(-0.2);
    assert!(!met.is_empty());
    assert_eq!(
        met[0].message,
        "fitting-hits-shelf.body: obstacle Frame, overlap 0.2 mm"
    );
}

#[test]
fn an_arm_keeps_out_of_the_rail_below_the_opening() {
    const NAME: &str = "fitting-hits-shelf";
    // The lower arm runs from (100 behind, 320 down) to (30 before the side fronts, 540 down): its
    // end is at 42, its direction (130, -220) of length 255.54. The lower edge of a bar 12 wide is
    // 6 * 255.54 / 130 = 11.794 below its middle line, which at the frame's front, 20 before the
    // sides, is at 42 + 10 * 220 / 130 = 58.923: 47.129.
    let with = |rail_top: f64| {
        let mut job = parallel(560.0);
        let wall_box = &mut job.boxes[0];
        wall_box.body.inside = Inside::default();
        let mut frame = face_frame(20.0, 60.0, 0.0);
        frame.overhang.bottom = rail_top - 18.0;
        wall_box.frame = Some(frame);
        let pivot = |down, back| Pivot {
            down: PerSize::All(down),
            back: PerSize::All(back),
        };
        job.cards[0].card.linkage.bodies = Bodies::Parallel {
            box_pivot: pivot(300.0, 100.0),
            door_pivot: pivot(520.0, -30.0),
            second_down: 20.0,
            second_back: 0.0,
        };
        found(&job, NAME)
    };
    assert_eq!(with(46.9), []);
    let met = with(47.4);
    assert_eq!(met.len(), 1, "{met:?}");
    assert_eq!(
        met[0].message,
        "fitting-hits-shelf.hits: hits arm-hits, obstacle Frame, met_at 0°"
    );
}

/// An inset flap whose axis lies 40 below its top edge and 9 behind its front face: the front top
/// corner is 41 from the axis (9, 40, 41 is a Pythagorean triple), so the edge rises by 1.
fn inset_flap(gap: f64) -> Job {
    let mut card = card();
    // Past level: the lower edge comes higher than the top edge then.
    card.linkage.end_degrees = 100.0;
    card.linkage.path_tolerance = 0.0;
    card.linkage.bodies = Bodies::FixedAxis {
        axis: Pivot {
            down: PerSize::All(40.0 + gap),
            // An inset door's datum lies behind it: 19 for its thickness, and 10 before that.
            back: PerSize::All(-10.0),
        },
    };
    let mut wall_box = wall_box();
    let its_door = wall_box.body.door.as_mut().expect("a door");
    its_door.fit = DoorFit::Inset {
        gaps: Edges {
            top: gap,
            ..Edges::all(3.0)
        },
        set_back: 0.0,
    };
    job(wall_box, card)
}

#[test]
fn a_shelf_keeps_out_of_the_leaf_of_an_inset_door() {
    const NAME: &str = "fitting-hits-shelf";
    // The leaf is 19 thick and flush with the sides; below its axis it only swings out.
    let with = |set_back: f64| {
        let mut job = inset_flap(3.0);
        let mut piece = across(18.0);
        piece.set_back = set_back;
        lay(&mut job.boxes[0], 200.0, piece);
        found(&job, NAME)
    };
    assert_eq!(with(19.1), []);
    let met = with(18.9);
    assert_eq!(met.len(), 1, "{met:?}");
    assert_eq!(
        met[0].message,
        "fitting-hits-shelf.hits: hits leaf-hits, obstacle a shelf, met_at 0°"
    );
}

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
