//! One page of a PDF: the display list painted in its order.

use flapwright_drawing::list::{At, Item, Shape, Turn, Weight};
use flapwright_drawing::pen::Pen;
use flapwright_drawing::sheet::Sheet;
use flapwright_drawing::text;
use krilla::color::{luma, rgb};
use krilla::geom::{Path, PathBuilder, Point, Transform};
use krilla::num::NormalizedF32;
use krilla::paint::{Fill, FillRule, LineCap, LineJoin, Paint, Stroke, StrokeDash};
use krilla::surface::Surface;
use krilla::text::{Font, GlyphId, KrillaGlyph};

use crate::colour::{Rgb, ink_colour};
use crate::error::ExportError;
use crate::lettering::{Glyph, Typefaces};
use crate::outline::{Frame, MITER_LIMIT, Pencil, Place, length};
use crate::pdf::POINTS_PER_MM;

/// The embedded font as one file holds it: the library embeds a font once for each time that it
/// was opened.
pub(super) struct Fonts {
    plain: Font,
    bold: Font,
    typefaces: &'static Typefaces,
}

impl Fonts {
    /// Opens both weights.
    pub(super) fn open() -> Result<Self, ExportError> {
        let open = |weight| Font::new(text::font(weight).into(), 0);
        let fonts = || {
            Some(Self {
                plain: open(Weight::Plain)?,
                bold: open(Weight::Bold)?,
                typefaces: Typefaces::open()?,
            })
        };
        fonts().ok_or_else(|| ExportError::Pdf {
            cause: "the embedded font cannot be read".to_owned(),
        })
    }

    const fn of(&self, weight: Weight) -> &Font {
        match weight {
            Weight::Plain => &self.plain,
            Weight::Bold => &self.bold,
        }
    }
}

/// Paints all items of a checked sheet.
pub(super) fn paint(surface: &mut Surface<'_>, sheet: &Sheet, fonts: &Fonts) {
    // All numbers of the page are millimetres: they are short, and the same as in the SVG.
    let scale = POINTS_PER_MM as f32;
    surface.push_transform(&Transform::from_scale(scale, scale));
    let mut page = Page {
        surface,
        frame: Frame::new(sheet.paper.height),
        fonts,
    };
    for item in &sheet.list.items {
        page.item(item);
    }
    surface.pop();
}

struct Page<'a, 'b> {
    surface: &'a mut Surface<'b>,
    frame: Frame,
    fonts: &'a Fonts,
}

impl Page<'_, '_> {
    fn item(&mut self, item: &Item) {
        let frame = self.frame;
        let ink = colour(ink_colour(item.ink));
        match &item.shape {
            Shape::Line { from, to, pen } => {
                let path = traced(|pencil| frame.polyline(pencil, &[*from, *to], false));
                self.draw(path, None, Some(stroke(*pen, ink)));
            }
            Shape::Polyline {
                points,
                closed,
                pen,
            } => {
                let path = traced(|pencil| frame.polyline(pencil, points, *closed));
                self.draw(path, None, Some(stroke(*pen, ink)));
            }
            Shape::Area { points } => {
                let path = traced(|pencil| frame.polyline(pencil, points, true));
                self.draw(path, Some(fill(ink)), None);
            }
            Shape::Circle {
                centre,
                radius,
                pen,
                filled,
            } => {
                let path = traced(|pencil| frame.circle(pencil, *centre, *radius));
                let inside = filled.then(|| fill(ink.clone()));
                self.draw(path, inside, Some(stroke(*pen, ink)));
            }
            Shape::Arc {
                centre,
                radius,
                from,
                sweep,
                pen,
            } => {
                let path = traced(|pencil| frame.arc(pencil, *centre, *radius, *from, *sweep));
                self.draw(path, None, Some(stroke(*pen, ink)));
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
                self.surface.set_fill(Some(fill(ink)));
                self.surface.set_stroke(None);
                self.text(origin, text, *height, *turn, *weight);
            }
        }
    }

    fn draw(&mut self, path: Option<Path>, inside: Option<Fill>, outline: Option<Stroke>) {
        if let Some(path) = path {
            self.surface.set_fill(inside);
            self.surface.set_stroke(outline);
            self.surface.draw_path(&path);
        }
    }

    /// One run of glyphs, which carries its text.
    fn text(&mut self, origin: At, text: &str, height: f64, turn: Turn, weight: Weight) {
        let shown = text::printable(text);
        let face = self.fonts.typefaces.of(weight);
        let units = face.units() as f32;
        let glyph = |glyph: Glyph| {
            let advance = f32::from(glyph.advance) / units;
            let id = GlyphId::new(u32::from(glyph.id));
            KrillaGlyph::new(id, advance, 0.0, 0.0, 0.0, glyph.of, None)
        };
        let glyphs: Vec<KrillaGlyph> = face.glyphs(&shown).into_iter().map(glyph).collect();
        let size = length(text::em_size(height));
        let (x, y) = self.frame.place(origin);
        let start = match turn {
            Turn::Level => Point::from_xy(x, y),
            Turn::Up => Point::from_xy(0.0, 0.0),
        };
        if turn == Turn::Up {
            // A quarter turn counter-clockwise about the origin.
            let turned = Transform::from_row(0.0, -1.0, 1.0, 0.0, x, y);
            self.surface.push_transform(&turned);
        }
        let font = self.fonts.of(weight).clone();
        self.surface
            .draw_glyphs(start, &glyphs, font, &shown, size, false);
        if turn == Turn::Up {
            self.surface.pop();
        }
    }
}

/// Greys as shades of grey, so that a printer mixes no black from its colours.
fn colour(ink: Rgb) -> Paint {
    if ink.is_grey() {
        luma::Color::new(ink.red).into()
    } else {
        rgb::Color::new(ink.red, ink.green, ink.blue).into()
    }
}

fn fill(paint: Paint) -> Fill {
    Fill {
        paint,
        opacity: NormalizedF32::ONE,
        rule: FillRule::NonZero,
    }
}

fn stroke(pen: Pen, paint: Paint) -> Stroke {
    let dashes: Vec<f32> = pen.dashes().iter().map(|mm| *mm as f32).collect();
    Stroke {
        paint,
        width: pen.width() as f32,
        miter_limit: MITER_LIMIT,
        line_cap: LineCap::Butt,
        line_join: LineJoin::Miter,
        opacity: NormalizedF32::ONE,
        dash: (!dashes.is_empty()).then_some(StrokeDash {
            array: dashes,
            offset: 0.0,
        }),
    }
}

/// The path that is drawn; `None` for one without an extent.
fn traced(draw: impl FnOnce(&mut PathBuilder)) -> Option<Path> {
    let mut builder = PathBuilder::new();
    draw(&mut builder);
    builder.finish()
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
