//! What a finding is called from outside: never by its place in the list, which every change of the
//! job may alter.

use flapwright_rules::finding::Finding;

/// Names a finding in every state of the job that has it.
#[derive(Debug, Clone, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct FindingKey {
    /// The check.
    pub check: &'static str,
    /// The place, as the finding tells it.
    pub place: String,
    /// Which of several that one check found at one place, from 0, in the order of the list.
    pub nth: u32,
}

/// The keys of a list of findings, in its order.
pub(crate) fn keys_of(findings: &[Finding]) -> Vec<FindingKey> {
    let mut seen = std::collections::BTreeMap::new();
    findings
        .iter()
        .map(|finding| {
            let nth = seen
                .entry((finding.check, finding.place.as_str()))
                .or_insert(0);
            let key = FindingKey {
                check: finding.check,
                place: finding.place.clone(),
                nth: *nth,
            };
            *nth += 1;
            key
        })
        .collect()
}
