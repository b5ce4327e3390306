//! What every page is made from.

use flapwright_model::cabinet::WallBox;
use flapwright_model::door::{Door, FittingChoice};
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
            || self.fittings().any(|(.., choice)| {
                let card = self.job.card_by_id(choice.card);
                card.is_some_and(|card| card.invented)
            })
    }

    /// The doors with a fitting: box, door, choice.
    pub(super) fn fittings(&self) -> impl Iterator<Item = (&WallBox, &Door, &FittingChoice)> + '_ {
        self.job.boxes.iter().flat_map(|wall_box| {
            let doors = wall_box.doors().into_iter();
            doors.filter_map(move |door| Some((wall_box, door, door.fitting.as_ref()?)))
        })
    }
}

/// The panels of a box that have a drilling sheet.
pub(super) fn drilled_of(report: &BoxReport) -> impl Iterator<Item = &PanelReport> + '_ {
    let drilled = |panel: &&PanelReport| !panel.bores.is_empty() && panel.face != Face::Plain;
    report.panels.iter().filter(drilled)
}
