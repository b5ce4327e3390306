//! No file longer than one can read in one go.

use super::allowed::LONG;
use super::rule::Rule;
use super::tree::{Problem, Tree};

pub(super) const RULE: Rule = Rule {
    name: "length",
    reason: "a long file does more than one job; a reader wants one job a file",
    find: |tree| find(tree, LONG),
};

/// Lines of the longest file.
const MOST: usize = 600;

fn find(tree: &Tree, allowed: &[&str]) -> Vec<Problem> {
    let mut problems = Vec::new();
    for source in &tree.sources {
        let (long, known) = (source.lines > MOST, allowed.contains(&source.path.as_str()));
        if long && !known {
            problems.push(Problem::new(
                &source.path,
                source.lines,
                format!("over {MOST} lines"),
            ));
        } else if known && !long {
            problems.push(Problem::new(
                &source.path,
                1,
                "no longer long: take it off the list in allowed.rs",
            ));
        }
    }
    let is_there = |path: &str| tree.sources.iter().any(|source| source.path == path);
    let gone = allowed.iter().filter(|path| !is_there(path));
    problems.extend(gone.map(|path| {
        Problem::new(
            path,
            1,
            "no longer there: take it off the list in allowed.rs",
        )
    }));
    problems
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_long_file_is_found_unless_it_is_known() {
        let (long, short) = ("\n".repeat(601), "\n".repeat(600));
        let tree = Tree::made_up(&[("a.rs", &long), ("b.rs", &short)]);
        assert_eq!(
            find(&tree, &[]),
            [Problem::new("a.rs", 601, "over 600 lines")]
        );
        assert_eq!(find(&tree, &["a.rs"]), []);
        assert_eq!(find(&tree, &["a.rs", "b.rs", "c.rs"]).len(), 2);
    }
}
