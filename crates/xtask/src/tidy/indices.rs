//! What is told about a job points at its things by id, not by position.

use std::collections::BTreeMap;

use super::allowed::INDICES;
use super::rule::Rule;
use super::source::Field;
use super::tree::{Problem, Tree};

pub(super) const RULE: Rule = Rule {
    name: "indices",
    reason: "a position in a list names another thing as soon as one is added or removed; indices \
             live inside one function",
    find: |tree| find(tree, INDICES),
};

/// Where the types are that reports, findings and drawings carry.
const REPORTS: [&str; 4] = [
    "crates/model/src/part.rs",
    "crates/rules/src/",
    "crates/answer/src/",
    "crates/drawing/src/",
];

/// Things that have ids.
const THINGS: [&str; 8] = [
    "box", "wall_box", "opening", "shelf", "divider", "door", "obstacle", "card",
];

fn find(tree: &Tree, allowed: &[(&str, usize)]) -> Vec<Problem> {
    let mut found: BTreeMap<&str, Vec<&Field>> = BTreeMap::new();
    for source in &tree.sources {
        if REPORTS.iter().any(|place| source.path.starts_with(place)) {
            let fields = source.fields.iter().filter(|field| is_position(field));
            found.entry(&source.path).or_default().extend(fields);
        }
    }
    let mut problems = Vec::new();
    for (path, fields) in &found {
        let most = allowed
            .iter()
            .find(|(file, _)| file == path)
            .map_or(0, |(_, most)| *most);
        if fields.len() > most {
            problems.extend(fields.iter().map(|field| {
                let what = format!(
                    "`{}: {}` is a position ({most} allowed here)",
                    field.name, field.kind
                );
                Problem::new(path, field.line, what)
            }));
        }
    }
    for (path, most) in allowed {
        let count = found.get(path).map_or(0, Vec::len);
        if count < *most {
            problems.push(Problem::new(
                path,
                1,
                format!("{most} positions are allowed, it has {count}: lower the allowance"),
            ));
        }
    }
    problems
}

fn is_position(field: &Field) -> bool {
    let name = field.name.to_lowercase();
    let counts = matches!(
        field.kind.as_str(),
        "usize" | "Option<usize>" | "Vec<usize>"
    );
    counts && (name == "index" || name.ends_with("_index") || THINGS.contains(&name.as_str()))
}

#[cfg(test)]
mod tests {
    use super::*;

    const TEXT: &str = "pub struct Report {\n    pub box_index: usize,\n    pub number: usize,\n}\n\
        pub enum Subject {\n    Box(usize),\n    Opening {\n        opening: usize,\n    },\n}\n";

    fn lines(path: &str, allowed: &[(&str, usize)]) -> Vec<usize> {
        find(&Tree::made_up(&[(path, TEXT)]), allowed)
            .into_iter()
            .map(|it| it.line)
            .collect()
    }

    #[test]
    fn positions_in_reports_are_found() {
        let mut found = lines("crates/rules/src/a.rs", &[]);
        found.sort_unstable();
        assert_eq!(found, [2, 6, 8]);
        assert!(lines("crates/motion/src/a.rs", &[]).is_empty());
    }

    #[test]
    fn an_allowance_may_only_shrink() {
        let path = "crates/rules/src/a.rs";
        assert!(lines(path, &[(path, 3)]).is_empty());
        assert_eq!(lines(path, &[(path, 2)]).len(), 3);
        assert_eq!(lines(path, &[(path, 4)]).len(), 1);
        assert_eq!(
            lines(path, &[(path, 3), ("crates/rules/src/gone.rs", 1)]).len(),
            1
        );
    }
}
