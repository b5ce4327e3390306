//! What an opening and its door have or have not: the door itself, how it sits, its handle, a typed
//! mass, a frame, a fitting, what its bores follow.

use super::{changed_box, changed_door, first_size, leaves_for, plain_door, usual_material};
use crate::door::{
    BoreReference, BuildUp, DoorFit, DrilledBore, End, Handle, HandleScrews, Infill, Leaves,
    TypedMass,
};
use crate::edges::{Edge, Edges};
use crate::edit::Edit;
use crate::field::LeafField;
use crate::id::{BoxId, CardId, DoorId, OpeningId};
use crate::job::Job;
use crate::part::LeafId;

/// Overlay or inset, without the numbers.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum FitKind {
    /// Lies before the edges of the panels.
    Overlay,
    /// Sits between the panels.
    Inset,
}

impl FitKind {
    /// The kind of a fit.
    #[must_use]
    pub const fn of(fit: &DoorFit) -> Self {
        match fit {
            DoorFit::Overlay { .. } => Self::Overlay,
            DoorFit::Inset { .. } => Self::Inset,
        }
    }
}

/// What the bores of a door follow, without the data.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum FollowKind {
    /// The fitting.
    Fitting,
    /// The door's edges.
    Edges,
    /// They are drilled already.
    AsDrilled,
}

impl FollowKind {
    /// The kind of a reference.
    #[must_use]
    pub const fn of(follow: &BoreReference) -> Self {
        match follow {
            BoreReference::Fitting => Self::Fitting,
            BoreReference::Edges { .. } => Self::Edges,
            BoreReference::AsDrilled(_) => Self::AsDrilled,
        }
    }
}

/// Gives an opening that is not split and has no door the usual one, of the job's usual material.
#[must_use]
pub fn add_door(job: &Job, id: BoxId, opening: OpeningId) -> Option<Edit> {
    changed_box(job, id, |wall_box, ids| {
        let opening = wall_box.opening_mut(opening)?;
        if opening.door.is_some() || opening.parts().is_some() {
            return None;
        }
        let mut door = plain_door(&usual_material(job));
        door.id = ids.give();
        opening.door = Some(door);
        Some(())
    })
}

/// Takes the door out of an opening.
#[must_use]
pub fn remove_door(job: &Job, id: BoxId, opening: OpeningId) -> Option<Edit> {
    changed_box(job, id, |wall_box, _| {
        wall_box.opening_mut(opening)?.door.take().map(|_door| ())
    })
}

/// Makes a door overlay or inset, with the usual reveals or gaps.
#[must_use]
pub fn set_fit(job: &Job, id: BoxId, door: DoorId, kind: FitKind) -> Option<Edit> {
    changed_door(job, id, door, |door| {
        if FitKind::of(&door.fit) == kind {
            return None;
        }
        door.fit = match kind {
            FitKind::Overlay => DoorFit::usual_overlay(),
            FitKind::Inset => DoorFit::usual_inset(),
        };
        Some(())
    })
}

/// Gives a door the usual handle, or takes it off.
#[must_use]
pub fn set_handle(job: &Job, id: BoxId, door: DoorId, with: bool) -> Option<Edit> {
    changed_door(job, id, door, |door| {
        door.handle = with.then(Handle::usual);
        Some(())
    })
}

/// Screws a handle through its door with the usual screws, or glues it on.
#[must_use]
pub fn set_handle_screws(job: &Job, id: BoxId, door: DoorId, with: bool) -> Option<Edit> {
    changed_door(job, id, door, |door| {
        door.handle.as_mut()?.screws = with.then(HandleScrews::usual);
        Some(())
    })
}

/// Lets a door's mass be typed, or be that of its build-up.
#[must_use]
pub fn set_typed_mass(job: &Job, id: BoxId, door: DoorId, with: bool) -> Option<Edit> {
    changed_door(job, id, door, |door| {
        door.typed_mass = with.then(TypedMass::usual);
        Some(())
    })
}

/// Makes a leaf a frame with the usual panel in it, or one plain panel; thickness and material stay.
#[must_use]
pub fn set_framed(job: &Job, id: BoxId, door: DoorId, leaf: LeafId, framed: bool) -> Option<Edit> {
    changed_door(job, id, door, |door| {
        let leaf = door.leaves.get_mut(leaf)?;
        let (thickness, material) = (leaf.build.thickness(), leaf.build.material().to_owned());
        leaf.build = if framed {
            let member = LeafField::Member(Edge::Left).info().usual.number();
            BuildUp::Framed {
                thickness,
                infill: Infill::usual(&material),
                material,
                members: Edges::all(member),
            }
        } else {
            BuildUp::Plain {
                thickness,
                material,
            }
        };
        Some(())
    })
}

/// Says what the bores of a door follow. `now` are its bores as they are now, for a door that is
/// drilled already.
#[must_use]
pub fn set_bores_follow(
    job: &Job,
    id: BoxId,
    door: DoorId,
    kind: FollowKind,
    now: Vec<DrilledBore>,
) -> Option<Edit> {
    changed_door(job, id, door, |door| {
        door.bores_follow = match kind {
            FollowKind::Fitting => BoreReference::Fitting,
            FollowKind::Edges => BoreReference::Edges { vertical: End::Top },
            FollowKind::AsDrilled => BoreReference::AsDrilled(now),
        };
        Some(())
    })
}

/// Adds a bore to those that a door has already: like the last of them, or else the usual one in its
/// upper or only leaf.
#[must_use]
pub fn add_bore(job: &Job, id: BoxId, door: DoorId) -> Option<Edit> {
    changed_door(job, id, door, |door| {
        let leaf = match door.leaves {
            Leaves::One(_) => LeafId::Only,
            Leaves::Two { .. } => LeafId::Upper,
        };
        let BoreReference::AsDrilled(bores) = &mut door.bores_follow else {
            return None;
        };
        let bore = bores.last().cloned();
        bores.push(bore.unwrap_or_else(|| DrilledBore::usual(leaf)));
        Some(())
    })
}

/// Removes one of the bores that a door has already, by its place in the list.
#[must_use]
pub fn remove_bore(job: &Job, id: BoxId, door: DoorId, at: usize) -> Option<Edit> {
    changed_door(job, id, door, |door| match &mut door.bores_follow {
        BoreReference::AsDrilled(bores) if at < bores.len() => {
            bores.remove(at);
            Some(())
        }
        BoreReference::AsDrilled(_) | BoreReference::Fitting | BoreReference::Edges { .. } => None,
    })
}

/// Puts a fitting on a door, its first size and with the packing that the old one had, or takes it
/// off. The door gets as many leaves as the fitting's opening kind has; a new joint lies half the
/// height of the box below the panel above.
#[must_use]
pub fn set_fitting(job: &Job, id: BoxId, door: DoorId, card: Option<CardId>) -> Option<Edit> {
    let half = job.box_by_id(id)?.height / 2.0;
    changed_door(job, id, door, |door| {
        let packing = door.fitting.as_ref().map_or(0.0, |it| it.packing);
        door.fitting = card.and_then(|card| first_size(job, card, packing));
        let kind = card.and_then(|card| job.card_by_id(card)).map(|it| it.kind);
        if let Some(leaves) = kind.and_then(|kind| leaves_for(&door.leaves, kind, half)) {
            door.leaves = leaves;
        }
        Some(())
    })
}
