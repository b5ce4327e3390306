//! What is drawn on a page (SVG): its shapes by layer, and its texts.

use std::collections::BTreeMap;

use anyhow::{Context, Result};
use roxmltree::{Document, Node};

/// Layers that frame a drawing with words: their lines and areas go with the words.
const WORDY: [&str; 4] = ["sheet", "findings", "notes", "border"];

/// Attributes that say what a shape is for rather than where it lies and how it looks.
const NAMES: [&str; 2] = ["id", "class"];

/// A page.
#[derive(Debug, Default)]
pub(super) struct Page {
    /// The page's title.
    pub(super) title: String,
    /// Shapes of drawings.
    pub(super) drawn: Vec<Shape>,
    /// Shapes of headers, tables and frames.
    pub(super) ruled: Vec<Shape>,
    /// Texts, without their places.
    pub(super) texts: Vec<String>,
}

/// A line, circle, path or area.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Shape {
    /// Layer, kind, pens and sizes.
    looks: String,
    /// Coordinates in page millimetres as they are written: x and y in turn, or a path's data.
    places: Vec<String>,
}

impl Shape {
    /// Whether it lies on the layer of that name.
    pub(super) fn is_of(&self, layer: &str) -> bool {
        self.looks.split(' ').next() == Some(layer)
    }

    /// The shape as a text that is the same only if it is the same to the last digit.
    pub(super) fn exact(&self) -> String {
        format!("{} at {}", self.looks, self.places.join(" "))
    }

    /// The coordinates as numbers; none if they are no plain list.
    fn coordinates(&self) -> Option<Vec<f64>> {
        self.places.iter().map(|place| place.parse().ok()).collect()
    }
}

/// Reads a page.
///
/// # Errors
///
/// If it is no SVG.
pub(super) fn page(text: &str) -> Result<Page> {
    let document = Document::parse(text).context("a page that is no SVG")?;
    let mut page = Page::default();
    for node in document.root().descendants().filter(Node::is_element) {
        match node.tag_name().name() {
            "svg" | "g" | "tspan" => {}
            "title" => page.title = node.text().unwrap_or_default().to_owned(),
            "text" => page
                .texts
                .push(node.descendants().filter_map(|part| part.text()).collect()),
            kind => {
                let layer = layer(node);
                let shape = shape(kind, layer, node);
                let list = if WORDY.contains(&layer) {
                    &mut page.ruled
                } else {
                    &mut page.drawn
                };
                list.push(shape);
            }
        }
    }
    Ok(page)
}

/// The class of the nearest group that has one.
fn layer<'a>(node: Node<'a, '_>) -> &'a str {
    let classes = node
        .ancestors()
        .filter(|group| group.has_tag_name("g") || group.tag_name().name() == "g");
    classes
        .filter_map(|group| group.attribute("class"))
        .next()
        .unwrap_or("sheet")
}

fn shape(kind: &str, layer: &str, node: Node<'_, '_>) -> Shape {
    let mut looks = vec![layer.to_owned(), kind.to_owned()];
    let mut places = Vec::new();
    for attribute in node.attributes() {
        let (name, value) = (attribute.name(), attribute.value());
        match name {
            "x" | "y" | "x1" | "y1" | "x2" | "y2" | "cx" | "cy" => places.push(value.to_owned()),
            "points" => places.extend(value.split([' ', ',']).map(str::to_owned)),
            "d" => places.push(value.to_owned()),
            _ if NAMES.contains(&name) || name.starts_with("data-") => {}
            _ => looks.push(format!("{name}={value}")),
        }
    }
    for group in node.ancestors().skip(1) {
        looks.extend(
            group
                .attribute("transform")
                .map(|moved| format!("within {moved}")),
        );
    }
    Shape {
        looks: looks.join(" "),
        places,
    }
}

/// By how much `new` lies elsewhere on the page than `old`, if every shape has moved by the same
/// way, in page millimetres to the right and down. Coordinates are written to 0.0001 mm, so a move
/// that is the same for all is seen to twice that.
pub(super) fn common_move(old: &[Shape], new: &[Shape]) -> Option<(f64, f64)> {
    const SLACK: f64 = 2.5e-4;
    if old.len() != new.len() {
        return None;
    }
    let mut moves: Option<(f64, f64)> = None;
    let (mut left, mut gone) = (by_looks(new)?, by_looks(old)?);
    for (looks, shapes) in &mut gone {
        let others = left.get_mut(looks)?;
        if others.len() != shapes.len() {
            return None;
        }
        // The same move of all keeps their order.
        for (shape, other) in shapes.iter().zip(others.iter()) {
            if shape.len() != other.len() {
                return None;
            }
            for (was, is) in shape.chunks(2).zip(other.chunks(2)) {
                let (Some(dx), Some(dy)) = (difference(was, is, 0), difference(was, is, 1)) else {
                    return None;
                };
                let (right, down) = *moves.get_or_insert((dx, dy));
                if (dx - right).abs() > SLACK || (dy - down).abs() > SLACK {
                    return None;
                }
            }
        }
    }
    moves
}

fn difference(was: &[f64], is: &[f64], axis: usize) -> Option<f64> {
    Some(is.get(axis)? - was.get(axis)?)
}

/// The coordinates of shapes that look alike, in the order in which they are drawn.
fn by_looks(shapes: &[Shape]) -> Option<BTreeMap<&str, Vec<Vec<f64>>>> {
    let mut groups: BTreeMap<&str, Vec<Vec<f64>>> = BTreeMap::new();
    for shape in shapes {
        groups
            .entry(&shape.looks)
            .or_default()
            .push(shape.coordinates()?);
    }
    Some(groups)
}
