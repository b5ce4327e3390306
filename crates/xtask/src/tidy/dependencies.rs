//! Every dependency has a reason in DEVELOPERS.md, and a use.

use std::collections::BTreeSet;

use super::rule::Rule;
use super::tree::{Manifest, Problem, Tree};

pub(super) const RULE: Rule = Rule {
    name: "dependencies",
    reason: "a dependency is taken on purpose: DEVELOPERS.md says why, a source uses it, and no \
             reason outlives it",
    find,
};

/// The heading over the table.
const HEADING: &str = "## Dependencies, and why";

fn find(tree: &Tree) -> Vec<Problem> {
    let mut problems = Vec::new();
    let ours: BTreeSet<&str> = tree
        .manifests
        .iter()
        .filter_map(Manifest::package)
        .collect();
    let reasons = reasons(&tree.developers);
    let mut needed = BTreeSet::new();
    for manifest in &tree.manifests {
        for dependency in manifest.dependencies() {
            if !ours.contains(dependency.name.as_str())
                && !reasons.iter().any(|(name, _)| *name == dependency.name)
            {
                let what = format!("{} has no line in DEVELOPERS.md", dependency.name);
                problems.push(Problem::new(&manifest.path, dependency.line, what));
            }
            if !is_used(tree, manifest, &dependency.name) {
                let what = format!("no source uses {}", dependency.name);
                problems.push(Problem::new(&manifest.path, dependency.line, what));
            }
            needed.insert(dependency.name);
        }
    }
    for manifest in &tree.manifests {
        for offered in manifest
            .offered()
            .into_iter()
            .filter(|offered| !needed.contains(&offered.name))
        {
            let what = format!("no crate depends on {}", offered.name);
            problems.push(Problem::new(&manifest.path, offered.line, what));
        }
    }
    let idle = reasons.iter().filter(|(name, _)| !needed.contains(*name));
    problems.extend(idle.map(|(name, line)| {
        Problem::new(
            "DEVELOPERS.md",
            *line,
            format!("no crate depends on {name}"),
        )
    }));
    problems
}

/// The names in the first column of the table of dependencies, with their lines.
fn reasons(developers: &str) -> Vec<(&str, usize)> {
    let mut lines = developers
        .lines()
        .enumerate()
        .skip_while(|(_, line)| *line != HEADING);
    lines.next();
    let rows = lines
        .take_while(|(_, line)| !line.starts_with('#'))
        .filter(|(_, line)| line.starts_with("| `"));
    let mut names = Vec::new();
    for (at, row) in rows {
        let first = row.split('|').nth(1).unwrap_or_default();
        names.extend(
            first
                .split('`')
                .skip(1)
                .step_by(2)
                .map(|name| (name, at + 1)),
        );
    }
    names
}

/// Whether a source of a package names a dependency.
fn is_used(tree: &Tree, manifest: &Manifest, dependency: &str) -> bool {
    let word = dependency.replace('-', "_");
    let top = manifest.folder().is_empty();
    let ours = |path: &str| match top {
        true => path.starts_with("src/") || (path.starts_with("tests/") && !path.contains("/src/")),
        false => path.starts_with(manifest.folder()),
    };
    tree.sources
        .iter()
        .filter(|source| ours(&source.path))
        .any(|source| {
            source.paths.iter().any(|path| path.words[0] == word) || source.words.contains(&word)
        })
}

#[cfg(test)]
mod tests {
    use super::*;

    /// A tree whose crate depends on `a` and `b`.
    fn tree(table: &str, source: &str) -> Vec<String> {
        let manifest = "[package]\nname = \"x\"\n[dependencies]\na = \"1\"\nb-c.workspace = true\n";
        let developers = format!("{HEADING}\n\n| crate | why |\n|---|---|\n{table}");
        let files = [
            ("DEVELOPERS.md", developers.as_str()),
            ("crates/x/Cargo.toml", manifest),
            ("crates/x/src/lib.rs", source),
        ];
        find(&Tree::made_up(&files))
            .iter()
            .map(ToString::to_string)
            .collect()
    }

    #[test]
    fn each_dependency_has_a_reason_and_a_use() {
        assert_eq!(
            tree(
                "| `a`, `b-c` (tests) | because |\n",
                "use a::x; fn f() { b_c::g() }"
            ),
            [""; 0]
        );
    }

    #[test]
    fn a_missing_reason_a_missing_use_and_an_idle_reason_are_found() {
        let found = tree("| `a` | because |\n| `d` | because |\n", "use a::x;");
        let expected = [
            "crates/x/Cargo.toml:5: b-c has no line in DEVELOPERS.md",
            "crates/x/Cargo.toml:5: no source uses b-c",
            "DEVELOPERS.md:6: no crate depends on d",
        ];
        assert_eq!(found, expected);
    }

    #[test]
    fn what_the_workspace_offers_to_nobody_is_found() {
        let top = "[workspace.dependencies]\na = \"1\"\n";
        let found = find(&Tree::made_up(&[("Cargo.toml", top)]));
        assert_eq!(
            found,
            [Problem::new("Cargo.toml", 2, "no crate depends on a")]
        );
    }
}
