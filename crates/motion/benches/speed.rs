//! Speed of what runs on every edit. Goals: all curves of one door below 200 µs, 40 verdicts
//! below 2 ms, the search for anchors below 300 ms, a motion with its checks below 50 µs.
#![expect(
    clippy::expect_used,
    reason = "a bench whose case cannot be set up has failed"
)]

use divan::Bencher;
use flapwright_model::card::{OpeningKind, Span};
use flapwright_model::lift::Strut;
use flapwright_motion::drive::{Drive, DriveState};
use flapwright_motion::dynamics::release;
use flapwright_motion::gravity::{Level, Weights};
use flapwright_motion::motion::motion;
use flapwright_motion::outline::reach;
use flapwright_motion::sizes::{Judged, Offer, verdicts};
use flapwright_motion::statics::{Grip, Setup, curves};
use flapwright_motion::strut_mounts::{MountLimits, MountQuestion, StrutOnHand, place_strut};

#[path = "../tests/checks/common.rs"]
#[expect(dead_code, reason = "the tests use the rest")]
mod common;

use common::{
    every_kind, flap, folding, long_strut, one_leaf, plates, size, two_leaves, with_strut,
};

const KINDS: [usize; 5] = [0, 1, 2, 3, 4];

/// Between these a strut has to work, °C.
const COLD_AND_HOT: [f64; 2] = [5.0, 40.0];

fn main() {
    divan::main();
}

#[divan::bench(args = KINDS)]
fn motion_with_checks(bencher: Bencher<'_, '_>, kind: usize) {
    let (_, card, door) = &every_kind()[kind];
    bencher.bench(|| motion(card, "A", door));
}

#[divan::bench(args = KINDS)]
fn reach_of_a_door(bencher: Bencher<'_, '_>, kind: usize) {
    let (_, card, door) = &every_kind()[kind];
    let motion = motion(card, "A", door).expect("a motion");
    bencher.bench(|| reach(&motion, door));
}

#[divan::bench(args = KINDS)]
fn curves_of_200_points(bencher: Bencher<'_, '_>, kind: usize) {
    let (_, card, door) = &every_kind()[kind];
    let card = with_strut(card.clone(), long_strut());
    let motion = motion(&card, "A", door).expect("a motion");
    let weights = Weights::of(door, &plates(door, 5.0));
    let state = DriveState::of(&card, 0.0);
    let drive = Drive::new(&card, &card.sizes[0], door, &motion, &state).expect("a drive");
    let grip = Grip::of(door);
    bencher.bench(|| {
        let setup = Setup {
            motion: &motion,
            weights: &weights,
            drive: &drive,
            grip,
        };
        let curves = curves(&setup, 200);
        let zones = Level::ALL.map(|level| curves.zones(level).len());
        (curves, zones)
    });
}

#[divan::bench(args = KINDS)]
fn a_fall(bencher: Bencher<'_, '_>, kind: usize) {
    let (_, card, door) = &every_kind()[kind];
    let motion = motion(card, "A", door).expect("a motion");
    let weights = Weights::of(door, &plates(door, 5.0));
    let grip = Grip::of(door);
    bencher.bench(|| {
        let drive = Drive::NOTHING;
        let setup = Setup {
            motion: &motion,
            weights: &weights,
            drive: &drive,
            grip,
        };
        release(&setup, Level::Likely, 0.9, 0.0)
    });
}

#[divan::bench(args = [OpeningKind::TopHingedFlap, OpeningKind::FoldingPair])]
fn verdicts_of_40_sizes(bencher: Bencher<'_, '_>, kind: OpeningKind) {
    let (mut card, door) = match kind {
        OpeningKind::FoldingPair => (folding(), two_leaves()),
        _ => (flap(12.0, 4.0, 107.0), one_leaf(396.0, 18.0)),
    };
    card.sizes = (0..40_u8)
        .map(|i| size(&i.to_string(), f64::from(i) * 0.2, f64::from(i) * 0.2 + 3.0))
        .collect();
    let cards = [card];
    let mass = plates(&door, 5.0);
    let offer = Offer {
        door_width: 800.0,
        box_height: 420.0,
        depth_from_side: 290.0,
        depth_from_frame: 290.0,
        opening_height: 384.0,
        clear_down: 384.0,
        to_adjust: [0.0; 3],
    };
    bencher.bench(|| {
        let judged = Judged {
            door: &door,
            mass: &mass,
            offer: &offer,
            cold_and_hot: COLD_AND_HOT,
        };
        verdicts(&cards, kind, &judged, None)
    });
}

#[divan::bench(sample_count = 20)]
fn anchors_for_12_struts(bencher: Bencher<'_, '_>) {
    let door = one_leaf(400.0, 18.0);
    let motion = motion(&flap(-10.0, -9.0, 95.0), "A", &door).expect("a motion");
    let weights = Weights::of(&door, &plates(&door, 5.0));
    let limits = MountLimits {
        box_down: Span {
            min: 60.0,
            max: 330.0,
        },
        box_back: Span {
            min: 25.0,
            max: 200.0,
        },
        door_down: Span {
            min: 30.0,
            max: 250.0,
        },
        door_back: Span {
            min: 5.0,
            max: 30.0,
        },
    };
    let struts: Vec<_> = (0..12_u8)
        .map(|i| StrutOnHand {
            name: i.to_string(),
            strut: Strut {
                force: 60.0 + 15.0 * f64::from(i),
                stroke: if i % 2 == 0 { 60.0 } else { 100.0 },
                extended: if i % 2 == 0 { 195.0 } else { 285.0 },
                friction: 5.0,
                progression: 1.25,
                ..long_strut()
            },
        })
        .collect();
    bencher.bench(|| {
        let question = MountQuestion {
            motion: &motion,
            weights: &weights,
            door: &door,
            front_o: 0.0,
            pieces: 2,
            cold_and_hot: COLD_AND_HOT,
            limits: &limits,
            struts: &struts,
        };
        place_strut(&question, &mut |_| true)
    });
}
