//! Placement of bores and the checks on a job: one answer to "what is true of this job".
//!
//! [`inspect`] is pure and total on every job that validates. No bore is computed outside
//! [`placement`]; this crate knows no drawing.

pub mod accept;
pub mod advice;
pub mod checks;
pub mod chosen_work;
pub mod finding;
pub mod fingerprint;
mod fitted;
mod inspect;
pub mod inspection;
pub mod machine_frame;
pub mod mechanics;
pub mod message;
mod panel_difference;
pub mod placement;
pub mod plausibility;
pub mod plural;
pub mod proof;
pub mod records;
mod remedy_safety;
pub mod size_query;
pub mod strut_places;
pub mod trial;
mod tweaks;

pub use inspect::{Inspector, inspect};
pub use remedy_safety::{AppliedRemedy, SafeRun, apply_safe_remedies};
