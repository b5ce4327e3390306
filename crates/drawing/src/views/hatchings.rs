//! What the views of a box hatch, for their legend.

use flapwright_model::part::Part;
use flapwright_rules::inspection::BoxReport;

use super::{elevation, leaf_section, plan, section};
use crate::hatch::Stuff;

/// The materials that the front view, the upright section (doors closed) and the level section
/// hatch, in the order in which they are drawn.
pub(crate) fn hatchings(report: &BoxReport) -> Vec<Stuff> {
    let mut found = Vec::new();
    let leaves = || {
        let leaf = |panel: &&_| is_leaf(panel);
        report.panels.iter().filter(leaf)
    };
    found.extend(section::cut_pieces(report).into_iter().map(|it| it.2));
    for panel in leaves() {
        let (solid, held) = leaf_section::stuffs(panel);
        found.push(solid);
        found.extend(held);
    }
    found.extend(plan::cut_pieces(report).into_iter().map(|it| it.stuff));
    found.extend(leaves().filter_map(elevation::hatched_infill));
    found
}

fn is_leaf(panel: &flapwright_rules::inspection::PanelReport) -> bool {
    matches!(panel.id.part, Part::Leaf { .. })
}
