//! What a check reports, and the remedies that it offers.

use flapwright_model::edit::Edit;
use flapwright_model::part::Subject;
use serde::Serialize;

/// How bad a finding is.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize)]
#[serde(rename_all = "lowercase")]
pub enum Severity {
    /// Worth knowing; nothing is wrong.
    Note,
    /// It can be built, but somebody must have looked at it.
    Caution,
    /// Parts made like this do not work.
    Stop,
}

impl Severity {
    /// Plain lower-case word.
    #[must_use]
    pub const fn word(self) -> &'static str {
        match self {
            Self::Note => "note",
            Self::Caution => "caution",
            Self::Stop => "stop",
        }
    }
}

/// One thing that a check found.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Finding {
    /// Name of the check, kebab-case.
    pub check: &'static str,
    /// How bad it is.
    pub severity: Severity,
    /// One sentence with the numbers, in the job's unit.
    pub message: String,
    /// Further lines: bore by bore, why it matters here.
    pub details: Vec<String>,
    /// What it is about, most important first; never empty.
    pub subjects: Vec<Subject>,
    /// The numbers behind the message.
    pub numbers: Vec<Number>,
    /// What can be done about it.
    pub remedies: Vec<Remedy>,
}

/// A number of a finding, for machines and for comparing.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Number {
    /// What it is, e.g. `largest offset`.
    pub label: String,
    /// The value, in `unit`.
    pub value: f64,
    /// Unit, e.g. `mm`; empty for a bare ratio.
    pub unit: &'static str,
}

impl Number {
    /// A length in mm.
    #[must_use]
    pub fn mm(label: impl Into<String>, value: f64) -> Self {
        Self {
            label: label.into(),
            value,
            unit: "mm",
        }
    }
}

/// A change of the job that a finding offers.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Remedy {
    /// What it does, as a button's text.
    pub title: String,
    /// Its effect in numbers, before it is applied.
    pub effect: String,
    /// Whether it may be applied unseen: it removes its finding and adds no stop.
    pub safe: bool,
    /// The change itself: one undo step.
    #[serde(skip)]
    pub edit: Edit,
}
