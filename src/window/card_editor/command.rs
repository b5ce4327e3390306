//! What can be done with cards, as data.

use std::path::PathBuf;

use flapwright_model::card::{Card, OpeningKind};
use flapwright_model::id::CardId;

/// One thing to do with cards.
#[derive(Debug, Clone, PartialEq)]
pub enum CardCommand {
    /// Shows the cards at hand.
    List,
    /// Goes back to the job; what is typed is kept.
    Close,
    /// Begins a card with everything but the numbers.
    New(OpeningKind),
    /// Opens a card of the job for typing.
    Edit(CardId),
    /// Goes on with a card that is half typed.
    Resume(usize),
    /// Throws a half typed card away, after a question.
    Drop(usize),
    /// Throws it away.
    DropNow(usize),
    /// Throws all half typed cards away and closes the window.
    LoseAll,
    /// Takes the last change of the open card back.
    Undo,
    /// Does it again.
    Redo,
    /// Puts the open card into the job.
    UseInJob,
    /// Asks for a file and writes the open card there, complete or not.
    SaveFile,
    /// Puts the open card into the library.
    IntoLibrary,
    /// Asks for a card's file and reads it.
    Import,
    /// Reads a card's file.
    ImportPath(PathBuf),
    /// Asks for a file and writes a card of the job there.
    Export(CardId),
    /// Puts a card of the job into the library.
    JobCardIntoLibrary(CardId),
    /// Puts the library's card of that index into the job.
    FromLibrary(usize),
    /// Opens a copy of the library's card of that index for typing.
    EditFromLibrary(usize),
    /// Shows what differs between a card of the job and the library's of its name.
    Compare(CardId),
    /// Puts a card in the place of the job's card of the same name.
    Adopt(Box<Card>),
    /// Asks for a folder with cards of others, which is only read.
    ShareFolder,
}
