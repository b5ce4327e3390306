//! Makes the invented one-page installation papers of the demo, each in its own style, unit and
//! language: `cargo run -p flapwright-export --example demo_papers -- assets/demo/papers`.
//!
//! The texts are typed by hand in `assets/demo/papers/*.txt` and not made from the cards beside
//! them: whoever types a paper into a card is to be able to make a slip. A line is a paragraph; one
//! that begins with `#` is a heading, with `|` a row of a table, with `@` a figure:
//! `@ title | left right up down of the panel | x down words | x down words ...`, mm from where the
//! datum lines cross.
#![expect(
    clippy::expect_used,
    reason = "a paper that cannot be made is a failure"
)]

use std::path::PathBuf;

use euclid::default::Vector2D;
use flapwright_drawing::brush::{Brush, Lettering};
use flapwright_drawing::list::{At, DisplayList, Weight};
use flapwright_drawing::page_kind::PageKind;
use flapwright_drawing::paper::Paper;
use flapwright_drawing::pen::{Ink, Layer, Pen};
use flapwright_drawing::sheet::Sheet;
use flapwright_drawing::words::Block;
use flapwright_export::{PdfOptions, pdf};
use flapwright_files::write_files;

const NOTES: Brush = Brush::new(Layer::Notes, Ink::Plain);
/// Paper mm per workshop mm in figures.
const SCALE: f64 = 0.25;

fn main() {
    let folder = std::env::args()
        .nth(1)
        .expect("name the folder of the papers");
    let folder = PathBuf::from(folder);
    // Name, paper, heights of heading and text, mm: a style for each.
    let papers = [
        ("kestrel", Paper::LETTER, 7.0, 2.5),
        ("milan", Paper::A4, 5.0, 2.5),
        ("mesange", Paper::A4, 6.0, 2.2),
    ];
    let files = papers.map(|(name, paper, heading, tall)| {
        let text = std::fs::read_to_string(folder.join(format!("{name}.txt"))).expect("a text");
        let page = sheet(name, &text, paper, heading, tall);
        let file = pdf(&[page], &PdfOptions::default()).expect("a page");
        (format!("{name}.pdf"), file)
    });
    for path in write_files(&folder, files).expect("writes") {
        println!("{}", path.display());
    }
}

fn sheet(name: &str, text: &str, paper: Paper, heading: f64, tall: f64) -> Sheet {
    let mut list = DisplayList::new();
    let space = paper.drawing_space();
    let (left, wide) = (space.min_x(), space.width());
    let mut y = space.max_y();
    let mut figures = Vec::new();
    for line in text.lines() {
        if !line.starts_with('@') {
            y = row_of_figures(&mut list, &mut figures, At::new(left, y), wide);
        }
        if let Some(words) = line.strip_prefix("# ") {
            let how = Lettering::new(heading).bold();
            NOTES.text(&mut list, At::new(left, y - heading), words, how);
            y -= heading + 4.0;
        } else if let Some(row) = line.strip_prefix("| ") {
            y = table_row(&mut list, row, At::new(left, y), wide);
        } else if let Some(figure) = line.strip_prefix("@ ") {
            figures.push(figure);
        } else {
            let mut block = Block::new(tall);
            block.add(line, Weight::Plain, wide);
            block.draw(&mut list, NOTES, At::new(left, y));
            y -= block.depth() + 2.0;
        }
    }
    assert!(y > space.min_y(), "{name} is longer than a page");
    Sheet {
        slug: name.to_owned(),
        title: name.to_owned(),
        kind: PageKind::Cover,
        box_id: None,
        part: None,
        paper,
        list,
    }
}

fn table_row(list: &mut DisplayList, row: &str, top: At, wide: f64) -> f64 {
    let cells: Vec<&str> = row.split('|').map(str::trim).collect();
    let step = wide / cells.len() as f64;
    for (column, cell) in cells.iter().enumerate() {
        let x = top.x + column as f64 * step + 1.0;
        NOTES.text(list, At::new(x, top.y - 3.4), *cell, Lettering::new(2.0));
    }
    let y = top.y - 4.8;
    NOTES.line(list, At::new(top.x, y), At::new(top.x + wide, y), Pen::Thin);
    y
}

/// Draws the figures that wait, side by side; the y below them.
fn row_of_figures(list: &mut DisplayList, figures: &mut Vec<&str>, top: At, wide: f64) -> f64 {
    let mut lowest = top.y;
    for (number, words) in figures.drain(..).enumerate() {
        let x = top.x + 4.0 + number as f64 * 0.5 * wide;
        lowest = lowest.min(figure(list, words, At::new(x, top.y - 8.0)) - 4.0);
    }
    lowest
}

/// One figure with the upper left corner of its panel at a place; the y of its lower edge.
fn figure(list: &mut DisplayList, words: &str, corner: At) -> f64 {
    let mut parts = words.split('|').map(str::trim);
    let title = parts.next().expect("a title");
    let panel = parts.next().expect("a panel");
    let sides: Vec<f64> = panel
        .split_whitespace()
        .map(|side| side.parse().expect("a number"))
        .collect();
    let [left, right, up, down] = sides[..] else {
        panic!("a panel has four sides: {panel}");
    };
    let at = |x: f64, y: f64| At::new(corner.x + (left + x) * SCALE, corner.y - (up + y) * SCALE);
    let small = Lettering::new(1.8);
    let above = At::new(corner.x, corner.y + 2.0);
    NOTES.text(list, above, title, Lettering::new(2.2).bold());
    let corners = vec![
        at(-left, -up),
        at(right, -up),
        at(right, down),
        at(-left, down),
    ];
    NOTES.outline(list, corners, Pen::Outline);
    NOTES.line(list, at(-left, 0.0), at(right, 0.0), Pen::Hidden);
    NOTES.line(list, at(0.0, -up), at(0.0, down), Pen::Hidden);
    for hole in parts {
        let mut fields = hole.splitn(3, ' ');
        let mut number = || -> f64 {
            let field = fields.next().expect("x and down");
            field.parse().expect("a number")
        };
        let place = at(number(), number());
        NOTES.circle(list, place, 0.9, Pen::Outline);
        NOTES.cross(list, place, 1.8, Pen::Centre);
        let words = fields.next().unwrap_or_default();
        NOTES.text(list, place + Vector2D::new(2.2, 0.8), words, small);
    }
    at(0.0, down).y
}
