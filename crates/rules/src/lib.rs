//! Placement of bores and the checks on a job: one answer to "what is true of this job".
//!
//! [`inspect`] is pure and total on every job that validates. No bore is computed outside
//! [`placement`]; this crate knows no drawing.

pub mod advice;
pub mod checks;
pub mod finding;
mod inspect;
pub mod inspection;
pub mod mechanics;
pub mod placement;
pub mod proof;
pub mod quick;
pub mod say;
pub mod slips;
pub mod strut_places;
pub mod trial;

pub use inspect::inspect;
