//! Tweaks of a door's edges as reveals.

use flapwright_model::cabinet::WallBox;
use flapwright_model::door::{Door, DoorFit};
use flapwright_model::edges::Edge;
use flapwright_model::id::DoorId;
use flapwright_model::part::Part;

use crate::placement::body::Body;
use crate::placement::opening::{OpeningPlace, SharedEdge, openings};

/// The box with each tweak of a door taken into its reveals (or gaps, or the gap and split of a
/// shared shelf): the door's edges stay where they are.
#[must_use]
pub(crate) fn into_reveals(before: &WallBox, door: &Door) -> WallBox {
    let mut wall_box = before.clone();
    let Some(place) = place_of(before, door.id) else {
        return wall_box;
    };
    let mut changed = door.clone();
    for edge in Edge::ALL {
        let tweak = std::mem::take(changed.tweaks.at_mut(edge));
        if tweak == 0.0 {
            continue;
        }
        if let Some(shared) = place.shared.at(edge) {
            let member = place.member.at(edge);
            // Each tweak is of an edge of its own, so that the split is that of the box before.
            take_into_shared(&mut wall_box, &shared, member, (edge, tweak));
            continue;
        }
        // reveal = member - overlay and gap = -overlay: either way less by the tweak.
        match &mut changed.fit {
            DoorFit::Overlay { reveals } => *reveals.at_mut(edge) -= tweak,
            DoorFit::Inset { gaps, .. } => *gaps.at_mut(edge) -= tweak,
        }
    }
    if let Some(place) = wall_box.door_mut(door.id) {
        *place = changed;
    }
    wall_box
}

/// The place of the opening that a door closes.
fn place_of(wall_box: &WallBox, door: DoorId) -> Option<OpeningPlace> {
    let id = wall_box.opening_of(door)?.id;
    let places = openings(wall_box, &Body::of(wall_box));
    places.into_iter().find(|place| place.id == id)
}

/// Gap and split of a shared shelf or divider with the tweak of one door's edge in them.
fn take_into_shared(
    wall_box: &mut WallBox,
    shared: &SharedEdge,
    member: f64,
    (edge, tweak): (Edge, f64),
) {
    let overlays = shared.overlays(member);
    let gap = overlays.gap - tweak;
    let first = match edge {
        Edge::Bottom | Edge::Right => overlays.first + tweak,
        Edge::Left | Edge::Top => overlays.first,
    };
    match shared.panel {
        Part::Shelf(id) => {
            if let Some(shelf) = wall_box.fixed_shelf_mut(id) {
                shelf.gap = gap;
                shelf.upper_overlay = Some(first);
            }
        }
        Part::Divider(id) => {
            if let Some(divider) = wall_box.divider_mut(id) {
                divider.gap = gap;
                divider.left_overlay = Some(first);
            }
        }
        _ => {}
    }
}
