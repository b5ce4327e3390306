//! Slips that people make when they type a card: numbers that can be and hardly are.
//!
//! A sound card can have slips, and a slip can be right: none of them keeps anybody from using the
//! card. What cannot be at all is refused by `flapwright_model::validate`.

mod loads;
mod places;
mod reach;
mod units;

use flapwright_model::card::Card;

use crate::message::{SlipMessage, SlipRemedy};

/// Something on a card that looks like a slip.
#[derive(Debug, Clone, PartialEq)]
pub struct Slip {
    /// Path of the field on the card, e.g. `side_bores[0].drill.diameter`.
    pub field: String,
    /// What looks wrong, with its numbers.
    pub message: SlipMessage,
    /// What to do about it.
    pub remedy: SlipRemedy,
}

/// Everything on a sound card that looks like a slip, in the order of the card.
#[must_use]
pub fn slips(card: &Card) -> Vec<Slip> {
    let mut look = Suspicions {
        card,
        slips: Vec::new(),
    };
    units::look_at(&mut look);
    places::look_at(&mut look);
    loads::look_at(&mut look);
    reach::look_at(&mut look);
    look.slips
}

/// Collects slips.
struct Suspicions<'a> {
    card: &'a Card,
    slips: Vec<Slip>,
}

impl Suspicions<'_> {
    fn slip(&mut self, field: impl Into<String>, message: SlipMessage, remedy: SlipRemedy) {
        self.slips.push(Slip {
            field: field.into(),
            message,
            remedy,
        });
    }
}
