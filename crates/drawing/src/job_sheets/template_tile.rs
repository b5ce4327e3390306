//! How a panel is cut into tiles of one page each.

/// The tiles overlap by this, mm.
pub(super) const OVERLAP: f64 = 12.0;
/// Blank around the panel, mm: its edges and their names are on the page.
pub(super) const MARGIN: f64 = 9.0;

/// One tile by row and column, counted from 0 at the upper left.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub(super) struct Tile {
    pub(super) row: usize,
    pub(super) column: usize,
}

impl Tile {
    /// As pages name it.
    pub(super) fn words(self) -> String {
        format!("row {}, column {}", self.row + 1, self.column + 1)
    }
}

/// How a panel is cut. Lengths are mm of paper and of the workshop alike: the scale is 1:1.
///
/// Its places count from the picture's upper left corner of the panel: right and **down**.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Tiling {
    /// Width and height of the panel.
    pub(super) panel: [f64; 2],
    /// Width and height of a tile.
    pub(super) window: [f64; 2],
    /// Number of columns and rows.
    pub(super) count: [usize; 2],
}

impl Tiling {
    /// The fewest tiles of this size that show the whole panel with its margin.
    pub(super) fn new(panel: [f64; 2], window: [f64; 2]) -> Self {
        let number = |length: f64, window: f64| {
            let step = (window - OVERLAP).max(1.0);
            let over = length + 2.0 * MARGIN - OVERLAP;
            (over / step - 1e-9).ceil().max(1.0) as usize
        };
        Self {
            panel,
            window,
            count: [number(panel[0], window[0]), number(panel[1], window[1])],
        }
    }

    pub(super) fn pages(&self) -> usize {
        self.count[0] * self.count[1]
    }

    /// The place of a tile's upper left corner.
    pub(super) fn corner(&self, tile: Tile) -> [f64; 2] {
        let at = |number: usize, window: f64| number as f64 * (window - OVERLAP) - MARGIN;
        [
            at(tile.column, self.window[0]),
            at(tile.row, self.window[1]),
        ]
    }

    /// Whether a place is on a tile.
    pub(super) fn shows(&self, tile: Tile, place: [f64; 2]) -> bool {
        let corner = self.corner(tile);
        (0..2).all(|axis| {
            let along = place[axis] - corner[axis];
            (0.0..=self.window[axis]).contains(&along)
        })
    }

    /// The tiles that are printed: those with a bore, and those that a reference edge runs
    /// through. `left_edge`: the upright reference edge is at the left of the picture, else at
    /// the right; the level one is always at the top.
    pub(super) fn printed(&self, bores: &[[f64; 2]], left_edge: bool) -> Vec<Tile> {
        let [columns, rows] = self.count;
        let mut tiles = Vec::new();
        let upright = if left_edge { 0.0 } else { self.panel[0] };
        for row in 0..rows {
            for column in 0..columns {
                let tile = Tile { row, column };
                let corner = self.corner(tile);
                let on_edge = (corner[0]..=corner[0] + self.window[0]).contains(&upright)
                    || (corner[1]..=corner[1] + self.window[1]).contains(&0.0);
                if on_edge || bores.iter().any(|bore| self.shows(tile, *bore)) {
                    tiles.push(tile);
                }
            }
        }
        tiles
    }

    /// Middles of the overlaps along one axis (0 across, 1 down).
    pub(super) fn joints(&self, axis: usize) -> impl Iterator<Item = f64> + '_ {
        (1..self.count[axis]).map(move |number| {
            number as f64 * (self.window[axis] - OVERLAP) - MARGIN + 0.5 * OVERLAP
        })
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn tiles_cover_the_panel_with_their_overlaps() {
        for panel in [
            [40.0, 3000.0],
            [330.0, 720.0],
            [40.0, 40.0],
            [3000.0, 3000.0],
        ] {
            let tiling = Tiling::new(panel, [180.0, 170.0]);
            for axis in 0..2 {
                let last = tiling.count[axis] - 1;
                let tile = Tile {
                    row: last,
                    column: last,
                };
                let end = tiling.corner(tile)[axis] + tiling.window[axis];
                assert!(end >= panel[axis] + MARGIN - 1e-6, "{panel:?}: {end}");
                let before = end - (tiling.window[axis] - OVERLAP);
                assert!(last == 0 || before < panel[axis] + MARGIN, "one too many");
            }
        }
    }

    #[test]
    fn every_bore_and_both_reference_edges_are_printed() {
        let tiling = Tiling::new([900.0, 700.0], [180.0, 170.0]);
        let bores = [[450.0, 350.0], [899.0, 699.0]];
        for left in [true, false] {
            let printed = tiling.printed(&bores, left);
            for bore in bores {
                assert!(printed.iter().any(|tile| tiling.shows(*tile, bore)));
            }
            let column = if left { 0 } else { tiling.count[0] - 1 };
            assert!((0..tiling.count[1]).all(|row| printed.contains(&Tile { row, column })));
            assert!((0..tiling.count[0]).all(|column| printed.contains(&Tile { row: 0, column })));
            assert!(printed.len() < tiling.pages());
        }
    }
}
