//! The folders of a library, and what changes in the user's own.

use std::fs;
use std::path::{Path, PathBuf};

use directories::ProjectDirs;
use flapwright_model::card::Card;
use flapwright_model::card_record::{CardRecord, LARGEST_RECORD, Signature};

use super::error::LibraryError;
use super::shelf::{Entry, Shelf, read_record};
use crate::{safe_file_name, write_atomic};

/// The environment variable that names the user's folder in place of the system's.
pub const FOLDER_VARIABLE: &str = "FLAPWRIGHT_CARDS";

/// The folders of a library.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Library {
    own: PathBuf,
    shared: Vec<PathBuf>,
}

/// The folder of the user's cards: the one that `FLAPWRIGHT_CARDS` names, else `cards` in the
/// user's data folder as the system has it. It need not exist.
///
/// # Errors
/// [`LibraryError::NoFolder`] where the system has none and the variable is not set.
pub fn own_folder() -> Result<PathBuf, LibraryError> {
    if let Some(folder) = std::env::var_os(FOLDER_VARIABLE).filter(|it| !it.is_empty()) {
        return Ok(folder.into());
    }
    let dirs = ProjectDirs::from("", "", "flapwright").ok_or(LibraryError::NoFolder)?;
    Ok(dirs.data_dir().join("cards"))
}

impl Library {
    /// A library with the user's own folder and folders that are only read, in order. None of them
    /// need exist.
    #[must_use]
    pub const fn new(own: PathBuf, shared: Vec<PathBuf>) -> Self {
        Self { own, shared }
    }

    /// The user's own folder.
    #[must_use]
    pub fn own(&self) -> &Path {
        &self.own
    }

    /// Everything that is there, by name of card.
    #[must_use]
    pub fn shelf(&self) -> Shelf {
        let mut shelf = Shelf::default();
        shelf.add_folder(&self.own, false);
        for folder in &self.shared {
            shelf.add_folder(folder, true);
        }
        shelf.sort();
        shelf
    }

    /// Puts a card into the user's folder as a new file, which is made with its folder if need be.
    /// Another card of the same name stays as it is.
    ///
    /// # Errors
    /// [`LibraryError`] when folder or file cannot be made.
    pub fn add(&self, card: Card, by: Signature) -> Result<PathBuf, LibraryError> {
        self.add_record(&CardRecord::new(card, by))
    }

    /// Puts a card with all its revisions into the user's folder as a new file.
    ///
    /// # Errors
    /// As for [`Library::add`].
    pub fn add_record(&self, record: &CardRecord) -> Result<PathBuf, LibraryError> {
        fs::create_dir_all(&self.own).map_err(|cause| LibraryError::MakeFolder {
            folder: self.own.clone(),
            cause,
        })?;
        let path = self.free_path(&record.current.card.name);
        write(&path, record)?;
        Ok(path)
    }

    /// Puts another state of a card in use and keeps the one before; `false` where nothing differs.
    ///
    /// # Errors
    /// [`LibraryError::ReadOnly`] for a card of a shared folder; [`LibraryError::Changed`] when the
    /// file is not what it was when it was listed, e.g. because another window has revised it.
    pub fn revise(&self, entry: &Entry, card: Card, by: Signature) -> Result<bool, LibraryError> {
        let path = entry.path.clone();
        if entry.shared {
            return Err(LibraryError::ReadOnly { path });
        }
        let mut record = read_record(&path)?;
        if record != entry.record {
            return Err(LibraryError::Changed { path });
        }
        if !record.revise(card, by) {
            return Ok(false);
        }
        write(&path, &record)?;
        Ok(true)
    }

    /// A path in the user's folder that nothing has yet.
    fn free_path(&self, name: &str) -> PathBuf {
        let stem = safe_file_name(&name.to_lowercase());
        let mut path = self.own.join(format!("{stem}.ron"));
        let mut number = 2_u32;
        // A dangling link counts as taken too.
        while path.symlink_metadata().is_ok() {
            path = self.own.join(format!("{stem}-{number}.ron"));
            number += 1;
        }
        path
    }
}

fn write(path: &Path, record: &CardRecord) -> Result<(), LibraryError> {
    let text = record.write();
    if text.len() > LARGEST_RECORD {
        return Err(LibraryError::Full {
            path: path.to_owned(),
            bytes: text.len(),
            most: LARGEST_RECORD,
        });
    }
    Ok(write_atomic(path, text.as_bytes())?)
}
