//! Which module a file is.

use std::collections::BTreeMap;

use super::tree::Tree;

/// The file of each module, by the folder of its crate's sources and the words of its path.
pub(super) type Modules = BTreeMap<Vec<String>, String>;

/// A file's crate and module: `crates/a/src/b/c.rs` is `["crates/a/src", "b", "c"]`, `lib.rs`,
/// `main.rs` and `mod.rs` stand for their folders. None for files outside `src`.
pub(super) fn module(path: &str) -> Option<Vec<String>> {
    let at = if path.starts_with("src/") {
        0
    } else {
        path.find("/src/")? + 1
    };
    let (krate, rest) = path.split_at(at + 3);
    let mut words = vec![krate.to_owned()];
    words.extend(
        rest.trim_start_matches('/')
            .trim_end_matches(".rs")
            .split('/')
            .map(str::to_owned),
    );
    if words
        .last()
        .is_some_and(|last| matches!(last.as_str(), "lib" | "main" | "mod"))
    {
        words.pop();
    }
    Some(words)
}

/// The modules that their parents declare for tests only.
pub(super) fn test_modules(tree: &Tree) -> Vec<Vec<String>> {
    let mut tests = Vec::new();
    for source in &tree.sources {
        let Some(own) = module(&source.path) else {
            continue;
        };
        tests.extend(
            source
                .test_modules
                .iter()
                .map(|name| [own.clone(), vec![name.clone()]].concat()),
        );
    }
    tests
}

/// Whether a file holds nothing but tests: it lies in a folder of tests, or its parent declares it so.
pub(super) fn is_test(path: &str, tests: &[Vec<String>]) -> bool {
    let aside = ["tests", "benches", "examples"]
        .iter()
        .any(|folder| path.split('/').any(|part| part == *folder));
    aside || module(path).is_some_and(|own| tests.iter().any(|test| own.starts_with(test)))
}
