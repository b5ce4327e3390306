//! The names of a job's parts.

use flapwright_model::part::Subject;

use crate::place::{BoxName, PartName};

/// What something is called: its box, and what of the box it is.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct PlaceName {
    /// The box; none for what is of the job as a whole.
    pub of_box: Option<BoxName>,
    /// What of it; none for the box itself.
    pub part: Option<PartName>,
}

/// Knows what the parts of a job are called.
pub trait Names {
    /// What a subject is called.
    fn name(&self, subject: Subject) -> PlaceName;
}
