//! The tree that the rules look at, and what they report.

use std::collections::BTreeMap;
use std::fmt;
use std::path::Path;

use anyhow::{Context, Result};

use super::source::Source;

/// Folders in which no source of ours lies.
const PASSED_OVER: [&str; 2] = ["target", ".git"];

/// The workspace as the rules see it; paths run from its top, with `/`.
pub(super) struct Tree {
    /// The Rust files.
    pub(super) sources: Vec<Source>,
    /// The manifests of the workspace: its own and those of `crates`.
    pub(super) manifests: Vec<Manifest>,
    /// DEVELOPERS.md.
    pub(super) developers: String,
    /// Settings of lints (`clippy.toml`) by their paths.
    pub(super) lints: BTreeMap<String, String>,
}

/// A `Cargo.toml`.
pub(super) struct Manifest {
    pub(super) path: String,
    text: String,
    table: toml::Table,
}

/// One place that breaks a rule.
#[derive(Debug, PartialEq)]
pub(super) struct Problem {
    pub(super) path: String,
    /// Counted from 1.
    pub(super) line: usize,
    pub(super) what: String,
}

impl Problem {
    pub(super) fn new(path: &str, line: usize, what: impl Into<String>) -> Self {
        Self {
            path: path.to_owned(),
            line,
            what: what.into(),
        }
    }
}

impl fmt::Display for Problem {
    fn fmt(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(out, "{}:{}: {}", self.path, self.line, self.what)
    }
}

impl Tree {
    /// Reads the workspace at `root`.
    ///
    /// # Errors
    ///
    /// If a file cannot be read, or is not what its ending says.
    pub(super) fn read(root: &Path) -> Result<Self> {
        let mut files = Vec::new();
        walk(root, "", &mut files)?;
        Self::of(files)
    }

    /// A tree of the files with these paths and texts.
    ///
    /// # Errors
    ///
    /// If one is not what its ending says.
    pub(super) fn of(files: Vec<(String, String)>) -> Result<Self> {
        let mut tree = Self {
            sources: Vec::new(),
            manifests: Vec::new(),
            developers: String::new(),
            lints: BTreeMap::new(),
        };
        for (path, text) in files {
            if path == "DEVELOPERS.md" {
                tree.developers = text;
            } else if path.ends_with("clippy.toml") {
                tree.lints.insert(path, text);
            } else if path.ends_with(".rs") {
                let source = Source::read(&path, &text);
                tree.sources
                    .push(source.with_context(|| format!("reading {path}"))?);
            } else if is_ours(&path) {
                let table = text.parse().with_context(|| format!("reading {path}"))?;
                tree.manifests.push(Manifest { path, text, table });
            }
        }
        Ok(tree)
    }

    /// A small made-up tree.
    #[cfg(test)]
    pub(super) fn made_up(files: &[(&str, &str)]) -> Self {
        Self::of(
            files
                .iter()
                .map(|(path, text)| ((*path).to_owned(), (*text).to_owned()))
                .collect(),
        )
        .unwrap()
    }
}

/// Whether a path is a manifest of the workspace, rather than one of a tool outside it.
fn is_ours(path: &str) -> bool {
    let parts: Vec<_> = path.split('/').collect();
    matches!(
        parts.as_slice(),
        ["Cargo.toml"] | ["crates", _, "Cargo.toml"]
    )
}

/// Whether a rule looks at a file.
fn is_looked_at(path: &str, name: &str) -> bool {
    path.ends_with(".rs") || path == "DEVELOPERS.md" || matches!(name, "Cargo.toml" | "clippy.toml")
}

/// Collects the Rust files, manifests, settings of lints and DEVELOPERS.md below a folder in the order of their names.
fn walk(folder: &Path, below: &str, files: &mut Vec<(String, String)>) -> Result<()> {
    let mut entries = Vec::new();
    for entry in std::fs::read_dir(folder)? {
        let entry = entry?;
        entries.push((
            entry.file_name().to_string_lossy().into_owned(),
            entry.path(),
        ));
    }
    entries.sort();
    for (name, path) in entries {
        let below = if below.is_empty() {
            name.clone()
        } else {
            format!("{below}/{name}")
        };
        if path.is_dir() {
            if !PASSED_OVER.contains(&name.as_str()) {
                walk(&path, &below, files)?;
            }
        } else if is_looked_at(&below, &name) {
            let text =
                std::fs::read_to_string(&path).with_context(|| format!("reading {below}"))?;
            files.push((below, text));
        }
    }
    Ok(())
}

/// A dependency as a manifest names it.
pub(super) struct Dependency {
    pub(super) name: String,
    /// Counted from 1.
    pub(super) line: usize,
    /// Whether only tests, examples and benches depend on it.
    pub(super) for_tests: bool,
}

impl Manifest {
    /// The package's name; none for a manifest without a package.
    pub(super) fn package(&self) -> Option<&str> {
        self.table.get("package")?.get("name")?.as_str()
    }

    /// The folder of the manifest: empty for the top, else it ends with `/`.
    pub(super) fn folder(&self) -> &str {
        self.path.strip_suffix("Cargo.toml").unwrap_or_default()
    }

    /// What the package depends on, for tests, benches and building included.
    pub(super) fn dependencies(&self) -> Vec<Dependency> {
        const KINDS: [&str; 3] = ["dependencies", "dev-dependencies", "build-dependencies"];
        KINDS
            .iter()
            .filter_map(|kind| Some((kind, self.table.get(*kind)?.as_table()?)))
            .flat_map(|(kind, table)| table.keys().map(move |name| (kind, name)))
            .map(|(kind, name)| Dependency {
                name: name.clone(),
                line: self.line_of(name),
                for_tests: *kind == "dev-dependencies",
            })
            .collect()
    }

    /// What the workspace offers to its packages.
    pub(super) fn offered(&self) -> Vec<Dependency> {
        let table = self
            .table
            .get("workspace")
            .and_then(|it| it.get("dependencies")?.as_table());
        let names = table.into_iter().flat_map(toml::Table::keys);
        names
            .map(|name| Dependency {
                name: name.clone(),
                line: self.line_of(name),
                for_tests: false,
            })
            .collect()
    }

    /// The first line that starts with a name.
    fn line_of(&self, name: &str) -> usize {
        let starts = |line: &str| {
            line.strip_prefix(name)
                .is_some_and(|rest| rest.starts_with([' ', '.', '=']))
        };
        self.text
            .lines()
            .position(starts)
            .map_or(1, |line| line + 1)
    }
}
