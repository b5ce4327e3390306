//! Views of a whole box: elevation and section, live in the window and small on sheets.
//!
//! Views are in **paper** millimetres: workshop mm times [`ViewOptions::scale`], so that figures
//! and arrowheads keep their size at every zoom. Items carry what they show, so that [`hit`] finds
//! it again.

mod around;
mod common;
mod elevation;
mod elevation_dimensions;
mod ghost;
mod grips;
mod hatchings;
mod highlight;
mod hit;
mod leaf_section;
mod options;
mod plan;
mod section;
mod section_door;
#[cfg(test)]
mod tests;
mod visible;

pub(crate) use common::figure;
pub use elevation::elevation;
pub(crate) use hatchings::hatchings;
pub(crate) use highlight::severity_ink;
pub use hit::hit;
pub use options::{Around, ViewOptions};
pub use plan::plan;
pub use section::section;
