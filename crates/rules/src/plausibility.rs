//! Slips that people make when they type a card: numbers that can be and hardly are.
//!
//! A sound card can have slips, and a slip can be right: none of them keeps anybody from using the
//! card. What cannot be at all is refused by `flapwright_model::validate`.

mod loads;
mod places;
mod reach;
mod units;

use flapwright_model::card::Card;
use flapwright_model::length::Unit;

/// Something on a card that looks like a slip.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Slip {
    /// Path of the field on the card, e.g. `side_bores[0].drill.diameter`.
    pub field: String,
    /// One sentence with the numbers.
    pub sentence: String,
    /// What to do about it.
    pub remedy: String,
}

impl std::fmt::Display for Slip {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        write!(f, "{}: {}; {}", self.field, self.sentence, self.remedy)
    }
}

/// Everything on a sound card that looks like a slip, in the order of the card. Lengths, masses and
/// moments are said in `unit`.
#[must_use]
pub fn slips(card: &Card, unit: Unit) -> Vec<Slip> {
    let mut look = Suspicions {
        card,
        unit,
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
    unit: Unit,
    slips: Vec<Slip>,
}

impl Suspicions<'_> {
    fn slip(&mut self, field: impl Into<String>, sentence: String, remedy: &str) {
        self.slips.push(Slip {
            field: field.into(),
            sentence,
            remedy: remedy.to_owned(),
        });
    }
}
