//! The search itself: a fixed lattice of starts, the best refined by a simplex.

use argmin::core::{Executor, State};
use argmin::solver::neldermead::NelderMead;

use crate::mount_cost::{MountCost, StrutMounts, spans};
use crate::mount_question::MountLimits;

/// Starting places.
const STARTS: u32 = 1200;
/// How many of them are refined.
const REFINED: usize = 6;
/// Steps of one refinement; it is done twice, the second time from a fresh simplex.
const STEPS: u64 = 160;

/// Starting places spread evenly over the limits: the additive recurrence on the powers of the
/// root of x^5 = x + 1 (the generalised golden ratio of four dimensions).
pub(crate) fn starts(limits: &MountLimits) -> Vec<StrutMounts> {
    const RATIO: f64 = 1.167_303_978_261_418_7;
    let spans = spans(limits);
    (1..=STARTS)
        .map(|count| {
            let mut step = 1.0;
            StrutMounts(spans.map(|span| {
                step /= RATIO;
                span.min + (span.max - span.min) * (0.5 + step * f64::from(count)).fract()
            }))
        })
        .collect()
}

/// The cheapest anchors found; `None` when `go_on` said no.
pub(crate) fn best_mounts(
    cost: &MountCost<'_>,
    starts: &[StrutMounts],
    go_on: &mut dyn FnMut(f64) -> bool,
) -> Option<StrutMounts> {
    let mut tried: Vec<(f64, StrutMounts)> = Vec::with_capacity(starts.len());
    for (index, start) in starts.iter().enumerate() {
        // Trying the starts is about half of the work.
        if index % 100 == 0 && !go_on(0.5 * index as f64 / starts.len() as f64) {
            return None;
        }
        tried.push((cost.of(start), *start));
    }
    tried.sort_by(|a, b| a.0.total_cmp(&b.0));
    tried.truncate(REFINED);
    let mut best = *tried.first()?;
    for (index, (_, start)) in tried.iter().enumerate() {
        if !go_on(0.5 + 0.5 * index as f64 / REFINED as f64) {
            return None;
        }
        let once = refine(cost, *start, 0.1);
        let twice = refine(cost, once, 0.02);
        let price = cost.of(&twice);
        if price < best.0 {
            best = (price, twice);
        }
    }
    Some(best.1)
}

/// One simplex search from a start; its first simplex is as wide as this share of the limits.
fn refine(cost: &MountCost<'_>, start: StrutMounts, width: f64) -> StrutMounts {
    let mut simplex = vec![start];
    for (axis, span) in spans(cost.limits()).iter().enumerate() {
        let mut corner = start;
        let step = (span.max - span.min) * width;
        // Away from the nearer limit, so that the corner stays inside.
        let inward = if corner.0[axis] - span.min < span.max - corner.0[axis] {
            1.0
        } else {
            -1.0
        };
        corner.0[axis] += step * inward;
        simplex.push(corner);
    }
    // The clock of the executor is off: the same question gives the same answer.
    let run = Executor::new(cost, NelderMead::new(simplex))
        .configure(|state| state.max_iters(STEPS))
        .timer(false)
        .run();
    let found = run
        .ok()
        .and_then(|found| found.state().get_best_param().copied());
    match found {
        Some(found) if cost.of(&found) < cost.of(&start) => found,
        _ => start,
    }
}
