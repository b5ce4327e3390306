//! A card of a library with its revisions.

use serde::{Deserialize, Serialize};

use crate::card::Card;
use crate::file::{ReadError, read_card, read_ron, write_ron};
use crate::validate::validate_card;

/// Largest file of a record that is read, bytes: a hundred full cards.
pub const LARGEST_RECORD: usize = 4 * 1024 * 1024;

/// The form of record files that this program writes.
const RECORD_VERSION: u32 = 1;

/// One state of a card: who put it there, when, and why, in the caller's words.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Revision {
    /// Number, from 1.
    pub number: u32,
    /// Who made it; free text.
    #[serde(default)]
    pub who: String,
    /// When; free text, e.g. `2026-11-25`.
    #[serde(default)]
    pub when: String,
    /// What changed and why; free text.
    #[serde(default)]
    pub note: String,
    /// The card.
    pub card: Card,
}

/// A card of a library: the revision in use and the older ones.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct CardRecord {
    /// Version of the file's form.
    record_version: u32,
    /// The revision in use.
    pub current: Revision,
    /// The revisions before it, the latest first.
    #[serde(default)]
    pub older: Vec<Revision>,
}

/// Who changes a card, when, and why.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct Signature {
    /// Who.
    pub who: String,
    /// When, in words that sort if they are to.
    pub when: String,
    /// Why.
    pub note: String,
}

impl CardRecord {
    /// A new record with one revision.
    #[must_use]
    pub fn new(card: Card, by: Signature) -> Self {
        Self {
            record_version: RECORD_VERSION,
            current: revision(1, card, by),
            older: Vec::new(),
        }
    }

    /// Puts another state of the card in use and keeps the one before. The same card again changes
    /// nothing; `false` then.
    pub fn revise(&mut self, card: Card, by: Signature) -> bool {
        if card == self.current.card {
            return false;
        }
        let next = revision(self.current.number.saturating_add(1), card, by);
        self.older
            .insert(0, std::mem::replace(&mut self.current, next));
        true
    }

    /// Reads a record, or a bare card file as its first revision.
    ///
    /// # Errors
    /// [`ReadError`] with line and field, also for an older revision that is not sound.
    pub fn read(text: &str) -> Result<Self, ReadError> {
        if text.len() > LARGEST_RECORD {
            return Err(ReadError::TooLarge {
                bytes: text.len(),
                most: LARGEST_RECORD,
            });
        }
        if !is_record(text) {
            return Ok(Self::new(read_card(text)?, Signature::default()));
        }
        let record: Self = read_ron(text, LARGEST_RECORD)?;
        if record.record_version != RECORD_VERSION {
            return Err(ReadError::TooNew {
                found: record.record_version,
            });
        }
        for revision in std::iter::once(&record.current).chain(&record.older) {
            let problems = validate_card(&revision.card);
            if !problems.is_empty() {
                return Err(ReadError::Unsound(problems));
            }
        }
        Ok(record)
    }

    /// The text of its file; the same record always gives the same bytes.
    #[must_use]
    pub fn write(&self) -> String {
        write_ron(self)
    }
}

/// Whether the first field of a text is that of a record.
fn is_record(text: &str) -> bool {
    text.lines()
        .map(str::trim)
        .filter(|line| !line.is_empty() && !line.starts_with("//"))
        .take(2)
        .any(|line| {
            line.trim_start_matches('(')
                .trim_start()
                .starts_with("record_version")
        })
}

fn revision(number: u32, card: Card, by: Signature) -> Revision {
    Revision {
        number,
        who: by.who,
        when: by.when,
        note: by.note,
        card,
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    const OWL: &str = include_str!("../../../assets/demo/cards/owl.ron");

    #[test]
    fn older_revisions_are_kept_and_read_back() {
        let mut record = CardRecord::read(OWL).unwrap();
        let first = record.current.card.clone();
        let mut card = first.clone();
        assert!(!record.revise(card.clone(), Signature::default()));
        card.notes = "corrected".to_owned();
        let by = Signature {
            who: "H. Ruder".to_owned(),
            when: "2026-11-25".to_owned(),
            note: "misread the table".to_owned(),
        };
        assert!(record.revise(card, by));
        let back = CardRecord::read(&record.write()).unwrap();
        assert_eq!(back, record);
        assert_eq!(back.current.number, 2);
        assert_eq!(back.current.who, "H. Ruder");
        assert_eq!((back.older[0].number, &back.older[0].card), (1, &first));
    }
}
