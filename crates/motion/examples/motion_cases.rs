//! Prints a hundred random valid cards with what this crate makes of them, one JSON object a
//! line, for `tests/outside/motion_check.py`, which works them out again by other means.
#![expect(
    clippy::expect_used,
    reason = "a case that cannot be printed is a failure"
)]

use flapwright_model::card::{Card, PerSize};
use flapwright_model::lift::Strut;
use flapwright_model::linkage::{Bodies, Pivot};
use flapwright_model::material::MassRange;
use flapwright_motion::closed::ClosedDoor;
use flapwright_motion::drive::{Drive, DriveState};
use flapwright_motion::dynamics::{Ending, release};
use flapwright_motion::gravity::{Level, Weights};
use flapwright_motion::mass::{DoorMass, LeafMass, PartMass};
use flapwright_motion::motion::motion;
use flapwright_motion::statics::{CurvePoint, Grip, Setup};
use serde_json::{Value, json};

#[path = "../tests/checks/common.rs"]
#[expect(dead_code, reason = "the tests use the rest")]
mod common;

use common::{flap, folding, one_leaf, over_the_top, parallel, two_leaves, with_strut};

/// A linear congruential generator (Knuth's MMIX constants): the same cases every time.
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

    fn shift(&mut self, pivot: &mut Pivot, by: f64) {
        for number in [&mut pivot.down, &mut pivot.back] {
            if let PerSize::All(value) = number {
                *value += self.between(-by, by);
            }
        }
    }

    fn card(&mut self, kind: usize) -> Card {
        let mut card = match kind {
            0 => flap(12.0, 4.0, 107.0),
            1 => parallel(),
            2 => folding(),
            _ => over_the_top(),
        };
        match &mut card.linkage.bodies {
            Bodies::FixedAxis { axis } => self.shift(axis, 20.0),
            Bodies::PoseTable { .. } => {}
            Bodies::Parallel {
                box_pivot,
                door_pivot,
                second_down,
                second_back,
            } => {
                self.shift(box_pivot, 25.0);
                self.shift(door_pivot, 25.0);
                *second_down += self.between(-20.0, 20.0);
                *second_back += self.between(-20.0, 20.0);
            }
            Bodies::Folding {
                axis,
                joint_behind,
                link_box,
                link_below_joint,
                link_behind,
            } => {
                self.shift(axis, 6.0);
                *joint_behind += self.between(-8.0, 8.0);
                self.shift(link_box, 25.0);
                *link_below_joint += self.between(-20.0, 20.0);
                *link_behind += self.between(-10.0, 10.0);
            }
            Bodies::TwoArms {
                box_first,
                door_first,
                box_second,
                door_second,
            } => {
                for pivot in [box_first, door_first, box_second, door_second] {
                    self.shift(pivot, 12.0);
                }
            }
        }
        card.linkage.end_degrees *= self.between(0.7, 1.0);
        let strut = Strut {
            box_down: self.between(150.0, 300.0),
            box_back: self.between(60.0, 180.0),
            door_down: self.between(60.0, 200.0),
            door_back: self.between(0.0, 20.0),
            force: self.between(5.0, 35.0),
            progression: self.between(1.05, 1.5),
            friction: self.between(0.0, 3.0),
            stroke: 1500.0,
            extended: 1505.0,
        };
        with_strut(card, strut)
    }

    fn mass(&mut self, door: &ClosedDoor) -> DoorMass {
        let mut leaf = |height: f64| {
            let mut part = |name: &str| PartMass {
                name: name.to_owned(),
                mass: MassRange::exact(self.between(0.5, 4.0)),
                centre_up: self.between(0.2, 0.8) * height,
                centre_ahead: self.between(2.0, 30.0),
                extent_up: self.between(0.1, 1.0) * height,
                extent_ahead: self.between(0.0, 20.0),
            };
            LeafMass::of(vec![part("one"), part("two")])
        };
        let leaves: Vec<_> = door
            .leaves
            .iter()
            .map(|shut| (shut.id, leaf(shut.top - shut.bottom)))
            .collect();
        let built = leaves.iter().map(|(_, leaf)| leaf.mass).sum();
        DoorMass {
            leaves,
            built,
            typed: None,
            used: built,
        }
    }
}

fn main() {
    let mut chance = Chance(20_261_125);
    let mut printed = 0;
    for round in 0..4000_usize {
        if printed == 100 {
            break;
        }
        let card = chance.card(round % 4);
        let door = if round % 4 == 2 {
            two_leaves()
        } else {
            one_leaf(396.0, 18.0)
        };
        let mass = chance.mass(&door);
        if let Some(case) = case(&card, &door, &mass) {
            println!("{case}");
            printed += 1;
        }
    }
    assert_eq!(printed, 100, "too few cards close");
}

/// A case, or `None` where the card does not close.
fn case(card: &Card, door: &ClosedDoor, mass: &DoorMass) -> Option<Value> {
    let motion = motion(card, "A", door).ok()?;
    let state = DriveState {
        pieces: 2,
        setting: 0.0,
        celsius: 12.0,
    };
    let drive = Drive::new(card, &card.sizes[0], door, &motion, &state).ok()?;
    let weights = Weights::of(door, mass);
    let grip = Grip::of(door);
    let setup = Setup {
        motion: &motion,
        weights: &weights,
        drive: &drive,
        grip,
    };
    let places: Vec<Value> = (0..=8_u8)
        .map(|step| {
            let s = f64::from(step) / 8.0;
            let point = CurvePoint::of(&setup, s);
            let pose = motion.pose(s);
            let leaves: Vec<_> = pose
                .leaves
                .iter()
                .map(|(_, pose)| json!([pose.angle, pose.shift.x, pose.shift.y]))
                .collect();
            let strut = point.push.strut.expect("a strut");
            json!({
                "input": point.input,
                "leaves": leaves,
                "lift": point.lift.likely,
                "spring": point.push.moment,
                "friction": point.push.friction,
                "strut_length": strut.length,
                "strut_arm": strut.arm,
                "opening": point.opening_force(Level::Likely),
                "closing": point.closing_force(Level::Likely),
            })
        })
        .collect();
    let fall = release(&setup, Level::Likely, 0.5, 0.0);
    let last = fall.last().expect("a path");
    let shut = fall.ending == Ending::Closes;
    let masses: Vec<_> = mass
        .leaves
        .iter()
        .zip(&door.leaves)
        .map(|((_, leaf), shut)| {
            let parts: Vec<_> = leaf
                .parts
                .iter()
                .map(|part| {
                    json!({
                        "mass": part.mass.likely,
                        "o": shut.back_o + part.centre_ahead,
                        "y": shut.bottom + part.centre_up,
                        "high": part.extent_up,
                        "thick": part.extent_ahead,
                    })
                })
                .collect();
            Value::from(parts)
        })
        .collect();
    Some(json!({
        "linkage": format!("{:?}", card.kind),
        "bodies": serde_json::to_value(&card.linkage.bodies).expect("bodies"),
        "strut": serde_json::to_value(&card.sizes[0].lift).expect("a strut"),
        "celsius": state.celsius,
        "pieces": state.pieces,
        "underside": door.underside_y,
        "front": door.side_front_o,
        "back_o": door.leaves.iter().map(|leaf| leaf.back_o).collect::<Vec<_>>(),
        "bottoms": door.leaves.iter().map(|leaf| leaf.bottom).collect::<Vec<_>>(),
        "joint_y": door.joint_y,
        "masses": masses,
        "grip": [grip.place.x, grip.place.y],
        "end": motion.end_angle(),
        "places": places,
        "fall": shut.then(|| json!({ "time": last.time, "input_speed": last.input_speed })),
    }))
}
