//! Window and command line of Flapwright.
//!
//! No joinery arithmetic in here: what is true of a job is `flapwright_rules::inspect`'s answer.

pub mod bore_files;
pub mod cli;
pub mod job_file;
pub mod sheet_files;
pub mod shipped;
pub mod window;
