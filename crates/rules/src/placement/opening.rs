//! Openings of a box and the overlays of their doors.

use flapwright_model::cabinet::{ShelfKind, WallBox};
use flapwright_model::door::{Door, DoorFit};
use flapwright_model::edges::{Edge, Edges};
use flapwright_model::part::Part;

use super::body::Body;

/// The place of one opening in its box, mm.
#[derive(Debug, Clone, Copy)]
pub struct OpeningPlace {
    /// Index of the opening, from the top.
    pub index: usize,
    /// The panel above it.
    pub upper: Part,
    /// The panel below it.
    pub lower: Part,
    /// Inner faces of the panels around it: x of left and right, y of top and bottom.
    pub clear: Edges<f64>,
    /// Inner edges of what the door laps over: the frame's members, or the panels themselves.
    pub door_opening: Edges<f64>,
    /// Width of the member at each edge that the door can lap over: panel thickness, stile or
    /// rail.
    pub member: Edges<f64>,
}

/// The openings of a box from the top down: one more than there are fixed shelves.
#[must_use]
pub fn openings(wall_box: &WallBox, body: &Body) -> Vec<OpeningPlace> {
    let fixed = wall_box.fixed_shelves();
    (0..=fixed.len())
        .map(|index| {
            let above = index.checked_sub(1).map(|i| fixed[i]);
            opening_place(wall_box, body, index, above, fixed.get(index).copied())
        })
        .collect()
}

fn opening_place(
    wall_box: &WallBox,
    body: &Body,
    index: usize,
    above: Option<usize>,
    below: Option<usize>,
) -> OpeningPlace {
    let clear = Edges {
        left: body.left.max.x,
        right: body.right.min.x,
        top: above.map_or(body.top.min.y, |i| body.shelves[i].min.y),
        bottom: below.map_or(body.bottom.max.y, |i| body.shelves[i].max.y),
    };
    let thickness = |shelf: usize| wall_box.shelves[shelf].piece.panel.thickness;
    let (door_opening, member) = match &wall_box.frame {
        None => (
            clear,
            Edges {
                left: wall_box.left.thickness,
                right: wall_box.right.thickness,
                top: above.map_or(wall_box.top.panel.thickness, thickness),
                bottom: below.map_or(wall_box.bottom.panel.thickness, thickness),
            },
        ),
        Some(frame) => (
            Edges {
                left: clear.left + frame.overhang.left,
                right: clear.right - frame.overhang.right,
                // A rail before a shelf is flush with the shelf's upper face and hangs down.
                top: above.map_or(clear.top - frame.overhang.top, |i| {
                    body.shelves[i].max.y - frame.shelf_rail
                }),
                bottom: below.map_or(clear.bottom + frame.overhang.bottom, |_| clear.bottom),
            },
            Edges {
                left: frame.members.left,
                right: frame.members.right,
                top: above.map_or(frame.members.top, |_| frame.shelf_rail),
                bottom: below.map_or(frame.members.bottom, |_| frame.shelf_rail),
            },
        ),
    };
    OpeningPlace {
        index,
        upper: above.map_or(Part::Top, Part::Shelf),
        lower: below.map_or(Part::Bottom, Part::Shelf),
        clear,
        door_opening,
        member,
    }
}

/// The fixed shelf that an edge of a door shares with the door beyond it: only top and bottom
/// edges of overlay doors whose neighbour is an overlay door too.
#[must_use]
pub fn shared_shelf(wall_box: &WallBox, place: &OpeningPlace, edge: Edge) -> Option<usize> {
    let (part, neighbour) = match edge {
        Edge::Top => (place.upper, place.index.checked_sub(1)?),
        Edge::Bottom => (place.lower, place.index + 1),
        Edge::Left | Edge::Right => return None,
    };
    let Part::Shelf(shelf) = part else {
        return None;
    };
    let overlay = |index: usize| {
        wall_box
            .openings
            .get(index)
            .and_then(|opening| opening.door.as_ref())
            .is_some_and(|door| matches!(door.fit, DoorFit::Overlay { .. }))
    };
    (overlay(place.index) && overlay(neighbour)).then_some(shelf)
}

/// Gap at a shared shelf and the overlays of the doors above and below it, mm.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct SharedOverlays {
    /// Clear gap between the doors.
    pub gap: f64,
    /// Overlay of the door above.
    pub upper: f64,
    /// Overlay of the door below.
    pub lower: f64,
}

/// How two doors share a fixed shelf (or its rail) of width `member`, mm:
/// overlay above + gap + overlay below = member. Half and half unless the split is given.
#[must_use]
pub fn share(kind: ShelfKind, member: f64) -> Option<SharedOverlays> {
    let ShelfKind::Fixed { gap, upper_overlay } = kind else {
        return None;
    };
    let covered = member - gap;
    let upper = upper_overlay.unwrap_or(covered / 2.0);
    Some(SharedOverlays {
        gap,
        upper,
        lower: covered - upper,
    })
}

/// Overlays of a door at its four edges without tweaks, mm; negative is the gap of an inset door.
#[must_use]
pub fn overlays(wall_box: &WallBox, place: &OpeningPlace, door: &Door) -> Edges<f64> {
    match &door.fit {
        DoorFit::Inset { gaps, .. } => gaps.map(|_, gap| -gap),
        DoorFit::Overlay { reveals } => reveals.map(|edge, reveal| {
            let member = place.member.at(edge);
            shared_shelf(wall_box, place, edge)
                .and_then(|shelf| share(wall_box.shelves[shelf].kind, member))
                .map_or(member - reveal, |shared| match edge {
                    Edge::Top => shared.lower,
                    Edge::Left | Edge::Right | Edge::Bottom => shared.upper,
                })
        }),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn two_doors_share_a_shelf_half_and_half_or_as_split() {
        // Arithmetic: 19 = 8 + 3 + 8; 18 = 10 + 3 + 5.
        let half = share(
            ShelfKind::Fixed {
                gap: 3.0,
                upper_overlay: None,
            },
            19.0,
        )
        .unwrap();
        assert_eq!((half.upper, half.lower), (8.0, 8.0));
        let split = share(
            ShelfKind::Fixed {
                gap: 3.0,
                upper_overlay: Some(10.0),
            },
            18.0,
        )
        .unwrap();
        assert_eq!((split.upper, split.lower), (10.0, 5.0));
    }
}
