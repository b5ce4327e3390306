//! SVG: one page in real millimetres, grouped by layer.

use std::collections::BTreeSet;
use std::f64::consts::TAU;

use flapwright_drawing::list::{At, Item, Shape, Turn, Weight};
use flapwright_drawing::pen::{Ink, Layer, Pen};
use flapwright_drawing::sheet::Sheet;
use flapwright_drawing::text;

use crate::colour::ink_colour;
use crate::number::number;
use crate::outline::MITER_LIMIT;
use crate::page::is_finite;

/// Greatest angle of one arc command, radians: well below the half turn at which an arc's centre
/// gets blurred by rounding.
const ARC_STEP: f64 = 2.0;

/// How a page is written as SVG.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct SvgOptions {
    /// Whether the paper itself is painted, for readers with a dark background.
    pub paper: bool,
    /// Whether each text also carries its width, so that a reader without the font squeezes
    /// another one into the same place.
    pub hold_width: bool,
}

impl Default for SvgOptions {
    fn default() -> Self {
        Self {
            paper: true,
            hold_width: true,
        }
    }
}

/// The sheet as an SVG document: one user unit is one millimetre on paper, origin at the upper
/// left corner, y down.
///
/// The display list's order is binding, so each run of items on one layer is one group: all groups
/// of a layer carry its name as class, the first one as id as well. Pens and inks are written as
/// plain attributes on each item, for readers that know no style sheets. Texts stay texts; the
/// font is named, not embedded.
///
/// An item without a finite position cannot be written and is left out; see [`crate::check`].
#[must_use]
pub fn svg(sheet: &Sheet, options: &SvgOptions) -> String {
    let mut page = Page::new(sheet, options);
    for item in sheet
        .list
        .items
        .iter()
        .filter(|item| is_finite(&item.shape))
    {
        page.item(item);
    }
    page.finish()
}

/// A document in the making.
struct Page<'a> {
    out: String,
    height: f64,
    options: &'a SvgOptions,
    open: Option<Layer>,
    seen: BTreeSet<Layer>,
}

impl<'a> Page<'a> {
    fn new(sheet: &Sheet, options: &'a SvgOptions) -> Self {
        let (width, height) = (number(sheet.paper.width), number(sheet.paper.height));
        let mut out = format!(
            "<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n\
             <svg xmlns=\"http://www.w3.org/2000/svg\" version=\"1.1\" \
             width=\"{width}mm\" height=\"{height}mm\" viewBox=\"0 0 {width} {height}\" \
             fill=\"none\" stroke-linecap=\"butt\" stroke-linejoin=\"miter\" \
             stroke-miterlimit=\"{MITER_LIMIT}\" font-family=\"'{}', sans-serif\" \
             style=\"font-kerning:none;font-variant-ligatures:none\" xml:space=\"preserve\">\n\
             <title>{}</title>\n",
            text::FAMILY,
            escaped(&sheet.title),
        );
        if options.paper {
            let fill = ink_colour(Ink::Paper).hex();
            out.push_str(&format!(
                "<rect id=\"paper\" width=\"{width}\" height=\"{height}\" fill=\"{fill}\"/>\n"
            ));
        }
        let height = sheet.paper.height;
        Self {
            out,
            height,
            options,
            open: None,
            seen: BTreeSet::new(),
        }
    }

    fn finish(mut self) -> String {
        self.close();
        self.out.push_str("</svg>\n");
        self.out
    }

    fn close(&mut self) {
        if self.open.take().is_some() {
            self.out.push_str("</g>\n");
        }
    }

    fn enter(&mut self, layer: Layer) {
        if self.open == Some(layer) {
            return;
        }
        self.close();
        let name = layer.name();
        let id = if self.seen.insert(layer) {
            format!(" id=\"{name}\"")
        } else {
            String::new()
        };
        self.put(format_args!("<g{id} class=\"{name}\">"));
        self.open = Some(layer);
    }

    /// Adds one line to the document.
    fn put(&mut self, line: std::fmt::Arguments<'_>) {
        self.out.push_str(&line.to_string());
        self.out.push('\n');
    }

    /// A point in the document's frame, as two numbers.
    fn xy(&self, at: At) -> (String, String) {
        (number(at.x), number(self.height - at.y))
    }

    fn item(&mut self, item: &Item) {
        self.enter(item.layer);
        let ink = ink_colour(item.ink).hex();
        match &item.shape {
            Shape::Line { from, to, pen } => {
                let ((x1, y1), (x2, y2)) = (self.xy(*from), self.xy(*to));
                let pen = stroke(*pen, &ink);
                self.put(format_args!(
                    "<line x1=\"{x1}\" y1=\"{y1}\" x2=\"{x2}\" y2=\"{y2}\"{pen}/>"
                ));
            }
            Shape::Polyline {
                points,
                closed,
                pen,
            } => {
                let name = if *closed { "polygon" } else { "polyline" };
                let (points, pen) = (self.points(points), stroke(*pen, &ink));
                self.put(format_args!("<{name} points=\"{points}\"{pen}/>"));
            }
            Shape::Area { points } => {
                let points = self.points(points);
                self.put(format_args!(
                    "<polygon points=\"{points}\" fill=\"{ink}\"/>"
                ));
            }
            Shape::Circle {
                centre,
                radius,
                pen,
                filled,
            } => {
                let fill = if *filled {
                    format!(" fill=\"{ink}\"")
                } else {
                    String::new()
                };
                self.circle(*centre, *radius, &format!("{fill}{}", stroke(*pen, &ink)));
            }
            Shape::Arc {
                centre,
                radius,
                from,
                sweep,
                pen,
            } => {
                let pen = stroke(*pen, &ink);
                if sweep.abs() >= TAU {
                    self.circle(*centre, *radius, &pen);
                } else {
                    let path = self.arc(*centre, *radius, *from, *sweep);
                    self.put(format_args!("<path d=\"{path}\"{pen}/>"));
                }
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
                self.text(origin, text, *height, *turn, *weight, &ink);
            }
        }
    }

    fn points(&self, points: &[At]) -> String {
        let pairs = points.iter().map(|point| {
            let (x, y) = self.xy(*point);
            format!("{x},{y}")
        });
        pairs.collect::<Vec<_>>().join(" ")
    }

    fn circle(&mut self, centre: At, radius: f64, paint: &str) {
        let ((x, y), radius) = (self.xy(centre), number(radius));
        self.put(format_args!(
            "<circle cx=\"{x}\" cy=\"{y}\" r=\"{radius}\"{paint}/>"
        ));
    }

    /// Path data of an arc, in steps of at most [`ARC_STEP`]. Counter-clockwise on paper is the
    /// negative direction of SVG, hence the flag.
    fn arc(&self, centre: At, radius: f64, from: f64, sweep: f64) -> String {
        let on_circle = |angle: f64| {
            self.xy(At::new(
                centre.x + radius * angle.cos(),
                centre.y + radius * angle.sin(),
            ))
        };
        let (x, y) = on_circle(from);
        let mut path = format!("M{x} {y}");
        let steps = (sweep.abs() / ARC_STEP).ceil().max(1.0);
        let (flag, r) = (u8::from(sweep < 0.0), number(radius));
        let mut step = 1.0;
        while step <= steps {
            let (x, y) = on_circle(from + sweep * step / steps);
            path.push_str(&format!(" A{r} {r} 0 0 {flag} {x} {y}"));
            step += 1.0;
        }
        path
    }

    fn text(&mut self, origin: At, text: &str, height: f64, turn: Turn, weight: Weight, ink: &str) {
        let shown = escaped(text);
        if shown.is_empty() {
            return;
        }
        let (x, y) = self.xy(origin);
        let size = number(text::em_size(height));
        let bold = match weight {
            Weight::Plain => "",
            Weight::Bold => " font-weight=\"700\"",
        };
        let turn = match turn {
            Turn::Level => String::new(),
            Turn::Up => format!(" transform=\"rotate(-90 {x} {y})\""),
        };
        let width = number(text::width(text, height, weight));
        let hold = if self.options.hold_width && width != "0" {
            format!(" textLength=\"{width}\" lengthAdjust=\"spacingAndGlyphs\"")
        } else {
            String::new()
        };
        self.put(format_args!(
            "<text x=\"{x}\" y=\"{y}\" font-size=\"{size}\"{bold}{turn}{hold} fill=\"{ink}\">\
             {shown}</text>"
        ));
    }
}

/// Attributes of a stroke, with a leading blank.
fn stroke(pen: Pen, ink: &str) -> String {
    let mut attributes = format!(" stroke=\"{ink}\" stroke-width=\"{}\"", number(pen.width()));
    if !pen.dashes().is_empty() {
        let dashes: Vec<_> = pen.dashes().iter().map(|length| number(*length)).collect();
        attributes.push_str(&format!(" stroke-dasharray=\"{}\"", dashes.join(" ")));
    }
    attributes
}

/// The [`text::printable`] characters as XML character data.
fn escaped(text: &str) -> String {
    let mut out = String::with_capacity(text.len());
    for c in text::printable(text).chars() {
        match c {
            '&' => out.push_str("&amp;"),
            '<' => out.push_str("&lt;"),
            '>' => out.push_str("&gt;"),
            '"' => out.push_str("&quot;"),
            _ => out.push(c),
        }
    }
    out
}

#[cfg(test)]
mod tests {
    use std::f64::consts::{FRAC_PI_2, PI};

    use resvg::usvg::roxmltree::Document;

    use super::*;
    use crate::sample;

    fn line(pen: Pen) -> Shape {
        Shape::Line {
            from: At::new(10.0, 20.0),
            to: At::new(110.0, 20.0),
            pen,
        }
    }

    fn plain(shapes: impl IntoIterator<Item = Shape>) -> String {
        svg(
            &sample::sheet(shapes),
            &SvgOptions {
                paper: false,
                hold_width: false,
            },
        )
    }

    #[test]
    fn a_page_is_measured_in_millimetres() {
        let page = svg(&sample::full_sheet(), &SvgOptions::default());
        let document = Document::parse(&page).expect("well-formed");
        let root = document.root_element();
        assert_eq!(root.attribute("width"), Some("210mm"));
        assert_eq!(root.attribute("height"), Some("297mm"));
        assert_eq!(root.attribute("viewBox"), Some("0 0 210 297"));
    }

    #[test]
    fn every_pen_keeps_its_width_and_dashes() {
        let page = plain(Pen::ALL.map(line));
        let document = Document::parse(&page).expect("well-formed");
        let lines: Vec<_> = document
            .descendants()
            .filter(|n| n.has_tag_name("line"))
            .collect();
        assert_eq!(lines.len(), Pen::ALL.len());
        for (pen, line) in Pen::ALL.iter().zip(lines) {
            let width: f64 = line
                .attribute("stroke-width")
                .expect("width")
                .parse()
                .expect("f64");
            assert_eq!(width, pen.width(), "{pen:?}");
            let dashes = line.attribute("stroke-dasharray").unwrap_or_default();
            let dashes: Vec<f64> = dashes
                .split_whitespace()
                .map(|dash| dash.parse().expect("f64"))
                .collect();
            assert_eq!(dashes, pen.dashes(), "{pen:?}");
        }
    }

    #[test]
    fn y_points_up_on_paper_and_down_in_the_file() {
        let page = plain([line(Pen::Thin)]);
        assert!(
            page.contains("<line x1=\"10\" y1=\"277\" x2=\"110\" y2=\"277\" "),
            "{page}"
        );
    }

    #[test]
    fn layers_are_grouped_without_changing_the_painting_order() {
        let mut sheet = sample::sheet([]);
        for layer in [Layer::Panels, Layer::Panels, Layer::Bores, Layer::Panels] {
            sheet.list.push(layer, Ink::Plain, None, line(Pen::Thin));
        }
        let page = svg(&sheet, &SvgOptions::default());
        let groups: Vec<_> = page.lines().filter(|line| line.starts_with("<g")).collect();
        assert_eq!(
            groups,
            [
                "<g id=\"panels\" class=\"panels\">",
                "<g id=\"bores\" class=\"bores\">",
                "<g class=\"panels\">"
            ]
        );
        assert_eq!(page.matches("</g>").count(), 3);
    }

    #[test]
    fn inks_follow_the_table() {
        let mut sheet = sample::sheet([]);
        for ink in [Ink::Plain, Ink::Stop, Ink::Paper] {
            sheet.list.push(Layer::Notes, ink, None, line(Pen::Thin));
        }
        let page = svg(&sheet, &SvgOptions::default());
        for colour in ["#000000", "#c00000", "#ffffff"] {
            assert!(
                page.contains(&format!("stroke=\"{colour}\"")),
                "{colour} in {page}"
            );
        }
    }

    #[test]
    fn a_quarter_arc_turns_counter_clockwise() {
        let arc = |from, sweep| Shape::Arc {
            centre: At::new(100.0, 97.0),
            radius: 10.0,
            from,
            sweep,
            pen: Pen::Thin,
        };
        let quarter = plain([arc(0.0, FRAC_PI_2)]);
        assert!(
            quarter.contains("d=\"M110 200 A10 10 0 0 0 100 190\""),
            "{quarter}"
        );
        let back = plain([arc(FRAC_PI_2, -FRAC_PI_2)]);
        assert!(
            back.contains("d=\"M100 190 A10 10 0 0 1 110 200\""),
            "{back}"
        );
        let most = plain([arc(0.0, 1.5 * PI)]);
        assert!(most.contains(" 0 0 0 100 210\""), "{most}");
        assert!(plain([arc(0.3, TAU)]).contains("<circle cx=\"100\" cy=\"200\" r=\"10\""));
    }

    #[test]
    fn text_is_escaped_and_cleaned() {
        let page = plain([sample::text_at(
            10.0,
            10.0,
            "a <b> & \"c\" ]]>\0\u{1}\u{FFFE}\u{8}\n",
        )]);
        let document = Document::parse(&page).expect("well-formed");
        let text = document
            .descendants()
            .find(|n| n.has_tag_name("text"))
            .expect("text");
        assert_eq!(
            text.text(),
            Some("a <b> & \"c\" ]]>\u{FFFD}\u{FFFD}\u{FFFD}\u{FFFD} ")
        );
        let mut sheet = sample::sheet([]);
        sheet.title = "</title><script>\u{2}".to_owned();
        let page = svg(&sheet, &SvgOptions::default());
        let document = Document::parse(&page).expect("well-formed");
        let title = document
            .descendants()
            .find(|n| n.has_tag_name("title"))
            .expect("title");
        assert_eq!(title.text(), Some("</title><script>\u{FFFD}"));
    }

    #[test]
    fn text_is_set_by_the_height_of_its_capitals() {
        let page = plain([sample::text_at(10.0, 10.0, "H")]);
        // 5 mm capitals at 714/1000 em.
        assert!(page.contains("font-size=\"7.0028\""), "{page}");
    }

    #[test]
    fn nothing_without_a_position_reaches_the_file() {
        let page = plain([sample::text_at(f64::NAN, 10.0, "H"), line(Pen::Thin)]);
        assert!(!page.contains("NaN") && !page.contains("<text") && page.contains("<line"));
    }

    #[test]
    fn the_same_sheet_gives_the_same_bytes() {
        let options = SvgOptions::default();
        assert_eq!(
            svg(&sample::full_sheet(), &options),
            svg(&sample::full_sheet(), &options)
        );
    }

    /// A layout engine that had no part in it (`usvg`) and the text metrics must agree on every pair
    /// of characters, or text would not sit where the sheet put it.
    #[test]
    fn texts_are_as_wide_as_the_metrics_say() {
        let signs = "AVToWfilj1.7,-–×Ø°½ é&\"'/()²µЖΩ\u{FFFD}⌀";
        // Each text holds one sign before and behind every other.
        let pairs = signs
            .chars()
            .map(|a| signs.chars().flat_map(|b| [a, b]).collect());
        let others = [
            "office fluffy ffi",
            "To AVAIL 1⁄2",
            "  two  spaces  ",
            "اب",
            "e\u{AD}e",
            "cafe\u{301} A\u{308}",
        ];
        let texts = pairs.chain(others.map(str::to_owned));
        for weight in [Weight::Plain, Weight::Bold] {
            let texts: Vec<_> = texts.clone().collect();
            let shapes = texts
                .iter()
                .map(|text| sample::weighted(20.0, 50.0, text, weight));
            let tree = sample::tree(&sample::sheet(shapes));
            let mut ends = Vec::new();
            sample::text_ends(tree.root(), &mut ends);
            assert_eq!(ends.len(), texts.len());
            for (text, (start, end)) in texts.iter().zip(ends) {
                let laid_out = end - start;
                let measured = text::width(text, 5.0, weight);
                assert!(
                    (laid_out - measured).abs() < 0.005,
                    "{weight:?} {text:?}: laid out {laid_out:.4}, measured {measured:.4} mm"
                );
            }
        }
    }
}
