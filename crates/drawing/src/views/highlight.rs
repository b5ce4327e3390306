//! Lighting up what a finding or the pointer is about.

use euclid::default::Rect;
use flapwright_model::part::Subject;
use flapwright_model::space::BoxPoint;
use flapwright_rules::finding::Severity;
use flapwright_rules::inspection::{BoxReport, OpeningReport, Solid};

use super::options::ViewOptions;
use crate::brush::Brush;
use crate::list::{At, DisplayList};
use crate::pen::{Ink, Layer, Pen};

/// How one view projects: a point and a solid of the box into paper mm.
pub(super) struct Projection {
    /// A place in the box.
    pub(super) point: fn(BoxPoint, f64) -> At,
    /// A solid in the box.
    pub(super) solid: fn(&Solid, f64) -> Rect<f64>,
}

/// The ink of a severity.
pub(crate) const fn severity_ink(severity: Severity) -> Ink {
    match severity {
        Severity::Stop => Ink::Stop,
        Severity::Caution => Ink::Caution,
        Severity::Note => Ink::Note,
    }
}

/// Draws marks over everything that is lit or selected in this box.
pub(super) fn highlight(
    list: &mut DisplayList,
    report: &BoxReport,
    options: &ViewOptions,
    projection: &Projection,
) {
    for (subject, severity) in options.lit.iter().rev() {
        if subject.box_id() == Some(report.id) {
            mark(
                list,
                report,
                options.scale,
                projection,
                *subject,
                severity_ink(*severity),
            );
        }
    }
    if let Some(subject) = options.selected
        && subject.box_id() == Some(report.id)
    {
        mark(list, report, options.scale, projection, subject, Ink::Ghost);
    }
}

fn mark(
    list: &mut DisplayList,
    report: &BoxReport,
    scale: f64,
    projection: &Projection,
    subject: Subject,
    ink: Ink,
) {
    let brush = Brush::new(Layer::Findings, ink).of(subject);
    let opening = |list: &mut DisplayList, found: Option<&OpeningReport>| {
        if let Some(found) = found {
            brush.rect(list, (projection.solid)(&found.clear, scale), Pen::Frame);
        }
    };
    match subject {
        Subject::Bore(id) => {
            let panel = report.panel(id.part.part);
            let bore = panel.and_then(|panel| panel.bores.iter().find(|b| b.number == id.number));
            if let Some(bore) = bore {
                let centre = (projection.point)(bore.in_box, scale);
                let radius = (0.5 * bore.drill.diameter * scale).max(0.5);
                brush.circle(list, centre, radius + 1.2, Pen::Banded);
                brush.disc(list, centre, radius);
            }
        }
        Subject::Part(id) => {
            if let Some(panel) = report.panel(id.part) {
                brush.rect(list, (projection.solid)(&panel.solid, scale), Pen::Banded);
            }
        }
        Subject::Opening(_, id) => opening(list, report.opening(id)),
        Subject::Door(_, id) => opening(list, report.opening_of(id)),
        Subject::Box(_) => {
            let [width, height, depth] = report.outer;
            let low = BoxPoint::new(0.0, 0.0, 0.0);
            let whole = Solid::new(low, BoxPoint::new(width, height, depth));
            let rect = (projection.solid)(&whole, scale).inflate(1.0, 1.0);
            brush.rect(list, rect, Pen::Banded);
        }
        // They are not in the box.
        Subject::Obstacle(_) | Subject::Card(_) => {}
    }
}
