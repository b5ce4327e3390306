//! Numbers that can be written.

use flapwright_drawing::list::{At, Shape};

/// Whether all numbers of a shape are finite.
pub(crate) fn is_finite(shape: &Shape) -> bool {
    let all = |points: &[At]| points.iter().all(|point| point.is_finite());
    match shape {
        Shape::Line { from, to, .. } => all(&[*from, *to]),
        Shape::Polyline { points, .. } | Shape::Area { points } => all(points),
        Shape::Circle { centre, radius, .. } => centre.is_finite() && radius.is_finite(),
        Shape::Arc {
            centre,
            radius,
            from,
            sweep,
            ..
        } => {
            centre.is_finite()
                && [radius, from, sweep]
                    .iter()
                    .all(|number| number.is_finite())
        }
        Shape::Text { at, height, .. } => at.is_finite() && height.is_finite(),
    }
}
