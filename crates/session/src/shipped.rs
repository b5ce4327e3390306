//! What ships inside the program: the demo job, the demo cards and the material table.

use flapwright_model::card::Card;
use flapwright_model::file::{ReadError, read_card, read_job, read_materials};
use flapwright_model::job::Job;
use flapwright_model::material::Material;

const DEMO_JOB: &str = include_str!("../../../assets/demo/houseboat-galley.ron");
const MATERIALS: &str = include_str!("../../../assets/materials.ron");
const DEMO_CARDS: [&str; 5] = [
    include_str!("../../../assets/demo/cards/wren.ron"),
    include_str!("../../../assets/demo/cards/dipper.ron"),
    include_str!("../../../assets/demo/cards/heron.ron"),
    include_str!("../../../assets/demo/cards/swift.ron"),
    include_str!("../../../assets/demo/cards/owl.ron"),
];

/// The demo job: the galley of a houseboat, invented.
///
/// # Errors
/// When the shipped file is broken, which a test rules out.
pub fn demo_job() -> Result<Job, ReadError> {
    read_job(DEMO_JOB)
}

/// The material table that a new job starts with.
///
/// # Errors
/// When the shipped file is broken, which a test rules out.
pub fn materials() -> Result<Vec<Material>, ReadError> {
    read_materials(MATERIALS)
}

/// The invented cards that ship with the program.
///
/// # Errors
/// When a shipped file is broken, which a test rules out.
pub fn demo_cards() -> Result<Vec<Card>, ReadError> {
    DEMO_CARDS.iter().map(|text| read_card(text)).collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn everything_that_ships_is_sound() {
        let demo = demo_job().unwrap();
        assert!(demo.invented, "the demo job must say that it is invented");
        assert!(demo_cards().unwrap().iter().all(|card| card.invented));
    }

    #[test]
    fn the_demo_job_uses_the_shipped_cards_and_materials() {
        let demo = demo_job().unwrap();
        let cards = demo_cards().unwrap();
        for card in demo.card_list() {
            assert!(
                cards.contains(card),
                "card {} of the demo differs from its file",
                card.name
            );
        }
        let materials = materials().unwrap();
        for material in &demo.materials {
            assert!(
                materials.contains(material),
                "{} differs from the table",
                material.name
            );
        }
    }
}
