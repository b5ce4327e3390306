//! How wide the gaps of a door are over its way, measured once for all doors that are alike.

use std::collections::BTreeMap;
use std::sync::{Mutex, OnceLock, PoisonError};

use flapwright_model::space::SectionPoint;
use flapwright_motion::closed::ClosedDoor;
use flapwright_motion::leaves::joint_gap;
use flapwright_motion::motion::Motion;
use flapwright_motion::outline::outline_at;
use flapwright_motion::sweep::distance;

/// Steps of the way that are looked at.
const STEPS: u16 = 48;
/// So many things that a door passes are kept at most.
const MOST_KEPT: usize = 100;

/// How wide a gap is over the way, mm.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Gap {
    pub(crate) closed: f64,
    pub(crate) least: f64,
    pub(crate) widest: f64,
}

/// Something that stands still, by its outlines in the section.
pub(crate) type Still = [[SectionPoint; 4]];

/// The gaps of a door, as far as somebody asked.
#[derive(Default)]
pub(crate) struct Gaps {
    joint: OnceLock<Option<Gap>>,
    /// By the numbers of what stands still, bit by bit.
    above: Mutex<BTreeMap<Vec<u64>, Option<Gap>>>,
}

impl std::fmt::Debug for Gaps {
    /// Says nothing of what is kept: which gaps somebody has asked for is no part of what is true.
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        f.write_str("Gaps")
    }
}

impl Gaps {
    /// The gap between the leaves of a folding pair; `None` for a single leaf.
    pub(crate) fn joint(&self, motion: &Motion, closed: &ClosedDoor) -> Option<Gap> {
        *self
            .joint
            .get_or_init(|| over_the_way(|s| joint_gap(motion, closed, s)))
    }

    /// The gap between the upper or only leaf and something that stands still; `None` where it has
    /// no outline.
    pub(crate) fn to(&self, still: &Still, motion: &Motion, closed: &ClosedDoor) -> Option<Gap> {
        let points = still.iter().flatten();
        let key = points.flat_map(|it| [it.x.to_bits(), it.y.to_bits()]);
        let key: Vec<u64> = key.collect();
        let mut known = self.above.lock().unwrap_or_else(PoisonError::into_inner);
        if let Some(gap) = known.get(&key) {
            return *gap;
        }
        let gap = over_the_way(|s| {
            let upper = outline_at(motion, closed, s).into_iter().next()?.1;
            let apart = still.iter().map(|outline| distance(&upper, outline));
            apart.min_by(f64::total_cmp)
        });
        if known.len() >= MOST_KEPT {
            known.clear();
        }
        known.insert(key, gap);
        gap
    }
}

/// How wide a gap is over the way; `None` where there is none.
fn over_the_way(gap: impl Fn(f64) -> Option<f64>) -> Option<Gap> {
    let closed = gap(0.0)?;
    let mut found = Gap {
        closed,
        least: closed,
        widest: closed,
    };
    for step in 1..=STEPS {
        let here = gap(f64::from(step) / f64::from(STEPS))?;
        found.least = found.least.min(here);
        found.widest = found.widest.max(here);
    }
    Some(found)
}
