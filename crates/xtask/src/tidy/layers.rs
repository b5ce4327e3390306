//! Which room may use which, and which libraries stay in which rooms.

use super::rule::Rule;
use super::tree::{Problem, Tree};

pub(super) const RULE: Rule = Rule {
    name: "layers",
    reason: "a room uses only those above it, and a library stays in the rooms that are about it: \
             what looks both ways cannot be understood or replaced alone",
    find,
};

/// The rooms from the bottom up, each with those that it may use. A package's name without
/// `flapwright-`; `flapwright` is the program itself.
const ROOMS: [(&str, &[&str]); 11] = [
    ("model", &[]),
    ("motion", &["model"]),
    ("rules", &["model", "motion"]),
    ("answer", &["model", "motion", "rules"]),
    ("words", &["model", "motion", "rules", "answer"]),
    ("drawing", &["model", "motion", "rules", "answer", "words"]),
    (
        "export",
        &[
            "model", "motion", "rules", "answer", "words", "drawing", "files",
        ],
    ),
    ("files", &["model"]),
    (
        "session",
        &[
            "model", "motion", "rules", "answer", "words", "drawing", "export", "files",
        ],
    ),
    (
        "flapwright",
        &[
            "model", "motion", "rules", "answer", "words", "drawing", "export", "files", "session",
        ],
    ),
    ("xtask", &[]),
];

/// Rooms whose tests ask a room below them: what a check finds is asked of the one answer.
const TESTS_ASK: [(&str, &str); 1] = [("rules", "answer")];

/// Libraries that only some rooms may depend on. `xtask` reads files of every kind.
const LIBRARIES: [(&[&str], &[&str]); 5] = [
    (
        &["eframe", "egui", "egui_plot", "egui_kittest", "rfd"],
        &["flapwright"],
    ),
    (
        &["krilla", "krilla-svg", "resvg", "usvg", "png", "dxf", "csv"],
        &["export", "xtask"],
    ),
    (
        &["fluent", "fluent-bundle", "fluent-syntax", "fluent-langneg"],
        &["words"],
    ),
    (&["geo", "argmin", "argmin-math"], &["motion", "drawing"]),
    (&["jiff"], &["flapwright", "session"]),
];

/// A package's name as the table has it.
fn short(package: &str) -> &str {
    package.strip_prefix("flapwright-").unwrap_or(package)
}

fn find(tree: &Tree) -> Vec<Problem> {
    let mut problems = Vec::new();
    for manifest in &tree.manifests {
        let Some(package) = manifest.package() else {
            continue;
        };
        let Some((room, below)) = ROOMS.iter().find(|(room, _)| *room == short(package)) else {
            let what = format!("{package} is no room of the table in layers.rs");
            problems.push(Problem::new(&manifest.path, 1, what));
            continue;
        };
        for dependency in manifest.dependencies() {
            let asked = (*room, short(&dependency.name));
            if dependency.for_tests && TESTS_ASK.contains(&asked) {
                continue;
            }
            if let Some(what) = objection(room, below, &dependency.name) {
                problems.push(Problem::new(&manifest.path, dependency.line, what));
            }
        }
        let ours = tree
            .sources
            .iter()
            .filter(|source| is_of(&source.path, manifest.folder()));
        for source in ours {
            for path in &source.paths {
                let Some(other) = path.words[0].strip_prefix("flapwright_") else {
                    continue;
                };
                let in_tests = path.in_test || source.path.contains("/tests/");
                if in_tests && TESTS_ASK.contains(&(*room, other)) {
                    continue;
                }
                if other != *room && !below.contains(&other) {
                    let what = format!("{room} may not use {other}");
                    problems.push(Problem::new(&source.path, path.line, what));
                }
            }
        }
    }
    problems
}

/// Why a room may not depend on a package, if so.
fn objection(room: &str, below: &[&str], dependency: &str) -> Option<String> {
    let name = short(dependency);
    let is_room = ROOMS.iter().any(|(room, _)| *room == name);
    if is_room && !below.contains(&name) {
        return Some(format!("{room} may not depend on {name}"));
    }
    let (_, rooms) = LIBRARIES
        .iter()
        .find(|(libraries, _)| libraries.contains(&dependency))?;
    (!rooms.contains(&room)).then(|| format!("{dependency} stays in {}", rooms.join(", ")))
}

/// Whether a source is one of the package in `folder`; the program's are those of `src` and `tests`.
fn is_of(path: &str, folder: &str) -> bool {
    if folder.is_empty() {
        path.starts_with("src/") || path.starts_with("tests/")
    } else {
        path.starts_with(folder)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    const MODEL: (&str, &str) = (
        "crates/model/Cargo.toml",
        "[package]\nname = \"flapwright-model\"\n",
    );

    #[test]
    fn a_room_that_looks_up_is_found_in_manifest_and_source() {
        let manifest = "[package]\nname = \"flapwright-motion\"\n[dependencies]\nflapwright-model.workspace = true\n\
            flapwright-rules.workspace = true\n";
        let tree = Tree::made_up(&[
            MODEL,
            ("crates/motion/Cargo.toml", manifest),
            (
                "crates/motion/src/a.rs",
                "use flapwright_model::b;\nfn c() { flapwright_drawing::d() }",
            ),
        ]);
        let found = find(&tree);
        let expected = [
            Problem::new(
                "crates/motion/Cargo.toml",
                5,
                "motion may not depend on rules",
            ),
            Problem::new("crates/motion/src/a.rs", 2, "motion may not use drawing"),
        ];
        assert_eq!(found, expected);
    }

    #[test]
    fn only_tests_of_the_rules_ask_the_answer() {
        let manifest = |kind: &str| {
            format!(
                "[package]\nname = \"flapwright-rules\"\n[{kind}]\nflapwright-answer.workspace = true\n"
            )
        };
        let uses = "use flapwright_answer::inspect;";
        let tree = |kind: &str, source: &'static str| {
            Tree::made_up(&[
                ("crates/rules/Cargo.toml", manifest(kind).as_str()),
                (source, uses),
            ])
        };
        let fine = find(&tree("dev-dependencies", "crates/rules/tests/rules/a.rs"));
        assert_eq!(fine, []);
        let broken = find(&tree("dependencies", "crates/rules/src/a.rs"));
        let expected = [
            Problem::new(
                "crates/rules/Cargo.toml",
                4,
                "rules may not depend on answer",
            ),
            Problem::new("crates/rules/src/a.rs", 1, "rules may not use answer"),
        ];
        assert_eq!(broken, expected);
    }

    #[test]
    fn a_library_stays_in_its_room() {
        let manifest = "[package]\nname = \"flapwright-model\"\n[dev-dependencies]\nserde = \"1\"\negui = \"1\"\n";
        let found = find(&Tree::made_up(&[("crates/model/Cargo.toml", manifest)]));
        assert_eq!(
            found,
            [Problem::new(
                "crates/model/Cargo.toml",
                5,
                "egui stays in flapwright"
            )]
        );
    }

    #[test]
    fn an_unknown_room_is_found() {
        let found = find(&Tree::made_up(&[(
            "crates/x/Cargo.toml",
            "[package]\nname = \"flapwright-x\"\n",
        )]));
        assert_eq!(found.len(), 1);
        assert_eq!(find(&Tree::made_up(&[MODEL])), []);
    }

    #[test]
    fn the_table_turns_in_no_circle() {
        // Taking away rooms whose needs are all gone must leave nothing.
        let mut left: Vec<_> = ROOMS.to_vec();
        while !left.is_empty() {
            let names: Vec<_> = left.iter().map(|(room, _)| *room).collect();
            let before = left.len();
            left.retain(|(_, below)| below.iter().any(|room| names.contains(room)));
            assert!(left.len() < before, "{names:?} need each other");
        }
    }
}
