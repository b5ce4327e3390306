//! What every page is made from.

use flapwright_model::door::FittingChoice;
use flapwright_model::job::Job;
use flapwright_rules::inspection::{BoxReport, Face, Inspection, PanelReport};

use crate::fit::Fit;
use crate::paper::Paper;

/// What every page is made from.
pub(super) struct SheetSetup<'a> {
    pub(super) job: &'a Job,
    pub(super) inspection: &'a Inspection,
    pub(super) fit: Fit,
}

impl SheetSetup<'_> {
    /// The paper of lists.
    pub(super) fn list_paper(&self) -> Paper {
        self.fit.first_paper()
    }

    /// The drilled panels with their boxes.
    pub(super) fn drilled(&self) -> impl Iterator<Item = (&BoxReport, &PanelReport)> + '_ {
        self.inspection
            .boxes
            .iter()
            .map(AsRef::as_ref)
            .flat_map(|report: &BoxReport| drilled_of(report).map(move |panel| (report, panel)))
    }

    /// Whether the job or a card that a door uses is invented.
    pub(super) fn invented(&self) -> bool {
        self.job.invented
            || self.fittings().any(|(_, _, choice)| {
                self.job
                    .card(&choice.card)
                    .is_some_and(|card| card.invented)
            })
    }

    /// The doors with a fitting: box, opening, choice.
    pub(super) fn fittings(&self) -> impl Iterator<Item = (usize, usize, &FittingChoice)> + '_ {
        let boxes = self.job.boxes.iter().enumerate();
        boxes.flat_map(|(index, wall_box)| {
            let openings = wall_box.openings.iter().enumerate();
            openings.filter_map(move |(opening, it)| {
                let choice = it.door.as_ref()?.fitting.as_ref()?;
                Some((index, opening, choice))
            })
        })
    }
}

/// The panels of a box that have a drilling sheet.
pub(super) fn drilled_of(report: &BoxReport) -> impl Iterator<Item = &PanelReport> + '_ {
    let drilled = |panel: &&PanelReport| !panel.bores.is_empty() && panel.face != Face::Plain;
    report.panels.iter().filter(drilled)
}
