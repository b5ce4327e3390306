//! Text metrics with the embedded font, so that every back-end places text at the same spot.
//!
//! Heights on sheets are heights of **capitals** in millimetres, never font sizes; the font size
//! follows by [`em_size`]. A text's width is the plain sum of its glyphs' advances: **no kerning
//! and no ligatures**, and the back-ends switch both off. That keeps widths additive (a number is
//! as wide as its digits) and the same in the window, in SVG, PDF and PNG.
//!
//! | how do I… | |
//! | --- | --- |
//! | know how wide a text gets | [`width`] |
//! | keep other things clear of a text | [`bounds`] |
//! | paint a text in a back-end | [`printable`] characters from [`baseline_origin`] at [`em_size`] |
//! | hand the font to a back-end | [`font`], [`FAMILY`] |
//! | know whether a sign can be printed | [`missing_glyphs`] |

use std::borrow::Cow;
use std::sync::OnceLock;

use euclid::default::{Rect, Vector2D};
use ttf_parser::Face;

use crate::list::{Across, Along, Anchor, At, Turn, Weight};

/// Family name of the embedded font, plain and bold alike.
pub const FAMILY: &str = "Noto Sans";

static PLAIN: &[u8] = include_bytes!("../../../assets/fonts/NotoSans-Regular.ttf");
static BOLD: &[u8] = include_bytes!("../../../assets/fonts/NotoSans-Bold.ttf");

/// Stand-ins used only if the embedded font could not be read, which a test rules out. They are
/// the font's own numbers, in em.
const CAPITAL: f64 = 0.714;
const DESCENDER: f64 = 0.24;
const ADVANCE: f64 = 0.6;

/// The embedded font file of `weight` (TrueType).
#[must_use]
pub fn font(weight: Weight) -> &'static [u8] {
    match weight {
        Weight::Plain => PLAIN,
        Weight::Bold => BOLD,
    }
}

/// The font size (em, mm) that makes capitals `height` mm high; the same for plain and bold.
#[must_use]
pub fn em_size(height: f64) -> f64 {
    height / metrics(Weight::Plain).capital
}

/// The width of `text` in mm: the sum of the advances of its [`printable`] characters, without
/// kerning or ligatures. `height` is the height of the capitals, mm.
#[must_use]
pub fn width(text: &str, height: f64, weight: Weight) -> f64 {
    let metrics = metrics(weight);
    printable(text)
        .chars()
        .map(|c| metrics.advance(c))
        .sum::<f64>()
        * em_size(height)
}

/// The box around a text in the frame of `at` (mm, y up): along the reading direction its
/// [`width`], across it from the depth of descending letters such as `g` up to the top of the
/// capitals. Accents on capitals stand out of it.
#[must_use]
pub fn bounds(
    at: At,
    text: &str,
    height: f64,
    anchor: Anchor,
    turn: Turn,
    weight: Weight,
) -> Rect<f64> {
    let origin = baseline_origin(at, text, height, anchor, turn, weight);
    let (along, up) = directions(turn);
    let depth = metrics(weight).descender * em_size(height);
    let end = origin + along * width(text, height, weight);
    Rect::from_points([origin - up * depth, end + up * height])
}

/// The box around the letters of a text themselves, in the frame of `at` (mm, y up): as high and
/// as deep as the highest and the deepest of them. `None` when it has no ink.
#[cfg(test)]
pub(crate) fn ink_bounds(
    at: At,
    text: &str,
    height: f64,
    anchor: Anchor,
    turn: Turn,
    weight: Weight,
) -> Option<Rect<f64>> {
    let origin = baseline_origin(at, text, height, anchor, turn, weight);
    let (along, up) = directions(turn);
    let metrics = metrics(weight);
    let em = em_size(height);
    let mut x = 0.0;
    let mut found: Option<Rect<f64>> = None;
    for c in printable(text).chars() {
        if let Some([left, low, right, high]) = metrics.ink(c) {
            let corner = |x: f64, y: f64| origin + along * (x * em) + up * (y * em);
            let letter = Rect::from_points([corner(x + left, low), corner(x + right, high)]);
            found = Some(found.map_or(letter, |all| all.union(&letter)));
        }
        x += metrics.advance(c);
    }
    found
}

/// Where the baseline of a text starts, in the frame of `at` (mm, y up). Every back-end paints the
/// text from here, start-anchored, in the reading direction.
#[must_use]
pub fn baseline_origin(
    at: At,
    text: &str,
    height: f64,
    anchor: Anchor,
    turn: Turn,
    weight: Weight,
) -> At {
    let back = match anchor.along {
        Along::Start => 0.0,
        Along::Middle => 0.5 * width(text, height, weight),
        Along::End => width(text, height, weight),
    };
    let down = match anchor.across {
        Across::Baseline => 0.0,
        Across::Middle => 0.5 * height,
        Across::Top => height,
    };
    let (along, up) = directions(turn);
    at - along * back - up * down
}

/// The characters of `text` as every back-end paints them.
///
/// Tabs, line ends and unusual blanks become plain spaces; other control characters, characters
/// that steer the reading direction and those that no XML file may hold become U+FFFD, so that a
/// broken text shows; invisible joiners and marks are dropped. The fraction slash becomes a plain
/// one, because it would rebuild the digits around it; that of [`set_fractions`] stays.
#[must_use]
pub fn printable(text: &str) -> Cow<'_, str> {
    if text.bytes().all(|byte| (0x20..0x7F).contains(&byte)) {
        return Cow::Borrowed(text);
    }
    // A fraction slash between raised and lowered digits rebuilds nothing: it stays.
    let set = |i: usize| {
        let (before, after) = text.split_at(i);
        before.ends_with(RAISED) && after.chars().nth(1).is_some_and(|c| LOWERED.contains(&c))
    };
    let print = |(i, c): (usize, char)| match c {
        '\u{2044}' if set(i) => Some(c),
        _ => replaced(c),
    };
    if text.char_indices().all(|it| print(it) == Some(it.1)) {
        Cow::Borrowed(text)
    } else {
        Cow::Owned(text.char_indices().filter_map(print).collect())
    }
}

/// The characters of `text` that the embedded font lacks, each once, in order of appearance. They
/// print as an empty box.
#[must_use]
pub fn missing_glyphs(text: &str) -> Vec<char> {
    let mut missing = Vec::new();
    for c in printable(text).chars() {
        let lacking = [Weight::Plain, Weight::Bold]
            .iter()
            .any(|w| !metrics(*w).has(c));
        if lacking && !missing.contains(&c) {
            missing.push(c);
        }
    }
    missing
}

/// `text` with every fraction set as one: raised numerator, fraction slash, lowered denominator;
/// the hyphen of a mixed number falls away. `1-29/64"` becomes `1²⁹⁄₆₄"`.
///
/// A fraction is digits, a slash and digits that no digit, slash or dot stands beside, so that
/// dates are left alone.
#[must_use]
pub fn set_fractions(text: &str) -> String {
    let signs: Vec<char> = text.chars().collect();
    let mut set = String::with_capacity(text.len());
    let mut i = 0;
    while i < signs.len() {
        let Some((above, below, end)) = fraction_at(&signs, i) else {
            set.extend(signs.get(i));
            i += 1;
            continue;
        };
        // 1-5/8 is one and five eighths.
        let mixed = set.ends_with('-') && set.chars().rev().nth(1).is_some_and(is_digit);
        if mixed {
            set.pop();
        }
        set.extend(above.iter().map(|digit| shifted(*digit, &RAISED)));
        set.push('\u{2044}');
        set.extend(below.iter().map(|digit| shifted(*digit, &LOWERED)));
        i = end;
    }
    set
}

const RAISED: [char; 10] = ['⁰', '¹', '²', '³', '⁴', '⁵', '⁶', '⁷', '⁸', '⁹'];
const LOWERED: [char; 10] = ['₀', '₁', '₂', '₃', '₄', '₅', '₆', '₇', '₈', '₉'];

const fn is_digit(c: char) -> bool {
    c.is_ascii_digit()
}

fn shifted(digit: char, to: &[char; 10]) -> char {
    let place = digit.to_digit(10).unwrap_or_default() as usize;
    to.get(place).copied().unwrap_or(digit)
}

/// Numerator, denominator and what follows, when a fraction begins at `start`.
fn fraction_at(signs: &[char], start: usize) -> Option<(&[char], &[char], usize)> {
    let run = |from: usize| {
        let rest = signs.get(from..).unwrap_or_default();
        from + rest.iter().take_while(|c| is_digit(**c)).count()
    };
    let joined = |c: &char| is_digit(*c) || "/.,".contains(*c);
    if start > 0 && signs.get(start - 1).is_some_and(joined) {
        return None;
    }
    let slash = run(start);
    if slash == start || signs.get(slash) != Some(&'/') {
        return None;
    }
    let end = run(slash + 1);
    let ends = signs.get(end).is_none_or(|c| *c != '/');
    (end > slash + 1 && ends).then(|| (&signs[start..slash], &signs[slash + 1..end], end))
}

/// What stands for one character in print; `None` when nothing does.
fn replaced(c: char) -> Option<char> {
    match c {
        '\t' | '\n' | '\r' | '\u{0B}' | '\u{0C}' | '\u{85}' | '\u{2028}' | '\u{2029}' => Some(' '),
        '\u{2044}' => Some('/'),
        '\u{AD}' | '\u{34F}' | '\u{180B}'..='\u{180F}' | '\u{200B}'..='\u{200D}' => None,
        '\u{2060}'..='\u{2065}' | '\u{FE00}'..='\u{FE0F}' | '\u{FEFF}' => None,
        '\u{E0000}'..='\u{E0FFF}' => None,
        '\u{61C}' | '\u{200E}' | '\u{200F}' => Some('\u{FFFD}'),
        '\u{202A}'..='\u{202E}' | '\u{2066}'..='\u{206F}' => Some('\u{FFFD}'),
        _ if c.is_control() || u32::from(c) & 0xFFFE == 0xFFFE => Some('\u{FFFD}'),
        _ if c.is_whitespace() => Some(' '),
        _ => Some(c),
    }
}

/// Unit vectors along the reading direction and towards the top of the letters.
fn directions(turn: Turn) -> (Vector2D<f64>, Vector2D<f64>) {
    match turn {
        Turn::Level => (Vector2D::new(1.0, 0.0), Vector2D::new(0.0, 1.0)),
        Turn::Up => (Vector2D::new(0.0, 1.0), Vector2D::new(-1.0, 0.0)),
    }
}

/// A font file opened once, with the sizes that are asked for all the time, in em.
struct Metrics {
    face: Option<Face<'static>>,
    /// Advances of the ASCII characters, which nearly all texts consist of.
    ascii: [f64; 128],
    capital: f64,
    descender: f64,
}

impl Metrics {
    fn read(weight: Weight) -> Self {
        let face = Face::parse(font(weight), 0).ok();
        let capital = face
            .as_ref()
            .and_then(|face| Some(em(face, face.capital_height()?)));
        let descender = face.as_ref().and_then(deepest);
        let mut ascii = [ADVANCE; 128];
        for (code, advance) in (0_u8..).zip(&mut ascii) {
            *advance = advance_in(face.as_ref(), char::from(code));
        }
        Self {
            face,
            ascii,
            capital: capital.filter(|size| *size > 0.0).unwrap_or(CAPITAL),
            descender: descender.unwrap_or(DESCENDER),
        }
    }

    /// The advance of a character in em; a character that the font lacks is as wide as the box
    /// that is printed for it.
    fn advance(&self, c: char) -> f64 {
        let known = usize::try_from(u32::from(c)).ok();
        let known = known.and_then(|code| self.ascii.get(code));
        known.map_or_else(|| advance_in(self.face.as_ref(), c), |advance| *advance)
    }

    /// Left, bottom, right and top of a letter from its origin on the baseline, em; `None` for one
    /// without ink.
    #[cfg(test)]
    fn ink(&self, c: char) -> Option<[f64; 4]> {
        let face = self.face.as_ref()?;
        let glyph = face.glyph_index(c).unwrap_or_default();
        let it = face.glyph_bounding_box(glyph)?;
        Some([it.x_min, it.y_min, it.x_max, it.y_max].map(|units| em(face, units)))
    }

    fn has(&self, c: char) -> bool {
        self.face
            .as_ref()
            .is_some_and(|face| face.glyph_index(c).is_some())
    }
}

fn advance_in(face: Option<&Face<'_>>, c: char) -> f64 {
    let advance = face.and_then(|face| {
        let glyph = face.glyph_index(c).unwrap_or_default();
        Some(f64::from(face.glyph_hor_advance(glyph)?) / f64::from(face.units_per_em()))
    });
    advance.unwrap_or(ADVANCE)
}

fn metrics(weight: Weight) -> &'static Metrics {
    static PLAIN: OnceLock<Metrics> = OnceLock::new();
    static BOLD: OnceLock<Metrics> = OnceLock::new();
    match weight {
        Weight::Plain => PLAIN.get_or_init(|| Metrics::read(weight)),
        Weight::Bold => BOLD.get_or_init(|| Metrics::read(weight)),
    }
}

/// How far the deepest of the descending letters reaches below the baseline, em.
fn deepest(face: &Face<'_>) -> Option<f64> {
    let bottoms = "gjpqy".chars().filter_map(|c| {
        let bounds = face.glyph_bounding_box(face.glyph_index(c)?)?;
        Some(-em(face, bounds.y_min))
    });
    bottoms.reduce(f64::max)
}

fn em(face: &Face<'_>, units: i16) -> f64 {
    f64::from(units) / f64::from(face.units_per_em())
}

#[cfg(test)]
mod tests {
    use super::*;

    const START: Anchor = Anchor {
        along: Along::Start,
        across: Across::Baseline,
    };

    fn near(a: f64, b: f64) -> bool {
        (a - b).abs() < 1e-9
    }

    #[test]
    fn both_fonts_open_and_share_their_capital_height() {
        for weight in [Weight::Plain, Weight::Bold] {
            let metrics = metrics(weight);
            assert!(metrics.face.is_some(), "{weight:?} cannot be read");
            assert!(
                near(metrics.capital, 0.714),
                "{weight:?}: capital {}",
                metrics.capital
            );
            assert!(
                (0.2..0.3).contains(&metrics.descender),
                "{weight:?}: descender {}",
                metrics.descender
            );
        }
    }

    #[test]
    fn capitals_are_as_high_as_asked() {
        let face = Face::parse(font(Weight::Plain), 0).expect("font");
        let glyph = face.glyph_index('H').expect("H");
        let top = face.glyph_bounding_box(glyph).expect("outline").y_max;
        let height = f64::from(top) / f64::from(face.units_per_em()) * em_size(3.5);
        assert!(near(height, 3.5), "H is {height} mm high");
    }

    #[test]
    fn widths_add_up() {
        // 572/1000 em is the advance of each digit in the font file.
        let digit = width("0", 7.14, Weight::Plain);
        assert!(near(digit, 5.72), "digit {digit}");
        for text in ["1234567890", "0000000000"] {
            assert!(near(width(text, 7.14, Weight::Plain), 57.2), "{text}");
        }
        let (left, right) = (
            width("AV", 2.5, Weight::Bold),
            width("ffi", 2.5, Weight::Bold),
        );
        assert!(near(width("AVffi", 2.5, Weight::Bold), left + right));
        assert!(near(width("", 2.5, Weight::Plain), 0.0));
    }

    #[test]
    fn anchors_shift_back_along_and_down_across() {
        let (at, text, height) = (At::new(100.0, 50.0), "560", 2.5);
        let wide = width(text, height, Weight::Plain);
        for (along, back) in [(Along::Start, 0.0), (Along::Middle, 0.5), (Along::End, 1.0)] {
            for (across, down) in [
                (Across::Baseline, 0.0),
                (Across::Middle, 0.5),
                (Across::Top, 1.0),
            ] {
                let anchor = Anchor { along, across };
                let level = baseline_origin(at, text, height, anchor, Turn::Level, Weight::Plain);
                let up = baseline_origin(at, text, height, anchor, Turn::Up, Weight::Plain);
                assert!(near(level.x, at.x - back * wide) && near(level.y, at.y - down * height));
                assert!(near(up.x, at.x + down * height) && near(up.y, at.y - back * wide));
            }
        }
    }

    #[test]
    fn turning_a_text_turns_its_box() {
        let (at, text) = (At::new(10.0, 20.0), "depth 296");
        let level = bounds(at, text, 2.5, START, Turn::Level, Weight::Plain);
        let up = bounds(at, text, 2.5, START, Turn::Up, Weight::Plain);
        assert!(near(level.size.width, up.size.height) && near(level.size.height, up.size.width));
        assert!(
            near(level.min_x(), 10.0) && near(level.max_y(), 22.5),
            "{level:?}"
        );
        assert!(
            level.min_y() < 20.0,
            "descenders hang below the baseline: {level:?}"
        );
        assert!(near(up.min_y(), 20.0) && near(up.min_x(), 7.5), "{up:?}");
        assert!(up.max_x() > 10.0, "descenders hang to the right: {up:?}");
    }

    #[test]
    fn unprintable_characters_are_replaced_or_dropped() {
        assert!(matches!(printable("35 × 17.5 Ø"), Cow::Borrowed(_)));
        assert_eq!(printable("a\tb\r\nc\u{A0}d\u{2009}e"), "a b  c d e");
        assert_eq!(
            printable("a\0b\u{7}\u{9F}\u{FFFF}\u{1FFFE}"),
            "a\u{FFFD}b\u{FFFD}\u{FFFD}\u{FFFD}\u{FFFD}"
        );
        assert_eq!(printable("mugs\u{202E}gnp"), "mugs\u{FFFD}gnp");
        assert_eq!(printable("soft\u{AD}hy\u{200D}phen\u{FE0F}"), "softhyphen");
        assert_eq!(printable("3\u{2044}16"), "3/16");
        assert!(near(
            width("a\u{AD}b", 2.5, Weight::Plain),
            width("ab", 2.5, Weight::Plain)
        ));
    }

    #[test]
    fn fractions_are_set_and_dates_are_not() {
        for (plain, set) in [
            ("1-29/64\"", "1²⁹⁄₆₄\""),
            ("5/8", "⁵⁄₈"),
            ("23-5/8\" × 7\"", "23⁵⁄₈\" × 7\""),
            ("-3/16", "-³⁄₁₆"),
            ("12/11/2026", "12/11/2026"),
            ("a/b 3/ /4", "a/b 3/ /4"),
            ("2.5/8", "2.5/8"),
        ] {
            assert_eq!(set_fractions(plain), set);
            assert_eq!(printable(set), set, "printed as it is set");
            assert_eq!(missing_glyphs(set), Vec::<char>::new());
        }
    }

    /// Signs of technical sheets that the font lacks: sheets draw them as shapes or write
    /// others (`Ø` and `–` are there).
    #[test]
    fn the_signs_that_the_font_lacks_are_known() {
        let present = "ABCxyz0189 ×Øø°±–—½¼¾⅛⅜⅝⅞²³µ·•…“”„‘’′″&<>\"'/\u{FFFD}äöüßéèçñåłőğ ΩΔЖ";
        assert_eq!(missing_glyphs(present), Vec::<char>::new());
        let lacking = "⌀−≤≥≠≈→←↑↓↔∠√∞✓■▲●";
        assert_eq!(missing_glyphs(lacking), lacking.chars().collect::<Vec<_>>());
        assert_eq!(missing_glyphs("⌀35 ⌀5 →"), vec!['⌀', '→']);
    }
}
