//! What the job remembers of sheets that went out.

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
        let mut grafted = Vec::new();
        graft(&edit, &self.job, now, &mut grafted);
        (!grafted.is_empty()).then_some(Edit::Together(grafted))
    }
}

/// Takes over the records of the boxes that are still there, and what their doors' bores hang on.
fn graft(edit: &Edit, then: &Job, now: &Job, grafted: &mut Vec<Edit>) {
    match edit {
        Edit::Together(edits) => {
            for edit in edits {
                graft(edit, then, now, grafted);
            }
        }
        Edit::ReplaceBox { index, with } => {
            let (Some(before), Some(here)) = (then.boxes.get(*index), now.boxes.get(*index)) else {
                return;
            };
            let mut after = here.clone();
            after.records.clone_from(&with.records);
            // A door that is drilled now hangs on its own bores.
            let doors = after
                .openings
                .iter_mut()
                .zip(&before.openings)
                .zip(&with.openings);
            for ((here, before), with) in doors {
                if let (Some(here), Some(before), Some(with)) =
                    (&mut here.door, &before.door, &with.door)
                    && before.bores_hang_on != with.bores_hang_on
                {
                    here.bores_hang_on.clone_from(&with.bores_hang_on);
                }
            }
            if before.name == here.name && after != *here {
                grafted.push(Edit::ReplaceBox {
                    index: *index,
                    with: Box::new(after),
                });
            }
        }
        Edit::InsertBox { .. }
        | Edit::RemoveBox { .. }
        | Edit::ReplaceHead(_)
        | Edit::ReplaceMaterials(_)
        | Edit::ReplaceCards(_)
        | Edit::ReplaceAccepted(_) => {}
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
            inspection: flapwright_rules::inspect(&job),
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
