//! The panels of a box as solids in `BoxSpace`.

use euclid::Box3D;
use flapwright_model::cabinet::{Back, CornerJoint, HorizontalPanel, WallBox};
use flapwright_model::space::BoxPoint;

use crate::inspection::Solid;

/// The panels of a box, mm.
#[derive(Debug, Clone)]
pub struct Body {
    /// Left side.
    pub left: Solid,
    /// Right side.
    pub right: Solid,
    /// Top panel.
    pub top: Solid,
    /// Bottom panel.
    pub bottom: Solid,
    /// Back panel, if there is one.
    pub back: Option<Solid>,
    /// Shelves in the order of the box's list.
    pub shelves: Vec<Solid>,
    /// z of the front face of the back, or of the rear edges of the sides where it is open.
    pub clear_depth: f64,
}

impl Body {
    /// The panels of a box.
    #[must_use]
    pub fn of(wall_box: &WallBox) -> Self {
        let (width, height, depth) = (wall_box.width, wall_box.height, wall_box.depth);
        let between = wall_box.joint == CornerJoint::BetweenSides;
        let side_depth = match &wall_box.back {
            Back::LaidOn { panel } => depth - panel.thickness,
            Back::Open | Back::Grooved { .. } | Back::Rebated { .. } => depth,
        };
        let clear_depth = match &wall_box.back {
            Back::Open => depth,
            Back::Grooved { panel, inset, .. } => depth - inset - panel.thickness,
            Back::Rebated { panel, .. } | Back::LaidOn { panel } => depth - panel.thickness,
        };
        let (top_t, bottom_t) = (
            wall_box.top.panel.thickness,
            wall_box.bottom.panel.thickness,
        );
        let side_y = if between {
            (0.0, height)
        } else {
            (bottom_t, height - top_t)
        };
        let left_x = (0.0, wall_box.left.thickness);
        let right_x = (width - wall_box.right.thickness, width);

        let ends = |piece: &HorizontalPanel, over: bool| {
            if over {
                (0.0, width)
            } else {
                (left_x.1 - piece.housing, right_x.0 + piece.housing)
            }
        };
        let top_y = height - if between { wall_box.top.set_in } else { 0.0 };
        let bottom_y = if between { wall_box.bottom.set_in } else { 0.0 };
        let top = solid(
            ends(&wall_box.top, !between),
            (top_y - top_t, top_y),
            (wall_box.top.set_back, side_depth),
        );
        let bottom = solid(
            ends(&wall_box.bottom, !between),
            (bottom_y, bottom_y + bottom_t),
            (wall_box.bottom.set_back, side_depth),
        );
        let shelves = wall_box
            .shelves
            .iter()
            .map(|shelf| {
                solid(
                    ends(&shelf.piece, false),
                    (shelf.up, shelf.up + shelf.piece.panel.thickness),
                    (shelf.piece.set_back, clear_depth),
                )
            })
            .collect();
        let into = match &wall_box.back {
            Back::Open => None,
            Back::Grooved { groove, .. } => Some(*groove),
            Back::Rebated { lap, .. } => Some(*lap),
            Back::LaidOn { .. } => None,
        };
        let back = wall_box.back.panel().map(|panel| {
            let z = (clear_depth, clear_depth + panel.thickness);
            match into {
                Some(into) => solid(
                    (left_x.1 - into, right_x.0 + into),
                    (bottom.max.y - into, top.min.y + into),
                    z,
                ),
                None => solid((0.0, width), (0.0, height), z),
            }
        });
        Self {
            left: solid(left_x, side_y, (0.0, side_depth)),
            right: solid(right_x, side_y, (0.0, side_depth)),
            top,
            bottom,
            back,
            shelves,
            clear_depth,
        }
    }
}

/// A solid from its extents along x, y and z, mm.
#[must_use]
pub fn solid(x: (f64, f64), y: (f64, f64), z: (f64, f64)) -> Solid {
    Box3D::new(BoxPoint::new(x.0, y.0, z.0), BoxPoint::new(x.1, y.1, z.1))
}
