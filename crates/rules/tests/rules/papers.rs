//! The invented papers typed as drafts, and the cards that come of them.

#![expect(
    clippy::disallowed_methods,
    reason = "a test reads and rewrites the papers' files"
)]

use std::path::PathBuf;

use flapwright_model::card::Card;
use flapwright_model::card_draft::CardDraft;
use flapwright_model::file::{read_card, write_card};
use flapwright_rules::plausibility::slips;
use flapwright_rules::proof::{Proof, proof};

fn path(name: &str) -> PathBuf {
    PathBuf::from(env!("CARGO_MANIFEST_DIR"))
        .join("../../assets/demo/papers")
        .join(name)
}

fn text(name: &str) -> String {
    std::fs::read_to_string(path(name)).expect("the papers ship with the program")
}

fn typed(name: &str) -> Card {
    let draft = CardDraft::read(&text(&format!("{name}-draft.ron"))).expect("a draft");
    draft
        .resolve()
        .unwrap_or_else(|problems| panic!("{name}: {problems:#?}"))
}

#[test]
fn the_papers_typed_as_they_are_give_proved_cards_without_slips() {
    for name in ["kestrel", "milan", "mesange"] {
        let card = typed(name);
        // The example of each paper is of another box than the one it draws.
        assert_eq!(proof(&card), Proof::Proved, "{name}");
        assert_eq!(slips(&card), [], "{name}");
        assert!(card.invented, "{name}");
    }
}

#[test]
fn the_cards_beside_the_papers_are_those_of_the_drafts() {
    for name in ["kestrel", "milan", "mesange"] {
        let card = typed(name);
        let file = format!("{name}.ron");
        if std::env::var_os("UPDATE_PAPERS").is_some() {
            std::fs::write(path(&file), write_card(&card)).expect("writes");
        }
        assert_eq!(read_card(&text(&file)), Ok(card), "{name}");
    }
}
