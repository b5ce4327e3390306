//! Where a finding is, in words that stay the same when boxes change their order.

use std::sync::Arc;

use flapwright_model::part::{PartId, Subject};

use crate::inspection::BoxReport;

/// At most this many subjects are named; a finding about more is told apart by these.
const NAMED: usize = 4;

/// The place of a finding from what it is about.
pub(crate) fn place_words(reports: &[Arc<BoxReport>], subjects: &[Subject]) -> String {
    let mut words: Vec<String> = Vec::new();
    for subject in subjects.iter().take(NAMED) {
        let it = subject_words(reports, *subject);
        if !words.contains(&it) {
            words.push(it);
        }
    }
    words.join("; ")
}

fn subject_words(reports: &[Arc<BoxReport>], subject: Subject) -> String {
    let index = subject.box_index();
    let Some(report) = reports.get(index) else {
        return "job".to_owned();
    };
    let namesakes = reports.iter().filter(|it| it.name == report.name).count();
    let name = if namesakes > 1 {
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

fn part_words(report: &BoxReport, part: PartId) -> String {
    report
        .panels
        .iter()
        .find(|panel| panel.id == part)
        .map_or_else(|| "face frame".to_owned(), |panel| panel.name.clone())
}
