//! The picture of a fitting card: the side with its bores dimensioned from their datums, the back of
//! the door, the section half open, the table of sizes.
//!
//! The card is tried on a plain box ([`flapwright_rules::trial`]): the bores are those that
//! placement gives there, and the figures are their distances from the datums.

use euclid::default::{Rect, Vector2D};
use flapwright_model::card::{Card, Depth, Drill, Size};
use flapwright_model::door::Side;
use flapwright_model::length::Unit;
use flapwright_model::lift::Carries;
use flapwright_model::measure::{self, Measure};
use flapwright_model::part::Part;
use flapwright_rules::inspection::{BoreSource, BoxReport, PlacedBore, Solid};
use flapwright_rules::proof::proof;
use flapwright_rules::trial::Trial;
use flapwright_words::Speaker;

use crate::brush::{Brush, Lettering, corners};
use crate::dimension::Axis;
use crate::list::{At, DisplayList, Weight};
use crate::page_kind::PageKind;
use crate::paper::Paper;
use crate::pen::{Ink, Layer, Pen};
use crate::running::{Running, Stop, running};
use crate::scale::{Scale, largest_that_fits};
use crate::sheet::Sheet;
use crate::views::{ViewOptions, figure, section};
use crate::words::{Block, fitted};

/// Width of the picture, mm.
const WIDTH: f64 = 190.0;
/// Room for one face with its dimensions, mm.
const FACE: [f64; 2] = [90.0, 92.0];
/// Headings of the faces.
const SIDE_TITLE: &str = "side, inner face, front at the left";
const DOOR_TITLE: &str = "door, back, box-left at the right";
/// Room for the dimensions beside and above a face, mm.
const DIMENSIONS: f64 = 24.0;
/// Height of plain texts, mm.
const TEXT: f64 = 2.5;
/// Height of headings, mm.
const HEADING: f64 = 3.5;
/// Room for the section, mm.
const SECTION: [f64; 2] = [90.0, 78.0];
/// Rows of the sizes table that are shown.
const MOST_ROWS: usize = 12;

/// The picture of one size of a sound card, in mm from its lower left corner, some 190 mm wide;
/// lengths in `unit`. A card that makes no sound box on its own is shown by words alone.
#[must_use]
pub fn card_picture(card: &Card, size: &str, unit: Unit) -> DisplayList {
    let mut list = DisplayList::new();
    let mut y = heading(&mut list, card, size, unit);
    let chosen = card.size(size).or(card.sizes.first());
    let trial = chosen.and_then(|size| {
        let (low, high) = Trial::door_heights(size);
        Trial::new(card, size, f64::midpoint(low, high), 1.0)
    });
    if let Some(trial) = &trial {
        let report = &trial.report;
        let side = face(report, Part::LeftSide, SIDE_TITLE, (FACE, unit));
        let door = face(report, Part::Frame, DOOR_TITLE, (FACE, unit));
        let depth = height(&side).max(height(&door));
        place(&mut list, &side, 0.0, y - depth);
        place(&mut list, &door, 0.5 * WIDTH, y - depth);
        y -= depth + 6.0;
        y = half_open(&mut list, report, unit, y);
    } else {
        let note = "This card and a plain box do not go together; its numbers are below.";
        Brush::new(Layer::Notes, Ink::Plain).text(
            &mut list,
            At::new(0.0, y - TEXT),
            note,
            Lettering::new(TEXT),
        );
        y -= 8.0;
    }
    let depth = sizes(&mut list, card, unit, y);
    // The lowest line is the lower left corner.
    let mut moved = DisplayList::new();
    moved.append_shifted(&list, Vector2D::new(0.0, depth));
    moved
}

/// The side that carries the fitting, with its bores dimensioned from their datums, in a room of
/// mm: for a window beside the form of a card. The list below the picture may be deeper than the
/// room.
#[must_use]
pub fn side_face(report: &BoxReport, room: [f64; 2], unit: Unit) -> DisplayList {
    face(report, Part::LeftSide, SIDE_TITLE, (room, unit))
}

/// The same of the back of the door.
#[must_use]
pub fn door_face(report: &BoxReport, room: [f64; 2], unit: Unit) -> DisplayList {
    face(report, Part::Frame, DOOR_TITLE, (room, unit))
}

/// The same as a page of its own, for files.
#[must_use]
pub fn card_sheet(card: &Card, size: &str, unit: Unit) -> Sheet {
    let picture = card_picture(card, size, unit);
    let mut list = DisplayList::new();
    let space = Paper::A4.drawing_space();
    if let Some(bounds) = picture.bounds() {
        let by = Vector2D::new(
            0.5 * (Paper::A4.width - WIDTH),
            space.max_y() - bounds.max_y(),
        );
        list.append_shifted(&picture, by);
    }
    Sheet {
        slug: "card".to_owned(),
        title: format!("card {}", card.name),
        kind: PageKind::FittingSettings,
        box_id: None,
        part: None,
        paper: Paper::A4,
        list,
    }
}

fn height(list: &DisplayList) -> f64 {
    list.bounds().map_or(0.0, |it| it.height())
}

/// Puts a drawing with its lower left corner at a place.
fn place(list: &mut DisplayList, drawing: &DisplayList, x: f64, y: f64) {
    if let Some(bounds) = drawing.bounds() {
        list.append_shifted(drawing, At::new(x, y) - bounds.min());
    }
}

/// Name, kind, proof and cautions; the y below them.
fn heading(list: &mut DisplayList, card: &Card, size: &str, unit: Unit) -> f64 {
    let notes = Brush::new(Layer::Notes, Ink::Plain);
    let (name, tall) = fitted(&card.name, &[HEADING, TEXT], Weight::Bold, WIDTH);
    notes.text(list, At::new(0.0, -tall), name, Lettering::new(tall).bold());
    let mut words = Block::new(TEXT);
    let mut add = |text: &str| words.add(text, Weight::Plain, WIDTH);
    add(&format!("{}, drawn for size {size}", card.kind.words()));
    add(&Speaker::without_names(unit).say(&proof(card).message()));
    if card.invented {
        add("Invented for demonstration: do not drill after it.");
    }
    add(
        "The fitting's own instructions stand over this picture; follow them, local codes and \
         licensed practice.",
    );
    words.draw(list, notes, At::new(0.0, -tall - 2.0));
    -tall - 2.0 - words.depth() - 4.0
}

/// A bore of a face in mm from its datums: along the picture's x, down.
struct Spot<'a> {
    x: f64,
    down: f64,
    drill: &'a Drill,
}

/// What a face shows besides its bores.
struct Ground {
    /// Solid panels, mm from the datums, + right and + down.
    panels: Vec<Rect<f64>>,
    /// The body of the fitting, on the side.
    body: Option<Rect<f64>>,
    /// Sign of x on the picture: the back of the door is seen from behind.
    sign: f64,
}

/// The left side (`Part::LeftSide`), or the back of the door for anything else, with the bores of
/// the fitting at box-left (of the right one where it is the only one).
fn face(
    report: &BoxReport,
    part: Part,
    title: &str,
    (room, unit): ([f64; 2], Unit),
) -> DisplayList {
    let on_side = part == Part::LeftSide;
    let Some(opening) = report.openings.first() else {
        return DisplayList::new();
    };
    let (top, clear) = (opening.clear.max.y, opening.clear);
    let fitted_left = report.panels.iter().any(|panel| {
        panel.id.part == Part::LeftSide && panel.bores.iter().any(|bore| own(bore, Side::Left))
    });
    let tie = if fitted_left { Side::Left } else { Side::Right };
    // Distances across run from the mounting face towards the middle.
    let across = |x: f64| match tie {
        Side::Left => x - clear.min.x,
        Side::Right => clear.max.x - x,
    };
    let mut spots = Vec::new();
    for panel in &report.panels {
        let wanted = match panel.id.part {
            Part::LeftSide => on_side && tie == Side::Left,
            Part::RightSide => on_side && tie == Side::Right,
            Part::Leaf { .. } => !on_side,
            Part::Top
            | Part::Bottom
            | Part::Back
            | Part::Frame
            | Part::Shelf(_)
            | Part::Divider(_) => false,
        };
        for bore in panel.bores.iter().filter(|bore| wanted && own(bore, tie)) {
            spots.push(Spot {
                x: if on_side {
                    bore.in_box.z
                } else {
                    across(bore.in_box.x)
                },
                down: top - bore.in_box.y,
                drill: &bore.drill,
            });
        }
    }
    let ground = ground(report, &spots, on_side, top, tie);
    draw_face(&spots, &ground, title, (room, unit))
}

/// Whether a bore belongs to the fitting at a side.
fn own(bore: &PlacedBore, tie: Side) -> bool {
    matches!(bore.source, BoreSource::Fitting { side, .. } if side == tie)
}

/// The panels around the bores, cut off a little beyond them.
fn ground(report: &BoxReport, spots: &[Spot<'_>], on_side: bool, top: f64, tie: Side) -> Ground {
    let far = |values: &mut dyn Iterator<Item = f64>| values.fold(0.0, f64::max);
    let body = report
        .openings
        .first()
        .and_then(|opening| opening.door.as_ref()?.envelopes.first())
        .filter(|_| on_side)
        .map(|solid: &Solid| {
            Rect::from_points([
                At::new(solid.min.z, top - solid.max.y),
                At::new(solid.max.z, top - solid.min.y),
            ])
        });
    let edges = body.iter().map(|it| [it.max_x(), it.max_y()]);
    let edges: Vec<[f64; 2]> = edges.collect();
    let right = far(&mut spots
        .iter()
        .map(|it| it.x)
        .chain(edges.iter().map(|it| it[0])));
    let down = far(&mut spots
        .iter()
        .map(|it| it.down)
        .chain(edges.iter().map(|it| it[1])));
    let overlays = report
        .openings
        .first()
        .and_then(|opening| Some(opening.door.as_ref()?.overlays));
    let thickness = report
        .panels
        .iter()
        .find(|panel| panel.id.part == Part::Top)
        .map_or(0.0, |panel| panel.thickness);
    let panel = if on_side {
        Rect::from_points([At::new(0.0, -thickness), At::new(right + 30.0, down + 30.0)])
    } else {
        let (beside, above) = overlays.map_or((0.0, 0.0), |it| match tie {
            Side::Left => (it.left, it.top),
            Side::Right => (it.right, it.top),
        });
        Rect::from_points([At::new(-beside, -above), At::new(right + 30.0, down + 30.0)])
    };
    Ground {
        panels: vec![panel],
        body,
        sign: if on_side { 1.0 } else { -1.0 },
    }
}

fn draw_face(
    spots: &[Spot<'_>],
    ground: &Ground,
    title: &str,
    (whole, unit): ([f64; 2], Unit),
) -> DisplayList {
    let mut list = DisplayList::new();
    let Some(panel) = ground.panels.first() else {
        return list;
    };
    let room = whole.map(|length| length - DIMENSIONS);
    let scale = largest_that_fits([panel.width(), panel.height()], room, Scale::FULL)
        .unwrap_or(Scale::new(1, 100));
    let ratio = scale.ratio();
    let at = |x: f64, down: f64| At::new(ground.sign * x * ratio, -down * ratio);
    let rect = |it: &Rect<f64>| {
        Rect::from_points([at(it.min_x(), it.min_y()), at(it.max_x(), it.max_y())])
    };
    let outline = rect(panel);
    let panels = Brush::new(Layer::Panels, Ink::Plain);
    panels.rect(&mut list, outline, Pen::Outline);
    // The datums: where the panel above and the front or the side's inner face are.
    let fitting = Brush::new(Layer::Fitting, Ink::Fitting);
    for (from, to) in [
        (at(panel.min_x(), 0.0), at(panel.max_x(), 0.0)),
        (at(0.0, panel.min_y()), at(0.0, panel.max_y())),
    ] {
        panels.line(&mut list, from, to, Pen::Hidden);
    }
    if let Some(body) = &ground.body {
        fitting.rect(&mut list, rect(body), Pen::Phantom);
    }
    let bores = Brush::new(Layer::Bores, Ink::Bore);
    for spot in spots {
        let centre = at(spot.x, spot.down);
        let radius = (0.5 * spot.drill.diameter * ratio).max(0.5);
        bores.circle(&mut list, centre, radius, Pen::Outline);
        bores.cross(&mut list, centre, radius + 1.0, Pen::Centre);
    }
    dimensions(&mut list, spots, outline, unit, &at);
    let notes = Brush::new(Layer::Notes, Ink::Plain);
    let mut words = Block::new(TEXT);
    words.add(
        &format!("{title}, {}", scale.words()),
        Weight::Bold,
        whole[0] - 4.0,
    );
    for line in drill_lines(spots, unit) {
        words.add(&line, Weight::Plain, whole[0] - 4.0);
    }
    let left = outline.min_x() - DIMENSIONS + 4.0;
    words.draw(&mut list, notes, At::new(left, outline.min_y() - 4.0));
    list
}

/// Running dimensions from the datums: down at the left, across above.
fn dimensions(
    list: &mut DisplayList,
    spots: &[Spot<'_>],
    outline: Rect<f64>,
    unit: Unit,
    at: &dyn Fn(f64, f64) -> At,
) {
    let brush = Brush::new(Layer::Dimensions, Ink::Plain);
    let light = brush.ink(Ink::Soft);
    let zero = at(0.0, 0.0);
    let mut downs: Vec<Stop> = Vec::new();
    let mut acrosses: Vec<Stop> = Vec::new();
    for spot in spots {
        let place = at(spot.x, spot.down);
        let stop = |at: f64, reach: f64, length: f64| Stop {
            at,
            reach,
            figure: figure(length, unit),
            bold: false,
        };
        merge(&mut downs, stop(place.y, place.x, spot.down), |a, b| {
            a.max(b)
        });
        merge(&mut acrosses, stop(place.x, place.y, spot.x), |a, b| {
            a.min(b)
        });
    }
    let upright = Running {
        axis: Axis::Upright,
        zero: zero.y,
        from_zero: true,
        outline: outline.min_x(),
        line_at: outline.min_x() - 5.0,
        figures_at: outline.min_x() - 9.0,
        limits: [outline.min_y(), outline.max_y() + 4.0],
        stops: downs,
    };
    let level = Running {
        axis: Axis::Level,
        zero: zero.x,
        from_zero: true,
        outline: outline.max_y(),
        line_at: outline.max_y() + 5.0,
        figures_at: outline.max_y() + 9.0,
        limits: [outline.min_x(), outline.max_x()],
        stops: acrosses,
    };
    for row in [upright, level] {
        // Where they do not fit, the places are in the list below the picture's sheets only.
        let drawn = row.stops.is_empty() || running(list, brush, light, &row);
        if !drawn {
            let note = "too many bores for dimensions here";
            let place = At::new(outline.min_x(), outline.max_y() + 2.0);
            brush.text(list, place, note, Lettering::new(TEXT));
        }
    }
}

/// One stop for all bores at the same distance, led to the farthest of them.
fn merge(stops: &mut Vec<Stop>, stop: Stop, farther: fn(f64, f64) -> f64) {
    match stops.iter_mut().find(|it| (it.at - stop.at).abs() < 1e-6) {
        Some(same) => same.reach = farther(same.reach, stop.reach),
        None => stops.push(stop),
    }
}

/// What is drilled, alike bores counted: `3 × Ø5, 12.5 deep, stay screw`.
fn drill_lines(spots: &[Spot<'_>], unit: Unit) -> Vec<String> {
    let mut lines: Vec<(String, usize)> = Vec::new();
    for spot in spots {
        let depth = match spot.drill.depth {
            Depth::Blind(depth) => format!("{} deep", measure::length(depth, unit)),
            Depth::Through => "through".to_owned(),
        };
        let line = format!(
            "Ø{}, {depth}, {}",
            measure::length(spot.drill.diameter, unit),
            spot.drill.purpose
        );
        match lines.iter_mut().find(|it| it.0 == line) {
            Some(same) => same.1 += 1,
            None => lines.push((line, 1)),
        }
    }
    lines
        .into_iter()
        .map(|(line, count)| format!("{count} × {line}"))
        .collect()
}

/// The section with the door half open; the y below it.
fn half_open(list: &mut DisplayList, report: &BoxReport, unit: Unit, y: f64) -> f64 {
    let options = |scale| ViewOptions {
        scale,
        s: 0.5,
        unit,
        show_dimensions: false,
        ..ViewOptions::default()
    };
    let full = section(report, &options(1.0));
    let Some(bounds) = full.bounds() else {
        return y;
    };
    let Some(scale) = largest_that_fits([bounds.width(), bounds.height()], SECTION, Scale::FULL)
    else {
        return y;
    };
    let view = section(report, &options(scale.ratio()));
    let depth = height(&view);
    place(list, &view, 10.0, y - depth);
    let how = Lettering::new(TEXT).bold();
    let notes = Brush::new(Layer::Notes, Ink::Plain);
    let title = format!("half open on a plain box, {}", scale.words());
    notes.text(list, At::new(WIDTH * 0.5 + 12.0, y - TEXT), title, how);
    y - depth - 6.0
}

/// The sizes as a table under `y`; how deep everything is from 0 down, mm.
fn sizes(list: &mut DisplayList, card: &Card, unit: Unit, y: f64) -> f64 {
    let brush = Brush::new(Layer::Sheet, Ink::Plain);
    let columns = [0.0, 34.0, 92.0, 132.0, WIDTH];
    let titles = ["size", "carries", "door height", "door width"];
    let pitch = 4.6;
    let mut rows: Vec<[String; 4]> = vec![titles.map(str::to_owned)];
    rows.extend(
        card.sizes
            .iter()
            .take(MOST_ROWS)
            .map(|size| row(size, unit)),
    );
    let mut at = y;
    for (number, cells) in rows.iter().enumerate() {
        let weight = if number == 0 {
            Weight::Bold
        } else {
            Weight::Plain
        };
        for (cell, pair) in cells.iter().zip(columns.windows(2)) {
            let [left, right] = pair else { continue };
            let (text, tall) = fitted(cell, &[TEXT, 1.8], weight, right - left - 2.0);
            let how = Lettering {
                weight,
                ..Lettering::new(tall)
            };
            brush.text(list, At::new(left + 1.0, at - pitch + 1.2), text, how);
        }
        at -= pitch;
        brush.line(list, At::new(0.0, at), At::new(WIDTH, at), Pen::Thin);
    }
    let table = Rect::from_points([At::new(0.0, at), At::new(WIDTH, y)]);
    brush.outline(list, corners(table), Pen::Outline);
    if card.sizes.len() > MOST_ROWS {
        let more = format!("and {} more", card.sizes.len() - MOST_ROWS);
        brush.text(list, At::new(1.0, at - 3.6), more, Lettering::new(TEXT));
        at -= 4.6;
    }
    -at
}

fn row(size: &Size, unit: Unit) -> [String; 4] {
    let span =
        |min: f64, max: f64| format!("{} to {}", figure(min, unit), measure::length(max, unit));
    let load = |measure: Measure, min, max| {
        format!(
            "{} to {}",
            measure.digits(min, unit),
            measure.text(max, unit)
        )
    };
    let carries = match &size.carries {
        Carries::Mass { min, max } => load(Measure::Mass, *min, *max),
        Carries::Moment {
            min,
            max,
            at_degrees,
        } => format!("{} at {at_degrees}°", load(Measure::Moment, *min, *max)),
        Carries::MassByDoorHeight(rows) | Carries::MassByBoxHeight(rows) => {
            let least = rows.iter().map(|row| row.min).fold(f64::INFINITY, f64::min);
            let most = rows.iter().map(|row| row.max).fold(0.0, f64::max);
            format!("{} by height", load(Measure::Mass, least, most))
        }
    };
    [
        size.name.clone(),
        carries,
        span(size.door_height.min, size.door_height.max),
        span(size.door_width.min, size.door_width.max),
    ]
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::list::Shape;
    use flapwright_model::file::read_card;

    const DEMO: [&str; 5] = [
        include_str!("../../../assets/demo/cards/wren.ron"),
        include_str!("../../../assets/demo/cards/dipper.ron"),
        include_str!("../../../assets/demo/cards/heron.ron"),
        include_str!("../../../assets/demo/cards/swift.ron"),
        include_str!("../../../assets/demo/cards/owl.ron"),
    ];

    fn texts(list: &DisplayList) -> Vec<String> {
        list.items
            .iter()
            .filter_map(|item| match &item.shape {
                Shape::Text { text, .. } => Some(text.clone()),
                _ => None,
            })
            .collect()
    }

    #[test]
    fn the_distances_of_the_card_stand_on_its_picture() {
        let card = read_card(DEMO[0]).unwrap();
        // As the card's file has them for size 2: side bores 71 and 118 down, 67, 115, 163 back;
        // door bores 21 in, 112 and 153 down.
        let said = texts(&card_picture(&card, "2", Unit::Millimetre));
        for figure in ["71", "118", "67", "115", "163", "21", "112", "153"] {
            assert!(
                said.iter().any(|it| it == figure),
                "{figure} not in {said:?}"
            );
        }
        assert!(
            said.iter().any(|it| it.contains("3 × Ø5 mm, 12.5 mm deep")),
            "{said:?}"
        );
        assert!(
            said.iter()
                .any(|it| it.contains("Invented for demonstration"))
        );
    }

    #[test]
    fn every_size_of_the_shipped_cards_has_a_picture_on_one_page_without_texts_on_each_other() {
        for text in DEMO {
            let card = read_card(text).unwrap();
            for size in &card.sizes {
                for unit in [Unit::Millimetre, Unit::Inch] {
                    let sheet = card_sheet(&card, &size.name, unit);
                    let bounds = sheet.list.bounds().unwrap();
                    assert!(
                        bounds.min_y() > 5.0 && bounds.min_x() > 3.0,
                        "{} {}: {bounds:?}",
                        card.name,
                        size.name
                    );
                    assert!(
                        bounds.max_x() < Paper::A4.width - 3.0,
                        "{}: {bounds:?}",
                        card.name
                    );
                    assert_eq!(
                        crate::overlap::overlapping_texts(&sheet.list),
                        Vec::<(String, String)>::new(),
                        "{} {}",
                        card.name,
                        size.name
                    );
                }
            }
        }
    }
}
