//! Moments and hand forces against published values and virtual work.

use flapwright_model::card::Card;
use flapwright_model::lift::{PieceCount, Strut};
use flapwright_motion::closed::ClosedDoor;
use flapwright_motion::drive::DriveState;
use flapwright_motion::gravity::{Level, Weights, lift_moment, potential_energy};
use flapwright_motion::motion::motion;
use flapwright_motion::statics::{
    ACCESSIBLE_FORCE, Behaviour, CurvePoint, Direction, curves, scale_readings,
};
use proptest::prelude::{ProptestConfig, prop_assert, proptest};

use crate::case::{Case, PAIR};
use crate::common::{
    UNDERSIDE, every_kind, flap, long_strut, one_leaf, parallel, plates, with_spring, with_strut,
};

/// A plate of 5 kg and 400 mm without a handle, its middle `ahead` of the axis.
fn plate_flap(ahead: f64) -> (Card, ClosedDoor) {
    let mut door = one_leaf(400.0, 18.0);
    door.handle = None;
    (flap(0.0, -11.0 + ahead, 107.0), door)
}

#[test]
fn a_flap_has_the_lift_moment_of_the_check_values() {
    for (ahead, rows) in [
        (
            0.0,
            &[
                (0.0, 0.0),
                (15.0, 2.5381),
                (30.0, 4.9033),
                (45.0, 6.9343),
                (60.0, 8.4928),
                (75.0, 9.4725),
                (90.0, 9.8066),
                (105.0, 9.4725),
            ][..],
        ),
        (
            9.0,
            &[
                (0.0, 0.4413),
                (30.0, 5.2855),
                (60.0, 8.7135),
                (90.0, 9.8066),
            ],
        ),
    ] {
        // The plate's middle is at o = 11; the axis `ahead` behind it is at back = ahead - 11.
        let (card, door) = plate_flap(ahead);
        let motion = motion(&card, "A", &door).expect("a motion");
        let weights = Weights::of(&door, &plates(&door, 5.0));
        for (degrees, expected) in rows {
            let found = lift_moment(&motion, &weights, degrees / 107.0).likely;
            assert!(
                (found - expected).abs() < 6e-5,
                "{ahead} at {degrees}: {found}"
            );
        }
    }
}

#[test]
fn the_hand_force_at_the_free_edge_passes_five_pounds_where_the_check_values_say() {
    let (card, door) = plate_flap(0.0);
    let card = with_spring(card, 0.0, 0.0);
    let case = Case::new(&card, &door, &plates(&door, 5.0), &PAIR);
    let force = |degrees| {
        case.at(degrees)
            .opening_force(Level::Likely)
            .expect("leverage")
    };
    assert!((force(30.0) - 12.258).abs() < 5e-4, "{}", force(30.0));
    assert!((force(90.0) - 24.517).abs() < 1e-3, "{}", force(90.0));
    assert!((ACCESSIBLE_FORCE - 22.2411).abs() < 5e-5);
    assert!(force(60.0) < ACCESSIBLE_FORCE && force(75.0) > ACCESSIBLE_FORCE);
}

#[test]
fn a_parallel_rising_door_is_a_roberval_balance() {
    // Arms of 250 mm from 40 degrees below level: the moment is m g L cos(arm angle).
    let mut card = parallel();
    if let flapwright_model::linkage::Bodies::Parallel { door_pivot, .. } = &mut card.linkage.bodies
    {
        let angle = 40_f64.to_radians();
        *door_pivot = crate::common::pivot(60.0 + 250.0 * angle.sin(), 190.0 - 250.0 * angle.cos());
    }
    card.linkage.end_degrees = 100.0;
    let door = one_leaf(396.0, 18.0);
    let motion = motion(&card, "A", &door).expect("a motion");
    let mut shifted = plates(&door, 5.0);
    for (_, leaf) in &mut shifted.leaves {
        for part in &mut leaf.parts {
            part.centre_up += 300.0;
        }
    }
    for mass in [plates(&door, 5.0), shifted] {
        let weights = Weights::of(&door, &mass);
        for (arm, expected) in [
            (-40.0, 9.3904),
            (-20.0, 11.5190),
            (0.0, 12.2583),
            (20.0, 11.5190),
            (40.0, 9.3904),
            (60.0, 6.1292),
        ] {
            let found = lift_moment(&motion, &weights, (arm + 40.0) / 100.0).likely;
            assert!((found - expected).abs() < 6e-5, "arm at {arm}: {found}");
        }
    }
}

#[test]
fn pushes_on_doors_have_the_published_moments() {
    // 55.0 N at 0.850 m make 46.75 N·m; 40 N at 0.800 m make 32 N·m; and 17.5 N at 0.600 m hold
    // against 23.3 N at 0.450 m. The moment stands here as friction, so that the hand must give it.
    for (moment, lever, force) in [
        (46.75, 850.0, 55.0),
        (32.0, 800.0, 40.0),
        (17.5 * 0.6, 450.0, 23.333_333),
    ] {
        let mut door = one_leaf(lever, 0.02);
        door.handle = None;
        let card = with_spring(flap(0.0, -2.01, 90.0), 0.0, moment);
        let case = Case::new(&card, &door, &plates(&door, 1e-9), &PAIR);
        let found = case
            .at(45.0)
            .opening_force(Level::Likely)
            .expect("leverage");
        assert!((found - force).abs() < 1e-5, "{found} instead of {force}");
        let back = case
            .at(45.0)
            .closing_force(Level::Likely)
            .expect("leverage");
        assert!((back + force).abs() < 1e-5, "{back} instead of -{force}");
    }
}

#[test]
fn pair_and_piece_are_told_apart() {
    let door = one_leaf(400.0, 18.0);
    let moment = |per: PieceCount, pieces: u8| {
        let mut card = with_spring(flap(0.0, -2.0, 90.0), 6.0, 1.0);
        card.per = per;
        let state = DriveState { pieces, ..PAIR };
        let push = Case::new(&card, &door, &plates(&door, 5.0), &state)
            .at(30.0)
            .push;
        (push.moment, push.friction)
    };
    assert_eq!(moment(PieceCount::PerPair, 2), (6.0, 1.0));
    assert_eq!(moment(PieceCount::PerPair, 1), (3.0, 0.5));
    assert_eq!(moment(PieceCount::PerPiece, 2), (12.0, 2.0));
    assert_eq!(moment(PieceCount::PerPiece, 1), (6.0, 1.0));
}

#[test]
fn a_door_falls_where_its_moment_beats_the_spring_and_the_friction() {
    // W = 9.80665 sin q. Against 4.903325 it balances at 30 degrees; with 1 N·m of friction it
    // falls from asin(5.903325 / 9.80665) on and rises below asin(3.903325 / 9.80665).
    let (card, door) = plate_flap(0.0);
    let card = with_spring(card, 4.903_325, 1.0);
    let case = Case::new(&card, &door, &plates(&door, 5.0), &PAIR);
    let zones = curves(&case.setup(), 401).zones(Level::Likely);
    let behaviours: Vec<_> = zones.iter().map(|zone| zone.behaviour).collect();
    assert_eq!(
        behaviours,
        [Behaviour::Rises, Behaviour::Holds, Behaviour::Falls]
    );
    for (zone, moment) in zones.iter().zip([3.903_325_f64, 5.903_325]) {
        let expected = (moment / 9.806_65).asin().to_degrees();
        assert!(
            (zone.to * 107.0 - expected).abs() < 1e-3,
            "{} {expected}",
            zone.to * 107.0
        );
    }
    assert!((zones[2].to - 1.0).abs() < 1e-12);
}

#[test]
fn no_leverage_is_said_and_never_infinite() {
    let mut door = one_leaf(400.0, 18.0);
    // The handle's middle is at o = 20 + 15; the axis goes through it.
    if let Some(handle) = &mut door.handle {
        handle.y = UNDERSIDE - 100.0;
    }
    let card = with_spring(flap(100.0, -35.0, 90.0), 1.0, 1.0);
    let case = Case::new(&card, &door, &plates(&door, 5.0), &PAIR);
    let curves = curves(&case.setup(), 50);
    for point in &curves.points {
        assert_eq!(point.opening_force(Level::High), None);
        assert_eq!(point.closing_force(Level::Low), None);
    }
    assert_eq!(curves.hand(Direction::Opening, Level::Likely).largest, None);
    assert_eq!(curves.without_leverage(), [(0.0, 1.0)]);
    assert!(
        curves
            .points
            .iter()
            .all(|it| it.force_range(Direction::Opening).is_none())
    );
}

#[test]
fn the_range_of_the_hand_force_holds_all_masses_and_the_nearest_place_is_found() {
    let (card, door) = plate_flap(0.0);
    let case = Case::new(
        &with_spring(card, 2.0, 1.0),
        &door,
        &plates(&door, 5.0),
        &PAIR,
    );
    let curves = curves(&case.setup(), 101);
    assert_eq!(curves.without_leverage(), []);
    for point in &curves.points {
        let (least, most) = point.force_range(Direction::Closing).expect("leverage");
        for level in Level::ALL {
            let force = point.closing_force(level).expect("leverage");
            assert!((least..=most).contains(&force), "{least} {force} {most}");
        }
    }
    for (s, nearest) in [(-1.0, 0.0), (0.504, 0.5), (0.506, 0.51), (2.0, 1.0)] {
        let found = curves.nearest(s).expect("a place").s;
        assert!((found - nearest).abs() < 1e-9, "{s}: {found}");
    }
}

#[test]
fn the_summary_has_both_ends_and_the_largest_force() {
    let (card, door) = plate_flap(0.0);
    let case = Case::new(
        &with_spring(card, 0.0, 0.0),
        &door,
        &plates(&door, 5.0),
        &PAIR,
    );
    let summary = curves(&case.setup(), 215).hand(Direction::Opening, Level::Likely);
    assert!(summary.closed.expect("leverage").abs() < 1e-9);
    assert!((summary.open.expect("leverage") - 24.5166 * 107_f64.to_radians().sin()).abs() < 1e-3);
    let (largest, s) = summary.largest.expect("leverage");
    assert!(
        (largest - 24.517).abs() < 1e-3 && (s * 107.0 - 90.0).abs() < 0.3,
        "{largest} {s}"
    );
}

#[test]
fn a_cycle_of_opening_and_closing_costs_friction_only() {
    for (name, card, door) in every_kind() {
        // Friction of 0.7 N·m both ways over the whole angle.
        let card = with_spring(card, 3.0, 0.7);
        let case = Case::new(&card, &door, &plates(&door, 4.0), &PAIR);
        let work = curves(&case.setup(), 200).cycle_work(Level::High);
        let expected = 2.0 * 0.7 * case.motion.end_angle();
        assert!(
            (work - expected).abs() < 1e-9,
            "{name}: {work} instead of {expected}"
        );
    }
}

#[test]
fn half_the_sum_of_two_readings_is_balance_and_half_the_difference_friction() {
    assert_eq!(scale_readings(18.0, 10.0), (14.0, 4.0));
}

proptest! {
    #![proptest_config(ProptestConfig { failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn moments_are_the_slopes_of_the_energies(
        s in 0.01_f64..0.99,
        box_down in 60.0_f64..400.0,
        box_back in 20.0_f64..250.0,
        door_down in 20.0_f64..300.0,
        door_back in -10.0_f64..30.0,
        celsius in -5.0_f64..40.0,
        kilograms in 0.5_f64..12.0,
    ) {
        let strut = Strut { box_down, box_back, door_down, door_back, ..long_strut() };
        let state = DriveState { pieces: 2, setting: 0.4, celsius };
        for (name, card, door) in every_kind() {
            for card in [with_strut(card.clone(), strut), card] {
                let case = Case::new(&card, &door, &plates(&door, kilograms), &state);
                let step = 1e-5;
                let input = 2.0 * step * case.motion.end_angle();
                let v = |s| potential_energy(&case.motion, &case.weights, s).high;
                let e = |s| case.drive.energy(&case.motion, s);
                let w = (v(s + step) - v(s - step)) / input;
                let m = -(e(s + step) - e(s - step)) / input;
                let point = CurvePoint::of(&case.setup(), s);
                prop_assert!((point.lift.high - w).abs() < 1e-5 * (1.0 + w.abs()), "{} W", name);
                prop_assert!((point.push.moment - m).abs() < 1e-5 * (1.0 + m.abs()), "{} S", name);
            }
        }
    }
}
