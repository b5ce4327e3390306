//! The cases: every shape, pen, ink, anchor, turn and weight, and real pages.

use std::f64::consts::{PI, TAU};
use std::path::Path;

use flapwright_answer::inspect;
use flapwright_drawing::job_sheets::{PageOptions, job_sheets};
use flapwright_drawing::list::{Across, Along, Anchor, At, DisplayList, Shape, Turn, Weight};
use flapwright_drawing::page_kind::PageKind;
use flapwright_drawing::paper::Paper;
use flapwright_drawing::pen::{Ink, Layer, Pen};
use flapwright_drawing::sheet::Sheet;

const INKS: [Ink; 11] = [
    Ink::Plain,
    Ink::Soft,
    Ink::Bore,
    Ink::Moving,
    Ink::Fitting,
    Ink::Stop,
    Ink::Caution,
    Ink::Note,
    Ink::Ghost,
    Ink::Room,
    Ink::Paper,
];

/// Small sheets with all that a display list can hold.
pub(crate) fn cases() -> Vec<(String, Sheet)> {
    let mut cases = vec![
        ("lines".to_owned(), sheet(lines())),
        ("polylines".to_owned(), sheet(polylines())),
        ("circles".to_owned(), sheet(circles())),
        ("arcs".to_owned(), sheet(arcs())),
        ("areas".to_owned(), sheet(areas())),
        ("signs".to_owned(), sheet(signs())),
    ];
    for (name, turn) in [("level", Turn::Level), ("upright", Turn::Up)] {
        cases.push((format!("{name} texts"), sheet(anchored(turn))));
    }
    cases.push(("inks".to_owned(), inks()));
    cases
}

/// The first page of each kind of the demo job.
pub(crate) fn pages_of_the_demo() -> Vec<(String, Sheet)> {
    let path = Path::new(env!("CARGO_MANIFEST_DIR")).join("../../assets/demo/houseboat-galley.ron");
    let text = std::fs::read_to_string(path).expect("the demo ships with the program");
    let job = flapwright_model::file::read_job(&text).expect("the demo is sound");
    let all = job_sheets(&job, &inspect(&job), &PageOptions::of(PageKind::ALL));
    let first = |kind: PageKind| {
        let page = all.iter().find(|sheet| sheet.kind == kind);
        page.map(|sheet| (format!("demo: {}", kind.name()), sheet.clone()))
    };
    PageKind::ALL.into_iter().filter_map(first).collect()
}

fn sheet(shapes: Vec<Shape>) -> Sheet {
    let mut list = DisplayList::new();
    for shape in shapes {
        list.push(Layer::Panels, Ink::Plain, None, shape);
    }
    let slug = "case".to_owned();
    Sheet {
        title: slug.clone(),
        slug,
        kind: PageKind::Panel,
        box_id: None,
        part: None,
        paper: Paper {
            name: "case",
            width: 130.0,
            height: 90.0,
        },
        list,
    }
}

/// Each pen, level, upright and at a slant.
fn lines() -> Vec<Shape> {
    let fan = Pen::ALL.into_iter().enumerate().flat_map(|(row, pen)| {
        let y = 85.0 - 5.3 * row as f64;
        let x = 70.0 + 7.3 * row as f64;
        let line = |from: (f64, f64), to: (f64, f64)| Shape::Line {
            from: At::new(from.0, from.1),
            to: At::new(to.0, to.1),
            pen,
        };
        [
            line((5.0, y), (60.0, y)),
            line((x, 5.0), (x, 40.0)),
            line((5.0, 0.5 * y), (60.0, 0.5 * y - 7.7)),
        ]
    });
    fan.collect()
}

/// Each pen around right, blunt and acute corners, open and closed.
fn polylines() -> Vec<Shape> {
    let each = Pen::ALL.into_iter().enumerate().flat_map(|(column, pen)| {
        let left = 5.0 + 15.3 * column as f64;
        let corners = [(0.0, 0.0), (9.0, 0.0), (9.0, 9.0), (2.0, 30.0), (5.0, 3.0)];
        let shape = |low: f64, closed| Shape::Polyline {
            points: corners.map(|(x, y)| At::new(left + x, low + y)).to_vec(),
            closed,
            pen,
        };
        [shape(5.0, true), shape(48.0, false)]
    });
    each.collect()
}

/// Each pen, hollow and filled, small as a bore and larger.
fn circles() -> Vec<Shape> {
    let each = Pen::ALL.into_iter().enumerate().flat_map(|(column, pen)| {
        let x = 10.0 + 15.7 * column as f64;
        let circle = |y: f64, radius: f64, filled| Shape::Circle {
            centre: At::new(x, y),
            radius,
            pen,
            filled,
        };
        [
            circle(10.0, 0.6, false),
            circle(20.0, 2.5, false),
            circle(32.0, 2.5, true),
            circle(45.0, 5.0, true),
            circle(70.0, 7.0, false),
        ]
    });
    each.collect()
}

/// Both ways round, from slivers to more than a turn.
fn arcs() -> Vec<Shape> {
    let sweeps = [0.2, -0.2, 1.5, -1.7, PI, -4.0, 5.5, -6.2, TAU, -7.0];
    let each = sweeps.into_iter().enumerate().map(|(index, sweep)| {
        let (column, row) = (index % 5, index / 5);
        Shape::Arc {
            centre: At::new(15.0 + 25.0 * column as f64, 22.0 + 45.0 * row as f64),
            radius: 11.0,
            from: 0.4 + index as f64,
            sweep,
            pen: Pen::ALL[index % Pen::ALL.len()],
        }
    });
    each.collect()
}

/// A triangle, a hollow-sided one in the other sense of turning, and a sliver.
fn areas() -> Vec<Shape> {
    let area = |corners: &[(f64, f64)]| Shape::Area {
        points: corners.iter().map(|(x, y)| At::new(*x, *y)).collect(),
    };
    vec![
        area(&[(5.0, 5.0), (45.0, 7.0), (20.0, 60.0)]),
        area(&[
            (60.0, 5.0),
            (65.0, 60.0),
            (80.0, 20.0),
            (100.0, 50.0),
            (95.0, 5.0),
        ]),
        area(&[(110.0, 5.0), (111.0, 5.0), (112.0, 80.0)]),
    ]
}

fn text_at(x: f64, y: f64, text: &str, height: f64, weight: Weight) -> Shape {
    Shape::Text {
        at: At::new(x, y),
        text: text.to_owned(),
        height,
        anchor: Anchor {
            along: Along::Start,
            across: Across::Baseline,
        },
        turn: Turn::Level,
        weight,
    }
}

/// Signs of drawings and of other languages, fractions, signs that the font lacks, blanks.
fn signs() -> Vec<Shape> {
    let texts = [
        "Ø35 × 13,5 – 45° ½ 1²⁹⁄₆₄\" ±0.1",
        "AVATAR Toffee office fluffy 1/2",
        "Größe: Türblatt, Éclair, Łódź, ijsje",
        "Ширина 600 Ж, Ύψος Ω µ",
        "a <b> & \"c\" 'd' ]]>",
        "boat \u{1F6A2} and 木",
        "two  blanks\tand a tab",
    ];
    let rows = texts.into_iter().enumerate().flat_map(|(row, text)| {
        let y = 80.0 - 12.0 * row as f64;
        [
            text_at(5.0, y, text, 3.5, Weight::Plain),
            text_at(5.0, y - 5.5, text, 2.5, Weight::Bold),
        ]
    });
    rows.collect()
}

/// One text for each way of holding it.
fn anchored(turn: Turn) -> Vec<Shape> {
    let alongs = [Along::Start, Along::Middle, Along::End];
    let acrosses = [Across::Baseline, Across::Middle, Across::Top];
    let mut shapes = Vec::new();
    for (i, along) in alongs.into_iter().enumerate() {
        for (j, across) in acrosses.into_iter().enumerate() {
            for (k, weight) in [Weight::Plain, Weight::Bold].into_iter().enumerate() {
                shapes.push(Shape::Text {
                    at: At::new(
                        30.0 + 33.3 * i as f64,
                        18.0 + 26.0 * j as f64 + 11.3 * k as f64,
                    ),
                    text: "Fog 12".to_owned(),
                    height: [2.5, 1.8][k],
                    anchor: Anchor { along, across },
                    turn,
                    weight,
                });
            }
        }
    }
    shapes
}

/// Every ink on paper and over a black bar, the paper's own last.
fn inks() -> Sheet {
    let mut page = sheet(Vec::new());
    let bar = [(5.0, 5.0), (125.0, 5.0), (125.0, 35.0), (5.0, 35.0)];
    let points = bar.map(|(x, y)| At::new(x, y)).to_vec();
    page.list
        .push(Layer::Panels, Ink::Plain, None, Shape::Area { points });
    for (index, ink) in INKS.into_iter().enumerate() {
        let x = 12.0 + 10.7 * index as f64;
        // The paper's ink shows on the bar alone, the darkest ones beside it alone.
        let line = Shape::Line {
            from: At::new(x, 10.0),
            to: At::new(x, 80.0),
            pen: Pen::Banded,
        };
        page.list.push(Layer::Notes, ink, None, line);
        let at = text_at(x + 1.5, 45.0, "m", 3.5, Weight::Bold);
        if ink != Ink::Paper {
            page.list.push(Layer::Notes, ink, None, at);
        }
    }
    page
}
