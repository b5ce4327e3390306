//! File names that every file system takes.

use std::collections::BTreeSet;

/// Longest file name that the common file systems take, bytes.
const LONGEST_NAME: usize = 255;

/// Greatest length of a file name that is made here, characters and bytes; what is left up to
/// [`LONGEST_NAME`] is for an extension and a number.
const LONGEST: (usize, usize) = (80, 200);

/// Name of a file that would have none.
const UNNAMED: &str = "unnamed";

/// Turns any text into a plain file name that all common systems take: never empty, no folder
/// parts, no leading or trailing dots, at most 80 characters.
///
/// Slashes and other signs that some system forbids become hyphens; control characters, invisible
/// ones and those that steer the reading direction are dropped; names reserved for devices get an
/// underscore. A short extension survives the shortening. Safe names stay as they are.
#[must_use]
pub fn safe_file_name(text: &str) -> String {
    let mut name = String::new();
    for c in text.chars().filter_map(plain) {
        let repeats = matches!(c, '-' | ' ' | '.') && name.ends_with(c);
        if !repeats {
            name.push(c);
        }
    }
    let name = shortened(&unreserved(trimmed(&name)));
    if name.is_empty() {
        UNNAMED.to_owned()
    } else {
        name
    }
}

/// Makes the names of one set differ even where capitals do not count: later ones get `-2`, `-3`
/// and so on before the extension. Order is kept, and a name that is free is never changed.
#[must_use]
pub fn unique_names<N: AsRef<str>>(names: impl IntoIterator<Item = N>) -> Vec<String> {
    let names: Vec<String> = names
        .into_iter()
        .map(|name| name.as_ref().to_owned())
        .collect();
    let mut taken = BTreeSet::new();
    let first: Vec<bool> = names
        .iter()
        .map(|name| taken.insert(folded(name)))
        .collect();
    let unique = names.into_iter().zip(first).map(|(name, first)| {
        if first {
            return name;
        }
        let (stem, extension) = split(&name);
        let mut number = 2_u64;
        loop {
            let candidate = format!("{stem}-{number}{extension}");
            if taken.insert(folded(&candidate)) {
                return candidate;
            }
            number += 1;
        }
    });
    unique.collect()
}

/// Whether all common systems take a name as it stands for a file right in a folder, and it shows
/// as what it is.
pub(crate) fn is_plain(name: &str) -> bool {
    !name.is_empty()
        && name.len() <= LONGEST_NAME
        && name.chars().all(|c| plain(c) == Some(c))
        && trimmed(name) == name
        && unreserved(name) == name
}

/// A name as systems that ignore capitals compare it.
#[must_use]
pub fn folded(name: &str) -> String {
    name.to_lowercase()
}

/// What stands for a character in a file name; `None` when nothing does.
fn plain(c: char) -> Option<char> {
    match c {
        '/' | '\\' | ':' | '*' | '?' | '"' | '<' | '>' | '|' => Some('-'),
        '\t' | '\n' | '\r' => Some(' '),
        '\u{AD}' | '\u{61C}' | '\u{200B}'..='\u{200F}' | '\u{FEFF}' => None,
        '\u{202A}'..='\u{202E}' | '\u{2060}'..='\u{206F}' | '\u{180E}' => None,
        '\u{FFF9}'..='\u{FFFB}' | '\u{E0000}'..='\u{E007F}' => None,
        _ if c.is_control() || u32::from(c) & 0xFFFE == 0xFFFE => None,
        _ if c.is_whitespace() => Some(' '),
        _ => Some(c),
    }
}

fn trimmed(name: &str) -> &str {
    name.trim_matches([' ', '.', '-'])
}

/// Stem and extension with its dot; only a short plain ending counts as an extension.
fn split(name: &str) -> (&str, &str) {
    match name.rfind('.').map(|dot| name.split_at(dot)) {
        Some((stem, extension))
            if !stem.is_empty()
                && (2..=9).contains(&extension.len())
                && extension.chars().skip(1).all(|c| c.is_ascii_alphanumeric()) =>
        {
            (stem, extension)
        }
        _ => (name, ""),
    }
}

/// Device names of one system are no file names there, whatever follows the first dot.
fn unreserved(name: &str) -> String {
    let end = name.find('.').unwrap_or(name.len());
    let (stem, rest) = name.split_at(end);
    let upper = stem.trim_end().to_ascii_uppercase();
    let numbered = ["COM", "LPT"].iter().any(|device| {
        let number = upper
            .strip_prefix(device)
            .map(|rest| rest.chars().collect::<Vec<_>>());
        matches!(number.as_deref(), Some(['0'..='9' | '¹' | '²' | '³']))
    });
    let reserved = numbered
        || matches!(
            upper.as_str(),
            "CON" | "PRN" | "AUX" | "NUL" | "CONIN$" | "CONOUT$"
        );
    if reserved {
        format!("{}_{rest}", stem.trim_end())
    } else {
        name.to_owned()
    }
}

fn shortened(name: &str) -> String {
    let (stem, extension) = split(name);
    let (characters, bytes) = (LONGEST.0 - extension.len(), LONGEST.1 - extension.len());
    let fits = |(count, (at, c)): &(usize, (usize, char))| {
        *count < characters && at + c.len_utf8() <= bytes
    };
    let kept: String = stem
        .char_indices()
        .enumerate()
        .take_while(fits)
        .map(|(_, (_, c))| c)
        .collect();
    if kept.len() == stem.len() {
        name.to_owned()
    } else {
        format!("{}{extension}", kept.trim_end_matches([' ', '.', '-']))
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    const CASES: [(&str, &str); 30] = [
        ("02-mugs-right-side.svg", "02-mugs-right-side.svg"),
        ("Küche Nord 1", "Küche Nord 1"),
        ("", "unnamed"),
        ("...", "unnamed"),
        ("\u{202E}\0", "unnamed"),
        ("../../etc/passwd", "etc-passwd"),
        ("..\\..\\boot.ini", "boot.ini"),
        ("a/b\\c:d", "a-b-c-d"),
        ("C:\\plans", "C-plans"),
        ("what?*\"<>|", "what"),
        ("mugs\u{202E}gnp.exe", "mugsgnp.exe"),
        ("tab\there\nand\u{7}", "tab here and"),
        (".hidden", "hidden"),
        ("--help", "help"),
        ("trailing. ", "trailing"),
        ("a   b", "a b"),
        ("con", "con_"),
        ("Con.tar.gz", "Con_.tar.gz"),
        ("nul .txt", "nul_.txt"),
        ("COM1", "COM1_"),
        ("lpt².pdf", "lpt²_.pdf"),
        ("COM10", "COM10"),
        ("console", "console"),
        ("zero\u{200B}width\u{FEFF}", "zerowidth"),
        ("\u{5D0}\u{200F}\u{5D1}", "\u{5D0}\u{5D1}"),
        ("galley \u{1F6A2}.dxf", "galley \u{1F6A2}.dxf"),
        ("/etc/../..", "etc"),
        ("a\u{0}.\u{1B}[2Jdxf", "a.[2Jdxf"),
        ("\u{2028}line\u{85}", "line"),
        ("hidden\u{E0041}\u{FFF9}\u{180E} sign", "hidden sign"),
    ];

    #[test]
    fn odd_names_become_plain_ones() {
        for (text, name) in CASES {
            assert_eq!(safe_file_name(text), name, "{text:?}");
        }
    }

    #[test]
    fn safe_names_stay_as_they_are() {
        let long = "x".repeat(300) + ".pdf";
        for text in CASES.iter().map(|(text, _)| *text).chain([long.as_str()]) {
            let once = safe_file_name(text);
            assert_eq!(safe_file_name(&once), once, "{text:?}");
            assert!(is_plain(&once), "{text:?}");
        }
    }

    #[test]
    fn long_names_are_cut_and_keep_their_extension() {
        let name = safe_file_name(&("x".repeat(300) + ".pdf"));
        assert_eq!(
            (name.chars().count(), name.ends_with("x.pdf")),
            (80, true),
            "{name}"
        );
        let wide = safe_file_name(&"\u{1F6AA}".repeat(300));
        assert!(wide.len() <= 200 && wide.chars().count() <= 80, "{wide}");
        let dotted = safe_file_name(&("a".repeat(79) + ".b c"));
        assert_eq!(dotted, "a".repeat(79), "no dot is left at the end");
    }

    #[test]
    fn names_of_one_set_differ_whatever_their_capitals() {
        assert_eq!(
            unique_names(["a.svg", "A.svg", "b.svg", "a.svg"]),
            ["a.svg", "A-2.svg", "b.svg", "a-3.svg"]
        );
        assert_eq!(
            unique_names(["a", "a", "a-2", "a"]),
            ["a", "a-3", "a-2", "a-4"]
        );
        assert_eq!(unique_names(["Ärmel", "ärmel"]), ["Ärmel", "ärmel-2"]);
        assert_eq!(unique_names(["1.25 m", "1.25 m"]), ["1.25 m", "1.25 m-2"]);
    }
}
