//! Where a finding is, in words that stay the same when boxes change their order.

use std::collections::BTreeMap;
use std::sync::Arc;

use flapwright_model::part::{PartId, Subject};

use crate::finding::Finding;
use crate::inspection::BoxReport;

/// At most this many subjects are named; a finding about more is told apart by these.
const NAMED: usize = 4;

/// The places of the findings of one job.
pub(crate) struct PlaceWords<'a> {
    reports: &'a [Arc<BoxReport>],
    /// How many boxes have a name.
    namesakes: BTreeMap<&'a str, usize>,
}

impl<'a> PlaceWords<'a> {
    /// For the boxes of a job.
    pub(crate) fn of(reports: &'a [Arc<BoxReport>]) -> Self {
        let mut namesakes = BTreeMap::new();
        for report in reports {
            *namesakes.entry(report.name.as_str()).or_default() += 1;
        }
        Self { reports, namesakes }
    }

    /// Says where each finding is, from what it is about, unless its check has said so.
    pub(crate) fn name(&self, findings: &mut [Finding]) {
        for it in findings.iter_mut().filter(|it| it.place.is_empty()) {
            it.place = self.place(&it.subjects);
        }
    }

    fn place(&self, subjects: &[Subject]) -> String {
        let mut words: Vec<String> = Vec::new();
        for subject in subjects.iter().take(NAMED) {
            let it = self.subject(*subject);
            if !words.contains(&it) {
                words.push(it);
            }
        }
        words.join("; ")
    }

    fn subject(&self, subject: Subject) -> String {
        let index = subject.box_index();
        let Some(report) = self.reports.get(index) else {
            return "job".to_owned();
        };
        let namesakes = self.namesakes.get(report.name.as_str());
        let name = if namesakes.is_some_and(|count| *count > 1) {
            format!("{} (box {})", report.name, index + 1)
        } else {
            report.name.clone()
        };
        match subject {
            Subject::Box(_) => name,
            Subject::Opening { opening, .. } if report.openings.len() > 1 => {
                format!("{name}, opening {} from the top", opening + 1)
            }
            Subject::Opening { .. } => format!("{name}, door"),
            Subject::Part(part) => format!("{name}, {}", part_words(report, part)),
            Subject::Bore(bore) => {
                format!(
                    "{name}, {}, bore {}",
                    part_words(report, bore.part),
                    bore.number
                )
            }
        }
    }
}

fn part_words(report: &BoxReport, part: PartId) -> String {
    report
        .panels
        .iter()
        .find(|panel| panel.id == part)
        .map_or_else(|| "face frame".to_owned(), |panel| panel.name.clone())
}
