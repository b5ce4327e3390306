//! Main dimensions of the front view.

use flapwright_model::edges::{Edge, Edges};
use flapwright_rules::inspection::{BoxReport, DoorReport, OpeningReport};

use super::common::{figure, leaves_of};
use super::options::ViewOptions;
use crate::brush::Brush;
use crate::dimension::{Axis, Chain, Stretch, chain};
use crate::list::DisplayList;
use crate::pen::{Ink, Layer};

/// Distance of the first dimension line from the outline and of each further one, paper mm.
const STEP: f64 = 9.0;

/// A door with its opening.
type Placed<'a> = (&'a OpeningReport, &'a DoorReport);

/// Overall size, then along the top and the right-hand side how the doors lie: first over the
/// opening (overlay), then within the box (reveal).
pub(super) fn dimensions(list: &mut DisplayList, report: &BoxReport, options: &ViewOptions) {
    let doors: Vec<Placed<'_>> = report
        .openings
        .iter()
        .filter_map(|opening| Some((opening, opening.door.as_ref()?)))
        .collect();
    let show = |length: f64| figure(length, options.unit);
    let scale = options.scale;
    let around = extent(report).map(|_, edge| edge * scale);
    let brush = Brush::new(Layer::Dimensions, Ink::Plain);
    // From the outside in: the figures of the inner rows blank the extension lines of the outer.
    for (edge, step, stretches) in rows(report, &doors, &show) {
        let (axis, from, out) = match edge {
            Edge::Left => (Axis::Upright, around.left, -1.0),
            Edge::Right => (Axis::Upright, around.right, 1.0),
            Edge::Top => (Axis::Level, around.top, 1.0),
            Edge::Bottom => (Axis::Level, around.bottom, -1.0),
        };
        let scaled =
            |(a, b, figure): (f64, f64, String)| Stretch::new(a * scale, b * scale, figure);
        let stretches = stretches.into_iter().map(scaled).collect();
        chain(
            list,
            brush,
            &Chain {
                axis,
                line_at: from + out * step,
                from,
                stretches,
                // The rows at the right may reach above the box.
                up_to: (edge == Edge::Top).then_some(around.right + 0.8 * STEP),
            },
        );
    }
}

/// The rows with the side on which they lie and their distance from the outline, paper mm.
fn rows(
    report: &BoxReport,
    doors: &[Placed<'_>],
    show: &impl Fn(f64) -> String,
) -> Vec<(Edge, f64, Row)> {
    let [width, height, _] = report.outer;
    let mut rows = vec![
        (Edge::Bottom, STEP, vec![(0.0, width, show(width))]),
        (Edge::Left, STEP, vec![(0.0, height, show(height))]),
    ];
    if let Some((opening, door)) = doors.first() {
        let lapped = doors
            .iter()
            .flat_map(|(opening, door)| overlays_upright(opening, door, show));
        rows.extend([
            (Edge::Top, 2.2 * STEP, reveals_across(width, door, show)),
            (Edge::Top, STEP, overlays_across(opening, door, show)),
            (
                Edge::Right,
                2.9 * STEP,
                reveals_upright(report, doors, show),
            ),
            (Edge::Right, STEP, lapped.collect()),
        ]);
    }
    rows
}

/// Box and doors together, workshop mm: a door may stand past the box.
fn extent(report: &BoxReport) -> Edges<f64> {
    let [right, top, _] = report.outer;
    report.doors().fold(
        Edges {
            left: 0.0,
            right,
            top,
            bottom: 0.0,
        },
        |all, door| Edges {
            left: all.left.min(door.edges.left),
            right: all.right.max(door.edges.right),
            top: all.top.max(door.edges.top),
            bottom: all.bottom.min(door.edges.bottom),
        },
    )
}

type Row = Vec<(f64, f64, String)>;

fn lap(overlay: f64, show: &impl Fn(f64) -> String) -> String {
    if overlay < 0.0 {
        format!("gap {}", show(-overlay))
    } else {
        format!("overlay {}", show(overlay))
    }
}

fn overlays_across(
    opening: &OpeningReport,
    door: &DoorReport,
    show: &impl Fn(f64) -> String,
) -> Row {
    let (inner, edges) = (opening.door_opening, door.edges);
    vec![
        (edges.left, inner.left, lap(inner.left - edges.left, show)),
        (inner.left, inner.right, show(inner.right - inner.left)),
        (
            inner.right,
            edges.right,
            lap(edges.right - inner.right, show),
        ),
    ]
}

fn overlays_upright(
    opening: &OpeningReport,
    door: &DoorReport,
    show: &impl Fn(f64) -> String,
) -> Row {
    let (inner, edges) = (opening.door_opening, door.edges);
    vec![
        (
            edges.bottom,
            inner.bottom,
            lap(inner.bottom - edges.bottom, show),
        ),
        (inner.bottom, inner.top, show(inner.top - inner.bottom)),
        (inner.top, edges.top, lap(edges.top - inner.top, show)),
    ]
}

fn reveals_across(width: f64, door: &DoorReport, show: &impl Fn(f64) -> String) -> Row {
    let edges = door.edges;
    vec![
        (0.0, edges.left, format!("reveal {}", show(edges.left))),
        (edges.left, edges.right, show(edges.right - edges.left)),
        (
            edges.right,
            width,
            format!("reveal {}", show(width - edges.right)),
        ),
    ]
}

/// From the bottom up: what is left of the box, the leaves, the gaps between them.
fn reveals_upright(report: &BoxReport, doors: &[Placed<'_>], show: &impl Fn(f64) -> String) -> Row {
    let mut leaves: Vec<(f64, f64)> = doors
        .iter()
        .flat_map(|(_, door)| leaves_of(report, door.id))
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
