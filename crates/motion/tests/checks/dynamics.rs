//! Doors let go, against published pendulums and conservation of energy.

use flapwright_model::card::Card;
use flapwright_motion::closed::ClosedDoor;
use flapwright_motion::drive::{Drive, DriveState};
use flapwright_motion::dynamics::{Ending, Release, release};
use flapwright_motion::gravity::{GRAVITY, Level, Weights, inertia, potential_energy};
use flapwright_motion::motion::motion;
use flapwright_motion::statics::{Grip, Setup};

use crate::common::{every_kind, flap, one_leaf, plates, with_spring};

const PAIR: DriveState = DriveState {
    pieces: 2,
    setting: 0.0,
    celsius: 20.0,
};

fn let_go(card: &Card, door: &ClosedDoor, s: f64, push: f64) -> Release {
    let motion = motion(card, "A", door).expect("a motion");
    let weights = Weights::of(door, &plates(door, 5.0));
    let drive = Drive::new(card, &card.sizes[0], door, &motion, &PAIR).expect("a drive");
    let setup = Setup {
        motion: &motion,
        weights: &weights,
        drive: &drive,
        grip: Grip::of(door),
    };
    release(&setup, Level::Likely, s, push)
}

/// A thin plate about its top edge: a rod pendulum.
fn rod(height: f64, end_degrees: f64) -> (Card, ClosedDoor) {
    let mut door = one_leaf(height, 0.002);
    door.handle = None;
    (with_spring(flap(0.0, -2.001, end_degrees), 0.0, 0.0), door)
}

#[test]
fn a_rod_pendulum_swings_as_published() {
    // 0.30 m, let go at 30 degrees: 3.62347 radians a second at the bottom after 0.228306 s, with
    // g = 9.8; both go with the root of g.
    let (card, door) = rod(300.0, 30.0);
    let fall = let_go(&card, &door, 1.0, 0.0);
    assert_eq!(fall.ending, Ending::Closes);
    let last = fall.last().expect("a path");
    let root = (GRAVITY / 9.8).sqrt();
    assert!((last.input_speed + 3.62347 * root).abs() < 1e-5, "{last:?}");
    assert!((last.time - 0.228_306 / root).abs() < 1e-6, "{last:?}");
}

#[test]
fn a_free_flap_shuts_at_the_published_speed() {
    let (card, door) = rod(400.0, 90.0);
    let last = let_go(&card, &door, 1.0, 0.0).last().expect("a path");
    assert!((last.input_speed + 8.5761).abs() < 5e-5, "{last:?}");
    assert!((last.speed + 3.4304).abs() < 5e-5, "{last:?}");
    assert!(last.s.abs() < 1e-9);
}

#[test]
fn a_falling_door_turns_the_energy_it_loses_into_speed() {
    for (name, card, door) in every_kind() {
        let card = with_spring(card, 0.0, 0.0);
        let motion = motion(&card, "A", &door).expect(name);
        let weights = Weights::of(&door, &plates(&door, 5.0));
        let fall = let_go(&card, &door, 0.6, 0.0);
        assert_eq!(fall.ending, Ending::Closes, "{name}");
        let last = fall.last().expect("a path");
        let energy = |s| potential_energy(&motion, &weights, s).likely;
        let lost = energy(0.6) - energy(0.0);
        let speed = inertia(&motion, &weights, 0.0).likely * last.input_speed.powi(2) / 2.0;
        assert!(
            (speed - lost).abs() < 1e-6 * lost,
            "{name}: {speed} J from {lost} J"
        );
    }
}

#[test]
fn friction_takes_its_work_and_holds_a_door_that_it_can_hold() {
    // From 90 degrees, 1 N·m over a quarter turn takes pi / 2 J of m g H / 2 = 9.80665 J.
    let (card, door) = rod(400.0, 90.0);
    let fall = let_go(&with_spring(card.clone(), 0.0, 1.0), &door, 1.0, 0.0);
    let last = fall.last().expect("a path");
    let kinetic = 5.0 * 0.4 * 0.4 / 3.0 * last.input_speed.powi(2) / 2.0;
    let expected = 9.806_65 - std::f64::consts::FRAC_PI_2;
    assert!(
        (kinetic - expected).abs() < 1e-4,
        "{kinetic} instead of {expected}"
    );
    let held = let_go(&with_spring(card.clone(), 9.0, 1.0), &door, 1.0, 0.0);
    assert_eq!(held.ending, Ending::Holds);
    let rising = let_go(&with_spring(card, 11.0, 1.0), &door, 0.5, 0.0);
    assert_eq!(rising.ending, Ending::Opens);
}

#[test]
fn a_pushed_door_comes_to_rest_where_friction_has_taken_the_push() {
    // A light plate, 2 N·m of friction: I q'^2 / 2 = R angle. I = 5 x 0.4^2 / 3, and the plate's
    // own weight is balanced by nothing: push it up from closed and it stops, then falls back.
    let (card, door) = rod(400.0, 90.0);
    let up_and_back = let_go(&with_spring(card.clone(), 0.0, 0.1), &door, 0.0, 3.0);
    assert_eq!(up_and_back.ending, Ending::Closes);
    let top = up_and_back
        .path
        .iter()
        .map(|moment| moment.s)
        .fold(0.0, f64::max);
    // I q'^2 / 2 = 1.2 J = m g H / 2 (1 - cos q) + 0.1 q.
    let angle = top * std::f64::consts::FRAC_PI_2;
    let spent = 9.806_65 * (1.0 - angle.cos()) + 0.1 * angle;
    assert!((spent - 1.2).abs() < 1e-5, "{spent}");
    let stuck = let_go(&with_spring(card, 0.0, 12.0), &door, 0.0, 3.0);
    assert_eq!(stuck.ending, Ending::Stops);
}

#[test]
fn damping_slows_the_fall() {
    let (mut card, door) = rod(400.0, 90.0);
    let free = let_go(&card, &door, 0.9, 0.0).last().expect("a path");
    card.linkage.damping = 4.0;
    let slow = let_go(&card, &door, 0.9, 0.0).last().expect("a path");
    assert!(slow.time > 1.5 * free.time, "{slow:?} {free:?}");
    assert!(
        slow.speed.abs() < 0.7 * free.speed.abs(),
        "{slow:?} {free:?}"
    );
}
