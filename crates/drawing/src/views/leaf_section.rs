//! A leaf cut upright, in any pose.

use flapwright_model::space::SectionPoint;
use flapwright_motion::closed::{ClosedHandle, ClosedLeaf};
use flapwright_motion::motion::Pose;
use flapwright_rules::inspection::PanelReport;

use crate::grain::{self, Plane};
use crate::hatch::{Lie, Stuff};
use crate::list::At;

/// Half the height of a handle as it is drawn, workshop mm: its true height is not part of a job.
const HANDLE_HALF: f64 = 6.0;

/// A cut piece: corners in paper mm and what it is made of.
pub(super) struct Piece {
    pub(super) corners: Vec<At>,
    pub(super) stuff: Stuff,
}

/// The view's place for a place of the section: front at the left, so o runs to the left.
pub(super) fn to_paper(place: SectionPoint, scale: f64) -> At {
    At::new(-place.x * scale, place.y * scale)
}

fn block(pose: &Pose, o: [f64; 2], y: [f64; 2], scale: f64) -> Vec<At> {
    [(o[0], y[0]), (o[1], y[0]), (o[1], y[1]), (o[0], y[1])]
        .map(|(o, y)| to_paper(pose.apply(SectionPoint::new(o, y)), scale))
        .to_vec()
}

/// The outline of a leaf.
pub(super) fn outline(leaf: &ClosedLeaf, pose: &Pose, scale: f64) -> Vec<At> {
    block(
        pose,
        [leaf.back_o, leaf.front_o],
        [leaf.bottom, leaf.top],
        scale,
    )
}

/// What an upright plane cuts of a closed leaf: the panel or its rails, then what they hold.
pub(super) fn stuffs(panel: &PanelReport) -> (Stuff, Option<Stuff>) {
    match &panel.infill {
        None => {
            let whole = grain::of_panel(panel);
            (whole.stuff(panel.class, Plane::Upright), None)
        }
        Some(infill) => {
            let held = grain::of_infill(panel, infill);
            (
                grain::RAIL.stuff(panel.class, Plane::Upright),
                Some(held.stuff(infill.class, Plane::Upright)),
            )
        }
    }
}

/// The same material in a leaf that has been turned: the grain turns with it. `up` is where the
/// leaf's own upward direction points on paper.
fn turned(stuff: Stuff, up: euclid::default::Vector2D<f64>) -> Stuff {
    let lie = match stuff.lie {
        Lie::Crossing => Lie::Crossing,
        Lie::Along(degrees) => Lie::Along(degrees - 90.0 + up.angle_from_x_axis().to_degrees()),
    };
    Stuff { lie, ..stuff }
}

/// The pieces of a leaf: the whole of a plain one; rails, then what they hold, of a framed one.
pub(super) fn pieces(
    leaf: &ClosedLeaf,
    panel: &PanelReport,
    pose: &Pose,
    scale: f64,
) -> Vec<Piece> {
    let whole = outline(leaf, pose, scale);
    let up = whole[3] - whole[0];
    let (solid, held) = stuffs(panel);
    let solid = turned(solid, up);
    let (Some(infill), Some(held)) = (&panel.infill, held) else {
        return vec![Piece {
            corners: whole,
            stuff: solid,
        }];
    };
    let o = [leaf.back_o, leaf.front_o];
    let lower = leaf.bottom + infill.members.v_end;
    let upper = leaf.top - infill.members.v_start;
    let back = leaf.back_o + infill.behind;
    let pane_o = [back, back + infill.thickness];
    let pane_y = [lower - infill.tongue, upper + infill.tongue];
    let rail = |y| Piece {
        corners: block(pose, o, y, scale),
        stuff: solid,
    };
    vec![
        rail([leaf.bottom, lower]),
        rail([upper, leaf.top]),
        Piece {
            corners: block(pose, pane_o, pane_y, scale),
            stuff: turned(held, up),
        },
    ]
}

/// The handle on the front of a leaf.
pub(super) fn handle(leaf: &ClosedLeaf, handle: &ClosedHandle, pose: &Pose, scale: f64) -> Vec<At> {
    let o = [leaf.front_o, leaf.front_o + handle.projection];
    block(
        pose,
        o,
        [handle.y - HANDLE_HALF, handle.y + HANDLE_HALF],
        scale,
    )
}
