//! What is in the folders, and reading and writing one file.

use std::fs;
use std::path::{Path, PathBuf};

use flapwright_model::card::Card;
use flapwright_model::card_record::{CardRecord, LARGEST_RECORD};

use super::error::LibraryError;
use crate::error::FileError;
use crate::read_limited;

/// Most files of one folder that are looked at.
const MOST_FILES: usize = 5000;

/// A card that can be used.
#[derive(Debug, Clone, PartialEq)]
pub struct Entry {
    /// Its file.
    pub path: PathBuf,
    /// Whether its folder is only read.
    pub shared: bool,
    /// The card and its revisions.
    pub record: CardRecord,
    /// Whether another file has a card of the same name.
    pub name_taken: bool,
}

/// A file or folder that cannot be used.
#[derive(Debug)]
pub struct Broken {
    /// Why; names the file, and line and field where it is a text.
    pub error: LibraryError,
}

/// Everything in the folders of a library.
#[derive(Debug, Default)]
pub struct Shelf {
    /// The cards, by name, then by path.
    pub entries: Vec<Entry>,
    /// What cannot be read.
    pub broken: Vec<Broken>,
}

impl Entry {
    /// The card in use.
    #[must_use]
    pub const fn card(&self) -> &Card {
        &self.record.current.card
    }
}

impl Shelf {
    /// The cards of that name, the user's own first.
    pub fn named(&self, name: &str) -> impl Iterator<Item = &Entry> {
        let own = |shared: bool| {
            self.entries
                .iter()
                .filter(move |entry| entry.shared == shared && entry.card().name == name)
        };
        own(false).chain(own(true))
    }

    pub(crate) fn add_folder(&mut self, folder: &Path, shared: bool) {
        let listed = match fs::read_dir(folder) {
            Ok(listed) => listed,
            // The user's own folder is made with the first card.
            Err(error) if !shared && error.kind() == std::io::ErrorKind::NotFound => return,
            Err(cause) => {
                self.broken.push(Broken {
                    error: LibraryError::File(FileError::Read {
                        path: folder.to_owned(),
                        cause,
                    }),
                });
                return;
            }
        };
        let mut paths: Vec<PathBuf> = listed
            .filter_map(|entry| Some(entry.ok()?.path()))
            .filter(|path| {
                path.extension()
                    .is_some_and(|it| it.eq_ignore_ascii_case("ron"))
            })
            .collect();
        paths.sort();
        paths.truncate(MOST_FILES);
        for path in paths {
            match read_record(&path) {
                Ok(record) => self.entries.push(Entry {
                    path,
                    shared,
                    record,
                    name_taken: false,
                }),
                Err(error) => self.broken.push(Broken { error }),
            }
        }
    }

    pub(crate) fn sort(&mut self) {
        self.entries
            .sort_by(|a, b| (&a.card().name, &a.path).cmp(&(&b.card().name, &b.path)));
        let names: Vec<String> = self
            .entries
            .iter()
            .map(|entry| entry.card().name.clone())
            .collect();
        for entry in &mut self.entries {
            let same = names.iter().filter(|name| **name == entry.card().name);
            entry.name_taken = same.count() > 1;
        }
    }
}

/// Reads a card's file: a record with its revisions, or a bare card.
///
/// # Errors
/// [`LibraryError`] with file, line and field.
pub fn read_record(path: &Path) -> Result<CardRecord, LibraryError> {
    let text = read_limited(path, LARGEST_RECORD)?;
    CardRecord::read(&text).map_err(|cause| LibraryError::NoCard {
        path: path.to_owned(),
        cause,
    })
}
