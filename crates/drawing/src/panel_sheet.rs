//! Drilling sheets: one page for each drilled panel.

use flapwright_model::job::Job;
use flapwright_rules::inspection::Inspection;

use crate::sheet::Sheet;

/// The drilling sheets of a job, box by box, in the order of the box's panels; a panel without
/// bores has none.
#[must_use]
pub fn sheets(job: &Job, inspection: &Inspection) -> Vec<Sheet> {
    let _ = (job, inspection);
    Vec::new()
}
