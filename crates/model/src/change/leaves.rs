//! The leaves that a door needs for an opening kind.

use crate::card::OpeningKind;
use crate::door::Leaves;
use crate::field::DoorField;

/// Gap between the leaves of a new folding pair, mm.
pub const JOINT_GAP: f64 = DoorField::JointGap.info().usual.number();

/// The leaves that an opening kind has, keeping what is there: a new pair has two leaves like the
/// only one, with the middle of their joint `joint_down` mm below the panel above the opening; a
/// door that is to have one leaf keeps the upper one. `None` where the leaves suit already.
#[must_use]
pub fn leaves_for(leaves: &Leaves, kind: OpeningKind, joint_down: f64) -> Option<Leaves> {
    match (leaves, kind.leaf_count()) {
        (Leaves::One(leaf), 2) => Some(Leaves::Two {
            upper: leaf.clone(),
            lower: leaf.clone(),
            joint_down,
            joint_gap: JOINT_GAP,
        }),
        (Leaves::Two { upper, .. }, 1) => Some(Leaves::One(upper.clone())),
        (Leaves::One(_) | Leaves::Two { .. }, _) => None,
    }
}
