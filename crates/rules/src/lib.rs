//! Placement of bores and the checks on a job: one answer to "what is true of this job".
//!
//! [`inspect`] is pure and total on every job that validates. No bore is computed outside
//! [`placement`]; this crate knows no drawing.

pub mod accept;
pub mod advice;
pub mod bench;
pub mod checks;
pub mod chosen_work;
pub mod finding;
pub mod fingerprint;
mod fitted;
mod inspect;
pub mod inspection;
mod judge;
pub mod mechanics;
mod panel_difference;
mod place_words;
pub mod placement;
pub mod proof;
pub mod quick;
pub mod records;
pub mod say;
pub mod slips;
pub mod strut_places;
pub mod trial;
mod tweaks;

pub use inspect::{Inspector, inspect};
pub use judge::{AppliedRemedy, SafeRun, apply_safe_remedies};
