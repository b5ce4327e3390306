//! Where the views can be taken hold of: edges of doors, handles, shelves, dividers, the box.
//!
//! A view's origin rides along with its box: a box that is dragged stays where it is in its own view
//! and the room goes the other way.

use euclid::default::{Rect, Vector2D};
use flapwright_model::edges::Edge;
use flapwright_model::field::{
    BoxField, DividerField, DoorField, FieldRef, FixedShelfField, LooseShelfField, ObstacleField,
};
use flapwright_model::id::{DoorId, ObstacleId, ShelfId};
use flapwright_model::part::{LeafId, Part};
use flapwright_rules::inspection::{BoxReport, DoorReport, Solid};
use flapwright_rules::placement::edge_moves::tweak;

use super::front_rect;
use crate::handle::{Handle, Pull};
use crate::list::{At, DisplayList};

/// The box itself: where it hangs. Put first, below everything else.
pub(super) fn whole(list: &mut DisplayList, report: &BoxReport, scale: f64) {
    let [width, height, _] = report.outer;
    let place = Rect::from_points([At::zero(), At::new(width * scale, height * scale)]);
    let field = |field| FieldRef::Box(report.id, field);
    list.grip(
        place,
        both_ways(
            field(BoxField::AlongWall),
            field(BoxField::AboveFloor),
            scale,
        ),
    );
}

/// Shelves and dividers in the front view.
pub(super) fn inside_in_front(list: &mut DisplayList, report: &BoxReport, scale: f64) {
    shelves(list, report, scale, front_rect);
    for panel in &report.panels {
        if let Part::Divider(id) = panel.id.part {
            let field = FieldRef::Divider(report.id, id, DividerField::Across);
            let step = Vector2D::new(scale, 0.0);
            list.grip(front_rect(&panel.solid, scale), Handle::of(field, step));
        }
    }
}

/// Shelves in a view that looks at them so.
pub(super) fn shelves(
    list: &mut DisplayList,
    report: &BoxReport,
    scale: f64,
    seen: fn(&Solid, f64) -> Rect<f64>,
) {
    for panel in &report.panels {
        if let Part::Shelf(id) = panel.id.part {
            let field = if is_fixed(report, id) {
                FieldRef::FixedShelf(report.id, id, FixedShelfField::Up)
            } else {
                FieldRef::LooseShelf(report.id, id, LooseShelfField::Up)
            };
            let step = Vector2D::new(0.0, scale);
            list.grip(seen(&panel.solid, scale), Handle::of(field, step));
        }
    }
}

/// Only a fixed shelf bounds openings.
fn is_fixed(report: &BoxReport, id: ShelfId) -> bool {
    let shelf = Part::Shelf(id);
    let mut openings = report.openings.iter();
    openings.any(|it| it.around.top == shelf || it.around.bottom == shelf)
}

/// The edges of a closed door, seen from the front.
pub(super) fn door_edges(
    list: &mut DisplayList,
    report: &BoxReport,
    door: &DoorReport,
    scale: f64,
) {
    let all = door.edges.map(|_, edge| edge * scale);
    let line =
        |x: [f64; 2], y: [f64; 2]| Rect::from_points([At::new(x[0], y[0]), At::new(x[1], y[1])]);
    let (across, upright) = ([all.left, all.right], [all.bottom, all.top]);
    for (edge, place) in [
        (Edge::Left, line([all.left; 2], upright)),
        (Edge::Right, line([all.right; 2], upright)),
        (Edge::Top, line(across, [all.top; 2])),
        (Edge::Bottom, line(across, [all.bottom; 2])),
    ] {
        list.grip(place, edge_handle(report, door, edge, scale));
    }
}

/// The top and bottom edges of a closed door in the section.
pub(super) fn door_ends(list: &mut DisplayList, report: &BoxReport, door: &DoorReport, scale: f64) {
    for leaf in &door.closed.leaves {
        let mut end = |y: f64, edge| {
            let [front, back] = [leaf.front_o, leaf.back_o].map(|o| -o * scale);
            let place = Rect::from_points([At::new(front, y * scale), At::new(back, y * scale)]);
            list.grip(place, edge_handle(report, door, edge, scale));
        };
        if leaf.id != LeafId::Lower {
            end(leaf.top, Edge::Top);
        }
        if leaf.id != LeafId::Upper {
            end(leaf.bottom, Edge::Bottom);
        }
    }
}

/// What moves an edge, or the tweak in its place.
fn edge_handle(report: &BoxReport, door: &DoorReport, edge: Edge, scale: f64) -> Handle {
    let outward = match edge {
        Edge::Left => Vector2D::new(-scale, 0.0),
        Edge::Right => Vector2D::new(scale, 0.0),
        Edge::Top => Vector2D::new(0.0, scale),
        Edge::Bottom => Vector2D::new(0.0, -scale),
    };
    let moved = door.edge_moves.at(edge);
    Handle {
        tweak: Some(Pull {
            field: tweak(report.id, door.id, edge),
            step: outward,
        }),
        ..Handle::of(moved.field, outward * moved.outward)
    }
}

/// The handle of a door in the front view.
pub(super) fn handle_in_front(
    list: &mut DisplayList,
    report: &BoxReport,
    (door, place): (DoorId, Rect<f64>),
    scale: f64,
) {
    let field = |field| FieldRef::Door(report.id, door, field);
    list.grip(
        place,
        both_ways(
            field(DoorField::HandleRight),
            field(DoorField::HandleUp),
            scale,
        ),
    );
}

/// The handle of a closed door in the section, by its corners.
pub(super) fn handle_in_section(
    list: &mut DisplayList,
    report: &BoxReport,
    (door, corners): (DoorId, &[At]),
    scale: f64,
) {
    let field = FieldRef::Door(report.id, door, DoorField::HandleUp);
    let step = Vector2D::new(0.0, scale);
    list.grip(Rect::from_points(corners), Handle::of(field, step));
}

/// What stands in the room, in the front view: both ends of each extent go along.
pub(super) fn obstacle(list: &mut DisplayList, id: ObstacleId, place: Rect<f64>, scale: f64) {
    let [along, above, _] = ObstacleField::EXTENTS;
    let pull = |field, step| Pull {
        field: FieldRef::Obstacle(id, field),
        step,
    };
    let right = along.map(|field| pull(field, Vector2D::new(scale, 0.0)));
    let up = above.map(|field| pull(field, Vector2D::new(0.0, scale)));
    list.grip(
        place,
        Handle {
            pulls: right.into_iter().chain(up).collect(),
            tweak: None,
        },
    );
}

/// One number to the right, one up.
fn both_ways(right: FieldRef, up: FieldRef, scale: f64) -> Handle {
    let pull = |field, step| Pull { field, step };
    Handle {
        pulls: vec![
            pull(right, Vector2D::new(scale, 0.0)),
            pull(up, Vector2D::new(0.0, scale)),
        ],
        tweak: None,
    }
}
