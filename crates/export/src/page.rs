//! Whether a sheet can be exported at all: asked by every back-end before it begins.

use flapwright_drawing::list::{At, Shape};
use flapwright_drawing::sheet::Sheet;

use crate::error::ExportError;

/// Greatest side of a page, mm: just under the 14 400 points that PDF readers take (restated from
/// memory).
const LONGEST_SIDE: f64 = 5000.0;

/// Checks that a sheet can be exported. [`crate::pdf`] and [`crate::png`] do this themselves.
///
/// # Errors
/// [`ExportError::PaperSize`] when the paper has no usable size, [`ExportError::NotFinite`] when
/// an item has a coordinate, size or angle that is infinite or not a number.
pub fn check(sheet: &Sheet) -> Result<(), ExportError> {
    let (width, height) = (sheet.paper.width, sheet.paper.height);
    let fits = |side: f64| side > 0.0 && side <= LONGEST_SIDE;
    if !fits(width) || !fits(height) {
        let sheet = sheet.slug.clone();
        return Err(ExportError::PaperSize {
            sheet,
            width,
            height,
            limit: LONGEST_SIDE,
        });
    }
    match sheet
        .list
        .items
        .iter()
        .enumerate()
        .find(|(_, item)| !is_finite(&item.shape))
    {
        None => Ok(()),
        Some((index, item)) => Err(ExportError::NotFinite {
            sheet: sheet.slug.clone(),
            item: index,
            layer: item.layer.name(),
        }),
    }
}

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

#[cfg(test)]
mod tests {
    use flapwright_drawing::paper::Paper;
    use flapwright_drawing::pen::Pen;

    use super::*;
    use crate::sample;

    #[test]
    fn paper_without_a_size_is_refused() {
        for (width, height) in [
            (0.0, 297.0),
            (210.0, -1.0),
            (f64::NAN, 297.0),
            (210.0, 6000.0),
        ] {
            let mut sheet = sample::sheet([]);
            sheet.paper = Paper {
                name: "odd",
                width,
                height,
            };
            let error = check(&sheet).expect_err("odd paper");
            assert!(matches!(error, ExportError::PaperSize { .. }), "{error}");
        }
    }

    #[test]
    fn an_item_that_is_nowhere_is_refused_by_name() {
        let shape = Shape::Circle {
            centre: At::new(10.0, f64::NAN),
            radius: 5.0,
            pen: Pen::Thin,
            filled: false,
        };
        let error = check(&sample::sheet([sample::text_at(1.0, 1.0, "a"), shape]));
        let message = error.expect_err("no position").to_string();
        assert!(
            message.contains("sheet `01-sample`: item 1 on layer `panels`"),
            "{message}"
        );
    }
}
