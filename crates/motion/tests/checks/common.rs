//! Doors and cards that the tests share. All numbers are invented.

use flapwright_model::card::{
    Adjustment, BackFrom, Card, Envelope, FittedSides, OpeningKind, PerSize, Size, Span,
};
use flapwright_model::lift::{Carries, Lift, PieceCount, SpringRow, Strut};
use flapwright_model::linkage::{Bodies, FlapPose, Linkage, Pivot};
use flapwright_model::material::MassRange;
use flapwright_model::part::LeafId;
use flapwright_motion::closed::{ClosedDoor, ClosedHandle, ClosedLeaf};
use flapwright_motion::mass::{DoorMass, LeafMass, PartMass};

/// Underside of the panel above the opening in all these doors, mm.
pub(crate) const UNDERSIDE: f64 = 700.0;

pub(crate) fn pivot(down: f64, back: f64) -> Pivot {
    Pivot {
        down: PerSize::All(down),
        back: PerSize::All(back),
    }
}

pub(crate) fn card(bodies: Bodies, end_degrees: f64) -> Card {
    let kind = match bodies {
        Bodies::FixedAxis { .. } | Bodies::PoseTable { .. } => OpeningKind::TopHingedFlap,
        Bodies::Parallel { .. } => OpeningKind::ParallelRisingDoor,
        Bodies::Folding { .. } => OpeningKind::FoldingPair,
        Bodies::TwoArms { .. } => OpeningKind::OverTheTopDoor,
    };
    Card {
        name: "test".to_owned(),
        kind,
        maker_text: String::new(),
        invented: true,
        sides: FittedSides::Both,
        per: PieceCount::PerPair,
        side_bores: Vec::new(),
        top_bores: Vec::new(),
        door_bores: Vec::new(),
        envelope: Envelope {
            down_from: 0.0,
            down_to: PerSize::All(200.0),
            back_from: 0.0,
            back_to: PerSize::All(200.0),
            inward: 20.0,
            front: BackFrom::SideFront,
        },
        adjustment: Adjustment::default(),
        linkage: Linkage {
            front: BackFrom::SideFront,
            end_degrees,
            bodies,
            path_tolerance: 0.0,
            damping: 0.0,
        },
        cut_parts: Vec::new(),
        notes: String::new(),
        sizes: vec![size("A", 2.0, 6.0)],
        example: None,
    }
}

pub(crate) fn size(name: &str, min: f64, max: f64) -> Size {
    Size {
        name: name.to_owned(),
        carries: Carries::Mass { min, max },
        lift: Lift::Spring {
            table: vec![
                SpringRow {
                    degrees: 0.0,
                    weakest: 4.0,
                    strongest: 8.0,
                },
                SpringRow {
                    degrees: 120.0,
                    weakest: 4.0,
                    strongest: 8.0,
                },
            ],
            turns: 8.0,
            friction: 0.5,
        },
        door_height: Span {
            min: 200.0,
            max: 600.0,
        },
        door_width: Span {
            min: 300.0,
            max: 1200.0,
        },
        least_inner_depth: 200.0,
        least_inner_height: 200.0,
    }
}

/// One leaf of the height and thickness given, its top at the underside, its back 2 mm before the
/// front edges of the sides.
pub(crate) fn one_leaf(height: f64, thickness: f64) -> ClosedDoor {
    ClosedDoor {
        leaves: vec![ClosedLeaf {
            id: LeafId::Only,
            top: UNDERSIDE,
            bottom: UNDERSIDE - height,
            back_o: 2.0,
            front_o: 2.0 + thickness,
        }],
        underside_y: UNDERSIDE,
        side_front_o: 0.0,
        frame_front_o: 0.0,
        joint_y: None,
        handle: Some(ClosedHandle {
            y: UNDERSIDE - height + 40.0,
            projection: 30.0,
        }),
    }
}

/// Two leaves of 340 mm with a gap of 4 mm.
pub(crate) fn two_leaves() -> ClosedDoor {
    let leaf = |id, top: f64| ClosedLeaf {
        id,
        top,
        bottom: top - 340.0,
        back_o: 2.0,
        front_o: 21.0,
    };
    ClosedDoor {
        leaves: vec![
            leaf(LeafId::Upper, UNDERSIDE),
            leaf(LeafId::Lower, UNDERSIDE - 344.0),
        ],
        joint_y: Some(UNDERSIDE - 342.0),
        ..one_leaf(684.0, 19.0)
    }
}

pub(crate) fn flap(down: f64, back: f64, end_degrees: f64) -> Card {
    card(
        Bodies::FixedAxis {
            axis: pivot(down, back),
        },
        end_degrees,
    )
}

/// A linked hinge: the corner goes out and down a little while the flap turns.
pub(crate) fn linked_flap() -> Card {
    let row = |degrees, out, up| FlapPose { degrees, out, up };
    let poses = vec![
        row(0.0, 0.0, 0.0),
        row(45.0, 9.0, -6.0),
        row(110.0, 12.0, -4.0),
    ];
    let reference = pivot(-15.0, -2.0);
    card(Bodies::PoseTable { reference, poses }, 107.0)
}

/// Two arms of 260 mm that start 40 degrees below level and end 55 degrees above.
pub(crate) fn parallel() -> Card {
    let (drop, run) = (
        260.0 * 40_f64.to_radians().sin(),
        260.0 * 40_f64.to_radians().cos(),
    );
    let bodies = Bodies::Parallel {
        box_pivot: pivot(60.0, 190.0),
        door_pivot: pivot(60.0 + drop, 190.0 - run),
        second_down: 60.0,
        second_back: 25.0,
    };
    card(bodies, 95.0)
}

pub(crate) fn folding() -> Card {
    let bodies = Bodies::Folding {
        axis: pivot(14.0, -8.0),
        joint_behind: 0.0,
        link_box: pivot(260.0, 120.0),
        link_below_joint: 230.0,
        link_behind: 12.0,
    };
    card(bodies, 100.0)
}

pub(crate) fn over_the_top() -> Card {
    let bodies = Bodies::TwoArms {
        box_first: pivot(70.0, 150.0),
        door_first: pivot(250.0, 10.0),
        box_second: pivot(50.0, 60.0),
        door_second: pivot(110.0, 10.0),
    };
    card(bodies, 100.0)
}

/// A card and a door of every kind; the flap twice.
pub(crate) fn every_kind() -> Vec<(&'static str, Card, ClosedDoor)> {
    vec![
        ("fixed axis", flap(12.0, 4.0, 107.0), one_leaf(396.0, 18.0)),
        ("table of poses", linked_flap(), one_leaf(396.0, 18.0)),
        ("parallel", parallel(), one_leaf(396.0, 18.0)),
        ("folding", folding(), two_leaves()),
        ("over the top", over_the_top(), one_leaf(396.0, 18.0)),
    ]
}

/// A leaf of this mass as one even plate of its height, its middle `ahead` of its back face.
pub(crate) fn plate(kilograms: f64, height: f64, ahead: f64) -> LeafMass {
    LeafMass::of(vec![PartMass {
        name: "plate".to_owned(),
        mass: MassRange {
            low: 0.9 * kilograms,
            likely: kilograms,
            high: 1.1 * kilograms,
        },
        centre_up: height / 2.0,
        centre_ahead: ahead,
        extent_up: height,
        extent_ahead: 0.0,
    }])
}

/// The mass of a door of even plates.
pub(crate) fn plates(door: &ClosedDoor, kilograms: f64) -> DoorMass {
    let leaves: Vec<_> = door
        .leaves
        .iter()
        .map(|leaf| {
            let middle = (leaf.front_o - leaf.back_o) / 2.0;
            (leaf.id, plate(kilograms, leaf.top - leaf.bottom, middle))
        })
        .collect();
    let built = leaves.iter().map(|(_, leaf)| leaf.mass).sum();
    DoorMass {
        leaves,
        built,
        typed: None,
        used: built,
    }
}

/// The first size of a card lifted by a strut.
pub(crate) fn with_strut(mut card: Card, strut: Strut) -> Card {
    for size in &mut card.sizes {
        size.lift = Lift::Strut(strut);
    }
    card
}

/// The first size of a card lifted by a spring whose moment is the same everywhere.
pub(crate) fn with_spring(mut card: Card, moment: f64, friction: f64) -> Card {
    for size in &mut card.sizes {
        let row = |degrees| SpringRow {
            degrees,
            weakest: moment,
            strongest: moment,
        };
        size.lift = Lift::Spring {
            table: vec![row(0.0), row(180.0)],
            turns: 1.0,
            friction,
        };
    }
    card
}

/// A strut that reaches anywhere, so that only its force matters.
pub(crate) fn long_strut() -> Strut {
    Strut {
        box_down: 210.0,
        box_back: 140.0,
        door_down: 120.0,
        door_back: 8.0,
        force: 90.0,
        progression: 1.35,
        stroke: 2000.0,
        extended: 2000.01,
        friction: 6.0,
    }
}

/// Between these a strut has to work in these tests, °C.
pub(crate) const COLD_AND_HOT: [f64; 2] = [5.0, 40.0];
