//! The bores of a door as they are now, as facts of an existing door.

use crate::inspection::{BoreSource, BoxReport, PanelReport};
use flapwright_model::door::{DrilledBore, End, Side};
use flapwright_model::id::DoorId;
use flapwright_model::part::{LeafId, Part};

/// The bores in the backs of the leaves of one door, handle screws left out.
#[must_use]
pub fn bores_now(report: &BoxReport, door: DoorId) -> Vec<DrilledBore> {
    report
        .panels
        .iter()
        .filter_map(|panel| match panel.id.part {
            Part::Leaf { door: of, leaf } if of == door => Some((panel, leaf)),
            _ => None,
        })
        .flat_map(|(panel, leaf)| of_leaf(panel, leaf))
        .collect()
}

fn of_leaf(panel: &PanelReport, leaf: LeafId) -> Vec<DrilledBore> {
    panel
        .bores
        .iter()
        .filter_map(|bore| {
            let (u, v) = bore.at.uv();
            // u counts from the box-right edge: the back is seen.
            let from_side = match bore.source {
                BoreSource::Fitting { side, .. } => side,
                BoreSource::AsDrilled { .. } if 2.0 * u <= panel.size[0] => Side::Right,
                BoreSource::AsDrilled { .. } => Side::Left,
                BoreSource::Recorded | BoreSource::SystemRow | BoreSource::Handle { .. } => {
                    return None;
                }
            };
            let across = match from_side {
                Side::Right => u,
                Side::Left => panel.size[0] - u,
            };
            Some(DrilledBore {
                leaf,
                from_side,
                across,
                from_end: End::Top,
                along: v,
                diameter: bore.drill.diameter,
                depth: bore.depth_in(panel.thickness),
                purpose: bore.drill.purpose.clone(),
            })
        })
        .collect()
}
