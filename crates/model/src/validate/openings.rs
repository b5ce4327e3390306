//! Soundness of what is inside a box: its tree of openings, shelves and dividers.

use super::Validator;
use crate::cabinet::WallBox;
use crate::field::{FixedShelfField, LooseShelfField};
use crate::job::Job;
use crate::opening::{FixedShelf, Inside, LooseShelf, MOST_LEVELS, Opening};

/// The lower and the upper bound of a clear space, from the underside of the box, mm.
type Heights = (f64, f64);

impl Validator {
    pub(super) fn body(&mut self, at: &str, wall_box: &WallBox, job: &Job) {
        let levels = wall_box.body.levels();
        if levels > MOST_LEVELS {
            self.wrong(
                format!("{at}.body"),
                format!("is split {levels} times over; {MOST_LEVELS} times is the most"),
                "take shelves out or split the openings more evenly",
            );
            return;
        }
        let lowest = wall_box.bottom.panel.thickness + wall_box.bottom.set_in;
        let highest = wall_box.height - wall_box.top.panel.thickness - wall_box.top.set_in;
        self.opening(at, &wall_box.body, (lowest, highest), wall_box, job);
    }

    fn opening(
        &mut self,
        at: &str,
        opening: &Opening,
        heights: Heights,
        wall_box: &WallBox,
        job: &Job,
    ) {
        if let Some(door) = &opening.door {
            if opening.parts().is_some() {
                self.wrong(
                    format!("{at}.opening {}.door", opening.id),
                    "is before an opening that is split",
                    "give each part of the opening a door of its own",
                );
            }
            self.door(&format!("{at}.door {}", door.id), door, job);
        }
        match &opening.inside {
            Inside::Undivided { loose } => {
                for shelf in loose {
                    self.loose_shelf(at, shelf, wall_box, job);
                }
            }
            Inside::Shelf(split) => {
                let shelf = &split.shelf;
                self.fixed_shelf(at, shelf, heights, wall_box, job);
                let upper_face = shelf.up + shelf.piece.panel.thickness;
                self.opening(at, &split.above, (upper_face, heights.1), wall_box, job);
                self.opening(at, &split.below, (heights.0, shelf.up), wall_box, job);
            }
            Inside::Divider(split) => self.wrong(
                format!("{at}.divider {}", split.divider.id),
                "cannot be built yet",
                "make two boxes of it",
            ),
        }
    }

    fn fixed_shelf(
        &mut self,
        at: &str,
        shelf: &FixedShelf,
        (lowest, highest): Heights,
        wall_box: &WallBox,
        job: &Job,
    ) {
        let at = format!("{at}.shelf {}", shelf.id);
        self.horizontal_panel(&format!("{at}.piece"), &shelf.piece, wall_box, job);
        if !(shelf.up > lowest && shelf.up + shelf.piece.panel.thickness < highest) {
            self.wrong(
                format!("{at}.up"),
                format!(
                    "is {} mm, which puts the shelf outside the opening that it splits: its \
                     underside must be above {lowest} mm and its upper face below {highest} mm",
                    shelf.up
                ),
                "move the shelf, the one above or below it, or make the box taller",
            );
        }
        self.fields::<FixedShelfField>(&at, shelf);
    }

    /// A loose shelf can lie anywhere in the box: where it is in the way is a finding.
    fn loose_shelf(&mut self, at: &str, shelf: &LooseShelf, wall_box: &WallBox, job: &Job) {
        let at = format!("{at}.shelf {}", shelf.id);
        self.horizontal_panel(&format!("{at}.piece"), &shelf.piece, wall_box, job);
        self.fields::<LooseShelfField>(&at, shelf);
        let lowest = wall_box.bottom.panel.thickness + wall_box.bottom.set_in;
        let highest = wall_box.height - wall_box.top.panel.thickness - wall_box.top.set_in;
        if !(shelf.up > lowest && shelf.up + shelf.piece.panel.thickness < highest) {
            self.wrong(
                format!("{at}.up"),
                format!(
                    "is {} mm, which puts the shelf outside the box: its underside must be above \
                     {lowest} mm and its upper face below {highest} mm",
                    shelf.up
                ),
                "move the shelf or make the box taller",
            );
        }
    }
}
