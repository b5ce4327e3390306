//! No lint is switched off.

use super::allowed::ALLOWS;
use super::rule::Rule;
use super::tree::{Problem, Tree};

pub(super) const RULE: Rule = Rule {
    name: "allows",
    reason: "a lint that is switched off stays off when its cause is gone; `expect` with a reason does not",
    find: |tree| find(tree, ALLOWS),
};

fn find(tree: &Tree, allowed: &[&str]) -> Vec<Problem> {
    let sources = tree
        .sources
        .iter()
        .filter(|source| !allowed.contains(&source.path.as_str()));
    let allows = sources.flat_map(|source| {
        let lines = source.attributes.iter().filter(|(word, _)| word == "allow");
        lines.map(|(_, line)| Problem::new(&source.path, *line, "`allow`"))
    });
    allows.collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn an_allow_is_found() {
        let text = "//! #[allow(x)]\n#![allow(dead_code)]\n#[expect(x, reason = \"y\")]\nfn a() {}\n\
            #[cfg(test)]\nmod tests {\n#[allow(x)]\nfn b() {}\n}";
        let found = find(&Tree::made_up(&[("a.rs", text), ("b.rs", text)]), &["b.rs"]);
        assert_eq!(found.iter().map(|it| it.line).collect::<Vec<_>>(), [2, 7]);
    }
}
