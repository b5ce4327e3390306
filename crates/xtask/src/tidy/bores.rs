//! A bore comes from one place.

use super::modules::{is_test, test_modules};
use super::rule::Rule;
use super::tree::{Problem, Tree};

pub(super) const RULE: Rule = Rule {
    name: "bores",
    reason: "no bore is computed outside `rules::placement`: what is drilled has one source",
    find,
};

/// The type of a bore at its place.
const BORE: &str = "PlacedBore";

/// Where one may be made.
const PLACEMENT: [&str; 2] = [
    "crates/rules/src/placement.rs",
    "crates/rules/src/placement/",
];

fn find(tree: &Tree) -> Vec<Problem> {
    let tests = test_modules(tree);
    let mut problems = Vec::new();
    for source in &tree.sources {
        if PLACEMENT.iter().any(|place| source.path.starts_with(place))
            || is_test(&source.path, &tests)
        {
            continue;
        }
        let made = source
            .made
            .iter()
            .filter(|made| made.name == BORE && !made.in_test);
        problems.extend(
            made.map(|made| Problem::new(&source.path, made.line, format!("makes a `{BORE}`"))),
        );
    }
    problems
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_bore_made_elsewhere_is_found() {
        let text = "pub struct PlacedBore { u: f64 }\nimpl PlacedBore { fn f() {} }\n\
            fn a() -> PlacedBore { b() }\nfn c() { let it = PlacedBore { u: 1.0 }; }\n\
            #[cfg(test)] mod tests { fn d() { PlacedBore { u: 1.0 } } }";
        let tree = Tree::made_up(&[
            ("crates/drawing/src/a.rs", text),
            ("crates/drawing/src/fixture.rs", text),
            ("crates/drawing/src/lib.rs", "#[cfg(test)]\nmod fixture;"),
            ("crates/rules/src/placement/a.rs", text),
            ("crates/rules/tests/rules/a.rs", text),
        ]);
        assert_eq!(
            find(&tree),
            [Problem::new(
                "crates/drawing/src/a.rs",
                4,
                "makes a `PlacedBore`"
            )]
        );
    }
}
