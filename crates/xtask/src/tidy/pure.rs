//! No clock, no files, no environment where answers are worked out; no sockets anywhere.

use super::rule::Rule;
use super::source::NamedPath;
use super::tree::{Problem, Tree};

pub(super) const RULE: Rule = Rule {
    name: "pure",
    reason: "the same job gives the same answer, drawing and bytes on every machine and day, and \
             nothing leaves the machine",
    find,
};

/// Rooms that work out answers.
const PURE: [&str; 6] = ["model", "motion", "rules", "answer", "words", "drawing"];

/// Parts of `std` that they do without.
const OUTSIDE: [&str; 6] = ["fs", "time", "env", "net", "process", "thread"];

/// What tells the time, however it is named.
const CLOCKS: [&str; 2] = ["SystemTime", "Instant"];

fn find(tree: &Tree) -> Vec<Problem> {
    let mut problems = Vec::new();
    for source in &tree.sources {
        let pure = PURE
            .iter()
            .any(|room| source.path.starts_with(&format!("crates/{room}/src/")));
        let own = source.path.starts_with("crates/") || source.path.starts_with("src/");
        for path in source.paths.iter().filter(|path| !path.in_test) {
            if (pure && reaches_out(path)) || (own && opens_a_socket(path)) {
                let what = format!("`{}`", path.words.join("::"));
                problems.push(Problem::new(&source.path, path.line, what));
            }
        }
    }
    problems.extend(lints(tree));
    problems
}

/// The same lints in each pure room: they see through names and methods, which paths do not.
fn lints(tree: &Tree) -> Vec<Problem> {
    let rooms = PURE.iter().map(|room| format!("crates/{room}/"));
    let there = rooms.filter(|room| {
        tree.manifests
            .iter()
            .any(|manifest| manifest.folder() == room)
    });
    let paths: Vec<String> = there.map(|room| format!("{room}clippy.toml")).collect();
    let first = paths.iter().find_map(|path| tree.lints.get(path));
    let other = paths
        .iter()
        .filter(|path| first.is_none() || tree.lints.get(*path) != first);
    other
        .map(|path| Problem::new(path, 1, "missing, or not that of the other pure rooms"))
        .collect()
}

fn reaches_out(path: &NamedPath) -> bool {
    let of_std = path.words[0] == "std"
        && path
            .words
            .get(1)
            .is_some_and(|word| OUTSIDE.contains(&word.as_str()));
    of_std
        || path
            .words
            .iter()
            .any(|word| CLOCKS.contains(&word.as_str()))
}

fn opens_a_socket(path: &NamedPath) -> bool {
    path.words
        .starts_with(&["std".to_owned(), "net".to_owned()])
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_reaches_out_of_a_pure_room_is_found() {
        let text = "use std::{fmt, fs};\nfn a() { let now = std::time::Instant::now(); }\nfn b() { Instant::now() }\n\
            #[cfg(test)]\nmod tests { use std::fs; }\n";
        let tree = Tree::made_up(&[
            ("crates/rules/src/a.rs", text),
            ("crates/export/src/a.rs", text),
        ]);
        let lines: Vec<_> = find(&tree)
            .into_iter()
            .map(|it| (it.path, it.line))
            .collect();
        let expected = [1, 2, 3].map(|line| ("crates/rules/src/a.rs".to_owned(), line));
        assert_eq!(lines, expected);
    }

    #[test]
    fn a_pure_room_without_the_lints_of_the_others_is_found() {
        let (model, rules) = (
            "[package]\nname = \"flapwright-model\"",
            "[package]\nname = \"flapwright-rules\"",
        );
        let rooms = [
            ("crates/model/Cargo.toml", model),
            ("crates/rules/Cargo.toml", rules),
        ];
        let with =
            |more: &[(&str, &str)]| find(&Tree::made_up(&[rooms.as_slice(), more].concat())).len();
        assert_eq!(with(&[]), 2);
        assert_eq!(with(&[("crates/model/clippy.toml", "a = 1")]), 1);
        assert_eq!(
            with(&[
                ("crates/model/clippy.toml", "a = 1"),
                ("crates/rules/clippy.toml", "a = 2")
            ]),
            1
        );
        assert_eq!(
            with(&[
                ("crates/model/clippy.toml", "a = 1"),
                ("crates/rules/clippy.toml", "a = 1")
            ]),
            0
        );
    }

    #[test]
    fn a_socket_is_found_anywhere() {
        let tree = Tree::made_up(&[
            ("src/a.rs", "use std::net::TcpStream;"),
            ("crates/files/src/a.rs", "use std::net::UdpSocket;"),
        ]);
        assert_eq!(find(&tree).len(), 2);
    }
}
