//! Setting running words into a column.

use crate::brush::{Brush, Lettering};
use crate::list::{At, DisplayList, Weight};
use crate::text::width;

/// Baseline to baseline of lines of this height of capitals, mm.
#[must_use]
pub fn line_pitch(height: f64) -> f64 {
    1.55 * height
}

/// `text` broken at blanks so that each line is at most `room` mm wide. A single word that is
/// wider is broken where it must.
#[must_use]
pub fn wrap(text: &str, height: f64, weight: Weight, room: f64) -> Vec<String> {
    let blank = width(" ", height, weight);
    let mut lines = Vec::new();
    let mut line = String::new();
    let mut used = 0.0;
    for word in text.split_whitespace() {
        // Widths add up: there is no kerning.
        let own = width(word, height, weight);
        if !line.is_empty() && used + blank + own <= room {
            line.push(' ');
            line.push_str(word);
            used += blank + own;
            continue;
        }
        if !line.is_empty() {
            lines.push(std::mem::take(&mut line));
        }
        (line, used) = if own <= room {
            (word.to_owned(), own)
        } else {
            let last = break_word(word, height, weight, room, &mut lines);
            let used = width(&last, height, weight);
            (last, used)
        };
    }
    if !line.is_empty() {
        lines.push(line);
    }
    lines
}

/// Breaks a word that is wider than the room; gives back its last piece.
fn break_word(
    word: &str,
    height: f64,
    weight: Weight,
    room: f64,
    lines: &mut Vec<String>,
) -> String {
    let mut piece = String::new();
    for c in word.chars() {
        piece.push(c);
        if width(&piece, height, weight) > room && piece.chars().count() > 1 {
            piece.pop();
            lines.push(std::mem::take(&mut piece));
            piece.push(c);
        }
    }
    piece
}

/// `text` in the largest of `heights` at which it fits into `room` mm; in the last of them, cut
/// short with an ellipsis, when it fits in none.
#[must_use]
pub fn fitted(text: &str, heights: &[f64], weight: Weight, room: f64) -> (String, f64) {
    for height in heights {
        if width(text, *height, weight) <= room {
            return (text.to_owned(), *height);
        }
    }
    let height = heights
        .last()
        .copied()
        .unwrap_or(crate::dimension::SMALL_FIGURE);
    let mut short: String = text.to_owned();
    while short.pop().is_some() {
        let cut = format!("{}…", short.trim_end());
        if width(&cut, height, weight) <= room {
            return (cut, height);
        }
    }
    (String::new(), height)
}

/// Lines of running words with one height.
#[derive(Debug, Clone, PartialEq)]
pub struct Block {
    lines: Vec<(String, Weight)>,
    height: f64,
}

impl Block {
    /// An empty block.
    #[must_use]
    pub const fn new(height: f64) -> Self {
        Self {
            lines: Vec::new(),
            height,
        }
    }

    /// Adds a paragraph, wrapped to `room` mm.
    pub fn add(&mut self, text: &str, weight: Weight, room: f64) {
        let wrapped = wrap(text, self.height, weight, room);
        self.lines
            .extend(wrapped.into_iter().map(|line| (line, weight)));
    }

    /// From the top of the first capitals to below the last descenders, mm.
    #[must_use]
    pub fn depth(&self) -> f64 {
        line_pitch(self.height) * self.lines.len() as f64
    }

    /// Draws the lines from `top_left` (top of the first capitals) down.
    pub fn draw(&self, list: &mut DisplayList, brush: Brush, top_left: At) {
        let mut y = top_left.y - self.height;
        for (line, weight) in &self.lines {
            let how = Lettering {
                weight: *weight,
                ..Lettering::new(self.height)
            };
            brush.text(list, At::new(top_left.x, y), line.clone(), how);
            y -= line_pitch(self.height);
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn lines_stay_within_the_room_and_lose_no_word() {
        let text = "Clamp the work and set the depth stop before the first hole";
        let lines = wrap(text, 2.5, Weight::Plain, 40.0);
        assert!(lines.len() > 1);
        assert!(
            lines
                .iter()
                .all(|line| width(line, 2.5, Weight::Plain) <= 40.0 + 1e-9)
        );
        assert_eq!(lines.join(" "), text);
    }

    #[test]
    fn a_word_too_wide_is_broken_and_kept_whole_in_sum() {
        let lines = wrap("abcdefghijklmnopqrstuvwxyz", 2.5, Weight::Plain, 10.0);
        assert!(
            lines
                .iter()
                .all(|line| width(line, 2.5, Weight::Plain) <= 10.0)
        );
        assert_eq!(lines.concat(), "abcdefghijklmnopqrstuvwxyz");
    }

    #[test]
    fn a_text_shrinks_before_it_is_cut() {
        let (same, height) = fitted("galley", &[3.5, 2.5, 1.8], Weight::Plain, 60.0);
        assert_eq!((same.as_str(), height), ("galley", 3.5));
        let (cut, height) = fitted(&"galley ".repeat(20), &[3.5, 2.5, 1.8], Weight::Plain, 30.0);
        assert!(cut.ends_with('…') && height == 1.8, "{cut}");
        assert!(width(&cut, height, Weight::Plain) <= 30.0);
    }
}
