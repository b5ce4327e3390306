//! On which line of a RON text a field stands.
//!
//! A problem is found in the value that was read, where lines are gone; the text is walked along
//! the path of the field to find them again. The text has been read before, so it is well formed
//! and not too deep.

/// The line, from 1, on which the value of `path` begins, e.g. `sizes[1] "2".carries.min`. Names in
/// variants (`All`, `Some`, `Spring`) are no part of a path. Where the path leads nowhere (a value
/// that is missing), the line of the last part that is there.
pub(super) fn line_of(text: &str, path: &str) -> usize {
    let mut walk = Walk {
        bytes: text.as_bytes(),
        at: 0,
        deepest: 0,
    };
    walk.follow(&parts(path));
    let before = text.as_bytes().get(..walk.deepest).unwrap_or_default();
    1 + before.iter().filter(|byte| **byte == b'\n').count()
}

/// The parts of a path: `sizes[1] "2".carries.by["3"]` is sizes, 1, carries, by, 3.
fn parts(path: &str) -> Vec<String> {
    let mut parts = Vec::new();
    let mut rest = path;
    while !rest.is_empty() {
        if let Some(after) = rest.strip_prefix("[\"") {
            let (name, more) = after.split_once("\"]").unwrap_or((after, ""));
            parts.push(name.to_owned());
            rest = more;
        } else if let Some(after) = rest.strip_prefix('[') {
            let (index, more) = after.split_once(']').unwrap_or((after, ""));
            parts.push(index.to_owned());
            // A name behind an index only helps the reader.
            rest = match more.strip_prefix(" \"") {
                Some(name) => name.split_once('"').map_or("", |(_, more)| more),
                None => more,
            };
        } else {
            rest = rest.strip_prefix('.').unwrap_or(rest);
            let end = rest.find(['.', '[']).unwrap_or(rest.len());
            let (name, more) = rest.split_at(end);
            if name.is_empty() && more.starts_with('.') {
                rest = &more[1..];
                continue;
            }
            parts.push(name.to_owned());
            rest = more;
        }
    }
    parts
}

struct Walk<'a> {
    bytes: &'a [u8],
    at: usize,
    /// Where the last part of the path that is there begins.
    deepest: usize,
}

impl Walk<'_> {
    /// Goes into the value that begins here; whether the whole path was found.
    fn follow(&mut self, path: &[String]) -> bool {
        self.blank();
        self.deepest = self.deepest.max(self.at);
        let Some((first, rest)) = path.split_first() else {
            return true;
        };
        self.word();
        self.blank();
        match self.peek() {
            Some(b'(') => self.round(path, first, rest),
            Some(open @ (b'[' | b'{')) => {
                self.at += 1;
                let mut index = 0;
                while self.more() {
                    let matched = if open == b'[' {
                        first.parse() == Ok(index)
                    } else {
                        let from = self.at;
                        self.skip();
                        let key = self.bytes.get(from..self.at).unwrap_or_default();
                        self.after(b':');
                        key == format!("\"{first}\"").as_bytes()
                    };
                    if matched {
                        return self.follow(rest);
                    }
                    self.skip();
                    self.after(b',');
                    index += 1;
                }
                false
            }
            _ => false,
        }
    }

    /// A struct, a tuple, or what a variant holds.
    fn round(&mut self, path: &[String], first: &str, rest: &[String]) -> bool {
        self.at += 1;
        let mut index = 0_usize;
        while self.more() {
            let from = self.at;
            let word = self.word();
            self.blank();
            let is_field = word.is_some() && self.peek() == Some(b':');
            if is_field {
                self.at += 1;
                if word.is_some_and(|(a, b)| self.bytes.get(a..b) == Some(first.as_bytes())) {
                    return self.follow(rest);
                }
            } else {
                self.at = from;
                if first.parse() == Ok(index) {
                    return self.follow(rest);
                }
                let alone = index == 0 && first.parse::<usize>().is_err();
                if alone || matches!(self.peek(), Some(b'[' | b'{')) {
                    return self.follow(path);
                }
            }
            self.skip();
            self.after(b',');
            index += 1;
        }
        false
    }

    /// Whether another element follows; passes the closing bracket else.
    fn more(&mut self) -> bool {
        self.blank();
        match self.peek() {
            None => false,
            Some(b')' | b']' | b'}') => {
                self.at += 1;
                false
            }
            Some(_) => true,
        }
    }

    fn peek(&self) -> Option<u8> {
        self.bytes.get(self.at).copied()
    }

    /// Passes a mark that may stand here.
    fn after(&mut self, mark: u8) {
        self.blank();
        if self.peek() == Some(mark) {
            self.at += 1;
        }
        self.blank();
    }

    /// Passes a name; where it is.
    fn word(&mut self) -> Option<(usize, usize)> {
        let from = self.at;
        while self
            .peek()
            .is_some_and(|byte| byte.is_ascii_alphanumeric() || byte == b'_' || byte == b'#')
        {
            self.at += 1;
        }
        let starts = self.bytes.get(from).is_some_and(u8::is_ascii_alphabetic);
        if starts {
            Some((from, self.at))
        } else {
            self.at = from;
            None
        }
    }

    /// Passes blanks and comments.
    fn blank(&mut self) {
        loop {
            let rest = self.bytes.get(self.at..).unwrap_or_default();
            if rest.first().is_some_and(u8::is_ascii_whitespace) {
                self.at += 1;
            } else if rest.starts_with(b"//") {
                self.at += rest.iter().position(|b| *b == b'\n').unwrap_or(rest.len());
            } else if rest.starts_with(b"/*") {
                let end = rest.windows(2).position(|pair| pair == b"*/");
                self.at += end.map_or(rest.len(), |end| end + 2);
            } else {
                return;
            }
        }
    }

    /// Passes one value.
    fn skip(&mut self) {
        let mut depth = 0_usize;
        loop {
            self.blank();
            match self.peek() {
                None => return,
                Some(b'(' | b'[' | b'{') => {
                    depth += 1;
                    self.at += 1;
                }
                Some(b')' | b']' | b'}') if depth == 0 => return,
                Some(b')' | b']' | b'}') => {
                    depth -= 1;
                    self.at += 1;
                    if depth == 0 {
                        return;
                    }
                }
                Some(b',' | b':') if depth == 0 => return,
                Some(b'"') => self.string(),
                Some(_) => self.at += 1,
            }
        }
    }

    fn string(&mut self) {
        self.at += 1;
        while let Some(byte) = self.peek() {
            self.at += if byte == b'\\' { 2 } else { 1 };
            if byte == b'"' {
                return;
            }
        }
    }
}

#[cfg(test)]
mod tests {
    use super::line_of;

    const TEXT: &str = r#"// a comment (with a bracket
(
    name: "odd \" ( name",
    side: [
        (50.0, 58.0),
        (117.0, /* ] */ 58.0),
    ],
    by: BySize({"1": 1.0,
        "2": 2.0}),
    some: Some((
        deep: Spring(table: [
            (degrees: 0.0),
            (degrees: 9.0)],
            turns: 3.0,
        ),
    )),
)
"#;

    #[test]
    fn fields_are_found_on_their_lines() {
        for (path, line) in [
            ("name", 3),
            ("side[1]", 6),
            ("side[1].1", 6),
            ("side[0].0", 5),
            ("by[\"2\"]", 9),
            ("some.deep.table[1].degrees", 13),
            ("some.deep.table[1] \"x\".degrees", 13),
            ("some.deep.turns", 14),
            ("some.deep.nothing", 11),
        ] {
            assert_eq!(line_of(TEXT, path), line, "{path}");
        }
    }
}
