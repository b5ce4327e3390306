//! Views of a whole box: elevation and section, live in the window and small on sheets.
//!
//! Views are in **paper** millimetres: workshop mm times [`ViewOptions::scale`], so that figures
//! and arrowheads keep their size at every zoom. Items carry what they show, so that [`hit`] finds
//! it again.

mod around;
mod elevation;
mod elevation_dimensions;
mod ghost;
mod grips;
mod hatchings;
mod highlight;
mod hit;
mod leaf_section;
mod plan;
mod section;
mod section_door;
#[cfg(test)]
mod tests;
mod visible;

pub use around::Around;
pub use elevation::elevation;
pub(crate) use hatchings::hatchings;
pub(crate) use highlight::severity_ink;
pub use hit::hit;
pub use plan::plan;
pub use section::section;

use std::sync::Arc;

use euclid::default::Rect;
use flapwright_model::id::DoorId;
use flapwright_model::job::OpeningMark;
use flapwright_model::length::{Unit, show_inch_64, show_length};
use flapwright_model::part::{BoreId, LeafId, Part, PartId, Subject};
use flapwright_rules::finding::Severity;
use flapwright_rules::inspection::{BoxReport, DoorReport, PanelReport, Solid};

use crate::list::At;

/// What a view shows and how.
#[derive(Debug, Clone)]
pub struct ViewOptions {
    /// Paper mm per workshop mm.
    pub scale: f64,
    /// How far the doors are open in the section: 0 closed, 1 fully open.
    pub s: f64,
    /// Unit of the figures.
    pub unit: Unit,
    /// Convention of the opening mark.
    pub mark: OpeningMark,
    /// What is lit up, and with which severity's ink.
    pub lit: Vec<(Subject, Severity)>,
    /// What is selected: drawn with a ring or a heavier outline.
    pub selected: Option<Subject>,
    /// Whether dimensions are drawn.
    pub show_dimensions: bool,
    /// The box as it would be with a change that is shown before it is applied.
    pub ghost: Option<Arc<BoxReport>>,
    /// The room around the box; `None` leaves it out.
    pub around: Option<Around>,
}

impl Default for ViewOptions {
    fn default() -> Self {
        Self {
            scale: 0.2,
            s: 0.0,
            unit: Unit::Millimetre,
            mark: OpeningMark::ApexAtOpeningSide,
            lit: Vec::new(),
            selected: None,
            show_dimensions: true,
            ghost: None,
            around: None,
        }
    }
}

/// A figure in a view: as typed in millimetres, to the nearest 1/64 in inches.
pub(crate) fn figure(length: f64, unit: Unit) -> String {
    match unit {
        Unit::Millimetre => show_length(length, unit),
        Unit::Inch => crate::text::set_fractions(&show_inch_64(length)),
    }
}

/// Smallest radius at which a bore is drawn in a view, paper mm.
const LEAST_BORE: f64 = 0.5;

/// The front view of a solid, paper mm.
fn front_rect(solid: &Solid, scale: f64) -> Rect<f64> {
    let (low, high) = (solid.min, solid.max);
    Rect::from_points([
        At::new(low.x * scale, low.y * scale),
        At::new(high.x * scale, high.y * scale),
    ])
}

/// The side view of a solid with the front at the left, paper mm.
fn side_rect(solid: &Solid, scale: f64) -> Rect<f64> {
    let (low, high) = (solid.min, solid.max);
    Rect::from_points([
        At::new(low.z * scale, low.y * scale),
        At::new(high.z * scale, high.y * scale),
    ])
}

fn bore_subject(part: PartId, number: usize) -> Subject {
    Subject::Bore(BoreId { part, number })
}

/// What the fitting of a door and its opening mark stand for.
const fn door_subject(report: &BoxReport, door: &DoorReport) -> Subject {
    Subject::Door(report.id, door.id)
}

/// The leaves of one door, in the report's order.
fn leaves_of(
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
