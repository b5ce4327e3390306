//! Openings of a box and the overlays of their doors.

use flapwright_model::cabinet::{FaceFrame, WallBox};
use flapwright_model::door::{Door, DoorFit};
use flapwright_model::edges::{Edge, Edges};
use flapwright_model::id::{DoorId, OpeningId};
use flapwright_model::opening::{Inside, Opening};
use flapwright_model::part::Part;

use super::body::{Body, solid};
use crate::inspection::Solid;

/// The place of one opening in its box, mm.
#[derive(Debug, Clone, Copy)]
pub struct OpeningPlace {
    /// The opening.
    pub id: OpeningId,
    /// The panels around it.
    pub around: Edges<Part>,
    /// Inner faces of these panels: x of left and right, y of top and bottom.
    pub clear: Edges<f64>,
    /// Inner edges of what the door laps over: the frame's members, or the panels themselves.
    pub door_opening: Edges<f64>,
    /// Width of the member at each edge that the door can lap over: panel thickness, stile or
    /// rail.
    pub member: Edges<f64>,
    /// At which edges its overlay door shares a panel with another overlay door.
    pub shared: Edges<Option<SharedEdge>>,
}

/// A panel that two overlay doors share.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct SharedEdge {
    /// The fixed shelf or divider.
    pub panel: Part,
    /// The door beyond it.
    pub beyond: DoorId,
    /// Gap between the doors, mm.
    pub gap: f64,
    /// Overlay of the door above or at the left of it, mm; `None`: both lap alike.
    pub first_overlay: Option<f64>,
}

/// The openings of a box in reading order: those that are not split, and those that are and have a
/// door before all of it.
#[must_use]
pub fn openings(wall_box: &WallBox, body: &Body) -> Vec<OpeningPlace> {
    let mut places = Vec::new();
    walk(wall_box, body, &mut |opening, bounds| {
        if opening.parts().is_none() || opening.door.is_some() {
            places.push(place(opening.id, bounds, wall_box.frame.as_ref()));
        }
    });
    let shared: Vec<Edges<Option<SharedEdge>>> = places
        .iter()
        .map(|place| {
            place
                .around
                .map(|edge, _| shared_edge(wall_box, &places, place, edge))
        })
        .collect();
    for (place, shared) in places.iter_mut().zip(shared) {
        place.shared = shared;
    }
    places
}

/// All that is inside a box as if it were one opening.
#[must_use]
pub fn whole_opening(wall_box: &WallBox, body: &Body) -> OpeningPlace {
    let bounds = outermost(wall_box, body);
    place(wall_box.body.id, &bounds, wall_box.frame.as_ref())
}

/// The rails of a face frame before the fixed shelves, in reading order; `z` is where the frame is.
#[must_use]
pub fn shelf_rails(wall_box: &WallBox, body: &Body, z: (f64, f64)) -> Vec<Solid> {
    let Some(frame) = &wall_box.frame else {
        return Vec::new();
    };
    let mut rails = Vec::new();
    walk(wall_box, body, &mut |opening, bounds| {
        if let Inside::Shelf(split) = &opening.inside
            && let Some(shelf) = body.shelf(split.shelf.id)
        {
            let around = place(opening.id, bounds, Some(frame)).door_opening;
            let underside = shelf.max.y - frame.shelf_rail;
            let y = (underside, underside + frame.shelf_rail);
            rails.push((shelf.max.y, solid((around.left, around.right), y, z)));
        }
    });
    rails.sort_by(|a, b| b.0.total_cmp(&a.0));
    rails.into_iter().map(|(_, rail)| rail).collect()
}

/// A panel beside an opening.
#[derive(Debug, Clone, Copy)]
struct Bound {
    part: Part,
    /// Its inner face: x or y, mm.
    face: f64,
    /// Its other face.
    far: f64,
    thickness: f64,
}

/// The panels around an opening.
type Bounds = Edges<Bound>;

/// The sides, top and bottom of a box.
fn outermost(wall_box: &WallBox, body: &Body) -> Bounds {
    let bound = |part, face, far, thickness| Bound {
        part,
        face,
        far,
        thickness,
    };
    Bounds {
        left: bound(
            Part::LeftSide,
            body.left.max.x,
            body.left.min.x,
            wall_box.left.thickness,
        ),
        right: bound(
            Part::RightSide,
            body.right.min.x,
            body.right.max.x,
            wall_box.right.thickness,
        ),
        top: bound(
            Part::Top,
            body.top.min.y,
            body.top.max.y,
            wall_box.top.panel.thickness,
        ),
        bottom: bound(
            Part::Bottom,
            body.bottom.max.y,
            body.bottom.min.y,
            wall_box.bottom.panel.thickness,
        ),
    }
}

/// Shows each opening of a box with what is around it, in reading order.
fn walk(wall_box: &WallBox, body: &Body, see: &mut dyn FnMut(&Opening, &Bounds)) {
    visit(&wall_box.body, &outermost(wall_box, body), body, see);
}

fn visit(opening: &Opening, bounds: &Bounds, body: &Body, see: &mut dyn FnMut(&Opening, &Bounds)) {
    see(opening, bounds);
    match &opening.inside {
        Inside::Undivided { .. } => {}
        Inside::Shelf(split) => {
            let Some(shelf) = body.shelf(split.shelf.id) else {
                return;
            };
            let bound = |face, far| Bound {
                part: Part::Shelf(split.shelf.id),
                face,
                far,
                thickness: split.shelf.piece.panel.thickness,
            };
            let above = Bounds {
                bottom: bound(shelf.max.y, shelf.min.y),
                ..*bounds
            };
            let below = Bounds {
                top: bound(shelf.min.y, shelf.max.y),
                ..*bounds
            };
            visit(&split.above, &above, body, see);
            visit(&split.below, &below, body, see);
        }
        Inside::Divider(split) => {
            let Some(divider) = body.divider(split.divider.id) else {
                return;
            };
            let bound = |face, far| Bound {
                part: Part::Divider(split.divider.id),
                face,
                far,
                thickness: split.divider.panel.thickness,
            };
            let left = Bounds {
                right: bound(divider.min.x, divider.max.x),
                ..*bounds
            };
            let right = Bounds {
                left: bound(divider.max.x, divider.min.x),
                ..*bounds
            };
            visit(&split.left, &left, body, see);
            visit(&split.right, &right, body, see);
        }
    }
}

fn place(id: OpeningId, bounds: &Bounds, frame: Option<&FaceFrame>) -> OpeningPlace {
    let clear = bounds.map(|_, bound| bound.face);
    let (door_opening, member) = match frame {
        None => (clear, bounds.map(|_, bound| bound.thickness)),
        Some(frame) => (
            bounds.map(|edge, bound| frame_edge(frame, edge, bound)),
            bounds.map(|edge, bound| match bound.part {
                Part::Shelf(_) => frame.shelf_rail,
                // No stile stands before a divider.
                Part::Divider(_) => bound.thickness,
                _ => frame.members.at(edge),
            }),
        ),
    };
    OpeningPlace {
        id,
        around: bounds.map(|_, bound| bound.part),
        clear,
        door_opening,
        member,
        shared: Edges::all(None),
    }
}

/// Where the inner edge of the frame's member before a panel is: x or y, mm.
fn frame_edge(frame: &FaceFrame, edge: Edge, bound: Bound) -> f64 {
    let overhang = frame.overhang.at(edge);
    match (edge, bound.part) {
        // A rail before a shelf is flush with the shelf's upper face and hangs down.
        (Edge::Top, Part::Shelf(_)) => bound.far - frame.shelf_rail,
        (_, Part::Shelf(_) | Part::Divider(_)) => bound.face,
        (Edge::Left | Edge::Bottom, _) => bound.face + overhang,
        (Edge::Right | Edge::Top, _) => bound.face - overhang,
    }
}

/// What an edge of a door shares with the door beyond: only where both are overlay doors on one
/// fixed shelf or divider.
fn shared_edge(
    wall_box: &WallBox,
    places: &[OpeningPlace],
    place: &OpeningPlace,
    edge: Edge,
) -> Option<SharedEdge> {
    let panel = place.around.at(edge);
    let (gap, first_overlay) = gap_of(wall_box, panel)?;
    overlay_door(wall_box, place.id)?;
    let beyond = places
        .iter()
        .filter(|it| it.around.at(edge.opposite()) == panel && face_each_other(place, it, edge))
        .find_map(|it| overlay_door(wall_box, it.id))?;
    Some(SharedEdge {
        panel,
        beyond,
        gap,
        first_overlay,
    })
}

/// Gap and split of a fixed shelf or divider.
fn gap_of(wall_box: &WallBox, panel: Part) -> Option<(f64, Option<f64>)> {
    match panel {
        Part::Shelf(id) => {
            let shelf = wall_box.fixed_shelf(id)?;
            Some((shelf.gap, shelf.upper_overlay))
        }
        Part::Divider(id) => {
            let divider = wall_box.dividers().into_iter().find(|it| it.id == id)?;
            Some((divider.gap, divider.left_overlay))
        }
        Part::LeftSide
        | Part::RightSide
        | Part::Top
        | Part::Bottom
        | Part::Back
        | Part::Frame
        | Part::Leaf { .. } => None,
    }
}

fn overlay_door(wall_box: &WallBox, opening: OpeningId) -> Option<DoorId> {
    let door = wall_box.opening(opening)?.door.as_ref()?;
    matches!(door.fit, DoorFit::Overlay { .. }).then_some(door.id)
}

/// Whether two openings lie beside each other along their common panel.
fn face_each_other(a: &OpeningPlace, b: &OpeningPlace, edge: Edge) -> bool {
    let lap = |from: (f64, f64), to: (f64, f64)| to.0.min(to.1) - from.0.max(from.1);
    match edge {
        Edge::Top | Edge::Bottom => {
            lap((a.clear.left, b.clear.left), (a.clear.right, b.clear.right)) > 0.0
        }
        Edge::Left | Edge::Right => {
            lap((a.clear.bottom, b.clear.bottom), (a.clear.top, b.clear.top)) > 0.0
        }
    }
}

/// Gap at a shared panel and the overlays of the doors on both sides of it, mm.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct SharedOverlays {
    /// Clear gap between the doors.
    pub gap: f64,
    /// Overlay of the door above, or at the left.
    pub first: f64,
    /// Overlay of the door below, or at the right.
    pub second: f64,
}

impl SharedEdge {
    /// How the doors share the panel (or its rail) of width `member`, mm.
    #[must_use]
    pub fn overlays(&self, member: f64) -> SharedOverlays {
        share(self.gap, self.first_overlay, member)
    }
}

/// How two doors share a panel (or its rail) of width `member`, mm:
/// first overlay + gap + second overlay = member. Half and half unless the split is given.
#[must_use]
pub fn share(gap: f64, first_overlay: Option<f64>, member: f64) -> SharedOverlays {
    let covered = member - gap;
    let first = first_overlay.unwrap_or(covered / 2.0);
    SharedOverlays {
        gap,
        first,
        second: covered - first,
    }
}

/// Overlays of a door at its four edges without tweaks, mm; negative is the gap of an inset door.
#[must_use]
pub fn overlays(place: &OpeningPlace, door: &Door) -> Edges<f64> {
    match &door.fit {
        DoorFit::Inset { gaps, .. } => gaps.map(|_, gap| -gap),
        DoorFit::Overlay { reveals } => reveals.map(|edge, reveal| {
            let member = place.member.at(edge);
            place
                .shared
                .at(edge)
                .map(|shared| shared.overlays(member))
                .map_or(member - reveal, |shared| match edge {
                    Edge::Top | Edge::Left => shared.second,
                    Edge::Right | Edge::Bottom => shared.first,
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
        let half = share(3.0, None, 19.0);
        assert_eq!((half.first, half.second), (8.0, 8.0));
        let split = share(3.0, Some(10.0), 18.0);
        assert_eq!((split.first, split.second), (10.0, 5.0));
    }
}
