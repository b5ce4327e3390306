//! A remedy that is shown in the drawings before it is applied.

use std::sync::Arc;

use flapwright_model::edit::apply;
use flapwright_rules::Inspector;
use flapwright_rules::inspection::BoxReport;

use crate::window::document::Document;

/// Which remedy, in one state of the job.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) struct RemedyAt {
    /// Names the state.
    pub(crate) revision: u64,
    /// Index of the finding in the list.
    pub(crate) finding: usize,
    /// Index of its remedy.
    pub(crate) remedy: usize,
}

/// What is previewed, and the boxes as they would be. Made once for each remedy: keeping the
/// pointer on a button costs one inspection.
#[derive(Debug, Default)]
pub(crate) struct Preview {
    /// The remedy under the pointer or with the keyboard on it, in this frame.
    pointed: Option<RemedyAt>,
    /// The one whose preview was switched on.
    kept: Option<RemedyAt>,
    made: Option<(RemedyAt, Ghosts)>,
    /// Title of the remedy that the drawings showed last.
    shown: Option<String>,
    inspector: Inspector,
}

/// The boxes that a remedy changes, as they would be; `None` for those that it leaves alone.
type Ghosts = Vec<Option<Arc<BoxReport>>>;

impl Preview {
    /// Forgets what was pointed at in the last frame, and what was kept of another state.
    pub(crate) fn begin(&mut self, revision: u64) {
        self.pointed = None;
        self.shown = None;
        self.kept = self.kept.filter(|at| at.revision == revision);
    }

    /// The pointer or the keyboard is on a remedy.
    pub(crate) const fn point_at(&mut self, at: RemedyAt) {
        self.pointed = Some(at);
    }

    /// Keeps showing a remedy, or no longer; whether it is kept now.
    pub(crate) fn keep_or_drop(&mut self, at: RemedyAt) -> bool {
        self.kept = (self.kept != Some(at)).then_some(at);
        self.kept.is_some()
    }

    /// The title of the remedy that the drawings show.
    pub(crate) fn shown(&self) -> Option<&str> {
        self.shown.as_deref()
    }

    /// Whether that remedy is kept.
    pub(crate) fn keeps(&self, at: RemedyAt) -> bool {
        self.kept == Some(at)
    }

    /// The box as the shown remedy would make it, and the remedy's title; `None` when nothing is
    /// shown or it leaves the box as it is.
    pub(crate) fn ghost(
        &mut self,
        document: &Document,
        box_index: usize,
    ) -> Option<(Arc<BoxReport>, String)> {
        let at = self.pointed.or(self.kept)?;
        let finding = document.inspection().findings.get(at.finding)?;
        let remedy = finding.remedies.get(at.remedy)?;
        if self.made.as_ref().is_none_or(|(made, _)| *made != at) {
            let mut job = document.job().clone();
            let ghosts = match apply(&mut job, remedy.edit.clone()) {
                Ok(_inverse) => {
                    let boxes = self.inspector.inspect(&job).boxes;
                    let changed =
                        |index: usize| job.boxes.get(index) != document.job().boxes.get(index);
                    boxes
                        .into_iter()
                        .enumerate()
                        .map(|(index, report)| changed(index).then_some(report))
                        .collect()
                }
                Err(_problems) => Vec::new(),
            };
            self.made = Some((at, ghosts));
        }
        let (_, ghosts) = self.made.as_ref()?;
        let ghost = ghosts.get(box_index)?.as_ref()?;
        self.shown = Some(remedy.title.clone());
        Some((Arc::clone(ghost), remedy.title.clone()))
    }
}
