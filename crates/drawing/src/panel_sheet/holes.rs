//! Holes as a sheet prints them.

use flapwright_model::card::Depth;
use flapwright_model::length::show_mm_tenth;
use flapwright_model::part::Subject;
use flapwright_rules::finding::{Finding, Severity};
use flapwright_rules::inspection::{BoreSource, PanelReport, PlacedBore};
use flapwright_rules::machine_frame;

/// A hole as it is printed: distances from the zero corner of the outline that is drawn.
#[derive(Debug, Clone, PartialEq)]
pub(crate) struct Hole {
    pub(crate) number: usize,
    /// Along u, mm, from the drawn edge.
    pub(crate) u: f64,
    /// Along v, mm, from the drawn edge.
    pub(crate) v: f64,
    pub(crate) diameter: f64,
    /// Depth, mm; `None` through.
    pub(crate) depth: Option<f64>,
    pub(crate) purpose: String,
    /// One of a row of shelf bores.
    pub(crate) in_row: bool,
    /// The worst finding about this very hole.
    pub(crate) severity: Option<Severity>,
}

impl Hole {
    /// Depth in words.
    pub(crate) fn depth_words(&self) -> String {
        self.depth
            .map_or_else(|| "through".to_owned(), show_mm_tenth)
    }
}

/// A bore of the panel as its sheet prints it.
pub(crate) fn hole(bore: &PlacedBore, panel: &PanelReport, findings: &[&Finding]) -> Hole {
    let [u, v] = machine_frame::uv(panel, bore);
    let pass = bore.drill.pass;
    let purpose = if pass > 1 {
        format!("{} (pass {pass})", bore.drill.purpose)
    } else {
        bore.drill.purpose.clone()
    };
    let own = |finding: &&&Finding| {
        finding.subjects.iter().any(|subject| match subject {
            Subject::Bore(id) => id.part == panel.id && id.number == bore.number,
            Subject::Box(_)
            | Subject::Opening(..)
            | Subject::Door(..)
            | Subject::Part(_)
            | Subject::Obstacle(_)
            | Subject::Card(_) => false,
        })
    };
    Hole {
        number: bore.number,
        u,
        v,
        diameter: bore.drill.diameter,
        depth: match bore.drill.depth {
            Depth::Blind(depth) => Some(depth),
            Depth::Through => None,
        },
        purpose,
        in_row: bore.source == BoreSource::SystemRow,
        severity: findings
            .iter()
            .filter(own)
            .map(|finding| finding.severity)
            .max(),
    }
}
