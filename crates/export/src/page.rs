//! A sheet as a parsed SVG tree: the common step of PDF and PNG.

use std::sync::{Arc, OnceLock};

use flapwright_drawing::list::Weight;
use flapwright_drawing::sheet::Sheet;
use flapwright_drawing::text;
use resvg::usvg::{self, fontdb};

use crate::error::ExportError;
use crate::finite::is_finite;
use crate::svg::{SvgOptions, svg};

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

/// The checked sheet as a tree in CSS pixels (96 to the inch), y down, with all text laid out.
pub(crate) fn tree(sheet: &Sheet) -> Result<usvg::Tree, ExportError> {
    check(sheet)?;
    let options = usvg::Options {
        font_family: text::FAMILY.to_owned(),
        fontdb: fonts(),
        ..usvg::Options::default()
    };
    let source = svg(
        sheet,
        &SvgOptions {
            paper: false,
            hold_width: false,
        },
    );
    usvg::Tree::from_str(&source, &options).map_err(|error| ExportError::Page {
        sheet: sheet.slug.clone(),
        cause: error.to_string(),
    })
}

/// The embedded fonts and no others, so that pages look the same on every computer.
fn fonts() -> Arc<fontdb::Database> {
    static FONTS: OnceLock<Arc<fontdb::Database>> = OnceLock::new();
    let load = || {
        let mut database = fontdb::Database::new();
        for weight in [Weight::Plain, Weight::Bold] {
            database.load_font_source(fontdb::Source::Binary(Arc::new(text::font(weight))));
        }
        Arc::new(database)
    };
    Arc::clone(FONTS.get_or_init(load))
}

#[cfg(test)]
mod tests {
    use flapwright_drawing::paper::Paper;
    use flapwright_drawing::pen::Pen;

    use flapwright_drawing::list::{At, Shape};

    use super::*;
    use crate::sample;

    #[test]
    fn only_the_two_embedded_fonts_are_known() {
        let names: Vec<_> = fonts()
            .faces()
            .map(|face| face.post_script_name.clone())
            .collect();
        assert_eq!(names, ["NotoSans-Regular", "NotoSans-Bold"]);
    }

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

    /// The layout engine and the text metrics must agree on every pair of characters, or text
    /// would not sit where the sheet put it.
    #[test]
    fn texts_are_as_wide_as_the_metrics_say() {
        let signs = "AVToWfilj1.7,-–×Ø°½ é&\"'/()²µЖΩ\u{FFFD}⌀";
        // Each text holds one sign before and behind every other.
        let pairs = signs
            .chars()
            .map(|a| signs.chars().flat_map(|b| [a, b]).collect());
        let others = [
            "office fluffy ffi",
            "To AVAIL 1⁄2",
            "  two  spaces  ",
            "اب",
            "e\u{AD}e",
            "cafe\u{301} A\u{308}",
        ];
        let texts = pairs.chain(others.map(str::to_owned));
        for weight in [Weight::Plain, Weight::Bold] {
            let texts: Vec<_> = texts.clone().collect();
            let shapes = texts
                .iter()
                .map(|text| sample::weighted(20.0, 50.0, text, weight));
            let tree = tree(&sample::sheet(shapes)).expect("tree");
            let mut ends = Vec::new();
            sample::text_ends(tree.root(), &mut ends);
            assert_eq!(ends.len(), texts.len());
            for (text, (start, end)) in texts.iter().zip(ends) {
                let laid_out = end - start;
                let measured = text::width(text, 5.0, weight);
                assert!(
                    (laid_out - measured).abs() < 0.005,
                    "{weight:?} {text:?}: laid out {laid_out:.4}, measured {measured:.4} mm"
                );
            }
        }
    }
}
