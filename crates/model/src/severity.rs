//! How bad a finding is, and what a job says of that.

use serde::{Deserialize, Serialize};

/// How bad a finding is.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
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

/// What a job makes of a check, in place of the check's own severity.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[serde(rename_all = "lowercase")]
pub enum SeveritySetting {
    /// The check is not run.
    Off,
    /// All that it finds is a note.
    Note,
    /// All that it finds is a caution.
    Caution,
    /// All that it finds is a stop.
    Stop,
}

impl SeveritySetting {
    /// The severity meant; `None` when the check is not run.
    #[must_use]
    pub const fn severity(self) -> Option<Severity> {
        match self {
            Self::Off => None,
            Self::Note => Some(Severity::Note),
            Self::Caution => Some(Severity::Caution),
            Self::Stop => Some(Severity::Stop),
        }
    }
}
