//! What the checks on the way of a door have in common.

use flapwright_model::id::DoorId;
use flapwright_model::space::SectionPoint;
use flapwright_motion::outline::BodyId;
use flapwright_motion::sweep::{SectionBlock, Sweep};

use super::BoxContext;
use crate::inspection::{DoorReport, Solid};

/// Noise of the last digits, mm.
pub(super) const NOISE: f64 = 1e-6;

/// The doors of a box that move, with their sweep.
pub(super) fn moving<'a>(
    context: &'a BoxContext<'_>,
) -> impl Iterator<Item = (DoorId, &'a DoorReport, &'a Sweep)> {
    context
        .doors()
        .filter_map(|(id, _, door)| Some((id, door, door.sweep()?)))
}

/// The input angle at a place of the way, degrees; 0 without a motion.
pub(super) fn degrees(door: &DoorReport, s: f64) -> f64 {
    door.working_motion()
        .map_or(0.0, |motion| motion.input(s).to_degrees())
}

/// A block between two heights and two distances out, mm.
pub(super) fn block(o: (f64, f64), y: (f64, f64)) -> SectionBlock {
    SectionBlock::new(SectionPoint::new(o.0, y.0), SectionPoint::new(o.1, y.1))
}

/// A solid of the box in the section.
pub(super) fn section(solid: &Solid) -> SectionBlock {
    block((-solid.max.z, -solid.min.z), (solid.min.y, solid.max.y))
}

/// How far two extents lap, mm; negative: the gap.
pub(super) fn lap(a: (f64, f64), b: (f64, f64)) -> f64 {
    a.1.min(b.1) - a.0.max(b.0)
}

/// Whether a body is an arm.
pub(super) const fn is_arm(body: BodyId) -> bool {
    matches!(body, BodyId::Arm(_))
}

/// What bounds the opening of a door from above: the panel, and the member of the face frame whose underside
/// is the upper edge of the door's opening.
pub(super) fn bounding_above(context: &BoxContext<'_>, door_id: DoorId) -> Vec<Solid> {
    let Some(place) = context.opening_of(door_id) else {
        return Vec::new();
    };
    let panels = context.report.panels.iter();
    let rails = context.report.frame.iter().copied();
    panels
        .filter(|panel| panel.id.part == place.around.top)
        .map(|panel| panel.solid)
        .chain(rails.filter(|member| (member.min.y - place.door_opening.top).abs() < NOISE))
        .collect()
}
