//! What of the job is looked at.

use flapwright_model::cabinet::WallBox;
use flapwright_model::id::{BoxId, OpeningId};
use flapwright_model::job::Job;

use crate::document::Document;
use crate::finding_key::FindingKey;

/// How long the door takes from closed to open when it runs, seconds.
const RUN_SECONDS: f64 = 2.5;

/// What is looked at, and how.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Selection {
    /// The shown box; `None` only while the job has none.
    pub box_id: Option<BoxId>,
    /// The shown opening of it.
    pub opening: Option<OpeningId>,
    /// The selected finding.
    pub finding: Option<FindingKey>,
    /// How far the door of the section is open: 0 closed, 1 open.
    pub s: f64,
    /// Whether the door is running, and which way.
    pub running: Option<Run>,
    /// Whether dimensions are left out.
    pub plain: bool,
    /// What is shown beside the drawings.
    pub tab: SideTab,
}

/// Which way a running door goes.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Run {
    /// Towards open.
    Opening,
    /// Towards closed.
    Closing,
}

/// What is shown beside the drawings.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum SideTab {
    /// What the checks found.
    #[default]
    Findings,
    /// What each size says to the shown door.
    Sizes,
    /// What the hand feels.
    Forces,
}

impl Selection {
    /// Lets a running door run on by a part of a second.
    pub(crate) fn run(&mut self, seconds: f64) {
        let Some(run) = self.running else { return };
        let by = seconds / RUN_SECONDS;
        self.s = match run {
            Run::Opening => (self.s + by).min(1.0),
            Run::Closing => (self.s - by).max(0.0),
        };
        if self.s <= 0.0 || self.s >= 1.0 {
            self.running = None;
        }
    }

    /// Starts the door towards the farther end, or stops it.
    pub(crate) fn run_or_stop(&mut self) {
        self.running = match self.running {
            Some(_) => None,
            None if self.s >= 1.0 => Some(Run::Closing),
            None => Some(Run::Opening),
        };
    }

    /// Shows another box, at its first opening.
    pub(crate) fn show_box(&mut self, id: BoxId) {
        if self.box_id != Some(id) {
            self.box_id = Some(id);
            self.opening = None;
        }
    }

    /// Where the shown box and opening stand in a job, so that their neighbours are shown when they
    /// are gone.
    pub(crate) fn places(&self, job: &Job) -> Places {
        let is_shown = |it: &WallBox| Some(it.id) == self.box_id;
        let wall_box = job.boxes.iter().position(is_shown).unwrap_or(0);
        let openings = job.boxes.get(wall_box).map(WallBox::openings);
        let opening =
            openings.and_then(|all| all.iter().position(|it| Some(it.id) == self.opening));
        Places {
            wall_box,
            opening: opening.unwrap_or(0),
        }
    }

    /// Keeps what is shown within what there is; `before` is where it stood.
    pub(crate) fn stay_within(&mut self, document: &Document, before: Places) {
        let boxes = &document.job().boxes;
        let shown = boxes.iter().find(|it| Some(it.id) == self.box_id);
        let shown = shown
            .or_else(|| boxes.get(before.wall_box))
            .or_else(|| boxes.last());
        let openings = shown.map(WallBox::openings).unwrap_or_default();
        let opening = openings.iter().find(|it| Some(it.id) == self.opening);
        let beside = if shown.map(|it| it.id) == self.box_id && self.opening.is_some() {
            openings.get(before.opening).or_else(|| openings.last())
        } else {
            openings.first()
        };
        self.opening = opening.or(beside).map(|it| it.id);
        self.box_id = shown.map(|it| it.id);
        if let Some(key) = &self.finding
            && document.finding(key).is_none()
        {
            self.finding = None;
        }
    }
}

/// Where the shown box and opening stand in the lists of a job.
#[derive(Debug, Clone, Copy, Default)]
pub(crate) struct Places {
    wall_box: usize,
    opening: usize,
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_running_door_stops_at_its_ends_and_turns_back_from_open() {
        let mut view = Selection::default();
        view.run_or_stop();
        view.run(1.0);
        assert!((view.s - 0.4).abs() < 1e-12 && view.running == Some(Run::Opening));
        view.run(10.0);
        assert_eq!((view.s, view.running), (1.0, None));
        view.run_or_stop();
        assert_eq!(view.running, Some(Run::Closing));
        view.run_or_stop();
        assert_eq!(view.running, None);
    }
}
