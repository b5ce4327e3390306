//! Undo, redo, boxes, units and cards.

use flapwright_model::cabinet::WallBox;
use flapwright_model::card::Card;
use flapwright_model::edit::{Edit, JobHead};
use flapwright_model::length::Unit;

use super::Session;
use crate::outcome::Outcome;
use crate::starter;

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
        let job = self.document.job();
        let name = starter::free_name(job, "box 1");
        let mut with = starter::plain_box(&name, &starter::usual_material(job));
        with.place.along_wall = starter::free_place(job);
        self.insert_box(format!("add {name}"), with)
    }

    pub(super) fn duplicate_box(&mut self) -> Outcome {
        let job = self.document.job();
        let Some(shown) = job.boxes.get(self.selection.box_index) else {
            return Outcome::Nothing;
        };
        let mut copy = shown.clone();
        copy.name = starter::free_name(job, &shown.name);
        copy.place.along_wall = starter::free_place(job);
        self.insert_box(format!("duplicate box {}", shown.name), copy)
    }

    fn insert_box(&mut self, label: String, with: WallBox) -> Outcome {
        let index = (self.selection.box_index + 1).min(self.document.job().boxes.len());
        let with = Box::new(with);
        let outcome = self.change(label, Edit::InsertBox { index, with }, None);
        if outcome.is_done() {
            self.selection.show_box(index);
        }
        outcome
    }

    pub(super) fn remove_box(&mut self) -> Outcome {
        let index = self.selection.box_index;
        let Some(shown) = self.document.job().boxes.get(index) else {
            return Outcome::Nothing;
        };
        let label = format!("remove box {}", shown.name);
        self.change(label, Edit::RemoveBox { index }, None)
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
        let label = match cards.iter_mut().find(|it| it.name == name) {
            Some(before) if *before == card => {
                return Outcome::Done(format!("The job has {name} as it is already"));
            }
            Some(before) => {
                *before = card;
                format!("card {name}: changed")
            }
            None => {
                cards.push(card);
                format!("card {name}: added")
            }
        };
        self.change(label, Edit::ReplaceCards(cards), None)
    }
}
