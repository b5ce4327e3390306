//! The display list: what a view or a sheet shows, in the order in which it is painted.
//!
//! Every back-end (window, SVG and through it PDF and PNG) reads this one list and matches it
//! without a catch-all arm, so that a new shape is a compile error in each of them. Pens, inks and
//! layers are named by meaning; widths and colours belong to the back-end's own table.

use euclid::default::{Point2D, Rect, Size2D, Vector2D};

use crate::handle::Grip;
use crate::pen::{Ink, Layer, Pen};
use flapwright_model::part::Subject;

/// A place on the paper or in the view: millimetres, origin lower left, x right, y **up**.
pub type At = Point2D<f64>;

/// Everything that one view or one sheet shows, painted from first to last.
#[derive(Debug, Clone, Default, PartialEq)]
pub struct DisplayList {
    /// The items in painting order.
    pub items: Vec<Item>,
    /// Where it can be taken hold of, from below to above; none of it is painted.
    pub grips: Vec<Grip>,
}

/// One thing on the paper, with the layer it belongs to and what it stands for.
#[derive(Debug, Clone, PartialEq)]
pub struct Item {
    /// The layer, by meaning.
    pub layer: Layer,
    /// The ink, by meaning.
    pub ink: Ink,
    /// What of the job this item shows; used for hit tests and for lighting up a finding.
    pub of: Option<Subject>,
    /// The geometry.
    pub shape: Shape,
}

/// Geometry of an item. All lengths are millimetres in the list's own frame.
#[derive(Debug, Clone, PartialEq)]
pub enum Shape {
    /// A straight stroke.
    Line {
        /// First end.
        from: At,
        /// Second end.
        to: At,
        /// Line type and width.
        pen: Pen,
    },
    /// A run of straight strokes.
    Polyline {
        /// The corners, at least two.
        points: Vec<At>,
        /// Whether the last corner is joined to the first.
        closed: bool,
        /// Line type and width.
        pen: Pen,
    },
    /// A filled simple polygon without an outline of its own.
    Area {
        /// The corners, at least three, in either sense of turning.
        points: Vec<At>,
    },
    /// A full circle.
    Circle {
        /// Centre.
        centre: At,
        /// Radius.
        radius: f64,
        /// Line type and width.
        pen: Pen,
        /// Whether the inside is filled with the ink as well.
        filled: bool,
    },
    /// Part of a circle, counter-clockwise from `from` by `sweep`.
    Arc {
        /// Centre.
        centre: At,
        /// Radius.
        radius: f64,
        /// Start, radians counter-clockwise from +x.
        from: f64,
        /// Swept angle, radians; negative runs clockwise.
        sweep: f64,
        /// Line type and width.
        pen: Pen,
    },
    /// One line of text.
    Text {
        /// The anchor point.
        at: At,
        /// The text; no line breaks.
        text: String,
        /// Height of the capitals, mm (ISO 3098 heights on sheets).
        height: f64,
        /// Which part of the text the anchor point holds.
        anchor: Anchor,
        /// Reading direction.
        turn: Turn,
        /// Plain or bold.
        weight: Weight,
    },
}

/// Which part of a text sits at its anchor point, in the text's own reading direction.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Anchor {
    /// Along the reading direction.
    pub along: Along,
    /// Across the reading direction.
    pub across: Across,
}

/// Along the reading direction.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Along {
    /// The text starts at the point.
    Start,
    /// The text is centred on the point.
    Middle,
    /// The text ends at the point.
    End,
}

/// Across the reading direction.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Across {
    /// The baseline runs through the point.
    Baseline,
    /// The middle of the capitals is level with the point.
    Middle,
    /// The top of the capitals is level with the point.
    Top,
}

/// Reading direction: from the bottom or from the right-hand side of the page (ISO 129-1).
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Turn {
    /// Reads from the bottom.
    Level,
    /// Reads from the right: the text runs upwards, turned a quarter counter-clockwise.
    Up,
}

/// Stroke weight of text.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Weight {
    /// Plain.
    Plain,
    /// Bold.
    Bold,
}

impl DisplayList {
    /// An empty list.
    #[must_use]
    pub fn new() -> Self {
        Self::default()
    }

    /// Adds one item on top of what is there.
    pub fn push(&mut self, layer: Layer, ink: Ink, of: Option<Subject>, shape: Shape) {
        self.items.push(Item {
            layer,
            ink,
            of,
            shape,
        });
    }

    /// Adds all of `other`, shifted by `by` (mm), on top of what is there.
    pub fn append_shifted(&mut self, other: &Self, by: Vector2D<f64>) {
        self.items.extend(other.items.iter().map(|item| Item {
            shape: item.shape.shifted(by),
            ..item.clone()
        }));
        self.grips.extend(other.grips.iter().map(|grip| Grip {
            place: grip.place.translate(by),
            ..grip.clone()
        }));
    }

    /// The smallest rectangle around all items, text measured with the sheet font; `None` when
    /// the list is empty.
    #[must_use]
    pub fn bounds(&self) -> Option<Rect<f64>> {
        self.items
            .iter()
            .map(|item| item.shape.bounds())
            .reduce(|a, b| a.union(&b))
    }
}

impl Shape {
    /// The same shape moved by `by` (mm).
    #[must_use]
    pub fn shifted(&self, by: Vector2D<f64>) -> Self {
        let mut shape = self.clone();
        match &mut shape {
            Self::Line { from, to, .. } => {
                *from += by;
                *to += by;
            }
            Self::Polyline { points, .. } | Self::Area { points } => {
                for point in points {
                    *point += by;
                }
            }
            Self::Circle { centre, .. } | Self::Arc { centre, .. } => *centre += by,
            Self::Text { at, .. } => *at += by,
        }
        shape
    }

    /// Draws what is drawn with one pen with another, e.g. for a small picture.
    pub(crate) fn redrawn(&mut self, from: Pen, to: Pen) {
        match self {
            Self::Line { pen, .. }
            | Self::Polyline { pen, .. }
            | Self::Circle { pen, .. }
            | Self::Arc { pen, .. } => {
                if *pen == from {
                    *pen = to;
                }
            }
            Self::Area { .. } | Self::Text { .. } => {}
        }
    }

    /// The smallest rectangle around the shape's geometry (pen widths not counted). An arc counts
    /// as its whole circle.
    #[must_use]
    pub fn bounds(&self) -> Rect<f64> {
        match self {
            Self::Line { from, to, .. } => Rect::from_points([*from, *to]),
            Self::Polyline { points, .. } | Self::Area { points } => Rect::from_points(points),
            Self::Circle { centre, radius, .. } | Self::Arc { centre, radius, .. } => Rect::new(
                *centre - Vector2D::new(*radius, *radius),
                Size2D::new(2.0 * radius, 2.0 * radius),
            ),
            Self::Text {
                at,
                text,
                height,
                anchor,
                turn,
                weight,
            } => crate::text::bounds(*at, text, *height, *anchor, *turn, *weight),
        }
    }
}
