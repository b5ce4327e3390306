//! Soundness of doors: each number within its own limits, and what a door names.

use super::Validator;
use crate::door::{BoreReference, Door, Leaves};
use crate::field::{BoreField, DoorField, LeafField};
use crate::job::Job;

impl Validator {
    pub(super) fn door(&mut self, at: &str, door: &Door, job: &Job) {
        self.fields::<DoorField>(at, door);
        match &door.leaves {
            Leaves::One(leaf) => {
                self.fields_of::<LeafField>(format_args!("{at}.leaves"), leaf, job);
            }
            Leaves::Two { upper, lower, .. } => {
                self.fields_of::<LeafField>(format_args!("{at}.leaves.upper"), upper, job);
                self.fields_of::<LeafField>(format_args!("{at}.leaves.lower"), lower, job);
            }
        }
        if let Some(mass) = &door.typed_mass
            && mass.plus_minus > mass.kilograms
        {
            self.wrong(
                format!("{at}.typed_mass.plus_minus"),
                format!(
                    "is {} kg; it must be at most the mass itself, {} kg",
                    mass.plus_minus, mass.kilograms
                ),
                "correct one of the two",
            );
        }
        if let BoreReference::AsDrilled(bores) = &door.bores_follow {
            for (i, bore) in bores.iter().enumerate() {
                self.fields::<BoreField>(format_args!("{at}.bores_follow[{i}]"), bore);
            }
        }
        self.fitting(at, door, job);
    }

    fn fitting(&mut self, at: &str, door: &Door, job: &Job) {
        let Some(choice) = &door.fitting else { return };
        let Some(card) = job.card_by_id(choice.card) else {
            self.wrong(
                format!("{at}.fitting.card"),
                format!("is {}, which is not among the job's cards", choice.card),
                "choose a card of the job or add it",
            );
            return;
        };
        if card.size(&choice.size).is_none() {
            self.wrong(
                format!("{at}.fitting.size"),
                format!(
                    "names \"{}\", which the card \"{}\" does not have",
                    choice.size, card.name
                ),
                "choose a size of the card",
            );
        }
    }
}
