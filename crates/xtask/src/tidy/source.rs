//! A Rust file as the rules see it: the paths that it names, the fields that it declares, its
//! attributes. Comments and the insides of texts are no code.

use std::str::FromStr;

use anyhow::{Result, anyhow};
use proc_macro2::{Delimiter, Spacing, TokenStream, TokenTree};

/// A path of two or more words, or one that is used: `std::fs::read` is `["std", "fs", "read"]`.
/// The branches of a `use` are paths of their own.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct NamedPath {
    pub(super) words: Vec<String>,
    /// Counted from 1.
    pub(super) line: usize,
    /// Whether it stands in code for tests only.
    pub(super) in_test: bool,
    /// In how many modules within the file it stands.
    pub(super) depth: usize,
}

/// A field of a public struct or enum: `opening: usize`, or `Shelf(usize)`.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Field {
    pub(super) name: String,
    pub(super) kind: String,
    /// Counted from 1.
    pub(super) line: usize,
}

/// A value that is made (or taken apart) by its name: `PlacedBore { … }`.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Made {
    pub(super) name: String,
    /// Counted from 1.
    pub(super) line: usize,
    /// Whether it stands in code for tests only.
    pub(super) in_test: bool,
}

/// A Rust file.
pub(super) struct Source {
    pub(super) path: String,
    /// How many lines it has.
    pub(super) lines: usize,
    pub(super) paths: Vec<NamedPath>,
    pub(super) fields: Vec<Field>,
    pub(super) made: Vec<Made>,
    /// First words of its attributes with their lines: `#[allow(…)]` is `allow`.
    pub(super) attributes: Vec<(String, usize)>,
    /// Modules in files of their own that it declares for tests only.
    pub(super) test_modules: Vec<String>,
    /// Single words: the names of crates in `use x;`, macros and derives.
    pub(super) words: Vec<String>,
}

impl Source {
    /// Reads a file.
    ///
    /// # Errors
    ///
    /// If its brackets or texts do not close.
    pub(super) fn read(path: &str, text: &str) -> Result<Self> {
        let tokens = TokenStream::from_str(text).map_err(|error| anyhow!("{error}"))?;
        let tokens: Vec<TokenTree> = tokens.into_iter().collect();
        let mut source = Self {
            path: path.to_owned(),
            lines: text.lines().count(),
            paths: Vec::new(),
            fields: Vec::new(),
            made: Vec::new(),
            attributes: Vec::new(),
            test_modules: Vec::new(),
            words: Vec::new(),
        };
        source.take(
            &tokens,
            Within {
                in_test: false,
                depth: 0,
            },
        );
        Ok(source)
    }

    /// Takes up what stands in a run of tokens.
    fn take(&mut self, tokens: &[TokenTree], within: Within) {
        let mut at = 0;
        // What the next item is: for tests only, public.
        let (mut for_tests, mut public) = (false, false);
        while let Some(token) = tokens.get(at) {
            match token {
                TokenTree::Punct(mark) if mark.as_char() == '#' => {
                    if let Some(words) = self.attribute(&tokens[at..], within) {
                        for_tests |= words == "cfg(test)" || words == "test";
                    }
                }
                TokenTree::Ident(_) => {
                    let here = Within {
                        in_test: within.in_test || for_tests,
                        ..within
                    };
                    let (rest, word) = (&tokens[at..], token.to_string());
                    self.take_made(&tokens[..at], rest, here);
                    match word.as_str() {
                        "use" => at += self.used(&rest[1..], here),
                        "mod" => {
                            at += self.module(&rest[1..], here, for_tests);
                            for_tests = false;
                        }
                        "struct" | "enum" if public => self.declaration(&rest[1..]),
                        _ => at += self.path(rest, here),
                    }
                    // `pub(crate)` is not public.
                    let crate_only = matches!(tokens.get(at + 1), Some(TokenTree::Group(_)));
                    public = word == "pub" && !crate_only;
                }
                TokenTree::Group(group) => {
                    let inner: Vec<TokenTree> = group.stream().into_iter().collect();
                    self.take(
                        &inner,
                        Within {
                            in_test: within.in_test || for_tests,
                            ..within
                        },
                    );
                    for_tests &= group.delimiter() != Delimiter::Brace;
                }
                TokenTree::Punct(mark) if mark.as_char() == ';' => for_tests = false,
                _ => {}
            }
            at += 1;
        }
    }

    /// A value that is made at the start of `tokens`, unless what stands before says that it is a type
    /// or a body: `struct A {`, `impl A {`, `for A {`, `-> A {`.
    fn take_made(&mut self, before: &[TokenTree], tokens: &[TokenTree], within: Within) {
        let is_brace = |token: &TokenTree| matches!(token, TokenTree::Group(group) if group.delimiter() == Delimiter::Brace);
        let last = before.last().map(ToString::to_string).unwrap_or_default();
        let is_type = [
            "struct", "enum", "union", "trait", "impl", "for", "mod", ">",
        ]
        .contains(&last.as_str());
        if tokens.get(1).is_some_and(is_brace) && !is_type {
            let (name, line) = (tokens[0].to_string(), line(&tokens[0]));
            self.made.push(Made {
                name,
                line,
                in_test: within.in_test,
            });
        }
    }

    /// An attribute at the start of `tokens`: takes up its first word, gives its words run together.
    fn attribute(&mut self, tokens: &[TokenTree], within: Within) -> Option<String> {
        let inner = usize::from(is_mark(tokens.get(1)?, '!'));
        let TokenTree::Group(group) = tokens.get(1 + inner)? else {
            return None;
        };
        let first = group.stream().into_iter().next()?.to_string();
        if !within.in_test || first == "allow" {
            self.attributes.push((first, line(&tokens[0])));
        }
        Some(group.stream().to_string().replace(' ', ""))
    }

    /// The tree of a `use`, which ends with `;`: takes up its branches, gives how many tokens it is.
    fn used(&mut self, tokens: &[TokenTree], within: Within) -> usize {
        let length = tokens
            .iter()
            .position(|token| is_mark(token, ';'))
            .unwrap_or(tokens.len());
        self.branches(&tokens[..length], &[], within);
        length
    }

    /// The branches of a `use`, after the words that lead to them.
    fn branches(&mut self, tokens: &[TokenTree], before: &[String], within: Within) {
        for branch in tokens.split(|token| is_mark(token, ',')) {
            let Some(first) = branch.first() else {
                continue;
            };
            let mut words = before.to_vec();
            let mut renamed = false;
            for token in branch {
                match token {
                    TokenTree::Ident(word) if word == "as" => renamed = true,
                    TokenTree::Ident(word) if !renamed => words.push(word.to_string()),
                    TokenTree::Group(group) => {
                        let inner: Vec<TokenTree> = group.stream().into_iter().collect();
                        self.branches(&inner, &words, within);
                        words.clear();
                    }
                    _ => {}
                }
            }
            if !words.is_empty() {
                self.paths.push(within.path(words, line(first)));
            }
        }
    }

    /// A module: one in a file of its own, or one whose inside follows. Gives how many tokens it is.
    fn module(&mut self, tokens: &[TokenTree], within: Within, for_tests: bool) -> usize {
        let Some(TokenTree::Ident(name)) = tokens.first() else {
            return 0;
        };
        if let Some(TokenTree::Group(group)) = tokens.get(1) {
            let inner: Vec<TokenTree> = group.stream().into_iter().collect();
            self.take(
                &inner,
                Within {
                    depth: within.depth + 1,
                    ..within
                },
            );
        } else if for_tests {
            self.test_modules.push(name.to_string());
        }
        2
    }

    /// The fields of a struct or enum, whose name comes first.
    fn declaration(&mut self, tokens: &[TokenTree]) {
        let body = tokens
            .iter()
            .take_while(|token| !is_mark(token, ';'))
            .find_map(|token| match token {
                TokenTree::Group(group) if group.delimiter() == Delimiter::Brace => Some(group),
                _ => None,
            });
        if let Some(group) = body {
            self.take_fields(&group.stream().into_iter().collect::<Vec<_>>());
        }
    }

    fn take_fields(&mut self, tokens: &[TokenTree]) {
        for part in tokens.windows(2) {
            let TokenTree::Ident(name) = &part[0] else {
                continue;
            };
            match &part[1] {
                TokenTree::Group(group) if group.delimiter() == Delimiter::Brace => {
                    self.take_fields(&group.stream().into_iter().collect::<Vec<_>>());
                }
                TokenTree::Group(group)
                    if group.delimiter() == Delimiter::Parenthesis && name != "pub" =>
                {
                    self.field(
                        name.to_string(),
                        &group.stream().to_string(),
                        line(&part[0]),
                    );
                }
                _ => {}
            }
        }
        for part in tokens.split(|token| is_mark(token, ',')) {
            let Some(colon) = part.iter().position(|token| is_mark(token, ':')) else {
                continue;
            };
            let (Some(name), kind) = (part[..colon].last(), &part[colon + 1..]) else {
                continue;
            };
            let kind: String = kind.iter().map(ToString::to_string).collect();
            self.field(name.to_string(), &kind, line(name));
        }
    }

    fn field(&mut self, name: String, kind: &str, line: usize) {
        self.fields.push(Field {
            name,
            kind: kind.replace(' ', ""),
            line,
        });
    }

    /// A word, or a path of words; gives how many tokens follow the first.
    fn path(&mut self, tokens: &[TokenTree], within: Within) -> usize {
        let mut words = vec![tokens[0].to_string()];
        let mut at = 0;
        while let [colon, second, TokenTree::Ident(word), ..] = &tokens[at + 1..] {
            if !is_joint_colon(colon) || !is_mark(second, ':') {
                break;
            }
            words.push(word.to_string());
            at += 3;
        }
        if words.len() > 1 {
            self.paths.push(within.path(words, line(&tokens[0])));
        } else {
            self.words.append(&mut words);
        }
        at
    }
}

/// Where a token stands.
#[derive(Clone, Copy)]
struct Within {
    in_test: bool,
    depth: usize,
}

impl Within {
    const fn path(self, words: Vec<String>, line: usize) -> NamedPath {
        NamedPath {
            words,
            line,
            in_test: self.in_test,
            depth: self.depth,
        }
    }
}

fn is_mark(token: &TokenTree, wanted: char) -> bool {
    matches!(token, TokenTree::Punct(mark) if mark.as_char() == wanted)
}

fn is_joint_colon(token: &TokenTree) -> bool {
    matches!(token, TokenTree::Punct(mark) if mark.as_char() == ':' && mark.spacing() == Spacing::Joint)
}

fn line(token: &TokenTree) -> usize {
    token.span().start().line
}

#[cfg(test)]
mod tests {
    use super::*;

    fn paths(text: &str) -> Vec<String> {
        Source::read("a.rs", text)
            .unwrap()
            .paths
            .iter()
            .map(|path| path.words.join("::"))
            .collect()
    }

    #[test]
    fn each_branch_of_a_use_is_a_path() {
        let found =
            paths("use std::{fs::{self, File}, fmt};\nuse super::panel as board;\nuse crate::*;");
        assert_eq!(
            found,
            [
                "std::fs::self",
                "std::fs::File",
                "std::fmt",
                "super::panel",
                "crate"
            ]
        );
    }

    #[test]
    fn paths_stand_in_code_macros_and_generics_and_not_in_words() {
        let found = paths(
            "// std::env\nfn a() -> Vec<std::fs::File> { format!(\"std::net {}\", std::time::now()) }",
        );
        assert_eq!(found, ["std::fs::File", "std::time::now"]);
    }

    #[test]
    fn code_for_tests_is_told_apart() {
        let text = "#[cfg(test)]\nmod tests { use super::a; fn f() { b::c() } }\n#[cfg(test)] mod more;\nuse d::e;";
        let source = Source::read("a.rs", text).unwrap();
        let seen: Vec<_> = source
            .paths
            .iter()
            .map(|path| (path.words[0].as_str(), path.in_test, path.depth))
            .collect();
        assert_eq!(seen, [("super", true, 1), ("b", true, 1), ("d", false, 0)]);
        assert_eq!(source.test_modules, ["more"]);
    }

    #[test]
    fn fields_are_those_of_public_types() {
        let text = "pub struct A { pub x: usize, y: Option<usize> }\nstruct B { z: usize }\n\
            pub enum C { D(usize), E { w: usize } }\npub(crate) struct F { v: u8 }";
        let source = Source::read("a.rs", text).unwrap();
        let seen: Vec<_> = source
            .fields
            .iter()
            .map(|it| (it.name.as_str(), it.kind.as_str(), it.line))
            .collect();
        let expected = [
            ("x", "usize", 1),
            ("y", "Option<usize>", 1),
            ("D", "usize", 3),
            ("w", "usize", 3),
        ];
        assert_eq!(seen, expected);
    }
}
