//! Sheets and readers for tests.

use std::path::Path;
use std::process::Command;

use flapwright_drawing::list::{Across, Along, Anchor, At, DisplayList, Shape, Turn, Weight};
use flapwright_drawing::page_kind::PageKind;
use flapwright_drawing::paper::Paper;
use flapwright_drawing::pen::{Ink, Layer, Pen};
use flapwright_drawing::sheet::Sheet;
use flapwright_drawing::text;
use resvg::usvg;

use crate::svg::{SvgOptions, svg};

/// An upright A4 sheet with plain shapes on the layer of panels.
pub(crate) fn sheet(shapes: impl IntoIterator<Item = Shape>) -> Sheet {
    let mut list = DisplayList::new();
    for shape in shapes {
        list.push(Layer::Panels, Ink::Plain, None, shape);
    }
    Sheet {
        slug: "01-sample".to_owned(),
        title: "Sample sheet".to_owned(),
        kind: PageKind::Panel,
        box_id: None,
        part: None,
        paper: Paper::A4,
        list,
    }
}

/// A text with capitals of 5 mm, anchored at the start of its baseline.
pub(crate) fn weighted(x: f64, y: f64, text: &str, weight: Weight) -> Shape {
    Shape::Text {
        at: At::new(x, y),
        text: text.to_owned(),
        height: 5.0,
        anchor: Anchor {
            along: Along::Start,
            across: Across::Baseline,
        },
        turn: Turn::Level,
        weight,
    }
}

/// A plain text with capitals of 5 mm.
pub(crate) fn text_at(x: f64, y: f64, text: &str) -> Shape {
    weighted(x, y, text, Weight::Plain)
}

/// A line of 100 mm to the right of `from`.
pub(crate) fn scale_bar(from: At) -> Shape {
    Shape::Line {
        from,
        to: At::new(from.x + 100.0, from.y),
        pen: Pen::Outline,
    }
}

/// A filled circle of 20 mm around `centre`.
pub(crate) fn dot(centre: At) -> Shape {
    Shape::Circle {
        centre,
        radius: 10.0,
        pen: Pen::Thin,
        filled: true,
    }
}

/// A sheet with every shape, pen, anchor and both weights, about as full as a real one.
pub(crate) fn full_sheet() -> Sheet {
    let mut sheet = sheet([]);
    let mut push = |layer, ink, shape| sheet.list.push(layer, ink, None, shape);
    let frame = [(20.0, 10.0), (200.0, 10.0), (200.0, 287.0), (20.0, 287.0)];
    let points: Vec<At> = frame.map(|(x, y)| At::new(x, y)).to_vec();
    push(
        Layer::Sheet,
        Ink::Plain,
        Shape::Polyline {
            points,
            closed: true,
            pen: Pen::Frame,
        },
    );
    for (row, pen) in Pen::ALL.into_iter().enumerate() {
        let y = 280.0 - 5.0 * row as f64;
        let (from, to) = (At::new(30.0, y), At::new(190.0, y - 2.0));
        push(Layer::Panels, Ink::Plain, Shape::Line { from, to, pen });
    }
    for index in 0..120 {
        let (column, row) = (f64::from(index % 12), f64::from(index / 12));
        let centre = At::new(35.0 + 13.5 * column, 120.0 + 11.3 * row);
        let filled = index % 7 == 0;
        push(
            Layer::Bores,
            Ink::Bore,
            Shape::Circle {
                centre,
                radius: 2.5,
                pen: Pen::Thin,
                filled,
            },
        );
        let text = format!("{}.5", 17 * index);
        let at = At::new(centre.x, centre.y + 4.0);
        let anchor = Anchor {
            along: Along::Middle,
            across: Across::Baseline,
        };
        let (height, weight) = (1.8, Weight::Plain);
        let shape = Shape::Text {
            at,
            text,
            height,
            anchor,
            turn: Turn::Level,
            weight,
        };
        push(Layer::Dimensions, Ink::Plain, shape);
    }
    let (centre, pen) = (At::new(60.0, 60.0), Pen::Phantom);
    let arc = Shape::Arc {
        centre,
        radius: 30.0,
        from: 0.4,
        sweep: 4.4,
        pen,
    };
    push(Layer::Doors, Ink::Moving, arc);
    let points = vec![
        At::new(120.0, 40.0),
        At::new(150.0, 40.0),
        At::new(135.0, 70.0),
    ];
    push(Layer::Findings, Ink::Caution, Shape::Area { points });
    let shape = Shape::Text {
        at: At::new(195.0, 60.0),
        text: "Banded edge × 3, Ø35".to_owned(),
        height: 2.5,
        anchor: Anchor {
            along: Along::End,
            across: Across::Middle,
        },
        turn: Turn::Up,
        weight: Weight::Bold,
    };
    push(Layer::Notes, Ink::Plain, shape);
    sheet
}

/// A page's SVG as `usvg` reads it: in CSS pixels (96 to the inch), y down, with all text laid out
/// in the embedded fonts and no others.
pub(crate) fn tree(sheet: &Sheet) -> usvg::Tree {
    let mut fonts = usvg::fontdb::Database::new();
    for weight in [Weight::Plain, Weight::Bold] {
        fonts.load_font_data(text::font(weight).to_vec());
    }
    let options = usvg::Options {
        font_family: text::FAMILY.to_owned(),
        fontdb: fonts.into(),
        ..usvg::Options::default()
    };
    let plain = SvgOptions {
        paper: false,
        hold_width: false,
    };
    usvg::Tree::from_str(&svg(sheet, &plain), &options).expect("a page that can be read")
}

/// The texts of a laid-out page: where each starts and ends, mm from the left.
pub(crate) fn text_ends(group: &usvg::Group, ends: &mut Vec<(f64, f64)>) {
    let mm = |x: f32| f64::from(x) * 25.4 / 96.0;
    for node in group.children() {
        match node {
            usvg::Node::Group(group) => text_ends(group, ends),
            // The box of the advances, not of the outlines.
            usvg::Node::Text(text) => {
                let bounds = text.abs_bounding_box();
                ends.push((mm(bounds.left()), mm(bounds.right())));
            }
            usvg::Node::Path(_) | usvg::Node::Image(_) => {}
        }
    }
}

/// The PGM picture at `path`: its width and all pixels, one byte each.
pub(crate) fn read_pgm(path: &Path) -> (usize, Vec<u8>) {
    let bytes = std::fs::read(path).expect("picture");
    let (mut fields, mut at) = (Vec::new(), 0);
    while fields.len() < 4 {
        let end = at
            + bytes[at..]
                .iter()
                .position(u8::is_ascii_whitespace)
                .expect("header");
        fields.push(String::from_utf8_lossy(&bytes[at..end]).into_owned());
        at = end + 1;
    }
    assert_eq!((fields[0].as_str(), fields[3].as_str()), ("P5", "255"));
    (fields[1].parse().expect("width"), bytes[at..].to_vec())
}

/// Runs a reader of PDF files and returns what it prints.
pub(crate) fn poppler(tool: &str, arguments: &[&str]) -> String {
    let output = Command::new(tool)
        .args(arguments)
        .output()
        .unwrap_or_else(|error| {
            panic!("`{tool}` cannot be run; install the Debian package poppler-utils: {error}")
        });
    let errors = String::from_utf8_lossy(&output.stderr);
    assert!(
        output.status.success() && errors.is_empty(),
        "{tool}: {errors}"
    );
    String::from_utf8(output.stdout).expect("UTF-8")
}
