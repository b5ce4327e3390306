//! What the job remembers of sheets that went out.

use flapwright_model::change::graft_records;
use flapwright_model::edit::Edit;
use flapwright_model::job::Job;
use flapwright_model::part::PartId;
use flapwright_model::record::RecordState;
use flapwright_rules::inspection::{Face, Inspection, PanelReport};
use flapwright_rules::records::record;

use crate::document::Document;
use crate::export::ExportChoice;

/// The panels as they went out. The job may change while their sheets are being written.
#[derive(Debug)]
pub(crate) struct ToRemember {
    job: Job,
    inspection: Inspection,
    state: RecordState,
}

impl ToRemember {
    /// What an export is to remember, if anything.
    pub(crate) fn of(document: &Document, choice: &ExportChoice) -> Option<Self> {
        let state = if choice.drilled {
            RecordState::Drilled
        } else {
            RecordState::SheetExported
        };
        (choice.remember && choice.sends_bores_out()).then(|| Self {
            job: document.job().clone(),
            inspection: document.inspection().clone(),
            state,
        })
    }

    /// The change that puts the records into the job as it is now; `None` when it changes nothing.
    pub(crate) fn edit(&self, now: &Job) -> Option<Edit> {
        let parts: Vec<PartId> = self
            .inspection
            .boxes
            .iter()
            .flat_map(|report| &report.panels)
            .filter(|panel| has_sheet(panel))
            .map(|panel| panel.id)
            .collect();
        let edit = record(&self.job, &self.inspection, &parts, self.state);
        graft_records(&edit, &self.job, now)
    }
}

/// Whether a panel has a drilling sheet.
fn has_sheet(panel: &PanelReport) -> bool {
    !panel.bores.is_empty() && panel.face != Face::Plain
}

#[cfg(test)]
mod tests {
    use flapwright_drawing::job_sheets::{PageKind, PageOptions};

    use super::*;

    fn exported(drilled: bool) -> (Document, ToRemember) {
        let job = crate::shipped::demo_job().unwrap();
        let document = Document::new(job, None);
        let choice = ExportChoice {
            drilled,
            ..ExportChoice::default()
        };
        let remember = ToRemember::of(&document, &choice).unwrap();
        (document, remember)
    }

    #[test]
    fn records_go_into_the_job_as_it_is_now_and_leave_later_edits_alone() {
        let (document, remember) = exported(false);
        let mut now = document.job().clone();
        now.boxes[0].width += 10.0;
        let mut after = now.clone();
        let edit = remember.edit(&now).unwrap();
        flapwright_model::edit::apply(&mut after, edit).unwrap();
        assert_eq!(after.boxes[0].width, now.boxes[0].width);
        for (wall_box, report) in after.boxes.iter().zip(&document.inspection().boxes) {
            let sheets = report
                .panels
                .iter()
                .filter(|panel| has_sheet(panel))
                .count();
            assert_eq!(wall_box.records.len(), sheets, "{}", wall_box.name);
        }
        assert_eq!(remember.edit(&after), None);
    }

    #[test]
    fn a_drilled_panel_stays_drilled_when_its_sheet_is_exported_again() {
        let (document, remember) = exported(true);
        let mut job = document.job().clone();
        let edit = remember.edit(&job).unwrap();
        flapwright_model::edit::apply(&mut job, edit).unwrap();
        let again = ToRemember {
            inspection: flapwright_answer::inspect(&job),
            job: job.clone(),
            state: RecordState::SheetExported,
        };
        assert_eq!(again.edit(&job), None);
    }

    #[test]
    fn an_export_that_is_not_to_be_remembered_changes_nothing() {
        let (document, _) = exported(false);
        let choice = ExportChoice {
            remember: false,
            ..ExportChoice::default()
        };
        assert!(ToRemember::of(&document, &choice).is_none());
        let cover = ExportChoice {
            pages: PageOptions::of([PageKind::Cover]),
            ..ExportChoice::default()
        };
        assert!(ToRemember::of(&document, &cover).is_none());
    }
}
