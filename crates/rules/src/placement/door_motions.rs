//! How doors move, reckoned once for all doors that are alike: a wall has few distinct doors, and
//! what a door sweeps over is the dearest thing to know about it.

use std::collections::BTreeMap;
use std::sync::{Arc, Mutex, OnceLock, PoisonError};

use flapwright_model::card::Card;
use flapwright_model::door::FittingChoice;
use flapwright_model::id::CardId;
use flapwright_model::part::LeafId;
use flapwright_motion::MotionError;
use flapwright_motion::closed::{ClosedDoor, ClosedHandle, ClosedLeaf};
use flapwright_motion::leaves::first_touch;
use flapwright_motion::motion::{Motion, motion};
use flapwright_motion::sweep::Sweep;

use crate::door_work::DoorWorks;
use crate::gaps::Gaps;

/// How a door moves, and what it sweeps over once somebody asks.
pub struct DoorMotion {
    closed: ClosedDoor,
    /// The motion, or why the linkage fails.
    pub motion: Result<Motion, MotionError>,
    swept: OnceLock<Option<Sweep>>,
    touch: OnceLock<Option<f64>>,
    pub(crate) gaps: Gaps,
}

impl std::fmt::Debug for DoorMotion {
    /// Says nothing of what is kept: what somebody has asked for is no part of what is true.
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        f.debug_struct("DoorMotion")
            .field("closed", &self.closed)
            .field("motion", &self.motion)
            .finish_non_exhaustive()
    }
}

impl DoorMotion {
    fn new(motion: Result<Motion, MotionError>, closed: &ClosedDoor) -> Self {
        Self {
            closed: closed.clone(),
            motion,
            swept: OnceLock::new(),
            touch: OnceLock::new(),
            gaps: Gaps::default(),
        }
    }

    /// Where on the way its leaves first touch each other; `None` where they never do, or the linkage
    /// fails.
    #[must_use]
    pub fn first_touch(&self) -> Option<f64> {
        *self
            .touch
            .get_or_init(|| first_touch(self.motion.as_ref().ok()?, &self.closed))
    }

    /// What the door sweeps over; `None` where its linkage fails.
    #[must_use]
    pub fn sweep(&self) -> Option<&Sweep> {
        self.swept
            .get_or_init(|| Some(Sweep::of(self.motion.as_ref().ok()?, &self.closed)))
            .as_ref()
    }
}

/// The motions of doors by what they follow from: card, size and the closed door. Only for jobs
/// whose cards are the same.
#[derive(Debug, Default)]
pub struct DoorMotions {
    known: Mutex<BTreeMap<Key, Arc<DoorMotion>>>,
    /// What fittings make of doors that weigh the same and hang in like boxes too.
    pub(crate) works: DoorWorks,
}

/// Card, name of the size, the numbers of the closed door bit by bit.
type Key = (CardId, String, Vec<u64>);

impl DoorMotions {
    /// The motion of a door on a size of a card; `None` where the card lacks the size.
    pub(crate) fn of(
        &self,
        card: &Card,
        choice: &FittingChoice,
        closed: &ClosedDoor,
    ) -> Option<Arc<DoorMotion>> {
        card.size(&choice.size)?;
        let key = (choice.card, choice.size.clone(), bits(closed));
        let mut known = self.known.lock().unwrap_or_else(PoisonError::into_inner);
        let door = known.entry(key).or_insert_with(|| {
            let motion = motion(card, &choice.size, closed);
            Arc::new(DoorMotion::new(motion, closed))
        });
        Some(Arc::clone(door))
    }

    /// How many distinct doors are known.
    #[must_use]
    pub fn len(&self) -> usize {
        let known = self.known.lock().unwrap_or_else(PoisonError::into_inner);
        known.len()
    }

    /// Whether none is known.
    #[must_use]
    pub fn is_empty(&self) -> bool {
        self.len() == 0
    }

    /// Forgets the doors that no report holds any longer.
    pub fn forget_unused(&self) {
        let mut known = self.known.lock().unwrap_or_else(PoisonError::into_inner);
        known.retain(|_, door| Arc::strong_count(door) > 1);
    }
}

/// All numbers of a closed door. Taken apart without a rest, so that a field that is added later
/// cannot be left out.
pub(crate) fn bits(closed: &ClosedDoor) -> Vec<u64> {
    let ClosedDoor {
        leaves,
        underside_y,
        side_front_o,
        frame_front_o,
        joint_y,
        handle,
    } = closed;
    let mut bits = vec![
        underside_y.to_bits(),
        side_front_o.to_bits(),
        frame_front_o.to_bits(),
    ];
    bits.push(joint_y.map_or(u64::MAX, f64::to_bits));
    let handle = handle.map(|ClosedHandle { y, projection }| [y, projection]);
    bits.extend(handle.map_or([u64::MAX; 2], |it| it.map(f64::to_bits)));
    for ClosedLeaf {
        id,
        top,
        bottom,
        back_o,
        front_o,
    } in leaves
    {
        bits.push(bit(*id));
        bits.extend([top, bottom, back_o, front_o].map(|it| it.to_bits()));
    }
    bits
}

/// A number for a leaf.
pub(crate) const fn bit(leaf: LeafId) -> u64 {
    match leaf {
        LeafId::Only => 0,
        LeafId::Upper => 1,
        LeafId::Lower => 2,
    }
}
