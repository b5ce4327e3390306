//! Tweaks of a door's edges as reveals.

use flapwright_model::cabinet::{ShelfKind, WallBox};
use flapwright_model::door::{Door, DoorFit};
use flapwright_model::edges::Edge;

use crate::placement::body::Body;
use crate::placement::opening::{openings, share, shared_shelf};

/// The box with each tweak of a door taken into its reveals (or gaps, or the gap and split of a
/// shared shelf): the door's edges stay where they are.
#[must_use]
pub(crate) fn into_reveals(before: &WallBox, opening: usize, door: &Door) -> WallBox {
    let mut wall_box = before.clone();
    let places = openings(before, &Body::of(before));
    let Some(place) = places.get(opening) else {
        return wall_box;
    };
    let mut changed = door.clone();
    for edge in Edge::ALL {
        let tweak = std::mem::take(changed.tweaks.at_mut(edge));
        if tweak == 0.0 {
            continue;
        }
        if let Some(shelf) = shared_shelf(before, place, edge) {
            let member = place.member.at(edge);
            let kind = wall_box.shelves[shelf].kind;
            if let Some(shared) = share(kind, member) {
                let upper = match edge {
                    Edge::Bottom => shared.upper + tweak,
                    Edge::Left | Edge::Right | Edge::Top => shared.upper,
                };
                wall_box.shelves[shelf].kind = ShelfKind::Fixed {
                    gap: shared.gap - tweak,
                    upper_overlay: Some(upper),
                };
            }
            continue;
        }
        // reveal = member - overlay and gap = -overlay: either way less by the tweak.
        match &mut changed.fit {
            DoorFit::Overlay { reveals } => *reveals.at_mut(edge) -= tweak,
            DoorFit::Inset { gaps, .. } => *gaps.at_mut(edge) -= tweak,
        }
    }
    wall_box.openings[opening].door = Some(changed);
    wall_box
}
