//! What undo takes back and redo puts there again.
//!
//! A step keeps only the change that takes it back; undoing gives the change that redoes it. Steps
//! of one gesture (a drag, a run of keys in one field) become one step until the gesture is
//! sealed.

use std::collections::BTreeSet;

use flapwright_model::edit::{Edit, apply};
use flapwright_model::id::BoxId;
use flapwright_model::job::Job;
use flapwright_model::validate::Problem;

/// Names one state of the job: two states with one name are the same.
pub(crate) type StateName = u64;

/// Which gesture a step belongs to: the field that is dragged or typed in, by any number that is its
/// own.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Gesture(pub u64);

#[derive(Debug)]
struct Step {
    label: String,
    change: Edit,
    /// The state after the step.
    state: StateName,
}

/// Steps taken and steps taken back.
#[derive(Debug, Default)]
pub struct History {
    taken: Vec<Step>,
    undone: Vec<Step>,
    open: Option<Gesture>,
    first: StateName,
    newest: StateName,
}

impl History {
    /// Changes the job as a new step, or as a part of the last one when both belong to the same
    /// open gesture. The boxes that it touched.
    ///
    /// # Errors
    /// The problems of the job as it would be; job and history are then as they were.
    pub(crate) fn take(
        &mut self,
        job: &mut Job,
        label: String,
        edit: Edit,
        gesture: Option<Gesture>,
    ) -> Result<BTreeSet<BoxId>, Vec<Problem>> {
        let back = apply(job, edit)?;
        let touched = back.boxes();
        self.newest += 1;
        let state = self.newest;
        let same = gesture.is_some() && gesture == self.open;
        self.open = gesture;
        match self.taken.last_mut() {
            Some(last) if same && self.undone.is_empty() => {
                let older = std::mem::replace(&mut last.change, Edit::Together(Vec::new()));
                last.change = Edit::joined(back, older);
                last.label = label;
                last.state = state;
            }
            _ => self.taken.push(Step {
                label,
                change: back,
                state,
            }),
        }
        self.undone.clear();
        Ok(touched)
    }

    /// Takes the last step back and says what it was and which boxes it touched.
    pub(crate) fn undo(&mut self, job: &mut Job) -> Option<(String, BTreeSet<BoxId>)> {
        self.open = None;
        let step = self.taken.pop()?;
        // The way back from an applied change always fits.
        let change = apply(job, step.change).ok()?;
        let known = (step.label.clone(), change.boxes());
        self.undone.push(Step { change, ..step });
        Some(known)
    }

    /// Does the step again that was taken back last and says what it is and which boxes it touches.
    pub(crate) fn redo(&mut self, job: &mut Job) -> Option<(String, BTreeSet<BoxId>)> {
        self.open = None;
        let step = self.undone.pop()?;
        let change = apply(job, step.change).ok()?;
        let known = (step.label.clone(), change.boxes());
        self.taken.push(Step { change, ..step });
        Some(known)
    }

    /// What undo would take back.
    #[must_use]
    pub fn undo_label(&self) -> Option<&str> {
        self.taken.last().map(|step| step.label.as_str())
    }

    /// What redo would do again.
    #[must_use]
    pub fn redo_label(&self) -> Option<&str> {
        self.undone.last().map(|step| step.label.as_str())
    }

    /// How many steps undo can take back.
    #[must_use]
    pub const fn len(&self) -> usize {
        self.taken.len()
    }

    /// Whether there is nothing to take back.
    #[must_use]
    pub const fn is_empty(&self) -> bool {
        self.taken.is_empty()
    }

    /// The gesture that further steps may still belong to.
    #[must_use]
    pub const fn open_gesture(&self) -> Option<Gesture> {
        self.open
    }

    /// Ends the open gesture: the next step stands by itself.
    pub(crate) const fn seal(&mut self) {
        self.open = None;
    }

    /// The name of the present state.
    pub(crate) fn state(&self) -> StateName {
        self.taken.last().map_or(self.first, |step| step.state)
    }
}

#[cfg(test)]
mod tests {
    use flapwright_model::edit::JobHead;
    use flapwright_model::id::BoxId;
    use flapwright_model::length::Unit;

    use super::*;

    fn job() -> Job {
        Job::empty(Vec::new(), Vec::new())
    }

    fn named(job: &Job, name: &str) -> Edit {
        Edit::ReplaceHead(Box::new(JobHead {
            name: name.to_owned(),
            ..JobHead::of(job)
        }))
    }

    fn rename(history: &mut History, job: &mut Job, name: &str, gesture: Option<Gesture>) {
        let edit = named(job, name);
        history
            .take(job, format!("name {name}"), edit, gesture)
            .unwrap();
    }

    #[test]
    fn a_gesture_is_one_step_until_it_is_sealed() {
        let (mut history, mut job) = (History::default(), job());
        let before = job.clone();
        let field = Some(Gesture(7));
        for name in ["a", "ab", "abc"] {
            rename(&mut history, &mut job, name, field);
        }
        assert_eq!(history.len(), 1);
        history.seal();
        rename(&mut history, &mut job, "abcd", field);
        assert_eq!(history.len(), 2);
        let (label, touched) = history.undo(&mut job).unwrap();
        assert_eq!((label.as_str(), touched.len()), ("name abcd", 0));
        assert_eq!(job.name, "abc");
        history.undo(&mut job);
        assert_eq!(job, before);
        assert_eq!(history.undo(&mut job), None);
        history.redo(&mut job);
        assert_eq!(job.name, "abc");
    }

    #[test]
    fn undo_to_the_saved_state_is_the_saved_state() {
        let (mut history, mut job) = (History::default(), job());
        rename(&mut history, &mut job, "saved", None);
        let saved = history.state();
        rename(&mut history, &mut job, "changed", None);
        assert_ne!(history.state(), saved);
        history.undo(&mut job);
        assert_eq!(history.state(), saved);
        rename(&mut history, &mut job, "other", None);
        assert_ne!(history.state(), saved);
        assert_eq!(history.redo_label(), None);
    }

    #[test]
    fn a_step_after_undo_is_not_drawn_into_an_older_gesture() {
        let (mut history, mut job) = (History::default(), job());
        let field = Some(Gesture(7));
        rename(&mut history, &mut job, "a", field);
        rename(&mut history, &mut job, "b", None);
        history.undo(&mut job);
        rename(&mut history, &mut job, "c", field);
        assert_eq!(history.len(), 2);
    }

    #[test]
    fn a_refused_change_leaves_no_step() {
        let (mut history, mut job) = (History::default(), job());
        let refused = history.take(
            &mut job,
            "none".to_owned(),
            Edit::RemoveBox { id: BoxId::new(3) },
            None,
        );
        assert!(refused.is_err());
        assert_eq!((history.len(), history.state()), (0, 0));
        assert_eq!(job.unit, Unit::Millimetre);
    }
}
