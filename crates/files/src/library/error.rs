//! Why the library could not do what it was asked.

use std::io;
use std::path::PathBuf;

use flapwright_model::file::ReadError;

use crate::error::FileError;

/// Why the library could not do what it was asked.
#[derive(Debug, thiserror::Error)]
pub enum LibraryError {
    /// The system has no place for a user's data.
    #[error(
        "this system names no folder for a user's data; set FLAPWRIGHT_CARDS to the folder of \
         your cards"
    )]
    NoFolder,
    /// A folder could not be made.
    #[error("cannot make the folder {}: {cause}", folder.display())]
    MakeFolder {
        /// The folder.
        folder: PathBuf,
        /// Why.
        cause: io::Error,
    },
    /// A text is no sound card.
    #[error("{}: {cause}", path.display())]
    NoCard {
        /// The file.
        path: PathBuf,
        /// Line, field and what is wrong.
        cause: ReadError,
    },
    /// The folder of this card is only read.
    #[error("{} is in a shared folder, which is only read; add the card to your own", path.display())]
    ReadOnly {
        /// The file.
        path: PathBuf,
    },
    /// The file changed since it was listed.
    #[error("{} has changed since it was listed; look at it again", path.display())]
    Changed {
        /// The file.
        path: PathBuf,
    },
    /// All revisions together are too large.
    #[error(
        "{} would have {bytes} bytes with another revision, and a card's file has at most {most}; \
         export the card and add it as a new one",
        path.display()
    )]
    Full {
        /// The file.
        path: PathBuf,
        /// Size with the revision.
        bytes: usize,
        /// Largest that is written.
        most: usize,
    },
    /// A folder or file could not be read or written.
    #[error(transparent)]
    File(#[from] FileError),
}
