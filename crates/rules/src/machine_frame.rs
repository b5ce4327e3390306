//! How a drilled panel lies on the bench: which edges are under the rule, what it measures then,
//! and where its bores are.
//!
//! The drilled face is up. Sides lie with their top end away from the reader, the left side with
//! its front edge at the left, the right side at the right; a top or shelf with its front edge
//! away and box-left at the left; a leaf with its top edge away and box-left at the right.

use std::sync::Arc;

use flapwright_model::cabinet::Drilled;
use flapwright_model::door::Side;
use flapwright_model::id::DoorId;
use flapwright_model::job::Job;
use flapwright_model::part::Subject;

use crate::finding::{Finding, Severity};
use crate::inspection::{
    BoreSource, BoxReport, Face, FaceBands, Inspection, PanelReport, PlacedBore,
};

/// An edge of a panel as it lies before the reader, drilled face up.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum BenchEdge {
    /// At the left hand.
    Left,
    /// At the right hand.
    Right,
    /// Away from the reader.
    Far,
    /// Next to the reader.
    Near,
}

/// Whether the panel is drilled before it is banded, so that its cut edges count.
#[must_use]
pub fn is_cut(panel: &PanelReport) -> bool {
    panel.drilled == Drilled::BeforeBanding
}

/// The bands that the panel does not have yet when it is drilled, mm.
#[must_use]
pub fn bands_to_come(panel: &PanelReport) -> FaceBands {
    if is_cut(panel) {
        panel.bands
    } else {
        FaceBands::default()
    }
}

/// Size along u and v as it is drilled, mm: finished, or cut where it is drilled before banding.
#[must_use]
pub fn size(panel: &PanelReport) -> [f64; 2] {
    let bands = bands_to_come(panel);
    [
        panel.size[0] - bands.u_start - bands.u_end,
        panel.size[1] - bands.v_start - bands.v_end,
    ]
}

/// u and v of a bore from the zero corner of the panel as it is drilled, mm.
#[must_use]
pub fn uv(panel: &PanelReport, bore: &PlacedBore) -> [f64; 2] {
    let bands = bands_to_come(panel);
    let (u, v) = bore.at.uv();
    [u - bands.u_start, v - bands.v_start]
}

/// Whether u runs to the left: only on a right side, whose front edge is at the right.
#[must_use]
pub fn u_runs_left(panel: &PanelReport) -> bool {
    panel.face == Face::SideInner(Side::Right)
}

/// A bore as the panel lies: x to the right, y away from the reader, from the corner at the left
/// next to the reader, mm.
#[must_use]
pub fn xy(panel: &PanelReport, bore: &PlacedBore) -> [f64; 2] {
    let [width, height] = size(panel);
    let [u, v] = uv(panel, bore);
    let x = if u_runs_left(panel) { width - u } else { u };
    [x, height - v]
}

/// Name of the edge that lies there, e.g. `front edge`.
#[must_use]
pub fn edge_name(panel: &PanelReport, edge: BenchEdge) -> &'static str {
    use BenchEdge::{Far, Left, Near, Right};
    match (panel.face, edge) {
        (Face::SideInner(_), Far) => "top end",
        (Face::SideInner(_), Near) => "bottom end",
        (Face::SideInner(Side::Left), Left) | (Face::SideInner(Side::Right), Right) => "front edge",
        (Face::SideInner(_), Left | Right) | (Face::Underside, Near) => "back edge",
        (Face::Underside, Far) => "front edge",
        (Face::Underside, Left) => "box-left end",
        (Face::Underside, Right) => "box-right end",
        (Face::DoorBack, Far) => "top edge",
        (Face::DoorBack, Near) => "bottom edge",
        (Face::DoorBack, Left) => "box-right edge",
        (Face::DoorBack, Right) => "box-left edge",
        (Face::Plain, Far) => "top",
        (Face::Plain, Near) => "bottom",
        (Face::Plain, Left) => "left",
        (Face::Plain, Right) => "right",
    }
}

/// Whether a number on this panel comes from an invented job or card.
#[must_use]
pub fn is_invented(job: &Job, report: &BoxReport, panel: &PanelReport) -> bool {
    let card_of = |door: DoorId| {
        let door = job.box_by_id(report.id)?.door(door)?;
        job.card_by_id(door.fitting.as_ref()?.card)
    };
    job.invented || fitted_doors(panel).any(|door| card_of(door).is_some_and(|card| card.invented))
}

/// How many findings of this severity are about the panel, one of its bores, or a door whose fitting
/// or leaf it carries.
#[must_use]
pub fn open_findings(inspection: &Inspection, panel: &PanelReport, severity: Severity) -> usize {
    let about =
        |finding: &&Arc<Finding>| finding.severity == severity && is_open_for(finding, panel);
    inspection.findings.iter().filter(about).count()
}

/// Whether a finding is open (not accepted) and is about this panel, one of its bores, or the door
/// whose fitting it carries.
#[must_use]
pub fn is_open_for(finding: &Finding, panel: &PanelReport) -> bool {
    let concerns = finding.subjects.iter().any(|subject| match subject {
        Subject::Part(part) => *part == panel.id,
        Subject::Bore(bore) => bore.part == panel.id,
        Subject::Door(_, door) => {
            panel.id.part.door() == Some(*door) || fitted_doors(panel).any(|own| own == *door)
        }
        Subject::Box(_) | Subject::Opening(..) | Subject::Obstacle(_) | Subject::Card(_) => false,
    });
    concerns && finding.accepted.is_none()
}

/// The doors whose fittings have bores in the panel, one for each bore.
pub fn fitted_doors(panel: &PanelReport) -> impl Iterator<Item = DoorId> + '_ {
    panel.bores.iter().filter_map(|bore| match bore.source {
        BoreSource::Fitting { door, .. } => Some(door),
        BoreSource::AsDrilled { .. }
        | BoreSource::Recorded
        | BoreSource::SystemRow
        | BoreSource::Handle { .. } => None,
    })
}
