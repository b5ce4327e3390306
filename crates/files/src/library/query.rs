//! Searching a library.

use flapwright_model::card::{Card, OpeningKind, Size};
use flapwright_model::lift::{Carries, MassRow};

use super::shelf::Entry;

/// What a card must have; what is `None` or empty is not asked.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Query {
    /// Words that name, maker's text or notes hold, capitals not counted; all of them.
    pub text: String,
    /// How the door opens.
    pub kind: Option<OpeningKind>,
    /// A door mass that one of the sizes carries, kg. Cards that speak in moments are kept: they
    /// cannot be told without a door.
    pub mass: Option<f64>,
    /// A door height that one of the sizes is made for, mm.
    pub height: Option<f64>,
}

impl Entry {
    /// Whether the card in use answers a query: one size must have both load and height.
    #[must_use]
    pub fn answers(&self, query: &Query) -> bool {
        let card = self.card();
        query.kind.is_none_or(|kind| kind == card.kind)
            && has_words(card, &query.text)
            && card.sizes.iter().any(|size| suits(size, query))
    }
}

fn has_words(card: &Card, words: &str) -> bool {
    let all = format!("{}\n{}\n{}", card.name, card.maker_text, card.notes).to_lowercase();
    words
        .split_whitespace()
        .all(|word| all.contains(&word.to_lowercase()))
}

fn suits(size: &Size, query: &Query) -> bool {
    let within = |value: f64, min: f64, max: f64| value >= min && value <= max;
    let height = query
        .height
        .is_none_or(|it| within(it, size.door_height.min, size.door_height.max));
    let load = query.mass.is_none_or(|mass| match &size.carries {
        Carries::Mass { min, max } => within(mass, *min, *max),
        Carries::Moment { .. } => true,
        // With a height the row beside it, else any row.
        Carries::MassByDoorHeight(rows) => rows_carry(rows, mass, query.height),
        Carries::MassByBoxHeight(rows) => rows_carry(rows, mass, None),
    });
    height && load
}

/// Whether rows carry a mass: between two rows either of them does.
fn rows_carry(rows: &[MassRow], mass: f64, height: Option<f64>) -> bool {
    let carries = |row: &MassRow| mass >= row.min && mass <= row.max;
    let Some(height) = height else {
        return rows.iter().any(carries);
    };
    rows.windows(2).any(|pair| {
        let [a, b] = pair else { return false };
        if !(height >= a.height && height <= b.height) {
            return false;
        }
        let share = (height - a.height) / (b.height - a.height);
        let mix = |from: f64, to: f64| from + (to - from) * share;
        mass >= mix(a.min, b.min) && mass <= mix(a.max, b.max)
    }) || rows.iter().any(|row| row.height == height && carries(row))
}
