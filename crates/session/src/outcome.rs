//! What comes of an action.

use std::path::PathBuf;

use flapwright_answer::AppliedRemedy;
use flapwright_model::validate::Problem;
use flapwright_motion::strut_mounts::{MountAnswer, MountError};

/// What came of an action.
#[derive(Debug)]
#[must_use]
pub enum Outcome {
    /// There was nothing to do: what is meant is not there, or everything is so already.
    Nothing,
    /// Only what is selected has changed, or nothing that needs words.
    Shown,
    /// It is done; what to say of it.
    Done(String),
    /// The job would not be sound after it, and is as it was.
    Refused {
        /// What was to be done.
        label: String,
        /// Why not.
        problems: Vec<Problem>,
    },
    /// It could not be done; the job is as it was.
    Failed {
        /// What is not done, in a few words.
        title: &'static str,
        /// Why not.
        why: String,
    },
    /// The job has no file yet: a client asks for one and saves there.
    NeedsPath,
    /// Every safe remedy is applied, as one step.
    Remedied(Vec<AppliedRemedy>),
}

impl Outcome {
    /// Whether it was done.
    #[must_use]
    pub const fn is_done(&self) -> bool {
        matches!(self, Self::Done(_) | Self::Remedied(_) | Self::Shown)
    }
}

/// What a search for mounts found.
pub type Found = Result<Vec<MountAnswer>, MountError>;

/// How an export ended.
#[derive(Debug)]
pub enum ExportEnd {
    /// The files are in their places.
    Written(Written),
    /// It was stopped; nothing was written.
    Stopped(String),
    /// It failed; nothing was written.
    Failed(String),
}

/// What an export wrote.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Written {
    /// The files.
    pub files: Vec<PathBuf>,
    /// Panels of the bore lists that must not be drilled yet, in words, e.g. `plates: door, 1 stop
    /// open`.
    pub stopped: Vec<String>,
}

/// Something that went on beside is finished.
#[derive(Debug)]
pub enum News {
    /// The export.
    Export(ExportEnd),
    /// The search for mounts.
    Mounts(Found),
}
