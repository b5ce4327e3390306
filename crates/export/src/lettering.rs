//! Texts as glyphs of the embedded font, for the back-ends that are given glyphs and not texts.

use std::ops::Range;
use std::sync::OnceLock;

use flapwright_drawing::list::Weight;
use flapwright_drawing::text;
use ttf_parser::{Face, GlyphId, OutlineBuilder};

use crate::outline::{Pencil, Place};

/// One weight of the embedded font.
#[derive(Debug)]
pub(crate) struct Typeface {
    face: Face<'static>,
    units: f64,
}

/// A glyph of a text, in reading order.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(crate) struct Glyph {
    /// The glyph's number in the font; 0, the empty box, for a sign that the font lacks.
    pub(crate) id: u16,
    /// How far the next glyph stands from this one, font units.
    pub(crate) advance: u16,
    /// The bytes of the text that it shows.
    pub(crate) of: Range<usize>,
}

/// Both weights of the embedded font.
#[derive(Debug)]
pub(crate) struct Typefaces {
    plain: Typeface,
    bold: Typeface,
}

impl Typefaces {
    /// The font, opened once; `None` if it could not be read, which a test of its crate rules out.
    pub(crate) fn open() -> Option<&'static Self> {
        static OPENED: OnceLock<Option<Typefaces>> = OnceLock::new();
        let open = || {
            Some(Self {
                plain: Typeface::open(Weight::Plain)?,
                bold: Typeface::open(Weight::Bold)?,
            })
        };
        OPENED.get_or_init(open).as_ref()
    }

    /// The font of this weight.
    pub(crate) const fn of(&self, weight: Weight) -> &Typeface {
        match weight {
            Weight::Plain => &self.plain,
            Weight::Bold => &self.bold,
        }
    }
}

impl Typeface {
    fn open(weight: Weight) -> Option<Self> {
        let face = Face::parse(text::font(weight), 0).ok()?;
        let units = f64::from(face.units_per_em());
        Some(Self { face, units })
    }

    /// Font units to the em.
    pub(crate) const fn units(&self) -> f64 {
        self.units
    }

    /// The glyphs of a text that is [`text::printable`] already: one for each character, no
    /// kerning, no ligatures, so that it is as wide as [`text::width`] says.
    pub(crate) fn glyphs(&self, printable: &str) -> Vec<Glyph> {
        let glyph = |(start, sign): (usize, char)| {
            let id = self.face.glyph_index(sign).unwrap_or_default();
            Glyph {
                id: id.0,
                advance: self.face.glyph_hor_advance(id).unwrap_or_default(),
                of: start..start + sign.len_utf8(),
            }
        };
        printable.char_indices().map(glyph).collect()
    }

    /// Traces the outlines of `printable` with the font's own curves. `place` turns a point of the
    /// text (em along the baseline from its start, em up from it) into one of the path.
    pub(crate) fn trace<P: Pencil>(
        &self,
        pencil: &mut P,
        printable: &str,
        place: impl Fn(f64, f64) -> Place,
    ) {
        let mut start = 0.0;
        for glyph in self.glyphs(printable) {
            let mut tracer = Tracer {
                pencil: &mut *pencil,
                place: |x: f32, y: f32| {
                    place(
                        (start + f64::from(x)) / self.units,
                        f64::from(y) / self.units,
                    )
                },
            };
            // A glyph without an outline is a blank.
            self.face.outline_glyph(GlyphId(glyph.id), &mut tracer);
            start += f64::from(glyph.advance);
        }
    }
}

/// Hands the outline of a glyph on to a pencil, font units into places.
struct Tracer<'a, P, F> {
    pencil: &'a mut P,
    place: F,
}

impl<P: Pencil, F: Fn(f32, f32) -> Place> OutlineBuilder for Tracer<'_, P, F> {
    fn move_to(&mut self, x: f32, y: f32) {
        self.pencil.move_to((self.place)(x, y));
    }

    fn line_to(&mut self, x: f32, y: f32) {
        self.pencil.line_to((self.place)(x, y));
    }

    fn quad_to(&mut self, x1: f32, y1: f32, x: f32, y: f32) {
        let (control, to) = ((self.place)(x1, y1), (self.place)(x, y));
        self.pencil.bend_to(control, to);
    }

    fn curve_to(&mut self, x1: f32, y1: f32, x2: f32, y2: f32, x: f32, y: f32) {
        let (first, second) = ((self.place)(x1, y1), (self.place)(x2, y2));
        self.pencil.curve_to(first, second, (self.place)(x, y));
    }

    fn close(&mut self) {
        self.pencil.close();
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_run_of_glyphs_is_as_wide_as_the_metrics_say() {
        let texts = [
            "AVATAR 17.5",
            "office fluffy",
            "1⁹⁄₁₆ × Ø35",
            "e\u{301} \u{1F6A2}",
            "",
        ];
        let faces = Typefaces::open().expect("font");
        for weight in [Weight::Plain, Weight::Bold] {
            let face = faces.of(weight);
            for text in texts {
                let glyphs = face.glyphs(&text::printable(text));
                let sum: f64 = glyphs.iter().map(|glyph| f64::from(glyph.advance)).sum();
                let wide = sum / face.units() * text::em_size(5.0);
                let measured = text::width(text, 5.0, weight);
                assert!(
                    (wide - measured).abs() < 1e-9,
                    "{text:?}: {wide}, not {measured}"
                );
            }
        }
    }

    #[test]
    fn each_glyph_knows_its_signs() {
        let text = "Ø3\u{1F6A2}";
        let faces = Typefaces::open().expect("font");
        let glyphs = faces.of(Weight::Plain).glyphs(text);
        let signs: Vec<&str> = glyphs.iter().map(|glyph| &text[glyph.of.clone()]).collect();
        assert_eq!(signs, ["Ø", "3", "\u{1F6A2}"]);
        // The first glyph of a font is the one for what it lacks (OpenType, table `cmap`).
        assert_eq!(glyphs[2].id, 0);
        assert!(glyphs[0].id != 0 && glyphs[1].id != 0);
    }
}
