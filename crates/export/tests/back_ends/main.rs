//! One set of cases through SVG, PDF and PNG, compared by picture.
//!
//! The reference is the picture that `resvg` makes of the SVG; poppler, which had no part in writing
//! it, makes that of the PDF. Needs the Debian package poppler-utils.

#![expect(clippy::expect_used, reason = "a case that cannot be made is to fail")]

mod cases;
mod picture;

use flapwright_drawing::list::At;
use flapwright_drawing::sheet::Sheet;

use crate::cases::{cases, pages_of_the_demo};
use crate::picture::{Difference, Picture, of_pdf, of_png, of_svg};

/// Our PNG and the reference come from one rasteriser, which shades edges in 16 steps: apart from
/// the ends of dashes along curves, which are measured along other Bézier curves, a step or two.
const PNG_TOLERANCE: Difference = Difference {
    worst: 64,
    mean: 0.06,
};

/// Of blurred pictures: poppler draws letters and edges a little fuller, and in no other place.
const PDF_TOLERANCE: Difference = Difference {
    worst: 64,
    mean: 2.0,
};

/// Shapes of each case that are moved and left out to try the measure, at most.
const TRIED: usize = 5;

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
        let found = seen.blurred().difference(&of_svg(sheet).blurred());
        assert!(found.is_within(PDF_TOLERANCE), "{name}: {found:?}");
    }
}

/// The measure itself: a single shape that is left out or moved by 0.4 mm is seen. Some of each case
/// are tried, among them the first.
#[test]
fn the_measure_sees_what_is_amiss() {
    for (name, sheet) in cases() {
        let reference = of_svg(&sheet).blurred();
        let every = 1 + sheet.list.items.len() / TRIED;
        for (index, item) in sheet.list.items.iter().enumerate().step_by(every) {
            let mut moved = sheet.clone();
            moved.list.items[index].shape = item.shape.shifted(At::new(0.4, 0.4).to_vector());
            let mut without = sheet.clone();
            without.list.items.remove(index);
            for (how, changed) in [("moved", moved), ("left out", without)] {
                let found = of_png(&changed).blurred().difference(&reference);
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
