//! What stands and moves on the wall, for the checks that look past one box.
//!
//! In the section that all boxes share o counts from the wall, y from the floor, mm.

use euclid::Vector2D;
use flapwright_model::acceptance::Topic;
use flapwright_model::door::Door;
use flapwright_model::message::{Degrees, Word};
use flapwright_model::part::{LeafId, Part, PartId, Subject};
use flapwright_model::space::{SectionPoint, SectionSpace};
use flapwright_motion::outline::{BodyId, handle_outline, leaf_outline, outline_at};
use flapwright_motion::sweep::{Approach, corners, meet};

use super::Seen;
use super::clear_way::{NOISE, block, lap};
use super::uneven_reveals::SIDE_BY_SIDE;
use crate::inspection::{BoxReport, DoorReport};
use crate::message::DoorHitsNeighbour;

/// Something that stands still.
pub(super) struct Still {
    /// What of the wall it is.
    what: StillPart,
    /// What it is part of.
    pub(super) subject: Subject,
    /// What it is, among the still parts of one door.
    pub(super) topic: Topic,
    /// From and to along the wall.
    pub(super) across: (f64, f64),
    /// A convex outline in the section.
    outline: Vec<SectionPoint>,
}

impl Still {
    /// What is said when something that moves hits it.
    pub(super) const fn hit(&self, hits: Word, met_at: Degrees) -> DoorHitsNeighbour {
        let other = self.subject;
        match self.what {
            StillPart::Body => DoorHitsNeighbour::Body {
                hits,
                other,
                met_at,
            },
            StillPart::Leaf => DoorHitsNeighbour::Door {
                hits,
                other,
                met_at,
            },
            StillPart::Handle => DoorHitsNeighbour::Handle {
                hits,
                other,
                met_at,
            },
        }
    }
}

/// Which part of what stands on the wall.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum StillPart {
    /// The body of a box.
    Body,
    /// A leaf of a door.
    Leaf,
    /// The handle of a door.
    Handle,
}

/// A door that can move.
pub(super) struct Hung<'a> {
    /// What points at it.
    pub(super) subject: Subject,
    /// The box that it hangs on.
    pub(super) report: &'a BoxReport,
    /// The door as placed in its box.
    pub(super) door: &'a DoorReport,
    /// Where its leaves are along the wall.
    leaves: (f64, f64),
    /// Where its handle is along the wall.
    handle: Option<(f64, f64)>,
    /// From the section of its box to the section of the wall.
    to_wall: Vector2D<f64, SectionSpace>,
}

impl<'a> Hung<'a> {
    /// The doors of a box in the order of its openings.
    pub(super) fn of(Seen { wall_box, report }: Seen<'a>) -> Vec<Self> {
        let start = wall_box.place.along_wall;
        let doors = report.doors().filter_map(|door| {
            let described = wall_box.door(door.id)?;
            Some(Hung {
                subject: Subject::Door(report.id, door.id),
                report,
                door,
                leaves: (start + door.edges.left, start + door.edges.right),
                handle: handle_across(door, described).map(|it| (start + it.0, start + it.1)),
                to_wall: Vector2D::new(report.outer[2], wall_box.place.above_floor),
            })
        });
        doors.collect()
    }

    /// From the first to the last place along the wall.
    pub(super) fn across(&self) -> (f64, f64) {
        let handle = self.handle.unwrap_or(self.leaves);
        (self.leaves.0.min(handle.0), self.leaves.1.max(handle.1))
    }

    /// Where a body of the door is along the wall; an arm may be anywhere behind the leaves.
    fn body_across(&self, body: BodyId) -> (f64, f64) {
        match body {
            BodyId::Handle => self.handle.unwrap_or(self.leaves),
            BodyId::Leaf(_) | BodyId::Arm(_) => self.leaves,
        }
    }

    /// Where the moving door, path tolerance added, meets something; `None` when it keeps clear of
    /// it or already lies over it closed, which another check tells. Arms are left out: they move
    /// behind their door.
    pub(super) fn meets(&self, still: &Still) -> Option<Approach> {
        if lap(self.across(), still.across) <= NOISE {
            return None;
        }
        let sweep = self.door.sweep()?;
        let here: Vec<SectionPoint> = still.outline.iter().map(|it| *it - self.to_wall).collect();
        let mut closed = self.door.closed.leaves.iter().map(leaf_outline);
        if closed.any(|leaf| meet(&leaf, &here)) {
            return None;
        }
        sweep.approach_outline(&here, NOISE, |body| {
            !matches!(body, BodyId::Arm(_)) && lap(self.body_across(body), still.across) > NOISE
        })
    }

    /// Its leaves and its handle, closed.
    pub(super) fn closed(&self) -> Vec<Still> {
        let closed = &self.door.closed;
        let leaves = closed.leaves.iter().map(|leaf| {
            let topic = self.leaf_topic(leaf.id);
            (StillPart::Leaf, topic, self.leaves, leaf_outline(leaf))
        });
        let handle = self
            .handle
            .zip(closed.handle.as_ref())
            .zip(closed.leaves.last())
            .map(|((across, handle), leaf)| {
                (
                    StillPart::Handle,
                    Topic::Handle(self.door.id),
                    across,
                    handle_outline(handle, leaf),
                )
            });
        leaves
            .chain(handle)
            .map(|(what, topic, across, outline)| {
                self.still((what, topic), across, outline.to_vec())
            })
            .collect()
    }

    /// The same, fully open; none without a motion.
    pub(super) fn open(&self) -> Vec<Still> {
        let Some(motion) = self.door.working_motion() else {
            return Vec::new();
        };
        outline_at(motion, &self.door.closed, 1.0)
            .into_iter()
            .map(|(body, outline)| {
                let what = match body {
                    BodyId::Handle => StillPart::Handle,
                    BodyId::Leaf(_) | BodyId::Arm(_) => StillPart::Leaf,
                };
                let topic = Topic::Door(self.door.id);
                self.still((what, topic), self.body_across(body), outline)
            })
            .collect()
    }

    fn still(
        &self,
        (what, topic): (StillPart, Topic),
        across: (f64, f64),
        outline: Vec<SectionPoint>,
    ) -> Still {
        Still {
            what,
            subject: self.subject,
            topic,
            across,
            outline: outline.into_iter().map(|it| it + self.to_wall).collect(),
        }
    }

    fn leaf_topic(&self, leaf: LeafId) -> Topic {
        let door = self.door.id;
        Topic::Part(PartId {
            box_id: self.report.id,
            part: Part::Leaf { door, leaf },
        })
    }
}

/// Where the handle of a door is across its box, mm.
fn handle_across(door: &DoorReport, described: &Door) -> Option<(f64, f64)> {
    let handle = described.handle.as_ref()?;
    let middle = f64::midpoint(door.edges.left, door.edges.right) + handle.right_of_middle;
    Some((middle - handle.length / 2.0, middle + handle.length / 2.0))
}

/// The body of a box.
pub(super) fn body(Seen { wall_box, report }: Seen<'_>) -> Still {
    let [width, height, rear] = report.outer;
    let (start, floor) = (wall_box.place.along_wall, wall_box.place.above_floor);
    Still {
        what: StillPart::Body,
        subject: Subject::Box(report.id),
        topic: Topic::Box(report.id),
        across: (start, start + width),
        outline: corners(&block((0.0, rear), (floor, floor + height))).to_vec(),
    }
}

/// The stretch of the wall, from the left and from the floor, mm, outside of which a box with its
/// doors, closed and on their way, has to do with no other box.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Stretch {
    /// From and to along the wall.
    pub across: (f64, f64),
    /// From and to above the floor.
    pub up: (f64, f64),
}

impl Stretch {
    /// Of a box with its doors.
    #[must_use]
    pub fn of(seen: Seen<'_>) -> Self {
        let body = body(seen);
        let floor = seen.wall_box.place.above_floor;
        let (mut across, mut up) = (body.across, (floor, floor + seen.report.outer[1]));
        for door in Hung::of(seen) {
            across = both(across, door.across());
            up = both(
                up,
                (floor + door.door.edges.bottom, floor + door.door.edges.top),
            );
            if let Some(sweep) = door.door.sweep() {
                let bounds = sweep.bounds();
                up = both(up, (floor + bounds.min.y, floor + bounds.max.y));
            }
        }
        // Neighbours a little apart are compared too.
        let aside = SIDE_BY_SIDE / 2.0 + MARGIN;
        Self {
            across: (across.0 - aside, across.1 + aside),
            up: (up.0 - MARGIN, up.1 + MARGIN),
        }
    }

    /// Whether two stretches have a place in common.
    #[must_use]
    pub fn meets(&self, other: &Self) -> bool {
        lap(self.across, other.across) >= 0.0 && lap(self.up, other.up) >= 0.0
    }

    /// The smallest stretch with both in it.
    #[must_use]
    pub fn and(&self, other: &Self) -> Self {
        Self {
            across: both(self.across, other.across),
            up: both(self.up, other.up),
        }
    }
}

/// More than any slack that the checks have, mm.
const MARGIN: f64 = 1.0;

const fn both(a: (f64, f64), b: (f64, f64)) -> (f64, f64) {
    (a.0.min(b.0), a.1.max(b.1))
}
