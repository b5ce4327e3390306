//! Window and command line of Flapwright.
//!
//! No joinery arithmetic in here: what is true of a job is `flapwright_answer::inspect`'s answer.

pub mod cli;
pub mod window;
