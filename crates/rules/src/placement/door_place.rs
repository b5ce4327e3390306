//! Where a closed door and its leaves are in the box.

use flapwright_model::cabinet::WallBox;
use flapwright_model::door::{Door, DoorFit, Leaves};
use flapwright_model::edges::Edges;
use flapwright_model::job::Settings;
use flapwright_model::part::LeafId;
use flapwright_motion::closed::{ClosedDoor, ClosedHandle, ClosedLeaf};

use super::opening::{OpeningPlace, overlays};

/// A closed door in its box, mm.
#[derive(Debug, Clone)]
pub struct DoorPlace {
    /// Overlays without tweaks.
    pub overlays: Edges<f64>,
    /// The door's edges with tweaks: x of left and right, y of top and bottom.
    pub edges: Edges<f64>,
    /// z of the back face.
    pub back: f64,
    /// z of the datum `SideFront`, pushed back by an inset door's thickness and set-back.
    pub side_front: f64,
    /// z of the datum `FrameFront`, likewise.
    pub frame_front: f64,
    /// y of the middle of the joint, where there are two leaves.
    pub joint: Option<f64>,
    /// The leaves from the top down.
    pub leaves: Vec<LeafPlace>,
}

/// A closed leaf in its box, mm.
#[derive(Debug, Clone, Copy)]
pub struct LeafPlace {
    /// Which leaf.
    pub id: LeafId,
    /// Its edges: x of left and right, y of top and bottom.
    pub edges: Edges<f64>,
    /// Its thickness.
    pub thickness: f64,
}

impl DoorPlace {
    /// Where a door is.
    #[must_use]
    pub fn of(wall_box: &WallBox, place: &OpeningPlace, door: &Door, settings: &Settings) -> Self {
        let overlays = overlays(place, door);
        let out = overlays.map(|edge, overlay| overlay + door.tweaks.at(edge));
        let edges = Edges {
            left: place.door_opening.left - out.left,
            right: place.door_opening.right + out.right,
            top: place.door_opening.top + out.top,
            bottom: place.door_opening.bottom - out.bottom,
        };
        let thickness = door.leaves.first().build.thickness();
        let frame = wall_box.frame.as_ref().map_or(0.0, |frame| frame.thickness);
        let (pushed_back, back) = match door.fit {
            DoorFit::Overlay { .. } => (0.0, -(frame + settings.bumper_gap)),
            DoorFit::Inset { set_back, .. } => (thickness + set_back, thickness + set_back - frame),
        };
        let (joint, leaves) = match &door.leaves {
            Leaves::One(leaf) => (None, vec![leaf_place(LeafId::Only, edges, leaf)]),
            Leaves::Two {
                upper,
                lower,
                joint_down,
                joint_gap,
            } => {
                let joint = place.clear.top - joint_down;
                let above = Edges {
                    bottom: joint + joint_gap / 2.0,
                    ..edges
                };
                let below = Edges {
                    top: joint - joint_gap / 2.0,
                    ..edges
                };
                let leaves = vec![
                    leaf_place(LeafId::Upper, above, upper),
                    leaf_place(LeafId::Lower, below, lower),
                ];
                (Some(joint), leaves)
            }
        };
        Self {
            overlays,
            edges,
            back,
            side_front: pushed_back,
            frame_front: pushed_back - frame,
            joint,
            leaves,
        }
    }

    /// The leaf of that name.
    #[must_use]
    pub fn leaf(&self, id: LeafId) -> Option<&LeafPlace> {
        self.leaves.iter().find(|leaf| leaf.id == id)
    }

    /// z of the front face of the first leaf: in front of its back.
    #[must_use]
    pub fn front(&self) -> f64 {
        self.back - self.leaves.first().map_or(0.0, |leaf| leaf.thickness)
    }

    /// The closed door as motion sees it.
    #[must_use]
    pub fn closed(&self, place: &OpeningPlace, door: &Door) -> ClosedDoor {
        ClosedDoor {
            leaves: self
                .leaves
                .iter()
                .map(|leaf| ClosedLeaf {
                    id: leaf.id,
                    top: leaf.edges.top,
                    bottom: leaf.edges.bottom,
                    back_o: -self.back,
                    front_o: -self.back + leaf.thickness,
                })
                .collect(),
            underside_y: place.clear.top,
            side_front_o: -self.side_front,
            frame_front_o: -self.frame_front,
            joint_y: self.joint,
            handle: door.handle.as_ref().map(|handle| ClosedHandle {
                y: self.edges.bottom + handle.up,
                projection: handle.projection,
            }),
        }
    }
}

fn leaf_place(id: LeafId, edges: Edges<f64>, leaf: &flapwright_model::door::Leaf) -> LeafPlace {
    LeafPlace {
        id,
        edges,
        thickness: leaf.build.thickness(),
    }
}
