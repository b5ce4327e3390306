//! The title block.
//!
//! Fields and the 180 mm width follow ISO 7200, restated second-hand from public templates. Letter and Tabloid claim no standard.

use euclid::default::Rect;

use crate::brush::{Brush, Lettering};
use crate::list::{At, DisplayList, Weight};
use crate::paper::Paper;
use crate::pen::{Ink, Layer, Pen};
use crate::words::fitted;

/// Width of the title block, mm (ISO 7200, second-hand).
pub const WIDTH: f64 = 180.0;
/// Height of the title block, mm: three rows of 12.
pub const HEIGHT: f64 = 36.0;
const ROW: f64 = 12.0;
/// A strip beside the block narrower than this is of no use: the block takes the full width.
const LEAST_REST: f64 = 40.0;

/// What the title block says. Empty texts print a rule to write on.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct Fields {
    /// Legal owner.
    pub owner: String,
    /// Title: the job's name.
    pub title: String,
    /// Second title: what this page shows.
    pub subtitle: String,
    /// Identification number.
    pub number: String,
    /// Date of issue.
    pub date_of_issue: String,
    /// Creator.
    pub creator: String,
    /// Approval person.
    pub approver: String,
    /// Revision index.
    pub revision: String,
    /// Document type.
    pub document: String,
    /// Scale, e.g. `1:5`.
    pub scale: String,
    /// Number of this sheet, from 1.
    pub sheet: usize,
    /// Number of sheets.
    pub sheets: usize,
    /// Whether a text of the page has a sign that the font lacks: it prints as a box, and the
    /// block says so.
    pub boxed_signs: bool,
}

impl Fields {
    /// Whether one of the block's own texts has such a sign.
    #[must_use]
    pub fn has_boxed_signs(&self) -> bool {
        [
            &self.owner,
            &self.title,
            &self.subtitle,
            &self.number,
            &self.date_of_issue,
            &self.creator,
            &self.approver,
            &self.revision,
        ]
        .iter()
        .any(|text| !crate::text::missing_glyphs(text).is_empty())
    }
}

/// Stands over the job's name where [`Fields::boxed_signs`].
const BOXED: &str = "Job – CAUTION: a box is a sign that this font lacks";

/// Where the title block lies in a drawing space: 180 mm wide at the lower right, or the full
/// width where the space is narrower or hardly wider than that.
#[must_use]
pub fn place(space: Rect<f64>) -> Rect<f64> {
    let width = if space.width() < WIDTH + LEAST_REST {
        space.width()
    } else {
        WIDTH
    };
    let high = At::new(space.max_x(), space.min_y() + HEIGHT);
    Rect::from_points([At::new(space.max_x() - width, space.min_y()), high])
}

/// Draws the title block of a paper at its [`place`].
pub fn draw(list: &mut DisplayList, paper: Paper, fields: &Fields) {
    let block = place(paper.drawing_space());
    let brush = Brush::new(Layer::Sheet, Ink::Plain);
    brush.rect(list, block, Pen::Frame);
    let sheet = format!("{} of {}", fields.sheet, fields.sheets);
    let rows: [&[Cell<'_>]; 3] = [
        &[
            cell("Legal owner", &fields.owner, 62.0),
            cell("Document type", &fields.document, 42.0),
            cell("Scale", &fields.scale, 24.0),
            cell("Unit", "mm", 16.0),
            cell("Sheet", &sheet, 36.0),
        ],
        &[
            cell(
                if fields.boxed_signs { BOXED } else { "Job" },
                &fields.title,
                78.0,
            ),
            cell("Page", &fields.subtitle, 66.0),
            cell("Identification number", &fields.number, 36.0),
        ],
        &[
            cell("Drawn by", &fields.creator, 52.0),
            cell("Approved by", &fields.approver, 52.0),
            cell("Date of issue", &fields.date_of_issue, 40.0),
            cell("Revision", &fields.revision, 36.0),
        ],
    ];
    let stretch = block.width() / WIDTH;
    for (i, row) in rows.into_iter().enumerate() {
        let top = block.max_y() - ROW * i as f64;
        if i > 0 {
            let from = At::new(block.min_x(), top);
            brush.line(list, from, At::new(block.max_x(), top), Pen::Thin);
        }
        let mut x = block.min_x();
        for (j, cell) in row.iter().enumerate() {
            if j > 0 {
                brush.line(list, At::new(x, top), At::new(x, top - ROW), Pen::Thin);
            }
            draw_cell(list, brush, cell, At::new(x, top), cell.width * stretch);
            x += cell.width * stretch;
        }
    }
}

struct Cell<'a> {
    label: &'static str,
    value: &'a str,
    width: f64,
}

const fn cell<'a>(label: &'static str, value: &'a str, width: f64) -> Cell<'a> {
    Cell {
        label,
        value,
        width,
    }
}

fn draw_cell(list: &mut DisplayList, brush: Brush, cell: &Cell<'_>, top_left: At, width: f64) {
    let label_at = At::new(top_left.x + 1.2, top_left.y - 3.0);
    brush.text(list, label_at, cell.label, Lettering::new(1.8));
    let base = top_left.y - ROW + 3.0;
    if cell.value.trim().is_empty() {
        let from = At::new(top_left.x + 1.5, base - 0.8);
        brush.line(
            list,
            from,
            At::new(top_left.x + width - 1.5, base - 0.8),
            Pen::Thin,
        );
        return;
    }
    let (text, height) = fitted(
        cell.value.trim(),
        &[3.5, 2.5, 1.8],
        Weight::Plain,
        width - 2.4,
    );
    brush.text(
        list,
        At::new(top_left.x + 1.2, base),
        text,
        Lettering::new(height),
    );
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::list::Shape;

    #[test]
    fn the_block_is_180_by_36_at_the_lower_right_or_takes_the_width() {
        let wide = place(Paper::A4.turned().drawing_space());
        assert_eq!((wide.min_x(), wide.max_x()), (107.0, 287.0));
        assert_eq!((wide.min_y(), wide.max_y()), (10.0, 46.0));
        let upright = place(Paper::A4.drawing_space());
        assert_eq!((upright.min_x(), upright.width()), (20.0, 180.0));
        let letter = place(Paper::LETTER.drawing_space());
        assert!((letter.width() - 190.5).abs() < 1e-9);
    }

    #[test]
    fn empty_fields_print_a_rule_and_long_ones_stay_in_their_cell() {
        let mut list = DisplayList::new();
        draw(
            &mut list,
            Paper::A4,
            &Fields {
                title: "Houseboat ".repeat(30),
                ..Fields::default()
            },
        );
        let rules = list.items.iter().filter(|item| match &item.shape {
            Shape::Line { from, to, .. } => from.y == to.y && to.x - from.x < 100.0,
            _ => false,
        });
        // Owner, document, scale, panel, number, drawn by, approved by, date, revision.
        assert_eq!(rules.count(), 9);
        let block = place(Paper::A4.drawing_space());
        assert!(
            list.items
                .iter()
                .all(|item| block.contains_rect(&item.shape.bounds()))
        );
        assert!(crate::overlap::overlapping_texts(&list).is_empty());
    }
}
