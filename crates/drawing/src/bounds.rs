//! How far a shape reaches.

use euclid::default::{Rect, Size2D, Vector2D};

use crate::list::Shape;
use crate::text;

impl Shape {
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
            } => text::bounds(*at, text, *height, *anchor, *turn, *weight),
        }
    }
}
