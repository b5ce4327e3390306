//! What a check reports, and the remedies that it offers: data, no sentence. How it is said, see
//! [`crate::message`].

use flapwright_model::acceptance::Topic;
use flapwright_model::edit::Edit;
use flapwright_model::message::Say;
use flapwright_model::part::Subject;
use serde::Serialize;

use crate::message::{Effect, Message, RemedyKind};

pub use flapwright_model::message::Worse;
pub use flapwright_model::severity::Severity;

/// One thing that a check found.
#[derive(Debug, Clone, PartialEq)]
pub struct Finding {
    /// Name of the check, kebab-case.
    pub check: &'static str,
    /// How bad it is.
    pub severity: Severity,
    /// What is wrong and by how much: its headline.
    pub message: Message,
    /// Why, bore by bore, and what to look at.
    pub reasons: Vec<Message>,
    /// What it is about, sorted and each once: with the check the key of the finding, which no other
    /// finding of the job has. It stays when boxes change their names or their order.
    pub about: Vec<Topic>,
    /// Why it was accepted, if somebody did and it has not got worse since.
    pub accepted: Option<String>,
    /// What it points at, most important first; empty only for a card that no door hangs on.
    pub subjects: Vec<Subject>,
    /// The watched numbers of message and reasons.
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

    /// Adds a reason, with the numbers of it that are watched.
    pub fn because(&mut self, reason: impl Into<Message>) {
        let reason = reason.into();
        self.numbers.extend(numbers(&reason));
        self.reasons.push(reason);
    }
}

/// A number of a finding, for machines and for comparing.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
pub struct Number {
    /// What it is: the name of the message's field, e.g. `largest_offset`.
    pub name: &'static str,
    /// The value, in `unit`.
    pub value: f64,
    /// Unit, e.g. `mm`; empty for a count or a ratio.
    pub unit: &'static str,
    /// Which change of it makes the finding worse.
    #[serde(skip)]
    pub worse: Worse,
}

/// The numbers of a message that are watched.
#[must_use]
pub fn numbers(message: &Message) -> Vec<Number> {
    let said = message.say();
    let watched = said.numbers().into_iter();
    watched
        .filter_map(|(name, value, worse)| {
            let (value, unit) = value.number()?;
            Some(Number {
                name,
                value,
                unit,
                worse,
            })
        })
        .collect()
}

/// A change of the job that a finding offers.
#[derive(Debug, Clone, PartialEq)]
pub struct Remedy {
    /// What it does.
    pub kind: RemedyKind,
    /// What it changes, in numbers, before it is applied.
    pub effects: Vec<Effect>,
    /// Who should look at it before it is applied, as far as its check knows.
    pub safety: Safety,
    /// The change itself: one undo step.
    pub edit: Edit,
}

impl Remedy {
    /// Whether its check holds it for one that may be applied unseen. Whether it is, the answer
    /// says: it tries it on the job.
    #[must_use]
    pub const fn claims_safe(&self) -> bool {
        matches!(self.safety, Safety::Safe)
    }
}

/// Who should look at a remedy before it is applied.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize)]
pub enum Safety {
    /// Nobody needs to: it removes its finding and adds no stop.
    Safe,
    /// A person: it changes the door, the box or what is drilled.
    NeedsALook,
    /// Whoever buys: another fitting or material is needed.
    ChangesWhatIsBought,
}
