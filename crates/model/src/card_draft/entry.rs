//! Reading one number of a draft: a length, a column of the sizes table, a load, an angle.

use std::collections::BTreeMap;

use super::CardDraft;
use super::columns::{self, SIZE};
use crate::card::PerSize;
use crate::length::{Unit, parse_length};
use crate::measure::Measure;
use crate::validate::Problem;

/// Reads the numbers of a draft and collects what is wrong with them.
pub(super) struct Reader<'a> {
    pub(super) draft: &'a CardDraft,
    pub(super) problems: Vec<Problem>,
    /// Names of the sizes, row by row.
    pub(super) names: Vec<String>,
}

impl<'a> Reader<'a> {
    pub(super) fn new(draft: &'a CardDraft) -> Self {
        let rows = draft.sizes.rows.len();
        Self {
            draft,
            problems: Vec::new(),
            names: (0..rows)
                .map(|row| draft.sizes.under(row, SIZE).to_owned())
                .collect(),
        }
    }

    pub(super) fn wrong(&mut self, field: &str, what: impl Into<String>, remedy: &str) {
        self.problems.push(Problem::new(field, what, remedy));
    }

    /// The value, or 0 with a problem.
    fn keep<T: Default>(&mut self, field: &str, read: Result<T, String>) -> T {
        read.unwrap_or_else(|what| {
            self.wrong(field, what, "type it again as the paper has it");
            T::default()
        })
    }

    /// A length that is the same for all sizes, mm.
    pub(super) fn length(&mut self, field: &str, text: &str) -> f64 {
        let read = length(text, self.draft.paper.length);
        self.keep(field, read)
    }

    /// The same, 0 where nothing is typed.
    pub(super) fn length_or_none(&mut self, field: &str, text: &str) -> f64 {
        if text.trim().is_empty() {
            0.0
        } else {
            self.length(field, text)
        }
    }

    /// A load, in kg, N or N·m.
    pub(super) fn load(&mut self, field: &str, text: &str, measure: Measure) -> f64 {
        let read = load(text, measure, self.draft.paper.loads);
        self.keep(field, read)
    }

    /// A bare number with an optional sign of its own.
    pub(super) fn number(&mut self, field: &str, text: &str, sign: &str) -> f64 {
        let bare = text.trim();
        let read = number(bare.strip_suffix(sign).unwrap_or(bare));
        self.keep(field, read)
    }

    /// A whole number.
    pub(super) fn count(&mut self, field: &str, text: &str) -> u32 {
        let read = text
            .trim()
            .parse()
            .map_err(|_not_whole| format!("is \"{}\"; it must be a whole number", text.trim()));
        self.keep(field, read)
    }

    /// A length that may differ by size: a length, or a column's title with or without a length
    /// added to it.
    pub(super) fn per_size(&mut self, field: &str, text: &str) -> PerSize {
        let text = text.trim();
        if let Ok(value) = length(text, self.draft.paper.length) {
            return PerSize::All(value);
        }
        let Some((column, add)) = self.column_and_sum(field, text) else {
            return PerSize::All(0.0);
        };
        let mut table = BTreeMap::new();
        for (row, name) in self.names.clone().into_iter().enumerate() {
            let cell = self.draft.sizes.cell(row, column);
            let field = cell_field("sizes", row, &self.draft.sizes.titles, column);
            let value = self.length(&field, cell) + add;
            table.insert(name, value);
        }
        PerSize::BySize(table)
    }

    /// A column of the paper's own by its title, and what is added to it, mm.
    fn column_and_sum(&mut self, field: &str, text: &str) -> Option<(usize, f64)> {
        let sizes = &self.draft.sizes;
        let own = |title: &str| {
            (!columns::is_known(title))
                .then(|| sizes.column(title))
                .flatten()
        };
        if let Some(column) = own(text) {
            return Some((column, 0.0));
        }
        for (sign, factor) in [(" + ", 1.0), (" - ", -1.0)] {
            if let Some((title, add)) = text.rsplit_once(sign)
                && let Some(column) = own(title.trim())
            {
                return Some((column, factor * self.length(field, add)));
            }
        }
        let what = match length(text, self.draft.paper.length) {
            Err(what) if text.is_empty() => what,
            Err(what) => format!("{what}, and no column of the sizes table is called that"),
            Ok(_) => return None,
        };
        self.wrong(
            field,
            what,
            "type a length, or the title of a column of the sizes table",
        );
        None
    }
}

/// How a problem names a cell of a grid.
pub(super) fn cell_field(grid: &str, row: usize, titles: &[String], column: usize) -> String {
    let title = titles.get(column).map_or("", String::as_str);
    format!("{grid}[{row}] \"{title}\"")
}

/// A length, mm.
pub(super) fn length(text: &str, unit: Unit) -> Result<f64, String> {
    let text = text.trim();
    if text.is_empty() {
        return Err("is empty".to_owned());
    }
    // A plain number in mm is read by the standard library, which gives every `f64` back exactly.
    if unit == Unit::Millimetre && is_plain(text) {
        return number(text);
    }
    parse_length(text, unit).map_err(|error| format!("is not a length: {error}"))
}

/// A mass, force or moment with or without its own unit, in kg, N or N·m.
pub(super) fn load(text: &str, measure: Measure, unit: Unit) -> Result<f64, String> {
    let text = text.trim();
    let units: &[(&str, Unit)] = match measure {
        Measure::Mass => &[("kg", Unit::Millimetre), ("lb", Unit::Inch)],
        Measure::Force => &[("lbf", Unit::Inch), ("N", Unit::Millimetre)],
        Measure::Moment => &[
            ("N·m", Unit::Millimetre),
            ("Nm", Unit::Millimetre),
            ("N m", Unit::Millimetre),
            ("lbf·in", Unit::Inch),
            ("lbf in", Unit::Inch),
            ("in-lb", Unit::Inch),
        ],
    };
    let (bare, unit) = units
        .iter()
        .find_map(|(symbol, unit)| Some((text.strip_suffix(symbol)?, *unit)))
        .unwrap_or((text, unit));
    Ok(measure.value(number(bare)?, unit))
}

/// A decimal number, point or comma.
fn number(text: &str) -> Result<f64, String> {
    let text = text.trim();
    if text.is_empty() {
        return Err("is empty".to_owned());
    }
    let value = is_plain(text)
        .then(|| text.replace(',', ".").replace('−', "-").parse::<f64>().ok())
        .flatten()
        .filter(|value| value.abs() <= 1e9);
    value.ok_or_else(|| {
        let short: String = text.chars().take(28).collect();
        format!("is \"{short}\"; it must be a number such as 12.5")
    })
}

/// Whether a text is digits with at most one decimal mark and a sign before them.
fn is_plain(text: &str) -> bool {
    let digits = text.strip_prefix(['-', '−', '+']).unwrap_or(text);
    let marks = digits.chars().filter(|c| matches!(c, '.' | ',')).count();
    marks <= 1
        && digits.len() <= 40
        && digits.starts_with(|c: char| c.is_ascii_digit())
        && digits.ends_with(|c: char| c.is_ascii_digit())
        && digits
            .chars()
            .all(|c| c.is_ascii_digit() || matches!(c, '.' | ','))
}
