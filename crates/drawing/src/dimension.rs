//! Dimensions: chains between edges, arrowheads and leaders. Running dimensions from one zero are
//! in [`crate::running`].
//!
//! After ISO 129-1 (restated from memory): figures stand above their line and read from the bottom
//! or from the right; extension lines leave a gap of eight narrow line widths at the outline and
//! run on by as much.

use crate::brush::{Brush, Lettering, corners};
use crate::layout::{around, spread_sized};
use crate::list::{Across, Along, At, DisplayList};
use crate::pen::{Ink, Pen};

/// Height of dimension figures, mm (ISO 3098 series).
pub const FIGURE: f64 = 2.5;
/// The smaller height for crowded edges, mm (ISO 3098 series).
pub const SMALL_FIGURE: f64 = 1.8;
/// Gap between an outline and its extension lines, mm: eight narrow widths.
pub const GAP: f64 = 2.0;
/// How far extension lines run past the dimension line, mm.
pub const OVERSHOOT: f64 = 1.5;
/// From the dimension line to the end of the leader of a figure that is set farther out, mm: the
/// figures on the line stay clear of those beyond it.
const OUTSIDE: f64 = 4.0;
/// Blank around figures over what was drawn before, mm: letters such as `l` rise above the
/// capitals.
const AIR: f64 = 0.4;
/// Length of an arrowhead, mm.
pub(crate) const ARROW: f64 = 2.5;
/// Half its width, mm.
const ARROW_HALF: f64 = 0.42;

/// The direction in which a dimension measures.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Axis {
    /// Left to right.
    Level,
    /// Up and down.
    Upright,
}

impl Axis {
    /// The point with this coordinate along the axis and that one across it.
    #[must_use]
    pub const fn point(self, along: f64, across: f64) -> At {
        match self {
            Self::Level => At::new(along, across),
            Self::Upright => At::new(across, along),
        }
    }
}

/// A chain of dimensions on one line. All coordinates in list mm.
#[derive(Debug, Clone, PartialEq)]
pub struct Chain {
    /// Direction.
    pub axis: Axis,
    /// Where the dimension line lies, across the axis.
    pub line_at: f64,
    /// Where the extension lines start, across the axis: the outline that is measured.
    pub from: f64,
    /// The measured stretches, in any order.
    pub stretches: Vec<Stretch>,
    /// Figures that are set farther out stay below this along the axis, if there is a limit.
    pub up_to: Option<f64>,
}

/// One measured stretch of a chain.
#[derive(Debug, Clone, PartialEq)]
pub struct Stretch {
    /// One end along the axis.
    pub from: f64,
    /// The other end.
    pub to: f64,
    /// What is written on it.
    pub figure: String,
}

impl Stretch {
    /// A stretch between two edges, whichever is first.
    #[must_use]
    pub fn new(a: f64, b: f64, figure: impl Into<String>) -> Self {
        Self {
            from: a.min(b),
            to: a.max(b),
            figure: figure.into(),
        }
    }
}

/// Draws a chain. Figures too wide for their stretch are set farther out with a leader.
pub fn chain(list: &mut DisplayList, brush: Brush, chain: &Chain) {
    let out = if chain.line_at >= chain.from {
        1.0
    } else {
        -1.0
    };
    for stop in ends(chain) {
        let near = chain.axis.point(stop, chain.from + out * GAP);
        let far = chain.axis.point(stop, chain.line_at + out * OVERSHOOT);
        brush.line(list, near, far, Pen::Thin);
    }
    let how = figure_lettering(chain.axis);
    let blank = brush.ink(Ink::Paper);
    let mut outside = Vec::new();
    for Stretch { from, to, figure } in &chain.stretches {
        stretch_line(list, brush, chain, *from, *to);
        let middle = 0.5 * (from + to);
        if how.width(figure) + 1.0 <= to - from {
            let at = chain
                .axis
                .point(middle, figure_across(chain.axis, chain.line_at));
            let capitals = match chain.axis {
                Axis::Level => around(
                    At::new(at.x, at.y + 0.5 * FIGURE),
                    [how.width(figure) + 2.0 * AIR, FIGURE + AIR],
                ),
                Axis::Upright => around(
                    At::new(at.x - 0.5 * FIGURE, at.y),
                    [FIGURE + AIR, how.width(figure) + 2.0 * AIR],
                ),
            };
            blank.area(list, corners(capitals));
            brush.text(list, at, figure.clone(), how);
        } else {
            outside.push((middle, figure.clone()));
        }
    }
    outside.sort_by(|a, b| a.0.total_cmp(&b.0));
    outside_figures(list, brush, chain, out, &outside);
}

/// The ends of all stretches, each once.
fn ends(chain: &Chain) -> Vec<f64> {
    let mut ends: Vec<f64> = chain
        .stretches
        .iter()
        .flat_map(|s| [s.from, s.to])
        .collect();
    ends.sort_by(f64::total_cmp);
    ends.dedup_by(|a, b| (*a - *b).abs() < 1e-6);
    ends
}

/// Figures stand above a level line and to the left of an upright one.
fn figure_across(axis: Axis, line_at: f64) -> f64 {
    match axis {
        Axis::Level => line_at + 0.8,
        Axis::Upright => line_at - 0.8,
    }
}

fn figure_lettering(axis: Axis) -> Lettering {
    let level = Lettering::new(FIGURE).held(Along::Middle, Across::Baseline);
    match axis {
        Axis::Level => level,
        Axis::Upright => level.up(),
    }
}

fn stretch_line(list: &mut DisplayList, brush: Brush, chain: &Chain, from: f64, to: f64) {
    let ends = [
        chain.axis.point(from, chain.line_at),
        chain.axis.point(to, chain.line_at),
    ];
    brush.line(list, ends[0], ends[1], Pen::Thin);
    if to - from >= 2.6 * ARROW {
        arrow(list, brush, ends[0], ends[1]);
        arrow(list, brush, ends[1], ends[0]);
    } else {
        oblique(list, brush, ends[0]);
        oblique(list, brush, ends[1]);
    }
}

fn outside_figures(
    list: &mut DisplayList,
    brush: Brush,
    chain: &Chain,
    out: f64,
    figures: &[(f64, String)],
) {
    let how = figure_lettering(chain.axis);
    let wanted: Vec<f64> = figures.iter().map(|(middle, _)| *middle).collect();
    let sizes: Vec<f64> = figures
        .iter()
        .map(|(_, figure)| how.width(figure) + 1.5)
        .collect();
    let high = chain.up_to.unwrap_or(f64::MAX / 4.0) - sizes.last().map_or(0.0, |last| 0.5 * last);
    let Some(places) = spread_sized(&wanted, &sizes, f64::MIN / 4.0, high) else {
        return;
    };
    let line = chain.line_at + out * OUTSIDE;
    let text_at = match (chain.axis, out > 0.0) {
        (Axis::Level, true) | (Axis::Upright, false) => line + out * 1.1,
        (Axis::Level, false) | (Axis::Upright, true) => line + out * (0.5 + FIGURE),
    };
    let blank = brush.ink(Ink::Paper);
    for ((middle, figure), place) in figures.iter().zip(places) {
        let at = chain.axis.point(place, text_at);
        blank.area(list, corners(how.bounds(at, figure).inflate(AIR, AIR)));
        let from = chain.axis.point(*middle, chain.line_at);
        brush.line(list, from, chain.axis.point(place, line), Pen::Thin);
        brush.text(list, at, figure.clone(), how);
    }
}

/// A filled arrowhead with its point at `tip`, its shaft coming from `tail`.
pub fn arrow(list: &mut DisplayList, brush: Brush, tip: At, tail: At) {
    let shaft = tail - tip;
    let length = shaft.length();
    if length <= 0.0 {
        return;
    }
    let along = shaft / length;
    let side = euclid::default::Vector2D::new(-along.y, along.x) * ARROW_HALF;
    let root = tip + along * ARROW;
    brush.area(list, vec![tip, root + side, root - side]);
}

/// The oblique stroke that ends a dimension too short for arrowheads.
pub(crate) fn oblique(list: &mut DisplayList, brush: Brush, at: At) {
    let reach = euclid::default::Vector2D::new(0.9, 0.9);
    brush.line(list, at - reach, at + reach, Pen::Thin);
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::list::{Shape, Turn};
    use crate::pen::Layer;

    const BRUSH: Brush = Brush::new(Layer::Dimensions, Ink::Plain);

    fn texts(list: &DisplayList) -> Vec<(String, At, Turn)> {
        let text = |item: &crate::list::Item| match &item.shape {
            Shape::Text { at, text, turn, .. } => Some((text.clone(), *at, *turn)),
            _ => None,
        };
        list.items.iter().filter_map(text).collect()
    }

    #[test]
    fn a_figure_stands_above_its_line_and_reads_from_bottom_or_right() {
        for (axis, turn) in [(Axis::Level, Turn::Level), (Axis::Upright, Turn::Up)] {
            let mut list = DisplayList::new();
            let row = Chain {
                axis,
                line_at: 10.0,
                from: 0.0,
                stretches: vec![Stretch::new(60.0, 0.0, "300.0")],
                up_to: None,
            };
            chain(&mut list, BRUSH, &row);
            let found = texts(&list);
            assert_eq!(found.len(), 1);
            assert_eq!(found[0].2, turn);
            let expected = match axis {
                Axis::Level => At::new(30.0, 10.8),
                Axis::Upright => At::new(9.2, 30.0),
            };
            assert!((found[0].1 - expected).length() < 1e-9, "{found:?}");
        }
    }

    #[test]
    fn narrow_stretches_keep_their_figures_apart() {
        let mut list = DisplayList::new();
        let row = Chain {
            axis: Axis::Level,
            line_at: 10.0,
            from: 0.0,
            stretches: vec![
                Stretch::new(0.0, 1.0, "5.0"),
                Stretch::new(1.0, 2.0, "5.0"),
                Stretch::new(2.0, 80.0, "390.0"),
                Stretch::new(80.0, 81.0, "5.0"),
            ],
            up_to: None,
        };
        chain(&mut list, BRUSH, &row);
        assert_eq!(
            crate::overlap::overlapping_texts(&list),
            Vec::<(String, String)>::new()
        );
        assert_eq!(texts(&list).len(), 4);
    }
}
