//! The two leaves of a folding pair against each other on the way.

use crate::closed::ClosedDoor;
use crate::golden::largest_between;
use crate::motion::Motion;
use crate::outline::outline_at;
use crate::sweep::distance;

/// Steps of the way that are looked at before the nearest places are refined.
const STEPS: u16 = 96;

/// Outlines nearer than this touch, mm: what the refining leaves.
const TOUCH: f64 = 1e-4;

/// The gap at the front of the joint at s, mm: from the upper leaf's lower front edge to the lower
/// leaf's upper front edge. `None` for a door of one leaf.
///
/// About a joint in the middle of a closed gap g, e behind the front faces, it is
/// g cos(p/2) + 2 e sin(p/2) at an angle p from flat.
#[must_use]
pub fn joint_gap(motion: &Motion, door: &ClosedDoor, s: f64) -> Option<f64> {
    if door.leaves.len() < 2 {
        return None;
    }
    match outline_at(motion, door, s).as_slice() {
        [(_, upper), (_, lower), ..] => Some((*upper.get(1)? - *lower.get(2)?).length()),
        _ => None,
    }
}

/// Where on the way, 0 to 1, the lower leaf or the handle on it first touches the upper leaf;
/// `None` when they keep apart or the door has one leaf.
///
/// The distance is sampled, and the place between two samples where it is smallest is refined, so
/// that a short touch between samples is found as well.
#[must_use]
pub fn first_touch(motion: &Motion, door: &ClosedDoor) -> Option<f64> {
    if door.leaves.len() < 2 {
        return None;
    }
    let apart = |s: f64| match outline_at(motion, door, s).as_slice() {
        [(_, upper), rest @ ..] => rest
            .iter()
            .map(|(_, other)| distance(upper, other))
            .fold(f64::INFINITY, f64::min),
        [] => f64::INFINITY,
    };
    let share = |step: u16| f64::from(step) / f64::from(STEPS);
    let gaps: Vec<f64> = (0..=STEPS).map(|step| apart(share(step))).collect();
    let at = |step: u16| gaps.get(usize::from(step)).copied();
    for step in 0..=STEPS {
        let here = at(step)?;
        let before = step.checked_sub(1).and_then(at).unwrap_or(f64::INFINITY);
        let after = at(step + 1).unwrap_or(f64::INFINITY);
        let (free, met) = if here <= TOUCH {
            (share(step.saturating_sub(1)), share(step))
        } else if here <= before && here <= after {
            let (low, high) = (share(step.saturating_sub(1)), share((step + 1).min(STEPS)));
            let (s, least) = largest_between(low, high, |s| -apart(s));
            if -least > TOUCH {
                continue;
            }
            (low, s)
        } else {
            continue;
        };
        return Some(first_between(free, met, |s| apart(s) <= TOUCH));
    }
    None
}

/// Between a place where something does not hold and one where it does: where it begins to, by
/// halving.
fn first_between(mut before: f64, mut there: f64, holds: impl Fn(f64) -> bool) -> f64 {
    if holds(before) {
        return before;
    }
    for _ in 0..20 {
        let middle = f64::midpoint(before, there);
        if holds(middle) {
            there = middle;
        } else {
            before = middle;
        }
    }
    there
}
