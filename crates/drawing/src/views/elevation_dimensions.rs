//! Main dimensions of the front view.

use flapwright_model::length::show_length;
use flapwright_rules::inspection::{BoxReport, DoorReport, OpeningReport};

use super::{ViewOptions, leaves_of};
use crate::brush::Brush;
use crate::dimension::{Axis, Chain, Stretch, chain};
use crate::list::DisplayList;
use crate::pen::{Ink, Layer};

/// Distance of the first dimension line from the outline and of each further one, paper mm.
const STEP: f64 = 9.0;

/// Overall size, then along the top and the right-hand side how the doors lie: first over the
/// opening (overlay), then within the box (reveal).
pub(super) fn dimensions(list: &mut DisplayList, report: &BoxReport, options: &ViewOptions) {
    let brush = Brush::new(Layer::Dimensions, Ink::Plain);
    let scale = options.scale;
    let show = |length: f64| show_length(length, options.unit);
    let [width, height, _] = report.outer;
    let row = |axis, line_at, from, stretches: Vec<(f64, f64, String)>| Chain {
        axis,
        line_at,
        from,
        stretches: stretches
            .into_iter()
            .map(|(a, b, figure)| Stretch::new(a * scale, b * scale, figure))
            .collect(),
    };
    let below = row(Axis::Level, -STEP, 0.0, vec![(0.0, width, show(width))]);
    let left = row(Axis::Upright, -STEP, 0.0, vec![(0.0, height, show(height))]);
    chain(list, brush, &below);
    chain(list, brush, &left);
    let doors: Vec<(usize, &OpeningReport, &DoorReport)> = report
        .openings
        .iter()
        .enumerate()
        .filter_map(|(i, opening)| opening.door.as_ref().map(|door| (i, opening, door)))
        .collect();
    let Some((_, opening, door)) = doors.first() else {
        return;
    };
    let top = height * scale;
    let across = [
        row(Axis::Level, top + STEP, top, overlays_across(opening, door, &show)),
        row(Axis::Level, top + 2.2 * STEP, top, reveals_across(width, door, &show)),
    ];
    let side = width * scale;
    let mut lapped = Vec::new();
    for (_, opening, door) in &doors {
        lapped.extend(overlays_upright(opening, door, &show));
    }
    let upright = [
        row(Axis::Upright, side + STEP, side, lapped),
        row(Axis::Upright, side + 2.2 * STEP, side, reveals_upright(report, &doors, &show)),
    ];
    for row in across.iter().chain(&upright) {
        chain(list, brush, row);
    }
}

type Row = Vec<(f64, f64, String)>;

fn lap(overlay: f64, show: &impl Fn(f64) -> String) -> String {
    if overlay < 0.0 {
        format!("gap {}", show(-overlay))
    } else {
        format!("overlay {}", show(overlay))
    }
}

fn overlays_across(opening: &OpeningReport, door: &DoorReport, show: &impl Fn(f64) -> String) -> Row {
    let (inner, edges) = (opening.door_opening, door.edges);
    vec![
        (edges.left, inner.left, lap(inner.left - edges.left, show)),
        (inner.left, inner.right, show(inner.right - inner.left)),
        (inner.right, edges.right, lap(edges.right - inner.right, show)),
    ]
}

fn overlays_upright(
    opening: &OpeningReport,
    door: &DoorReport,
    show: &impl Fn(f64) -> String,
) -> Row {
    let (inner, edges) = (opening.door_opening, door.edges);
    vec![
        (edges.bottom, inner.bottom, lap(inner.bottom - edges.bottom, show)),
        (inner.bottom, inner.top, show(inner.top - inner.bottom)),
        (inner.top, edges.top, lap(edges.top - inner.top, show)),
    ]
}

fn reveals_across(width: f64, door: &DoorReport, show: &impl Fn(f64) -> String) -> Row {
    let edges = door.edges;
    vec![
        (0.0, edges.left, format!("reveal {}", show(edges.left))),
        (edges.left, edges.right, show(edges.right - edges.left)),
        (edges.right, width, format!("reveal {}", show(width - edges.right))),
    ]
}

/// From the bottom up: what is left of the box, the leaves, the gaps between them.
fn reveals_upright(
    report: &BoxReport,
    doors: &[(usize, &OpeningReport, &DoorReport)],
    show: &impl Fn(f64) -> String,
) -> Row {
    let mut leaves: Vec<(f64, f64)> = doors
        .iter()
        .flat_map(|(index, ..)| leaves_of(report, *index))
        .map(|(panel, _)| (panel.solid.min.y, panel.solid.max.y))
        .collect();
    leaves.sort_by(|a, b| a.0.total_cmp(&b.0));
    let mut row = Row::new();
    let mut below: Option<f64> = None;
    for (bottom, top) in &leaves {
        let (from, word) = below.map_or((0.0, "reveal"), |below| (below, "gap"));
        row.push((from, *bottom, format!("{word} {}", show(bottom - from))));
        row.push((*bottom, *top, show(top - bottom)));
        below = Some(*top);
    }
    if let Some(top) = below {
        let height = report.outer[1];
        row.push((top, height, format!("reveal {}", show(height - top))));
    }
    row
}
