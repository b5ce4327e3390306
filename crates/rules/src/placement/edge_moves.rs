//! Which number of the job sets where an edge of a door is.

use flapwright_model::door::{Door, DoorFit};
use flapwright_model::edges::{Edge, Edges};
use flapwright_model::field::{DividerField, DoorField, FieldRef, FixedShelfField};
use flapwright_model::id::{BoxId, DoorId};
use flapwright_model::part::Part;

use super::opening::{OpeningPlace, SharedEdge};
use crate::inspection::EdgeMove;

/// What moves each edge of a door.
#[must_use]
pub fn edge_moves(box_id: BoxId, place: &OpeningPlace, door: &Door) -> Edges<EdgeMove> {
    let own = |field, outward| EdgeMove {
        field: FieldRef::Door(box_id, door.id, field),
        outward,
    };
    match &door.fit {
        DoorFit::Inset { gaps, .. } => gaps.map(|edge, _| own(DoorField::Gap(edge), -1.0)),
        DoorFit::Overlay { reveals } => reveals.map(|edge, _| {
            let shared = place.shared.at(edge);
            shared
                .and_then(|shared| shared_move(box_id, &shared, edge))
                .unwrap_or_else(|| own(DoorField::Reveal(edge), -1.0))
        }),
    }
}

/// The same at a panel shared with the door beyond: first overlay + gap + second overlay = its width.
/// Without a split the gap takes from both doors alike; with one, the gap takes from the second door
/// and the split gives to the first, so that a drag leaves the gap as wide as it is.
fn shared_move(box_id: BoxId, shared: &SharedEdge, edge: Edge) -> Option<EdgeMove> {
    let (gap, split) = match shared.panel {
        Part::Shelf(id) => {
            let field = |field| FieldRef::FixedShelf(box_id, id, field);
            (
                field(FixedShelfField::Gap),
                field(FixedShelfField::UpperOverlay),
            )
        }
        Part::Divider(id) => {
            let field = |field| FieldRef::Divider(box_id, id, field);
            (field(DividerField::Gap), field(DividerField::LeftOverlay))
        }
        Part::LeftSide
        | Part::RightSide
        | Part::Top
        | Part::Bottom
        | Part::Back
        | Part::Frame
        | Part::Leaf { .. } => return None,
    };
    let is_first = matches!(edge, Edge::Bottom | Edge::Right);
    let (field, outward) = match (shared.first_overlay, is_first) {
        (None, _) => (gap, -0.5),
        (Some(_), true) => (split, 1.0),
        (Some(_), false) => (gap, -1.0),
    };
    Some(EdgeMove { field, outward })
}

/// The by-hand move of an edge of a door: it carries the edge outward by as much as it rises.
#[must_use]
pub const fn tweak(box_id: BoxId, door: DoorId, edge: Edge) -> FieldRef {
    FieldRef::Door(box_id, door, DoorField::Tweak(edge))
}

#[cfg(test)]
mod tests {
    use flapwright_model::id::ShelfId;

    use super::*;

    /// Arithmetic: first overlay + gap + second overlay = 19. 8 + 3 + 8 with the gap 1 wider is
    /// 7.5 + 4 + 7.5. Split 10 + 3 + 6: the gap 1 wider gives 10 + 4 + 5, the split 1 more 11 + 3 + 5.
    #[test]
    fn a_shared_panel_gives_to_both_doors_or_as_split() {
        let (box_id, id) = (BoxId::new(1), ShelfId::new(2));
        let shared = |first_overlay| SharedEdge {
            panel: Part::Shelf(id),
            beyond: DoorId::new(3),
            gap: 3.0,
            first_overlay,
        };
        let moved = |field, outward| {
            Some(EdgeMove {
                field: FieldRef::FixedShelf(box_id, id, field),
                outward,
            })
        };
        let (gap, split) = (FixedShelfField::Gap, FixedShelfField::UpperOverlay);
        for (first_overlay, edge, expected) in [
            (None, Edge::Bottom, moved(gap, -0.5)),
            (None, Edge::Top, moved(gap, -0.5)),
            (Some(10.0), Edge::Bottom, moved(split, 1.0)),
            (Some(10.0), Edge::Top, moved(gap, -1.0)),
        ] {
            let found = shared_move(box_id, &shared(first_overlay), edge);
            assert_eq!(found, expected, "{first_overlay:?} {edge:?}");
        }
    }
}
