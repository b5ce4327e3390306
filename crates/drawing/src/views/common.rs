//! What the views have in common: places, figures, the leaves of a door.

use euclid::default::Rect;
use flapwright_model::id::DoorId;
use flapwright_model::length::{Unit, show_inch_64, show_length};
use flapwright_model::part::{BoreId, LeafId, Part, PartId, Subject};
use flapwright_rules::inspection::{BoxReport, DoorReport, PanelReport, Solid};

use crate::list::At;
use crate::text::set_fractions;

/// A figure in a view: as typed in millimetres, to the nearest 1/64 in inches.
pub(crate) fn figure(length: f64, unit: Unit) -> String {
    match unit {
        Unit::Millimetre => show_length(length, unit),
        Unit::Inch => set_fractions(&show_inch_64(length)),
    }
}

/// Smallest radius at which a bore is drawn in a view, paper mm.
pub(super) const LEAST_BORE: f64 = 0.5;

/// The front view of a solid, paper mm.
pub(super) fn front_rect(solid: &Solid, scale: f64) -> Rect<f64> {
    let (low, high) = (solid.min, solid.max);
    Rect::from_points([
        At::new(low.x * scale, low.y * scale),
        At::new(high.x * scale, high.y * scale),
    ])
}

/// The side view of a solid with the front at the left, paper mm.
pub(super) fn side_rect(solid: &Solid, scale: f64) -> Rect<f64> {
    let (low, high) = (solid.min, solid.max);
    Rect::from_points([
        At::new(low.z * scale, low.y * scale),
        At::new(high.z * scale, high.y * scale),
    ])
}

pub(super) fn bore_subject(part: PartId, number: usize) -> Subject {
    Subject::Bore(BoreId { part, number })
}

/// What the fitting of a door and its opening mark stand for.
pub(super) const fn door_subject(report: &BoxReport, door: &DoorReport) -> Subject {
    Subject::Door(report.id, door.id)
}

/// The leaves of one door, in the report's order.
pub(super) fn leaves_of(
    report: &BoxReport,
    door: DoorId,
) -> impl Iterator<Item = (&PanelReport, LeafId)> + '_ {
    report
        .panels
        .iter()
        .filter_map(move |panel| match panel.id.part {
            Part::Leaf { door: own, leaf } if own == door => Some((panel, leaf)),
            _ => None,
        })
}
