//! Finds texts that lie on each other, on lines or outside the frame: what no sheet may have.

use euclid::default::{Rect, Vector2D};

use crate::hatch::is_inside;
use crate::layout::crosses;
use crate::list::{At, DisplayList, Item, Shape};
use crate::paper::Paper;
use crate::pen::{Ink, Layer};
use crate::text;

/// Chords that stand for an arc.
const ARC_STEPS: u32 = 90;
/// Texts and strokes may come as near as this, mm: rounding.
const SLACK: f64 = 0.01;

/// The pairs of texts whose boxes meet by more than a hundredth of a millimetre both ways.
pub(crate) fn overlapping_texts(list: &DisplayList) -> Vec<(String, String)> {
    let texts: Vec<(&str, Rect<f64>)> = list
        .items
        .iter()
        .filter_map(|item| Some((words(item)?, item.shape.bounds().inflate(-SLACK, -SLACK))))
        .collect();
    let mut found = Vec::new();
    for (i, (text, rect)) in texts.iter().enumerate() {
        for (other, other_rect) in &texts[i + 1..] {
            if rect.intersects(other_rect) {
                found.push(((*text).to_owned(), (*other).to_owned()));
            }
        }
    }
    found
}

/// The texts that a stroke or a filled area runs through, each with what does and where.
///
/// What was blanked out before the text was set does not count, nor does an area that a text of
/// the paper's colour stands on. Dashes count as whole strokes; a text counts with the outlines of
/// its own letters.
pub(crate) fn texts_on_lines(list: &DisplayList) -> Vec<(String, String)> {
    let mut found = Vec::new();
    for (i, item) in list.items.iter().enumerate() {
        let Some(text) = words(item) else { continue };
        let Some(ink) = ink_of(&item.shape) else {
            continue;
        };
        let rect = ink.inflate(-SLACK, -SLACK);
        let on_dark = item.ink == Ink::Paper;
        // Everything below the last blank that holds the whole text is hidden.
        let blanked = list.items[..i]
            .iter()
            .rposition(|below| is_blank(below, on_dark) && holds(below, rect))
            .map_or(0, |at| at + 1);
        let mut seen = list.items[blanked..i].iter().chain(&list.items[i + 1..]);
        if let Some(other) =
            seen.find(|other| other.ink != Ink::Paper && strikes(&other.shape, rect))
        {
            let at = rect.center();
            let what = format!("{} on {}", kind(&other.shape), other.layer.name());
            found.push((
                text.to_owned(),
                format!("{what} at {:.1}, {:.1}", at.x, at.y),
            ));
        }
    }
    found
}

/// The texts that leave the frame of their paper; what belongs around it does not count.
pub(crate) fn texts_outside_frame(list: &DisplayList, paper: Paper) -> Vec<String> {
    let frame = paper.drawing_space().inflate(SLACK, SLACK);
    list.items
        .iter()
        .filter(|item| item.layer != Layer::Border)
        .filter(|item| !frame.contains_rect(&item.shape.bounds()))
        .filter_map(|item| words(item).map(str::to_owned))
        .collect()
}

const fn kind(shape: &Shape) -> &'static str {
    match shape {
        Shape::Line { .. } => "line",
        Shape::Polyline { .. } => "outline",
        Shape::Area { .. } => "area",
        Shape::Circle { .. } => "circle",
        Shape::Arc { .. } => "arc",
        Shape::Text { .. } => "text",
    }
}

fn words(item: &Item) -> Option<&str> {
    match &item.shape {
        Shape::Text { text, .. } => Some(text),
        Shape::Line { .. }
        | Shape::Polyline { .. }
        | Shape::Area { .. }
        | Shape::Circle { .. }
        | Shape::Arc { .. } => None,
    }
}

/// The box around the letters of a text; `None` for what is no text or has no ink.
fn ink_of(shape: &Shape) -> Option<Rect<f64>> {
    let Shape::Text {
        at,
        text,
        height,
        anchor,
        turn,
        weight,
    } = shape
    else {
        return None;
    };
    text::ink_bounds(*at, text, *height, *anchor, *turn, *weight)
}

/// Whether an item hides what is below it, for texts of this kind.
fn is_blank(item: &Item, on_dark: bool) -> bool {
    let filled = matches!(
        item.shape,
        Shape::Area { .. } | Shape::Circle { filled: true, .. }
    );
    filled && (on_dark || item.ink == Ink::Paper)
}

/// Whether a filled shape holds the whole of a rectangle.
fn holds(item: &Item, rect: Rect<f64>) -> bool {
    let corners = crate::brush::corners(rect);
    match &item.shape {
        Shape::Area { points } => corners.iter().all(|corner| is_inside(points, *corner)),
        Shape::Circle { centre, radius, .. } => corners
            .iter()
            .all(|corner| (*corner - *centre).length() <= *radius),
        Shape::Line { .. } | Shape::Polyline { .. } | Shape::Arc { .. } | Shape::Text { .. } => {
            false
        }
    }
}

/// Whether a shape puts ink into a rectangle.
fn strikes(shape: &Shape, rect: Rect<f64>) -> bool {
    match shape {
        Shape::Line { from, to, pen } => {
            let half = 0.5 * pen.width();
            crosses(*from, *to, rect.inflate(half, half))
        }
        Shape::Polyline {
            points,
            closed,
            pen,
        } => {
            let half = 0.5 * pen.width();
            let wide = rect.inflate(half, half);
            let last = points.last().zip(points.first()).filter(|_| *closed);
            points
                .windows(2)
                .any(|pair| matches!(pair, [a, b] if crosses(*a, *b, wide)))
                || last.is_some_and(|(a, b)| crosses(*a, *b, wide))
        }
        Shape::Area { points } => {
            let last = points.last().zip(points.first());
            is_inside(points, rect.center())
                || points
                    .windows(2)
                    .any(|pair| matches!(pair, [a, b] if crosses(*a, *b, rect)))
                || last.is_some_and(|(a, b)| crosses(*a, *b, rect))
        }
        Shape::Circle {
            centre,
            radius,
            pen,
            filled,
        } => {
            let half = 0.5 * pen.width();
            let (near, far) = reach(*centre, rect);
            near <= radius + half && (*filled || far >= radius - half)
        }
        Shape::Arc {
            centre,
            radius,
            from,
            sweep,
            pen,
        } => {
            let half = 0.5 * pen.width();
            let wide = rect.inflate(half, half);
            let place = |step: u32| {
                let angle = from + sweep * f64::from(step) / f64::from(ARC_STEPS);
                *centre + Vector2D::new(angle.cos(), angle.sin()) * *radius
            };
            (0..ARC_STEPS).any(|step| crosses(place(step), place(step + 1), wide))
        }
        Shape::Text { .. } => false,
    }
}

/// Distances from a place to the nearest and the farthest place of a rectangle.
fn reach(from: At, rect: Rect<f64>) -> (f64, f64) {
    let near = from.clamp(rect.min(), rect.max());
    let far = crate::brush::corners(rect)
        .into_iter()
        .map(|corner| (corner - from).length())
        .fold(0.0, f64::max);
    ((near - from).length(), far)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::brush::{Brush, Lettering, corners};
    use crate::pen::Pen;

    const BRUSH: Brush = Brush::new(Layer::Notes, Ink::Plain);

    fn with_text(draw: impl Fn(&mut DisplayList)) -> Vec<(String, String)> {
        let mut list = DisplayList::new();
        draw(&mut list);
        BRUSH.text(&mut list, At::new(10.0, 10.0), "560", Lettering::new(2.5));
        texts_on_lines(&list)
    }

    #[test]
    fn a_stroke_through_a_text_is_found_and_one_beside_it_is_not() {
        let stroke = |y: f64| {
            move |list: &mut DisplayList| {
                BRUSH.line(list, At::new(0.0, y), At::new(50.0, y), Pen::Thin);
            }
        };
        assert_eq!(with_text(stroke(11.0)).len(), 1);
        assert_eq!(with_text(stroke(9.7)).len(), 0, "digits have no descender");
        assert_eq!(with_text(stroke(9.9)).len(), 1, "half the pen counts");
        assert_eq!(with_text(stroke(13.0)).len(), 0);
        let slanting = |list: &mut DisplayList| {
            BRUSH.line(list, At::new(5.0, 5.0), At::new(16.0, 16.0), Pen::Thin);
        };
        assert_eq!(with_text(slanting).len(), 1);
    }

    #[test]
    fn what_is_blanked_out_first_does_not_count() {
        let blanked = |list: &mut DisplayList| {
            BRUSH.line(list, At::new(0.0, 11.0), At::new(50.0, 11.0), Pen::Thin);
            let rect = Rect::from_points([At::new(9.0, 9.0), At::new(20.0, 14.0)]);
            BRUSH.ink(Ink::Paper).area(list, corners(rect));
        };
        assert_eq!(with_text(blanked).len(), 0);
    }

    #[test]
    fn circles_count_by_their_rim() {
        let ring = |radius: f64| {
            move |list: &mut DisplayList| {
                BRUSH.circle(list, At::new(12.0, 11.0), radius, Pen::Thin);
            }
        };
        assert_eq!(with_text(ring(30.0)).len(), 0, "the text is inside");
        assert_eq!(with_text(ring(2.0)).len(), 1);
    }

    #[test]
    fn a_text_beyond_the_frame_is_found() {
        let mut list = DisplayList::new();
        BRUSH.text(
            &mut list,
            At::new(195.0, 50.0),
            "beyond",
            Lettering::new(2.5),
        );
        assert_eq!(texts_outside_frame(&list, Paper::A4), ["beyond"]);
    }
}
