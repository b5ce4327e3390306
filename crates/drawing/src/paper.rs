//! Paper sizes and the drawing space inside the frame.

use euclid::default::Rect;
use flapwright_model::job::PaperChoice;

use crate::list::At;

/// Trimmed paper size in millimetres, as it lies before the reader.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Paper {
    /// Name without orientation, e.g. `A4`.
    pub name: &'static str,
    /// Width, mm.
    pub width: f64,
    /// Height, mm.
    pub height: f64,
}

/// ISO 5457: binding margin at the left, mm (restated second-hand from a public template).
const BINDING_MARGIN: f64 = 20.0;
/// ISO 5457: margin at the other edges, mm (likewise).
const MARGIN: f64 = 10.0;
/// Margin all round on Letter and Tabloid, mm: half an inch. No standard is claimed for it.
const PLAIN_MARGIN: f64 = 12.7;

impl Paper {
    /// ISO 216 A4 upright.
    pub const A4: Self = Self {
        name: "A4",
        width: 210.0,
        height: 297.0,
    };
    /// ISO 216 A3 upright.
    pub const A3: Self = Self {
        name: "A3",
        width: 297.0,
        height: 420.0,
    };
    /// Letter upright, 8.5 by 11 in exactly.
    pub const LETTER: Self = Self {
        name: "Letter",
        width: 215.9,
        height: 279.4,
    };
    /// Tabloid upright, 11 by 17 in exactly.
    pub const TABLOID: Self = Self {
        name: "Tabloid",
        width: 279.4,
        height: 431.8,
    };

    /// The paper of a setting, upright.
    #[must_use]
    pub const fn of(choice: PaperChoice) -> Self {
        match choice {
            PaperChoice::A4 => Self::A4,
            PaperChoice::A3 => Self::A3,
            PaperChoice::Letter => Self::LETTER,
            PaperChoice::Tabloid => Self::TABLOID,
        }
    }

    /// The same paper turned a quarter.
    #[must_use]
    pub const fn turned(self) -> Self {
        Self {
            name: self.name,
            width: self.height,
            height: self.width,
        }
    }

    /// Whether it is one of the ISO 216 sizes, for which ISO 5457 states the frame.
    #[must_use]
    pub fn is_iso(self) -> bool {
        self.name.starts_with('A')
    }

    /// The drawing space: what the frame encloses, mm from the lower left corner of the paper.
    ///
    /// A sizes: 20 mm at the left, 10 mm elsewhere (ISO 5457, restated second-hand). Letter and
    /// Tabloid: half an inch all round.
    #[must_use]
    pub fn drawing_space(self) -> Rect<f64> {
        let (left, other) = if self.is_iso() {
            (BINDING_MARGIN, MARGIN)
        } else {
            (PLAIN_MARGIN, PLAIN_MARGIN)
        };
        Rect::from_points([
            At::new(left, other),
            At::new(self.width - other, self.height - other),
        ])
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn space(paper: Paper) -> (f64, f64, f64, f64) {
        let rect = paper.drawing_space();
        (rect.min_x(), rect.min_y(), rect.width(), rect.height())
    }

    /// ISO 5457, second-hand: A3 turned has its frame at (20, 10) and 390 x 277 mm (CC0 template);
    /// A4 upright 180 x 277 mm.
    #[test]
    fn the_frame_of_a_sizes_is_that_of_the_standard() {
        assert_eq!(space(Paper::A3.turned()), (20.0, 10.0, 390.0, 277.0));
        assert_eq!(space(Paper::A4), (20.0, 10.0, 180.0, 277.0));
        assert_eq!(space(Paper::A4.turned()), (20.0, 10.0, 267.0, 190.0));
    }

    #[test]
    fn inch_papers_have_half_an_inch_all_round() {
        let (x, y, width, height) = space(Paper::LETTER);
        assert_eq!((x, y), (12.7, 12.7));
        assert!((width - 7.5 * 25.4).abs() < 1e-9 && (height - 10.0 * 25.4).abs() < 1e-9);
    }
}
