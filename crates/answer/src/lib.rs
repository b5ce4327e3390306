//! What is true of a job: parts, bores, motion, findings. One answer, kept from edit to edit.
//!
//! [`Answer`] knows each box by its identity and works out anew only what an edit touches: the box
//! itself, what is between it and its neighbours, what it shares with doors that look alike, the
//! cards that it is on. Whatever was asked before, the answer is that of [`inspect`].

mod alike;
mod anew;
mod answer;
mod cards;
mod order;
mod safe_run;
mod safety;
mod wall;

use flapwright_model::job::Job;
use flapwright_rules::inspection::Inspection;

pub use answer::{Answer, Work};
pub use safe_run::{AppliedRemedy, SafeRun, apply_safe_remedies};

/// Places every box and runs every check. Pure, and total on every job that validates. No remedy is
/// judged: what it says of its safety is what its check claims.
#[must_use]
pub fn inspect(job: &Job) -> Inspection {
    Answer::of(job).into_inspection()
}

/// The same with every remedy judged.
#[must_use]
pub fn judged(job: &Job) -> Inspection {
    Answer::of(job).judged()
}
