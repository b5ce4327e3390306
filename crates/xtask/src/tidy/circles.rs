//! Files of a crate that need each other in a circle.

use std::collections::{BTreeMap, BTreeSet};

use super::allowed::{CIRCLES, Circle};
use super::modules::{Modules, module, test_modules};
use super::rule::Rule;
use super::source::NamedPath;
use super::tree::{Problem, Tree};

pub(super) const RULE: Rule = Rule {
    name: "circles",
    reason: "files that need each other can only be read, tested and changed together",
    find: |tree| find(tree, CIRCLES),
};

fn find(tree: &Tree, allowed: &[Circle]) -> Vec<Problem> {
    let mut problems = Vec::new();
    let mut met = BTreeSet::new();
    for circle in circles(tree) {
        let known = allowed.iter().enumerate().position(|(at, allowed)| {
            !met.contains(&at)
                && circle.files.len() <= allowed.at_most
                && circle.files.iter().all(|file| is_in(file, allowed.files))
        });
        match known {
            Some(at) => {
                met.insert(at);
            }
            None => problems.push(Problem::new(&circle.files[0], circle.line, circle.words())),
        }
    }
    for (_, idle) in allowed
        .iter()
        .enumerate()
        .filter(|(at, _)| !met.contains(at))
    {
        let what = format!(
            "no such circle any more: take it off the list in allowed.rs ({})",
            idle.why
        );
        problems.push(Problem::new(idle.files[0], 1, what));
    }
    problems
}

/// Whether a file is one of these, or lies in one of these folders.
fn is_in(file: &str, places: &[&str]) -> bool {
    places
        .iter()
        .any(|place| file == *place || (place.ends_with('/') && file.starts_with(place)))
}

/// Files that all need each other.
struct Found {
    files: Vec<String>,
    /// A line of the first one that needs another.
    line: usize,
    /// Who needs whom within the circle.
    needs: Vec<(String, String)>,
}

impl Found {
    fn words(&self) -> String {
        let arrows: Vec<_> = self
            .needs
            .iter()
            .map(|(from, to)| format!("{from} → {to}"))
            .collect();
        format!(
            "a circle of {} files: {}",
            self.files.len(),
            arrows.join(", ")
        )
    }
}

/// All circles of the tree, code for tests left out.
fn circles(tree: &Tree) -> Vec<Found> {
    let mut modules = Modules::new();
    for source in &tree.sources {
        if let Some(words) = module(&source.path) {
            modules.insert(words, source.path.clone());
        }
    }
    let tests = test_modules(tree);
    let mut edges: BTreeMap<String, BTreeMap<String, usize>> = BTreeMap::new();
    for source in &tree.sources {
        let Some(own) = module(&source.path) else {
            continue;
        };
        if tests.iter().any(|test| own.starts_with(test)) {
            continue;
        }
        for path in source.paths.iter().filter(|path| !path.in_test) {
            if let Some(other) = target(&modules, &own, path).filter(|other| **other != source.path)
            {
                edges
                    .entry(source.path.clone())
                    .or_default()
                    .entry(other.clone())
                    .or_insert(path.line);
            }
        }
    }
    components(&edges)
}

/// The file in which the thing at a path stands, seen from the module `own`, if it is of this crate.
fn target<'a>(modules: &'a Modules, own: &[String], path: &NamedPath) -> Option<&'a String> {
    let mut words = path.words.as_slice();
    let mut place = own.to_vec();
    // A module within the file has the file's module above it.
    let mut ups = path.depth;
    match words.first()?.as_str() {
        "crate" => {
            place.truncate(1);
            words = &words[1..];
        }
        "self" => words = &words[1..],
        "super" => {
            while words.first().is_some_and(|word| word == "super") {
                if ups > 0 {
                    ups -= 1;
                } else {
                    drop(place.pop());
                }
                words = &words[1..];
            }
        }
        // A path of another crate, or one that starts at a child.
        first => {
            place.push(first.to_owned());
            if !modules.contains_key(&place) {
                return None;
            }
            words = &words[1..];
        }
    }
    for word in words {
        place.push(word.clone());
        if !modules.contains_key(&place) {
            place.pop();
            break;
        }
    }
    modules.get(&place)
}

/// Sets of files that can all be reached from each other, and have more than one file.
fn components(edges: &BTreeMap<String, BTreeMap<String, usize>>) -> Vec<Found> {
    let reach: BTreeMap<&String, BTreeSet<&String>> = edges
        .keys()
        .map(|file| (file, reachable(edges, file)))
        .collect();
    let mut taken = BTreeSet::new();
    let mut found = Vec::new();
    for (file, others) in &reach {
        let back = |other: &&&String| reach.get(**other).is_some_and(|from| from.contains(file));
        let files: Vec<String> = others
            .iter()
            .filter(back)
            .map(|file| (*file).clone())
            .collect();
        if !files.contains(file) || !taken.insert(files.clone()) {
            continue;
        }
        let mut needs = Vec::new();
        for from in &files {
            let to = edges[from].keys().filter(|to| files.contains(to));
            needs.extend(to.map(|to| (from.clone(), to.clone())));
        }
        let line = edges[&files[0]]
            .iter()
            .find(|(to, _)| files.contains(to))
            .map_or(1, |(_, line)| *line);
        found.push(Found { files, line, needs });
    }
    found
}

/// The files that a file needs, and those that they need, and so on.
fn reachable<'a>(
    edges: &'a BTreeMap<String, BTreeMap<String, usize>>,
    from: &'a String,
) -> BTreeSet<&'a String> {
    let mut seen = BTreeSet::new();
    let mut open = vec![from];
    while let Some(file) = open.pop() {
        let next = edges.get(file).into_iter().flat_map(BTreeMap::keys);
        open.extend(next.filter(|file| seen.insert(*file)));
    }
    seen
}

#[cfg(test)]
mod tests {
    use super::*;

    const CIRCLE: [(&str, &str); 4] = [
        ("crates/x/src/lib.rs", "mod a;\nmod b;\nmod c;"),
        ("crates/x/src/a.rs", "use crate::b::B;"),
        ("crates/x/src/b.rs", "fn f() { super::c::g() }"),
        (
            "crates/x/src/c.rs",
            "mod d { use super::super::a::A; }\n#[cfg(test)] mod tests { use crate::z::Y; }",
        ),
    ];

    #[test]
    fn a_circle_over_three_files_is_found() {
        let found = find(&Tree::made_up(&CIRCLE), &[]);
        assert_eq!(found.len(), 1, "{found:?}");
        assert!(
            found[0].what.starts_with("a circle of 3 files"),
            "{found:?}"
        );
    }

    #[test]
    fn a_parent_and_a_child_that_need_each_other_are_a_circle() {
        let files = [
            ("src/a.rs", "mod b;\nuse b::B;"),
            ("src/a/b.rs", "use super::A;"),
            ("src/lib.rs", "mod a;"),
        ];
        assert_eq!(find(&Tree::made_up(&files), &[]).len(), 1);
        let one_way = [
            ("src/a.rs", "mod b;\nuse b::B;"),
            ("src/a/b.rs", "use std::fmt;"),
            ("src/lib.rs", "mod a;"),
        ];
        assert_eq!(find(&Tree::made_up(&one_way), &[]), []);
    }

    #[test]
    fn what_tests_need_makes_no_circle() {
        let files = [
            (
                "src/a.rs",
                "#[cfg(test)] mod tests;\n#[cfg(test)] mod more { use crate::b::B; }",
            ),
            ("src/a/tests.rs", "use crate::b::B;\nuse super::A;"),
            ("src/b.rs", "use crate::a::A;"),
        ];
        assert_eq!(find(&Tree::made_up(&files), &[]), []);
    }

    #[test]
    fn an_allowed_circle_may_not_grow_and_an_idle_allowance_is_found() {
        let tree = Tree::made_up(&CIRCLE);
        let allow = |files, at_most| {
            [Circle {
                files,
                at_most,
                why: "one thought",
            }]
        };
        assert_eq!(find(&tree, &allow(&["crates/x/src/"], 3)), []);
        assert_eq!(
            find(
                &tree,
                &allow(&["crates/x/src/a.rs", "crates/x/src/b.rs"], 3)
            )
            .len(),
            2
        );
        assert_eq!(find(&tree, &allow(&["crates/x/src/"], 2)).len(), 2);
        // One allowance, two circles.
        let more = [
            ("crates/x/src/e.rs", "use crate::f::F;"),
            ("crates/x/src/f.rs", "use crate::e::E;"),
        ];
        let two = Tree::made_up(&[CIRCLE.as_slice(), more.as_slice()].concat());
        assert_eq!(find(&two, &allow(&["crates/x/src/"], 3)).len(), 1);
    }
}
