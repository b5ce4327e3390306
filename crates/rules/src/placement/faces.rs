//! The transforms from the box to each panel's own drawn face: one per face, nowhere else.

use flapwright_model::edges::Edges;
use flapwright_model::space::{BoxPoint, DoorPoint, SidePoint, TopPoint};

use crate::inspection::Solid;

/// On the inner face of a side: u back from its front edge, v down from its top end.
///
/// Left and right sides give the same (u, v) for mirrored places.
#[must_use]
pub fn side_face(side: &Solid, place: BoxPoint) -> SidePoint {
    SidePoint::new(place.z - side.min.z, side.max.y - place.y)
}

/// On the underside of a top or shelf: u from its own box-left end, v back from its own front
/// edge.
#[must_use]
pub fn top_face(panel: &Solid, place: BoxPoint) -> TopPoint {
    TopPoint::new(place.x - panel.min.x, place.z - panel.min.z)
}

/// On the back of a leaf lying face down: u from the edge that is left **as seen from the back**,
/// which is the box-right edge; v down from its top edge. The one place where left and right
/// cross over.
#[must_use]
pub fn door_back(leaf: &Edges<f64>, place: BoxPoint) -> DoorPoint {
    DoorPoint::new(leaf.right - place.x, leaf.top - place.y)
}
