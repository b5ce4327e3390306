//! The library of fitting cards: one file a card in the user's own folder, and folders of others
//! that are only read.
//!
//! | how do I… | |
//! |---|---|
//! | find the user's folder | [`own_folder`] |
//! | see what is there, broken files too | [`Library::shelf`] |
//! | search by kind, load, height, text | [`Query`], [`Entry::answers`] |
//! | put a new card in | [`Library::add`] |
//! | change a card and keep what it was | [`Library::revise`] |
//! | read a card's file anywhere | [`read_record`] |
//! | compare a job's copy with the library's | [`Shelf::named`], `flapwright_model::card_difference` |
//!
//! **Invariants.** A card never overwrites another one: a new card gets a file name that is free,
//! and a revision keeps what was before it in the same file. A file that cannot be read is listed
//! with its message and hides no other one. Nothing here knows the time: who changed a card and
//! when are the caller's words.

mod error;
mod folder;
mod query;
mod shelf;

pub use error::LibraryError;
pub use folder::{FOLDER_VARIABLE, Library, own_folder};
pub use query::Query;
pub use shelf::{Broken, Entry, Shelf, read_record};
