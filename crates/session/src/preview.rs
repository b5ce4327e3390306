//! A remedy that is shown in the drawings before it is applied.

use std::collections::BTreeMap;
use std::sync::Arc;

use flapwright_model::cabinet::WallBox;
use flapwright_model::edit::{Edit, apply};
use flapwright_model::id::BoxId;
use flapwright_model::job::Job;
use flapwright_rules::inspection::BoxReport;
use flapwright_rules::placement::place_box;
use flapwright_words::Speaker;

use crate::document::Document;
use crate::finding_key::FindingKey;

/// Which remedy, in one state of the job.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct RemedyAt {
    /// Names the state.
    pub revision: u64,
    /// The finding.
    pub finding: FindingKey,
    /// Which of its remedies.
    pub remedy: usize,
}

/// What is previewed, and the boxes as they would be. Made once for each remedy, however
/// long the pointer stays on its button.
#[derive(Debug, Default)]
pub struct Preview {
    /// The remedy under the pointer or with the keyboard on it, in this frame.
    pointed: Option<RemedyAt>,
    /// The one whose preview was switched on.
    kept: Option<RemedyAt>,
    made: Option<(RemedyAt, Ghosts)>,
    /// Title of the remedy that the drawings showed last.
    shown: Option<String>,
}

/// The boxes that a remedy changes, as they would be.
type Ghosts = BTreeMap<BoxId, Arc<BoxReport>>;

impl Preview {
    /// Forgets what was pointed at in the last frame, and what was kept of another state.
    pub fn begin(&mut self, revision: u64) {
        self.pointed = None;
        self.shown = None;
        if self.kept.as_ref().is_some_and(|at| at.revision != revision) {
            self.kept = None;
        }
    }

    /// The pointer or the keyboard is on a remedy.
    pub fn point_at(&mut self, at: RemedyAt) {
        self.pointed = Some(at);
    }

    /// Keeps showing a remedy, or no longer; whether it is kept now.
    pub fn keep_or_drop(&mut self, at: RemedyAt) -> bool {
        self.kept = (self.kept.as_ref() != Some(&at)).then_some(at);
        self.kept.is_some()
    }

    /// The title of the remedy that the drawings show.
    #[must_use]
    pub fn shown(&self) -> Option<&str> {
        self.shown.as_deref()
    }

    /// Whether that remedy is kept.
    #[must_use]
    pub fn keeps(&self, at: &RemedyAt) -> bool {
        self.kept.as_ref() == Some(at)
    }

    /// The box as the shown remedy would make it, and the remedy's title; `None` when nothing is
    /// shown or it leaves the box as it is.
    pub fn ghost(
        &mut self,
        document: &Document,
        box_id: BoxId,
    ) -> Option<(Arc<BoxReport>, String)> {
        let at = self.pointed.as_ref().or(self.kept.as_ref())?.clone();
        let finding = document.finding(&at.finding)?;
        let remedy = finding.remedies.get(at.remedy)?;
        if self.made.as_ref().is_none_or(|(made, _)| *made != at) {
            let ghosts = ghosts(document.job(), &remedy.edit);
            self.made = Some((at, ghosts));
        }
        let (_, ghosts) = self.made.as_ref()?;
        let ghost = ghosts.get(&box_id)?;
        let speaker = Speaker::without_names(document.job().unit);
        let title = flapwright_words::remedy(remedy, &speaker);
        self.shown = Some(title.clone());
        Some((Arc::clone(ghost), title))
    }
}

/// The boxes that a change makes others, as they would be.
fn ghosts(before: &Job, edit: &Edit) -> Ghosts {
    let mut job = before.clone();
    if apply(&mut job, edit.clone()).is_err() {
        return Ghosts::new();
    }
    let before: BTreeMap<BoxId, &WallBox> = before.boxes.iter().map(|it| (it.id, it)).collect();
    let boxes = job.boxes.iter();
    let others = boxes.filter(|after| before.get(&after.id) != Some(after));
    others
        .map(|after| (after.id, Arc::new(place_box(&job, after))))
        .collect()
}
