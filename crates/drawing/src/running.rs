//! Running dimensions: all distances along one edge from one zero, their figures kept apart.

use crate::brush::{Brush, Lettering};
use crate::dimension::{ARROW, Axis, FIGURE, GAP, OVERSHOOT, SMALL_FIGURE, arrow, oblique};
use crate::layout::spread;
use crate::list::{Across, Along, DisplayList};
use crate::pen::Pen;

/// Running dimensions along one edge, all from one zero. Coordinates in list mm.
#[derive(Debug, Clone, PartialEq)]
pub struct Running {
    /// Direction.
    pub axis: Axis,
    /// The zero, along the axis.
    pub zero: f64,
    /// Whether distances begin at `zero`; else it is a break and has no ring.
    pub from_zero: bool,
    /// The outline that extension lines start from, across the axis.
    pub outline: f64,
    /// Where the dimension line lies, across the axis.
    pub line_at: f64,
    /// Where the figures begin, across the axis: farther out than the line.
    pub figures_at: f64,
    /// Lowest and highest place of a figure's middle along the axis.
    pub limits: [f64; 2],
    /// The measured places.
    pub stops: Vec<Stop>,
}

/// One place of a running dimension.
#[derive(Debug, Clone, PartialEq)]
pub struct Stop {
    /// Along the axis, list mm.
    pub at: f64,
    /// The feature that is measured, across the axis; a light line leads from the outline to it.
    pub reach: f64,
    /// The figure: the distance from zero.
    pub figure: String,
    /// Whether the figure is set in bold: the panel's own end.
    pub bold: bool,
}

/// Height of figures at which `count` of them fit side by side into `room` mm, if any.
#[must_use]
pub fn running_height(count: usize, room: f64) -> Option<f64> {
    let needed = |height: f64| pitch(height) * count.saturating_sub(1) as f64;
    [FIGURE, SMALL_FIGURE]
        .into_iter()
        .find(|height| needed(*height) <= room)
}

/// The room that `count` figures take side by side at full height, mm from the first middle to the
/// last.
#[must_use]
pub fn figures_room(count: usize) -> f64 {
    pitch(FIGURE) * count.saturating_sub(1) as f64
}

/// Middle to middle of figures set side by side: descender and a little air included.
fn pitch(height: f64) -> f64 {
    1.34 * height + 0.4
}

/// Draws running dimensions. `false` when the figures do not fit within the limits: then nothing
/// is drawn, and the caller leaves some to the hole table.
#[must_use]
pub fn running(list: &mut DisplayList, brush: Brush, light: Brush, running: &Running) -> bool {
    let [low, high] = running.limits;
    let Some(height) = running_height(running.stops.len(), high - low) else {
        return false;
    };
    let mut stops: Vec<&Stop> = running.stops.iter().collect();
    stops.sort_by(|a, b| a.at.total_cmp(&b.at));
    let wanted: Vec<f64> = stops.iter().map(|stop| stop.at).collect();
    let Some(places) = spread(&wanted, pitch(height), low, high) else {
        return false;
    };
    let out = if running.figures_at >= running.outline {
        1.0
    } else {
        -1.0
    };
    base_line(list, brush, running, &wanted);
    for (stop, place) in stops.into_iter().zip(places) {
        running_stop(list, brush, light, running, stop, place, height, out);
    }
    true
}

fn base_line(list: &mut DisplayList, brush: Brush, running: &Running, wanted: &[f64]) {
    let zero = running.axis.point(running.zero, running.line_at);
    let ends = [wanted.first(), wanted.last()];
    for end in ends.into_iter().flatten() {
        brush.line(
            list,
            zero,
            running.axis.point(*end, running.line_at),
            Pen::Thin,
        );
    }
    if running.from_zero {
        brush.circle(list, zero, 0.9, Pen::Thin);
    }
    let mut by_distance: Vec<f64> = wanted.to_vec();
    by_distance.sort_by(|a, b| {
        (a - running.zero)
            .abs()
            .total_cmp(&(b - running.zero).abs())
    });
    let mut last = running.zero;
    for at in by_distance {
        let tip = running.axis.point(at, running.line_at);
        if (at - last).abs() >= ARROW + 0.5 {
            arrow(list, brush, tip, zero);
        } else if at != running.zero {
            oblique(list, brush, tip);
        }
        last = at;
    }
}

#[expect(clippy::too_many_arguments, reason = "one stroke of work of `running`")]
fn running_stop(
    list: &mut DisplayList,
    brush: Brush,
    light: Brush,
    running: &Running,
    stop: &Stop,
    place: f64,
    height: f64,
    out: f64,
) {
    let point = |along, across| running.axis.point(along, across);
    let outline = running.outline;
    if (stop.reach - outline).abs() > 1e-9 {
        light.line(
            list,
            point(stop.at, outline),
            point(stop.at, stop.reach),
            Pen::Thin,
        );
    }
    let line_end = running.line_at + out * OVERSHOOT;
    let knee = running.figures_at - out * 1.2;
    brush.line(
        list,
        point(stop.at, outline + out * GAP),
        point(stop.at, line_end),
        Pen::Thin,
    );
    brush.line(
        list,
        point(stop.at, line_end),
        point(place, knee),
        Pen::Thin,
    );
    brush.line(
        list,
        point(place, knee),
        point(place, running.figures_at - out * 0.4),
        Pen::Thin,
    );
    let along = if out > 0.0 { Along::Start } else { Along::End };
    let mut how = Lettering::new(height).held(along, Across::Middle);
    if stop.bold {
        how = how.bold();
    }
    if running.axis == Axis::Level {
        how = how.up();
    }
    brush.text(
        list,
        point(place, running.figures_at),
        stop.figure.clone(),
        how,
    );
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::list::Shape;
    use crate::pen::{Ink, Layer};

    const BRUSH: Brush = Brush::new(Layer::Dimensions, Ink::Plain);

    fn figures(list: &DisplayList) -> usize {
        list.items
            .iter()
            .filter(|item| matches!(item.shape, Shape::Text { .. }))
            .count()
    }

    fn stop(at: f64) -> Stop {
        Stop {
            at,
            reach: 0.0,
            figure: format!("{at:.1}"),
            bold: false,
        }
    }

    #[test]
    fn running_figures_of_bores_close_together_do_not_overlap() {
        let mut list = DisplayList::new();
        let row = Running {
            axis: Axis::Upright,
            zero: 100.0,
            from_zero: true,
            outline: 0.0,
            line_at: -6.0,
            figures_at: -12.0,
            limits: [0.0, 100.0],
            stops: [95.0, 94.5, 94.0, 50.0, 0.0].map(stop).to_vec(),
        };
        assert!(running(&mut list, BRUSH, BRUSH, &row));
        assert_eq!(figures(&list), 5);
        assert_eq!(
            crate::overlap::overlapping_texts(&list),
            Vec::<(String, String)>::new()
        );
    }

    #[test]
    fn too_many_running_figures_are_refused_whole() {
        let mut list = DisplayList::new();
        let row = Running {
            axis: Axis::Level,
            zero: 0.0,
            from_zero: true,
            outline: 0.0,
            line_at: 6.0,
            figures_at: 12.0,
            limits: [0.0, 20.0],
            stops: (0..40).map(|i| stop(f64::from(i) * 0.5)).collect(),
        };
        assert!(!running(&mut list, BRUSH, BRUSH, &row));
        assert!(list.items.is_empty());
    }
}
