//! Proves the invariants of DEVELOPERS.md that no compiler looks at. One rule a file; each says why
//! it is there, and has a test that breaks it on purpose.

mod allowed;
mod allows;
mod bores;
mod circles;
mod dependencies;
mod indices;
mod layers;
mod length;
mod modules;
mod pure;
mod rooms;
mod rule;
mod source;
mod tree;

use std::path::Path;

use anyhow::Result;

use rule::Rule;
use tree::Tree;

/// All rules.
const RULES: [&Rule; 9] = [
    &layers::RULE,
    &rooms::RULE,
    &pure::RULE,
    &bores::RULE,
    &indices::RULE,
    &circles::RULE,
    &length::RULE,
    &dependencies::RULE,
    &allows::RULE,
];

/// `tidy`: true if no rule is broken in the workspace that the current folder lies in.
pub(crate) fn command() -> Result<bool> {
    let here = std::env::current_dir()?;
    let root = here
        .ancestors()
        .find(|folder| folder.join("DEVELOPERS.md").is_file());
    let tree = Tree::read(root.unwrap_or(Path::new(".")))?;
    let mut broken = 0;
    for rule in RULES {
        let problems = (rule.find)(&tree);
        broken += problems.len();
        for problem in &problems {
            eprintln!("{problem}");
        }
        if !problems.is_empty() {
            eprintln!("    {}: {}\n", rule.name, rule.reason);
        }
    }
    println!(
        "tidy: {} files, {} rules, {broken} problems",
        tree.sources.len(),
        RULES.len()
    );
    Ok(broken == 0)
}
