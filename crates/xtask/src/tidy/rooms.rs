//! Every crate is a row of the table of rooms.

use super::rule::Rule;
use super::tree::{Problem, Tree};

pub(super) const RULE: Rule = Rule {
    name: "rooms",
    reason: "who comes new finds in DEVELOPERS.md what each crate holds",
    find,
};

fn find(tree: &Tree) -> Vec<Problem> {
    let folders = tree
        .manifests
        .iter()
        .map(|manifest| manifest.folder().trim_end_matches('/'));
    let missing = folders.filter(|folder| !folder.is_empty() && !has_row(&tree.developers, folder));
    missing
        .map(|folder| {
            Problem::new(
                "DEVELOPERS.md",
                1,
                format!("`{folder}` is no row of the table of rooms"),
            )
        })
        .collect()
}

fn has_row(developers: &str, folder: &str) -> bool {
    let start = format!("| `{folder}` |");
    developers.lines().any(|line| line.starts_with(&start))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_crate_without_a_row_is_found() {
        let manifest = "[package]\nname = \"a\"\n";
        let tree =
            |rows| Tree::made_up(&[("DEVELOPERS.md", rows), ("crates/a/Cargo.toml", manifest)]);
        assert_eq!(find(&tree("| `crates/b` | b |\n")).len(), 1);
        assert_eq!(find(&tree("| `crates/a` | a |\n")), []);
    }
}
