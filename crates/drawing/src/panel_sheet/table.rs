//! The hole table: full rows, and a compact form for rows of shelf bores.

use euclid::default::Rect;

use super::holes::Hole;
use super::table_rows::{compact_rows, full, groups};
use super::table_section::{Section, Style};
use crate::list::{At, DisplayList};

/// Fewer shelf bores than this are listed in full.
const COMPACT_FROM: usize = 8;

/// A hole table, or what is left of one.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Table {
    sections: Vec<Section>,
}

impl Table {
    /// The table of all holes, in their order; rows of shelf bores follow in compact form when
    /// there are many.
    pub(super) fn new(holes: &[Hole], inches: bool, style: Style) -> Self {
        let in_rows = holes.iter().filter(|hole| hole.in_row).count();
        let compact = in_rows >= COMPACT_FROM;
        let (rows, single): (Vec<&Hole>, Vec<&Hole>) =
            holes.iter().partition(|hole| compact && hole.in_row);
        let mut sections = Vec::new();
        if !single.is_empty() {
            sections.push(full(&single, inches, style));
        }
        for group in groups(&rows) {
            sections.push(compact_rows(&group, inches, style));
        }
        Self { sections }
    }

    /// Whether nothing is left.
    pub(super) fn is_empty(&self) -> bool {
        self.sections.iter().all(Section::is_empty)
    }

    /// Draws as much as goes into `room`, from its upper left corner, and gives back the rest and
    /// the depth used, mm.
    pub(super) fn draw(&self, list: &mut DisplayList, room: Rect<f64>) -> (Self, f64) {
        let mut top = room.max_y();
        let mut rest = Vec::new();
        for section in &self.sections {
            let space = Rect::from_points([room.min(), At::new(room.max_x(), top)]);
            let (drawn, used) = if rest.is_empty() {
                section.draw(list, space)
            } else {
                (0, 0.0)
            };
            top -= used;
            if drawn < section.len() {
                rest.push(section.after(drawn));
            }
        }
        (Self { sections: rest }, room.max_y() - top)
    }

    /// Depth of the whole table in a column of this width and at most that depth; `None` when it
    /// does not fit.
    pub(super) fn depth(&self, room_width: f64, room_depth: f64) -> Option<f64> {
        if room_width <= 0.0 || room_depth <= 0.0 {
            return None;
        }
        let room = Rect::from_points([At::zero(), At::new(room_width, room_depth)]);
        let (rest, used) = self.draw(&mut DisplayList::new(), room);
        rest.is_empty().then_some(used)
    }
}
