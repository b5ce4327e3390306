//! Where a finding is, in words. Names are labels: they are looked up when the words are asked for.

use std::collections::BTreeMap;

use flapwright_model::acceptance::Topic;
use flapwright_model::id::{BoxId, DoorId};
use flapwright_model::job::Job;
use flapwright_model::part::{PartId, Subject};

use crate::finding::Finding;
use crate::inspection::{BoxReport, Inspection};

/// At most this many subjects are named.
const NAMED: usize = 4;

/// The words for places in one job.
#[derive(Debug)]
pub struct PlaceWords<'a> {
    job: &'a Job,
    /// Each box with its place in the job, from 1.
    reports: BTreeMap<BoxId, (usize, &'a BoxReport)>,
    /// How many boxes have a name.
    namesakes: BTreeMap<&'a str, usize>,
}

impl<'a> PlaceWords<'a> {
    /// For a job and what is true of it.
    #[must_use]
    pub fn of(job: &'a Job, inspection: &'a Inspection) -> Self {
        let mut namesakes = BTreeMap::new();
        let mut reports = BTreeMap::new();
        for (index, report) in inspection.boxes.iter().enumerate() {
            *namesakes.entry(report.name.as_str()).or_default() += 1;
            reports.insert(report.id, (index + 1, &**report));
        }
        Self {
            job,
            reports,
            namesakes,
        }
    }

    /// Where a finding is; a finding about a card is at the card, whichever doors are on it.
    #[must_use]
    pub fn place(&self, finding: &Finding) -> String {
        let of_cards: Vec<String> = finding
            .about
            .iter()
            .filter_map(|topic| match topic {
                Topic::Card(id) => Some(self.subject(Subject::Card(*id))),
                _ => None,
            })
            .collect();
        if !of_cards.is_empty() {
            return of_cards.join("; ");
        }
        let mut words: Vec<String> = Vec::new();
        for subject in finding.subjects.iter().take(NAMED) {
            let it = self.subject(*subject);
            if !words.contains(&it) {
                words.push(it);
            }
        }
        words.join("; ")
    }

    /// How a box is called: by its name, and by its place in the job where others have it too.
    #[must_use]
    pub fn box_name(&self, id: BoxId) -> String {
        let Some((number, report)) = self.reports.get(&id) else {
            return "job".to_owned();
        };
        let namesakes = self.namesakes.get(report.name.as_str());
        if namesakes.is_some_and(|count| *count > 1) {
            format!("{} (box {number})", report.name)
        } else {
            report.name.clone()
        }
    }

    /// One thing that a finding points at.
    #[must_use]
    pub fn subject(&self, subject: Subject) -> String {
        match subject {
            Subject::Box(id) => self.box_name(id),
            Subject::Opening(id, opening) => self.in_box(id, |report| {
                format!("opening {} from the top", report.number_of(opening))
            }),
            Subject::Door(id, door) => self.in_box(id, |report| door_words(report, door)),
            Subject::Part(part) => self.in_box(part.box_id, |report| part_words(report, part)),
            Subject::Bore(bore) => self.in_box(bore.part.box_id, |report| {
                format!("{}, bore {}", part_words(report, bore.part), bore.number)
            }),
            Subject::Obstacle(id) => self
                .job
                .room
                .obstacle(id)
                .map_or_else(String::new, |it| it.name.clone()),
            Subject::Card(id) => {
                let card = self.job.card_by_id(id);
                let name = card.map_or("", |card| card.name.as_str());
                format!("card \"{name}\"")
            }
        }
    }

    fn in_box(&self, id: BoxId, words: impl FnOnce(&BoxReport) -> String) -> String {
        let name = self.box_name(id);
        match self.reports.get(&id) {
            Some((_, report)) => format!("{name}, {}", words(report)),
            None => name,
        }
    }
}

fn door_words(report: &BoxReport, door: DoorId) -> String {
    if report.openings.len() > 1 {
        format!("opening {} from the top", report.number_of_door(door))
    } else {
        "door".to_owned()
    }
}

fn part_words(report: &BoxReport, part: PartId) -> String {
    report
        .panel(part.part)
        .map_or_else(|| "face frame".to_owned(), |panel| panel.name.clone())
}
