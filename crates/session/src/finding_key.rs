//! What a finding is called from outside: never by its place in the list, which every change of the
//! job may alter, and never by words, which a new name of a box alters.

use flapwright_model::acceptance::Topic;
use flapwright_rules::finding::Finding;

/// Names a finding in every state of the job that has it.
#[derive(Debug, Clone, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct FindingKey {
    /// The check.
    pub check: &'static str,
    /// What it is about.
    pub about: Vec<Topic>,
}

impl FindingKey {
    /// The name of a finding.
    #[must_use]
    pub fn of(finding: &Finding) -> Self {
        Self {
            check: finding.check,
            about: finding.about.clone(),
        }
    }

    /// Whether it names that finding.
    #[must_use]
    pub fn names(&self, finding: &Finding) -> bool {
        self.check == finding.check && self.about == finding.about
    }
}
