//! Counts of what was compared, and what differs.

use std::collections::BTreeMap;

/// What is counted, in the order of the report.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub(super) enum Kind {
    Jobs,
    Panels,
    Bores,
    CsvLines,
    Outlines,
    Circles,
    Layers,
    OtherEntities,
    Pages,
    Drawn,
    Ruled,
    PagesMoved,
    RuledMoved,
    OtherPages,
    NewJobs,
    Texts,
    MachineTexts,
    Findings,
    Verdicts,
}

impl Kind {
    const fn label(self) -> &'static str {
        match self {
            Self::Jobs => "jobs",
            Self::Panels => "panels (size, thickness, quantity)",
            Self::Bores => "bores in the JSON lists",
            Self::CsvLines => "bores in the CSV lists",
            Self::Outlines => "DXF outlines",
            Self::Circles => "DXF circles",
            Self::Layers => "DXF layers",
            Self::OtherEntities => "other DXF entities",
            Self::Pages => "pages",
            Self::Drawn => "lines, circles and areas of drawings",
            Self::Ruled => "lines and areas of headers and tables",
            Self::PagesMoved => "drawings moved as a whole, on pages with new texts",
            Self::RuledMoved => "lines of headers and tables, on pages with new texts",
            Self::OtherPages => "pages that are new, pages of lists that are gone",
            Self::NewJobs => "jobs that are new",
            Self::Texts => "texts on pages",
            Self::MachineTexts => "texts in machine files",
            Self::Findings => "findings (severity and numbers)",
            Self::Verdicts => "verdicts on sizes (numbers)",
        }
    }

    /// Whether a difference makes the programs different to whoever drills.
    const fn is_geometry(self) -> bool {
        self as u8 <= Self::Ruled as u8
    }
}

/// One row of the report.
#[derive(Debug, Default, Clone, PartialEq)]
struct Count {
    compared: usize,
    differing: usize,
    examples: Vec<String>,
}

/// The figures of a comparison.
#[derive(Debug, Default)]
pub(super) struct Tally {
    rows: BTreeMap<Kind, Count>,
}

impl Tally {
    /// Compares two bags of things, each said as a text; order does not count. A thing that is on
    /// one side only differs; one of each side count as one difference.
    pub(super) fn compare(
        &mut self,
        kind: Kind,
        place: &str,
        old: impl IntoIterator<Item = String>,
        new: impl IntoIterator<Item = String>,
    ) {
        let (compared, gone, come) = difference(old, new);
        let row = self.rows.entry(kind).or_default();
        row.compared += compared;
        row.differing += gone.len().max(come.len());
        row.examples
            .extend(gone.iter().map(|thing| format!("{place}: - {thing}")));
        row.examples
            .extend(come.iter().map(|thing| format!("{place}: + {thing}")));
    }

    /// Counts things that were looked at, and an example for each that differs.
    pub(super) fn count(&mut self, kind: Kind, compared: usize, differing: Vec<String>) {
        let row = self.rows.entry(kind).or_default();
        row.compared += compared;
        row.differing += differing.len();
        row.examples.extend(differing);
    }

    /// Whether no geometry differs, and there was some.
    pub(super) fn same(&self) -> bool {
        let geometry = || self.rows.iter().filter(|(kind, _)| kind.is_geometry());
        geometry().any(|(_, row)| row.compared > 0) && geometry().all(|(_, row)| row.differing == 0)
    }

    /// How many things of a kind differ.
    #[cfg(test)]
    pub(super) fn differing(&self, kind: Kind) -> usize {
        self.rows.get(&kind).map_or(0, |row| row.differing)
    }

    /// How many things of a kind were looked at.
    #[cfg(test)]
    pub(super) fn compared(&self, kind: Kind) -> usize {
        self.rows.get(&kind).map_or(0, |row| row.compared)
    }

    /// The figures as a table, with examples of what differs: ten a row, or all with `all`; those
    /// of texts only with `all`.
    pub(super) fn report(&self, all: bool) -> String {
        let mut lines = Vec::new();
        for (kind, row) in &self.rows {
            let (label, (compared, differing)) = (kind.label(), (row.compared, row.differing));
            let mark = if kind.is_geometry() {
                ""
            } else {
                "  (told only)"
            };
            lines.push(format!(
                "{label:52} {compared:6} compared {differing:6} differ{mark}"
            ));
            let shown = match (all, kind.is_geometry()) {
                (true, _) => usize::MAX,
                (false, true) => 10,
                (false, false) => 0,
            };
            lines.extend(
                row.examples
                    .iter()
                    .take(shown)
                    .map(|example| format!("    {example}")),
            );
        }
        let verdict = if self.same() {
            "the same geometry"
        } else {
            "the geometry DIFFERS"
        };
        lines.push(verdict.to_owned());
        lines.join("\n")
    }
}

/// The size of the larger bag, what only the old one has, what only the new one has.
fn difference(
    old: impl IntoIterator<Item = String>,
    new: impl IntoIterator<Item = String>,
) -> (usize, Vec<String>, Vec<String>) {
    let mut counts: BTreeMap<String, isize> = BTreeMap::new();
    let (mut old_size, mut new_size) = (0, 0);
    for thing in old {
        *counts.entry(thing).or_default() += 1;
        old_size += 1;
    }
    for thing in new {
        *counts.entry(thing).or_default() -= 1;
        new_size += 1;
    }
    let (mut gone, mut come) = (Vec::new(), Vec::new());
    for (thing, count) in counts {
        let side = if count > 0 { &mut gone } else { &mut come };
        side.extend(std::iter::repeat_n(thing, count.unsigned_abs()));
    }
    (old_size.max(new_size), gone, come)
}

/// Which thing of the old side belongs to which of the new one: those with the same name in order,
/// then those that are left, in order, if a rougher name is the same. Gives the pairs and what is
/// left over on each side.
pub(super) fn pair<'a, T>(
    old: &'a [T],
    new: &'a [T],
    names: &[&dyn Fn(&T) -> String],
) -> (Vec<(&'a T, &'a T)>, Vec<&'a T>, Vec<&'a T>) {
    let (mut pairs, mut gone) = (Vec::new(), old.iter().collect::<Vec<_>>());
    let mut come: Vec<&T> = new.iter().collect();
    for name in names {
        let mut of_come: Vec<String> = come.iter().map(|thing| name(thing)).collect();
        let mut left = Vec::new();
        for thing in gone {
            let wanted = name(thing);
            match of_come.iter().position(|name| *name == wanted) {
                Some(place) => {
                    of_come.remove(place);
                    pairs.push((thing, come.remove(place)));
                }
                None => left.push(thing),
            }
        }
        gone = left;
    }
    (pairs, gone, come)
}
