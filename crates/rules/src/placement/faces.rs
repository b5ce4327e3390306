//! The transforms from the box to each panel's own drawn face: one per face, nowhere else.

use flapwright_model::door::Side;
use flapwright_model::edges::Edges;
use flapwright_model::space::{BoxPoint, DoorPoint, SidePoint, TopPoint};

use crate::inspection::{Face, FacePoint, Solid};

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

/// The way back: a place (u, v) on the drawn face of a side, top or shelf, and where it is in the
/// box. `None` for other faces.
#[must_use]
pub fn from_face(face: Face, panel: &Solid, u: f64, v: f64) -> Option<(FacePoint, BoxPoint)> {
    match face {
        Face::SideInner(tie) => {
            let x = match tie {
                Side::Left => panel.max.x,
                Side::Right => panel.min.x,
            };
            let in_box = BoxPoint::new(x, panel.max.y - v, panel.min.z + u);
            Some((FacePoint::Side(SidePoint::new(u, v)), in_box))
        }
        Face::Underside => {
            let in_box = BoxPoint::new(panel.min.x + u, panel.min.y, panel.min.z + v);
            Some((FacePoint::Top(TopPoint::new(u, v)), in_box))
        }
        Face::DoorBack | Face::Plain => None,
    }
}
