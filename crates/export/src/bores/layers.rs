//! Names of layers: one for each operation, after a pattern of the user's.

use std::collections::{BTreeMap, BTreeSet};
use std::str::FromStr;

use crate::number::number;
use flapwright_files::folded;

/// The pattern that is used where none is given, e.g. `bore 5 13 deep inner face`.
pub const DEFAULT_LAYERS: &str = "bore {diameter} {depth} {face}";

/// The placeholders of a pattern and what stands for them.
pub const PLACEHOLDERS: [(&str, &str); 7] = [
    ("diameter", "diameter in mm, e.g. `5`"),
    ("depth", "depth in mm, e.g. `13 deep`, or `through`"),
    ("face", "drilled face: `inner face`, `underside` or `back`"),
    ("hand", "`left` or `right` for a side, `none` for others"),
    ("panel", "name of the panel, e.g. `right side`"),
    ("pass", "pass, e.g. `pass 1`"),
    ("purpose", "what the bore is for, e.g. `fitting screw`"),
];

/// Signs that no layer name may have, from memory of the format's reference.
const FORBIDDEN: &str = "<>/\\\":;?*|=,'`";
/// Longest pattern, characters.
const LONGEST_PATTERN: usize = 100;
/// Longest text that stands for a placeholder, characters: a layer name has at most 255.
const LONGEST_TEXT: usize = 40;

/// How layers are named: words with placeholders in braces, see [`PLACEHOLDERS`].
///
/// `{diameter}` and `{depth}` must be there, and words or a blank between two placeholders, or
/// bores of different depth could be read alike. A pass above the first is added at the end where
/// the pattern does not name it.
///
/// ```
/// use flapwright_export::bores::LayerPattern;
///
/// let pattern: LayerPattern = "D{diameter} T{depth}".parse()?;
/// let error = "D{diameter}".parse::<LayerPattern>().unwrap_err();
/// assert!(error.to_string().contains("{depth}"));
/// # Ok::<(), flapwright_export::bores::PatternError>(())
/// ```
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct LayerPattern {
    pieces: Vec<Piece>,
}

#[derive(Debug, Clone, PartialEq, Eq)]
enum Piece {
    Words(String),
    Field(Field),
}

#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum Field {
    Diameter,
    Depth,
    Face,
    Hand,
    Panel,
    Pass,
    Purpose,
}

impl Field {
    fn named(name: &str) -> Option<Self> {
        match name {
            "diameter" => Some(Self::Diameter),
            "depth" => Some(Self::Depth),
            "face" => Some(Self::Face),
            "hand" => Some(Self::Hand),
            "panel" => Some(Self::Panel),
            "pass" => Some(Self::Pass),
            "purpose" => Some(Self::Purpose),
            _ => None,
        }
    }
}

/// What is wrong with a pattern for layer names.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
#[non_exhaustive]
pub enum PatternError {
    /// A placeholder that is not known.
    #[error("the layer pattern has {{{0}}}, which is not known; use {known}", known = known())]
    Unknown(String),
    /// A brace without its fellow.
    #[error("the layer pattern has a brace without its fellow; write placeholders like {{depth}}")]
    Brace,
    /// A placeholder that must be there.
    #[error("the layer pattern lacks {{{0}}}; add it, or unlike bores would share a layer")]
    Missing(&'static str),
    /// Two placeholders touch.
    #[error(
        "two placeholders of the layer pattern touch; put a blank or a word between them, or \
         their numbers run together"
    )]
    Touching,
    /// A sign that no layer name may have.
    #[error("the layer pattern has the sign {0:?}, which layer names cannot hold; leave it out")]
    Sign(char),
    /// More than a layer name can hold.
    #[error("the layer pattern has {0} characters; use at most {LONGEST_PATTERN}")]
    Long(usize),
}

fn known() -> String {
    let names = PLACEHOLDERS.map(|(name, _)| format!("{{{name}}}"));
    names.join(", ")
}

impl FromStr for LayerPattern {
    type Err = PatternError;

    fn from_str(text: &str) -> Result<Self, PatternError> {
        let length = text.chars().count();
        if length > LONGEST_PATTERN {
            return Err(PatternError::Long(length));
        }
        let mut pieces = Vec::new();
        let mut rest = text.trim();
        while !rest.is_empty() {
            if let Some(inside) = rest.strip_prefix('{') {
                let (name, after) = inside.split_once('}').ok_or(PatternError::Brace)?;
                let field =
                    Field::named(name).ok_or_else(|| PatternError::Unknown(name.to_owned()))?;
                if matches!(pieces.last(), Some(Piece::Field(_))) {
                    return Err(PatternError::Touching);
                }
                pieces.push(Piece::Field(field));
                rest = after;
            } else {
                let end = rest.find('{').unwrap_or(rest.len());
                let (words, after) = rest.split_at(end);
                if words.contains('}') {
                    return Err(PatternError::Brace);
                }
                if let Some(sign) = words.chars().find(|c| !fits(*c)) {
                    return Err(PatternError::Sign(sign));
                }
                pieces.push(Piece::Words(words.to_owned()));
                rest = after;
            }
        }
        for (field, name) in [(Field::Diameter, "diameter"), (Field::Depth, "depth")] {
            if !pieces.contains(&Piece::Field(field)) {
                return Err(PatternError::Missing(name));
            }
        }
        Ok(Self { pieces })
    }
}

impl Default for LayerPattern {
    /// [`DEFAULT_LAYERS`].
    fn default() -> Self {
        let words = |text: &str| Piece::Words(text.to_owned());
        Self {
            pieces: vec![
                words("bore "),
                Piece::Field(Field::Diameter),
                words(" "),
                Piece::Field(Field::Depth),
                words(" "),
                Piece::Field(Field::Face),
            ],
        }
    }
}

/// Whether a layer name can hold the sign. Plain ASCII only: older readers know nothing else.
fn fits(c: char) -> bool {
    (c == ' ' || c.is_ascii_graphic()) && !FORBIDDEN.contains(c)
}

/// What a drill does: bores that differ in it lie on different layers.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Operation<'a> {
    pub(super) face: &'static str,
    pub(super) hand: Option<&'static str>,
    pub(super) panel: &'a str,
    pub(super) diameter: f64,
    pub(super) depth: Option<f64>,
    pub(super) pass: u8,
    pub(super) purpose: &'a str,
}

impl Operation<'_> {
    /// What tells one drilling from another, whatever the pattern says of it.
    fn key(&self) -> String {
        let Self {
            face,
            diameter,
            depth,
            pass,
            ..
        } = self;
        format!("{face} {diameter} {depth:?} {pass}")
    }

    fn text(&self, field: Field) -> String {
        match field {
            Field::Diameter => number(self.diameter),
            Field::Depth => self.depth.map_or_else(
                || "through".to_owned(),
                |depth| format!("{} deep", number(depth)),
            ),
            Field::Face => self.face.to_owned(),
            Field::Hand => self.hand.unwrap_or("none").to_owned(),
            Field::Panel => plain(self.panel),
            Field::Pass => format!("pass {}", self.pass),
            Field::Purpose => plain(self.purpose),
        }
    }
}

/// A text of the job as it can stand in a layer name.
fn plain(text: &str) -> String {
    text.chars()
        .take(LONGEST_TEXT)
        .map(|c| if fits(c) { c } else { '-' })
        .collect()
}

/// Layer of the words below the outline; nothing on it is to be drilled or cut.
pub const NOTES_LAYER: &str = "notes";

/// Layer of the outline, so that its name says which edges it shows.
#[must_use]
pub fn outline_layer(edges: &str) -> &'static str {
    match edges {
        "cut" => "outline cut",
        _ => "outline finished",
    }
}

/// Gives each operation of a list its layer's name, and no two operations the same one.
pub(super) struct LayerNames<'a> {
    pattern: &'a LayerPattern,
    /// By [`Operation::key`] and wished name.
    given: BTreeMap<(String, String), String>,
    /// Names as readers that ignore capitals compare them.
    taken: BTreeSet<String>,
}

impl<'a> LayerNames<'a> {
    pub(super) fn new(pattern: &'a LayerPattern) -> Self {
        let reserved = [
            "0",
            "defpoints",
            NOTES_LAYER,
            outline_layer("cut"),
            outline_layer("finished"),
        ];
        Self {
            pattern,
            given: BTreeMap::new(),
            taken: reserved.into_iter().map(folded).collect(),
        }
    }

    pub(super) fn name(&mut self, operation: &Operation<'_>) -> String {
        let mut wish = String::new();
        for piece in &self.pattern.pieces {
            match piece {
                Piece::Words(words) => wish.push_str(words),
                Piece::Field(field) => wish.push_str(&operation.text(*field)),
            }
        }
        if operation.pass > 1 && !self.pattern.pieces.contains(&Piece::Field(Field::Pass)) {
            wish.push_str(&format!(" pass {}", operation.pass));
        }
        let wish = wish.trim().to_owned();
        let key = (operation.key(), wish.clone());
        if let Some(name) = self.given.get(&key) {
            return name.clone();
        }
        let mut name = wish.clone();
        let mut number = 2_u64;
        while !self.taken.insert(folded(&name)) {
            name = format!("{wish}-{number}");
            number += 1;
        }
        self.given.insert(key, name.clone());
        name
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn five(depth: Option<f64>, pass: u8, purpose: &str) -> Operation<'_> {
        Operation {
            face: "inner face",
            hand: Some("left"),
            panel: "left side",
            diameter: 5.0,
            depth,
            pass,
            purpose,
        }
    }

    fn pattern(text: &str) -> LayerPattern {
        text.parse().expect(text)
    }

    #[test]
    fn the_default_is_the_pattern_that_is_documented() {
        assert_eq!(LayerPattern::default(), pattern(DEFAULT_LAYERS));
    }

    #[test]
    fn every_placeholder_that_is_documented_is_known_and_filled_in() {
        let all = "{diameter}, {depth}".replace(',', " and");
        let mut text = all;
        for (name, _) in PLACEHOLDERS.iter().skip(2) {
            text.push_str(&format!(" {{{name}}}"));
        }
        let pattern = pattern(&text);
        let mut names = LayerNames::new(&pattern);
        assert_eq!(
            names.name(&five(Some(13.0), 1, "fitting screw")),
            "5 and 13 deep inner face left left side pass 1 fitting screw"
        );
    }

    #[test]
    fn bad_patterns_say_what_to_do() {
        let long = "x".repeat(101);
        let cases = [
            (
                "D{diameter} {dept}",
                "{dept}, which is not known; use {diameter}, {depth}",
            ),
            ("D{diameter} {depth", "brace without its fellow"),
            ("D{diameter}} {depth}", "brace without its fellow"),
            ("", "lacks {diameter}"),
            ("bores", "lacks {diameter}"),
            ("{diameter}", "lacks {depth}; add it"),
            ("{diameter}{depth}", "touch; put a blank"),
            ("{diameter}/{depth}", "the sign '/'"),
            ("{diameter}\u{202E} {depth}", "the sign '\\u{202e}'"),
            ("{diameter}\n{depth}", "the sign '\\n'"),
            (long.as_str(), "101 characters; use at most 100"),
        ];
        for (text, words) in cases {
            let error = text.parse::<LayerPattern>().expect_err(text).to_string();
            assert!(error.contains(words), "{text:?}: {error}");
        }
    }

    #[test]
    fn unlike_operations_never_share_a_layer() {
        let pattern = LayerPattern::default();
        let mut names = LayerNames::new(&pattern);
        let blind = names.name(&five(Some(13.0), 1, "a"));
        assert_eq!(blind, "bore 5 13 deep inner face");
        assert_eq!(names.name(&five(Some(13.0), 1, "b")), blind);
        assert_eq!(names.name(&five(None, 1, "a")), "bore 5 through inner face");
        assert_eq!(
            names.name(&five(Some(13.0), 2, "a")),
            "bore 5 13 deep inner face pass 2"
        );
        // The same to four decimals, and yet another depth.
        assert_eq!(
            names.name(&five(Some(13.000_01), 1, "a")),
            "bore 5 13 deep inner face-2"
        );
        let lower = "{purpose} {diameter} {depth}".parse().expect("pattern");
        let mut names = LayerNames::new(&lower);
        assert_eq!(names.name(&five(None, 1, "cup")), "cup 5 through");
        assert_eq!(names.name(&five(None, 1, "CUP")), "CUP 5 through-2");
    }

    #[test]
    fn texts_of_the_job_break_no_layer_name() {
        let pattern = pattern("{purpose} {diameter} {depth}");
        let mut names = LayerNames::new(&pattern);
        let odd = "a/b|c\u{1F6AA}é;".to_owned() + &"x".repeat(300);
        let name = names.name(&five(None, 1, &odd));
        assert!(name.starts_with("a-b-c---x"), "{name}");
        assert!(name.len() < 100 && name.chars().all(fits), "{name}");
    }
}
