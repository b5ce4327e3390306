//! Outlines of the moving parts, and how far they come.

use flapwright_model::part::LeafId;
use flapwright_model::space::{SectionPoint, SectionVector};

use crate::closed::{ClosedDoor, ClosedHandle, ClosedLeaf};
use crate::golden::largest_between;
use crate::motion::{Motion, Pose};
use crate::pose::PoseJet;

/// Half the height of a handle in the section, mm. A handle's height is not typed; a bar of this
/// size is drawn. Common practice, no source.
pub const HANDLE_HALF_HEIGHT: f64 = 6.0;

/// Steps of the sweep that finds the extremes before they are refined.
const SWEEP_STEPS: u16 = 96;

/// A body of the section.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum BodyId {
    /// A leaf.
    Leaf(LeafId),
    /// The handle on the lower or only leaf.
    Handle,
    /// An arm or link: index in [`MotionPose::arms`](crate::motion::MotionPose::arms).
    Arm(usize),
}

/// The corners of a closed leaf, mm, counter-clockwise from its lower back corner.
#[must_use]
pub fn leaf_outline(leaf: &ClosedLeaf) -> [SectionPoint; 4] {
    rectangle(leaf.back_o, leaf.bottom, leaf.front_o, leaf.top)
}

/// The corners of a closed handle before the face of its leaf, mm, counter-clockwise.
#[must_use]
pub fn handle_outline(handle: &ClosedHandle, leaf: &ClosedLeaf) -> [SectionPoint; 4] {
    let (low, high) = (handle.y - HANDLE_HALF_HEIGHT, handle.y + HANDLE_HALF_HEIGHT);
    rectangle(leaf.front_o, low, leaf.front_o + handle.projection, high)
}

/// Outlines of leaves and handle at s, mm, counter-clockwise, from the top leaf down, the handle
/// last.
#[must_use]
pub fn outline_at(motion: &Motion, door: &ClosedDoor, s: f64) -> Vec<(BodyId, Vec<SectionPoint>)> {
    let pose = motion.pose(s);
    let moved = |corners: [SectionPoint; 4], pose: &Pose| {
        corners
            .iter()
            .map(|corner| pose.apply(*corner))
            .collect::<Vec<_>>()
    };
    let mut bodies: Vec<_> = door
        .leaves
        .iter()
        .zip(&pose.leaves)
        .map(|(leaf, (_, pose))| (BodyId::Leaf(leaf.id), moved(leaf_outline(leaf), pose)))
        .collect();
    if let (Some(handle), Some(leaf), Some((_, pose))) =
        (&door.handle, door.leaves.last(), pose.leaves.last())
    {
        bodies.push((BodyId::Handle, moved(handle_outline(handle, leaf), pose)));
    }
    bodies
}

/// Outlines of the arms and links at s, mm: bars of the given half width, counter-clockwise. A
/// card does not say how wide its arms are.
#[must_use]
pub fn arm_outlines(motion: &Motion, s: f64, half_width: f64) -> Vec<(BodyId, Vec<SectionPoint>)> {
    let bar = |(index, (from, to)): (usize, (SectionPoint, SectionPoint))| {
        let along: SectionVector = to - from;
        let side = SectionVector::new(-along.y, along.x) * (half_width / along.length());
        (
            BodyId::Arm(index),
            vec![from - side, to - side, to + side, from + side],
        )
    };
    motion
        .pose(s)
        .arms
        .into_iter()
        .enumerate()
        .map(bar)
        .collect()
}

/// A largest or smallest place on the way, and where on the way.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Extreme {
    /// The place, mm.
    pub value: f64,
    /// Where on the way from closed (0) to open (1).
    pub s: f64,
}

/// How far the moving door comes. Heights are y and distances out are o of the section, mm;
/// of an
/// arm its end on the door counts; neither its width nor the path tolerance is in it.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Reach {
    /// Highest point of leaves, handle and arms on the whole way.
    pub highest: Extreme,
    /// Point furthest out into the room on the whole way.
    pub furthest_out: Extreme,
    /// Point furthest in, towards the back of the box, on the whole way.
    pub furthest_in: Extreme,
    /// Lowest point of leaves, handle and the arms' ends on the door when fully open.
    pub lowest_open: f64,
    /// How far the highest point rises above the top edge of the closed door; 0 when it never
    /// does.
    pub top_rise: f64,
}

/// How far the moving door comes: a sweep of the corners, each extreme refined to less than
/// 1e-6 mm.
#[must_use]
pub fn reach(motion: &Motion, door: &ClosedDoor) -> Reach {
    let corners = Corners::of(motion, door);
    let up = |place: SectionVector| place.y;
    let out = |place: SectionVector| place.x;
    let inward = |place: SectionVector| -place.x;
    let mut best = [(f64::NEG_INFINITY, 0_u16); 3];
    for step in 0..=SWEEP_STEPS {
        let jets = motion.jets(motion.input(share(step)));
        for (found, measure) in best.iter_mut().zip([up, out, inward]) {
            let value = corners.most(&jets, measure);
            if value > found.0 {
                *found = (value, step);
            }
        }
    }
    let [highest, furthest_out, furthest_in] = best;
    let highest = corners.refine(motion, up, highest);
    let furthest_in = corners.refine(motion, inward, furthest_in);
    let closed_top = door
        .leaves
        .first()
        .map_or(f64::NEG_INFINITY, |leaf| leaf.top);
    let open = motion.jets(motion.end_angle());
    Reach {
        highest,
        furthest_out: corners.refine(motion, out, furthest_out),
        furthest_in: Extreme {
            value: -furthest_in.value,
            s: furthest_in.s,
        },
        lowest_open: -corners.most(&open, |place| -place.y),
        top_rise: (highest.value - closed_top).max(0.0),
    }
}

/// How far the top edge of a door rises above where it is when closed, mm: of its two corners in
/// the section the higher one, where it is highest on the way. Not the whole door: past level the
/// lower edge of a flap comes higher, out in the room.
///
/// About an axis h below the edge and e behind the front face that is sqrt(h² + e²) - h.
#[must_use]
pub fn top_edge_rise(motion: &Motion, door: &ClosedDoor) -> f64 {
    let Some(leaf) = door.leaves.first() else {
        return 0.0;
    };
    let corners = Corners {
        first: vec![
            SectionPoint::new(leaf.back_o, leaf.top),
            SectionPoint::new(leaf.front_o, leaf.top),
        ],
        last: Vec::new(),
    };
    let up = |place: SectionVector| place.y;
    let at = |step: u16| corners.most(&motion.jets(motion.input(share(step))), up);
    let best = (0..=SWEEP_STEPS)
        .map(|step| (at(step), step))
        .fold((f64::NEG_INFINITY, 0), |a, b| if b.0 > a.0 { b } else { a });
    (corners.refine(motion, up, best).value - leaf.top).max(0.0)
}

/// The closed corners of what moves, by the leaf that they are fixed to.
struct Corners {
    first: Vec<SectionPoint>,
    last: Vec<SectionPoint>,
}

impl Corners {
    fn of(motion: &Motion, door: &ClosedDoor) -> Self {
        let mut groups = door.leaves.iter().map(|leaf| leaf_outline(leaf).to_vec());
        let mut corners = Self {
            first: groups.next().unwrap_or_default(),
            last: groups.next().unwrap_or_default(),
        };
        let carrier = if door.leaves.len() == 1 {
            &mut corners.first
        } else {
            &mut corners.last
        };
        if let (Some(handle), Some(leaf)) = (&door.handle, door.leaves.last()) {
            carrier.extend(handle_outline(handle, leaf));
        }
        // The far end of an arm is fixed to the leaf, and its near end stands still in the box.
        carrier.extend(motion.pose(0.0).arms.iter().map(|(_, pin)| *pin));
        corners
    }

    /// The largest measure of any corner.
    fn most(
        &self,
        (first, second): &(PoseJet, Option<PoseJet>),
        measure: impl Fn(SectionVector) -> f64,
    ) -> f64 {
        let of_leaf = |corners: &[SectionPoint], jet: &PoseJet| {
            corners
                .iter()
                .map(|corner| measure(jet.place(*corner)))
                .fold(f64::NEG_INFINITY, f64::max)
        };
        let lower = second
            .as_ref()
            .map_or(f64::NEG_INFINITY, |jet| of_leaf(&self.last, jet));
        of_leaf(&self.first, first).max(lower)
    }

    /// The extreme between the neighbours of the best step.
    fn refine(
        &self,
        motion: &Motion,
        measure: impl Fn(SectionVector) -> f64 + Copy,
        (value, step): (f64, u16),
    ) -> Extreme {
        let at = |s: f64| self.most(&motion.jets(motion.input(s)), measure);
        let (low, high) = (
            share(step.saturating_sub(1)),
            share((step + 1).min(SWEEP_STEPS)),
        );
        let (s, found) = largest_between(low, high, at);
        if found > value {
            Extreme { value: found, s }
        } else {
            Extreme {
                value,
                s: share(step),
            }
        }
    }
}

/// The s of a step of the sweep.
fn share(step: u16) -> f64 {
    f64::from(step) / f64::from(SWEEP_STEPS)
}

const fn rectangle(left: f64, low: f64, right: f64, high: f64) -> [SectionPoint; 4] {
    [
        SectionPoint::new(left, low),
        SectionPoint::new(right, low),
        SectionPoint::new(right, high),
        SectionPoint::new(left, high),
    ]
}
