//! The display list painted in its order onto pixels.

use flapwright_drawing::list::{At, Item, Shape, Turn, Weight};
use flapwright_drawing::pen::Pen;
use flapwright_drawing::sheet::Sheet;
use flapwright_drawing::text;
use tiny_skia::{
    FillRule, LineCap, LineJoin, Paint, PathBuilder, Pixmap, Stroke, StrokeDash, Transform,
};

use crate::colour::{Rgb, ink_colour};
use crate::lettering::Typefaces;
use crate::outline::{Frame, MITER_LIMIT, Pencil, Place, length};

/// Paints all items of a checked sheet at `dpi`, with row `top` of the page in the first row of
/// the pixels.
pub(super) fn paint(pixmap: &mut Pixmap, sheet: &Sheet, typefaces: &Typefaces, dpi: u32, top: u32) {
    let scale = (f64::from(dpi) / 25.4) as f32;
    let mut page = Page {
        pixmap,
        typefaces,
        frame: Frame::new(sheet.paper.height),
        to_pixels: Transform::from_scale(scale, scale).post_translate(0.0, -(top as f32)),
    };
    for item in &sheet.list.items {
        page.item(item);
    }
}

struct Page<'a> {
    pixmap: &'a mut Pixmap,
    typefaces: &'a Typefaces,
    frame: Frame,
    /// From the frame of paths, mm, to pixels.
    to_pixels: Transform,
}

impl Page<'_> {
    fn item(&mut self, item: &Item) {
        let frame = self.frame;
        let paint = paint_of(ink_colour(item.ink));
        let mut pencil = PathBuilder::new();
        match &item.shape {
            Shape::Line { from, to, pen } => {
                frame.polyline(&mut pencil, &[*from, *to], false);
                self.draw(pencil, &paint, false, Some(*pen));
            }
            Shape::Polyline {
                points,
                closed,
                pen,
            } => {
                frame.polyline(&mut pencil, points, *closed);
                self.draw(pencil, &paint, false, Some(*pen));
            }
            Shape::Area { points } => {
                frame.polyline(&mut pencil, points, true);
                self.draw(pencil, &paint, true, None);
            }
            Shape::Circle {
                centre,
                radius,
                pen,
                filled,
            } => {
                frame.circle(&mut pencil, *centre, *radius);
                self.draw(pencil, &paint, *filled, Some(*pen));
            }
            Shape::Arc {
                centre,
                radius,
                from,
                sweep,
                pen,
            } => {
                frame.arc(&mut pencil, *centre, *radius, *from, *sweep);
                self.draw(pencil, &paint, false, Some(*pen));
            }
            Shape::Text {
                at,
                text,
                height,
                anchor,
                turn,
                weight,
            } => {
                let origin = text::baseline_origin(*at, text, *height, *anchor, *turn, *weight);
                self.letters(&mut pencil, origin, text, *height, *turn, *weight);
                self.draw(pencil, &paint, true, None);
            }
        }
    }

    /// Traces the outlines of a text's glyphs.
    fn letters(
        &self,
        pencil: &mut PathBuilder,
        origin: At,
        text: &str,
        height: f64,
        turn: Turn,
        weight: Weight,
    ) {
        let size = f64::from(length(text::em_size(height)));
        let (left, base) = self.frame.place(origin);
        let (left, base) = (f64::from(left), f64::from(base));
        let place = |along: f64, up: f64| {
            let (along, up) = (size * along, size * up);
            let (x, y) = match turn {
                Turn::Level => (left + along, base - up),
                Turn::Up => (left - up, base - along),
            };
            (x as f32, y as f32)
        };
        self.typefaces
            .of(weight)
            .trace(pencil, &text::printable(text), place);
    }

    /// Fills and strokes a path, in this order.
    fn draw(&mut self, pencil: PathBuilder, paint: &Paint<'_>, filled: bool, pen: Option<Pen>) {
        let Some(path) = pencil.finish() else {
            return;
        };
        let at = self.to_pixels;
        if filled {
            self.pixmap
                .fill_path(&path, paint, FillRule::Winding, at, None);
        }
        if let Some(pen) = pen {
            self.pixmap
                .stroke_path(&path, paint, &stroke(pen), at, None);
        }
    }
}

fn paint_of(ink: Rgb) -> Paint<'static> {
    let mut paint = Paint::default();
    paint.set_color_rgba8(ink.red, ink.green, ink.blue, u8::MAX);
    paint
}

fn stroke(pen: Pen) -> Stroke {
    let dashes: Vec<f32> = pen.dashes().iter().map(|mm| *mm as f32).collect();
    Stroke {
        width: pen.width() as f32,
        miter_limit: MITER_LIMIT,
        line_cap: LineCap::Butt,
        line_join: LineJoin::Miter,
        // A pen without dashes draws through.
        dash: StrokeDash::new(dashes, 0.0),
    }
}

impl Pencil for PathBuilder {
    fn move_to(&mut self, (x, y): Place) {
        Self::move_to(self, x, y);
    }

    fn line_to(&mut self, (x, y): Place) {
        Self::line_to(self, x, y);
    }

    fn bend_to(&mut self, (x1, y1): Place, (x, y): Place) {
        self.quad_to(x1, y1, x, y);
    }

    fn curve_to(&mut self, (x1, y1): Place, (x2, y2): Place, (x, y): Place) {
        self.cubic_to(x1, y1, x2, y2, x, y);
    }

    fn close(&mut self) {
        Self::close(self);
    }
}
