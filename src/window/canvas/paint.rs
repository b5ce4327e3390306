//! The display list on the screen: one arm for each shape, none of them a catch-all.

use std::f32::consts::FRAC_PI_2;

use egui::epaint::{CircleShape, Mesh, PathShape, TextShape};
use egui::{Color32, Painter, Pos2, Shape as Screen, Stroke, Vec2};
use flapwright_drawing::list::{At, DisplayList, Shape, Turn};
use flapwright_drawing::pen::Pen;
use flapwright_drawing::text;

use super::camera::ToScreen;
use super::polygon;
use crate::window::tokens::{Tokens, sheet_font};

/// Paints a list from its first item to its last.
pub(crate) fn paint(painter: &Painter, list: &DisplayList, to: ToScreen, tokens: &Tokens) {
    for item in &list.items {
        shape(painter, &item.shape, to, tokens.ink(item.ink));
    }
}

fn shape(painter: &Painter, shape: &Shape, to: ToScreen, ink: Color32) {
    match shape {
        Shape::Line { from, to: end, pen } => {
            stroke(
                painter,
                vec![to.point(*from), to.point(*end)],
                *pen,
                to,
                ink,
            );
        }
        Shape::Polyline {
            points,
            closed,
            pen,
        } => {
            let mut run = on_screen(points, to);
            if *closed && let Some(first) = run.first().copied() {
                run.push(first);
            }
            stroke(painter, run, *pen, to, ink);
        }
        Shape::Area { points } => fill(painter, &on_screen(points, to), ink),
        Shape::Circle {
            centre,
            radius,
            pen,
            filled,
        } => {
            let (centre, radius) = (to.point(*centre), to.length(*radius));
            if pen.dashes().is_empty() {
                let fill = if *filled { ink } else { Color32::TRANSPARENT };
                let stroke = pen_stroke(*pen, to, ink);
                painter.add(CircleShape {
                    center: centre,
                    radius,
                    fill,
                    stroke,
                });
            } else {
                if *filled {
                    painter.circle_filled(centre, radius, ink);
                }
                let run = arc(centre, radius, 0.0, std::f64::consts::TAU);
                stroke(painter, run, *pen, to, ink);
            }
        }
        Shape::Arc {
            centre,
            radius,
            from,
            sweep,
            pen,
        } => {
            let run = arc(to.point(*centre), to.length(*radius), *from, *sweep);
            stroke(painter, run, *pen, to, ink);
        }
        Shape::Text {
            at,
            text,
            height,
            anchor,
            turn,
            weight,
        } => {
            let start = to.point(text::baseline_origin(
                *at, text, *height, *anchor, *turn, *weight,
            ));
            let font = sheet_font(*weight, to.length(text::em_size(*height)));
            let galley = painter.layout_no_wrap(text::printable(text).into_owned(), font, ink);
            // From the galley's upper left corner down to its first baseline.
            let down = galley
                .rows
                .first()
                .and_then(|row| Some(row.pos.y + row.row.glyphs.first()?.pos.y))
                .unwrap_or_default();
            let (corner, angle) = match turn {
                Turn::Level => (start - Vec2::new(0.0, down), 0.0),
                Turn::Up => (start - Vec2::new(down, 0.0), -FRAC_PI_2),
            };
            let mut shape = TextShape::new(corner, galley, ink);
            shape.angle = angle;
            painter.add(shape);
        }
    }
}

fn on_screen(points: &[At], to: ToScreen) -> Vec<Pos2> {
    points.iter().map(|point| to.point(*point)).collect()
}

fn pen_stroke(pen: Pen, to: ToScreen, ink: Color32) -> Stroke {
    Stroke::new(to.length(pen.width()).max(to.length(0.2).min(0.8)), ink)
}

fn stroke(painter: &Painter, run: Vec<Pos2>, pen: Pen, to: ToScreen, ink: Color32) {
    let stroke = pen_stroke(pen, to, ink);
    let pattern = pen.dashes();
    if pattern.is_empty() {
        let closed = run.len() > 3 && run.first() == run.last();
        if closed {
            let mut run = run;
            run.pop();
            painter.add(PathShape::closed_line(run, stroke));
        } else {
            painter.add(Screen::line(run, stroke));
        }
        return;
    }
    let seen = painter.clip_rect().expand(to.length(20.0));
    if !egui::Rect::from_points(&run).intersects(seen) {
        return;
    }
    let marks: Vec<f32> = pattern.iter().step_by(2).map(|mm| to.length(*mm)).collect();
    let gaps: Vec<f32> = pattern
        .iter()
        .skip(1)
        .step_by(2)
        .map(|mm| to.length(*mm))
        .collect();
    painter.extend(Screen::dashed_line_with_offset(
        &run, stroke, &marks, &gaps, 0.0,
    ));
}

fn arc(centre: Pos2, radius: f32, from: f64, sweep: f64) -> Vec<Pos2> {
    // A chord leaves its arc by at most a quarter of a point.
    let step = (2.0 * (1.0 - 0.25 / radius.max(0.5)).clamp(-1.0, 1.0).acos()).clamp(0.02, 0.5);
    let parts = (sweep.abs() / f64::from(step)).ceil().clamp(4.0, 400.0);
    #[expect(
        clippy::cast_possible_truncation,
        clippy::cast_sign_loss,
        reason = "4 to 400"
    )]
    let count = parts as u32;
    (0..=count)
        .map(|i| {
            let angle = from + sweep * f64::from(i) / parts;
            #[expect(clippy::cast_possible_truncation, reason = "screen points")]
            let toward = Vec2::new(angle.cos() as f32, -angle.sin() as f32);
            centre + toward * radius
        })
        .collect()
}

fn fill(painter: &Painter, points: &[Pos2], ink: Color32) {
    if polygon::is_convex(points) {
        painter.add(Screen::convex_polygon(points.to_vec(), ink, Stroke::NONE));
        return;
    }
    let mut mesh = Mesh::default();
    for &point in points {
        mesh.colored_vertex(point, ink);
    }
    for [a, b, c] in polygon::triangles(points) {
        mesh.add_triangle(a, b, c);
    }
    painter.add(Screen::mesh(mesh));
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn an_arc_runs_counter_clockwise_on_the_screen_from_its_start_to_its_end() {
        let run = arc(Pos2::new(10.0, 10.0), 5.0, 0.0, std::f64::consts::FRAC_PI_2);
        let (first, last) = (run[0], run[run.len() - 1]);
        assert!((first - Pos2::new(15.0, 10.0)).length() < 1e-4, "{first:?}");
        assert!((last - Pos2::new(10.0, 5.0)).length() < 1e-4, "{last:?}");
    }
}
