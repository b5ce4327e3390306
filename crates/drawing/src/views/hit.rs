//! What is under the pointer.

use flapwright_model::part::Subject;

use crate::hatch::{distance_to_run, distance_to_stroke, is_inside};
use crate::list::{At, DisplayList, Shape};

/// What a list shows at `at` (list mm): the topmost item that stands for something and lies within
/// `tolerance` (mm) of it. Bores come before everything else, so that a bore is never lost under
/// the panel or door drawn over it.
#[must_use]
pub fn hit(list: &DisplayList, at: At, tolerance: f64) -> Option<Subject> {
    let mut other = None;
    let mut bore: Option<(f64, Subject)> = None;
    for item in list.items.iter().rev() {
        let Some(subject) = item.of else { continue };
        let away = distance(&item.shape, at);
        if away > tolerance {
            continue;
        }
        if matches!(subject, Subject::Bore(_)) {
            if bore.is_none_or(|(best, _)| away < best) {
                bore = Some((away, subject));
            }
        } else if other.is_none() {
            other = Some(subject);
        }
    }
    bore.map(|(_, subject)| subject).or(other)
}

/// Distance from a place to a shape, mm; 0 inside closed shapes.
fn distance(shape: &Shape, at: At) -> f64 {
    match shape {
        Shape::Line { from, to, .. } => distance_to_stroke(at, *from, *to),
        Shape::Polyline { points, closed, .. } => {
            if *closed && is_inside(points, at) {
                0.0
            } else {
                distance_to_run(at, points, *closed)
            }
        }
        Shape::Area { points } => {
            if is_inside(points, at) {
                0.0
            } else {
                distance_to_run(at, points, true)
            }
        }
        Shape::Circle { centre, radius, .. } => ((at - *centre).length() - radius).max(0.0),
        Shape::Arc { centre, radius, .. } => ((at - *centre).length() - radius).abs(),
        Shape::Text { .. } => {
            let rect = shape.bounds();
            let x = (rect.min_x() - at.x).max(at.x - rect.max_x()).max(0.0);
            let y = (rect.min_y() - at.y).max(at.y - rect.max_y()).max(0.0);
            x.hypot(y)
        }
    }
}
