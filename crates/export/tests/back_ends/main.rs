//! One set of cases through SVG, PDF and PNG, compared by picture.
//!
//! The reference is the picture that `resvg` makes of the SVG; poppler, which had no part in writing
//! it, makes that of the PDF. Needs the Debian package poppler-utils.

mod cases;
mod picture;

use flapwright_drawing::list::Shape;
use flapwright_drawing::sheet::Sheet;

use crate::cases::{cases, pages_of_the_demo};
use crate::picture::{Difference, Picture, of_pdf, of_png, of_svg};

/// Our PNG and the reference come from one rasteriser, so only the last digits of places differ:
/// that moves no edge by as much as a fiftieth of a pixel.
const PNG_TOLERANCE: Difference = Difference {
    worst: 24,
    mean: 0.01,
};

/// Poppler moves thin strokes onto whole pixels of its own, which are four to one of these, and
/// shades edges in 17 steps.
const PDF_TOLERANCE: Difference = Difference {
    worst: 110,
    mean: 0.6,
};

fn all() -> Vec<(String, Sheet)> {
    let mut all = cases();
    all.extend(pages_of_the_demo());
    all
}

#[test]
fn png_looks_like_svg() {
    for (name, sheet) in all() {
        let found = of_png(&sheet).difference(&of_svg(&sheet));
        assert!(found.is_within(PNG_TOLERANCE), "{name}: {found:?}");
    }
}

#[test]
fn pdf_looks_like_svg() {
    let (names, sheets): (Vec<_>, Vec<_>) = all().into_iter().unzip();
    for ((name, sheet), seen) in names.iter().zip(&sheets).zip(of_pdf(&sheets)) {
        let found = seen.difference(&of_svg(sheet));
        assert!(found.is_within(PDF_TOLERANCE), "{name}: {found:?}");
    }
}

/// The measure itself: every shape that is left out, moved by a fifth of a millimetre or drawn in
/// another ink is seen.
#[test]
fn the_measure_sees_what_is_amiss() {
    for (name, sheet) in cases() {
        let reference = of_svg(&sheet);
        for index in 0..sheet.list.items.len() {
            let item = &sheet.list.items[index];
            let by = flapwright_drawing::list::At::new(0.2, 0.2).to_vector();
            let mut moved = sheet.clone();
            moved.list.items[index].shape = item.shape.shifted(by);
            let mut without = sheet.clone();
            without.list.items.remove(index);
            for (how, changed) in [("moved", moved), ("left out", without)] {
                if matches!(&item.shape, Shape::Text { text, .. } if text.trim().is_empty()) {
                    continue;
                }
                let found = of_png(&changed).difference(&reference);
                assert!(
                    found.worst > PDF_TOLERANCE.worst,
                    "{name}: item {index} {how} unseen, {found:?}"
                );
            }
        }
    }
}

#[test]
fn pictures_of_one_paper_have_one_size() {
    let (_, sheet) = cases().swap_remove(0);
    let size = |picture: &Picture| (picture.width, picture.height);
    let svg = of_svg(&sheet);
    assert_eq!(size(&of_png(&sheet)), size(&svg));
    assert_eq!(size(&of_pdf(&[sheet])[0]), size(&svg));
}
