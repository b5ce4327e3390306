//! Undo of a card: states of the draft, one for each change or run of typing.

use egui::Id;
use flapwright_model::card_draft::CardDraft;

/// Most steps that are kept.
const MOST: usize = 300;

/// The states of a draft.
#[derive(Debug, Clone)]
pub(crate) struct Undo {
    past: Vec<CardDraft>,
    future: Vec<CardDraft>,
    now: CardDraft,
    /// The field whose typing belongs to the last step.
    field: Option<Id>,
}

impl Undo {
    /// Begins with a draft.
    pub(crate) const fn new(now: CardDraft) -> Self {
        Self {
            past: Vec::new(),
            future: Vec::new(),
            now,
            field: None,
        }
    }

    /// Notes the draft as it is now; whether it changed. Changes that come one after the other from
    /// the same `field` are one step.
    pub(crate) fn note(&mut self, draft: &CardDraft, field: Option<Id>) -> bool {
        if *draft == self.now {
            return false;
        }
        let before = std::mem::replace(&mut self.now, draft.clone());
        if field.is_none() || field != self.field {
            self.past.push(before);
            if self.past.len() > MOST {
                self.past.remove(0);
            }
        }
        self.field = field;
        self.future.clear();
        true
    }

    /// The state before, if there is one.
    pub(crate) fn undo(&mut self) -> Option<CardDraft> {
        let before = self.past.pop()?;
        self.field = None;
        self.future.push(std::mem::replace(&mut self.now, before));
        Some(self.now.clone())
    }

    /// The state that was taken back last.
    pub(crate) fn redo(&mut self) -> Option<CardDraft> {
        let after = self.future.pop()?;
        self.field = None;
        self.past.push(std::mem::replace(&mut self.now, after));
        Some(self.now.clone())
    }

    /// Whether there is a state before, and one after.
    pub(crate) const fn can(&self) -> (bool, bool) {
        (!self.past.is_empty(), !self.future.is_empty())
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_run_of_typing_in_one_field_is_one_step() {
        let mut draft = CardDraft::default();
        let mut undo = Undo::new(draft.clone());
        let (name, notes) = (Some(Id::unique("name")), Some(Id::unique("notes")));
        for text in ["W", "Wr", "Wren"] {
            text.clone_into(&mut draft.name);
            assert!(undo.note(&draft, name));
        }
        assert!(!undo.note(&draft, name));
        "x".clone_into(&mut draft.notes);
        undo.note(&draft, notes);
        let back = undo.undo().unwrap();
        assert_eq!((back.name.as_str(), back.notes.as_str()), ("Wren", ""));
        assert_eq!(undo.undo().unwrap().name, "");
        assert_eq!(undo.undo(), None);
        assert_eq!(undo.redo().unwrap().name, "Wren");
    }

    #[test]
    fn changes_without_a_field_are_each_a_step() {
        let mut draft = CardDraft::default();
        let mut undo = Undo::new(draft.clone());
        for text in ["1", "2"] {
            text.clone_into(&mut draft.name);
            undo.note(&draft, None);
        }
        assert_eq!(undo.undo().unwrap().name, "1");
        assert_eq!(undo.can(), (true, true));
    }
}
