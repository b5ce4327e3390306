//! Placement of bores, and the checks on boxes, neighbours, doors that look alike and cards.
//!
//! All of it is pure and total on every job that validates. No bore is computed outside
//! [`placement`]; this crate knows no drawing. The one answer to "what is true of this job" is put
//! together from these parts by the crate `answer`.

pub mod accept;
pub mod advice;
pub mod checks;
pub mod chosen_work;
mod door_work;
pub mod finding;
pub mod fingerprint;
mod fitted;
mod gaps;
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
pub mod size_query;
pub mod strut_places;
pub mod trial;
mod tweaks;
