//! The mark that shows in an elevation how a door opens.
//!
//! Two published conventions contradict each other, so the convention is a setting and
//! [`legend`] is printed wherever a mark is drawn. The mark follows the opening kind alone; no
//! bore ever comes from it.

use euclid::default::Rect;
use flapwright_model::card::OpeningKind;
use flapwright_model::job::OpeningMark;

use crate::brush::Brush;
use crate::dimension::arrow;
use crate::list::{At, DisplayList};
use crate::pen::Pen;

/// The strokes of an opening mark, list mm.
#[derive(Debug, Clone, PartialEq)]
pub struct Mark {
    /// Where the two strokes meet.
    pub apex: At,
    /// The other ends of the two strokes: left and right.
    pub feet: [At; 2],
    /// Continuous or dashed.
    pub pen: Pen,
    /// Tail and tip of the arrow that says that the door as a whole rises.
    pub arrow: Option<(At, At)>,
}

/// The mark of a door that fills `door` in the elevation. All four opening kinds are held at the
/// top and opened at the bottom edge; doors that rise as a whole get an arrow as well.
#[must_use]
pub fn opening_mark(door: Rect<f64>, kind: OpeningKind, convention: OpeningMark) -> Mark {
    let (low, high) = (door.min(), door.max());
    let middle = 0.5 * (low.x + high.x);
    let (apex_y, feet_y, pen) = match convention {
        OpeningMark::ApexAtOpeningSide => (low.y, high.y, Pen::Thin),
        OpeningMark::ApexAtHinge => (high.y, low.y, Pen::Hidden),
    };
    let length = 0.3 * (high.y - low.y);
    let from = 0.5 * (low.y + high.y) - 0.5 * length;
    Mark {
        apex: At::new(middle, apex_y),
        feet: [At::new(low.x, feet_y), At::new(high.x, feet_y)],
        pen,
        arrow: rises(kind).then_some((At::new(middle, from), At::new(middle, from + length))),
    }
}

/// Draws a mark.
pub fn draw(list: &mut DisplayList, brush: Brush, mark: &Mark) {
    for foot in mark.feet {
        brush.line(list, foot, mark.apex, mark.pen);
    }
    if let Some((tail, tip)) = mark.arrow {
        brush.line(list, tail, tip, Pen::Thin);
        if (tip - tail).length() > 3.0 {
            arrow(list, brush, tip, tail);
        }
    }
}

/// Whether a door of that kind rises as a whole, and so has an arrow in its mark.
#[must_use]
pub const fn rises(kind: OpeningKind) -> bool {
    match kind {
        OpeningKind::TopHingedFlap | OpeningKind::FoldingPair => false,
        OpeningKind::ParallelRisingDoor | OpeningKind::OverTheTopDoor => true,
    }
}

/// What the mark means, for the legend beside it; `with_arrow` where a mark with an arrow is drawn.
#[must_use]
pub fn legend(convention: OpeningMark, with_arrow: bool) -> String {
    let lines = match convention {
        OpeningMark::ApexAtOpeningSide => {
            "Opening mark: continuous lines; apex at the opening side, base at the held side (top)."
        }
        OpeningMark::ApexAtHinge => {
            "Opening mark: dashed lines; apex at the held side (top), base at the opening side."
        }
    };
    let arrow = if with_arrow {
        " Arrow: the door rises as a whole."
    } else {
        ""
    };
    format!("{lines}{arrow}")
}

#[cfg(test)]
mod tests {
    use super::*;

    fn door() -> Rect<f64> {
        Rect::from_points([At::new(2.0, 3.0), At::new(62.0, 43.0)])
    }

    /// Base at the hinge side, apex at the opening side: an Austrian school textbook citing
    /// OENORM A 6240-2. A flap is hinged at the top, so the apex is at the bottom.
    #[test]
    fn apex_at_the_opening_side_and_its_legend_agree() {
        let mark = opening_mark(
            door(),
            OpeningKind::TopHingedFlap,
            OpeningMark::ApexAtOpeningSide,
        );
        assert_eq!(mark.apex, At::new(32.0, 3.0));
        assert_eq!(mark.feet, [At::new(2.0, 43.0), At::new(62.0, 43.0)]);
        assert_eq!(mark.pen, Pen::Thin);
        let words = legend(OpeningMark::ApexAtOpeningSide, false);
        assert!(words.contains("continuous") && words.contains("apex at the opening side"));
    }

    /// Apex at the hinged side, dashed: practice in the USA (encyclopedia article on casement
    /// windows).
    #[test]
    fn apex_at_the_hinge_and_its_legend_agree() {
        let mark = opening_mark(door(), OpeningKind::FoldingPair, OpeningMark::ApexAtHinge);
        assert_eq!(mark.apex, At::new(32.0, 43.0));
        assert_eq!(mark.feet, [At::new(2.0, 3.0), At::new(62.0, 3.0)]);
        assert_eq!(mark.pen, Pen::Hidden);
        let words = legend(OpeningMark::ApexAtHinge, false);
        assert!(words.contains("dashed") && words.contains("apex at the held side"));
    }

    #[test]
    fn only_doors_that_rise_as_a_whole_have_an_arrow() {
        for kind in OpeningKind::ALL {
            let mark = opening_mark(door(), kind, OpeningMark::ApexAtHinge);
            let rises = matches!(
                kind,
                OpeningKind::ParallelRisingDoor | OpeningKind::OverTheTopDoor
            );
            assert_eq!(mark.arrow.is_some(), rises, "{kind:?}");
            let words = legend(OpeningMark::ApexAtHinge, super::rises(kind));
            assert_eq!(words.contains("Arrow"), rises, "{kind:?}: {words}");
            if let Some((tail, tip)) = mark.arrow {
                assert!(tip.y > tail.y, "{kind:?}");
            }
        }
    }
}
