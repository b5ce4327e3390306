//! A brush: layer, ink and subject said once for many shapes.

use euclid::default::Rect;
use flapwright_model::part::Subject;

use crate::list::{Across, Along, Anchor, At, DisplayList, Shape, Turn, Weight};
use crate::pen::{Ink, Layer, Pen};

/// What the shapes of one stretch of drawing have in common. All lengths are those of the list,
/// mm.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Brush {
    /// Layer of everything that is put with this brush.
    pub layer: Layer,
    /// Ink likewise.
    pub ink: Ink,
    /// What the shapes stand for.
    pub of: Option<Subject>,
}

/// How a text is set.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Lettering {
    /// Height of the capitals, mm.
    pub height: f64,
    /// Which part of the text sits at its point.
    pub anchor: Anchor,
    /// Reading direction.
    pub turn: Turn,
    /// Plain or bold.
    pub weight: Weight,
}

impl Lettering {
    /// Level, plain, starting at its point with the baseline through it.
    #[must_use]
    pub const fn new(height: f64) -> Self {
        Self {
            height,
            anchor: Anchor {
                along: Along::Start,
                across: Across::Baseline,
            },
            turn: Turn::Level,
            weight: Weight::Plain,
        }
    }

    /// The same in bold.
    #[must_use]
    pub const fn bold(self) -> Self {
        Self {
            weight: Weight::Bold,
            ..self
        }
    }

    /// The same, reading from the right.
    #[must_use]
    pub const fn up(self) -> Self {
        Self {
            turn: Turn::Up,
            ..self
        }
    }

    /// The same, held at another part of the text.
    #[must_use]
    pub const fn held(self, along: Along, across: Across) -> Self {
        Self {
            anchor: Anchor { along, across },
            ..self
        }
    }

    /// The box around `text` set like this at `at`, mm.
    #[must_use]
    pub fn bounds(&self, at: At, text: &str) -> Rect<f64> {
        crate::text::bounds(at, text, self.height, self.anchor, self.turn, self.weight)
    }

    /// The width of `text` set like this, mm, along its reading direction.
    #[must_use]
    pub fn width(&self, text: &str) -> f64 {
        crate::text::width(text, self.height, self.weight)
    }
}

impl Brush {
    /// A brush for shapes that stand for nothing in the job.
    #[must_use]
    pub const fn new(layer: Layer, ink: Ink) -> Self {
        Self {
            layer,
            ink,
            of: None,
        }
    }

    /// The same brush for shapes that stand for `subject`.
    #[must_use]
    pub const fn of(self, subject: Subject) -> Self {
        Self {
            of: Some(subject),
            ..self
        }
    }

    /// The same brush with another ink.
    #[must_use]
    pub const fn ink(self, ink: Ink) -> Self {
        Self { ink, ..self }
    }

    /// Puts any shape.
    pub fn put(&self, list: &mut DisplayList, shape: Shape) {
        list.push(self.layer, self.ink, self.of, shape);
    }

    /// A straight stroke.
    pub fn line(&self, list: &mut DisplayList, from: At, to: At, pen: Pen) {
        self.put(list, Shape::Line { from, to, pen });
    }

    /// An open run of strokes.
    pub fn run(&self, list: &mut DisplayList, points: Vec<At>, pen: Pen) {
        self.put(
            list,
            Shape::Polyline {
                points,
                closed: false,
                pen,
            },
        );
    }

    /// A closed run of strokes.
    pub fn outline(&self, list: &mut DisplayList, points: Vec<At>, pen: Pen) {
        self.put(
            list,
            Shape::Polyline {
                points,
                closed: true,
                pen,
            },
        );
    }

    /// The outline of a rectangle.
    pub fn rect(&self, list: &mut DisplayList, rect: Rect<f64>, pen: Pen) {
        self.outline(list, corners(rect), pen);
    }

    /// A filled polygon.
    pub fn area(&self, list: &mut DisplayList, points: Vec<At>) {
        self.put(list, Shape::Area { points });
    }

    /// A circle.
    pub fn circle(&self, list: &mut DisplayList, centre: At, radius: f64, pen: Pen) {
        self.put(
            list,
            Shape::Circle {
                centre,
                radius,
                pen,
                filled: false,
            },
        );
    }

    /// A filled circle.
    pub fn disc(&self, list: &mut DisplayList, centre: At, radius: f64) {
        self.put(
            list,
            Shape::Circle {
                centre,
                radius,
                pen: Pen::Thin,
                filled: true,
            },
        );
    }

    /// Two crossed strokes through `centre`, each `reach` to both sides.
    pub fn cross(&self, list: &mut DisplayList, centre: At, reach: f64, pen: Pen) {
        let (x, y) = (centre.x, centre.y);
        self.line(list, At::new(x - reach, y), At::new(x + reach, y), pen);
        self.line(list, At::new(x, y - reach), At::new(x, y + reach), pen);
    }

    /// One line of text.
    pub fn text(&self, list: &mut DisplayList, at: At, text: impl Into<String>, how: Lettering) {
        let Lettering {
            height,
            anchor,
            turn,
            weight,
        } = how;
        self.put(
            list,
            Shape::Text {
                at,
                text: text.into(),
                height,
                anchor,
                turn,
                weight,
            },
        );
    }
}

/// The corners of a rectangle, counter-clockwise from the lower left.
#[must_use]
pub fn corners(rect: Rect<f64>) -> Vec<At> {
    let (low, high) = (rect.min(), rect.max());
    vec![low, At::new(high.x, low.y), high, At::new(low.x, high.y)]
}
