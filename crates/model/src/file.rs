//! The job file: RON text to a sound [`Job`] and back, files of older versions included.

mod lines;
mod version_1;

use serde::de::DeserializeOwned;
use serde::{Deserialize, Serialize};

use crate::card::Card;
use crate::job::{FILE_VERSION, Job};
use crate::material::Material;
use crate::validate::{Problem, validate, validate_card, validate_materials};

/// Largest job file that is read, bytes: far above any real job, far below what fills memory.
pub const LARGEST_FILE: usize = 64 * 1024 * 1024;
/// Largest card file that is read, bytes: some fifty times a full card.
pub const LARGEST_CARD: usize = 1024 * 1024;
/// Most problems of a card that are told at once.
const MOST_TOLD: usize = 20;

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
    #[error("the file has {bytes} bytes; a file of this kind has at most {most}")]
    TooLarge {
        /// Size of the file.
        bytes: usize,
        /// Largest that is read.
        most: usize,
    },
    /// The text is a card, and the card is not sound.
    #[error("{}", list_with_lines(.0))]
    UnsoundCard(Vec<(usize, Problem)>),
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
        return Err(ReadError::TooLarge {
            bytes: text.len(),
            most: LARGEST_FILE,
        });
    }
    let mut job = parse_job(text)?;
    job.give_ids();
    let problems = validate(&job);
    if problems.is_empty() {
        Ok(job)
    } else {
        Err(ReadError::Unsound(problems))
    }
}

/// Parses the text of a job of any version. Once for a file of today, which nearly all are; what is
/// to be told of any other hangs on the version that it names.
fn parse_job(text: &str) -> Result<Job, ReadError> {
    let parsed: Result<Job, _> = ron::from_str(text);
    let parsed = match parsed {
        Ok(job) if job.version == FILE_VERSION => return Ok(job),
        other => other.map_err(|error| text_error(&error)),
    };
    let head: Head = ron::from_str(text).map_err(|error| text_error(&error))?;
    if head.version > FILE_VERSION {
        return Err(ReadError::TooNew {
            found: head.version,
        });
    }
    // What an older version wrote is turned into the form of today; 0 was never one, and `validate`
    // refuses it.
    match head.version {
        1 => version_1::read(text),
        _ => parsed,
    }
}

/// Reads a single card from the text of its file.
///
/// # Errors
/// - [`ReadError::TooLarge`] before anything is looked at,
/// - [`ReadError::Text`] with line, column and field,
/// - [`ReadError::UnsoundCard`] with line and field of each number that is out of its limits.
pub fn read_card(text: &str) -> Result<Card, ReadError> {
    let card: Card = read_ron(text, LARGEST_CARD)?;
    let problems = validate_card(&card);
    if problems.is_empty() {
        return Ok(card);
    }
    let with_lines = problems.into_iter().take(MOST_TOLD).map(|problem| {
        let prefix = format!("cards[0] \"{}\"", card.name);
        let field = problem.field.strip_prefix(&prefix).map_or_else(
            || problem.field.clone(),
            |rest| rest.trim_start_matches('.').to_owned(),
        );
        let line = lines::line_of(text, &field);
        (line, Problem { field, ..problem })
    });
    Err(ReadError::UnsoundCard(with_lines.collect()))
}

/// The text of a card's file: the same card always gives the same bytes.
#[must_use]
pub fn write_card(card: &Card) -> String {
    write_ron(card)
}

/// Reads RON of at most `most` bytes; a refusal names line, column and field.
pub(crate) fn read_ron<T: DeserializeOwned>(text: &str, most: usize) -> Result<T, ReadError> {
    if text.len() > most {
        let bytes = text.len();
        return Err(ReadError::TooLarge { bytes, most });
    }
    let mut reader = ron::Deserializer::from_str(text).map_err(|error| text_error(&error))?;
    let read = serde_path_to_error::deserialize(&mut reader);
    let value = read.map_err(|error| {
        let path = error.path().to_string();
        let error = text_error(&reader.span_error(error.into_inner()));
        match error {
            // "." is the whole file, "?" what the reader cannot name.
            ReadError::Text { line, column, what } if path != "." && path != "?" => {
                ReadError::Text {
                    line,
                    column,
                    what: format!("{path}: {what}"),
                }
            }
            error => error,
        }
    })?;
    reader
        .end()
        .map_err(|error| text_error(&reader.span_error(error)))?;
    Ok(value)
}

/// RON with two blanks a level and a line end at the end.
pub(crate) fn write_ron<T: Serialize>(value: &T) -> String {
    let layout = ron::ser::PrettyConfig::new()
        .new_line("\n")
        .indentor("  ")
        .compact_arrays(false);
    let mut text = ron::ser::to_string_pretty(value, layout).unwrap_or_default();
    text.push('\n');
    text
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
    write_ron(job)
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

fn list_with_lines(problems: &[(usize, Problem)]) -> String {
    let told = problems
        .iter()
        .map(|(line, problem)| format!("line {line}: {problem}"));
    let mut text = told.collect::<Vec<_>>().join("\n");
    if problems.len() == MOST_TOLD {
        text.push_str("\nthere may be more; these are the first");
    }
    text
}
