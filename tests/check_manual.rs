//! The manual of the checks in `assets/checks.md` is what the registry says.
//!
//! `UPDATE_MANUAL=1 cargo test --test check_manual` writes it anew.

#![expect(
    clippy::unwrap_used,
    reason = "a test may stop at what it did not expect"
)]

use std::fmt::Write;

use flapwright_rules::checks::CHECKS;

fn manual() -> String {
    let mut text = String::from(
        "# The checks\n\nWritten from the program's own list; see `DEVELOPERS.md`. The window shows \
         each page beside its findings, `flapwright explain CHECK` prints it.\n\n\
         | check | what it looks at | default severity | settings |\n| --- | --- | --- | --- |\n",
    );
    for check in CHECKS {
        let words: Vec<&str> = check.severities.iter().map(|it| it.word()).collect();
        writeln!(
            text,
            "| [{name}](#{name}) | {} | {} | {} |",
            check.summary(),
            words.join(", "),
            check.setting_labels().join(", "),
            name = check.name,
        )
        .unwrap();
    }
    for check in CHECKS {
        // The pages' own headings go one level down, under the name of the check.
        let page = check.manual().replace("\n## ", "\n### ");
        writeln!(text, "\n#{page}").unwrap();
    }
    text
}

#[test]
fn the_manual_lists_every_check_with_its_page() {
    let path = concat!(env!("CARGO_MANIFEST_DIR"), "/assets/checks.md");
    let manual = manual();
    if std::env::var_os("UPDATE_MANUAL").is_some() {
        std::fs::write(path, &manual).unwrap();
    }
    let kept = std::fs::read_to_string(path).unwrap_or_default();
    assert!(
        kept == manual,
        "assets/checks.md is not what the checks say; run with UPDATE_MANUAL=1"
    );
}
