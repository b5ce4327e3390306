//! The panels of a box as solids in `BoxSpace`.

use euclid::Box3D;
use flapwright_model::cabinet::{Back, CornerJoint, HorizontalPanel, WallBox};
use flapwright_model::edges::Edges;
use flapwright_model::id::{DividerId, ShelfId};
use flapwright_model::opening::{Inside, Opening};
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
    /// Shelves in reading order of their openings.
    shelves: Vec<(ShelfId, Solid)>,
    /// Dividers likewise.
    dividers: Vec<(DividerId, Solid)>,
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
        let clear = Edges {
            left: left_x.1,
            right: right_x.0,
            top: top.min.y,
            bottom: bottom.max.y,
        };
        let mut inner = Inner {
            clear_depth,
            shelves: Vec::new(),
            dividers: Vec::new(),
        };
        inner.add(&wall_box.body, clear);
        Self {
            left: solid(left_x, side_y, (0.0, side_depth)),
            right: solid(right_x, side_y, (0.0, side_depth)),
            top,
            bottom,
            back,
            shelves: inner.shelves,
            dividers: inner.dividers,
            clear_depth,
        }
    }

    /// The shelf of that identity.
    #[must_use]
    pub fn shelf(&self, id: ShelfId) -> Option<&Solid> {
        let mut shelves = self.shelves.iter();
        shelves.find(|(it, _)| *it == id).map(|(_, solid)| solid)
    }

    /// The divider of that identity.
    #[must_use]
    pub fn divider(&self, id: DividerId) -> Option<&Solid> {
        let mut dividers = self.dividers.iter();
        dividers.find(|(it, _)| *it == id).map(|(_, solid)| solid)
    }
}

/// Shelves and dividers while the tree is being walked.
struct Inner {
    clear_depth: f64,
    shelves: Vec<(ShelfId, Solid)>,
    dividers: Vec<(DividerId, Solid)>,
}

impl Inner {
    /// Adds what is inside an opening with this clear space: x of left and right, y of top and
    /// bottom.
    fn add(&mut self, opening: &Opening, clear: Edges<f64>) {
        match &opening.inside {
            Inside::Undivided { loose } => {
                for shelf in loose {
                    self.shelf(shelf.id, shelf.up, &shelf.piece, clear);
                }
            }
            Inside::Shelf(split) => {
                let shelf = &split.shelf;
                self.shelf(shelf.id, shelf.up, &shelf.piece, clear);
                let above = Edges {
                    bottom: shelf.up + shelf.piece.panel.thickness,
                    ..clear
                };
                let below = Edges {
                    top: shelf.up,
                    ..clear
                };
                self.add(&split.above, above);
                self.add(&split.below, below);
            }
            Inside::Divider(split) => {
                let divider = &split.divider;
                let right_face = divider.across + divider.panel.thickness;
                let solid = solid(
                    (divider.across, right_face),
                    (clear.bottom - divider.housing, clear.top + divider.housing),
                    (divider.set_back, self.clear_depth),
                );
                self.dividers.push((divider.id, solid));
                let left = Edges {
                    right: divider.across,
                    ..clear
                };
                let right = Edges {
                    left: right_face,
                    ..clear
                };
                self.add(&split.left, left);
                self.add(&split.right, right);
            }
        }
    }

    fn shelf(&mut self, id: ShelfId, up: f64, piece: &HorizontalPanel, clear: Edges<f64>) {
        let solid = solid(
            (clear.left - piece.housing, clear.right + piece.housing),
            (up, up + piece.panel.thickness),
            (piece.set_back, self.clear_depth),
        );
        self.shelves.push((id, solid));
    }
}

/// A solid from its extents along x, y and z, mm.
#[must_use]
pub fn solid(x: (f64, f64), y: (f64, f64), z: (f64, f64)) -> Solid {
    Box3D::new(BoxPoint::new(x.0, y.0, z.0), BoxPoint::new(x.1, y.1, z.1))
}
