//! Files as they come from the disk and go to it: read to a limit, written whole or not at all,
//! under names that every system takes; and the library of fitting cards, which lives in folders.
//!
//! | how do I… | |
//! | --- | --- |
//! | read a text file of the user's choice | [`read_limited`] |
//! | save one file | [`write_atomic`] |
//! | save a set of files into a folder | [`write_files`] |
//! | turn a title into a file name | [`safe_file_name`], [`unique_names`] |
//! | know whether two names can stand side by side | [`folded`] |
//! | keep and search fitting cards | [`library`] |
//!
//! **Invariants.** No file is seen half written, and none is lost for one that could not be
//! written. Nothing is written through a link, nor over a pipe, a device or a folder. Nothing is
//! read but ordinary files, and no more of them than the caller allows. Nothing here knows what a
//! file means, but for the cards of the library.

mod error;
pub mod library;
mod names;
mod read;
mod staging;
mod write;

pub use crate::error::FileError;
pub use crate::names::{folded, safe_file_name, unique_names};
pub use crate::read::read_limited;
pub use crate::write::{write_atomic, write_files};
