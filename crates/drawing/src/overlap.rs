//! Finds texts that lie on each other: what no sheet may have.

use crate::list::{DisplayList, Shape};

/// The pairs of texts whose boxes meet by more than a hundredth of a millimetre both ways.
#[must_use]
pub fn overlapping_texts(list: &DisplayList) -> Vec<(String, String)> {
    let texts: Vec<(&str, _)> = list
        .items
        .iter()
        .filter_map(|item| match &item.shape {
            Shape::Text { text, .. } => {
                Some((text.as_str(), item.shape.bounds().inflate(-0.01, -0.01)))
            }
            Shape::Line { .. }
            | Shape::Polyline { .. }
            | Shape::Area { .. }
            | Shape::Circle { .. }
            | Shape::Arc { .. } => None,
        })
        .collect();
    let mut found = Vec::new();
    for (i, (text, rect)) in texts.iter().enumerate() {
        for (other, other_rect) in &texts[i + 1..] {
            if rect.intersects(other_rect) {
                found.push(((*text).to_owned(), (*other).to_owned()));
            }
        }
    }
    found
}
