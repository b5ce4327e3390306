//! The door let go: one degree of freedom with its true inertia, in time.
//!
//! With I(q) the moment of inertia about the input, I' its slope, c the damping of the card:
//! I q'' = -(W - S) - I' q'^2 / 2 - c q' - R sign(q').
//! Integrated by the embedded Runge-Kutta pair of Dormand and Prince (orders 5 and 4, J. Comput.
//! Appl. Math. 6, 1980), which picks its own steps. At a kink of a pose table the path has a
//! corner; the blow that it would mean there is left out.

use crate::gravity::{Level, METRE};
use crate::statics::{Behaviour, CurvePoint, Setup};

/// Largest error of one step, radians and radians a second.
const STEP_TOLERANCE: f64 = 1e-11;
/// Longest step, s: the path is to look smooth.
const LONGEST_STEP: f64 = 0.02;
/// No step is made shorter than this, s.
const SHORTEST_STEP: f64 = 1e-12;
/// A door that has not arrived after this time, s, is said to creep.
pub const LONGEST_TIME: f64 = 20.0;
/// Below this speed a door counts as standing, radians a second.
const STANDING: f64 = 1e-6;

/// The door at one moment.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Moment {
    /// Since it was let go, s.
    pub time: f64,
    /// Where on the way.
    pub s: f64,
    /// Speed of the handle (or bottom edge), m/s, + opening.
    pub speed: f64,
    /// Speed of the input, radians a second, + opening.
    pub input_speed: f64,
}

/// How it ends.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Ending {
    /// It stays where it was let go.
    Holds,
    /// It falls shut.
    Closes,
    /// It comes to its open end.
    Opens,
    /// It comes to rest on the way.
    Stops,
    /// It is still moving after [`LONGEST_TIME`].
    Creeps,
}

/// What becomes of a door that is let go.
#[derive(Debug, Clone, PartialEq)]
pub struct Release {
    /// How it ends.
    pub ending: Ending,
    /// From the letting go to the end.
    pub path: Vec<Moment>,
}

impl Release {
    /// The last moment: its time is the closing time, its speed the speed on arrival.
    #[must_use]
    pub fn last(&self) -> Option<Moment> {
        self.path.last().copied()
    }

    /// Largest speed of the handle on the way, m/s.
    #[must_use]
    pub fn fastest(&self) -> f64 {
        self.path
            .iter()
            .map(|moment| moment.speed.abs())
            .fold(0.0, f64::max)
    }
}

/// Lets a door go at s with an input speed of `push` radians a second (+ opening, 0 for a plain
/// drop). Not-a-number counts as 0.
#[must_use]
pub fn release(setup: &Setup<'_>, level: Level, s: f64, push: f64) -> Release {
    let ode = Ode { setup, level };
    let mut state = [
        setup.motion.input(s),
        if push.is_finite() { push } else { 0.0 },
    ];
    let mut time = 0.0;
    let mut path = vec![ode.moment(time, state)];
    if state[1].abs() < STANDING {
        match ode.behaviour(state[0]) {
            Behaviour::Holds => {
                return Release {
                    ending: Ending::Holds,
                    path,
                };
            }
            Behaviour::Falls if state[0] <= 0.0 => {
                return Release {
                    ending: Ending::Holds,
                    path,
                };
            }
            Behaviour::Rises if state[0] >= setup.motion.end_angle() => {
                return Release {
                    ending: Ending::Holds,
                    path,
                };
            }
            Behaviour::Falls | Behaviour::Rises => {}
        }
    }
    let mut step: f64 = 1e-4;
    while time < LONGEST_TIME {
        let way = ode.way(state);
        let (next, error) = ode.step(state, step, way);
        if (error > 1.0 || error.is_nan()) && step > SHORTEST_STEP {
            let smaller = if error.is_finite() {
                0.9 * error.powf(-0.2)
            } else {
                0.2
            };
            step *= smaller.clamp(0.2, 0.9);
            continue;
        }
        if let Some(ending) = ode.ends_within(next, way) {
            let (end_time, end) = ode.end_of((time, state), (step, way), ending);
            path.push(ode.moment(end_time, end));
            if ending != Ending::Stops || ode.behaviour(end[0]) == Behaviour::Holds {
                return Release { ending, path };
            }
            (time, state) = (end_time, end);
            continue;
        }
        time += step;
        state = next;
        path.push(ode.moment(time, state));
        step = (step * (0.9 * error.max(1e-12).powf(-0.2)).clamp(0.2, 5.0)).min(LONGEST_STEP);
    }
    Release {
        ending: Ending::Creeps,
        path,
    }
}

struct Ode<'a> {
    setup: &'a Setup<'a>,
    level: Level,
}

impl Ode<'_> {
    fn behaviour(&self, input: f64) -> Behaviour {
        let s = input / self.setup.motion.end_angle();
        CurvePoint::of(self.setup, s).behaviour(self.level)
    }

    /// +1 opening, -1 closing: friction works against it for a whole step.
    fn way(&self, state: [f64; 2]) -> f64 {
        if state[1].abs() >= STANDING {
            return state[1].signum();
        }
        match self.behaviour(state[0]) {
            Behaviour::Rises => 1.0,
            Behaviour::Falls => -1.0,
            Behaviour::Holds => 0.0,
        }
    }

    fn slope(&self, [input, speed]: [f64; 2], way: f64) -> [f64; 2] {
        let motion = self.setup.motion;
        // A trial place beyond the ends takes the forces of the end.
        let input = input.clamp(0.0, motion.end_angle());
        let jets = motion.jets(input);
        let [inertia, change] = self.setup.weights.inertia(self.level, &jets);
        let push = self.setup.drive.push(input, &jets);
        let moment = push.moment
            - self.setup.weights.moment(self.level, &jets)
            - push.friction * way
            - motion.damping() * speed
            - change * speed * speed / 2.0;
        [speed, if inertia > 0.0 { moment / inertia } else { 0.0 }]
    }

    /// One step of Dormand and Prince and its error as a share of the tolerance.
    fn step(&self, from: [f64; 2], step: f64, way: f64) -> ([f64; 2], f64) {
        const A: [&[f64]; 6] = [
            &[1.0 / 5.0],
            &[3.0 / 40.0, 9.0 / 40.0],
            &[44.0 / 45.0, -56.0 / 15.0, 32.0 / 9.0],
            &[
                19372.0 / 6561.0,
                -25360.0 / 2187.0,
                64448.0 / 6561.0,
                -212.0 / 729.0,
            ],
            &[
                9017.0 / 3168.0,
                -355.0 / 33.0,
                46732.0 / 5247.0,
                49.0 / 176.0,
                -5103.0 / 18656.0,
            ],
            &[
                35.0 / 384.0,
                0.0,
                500.0 / 1113.0,
                125.0 / 192.0,
                -2187.0 / 6784.0,
                11.0 / 84.0,
            ],
        ];
        const ERROR: [f64; 7] = [
            71.0 / 57600.0,
            0.0,
            -71.0 / 16695.0,
            71.0 / 1920.0,
            -17253.0 / 339_200.0,
            22.0 / 525.0,
            -1.0 / 40.0,
        ];
        let mut slopes = [[0.0; 2]; 7];
        slopes[0] = self.slope(from, way);
        let mut at = from;
        for (stage, row) in A.iter().enumerate() {
            at = from;
            for (weight, slope) in row.iter().zip(&slopes) {
                at[0] += step * weight * slope[0];
                at[1] += step * weight * slope[1];
            }
            slopes[stage + 1] = self.slope(at, way);
        }
        let mut error = [0.0; 2];
        for (weight, slope) in ERROR.iter().zip(&slopes) {
            error[0] += step * weight * slope[0];
            error[1] += step * weight * slope[1];
        }
        (at, error[0].abs().max(error[1].abs()) / STEP_TOLERANCE)
    }

    /// Whether the door has arrived or turned round by the end of a step.
    fn ends_within(&self, next: [f64; 2], way: f64) -> Option<Ending> {
        if next[0] <= 0.0 && way < 0.0 {
            Some(Ending::Closes)
        } else if next[0] >= self.setup.motion.end_angle() && way > 0.0 {
            Some(Ending::Opens)
        } else if next[1] * way < 0.0 {
            Some(Ending::Stops)
        } else {
            None
        }
    }

    /// The moment within a step at which the door ends, by halving. A door that turns round there
    /// has no speed.
    fn end_of(
        &self,
        (time, state): (f64, [f64; 2]),
        (step, way): (f64, f64),
        ending: Ending,
    ) -> (f64, [f64; 2]) {
        let (mut before, mut after) = (0.0, step);
        for _ in 0..60 {
            let middle = (before + after) / 2.0;
            if self
                .ends_within(self.step(state, middle, way).0, way)
                .is_some()
            {
                after = middle;
            } else {
                before = middle;
            }
        }
        let (mut end, _) = self.step(state, after, way);
        if ending == Ending::Stops {
            end[1] = 0.0;
        }
        (time + after, end)
    }

    fn moment(&self, time: f64, [input, speed]: [f64; 2]) -> Moment {
        let motion = self.setup.motion;
        let path = self.setup.grip.path(&motion.jets(input)) * METRE;
        Moment {
            time,
            s: input / motion.end_angle(),
            speed: path * speed,
            input_speed: speed,
        }
    }
}
