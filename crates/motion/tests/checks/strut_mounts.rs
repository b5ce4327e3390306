//! The search for anchors of a gas strut.

use flapwright_model::card::Span;
use flapwright_model::lift::Strut;
use flapwright_motion::closed::ClosedDoor;
use flapwright_motion::drive::{Drive, DriveState};
use flapwright_motion::gravity::{Level, Weights};
use flapwright_motion::motion::{Motion, motion};
use flapwright_motion::statics::{Behaviour, CurvePoint, Grip, Setup, curves};
use flapwright_motion::strut_mounts::{
    MountAnswer, MountError, MountLimits, MountQuestion, StrutOnHand, in_tenths, place_strut,
};

use crate::common::{COLD_AND_HOT, flap, long_strut, one_leaf, plates};

const LIMITS: MountLimits = MountLimits {
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

struct Flap {
    door: ClosedDoor,
    motion: Motion,
    weights: Weights,
}

impl Flap {
    fn new() -> Self {
        let door = one_leaf(400.0, 18.0);
        let motion = motion(&flap(-10.0, -9.0, 95.0), "A", &door).expect("a motion");
        let weights = Weights::of(&door, &plates(&door, 5.0));
        Self {
            door,
            motion,
            weights,
        }
    }

    fn question<'a>(&'a self, struts: &'a [StrutOnHand]) -> MountQuestion<'a> {
        let Self {
            door,
            motion,
            weights,
        } = self;
        MountQuestion {
            motion,
            weights,
            door,
            front_o: 0.0,
            pieces: 2,
            cold_and_hot: COLD_AND_HOT,
            limits: &LIMITS,
            struts,
        }
    }

    fn point(&self, strut: &Strut, celsius: f64, s: f64) -> CurvePoint {
        let state = DriveState {
            pieces: 2,
            setting: 0.0,
            celsius,
        };
        let drive = Drive::for_strut(strut, &self.door, &self.motion, 0.0, &state).expect("drive");
        let grip = Grip::of(&self.door);
        let (motion, weights) = (&self.motion, &self.weights);
        CurvePoint::of(
            &Setup {
                motion,
                weights,
                drive: &drive,
                grip,
            },
            s,
        )
    }

    /// The hand force furthest from 0, or `None` where a condition fails.
    fn largest(&self, strut: &Strut) -> Option<f64> {
        let state = |celsius| DriveState {
            pieces: 2,
            setting: 0.0,
            celsius,
        };
        let drive =
            |celsius| Drive::for_strut(strut, &self.door, &self.motion, 0.0, &state(celsius)).ok();
        let [cold, nominal, hot] = [drive(5.0)?, drive(20.0)?, drive(40.0)?];
        let grip = Grip::of(&self.door);
        let (motion, weights) = (&self.motion, &self.weights);
        let setup = |drive| Setup {
            motion,
            weights,
            drive,
            grip,
        };
        let falls = CurvePoint::of(&setup(&cold), 1.0).behaviour(Level::High) == Behaviour::Falls;
        let rises = CurvePoint::of(&setup(&hot), 0.0).behaviour(Level::Low) == Behaviour::Rises;
        let force = |point: &CurvePoint| {
            Level::ALL
                .into_iter()
                .flat_map(|level| [point.opening_force(level), point.closing_force(level)])
                .flatten()
                .fold(0.0, |most: f64, force| most.max(force.abs()))
        };
        let points = curves(&setup(&nominal), 41).points;
        (!falls && !rises).then(|| points.iter().map(force).fold(0.0, f64::max))
    }
}

fn struts() -> Vec<StrutOnHand> {
    let strut = |name: &str, force, stroke, extended| StrutOnHand {
        name: name.to_owned(),
        strut: Strut {
            force,
            stroke,
            extended,
            friction: 5.0,
            progression: 1.25,
            ..long_strut()
        },
    };
    [80.0, 120.0, 180.0]
        .into_iter()
        .flat_map(|force| {
            [
                strut(&format!("{force} N short"), force, 60.0, 195.0),
                strut(&format!("{force} N long"), force, 100.0, 285.0),
            ]
        })
        .collect()
}

fn answers() -> Vec<MountAnswer> {
    place_strut(&Flap::new().question(&struts()), &mut |_| true).expect("anchors")
}

#[test]
fn every_answer_keeps_its_promises_and_stays_within_the_limits() {
    let flap = Flap::new();
    for answer in answers() {
        let strut = &answer.strut;
        for (value, span) in [
            (strut.box_down, LIMITS.box_down),
            (strut.box_back, LIMITS.box_back),
            (strut.door_down, LIMITS.door_down),
            (strut.door_back, LIMITS.door_back),
        ] {
            assert!(value >= span.min && value <= span.max, "{answer:?}");
        }
        let open = flap.point(strut, 5.0, 1.0);
        assert_ne!(open.behaviour(Level::High), Behaviour::Falls, "{answer:?}");
        let shut = flap.point(strut, 40.0, 0.0);
        assert_ne!(shut.behaviour(Level::Low), Behaviour::Rises, "{answer:?}");
        assert!(
            answer.holds_by >= 0.0 && answer.shut_by >= 0.0,
            "{answer:?}"
        );
    }
}

#[test]
fn answers_in_tenths_keep_the_promises_too() {
    let flap = Flap::new();
    let struts = struts();
    let question = flap.question(&struts);
    let mut found = 0;
    for answer in answers() {
        let Some(tidy) = in_tenths(&question, &answer) else {
            continue;
        };
        found += 1;
        for (tidy, exact) in [
            (tidy.strut.box_down, answer.strut.box_down),
            (tidy.strut.box_back, answer.strut.box_back),
            (tidy.strut.door_down, answer.strut.door_down),
            (tidy.strut.door_back, answer.strut.door_back),
        ] {
            assert!((tidy - exact).abs() <= 0.1 + 1e-9, "{tidy} {exact}");
            let tenths = tidy * 10.0;
            assert!((tenths - tenths.round()).abs() < 1e-9, "{tidy}");
        }
        assert!(tidy.holds_by >= 0.0 && tidy.shut_by >= 0.0, "{tidy:?}");
        let more = tidy.largest_force - answer.largest_force;
        assert!(more < 1.0, "{more} N more by rounding");
    }
    assert!(found > 0);
}

#[test]
fn answers_come_in_the_order_of_their_hand_force() {
    let forces: Vec<f64> = answers()
        .iter()
        .map(|answer| answer.largest_force)
        .collect();
    assert!(!forces.is_empty() && forces.is_sorted(), "{forces:?}");
}

#[test]
fn the_same_question_has_the_same_answer() {
    assert_eq!(answers(), answers());
}

#[test]
fn no_place_of_a_grid_over_the_limits_is_better() {
    let flap = Flap::new();
    for answer in answers() {
        let mut best = f64::INFINITY;
        let places = |span: Span| {
            (0..=7_u8).map(move |i| span.min + (span.max - span.min) * f64::from(i) / 7.0)
        };
        for box_down in places(LIMITS.box_down) {
            for box_back in places(LIMITS.box_back) {
                for door_down in places(LIMITS.door_down) {
                    for door_back in [5.0, 17.5, 30.0] {
                        let strut = Strut {
                            box_down,
                            box_back,
                            door_down,
                            door_back,
                            ..answer.strut
                        };
                        best = best.min(flap.largest(&strut).unwrap_or(f64::INFINITY));
                    }
                }
            }
        }
        let found = answer.largest_force;
        assert!(
            found <= best + 0.05,
            "{}: {found} N, the grid has {best} N",
            answer.name
        );
    }
}

#[test]
fn it_is_said_plainly_when_nothing_holds_the_door() {
    let mut weak = struts();
    weak.truncate(2);
    for on_hand in &mut weak {
        on_hand.strut.force = 8.0;
    }
    let refused = place_strut(&Flap::new().question(&weak), &mut |_| true).expect_err("too weak");
    let words = refused.to_string();
    assert!(
        words.contains("N·m are missing to hold the heaviest door open"),
        "{words}"
    );
}

#[test]
fn the_search_can_be_stopped_and_tells_how_far_it_is() {
    let mut told = Vec::new();
    let stopped = place_strut(&Flap::new().question(&struts()), &mut |done| {
        told.push(done);
        told.len() < 4
    });
    assert_eq!(stopped, Err(MountError::Stopped));
    assert!(
        told.is_sorted() && told[3] > 0.0 && told[3] < 1.0,
        "{told:?}"
    );
}

#[test]
fn a_question_without_struts_or_place_is_refused() {
    let flap = Flap::new();
    assert_eq!(
        place_strut(&flap.question(&[]), &mut |_| true),
        Err(MountError::NoStruts)
    );
    let limits = MountLimits {
        door_back: Span { min: 9.0, max: 3.0 },
        ..LIMITS
    };
    let struts = struts();
    let question = MountQuestion {
        limits: &limits,
        ..flap.question(&struts)
    };
    let refused = place_strut(&question, &mut |_| true).expect_err("no place");
    assert!(
        refused.to_string().contains("anchor on the door, back"),
        "{refused}"
    );
}
