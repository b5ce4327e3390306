//! The worked example of a draft.

use super::entry::{Reader, cell_field};
use super::{DraftExample, Grid};
use crate::card::Example;
use crate::edges::Edges;

impl Default for DraftExample {
    fn default() -> Self {
        Self {
            size: String::new(),
            panel_thickness: String::new(),
            overlays: Default::default(),
            packing: String::new(),
            joint_down: String::new(),
            side: Grid::new(["down", "back"]),
            door: Grid::new(["in", "down"]),
        }
    }
}

impl Reader<'_> {
    pub(super) fn example(&mut self, draft: &DraftExample) -> Example {
        let [left, right, top, bottom] = &draft.overlays;
        let overlays = Edges {
            left: self.length("example.overlays.left", left),
            right: self.length("example.overlays.right", right),
            top: self.length("example.overlays.top", top),
            bottom: self.length("example.overlays.bottom", bottom),
        };
        Example {
            size: draft.size.trim().to_owned(),
            panel_thickness: self.length("example.panel_thickness", &draft.panel_thickness),
            overlays,
            packing: self.length_or_none("example.packing", &draft.packing),
            joint_down: self.length_or_none("example.joint_down", &draft.joint_down),
            side: self.places("example.side", &draft.side),
            door: self.places("example.door", &draft.door),
        }
    }

    fn places(&mut self, name: &str, grid: &Grid) -> Vec<(f64, f64)> {
        (0..grid.rows.len())
            .map(|row| {
                let field = |column| cell_field(name, row, &grid.titles, column);
                (
                    self.length(&field(0), grid.cell(row, 0)),
                    self.length(&field(1), grid.cell(row, 1)),
                )
            })
            .collect()
    }
}
