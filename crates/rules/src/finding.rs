//! What a check reports, and the remedies that it offers.

use flapwright_model::acceptance::Topic;
use flapwright_model::edit::Edit;
use flapwright_model::part::Subject;
use serde::Serialize;

pub use flapwright_model::severity::Severity;

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
    /// What it is about, sorted and each once: with the check the key of the finding, which no other
    /// finding of the job has. It stays when boxes change their names or their order.
    pub about: Vec<Topic>,
    /// Why it was accepted, if somebody did and it has not got worse since.
    pub accepted: Option<String>,
    /// What it points at, most important first; empty only for a card that no door hangs on.
    pub subjects: Vec<Subject>,
    /// The numbers behind the message.
    pub numbers: Vec<Number>,
    /// What can be done about it.
    pub remedies: Vec<Remedy>,
}

impl Finding {
    /// The same finding, about exactly these things.
    #[must_use]
    pub fn about(mut self, topics: impl IntoIterator<Item = Topic>) -> Self {
        self.about = topics.into_iter().collect();
        self.about.sort();
        self.about.dedup();
        self
    }
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
    /// Which change of it makes the finding worse.
    #[serde(skip)]
    pub worse: Worse,
}

/// Which change of a number makes its finding worse than the one that was accepted.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum Worse {
    /// Either: an accepted finding comes back.
    #[default]
    Either,
    /// A greater value.
    Greater,
    /// A smaller value.
    Smaller,
}

impl Number {
    /// A length in mm; any change of it counts as worse.
    #[must_use]
    pub fn mm(label: impl Into<String>, value: f64) -> Self {
        Self::of(label, value, "mm")
    }

    /// A number in another unit; any change of it counts as worse.
    #[must_use]
    pub fn of(label: impl Into<String>, value: f64, unit: &'static str) -> Self {
        Self {
            label: label.into(),
            value,
            unit,
            worse: Worse::Either,
        }
    }

    /// The same number; only a greater value is worse.
    #[must_use]
    pub const fn worse_when_greater(mut self) -> Self {
        self.worse = Worse::Greater;
        self
    }

    /// The same number; only a smaller value is worse.
    #[must_use]
    pub const fn worse_when_smaller(mut self) -> Self {
        self.worse = Worse::Smaller;
        self
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
