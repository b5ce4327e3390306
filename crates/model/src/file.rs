//! The job file: RON text to a sound [`Job`] and back.

use serde::Deserialize;

use crate::card::Card;
use crate::job::{FILE_VERSION, Job};
use crate::material::Material;
use crate::validate::{Problem, validate, validate_card, validate_materials};

/// Largest job file that is read, bytes: far above any real job, far below what fills memory.
pub const LARGEST_FILE: usize = 64 * 1024 * 1024;

/// Why a job file was refused.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
pub enum ReadError {
    /// The text is not a job: broken RON, an unknown or missing field, a value of the wrong kind.
    #[error("line {line}, column {column}: {what}")]
    Text {
        /// Line, from 1.
        line: usize,
        /// Column, from 1.
        column: usize,
        /// What is wrong there.
        what: String,
    },
    /// The file says that a later version of the program wrote it.
    #[error(
        "the file has version {found}, and this program reads up to version {FILE_VERSION}; \
         open it with a newer Flapwright"
    )]
    TooNew {
        /// Version of the file.
        found: u32,
    },
    /// The file is too large.
    #[error("the file has {bytes} bytes; a job file has at most {LARGEST_FILE}")]
    TooLarge {
        /// Size of the file.
        bytes: usize,
    },
    /// The text is a job, and the job is not sound.
    #[error("{}", list(.0))]
    Unsound(Vec<Problem>),
}

/// Reads a job from the text of its file.
///
/// # Errors
/// - [`ReadError::Text`] with line and column for anything that is not a job's text,
/// - [`ReadError::TooNew`] and [`ReadError::TooLarge`],
/// - [`ReadError::Unsound`] with every field that is out of its limits.
pub fn read_job(text: &str) -> Result<Job, ReadError> {
    if text.len() > LARGEST_FILE {
        return Err(ReadError::TooLarge { bytes: text.len() });
    }
    let head: Head = ron::from_str(text).map_err(|error| text_error(&error))?;
    if head.version > FILE_VERSION {
        return Err(ReadError::TooNew {
            found: head.version,
        });
    }
    // Version 1 is the first: there is nothing to migrate from yet, and 0 is refused by
    // `validate`. A later version turns the older text into the newer form here.
    let job: Job = ron::from_str(text).map_err(|error| text_error(&error))?;
    let problems = validate(&job);
    if problems.is_empty() {
        Ok(job)
    } else {
        Err(ReadError::Unsound(problems))
    }
}

/// Reads a single card from the text of its file.
///
/// # Errors
/// As for [`read_job`]; a card has no version.
pub fn read_card(text: &str) -> Result<Card, ReadError> {
    let card: Card = ron::from_str(text).map_err(|error| text_error(&error))?;
    let problems = validate_card(&card);
    if problems.is_empty() {
        Ok(card)
    } else {
        Err(ReadError::Unsound(problems))
    }
}

/// Reads a material table from the text of its file.
///
/// # Errors
/// As for [`read_job`]; a table has no version.
pub fn read_materials(text: &str) -> Result<Vec<Material>, ReadError> {
    let materials: Vec<Material> = ron::from_str(text).map_err(|error| text_error(&error))?;
    let problems = validate_materials(&materials);
    if problems.is_empty() {
        Ok(materials)
    } else {
        Err(ReadError::Unsound(problems))
    }
}

/// The text of a job's file: the same job always gives the same bytes.
#[must_use]
pub fn write_job(job: &Job) -> String {
    let layout = ron::ser::PrettyConfig::new()
        .new_line("\n")
        .indentor("  ")
        .compact_arrays(false);
    let mut text = ron::ser::to_string_pretty(job, layout).unwrap_or_default();
    text.push('\n');
    text
}

/// Only what says how to read the rest.
#[derive(Deserialize)]
struct Head {
    version: u32,
}

fn text_error(error: &ron::error::SpannedError) -> ReadError {
    ReadError::Text {
        line: error.span.start.line,
        column: error.span.start.col,
        what: error.code.to_string(),
    }
}

fn list(problems: &[Problem]) -> String {
    let mut text = String::new();
    for (i, problem) in problems.iter().enumerate() {
        if i > 0 {
            text.push('\n');
        }
        text.push_str(&problem.to_string());
    }
    text
}
