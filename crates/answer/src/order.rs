//! In which order findings stand.

use std::cmp::Reverse;
use std::collections::BTreeMap;
use std::sync::{Arc, OnceLock};

use flapwright_model::acceptance::Topic;
use flapwright_model::id::BoxId;
use flapwright_rules::checks::CHECKS;
use flapwright_rules::finding::{Finding, Severity};

use crate::answer::Known;

/// The turn of a check in the list of all.
pub(crate) fn turn(check: &str) -> usize {
    static TURNS: OnceLock<BTreeMap<&'static str, usize>> = OnceLock::new();
    let turns = TURNS.get_or_init(|| {
        let numbered = CHECKS.iter().enumerate();
        numbered.map(|(turn, check)| (check.name, turn)).collect()
    });
    turns.get(check).copied().unwrap_or(usize::MAX)
}

/// Where a finding that is of no single box stands among the others of its severity: by check, then
/// by the boxes that it points at, then by what it is about.
pub(crate) fn between<'a>(
    finding: &'a Finding,
    known: &BTreeMap<BoxId, Known>,
) -> (usize, [usize; 2], &'a [Topic]) {
    let mut boxes = finding.subjects.iter().map(|subject| {
        let its = subject.box_id().and_then(|id| known.get(&id));
        its.map_or(usize::MAX, |it| it.turn)
    });
    let boxes = [(); 2].map(|()| boxes.next().unwrap_or(usize::MAX));
    (turn(finding.check), boxes, &finding.about)
}

/// Puts open findings first, within those the worst; what is alike stays as it stands.
pub(crate) fn worst_first(findings: Vec<Arc<Finding>>) -> Vec<Arc<Finding>> {
    let rank = |it: &Finding| (it.accepted.is_some(), Reverse(it.severity));
    let mut ranks: BTreeMap<(bool, Reverse<Severity>), Vec<Arc<Finding>>> = BTreeMap::new();
    for finding in findings {
        ranks.entry(rank(&finding)).or_default().push(finding);
    }
    ranks.into_values().flatten().collect()
}
