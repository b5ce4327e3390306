//! Findings that somebody has looked at and accepted, with the reason.

use serde::{Deserialize, Serialize};

use crate::severity::Severity;

/// A finding that was accepted as it stood. It comes back when it gets worse.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Acceptance {
    /// Name of the check.
    pub check: String,
    /// The place in words, as the finding gives it: it holds when boxes are put in another order.
    pub place: String,
    /// Why it is accepted; printed on the list of accepted findings.
    pub reason: String,
    /// How bad it was.
    pub severity: Severity,
    /// The numbers that it had.
    #[serde(default)]
    pub numbers: Vec<AcceptedNumber>,
}

/// One number of an accepted finding.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct AcceptedNumber {
    /// What it is.
    pub label: String,
    /// Its value then, in the finding's own unit.
    pub value: f64,
}
