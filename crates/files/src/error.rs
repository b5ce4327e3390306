//! What can go wrong with a file, said so that the reader knows what to do.

use std::io;
use std::path::PathBuf;

/// Why a file was not read or not written. Each message names the file or folder, the cause and
/// the remedy; causes are part of the message and not repeated as a source.
#[derive(Debug, thiserror::Error)]
#[non_exhaustive]
pub enum FileError {
    /// There is no such folder.
    #[error("folder `{}` does not exist; create it or choose another folder", folder.display())]
    FolderMissing {
        /// The folder.
        folder: PathBuf,
    },
    /// The path leads to a file.
    #[error("`{}` is a file, not a folder; choose a folder", folder.display())]
    NotAFolder {
        /// The path.
        folder: PathBuf,
    },
    /// No file can be made in the folder.
    #[error(
        "folder `{}` cannot be written to; choose another folder or ask for the right to write \
         there: {cause}",
        folder.display()
    )]
    FolderClosed {
        /// The folder.
        folder: PathBuf,
        /// What the system said.
        cause: io::Error,
    },
    /// The name is no plain file name, or is given twice.
    #[error("`{name}` cannot be used as a file name: {reason}; choose another name")]
    FileName {
        /// The name.
        name: String,
        /// Why not.
        reason: &'static str,
    },
    /// What has the name is no file that could be replaced.
    #[error("`{}` is {what} and was left as it is; choose another name", file.display())]
    Occupied {
        /// The path.
        file: PathBuf,
        /// What it is, e.g. `a link`.
        what: &'static str,
    },
    /// The file is there already and marked as read-only.
    #[error(
        "file `{}` is write-protected; choose another name or lift the protection",
        file.display()
    )]
    WriteProtected {
        /// The file.
        file: PathBuf,
    },
    /// The file could not be written; what was there before is untouched.
    #[error(
        "file `{}` cannot be written and was left as it was; make sure that the disk has room and \
         that no other program holds the file: {cause}",
        file.display()
    )]
    Write {
        /// The file.
        file: PathBuf,
        /// What the system said.
        cause: io::Error,
    },
    /// A file or folder could not be read.
    #[error("cannot read {}: {cause}", path.display())]
    Read {
        /// Which.
        path: PathBuf,
        /// What the system said.
        cause: io::Error,
    },
    /// What is to be read is no ordinary file.
    #[error("{} is {what}, not a file; choose a file", path.display())]
    NotAFile {
        /// The path.
        path: PathBuf,
        /// What it is, e.g. `a folder`.
        what: &'static str,
    },
    /// A file is larger than one of its kind can be.
    #[error("{} is larger than the {most} bytes that a file of this kind has at most", path.display())]
    TooLarge {
        /// The file.
        path: PathBuf,
        /// Most that is read, bytes.
        most: usize,
    },
    /// A file is no text.
    #[error("{} is not a text in UTF-8; a file of this kind is", path.display())]
    NotText {
        /// The file.
        path: PathBuf,
    },
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn messages_name_the_thing_the_cause_and_the_remedy() {
        let closed = FileError::FolderClosed {
            folder: PathBuf::from("/srv/plans"),
            cause: io::Error::other("no permission"),
        };
        assert_eq!(
            closed.to_string(),
            "folder `/srv/plans` cannot be written to; choose another folder or ask for the right \
             to write there: no permission"
        );
        let occupied = FileError::Occupied {
            file: PathBuf::from("/srv/door.dxf"),
            what: "a link",
        };
        assert_eq!(
            occupied.to_string(),
            "`/srv/door.dxf` is a link and was left as it is; choose another name"
        );
    }
}
