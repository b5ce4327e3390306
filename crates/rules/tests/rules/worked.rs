//! Boxes, doors and cards that the tests of several checks are worked by hand on.
//!
//! All limits are those of the invented test card; what is expected is worked out beside each.
//!
//! The test card's axis is 4 below the underside of the top and 2 behind the side fronts. The
//! door's top edge is at 597 (600 less the reveal of 3), its back 2 and its front 21 before the
//! sides; the underside is at 582, so the axis is at 578: h = 19 below the top edge, e = 23 behind
//! the front. The top front corner rises by sqrt(19^2 + 23^2) - 19 = 29.8329 - 19 = 10.8329.
//!
//! The plain box's door of 6 kg hangs on an axis 278 mm above and 13.5 mm behind its middle: its
//! axis is 4 below the underside at 582 and 2 behind the front edges, its middle 300 above the
//! floor of the box and, 19 thick on 2 mm bumpers, 11.5 before the edges. Its lift moment is
//! m g (0.278 sin q + 0.0135 cos q), the moment of a weight about an axis (OpenStax University
//! Physics, 12.1): 15.971 N·m open at 100 degrees, at most 16.377, closed 0.794. A spring that
//! gives the same moment everywhere makes every limit a sum of two numbers.
//!
//! The plain box is 800 by 600 with panels of 18: reveals of 3 are overlays of 15, its door is 794 by
//! 594.
//!
//! The example of the test card, by hand: panels of 18 and overlays of 15 put the side bores 18 + 64
//! down, 41 and 137 back, the door bores 15 + 14 in, 15 + 90 and 15 + 122 down.
//!
//! Worked by hand on the plain box: door 794 by 594, sides 322 by 600, bores of the fitting 82 below
//! the top end of the side, 29 in from the door's sides.
//!
//! The plain box's weighed door of 6 kg has its middle 278 mm below and 13.5 mm before its axis: its
//! lift moment is 58.8399 N times (0.278 sin q + 0.0135 cos q) m, the weight of 6 kg at standard
//! gravity.
//!
//! The test card's axis is 4 below the underside of the top and 2 behind the side fronts, at 578
//! above the box's own underside; boxes hang at 1500. The door's back is 4 and its front 23 before
//! the axis, its top edge 19 above and its bottom edge 575 below it. Depth counts from the wall: the
//! side fronts are at 330, the axis at 328.

use crate::common::*;
use crate::findings::*;
use flapwright_model::cabinet::{Place, WallBox};
use flapwright_model::card::{Card, Example, OpeningKind, PerSize};
use flapwright_model::door::{DoorFit, Handle};
use flapwright_model::edges::Edges;
use flapwright_model::job::Job;
use flapwright_model::lift::{Carries, Lift, SpringRow};
use flapwright_model::linkage::{Bodies, Pivot};
use flapwright_model::material::{Density, Material, MaterialClass};

/// Applies the first remedy: see [`clears`].
pub(crate) fn first_clears(job: &Job, name: &str) -> Job {
    clears(job, &found(job, name)[0], 0)
}

/// Two boxes of the tests' kind, the second so far along the wall, with the top reveals given.
pub(crate) fn two_boxes(along: f64, tops: [f64; 2]) -> Job {
    let mut job = job(wall_box(), card());
    let mut second = wall_box();
    second.name = "second box".to_owned();
    second.place = Place {
        along_wall: along,
        above_floor: 0.0,
    };
    add_box(&mut job, second);
    for (it, top) in job.boxes.iter_mut().zip(tops) {
        it.body.door = Some(door(Edges {
            top,
            ..Edges::all(3.0)
        }));
    }
    job.give_ids();
    job
}

pub(crate) const LOAD_CHECKS: [&str; 3] = [
    "door-too-heavy",
    "door-too-light",
    "size-covers-part-of-mass-range",
];

/// sqrt(19^2 + 23^2), by hand.
pub(crate) const RADIUS: f64 = 29.832_867_78;

/// A box 600 high at 1500 above the floor: the door's highest place is 1500 + 578 + RADIUS... or
/// its lower edge, 575 below the axis, when opened past level. At 100 degrees it is that edge; so
/// the flap of these tests ends at 80 degrees, where it stays below.
pub(crate) fn low_flap() -> (WallBox, Card) {
    let mut card = card();
    card.linkage.end_degrees = 80.0;
    let mut wall_box = wall_box();
    wall_box.place = Place {
        along_wall: 0.0,
        above_floor: 1500.0,
    };
    (wall_box, card)
}

pub(crate) fn under_ceiling(ceiling: f64) -> Job {
    let (wall_box, card) = low_flap();
    let mut job = job(wall_box, card);
    job.room.ceiling = ceiling;
    job
}

/// A parallel-rising door on two arms from (100 behind, 100 down) to (5 behind, 300 down), the
/// second arm 40 below the first, over an adjustable shelf whose underside is at `up`.
pub(crate) fn parallel(up: f64) -> Job {
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

/// An inset flap whose axis lies 40 below its top edge and 9 behind its front face: the front top
/// corner is 41 from the axis (9, 40, 41 is a Pythagorean triple), so the edge rises by 1.
pub(crate) fn inset_flap(gap: f64) -> Job {
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

/// Friction 0.5 N·m, the same moment at every angle and setting.
pub(crate) fn spring_card(moment: f64) -> Card {
    let mut card = card();
    card.sizes[0].lift = Lift::Spring {
        table: vec![SpringRow {
            degrees: 0.0,
            weakest: moment,
            strongest: moment,
        }],
        turns: 10.0,
        friction: 0.5,
    };
    card
}

pub(crate) const REVEAL_OUT_OF_RANGE: &str = "reveal-out-of-range";

/// Three doors on two shelves of 19 with gaps of 3: overlays of 8 at each.
pub(crate) fn three_doors() -> Job {
    let mut wall_box = wall_box();
    for up in [400.0, 200.0] {
        split(
            &mut wall_box,
            fixed_shelf(up, 19.0, 3.0),
            Some(door(Edges::all(3.0))),
        );
    }
    job(wall_box, card())
}

pub(crate) fn material(name: &str, class: MaterialClass) -> Material {
    Material {
        name: name.to_owned(),
        class,
        density: Density {
            low: 2500.0,
            likely: 2500.0,
            high: 2500.0,
        },
        source: "invented".to_owned(),
        stiffness: None,
    }
}

pub(crate) fn example_of_test_card() -> Example {
    Example {
        size: "1".to_owned(),
        panel_thickness: 18.0,
        overlays: Edges::all(15.0),
        packing: 0.0,
        joint_down: 0.0,
        side: vec![(82.0, 41.0), (82.0, 137.0)],
        door: vec![(29.0, 105.0), (29.0, 137.0)],
    }
}

/// A second box like the first, 1000 along the wall, its fitting packed out by 2.
pub(crate) fn two_packed() -> Job {
    let mut job = job(wall_box(), card());
    let mut second = wall_box();
    second.name = "second box".to_owned();
    second.place = Place {
        along_wall: 1000.0,
        above_floor: 0.0,
    };
    add_box(&mut job, second);
    job
}

pub(crate) fn carrying(carries: Carries) -> Card {
    let mut card = card();
    card.sizes[0].carries = carries;
    card
}

/// The same moment at every angle and setting, with friction of 0.5 N·m.
pub(crate) fn spring_lift(moment: f64) -> Lift {
    Lift::Spring {
        table: vec![SpringRow {
            degrees: 0.0,
            weakest: moment,
            strongest: moment,
        }],
        turns: 10.0,
        friction: 0.5,
    }
}

/// Two doors alike over each other: 300 to 318 is the shelf between them.
pub(crate) fn two_doors(card: Card) -> Job {
    let mut wall_box = wall_box();
    split(
        &mut wall_box,
        fixed_shelf(300.0, 18.0, 3.0),
        Some(door(Edges::all(3.0))),
    );
    job(wall_box, card)
}

/// A flap that ends at this angle, its box this far along the wall and up.
pub(crate) fn flap(end_degrees: f64, along_wall: f64, above_floor: f64) -> Job {
    let mut card = card();
    card.linkage.end_degrees = end_degrees;
    let mut wall_box = wall_box();
    wall_box.place = Place {
        along_wall,
        above_floor,
    };
    let mut job = job(wall_box, card);
    job.room.ceiling = 5000.0;
    job
}

pub(crate) fn with_handle(job: &mut Job, projection: f64) {
    the_job_door(job, 0).handle = Some(Handle {
        mass: 0.1,
        up: 30.0,
        right_of_middle: 0.0,
        projection,
        length: 160.0,
        screws: None,
    });
}

pub(crate) const DOOR_HITS_CEILING: &str = "door-hits-ceiling";

/// Ends at 80 degrees, where its lower edge is still below its top corner; the ceiling is so far
/// above the highest place of that corner.
pub(crate) fn under_left(left: f64) -> Job {
    let mut job = flap(80.0, 0.0, 1500.0);
    job.room.ceiling = 1500.0 + 578.0 + RADIUS + left;
    job
}
