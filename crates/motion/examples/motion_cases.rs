//! Prints a hundred random cards that close, each with a door and with what this crate makes of
//! both, one JSON object a line. `tests/outside/python/check_motion.py` works them out again from
//! the input numbers by other means.
//!
//! The cases are the same every time: the chance is a linear congruential generator of its own.
#![expect(
    clippy::expect_used,
    reason = "a case that cannot be printed is a failure"
)]

use std::collections::BTreeMap;

use flapwright_model::card::{BackFrom, Card, PerSize};
use flapwright_model::lift::{Lift, PieceCount, SpringRow, Strut};
use flapwright_model::linkage::{Bodies, FlapPose, Pivot};
use flapwright_model::material::MassRange;
use flapwright_model::part::LeafId;
use flapwright_model::space::SectionVector;
use flapwright_motion::closed::{ClosedDoor, ClosedHandle, ClosedLeaf};
use flapwright_motion::drive::{Drive, DriveState};
use flapwright_motion::dynamics::{Ending, release};
use flapwright_motion::gravity::{ByMass, Level, Weights, lift_moment};
use flapwright_motion::mass::{DoorMass, LeafMass, PartMass};
use flapwright_motion::motion::{Motion, motion};
use flapwright_motion::statics::{CurvePoint, Grip, Setup};
use serde_json::{Value, json};

#[path = "../tests/checks/common.rs"]
#[expect(dead_code, reason = "the tests use the rest")]
mod common;

/// How many cases are printed.
const CASES: usize = 100;
/// The kinds of bodies on a card.
const KINDS: [&str; 5] = [
    "fixed axis",
    "table of poses",
    "parallel",
    "folding",
    "two arms",
];
/// The size of each card that counts; there is another one beside it with other numbers.
const SIZE: &str = "B";
/// Places on the way at which the answers are printed: both ends, and no even steps between.
const SHARES: [f64; 7] = [0.0, 0.07, 0.23, 0.41, 0.64, 0.87, 1.0];

fn main() {
    let mut chance = Chance(20_261_125);
    let mut printed = 0;
    for round in 0..40 * CASES {
        // A kind whose card does not close is tried again before the next one's turn.
        let kind = printed % KINDS.len();
        let in_time = printed.is_multiple_of(2);
        if let Some(case) = case(&mut chance, (kind, round), in_time) {
            println!("{case}");
            printed += 1;
        }
        if printed == CASES {
            return;
        }
    }
    panic!("only {printed} of {CASES} cards close");
}

/// A linear congruential generator with Knuth's MMIX constants.
struct Chance(u64);

impl Chance {
    fn between(&mut self, low: f64, high: f64) -> f64 {
        self.0 = self
            .0
            .wrapping_mul(6_364_136_223_846_793_005)
            .wrapping_add(1_442_695_040_888_963_407);
        let share = f64::from(u32::try_from(self.0 >> 32).unwrap_or(0)) / 4_294_967_296.0;
        low + (high - low) * share
    }

    fn coin(&mut self) -> bool {
        self.between(0.0, 1.0) < 0.5
    }

    /// A number of a card, for all sizes or by size.
    fn number(&mut self, value: f64) -> PerSize {
        if self.coin() {
            PerSize::All(value)
        } else {
            let other = value + self.between(1.0, 30.0);
            PerSize::BySize(BTreeMap::from([
                ("A".to_owned(), other),
                (SIZE.to_owned(), value),
            ]))
        }
    }

    fn pivot(&mut self, down: (f64, f64), back: (f64, f64)) -> Pivot {
        let (down, back) = (self.between(down.0, down.1), self.between(back.0, back.1));
        self.pivot_at(down, back)
    }

    fn pivot_at(&mut self, down: f64, back: f64) -> Pivot {
        Pivot {
            down: self.number(down),
            back: self.number(back),
        }
    }

    fn door(&mut self, leaves: usize) -> ClosedDoor {
        let underside = self.between(450.0, 2100.0);
        let back_o = self.between(0.5, 4.0);
        let thickness = self.between(12.0, 28.0);
        let gap = self.between(2.0, 6.0);
        let mut top = underside + self.between(-4.0, 17.0);
        let ids: &[LeafId] = if leaves == 2 {
            &[LeafId::Upper, LeafId::Lower]
        } else {
            &[LeafId::Only]
        };
        let mut closed = Vec::new();
        for id in ids {
            let height = if leaves == 2 {
                self.between(230.0, 420.0)
            } else {
                self.between(260.0, 620.0)
            };
            closed.push(ClosedLeaf {
                id: *id,
                top,
                bottom: top - height,
                back_o,
                front_o: back_o + thickness,
            });
            top -= height + gap;
        }
        let bottom = closed.last().map_or(top, |leaf| leaf.bottom);
        let handle = self.coin().then(|| ClosedHandle {
            y: bottom + self.between(20.0, 90.0),
            projection: self.between(15.0, 45.0),
        });
        ClosedDoor {
            joint_y: (leaves == 2)
                .then(|| closed.first().map_or(0.0, |leaf| leaf.bottom - gap / 2.0)),
            leaves: closed,
            underside_y: underside,
            side_front_o: 0.0,
            frame_front_o: if self.coin() { 0.0 } else { 0.4 },
            handle,
        }
    }

    fn card(&mut self, kind: usize, door: &ClosedDoor) -> Card {
        let height = door
            .leaves
            .last()
            .map_or(0.0, |leaf| leaf.top - leaf.bottom);
        let upper = door.underside_y - door.joint_y.unwrap_or(door.underside_y);
        let (bodies, ends) = match kind {
            0 => {
                let axis = self.pivot((-10.0, 60.0), (-25.0, 30.0));
                (Bodies::FixedAxis { axis }, (70.0, 125.0))
            }
            1 => (self.pose_table(), (70.0, 110.0)),
            2 => {
                let (down, back) = (self.between(40.0, 150.0), self.between(120.0, 260.0));
                let length = self.between(150.0, 340.0);
                let below = self.between(20.0, 70.0).to_radians();
                let bodies = Bodies::Parallel {
                    box_pivot: self.pivot_at(down, back),
                    door_pivot: self
                        .pivot_at(down + length * below.sin(), back - length * below.cos()),
                    second_down: self.between(25.0, 90.0),
                    second_back: self.between(-40.0, 60.0),
                };
                (bodies, (60.0, 125.0))
            }
            3 => {
                let bodies = Bodies::Folding {
                    axis: self.pivot((4.0, 25.0), (-14.0, 4.0)),
                    joint_behind: self.between(-6.0, 12.0),
                    link_box: self.pivot((0.55 * upper, 0.95 * upper), (70.0, 200.0)),
                    link_below_joint: self.between(0.25, 0.8) * height,
                    link_behind: self.between(0.0, 25.0),
                };
                (bodies, (65.0, 105.0))
            }
            _ => {
                let bodies = Bodies::TwoArms {
                    box_first: self.pivot((50.0, 100.0), (120.0, 180.0)),
                    door_first: self.pivot((210.0, 290.0), (-5.0, 20.0)),
                    box_second: self.pivot((30.0, 75.0), (40.0, 85.0)),
                    door_second: self.pivot((90.0, 140.0), (-5.0, 20.0)),
                };
                (bodies, (60.0, 110.0))
            }
        };
        let mut card = common::card(bodies, self.between(ends.0, ends.1));
        card.linkage.front = if self.coin() {
            BackFrom::SideFront
        } else {
            BackFrom::FrameFront
        };
        if self.coin() {
            card.linkage.damping = self.between(0.05, 1.5);
        }
        card.per = if self.coin() {
            PieceCount::PerPair
        } else {
            PieceCount::PerPiece
        };
        card.sizes.push(common::size(SIZE, 2.0, 6.0));
        card
    }

    /// Two to six rows; the reference point goes out and about by some centimetres.
    fn pose_table(&mut self) -> Bodies {
        let reference = self.pivot((-20.0, 20.0), (-20.0, 10.0));
        let steps = self.between(1.0, 5.99).floor();
        let mut poses = vec![FlapPose {
            degrees: 0.0,
            out: 0.0,
            up: 0.0,
        }];
        let mut degrees = 0.0;
        while degrees < 111.0 {
            degrees += 111.0 / steps * self.between(0.8, 1.25);
            let share: f64 = degrees / 111.0;
            poses.push(FlapPose {
                degrees,
                out: 25.0 * share.sin() + self.between(-3.0, 3.0),
                up: 30.0 * share * (share - 0.6) + self.between(-3.0, 3.0),
            });
        }
        Bodies::PoseTable { reference, poses }
    }

    /// Two or three parts a leaf, each with its own range.
    fn mass(&mut self, door: &ClosedDoor) -> DoorMass {
        let mut leaves = Vec::new();
        for shut in &door.leaves {
            let height = shut.top - shut.bottom;
            let parts = if self.coin() { 2 } else { 3 };
            let parts = (0..parts).map(|index| {
                let likely = self.between(0.3, 3.0);
                PartMass {
                    name: format!("part {index}"),
                    mass: MassRange {
                        low: likely * self.between(0.8, 1.0),
                        likely,
                        high: likely * self.between(1.0, 1.3),
                    },
                    centre_up: self.between(0.1, 0.9) * height,
                    centre_ahead: self.between(2.0, 40.0),
                    extent_up: self.between(0.05, 0.9) * height,
                    extent_ahead: self.between(0.0, 25.0),
                }
            });
            leaves.push((shut.id, LeafMass::of(parts.collect())));
        }
        let built = leaves.iter().map(|(_, leaf)| leaf.mass).sum();
        DoorMass {
            leaves,
            built,
            typed: None,
            used: built,
        }
    }

    /// A spring that carries something like the door.
    fn spring(&mut self, moment: f64) -> Lift {
        let mut degrees = self.between(0.0, 20.0);
        let mut table = Vec::new();
        while degrees < 130.0 {
            let weakest = moment * self.between(-0.1, 0.9);
            table.push(SpringRow {
                degrees,
                weakest,
                strongest: weakest + moment * self.between(0.0, 0.6),
            });
            degrees += self.between(15.0, 70.0);
        }
        Lift::Spring {
            table,
            turns: 8.0,
            friction: moment * self.between(0.0, 0.15),
        }
    }

    /// A strut whose stroke just suits the motion and whose force carries something like the
    /// door; `None` where no strut is as short as it would have to be.
    fn strut(&mut self, card: &Card, case: &Bare<'_>, state: &DriveState) -> Option<Lift> {
        let door = case.door;
        let whole = door.leaves.iter().map(|leaf| leaf.top - leaf.bottom);
        let mut strut = Strut {
            box_down: self.between(60.0, 320.0),
            box_back: self.between(40.0, 260.0),
            door_down: self.between(0.12, 0.75) * whole.sum::<f64>(),
            door_back: self.between(-10.0, 30.0),
            force: 1.0,
            progression: 1.0,
            stroke: 9000.0,
            extended: 9001.0,
            friction: 0.0,
        };
        let front = door.front_o(card.linkage.front);
        let probe = Drive::for_strut(&strut, door, case.motion, front, state).ok()?;
        let states = (0..=200_u8).map(|step| {
            let push = probe.at(case.motion, f64::from(step) / 200.0);
            push.strut.expect("a strut")
        });
        let (mut least, mut most, mut lever) = (f64::INFINITY, 0.0_f64, 0.0_f64);
        for state in states {
            least = least.min(state.length);
            most = most.max(state.length);
            lever = lever.max(state.arm.abs());
        }
        strut.extended = most + self.between(0.5, 10.0);
        strut.stroke = strut.extended - least + self.between(0.5, 10.0);
        if strut.stroke > 0.6 * strut.extended || lever < 15.0 {
            return None;
        }
        let pieces = f64::from(state.pieces);
        strut.force = 1000.0 * case.moment * self.between(0.3, 1.2) / (lever * pieces);
        strut.progression = self.between(1.0, 1.6);
        strut.friction = strut.force * self.between(0.0, 0.12);
        Some(Lift::Strut(strut))
    }
}

/// A door that moves, before anything lifts it.
struct Bare<'a> {
    door: &'a ClosedDoor,
    motion: &'a Motion,
    /// Largest lift moment on the way, N·m.
    moment: f64,
}

/// A case, or `None` where the card does not close or no strut suits. `in_time`: with a release.
fn case(chance: &mut Chance, (kind, round): (usize, usize), in_time: bool) -> Option<Value> {
    let door = chance.door(if kind == 3 { 2 } else { 1 });
    let mut card = chance.card(kind, &door);
    let motion = motion(&card, SIZE, &door).ok()?;
    if kind == 2 && !stays_parallel(&motion) {
        return None;
    }
    let mass = chance.mass(&door);
    let weights = Weights::of(&door, &mass);
    let state = DriveState {
        pieces: if chance.coin() { 1 } else { 2 },
        setting: chance.between(0.0, 1.0),
        celsius: chance.between(-5.0, 40.0),
    };
    let moments = SHARES.map(|s| lift_moment(&motion, &weights, s).likely.abs());
    let bare = Bare {
        door: &door,
        motion: &motion,
        moment: moments.into_iter().fold(0.5, f64::max),
    };
    let lift = if round.is_multiple_of(3) {
        chance.spring(bare.moment)
    } else {
        chance.strut(&card, &bare, &state)?
    };
    card.sizes
        .iter_mut()
        .for_each(|size| size.lift = lift.clone());
    let size = card.size(SIZE).expect("the size");
    let drive = Drive::new(&card, size, &door, &motion, &state).expect("a drive");
    let setup = Setup {
        motion: &motion,
        weights: &weights,
        drive: &drive,
        grip: Grip::of(&door),
    };
    let levels = [Level::Low, Level::Likely, Level::High];
    let level = levels[round % 3];
    let nothing = Setup {
        drive: &Drive::NOTHING,
        ..setup
    };
    let release = || fall(&setup, level, false).or_else(|| fall(&nothing, level, true));
    let release = if in_time { release() } else { None };
    Some(json!({
        "input": {
            "kind": KINDS[kind],
            "card": {
                "size": SIZE,
                "linkage": serde_json::to_value(&card.linkage).expect("a linkage"),
                "lift": serde_json::to_value(&lift).expect("a lift"),
                "per": serde_json::to_value(card.per).expect("a word"),
            },
            "state": {
                "pieces": state.pieces,
                "setting": state.setting,
                "celsius": state.celsius,
            },
            "door": closed(&door, &mass),
        },
        "answers": {
            "places": SHARES.map(|s| place(&setup, s)),
            "release": release,
        },
    }))
}

/// Whether the two arms of a parallel-rising door keep clear of the line through their pivots.
/// There they could go on crossed as well as parallel, and only the card's word keeps the door
/// upright: free bodies on pins cannot tell.
fn stays_parallel(motion: &Motion) -> bool {
    let height = |s: f64| match motion.pose(s).arms[..] {
        [(from, to), (second, _)] => {
            let (arm, between) = (to - from, second - from);
            arm.cross(between) / (arm.length() * between.length())
        }
        _ => 0.0,
    };
    let sign = height(0.0).signum();
    (0..=200_u8).all(|step| height(f64::from(step) / 200.0) * sign > 0.05)
}

/// The closed door and its parts.
fn closed(door: &ClosedDoor, mass: &DoorMass) -> Value {
    let leaves: Vec<_> = (door.leaves.iter().zip(&mass.leaves))
        .map(|(leaf, (_, mass))| {
            let part = |part: &PartMass| {
                json!({
                    "mass": [part.mass.low, part.mass.likely, part.mass.high],
                    "up": part.centre_up,
                    "ahead": part.centre_ahead,
                    "high": part.extent_up,
                    "thick": part.extent_ahead,
                })
            };
            json!({
                "top": leaf.top,
                "bottom": leaf.bottom,
                "back": leaf.back_o,
                "front": leaf.front_o,
                "parts": mass.parts.iter().map(part).collect::<Vec<_>>(),
            })
        })
        .collect();
    let handle = door
        .handle
        .map(|handle| json!({ "y": handle.y, "projection": handle.projection }));
    json!({
        "underside": door.underside_y,
        "side_front": door.side_front_o,
        "frame_front": door.frame_front_o,
        "joint": door.joint_y,
        "handle": handle,
        "leaves": leaves,
    })
}

/// The answers at one place of the way.
fn place(setup: &Setup<'_>, s: f64) -> Value {
    let point = CurvePoint::of(setup, s);
    let pose = setup.motion.pose(s);
    let rates = setup.motion.velocity(s);
    let leaves: Vec<_> = (pose.leaves.iter().zip(&rates))
        .map(|((_, pose), (_, rate))| {
            json!({
                "angle": pose.angle,
                "shift": pair(pose.shift),
                "turn": rate.turn,
                "rate": pair(rate.shift),
            })
        })
        .collect();
    let forces =
        |force: fn(&CurvePoint, Level) -> Option<f64>| Level::ALL.map(|level| force(&point, level));
    json!({
        "s": s,
        "input": pose.input,
        "leaves": leaves,
        "lift": three(&point.lift),
        "spring": point.push.moment,
        "friction": point.push.friction,
        "strut": point.push.strut.map(|strut| json!({
            "length": strut.length,
            "arm": strut.arm,
            "force": strut.force,
        })),
        "opening": forces(CurvePoint::opening_force),
        "closing": forces(CurvePoint::closing_force),
    })
}

fn pair(vector: SectionVector) -> [f64; 2] {
    [vector.x, vector.y]
}

fn three(figure: &ByMass<f64>) -> [f64; 3] {
    Level::ALL.map(|level| figure.at(level))
}

/// The door let go where it goes on to an end without turning round, if it does so from anywhere.
/// A start near to balance would make the time a matter of rounding.
fn fall(setup: &Setup<'_>, level: Level, bare: bool) -> Option<Value> {
    [0.85, 0.65, 0.45, 0.25].into_iter().find_map(|s| {
        let start = CurvePoint::of(setup, s);
        let moves = start.balance(level).abs() - start.push.friction;
        if moves < 0.1 * start.lift.at(level).abs().max(0.5) {
            return None;
        }
        let found = release(setup, level, s, 0.0);
        let last = found.last()?;
        let way = last.input_speed.signum();
        let one_way = (found.path.iter().skip(1)).all(|moment| moment.input_speed * way > 0.0);
        let ends = matches!(found.ending, Ending::Closes | Ending::Opens);
        (ends && one_way).then(|| {
            json!({
                "bare": bare,
                "level": format!("{level:?}"),
                "s": s,
                "closes": found.ending == Ending::Closes,
                "time": last.time,
                "input_speed": last.input_speed,
                "handle_speed": last.speed,
            })
        })
    })
}
