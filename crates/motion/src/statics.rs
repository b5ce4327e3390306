//! What the hand feels: lift moment against spring moment, by virtual work.
//!
//! With q the input angle, W = dV/dq the lift moment (+ pulls shut), S = -dE/dq the spring moment
//! (+ pushes open) and R >= 0 the friction, the hand must give W - S + R to open slowly and, in
//! the opening direction, W - S - R to close. The door holds by itself where |W - S| <= R. The
//! force at the handle is that moment divided by the length of the handle's path per radian,
//! |dr/dq|; it is + in the opening direction.

use flapwright_model::space::SectionPoint;

use crate::closed::ClosedDoor;
use crate::drive::{Drive, Push};
use crate::gravity::{ByMass, Level, METRE, Weights};
use crate::motion::Motion;
use crate::pose::PoseJet;

/// Where the handle moves by less than this per radian of the input, mm, it has no leverage and
/// no force is given. Chosen here: no hand opens a door by a lever of 20 mm; it pushes elsewhere.
pub const LEAST_LEVERAGE: f64 = 20.0;

/// Largest force of one hand at an operable part, N: 5 lbf (2010 ADA Standards, 309.4).
pub const ACCESSIBLE_FORCE: f64 = 5.0 * 4.448_221_615_260_5;

/// Where the hand takes hold.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Grip {
    /// The place, door closed, mm.
    pub place: SectionPoint,
    on_second: bool,
}

impl Grip {
    /// The middle of the handle; without a handle the middle of the door's bottom edge.
    #[must_use]
    pub fn of(door: &ClosedDoor) -> Self {
        let on_second = door.leaves.len() > 1;
        let place = door
            .leaves
            .last()
            .map_or_else(SectionPoint::zero, |leaf| match &door.handle {
                Some(handle) => SectionPoint::new(leaf.front_o + handle.projection / 2.0, handle.y),
                None => SectionPoint::new((leaf.back_o + leaf.front_o) / 2.0, leaf.bottom),
            });
        Self { place, on_second }
    }

    /// Length of the path per radian of the input, mm.
    pub(crate) fn path(&self, (first, second): &(PoseJet, Option<PoseJet>)) -> f64 {
        let jet = match second {
            Some(jet) if self.on_second => jet,
            _ => first,
        };
        let [_, path, _] = jet.point(self.place);
        path.length()
    }
}

/// A door that can be reckoned with: how it moves, what it weighs, what lifts it, where it is
/// held.
#[derive(Debug, Clone, Copy)]
pub struct Setup<'a> {
    /// How it moves.
    pub motion: &'a Motion,
    /// What it weighs.
    pub weights: &'a Weights,
    /// What lifts it.
    pub drive: &'a Drive,
    /// Where the hand takes hold.
    pub grip: Grip,
}

/// What the door does when let go.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Behaviour {
    /// It moves towards closed.
    Falls,
    /// It stays.
    Holds,
    /// It moves towards open.
    Rises,
}

impl Behaviour {
    /// From the balance W - S and the friction R, N·m.
    #[must_use]
    pub fn of(balance: f64, friction: f64) -> Self {
        if balance > friction {
            Self::Falls
        } else if balance < -friction {
            Self::Rises
        } else {
            Self::Holds
        }
    }

    /// In plain words.
    #[must_use]
    pub const fn words(self) -> &'static str {
        match self {
            Self::Falls => "falls",
            Self::Holds => "holds",
            Self::Rises => "is pushed up",
        }
    }
}

/// Everything at one place of the way.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct CurvePoint {
    /// From closed (0) to open (1).
    pub s: f64,
    /// Input angle, radians.
    pub input: f64,
    /// Lift moment W, N·m.
    pub lift: ByMass<f64>,
    /// Spring moment S, friction R, and the strut.
    pub push: Push,
    /// Length of the handle's path per radian of the input, mm.
    pub leverage: f64,
}

impl CurvePoint {
    /// Everything at s.
    #[must_use]
    pub fn of(setup: &Setup<'_>, s: f64) -> Self {
        let input = setup.motion.input(s);
        let jets = setup.motion.jets(input);
        Self {
            s,
            input,
            lift: setup.weights.moments(&jets),
            push: setup.drive.push(input, &jets),
            leverage: setup.grip.path(&jets),
        }
    }

    /// W - S, N·m.
    #[must_use]
    pub fn balance(&self, level: Level) -> f64 {
        self.lift.at(level) - self.push.moment
    }

    /// What the door does when let go here.
    #[must_use]
    pub fn behaviour(&self, level: Level) -> Behaviour {
        Behaviour::of(self.balance(level), self.push.friction)
    }

    /// Hand force for opening slowly, N: + in the opening direction. `None`: no leverage here.
    #[must_use]
    pub fn opening_force(&self, level: Level) -> Option<f64> {
        self.force(self.balance(level) + self.push.friction)
    }

    /// Hand force for closing slowly, N, counted in the opening direction: below 0 the hand pulls
    /// the door shut. `None`: no leverage here.
    #[must_use]
    pub fn closing_force(&self, level: Level) -> Option<f64> {
        self.force(self.balance(level) - self.push.friction)
    }

    /// Least and greatest hand force for one way over all masses of the door, N. `None`: no
    /// leverage here.
    #[must_use]
    pub fn force_range(&self, way: Direction) -> Option<(f64, f64)> {
        let mut range: Option<(f64, f64)> = None;
        for level in Level::ALL {
            let force = match way {
                Direction::Opening => self.opening_force(level),
                Direction::Closing => self.closing_force(level),
            }?;
            let (least, most) = range.unwrap_or((force, force));
            range = Some((least.min(force), most.max(force)));
        }
        range
    }

    fn force(&self, moment: f64) -> Option<f64> {
        (self.leverage >= LEAST_LEVERAGE).then(|| moment / (self.leverage * METRE))
    }
}

/// Which way the hand moves the door.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Direction {
    /// Towards open.
    Opening,
    /// Towards closed.
    Closing,
}

/// A stretch of the way on which the door does the same when let go.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Zone {
    /// What it does.
    pub behaviour: Behaviour,
    /// From this s.
    pub from: f64,
    /// To this s.
    pub to: f64,
}

/// The curves of one door, from closed to fully open.
#[derive(Debug, Clone, PartialEq)]
pub struct Curves {
    /// In rising s, the first at 0 and the last at 1.
    pub points: Vec<CurvePoint>,
}

/// Hand force at the ends and where it is largest.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct HandSummary {
    /// At closed, N; `None`: no leverage there.
    pub closed: Option<f64>,
    /// Fully open, N; `None`: no leverage there.
    pub open: Option<f64>,
    /// The force that is furthest from 0, N, and at which s; `None`: no leverage anywhere.
    pub largest: Option<(f64, f64)>,
}

/// The curves at `count` places (2 or more) equally spaced in s.
#[must_use]
pub fn curves(setup: &Setup<'_>, count: u16) -> Curves {
    let last = count.max(2) - 1;
    let at = |step| CurvePoint::of(setup, f64::from(step) / f64::from(last));
    Curves {
        points: (0..=last).map(at).collect(),
    }
}

impl Curves {
    /// The place that is nearest to s; `None` without any place.
    #[must_use]
    pub fn nearest(&self, s: f64) -> Option<&CurvePoint> {
        let away = |point: &&CurvePoint| (point.s - s).abs();
        self.points
            .iter()
            .min_by(|a, b| away(a).total_cmp(&away(b)))
    }

    /// The stretches of the way, from and to in s, on which the handle has no leverage.
    #[must_use]
    pub fn without_leverage(&self) -> Vec<(f64, f64)> {
        let mut found: Vec<(f64, f64)> = Vec::new();
        let mut before = false;
        for point in &self.points {
            let without = point.leverage < LEAST_LEVERAGE;
            match found.last_mut() {
                Some(last) if without && before => last.1 = point.s,
                _ if without => found.push((point.s, point.s)),
                _ => {}
            }
            before = without;
        }
        found
    }

    /// Hand force for one way and one mass.
    #[must_use]
    pub fn hand(&self, way: Direction, level: Level) -> HandSummary {
        let force = |point: &CurvePoint| match way {
            Direction::Opening => point.opening_force(level),
            Direction::Closing => point.closing_force(level),
        };
        let largest = self
            .points
            .iter()
            .filter_map(|point| Some((force(point)?, point.s)))
            .max_by(|a, b| a.0.abs().total_cmp(&b.0.abs()));
        let end = |point: Option<&CurvePoint>| point.and_then(force);
        HandSummary {
            closed: end(self.points.first()),
            open: end(self.points.last()),
            largest,
        }
    }

    /// Where the door falls, holds and rises at one mass, from closed to open. The borders run
    /// straight between the places of the curve.
    #[must_use]
    pub fn zones(&self, level: Level) -> Vec<Zone> {
        let mut zones: Vec<Zone> = Vec::new();
        let mut put = |behaviour, from: f64, to: f64| match zones.last_mut() {
            Some(last) if last.behaviour == behaviour => last.to = to,
            _ if to > from => zones.push(Zone {
                behaviour,
                from,
                to,
            }),
            _ => {}
        };
        for pair in self.points.windows(2) {
            let [a, b] = pair else { continue };
            let mut borders = vec![a.s];
            borders.extend(crossings(a, b, level));
            borders.push(b.s);
            for piece in borders.windows(2) {
                let [from, to] = piece else { continue };
                let share = ((from + to) / 2.0 - a.s) / (b.s - a.s);
                let between = |x: f64, y: f64| x + (y - x) * share;
                let behaviour = Behaviour::of(
                    between(a.balance(level), b.balance(level)),
                    between(a.push.friction, b.push.friction),
                );
                put(behaviour, *from, *to);
            }
        }
        zones
    }

    /// Work of the hand over opening and closing slowly again, J, from its moment about the
    /// input by the trapezium rule. It is what friction takes.
    #[must_use]
    pub fn cycle_work(&self, level: Level) -> f64 {
        let opening = |p: &CurvePoint| p.balance(level) + p.push.friction;
        let closing = |p: &CurvePoint| p.balance(level) - p.push.friction;
        let area = |moment: &dyn Fn(&CurvePoint) -> f64| {
            self.points
                .windows(2)
                .map(|pair| match pair {
                    [a, b] => (b.input - a.input) * (moment(a) + moment(b)) / 2.0,
                    _ => 0.0,
                })
                .sum::<f64>()
        };
        area(&opening) - area(&closing)
    }
}

/// Where between two places W - S crosses +R or -R, in rising s.
fn crossings(a: &CurvePoint, b: &CurvePoint, level: Level) -> Vec<f64> {
    let mut found: Vec<f64> = [1.0, -1.0]
        .into_iter()
        .filter_map(|sign| {
            let over = |point: &CurvePoint| point.balance(level) - sign * point.push.friction;
            let (from, to) = (over(a), over(b));
            (from * to < 0.0).then(|| a.s + (b.s - a.s) * from / (from - to))
        })
        .collect();
    found.sort_by(f64::total_cmp);
    found
}

/// Balance and friction, N, from two readings of a hand scale: what it shows while the door is
/// slowly raised and slowly lowered at the same place. Half the sum is what balances the door,
/// half the difference is friction.
///
/// ```
/// use flapwright_motion::statics::scale_readings;
///
/// assert_eq!(scale_readings(18.0, 10.0), (14.0, 4.0));
/// ```
#[must_use]
pub fn scale_readings(raising: f64, lowering: f64) -> (f64, f64) {
    ((raising + lowering) / 2.0, (raising - lowering) / 2.0)
}
