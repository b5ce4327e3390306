//! Undo, redo, boxes, units and cards.

use flapwright_model::card::Card;
use flapwright_model::change;
use flapwright_model::edit::{Edit, JobHead};
use flapwright_model::id::CardId;
use flapwright_model::job::UsedCard;
use flapwright_model::length::Unit;

use super::Session;
use crate::outcome::Outcome;

impl Session {
    pub(super) fn undo(&mut self) -> Outcome {
        match self.document.undo() {
            Some(label) => Outcome::Done(format!("Undone: {label}")),
            None => Outcome::Nothing,
        }
    }

    pub(super) fn redo(&mut self) -> Outcome {
        match self.document.redo() {
            Some(label) => Outcome::Done(format!("Redone: {label}")),
            None => Outcome::Nothing,
        }
    }

    pub(super) fn add_box(&mut self) -> Outcome {
        let edit = change::add_box(self.job(), self.selection.box_id);
        self.insert_box("add", edit)
    }

    pub(super) fn duplicate_box(&mut self) -> Outcome {
        let shown = self.selection.box_id;
        match shown.and_then(|id| change::duplicate_box(self.job(), id)) {
            Some(edit) => self.insert_box("duplicate as", edit),
            None => Outcome::Nothing,
        }
    }

    /// Adds a box and shows it.
    fn insert_box(&mut self, verb: &str, edit: Edit) -> Outcome {
        let new = match &edit {
            Edit::InsertBox { with, .. } => Some((with.id, format!("{verb} {}", with.name))),
            _ => None,
        };
        let Some((id, label)) = new else {
            return Outcome::Nothing;
        };
        let outcome = self.change(label, edit, None);
        if outcome.is_done() {
            self.selection.show_box(id);
        }
        outcome
    }

    pub(super) fn remove_box(&mut self) -> Outcome {
        let Some(shown) = self.shown_wall_box() else {
            return Outcome::Nothing;
        };
        let (id, label) = (shown.id, format!("remove box {}", shown.name));
        self.change(label, Edit::RemoveBox { id }, None)
    }

    pub(super) fn use_unit(&mut self, unit: Unit) -> Outcome {
        let head = JobHead {
            unit,
            ..JobHead::of(self.document.job())
        };
        let label = match unit {
            Unit::Millimetre => "job: lengths in millimetres",
            Unit::Inch => "job: lengths in inches",
        };
        self.change(label.to_owned(), Edit::ReplaceHead(Box::new(head)), None)
    }

    pub(super) fn put_card(&mut self, card: Card) -> Outcome {
        let mut cards = self.document.job().cards.clone();
        let name = card.name.clone();
        let label = match cards.iter_mut().find(|it| it.card.name == name) {
            Some(before) if before.card == card => {
                return Outcome::Done(format!("The job has {name} as it is already"));
            }
            Some(before) => {
                before.card = card;
                format!("card {name}: changed")
            }
            None => {
                cards.push(UsedCard {
                    id: CardId::default(),
                    card,
                });
                format!("card {name}: added")
            }
        };
        self.change(label, Edit::ReplaceCards(cards), None)
    }
}
