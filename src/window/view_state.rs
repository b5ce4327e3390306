//! What is looked at: no part of the job, and never undone.

use super::canvas::CanvasState;
use super::fields::Fields;
use super::findings::FindingsView;
use super::side_panel::{MechanicsView, SideTab};

/// How long the door takes from closed to open when it plays, seconds.
const PLAY_SECONDS: f64 = 2.5;

/// What is looked at.
#[derive(Debug, Default)]
pub(crate) struct ViewState {
    /// The shown box.
    pub(crate) box_index: usize,
    /// The shown opening of it.
    pub(crate) opening: usize,
    /// The lit finding.
    pub(crate) finding: Option<usize>,
    /// Whether the list must bring the lit finding into sight.
    pub(crate) scroll_to_finding: bool,
    /// What the list of findings remembers.
    pub(crate) findings: FindingsView,
    /// How far the door of the section is open.
    pub(crate) s: f64,
    /// Whether the door is running.
    pub(crate) playing: Option<Play>,
    /// Whether dimensions are left out.
    pub(crate) plain: bool,
    /// What the panel at the right shows.
    pub(crate) tab: SideTab,
    /// What its tabs on the fitting remember.
    pub(crate) mechanics: MechanicsView,
    /// The drawing of the front.
    pub(crate) elevation: CanvasState,
    /// The drawing of the section.
    pub(crate) section: CanvasState,
    /// What is typed but not taken.
    pub(crate) fields: Fields,
}

/// Which way a running door goes.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum Play {
    /// Towards open.
    Opening,
    /// Towards closed.
    Closing,
}

impl ViewState {
    /// Lets a running door run on by a part of a second.
    pub(crate) fn run(&mut self, seconds: f64) {
        let Some(play) = self.playing else { return };
        let by = seconds / PLAY_SECONDS;
        self.s = match play {
            Play::Opening => (self.s + by).min(1.0),
            Play::Closing => (self.s - by).max(0.0),
        };
        if self.s <= 0.0 || self.s >= 1.0 {
            self.playing = None;
        }
    }

    /// Starts the door towards the farther end, or stops it.
    pub(crate) fn play_or_stop(&mut self) {
        self.playing = match self.playing {
            Some(_) => None,
            None if self.s >= 1.0 => Some(Play::Closing),
            None => Some(Play::Opening),
        };
    }

    /// Shows another box.
    pub(crate) fn show_box(&mut self, index: usize) {
        if self.box_index != index {
            self.box_index = index;
            self.opening = 0;
            self.fields.clear();
        }
    }

    /// Keeps what is shown within what there is.
    pub(crate) fn stay_within(&mut self, openings_of_boxes: &[usize], findings: usize) {
        self.box_index = self
            .box_index
            .min(openings_of_boxes.len().saturating_sub(1));
        let openings = openings_of_boxes.get(self.box_index).copied().unwrap_or(0);
        self.opening = self.opening.min(openings.saturating_sub(1));
        self.finding = self.finding.filter(|index| *index < findings);
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_running_door_stops_at_its_ends_and_turns_back_from_open() {
        let mut view = ViewState::default();
        view.play_or_stop();
        view.run(1.0);
        assert!((view.s - 0.4).abs() < 1e-12 && view.playing == Some(Play::Opening));
        view.run(10.0);
        assert_eq!((view.s, view.playing), (1.0, None));
        view.play_or_stop();
        assert_eq!(view.playing, Some(Play::Closing));
        view.play_or_stop();
        assert_eq!(view.playing, None);
    }
}
