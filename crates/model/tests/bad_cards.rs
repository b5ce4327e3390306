//! Cards from strangers: whatever the text, an answer comes soon, and a refusal says where.

#![expect(clippy::unwrap_used, reason = "a test that lacks its part is to fail")]
#![expect(clippy::disallowed_types, reason = "a test times the readers")]

use std::time::{Duration, Instant};

use flapwright_model::card::Card;
use flapwright_model::card_draft::CardDraft;
use flapwright_model::card_record::CardRecord;
use flapwright_model::file::{LARGEST_CARD, read_card, read_job, write_job};
use flapwright_model::job::Job;
use proptest::prelude::*;

const WREN: &str = include_str!("../../../assets/demo/cards/wren.ron");

/// The refusal of a text, which must come within a second.
fn refused(text: &str) -> String {
    let from = Instant::now();
    let error = read_card(text).unwrap_err().to_string();
    let took = from.elapsed();
    assert!(took < Duration::from_secs(1), "took {took:?}");
    assert!(
        error.len() < 20_000,
        "the message has {} bytes",
        error.len()
    );
    error
}

fn line_with(text: &str, what: &str) -> usize {
    1 + text.lines().position(|line| line.contains(what)).unwrap()
}

/// The shipped card with one text in place of another.
fn changed(from: &str, to: &str) -> String {
    let text = WREN.replacen(from, to, 1);
    assert_ne!(text, WREN, "{from} is not in the card");
    text
}

#[test]
fn a_card_that_is_cut_short_is_refused_wherever_it_ends() {
    for end in (0..WREN.len()).step_by(97) {
        if WREN.is_char_boundary(end) {
            let error = refused(&WREN[..end]);
            assert!(error.starts_with("line "), "cut at {end}: {error}");
        }
    }
}

#[test]
fn a_hundred_megabytes_are_refused_by_their_size() {
    let text = "(".repeat(100 * 1024 * 1024);
    let error = refused(&text);
    assert!(error.contains("104857600 bytes"), "{error}");
    assert!(error.contains(&LARGEST_CARD.to_string()), "{error}");
    assert!(CardDraft::read(&text).is_err());
    assert!(CardRecord::read(&text).is_err());
}

#[test]
fn deep_nesting_is_refused_and_does_not_eat_the_stack() {
    for (open, field) in [("(", ""), ("[", ""), ("Some(", ""), ("{\"a\":", "")] {
        let deep = open.repeat(LARGEST_CARD / open.len() - 1);
        assert!(refused(&deep).contains(field));
        let inside = WREN.replacen("sizes: [", &format!("sizes: {}", open.repeat(100_000)), 1);
        let error = refused(&inside);
        assert!(error.starts_with("line "), "{error}");
    }
}

#[test]
fn a_name_that_is_given_twice_is_refused_with_its_line() {
    let twice = changed(
        "{\"1\": 118.0, \"2\": 118.0,",
        "{\"1\": 118.0, \"1\": 118.0,",
    );
    let error = refused(&twice);
    let line = line_with(&twice, "\"1\": 118.0, \"1\"");
    assert!(error.starts_with(&format!("line {line},")), "{error}");
    assert!(error.contains("side_bores[2].down.by"), "{error}");
    assert!(error.contains("\"1\" is named twice"), "{error}");

    let same = changed("name: \"2\",", "name: \"1\",");
    let error = refused(&same);
    assert!(
        error.contains("sizes[1] \"1\".name is used by another size"),
        "{error}"
    );

    let field = changed("name: \"Wren\",", "name: \"Wren\",\n    name: \"Wren\",");
    let error = refused(&field);
    let line = line_with(&field, "name: \"Wren\"") + 1;
    assert!(error.contains(&format!("line {line},")), "{error}");
    assert!(error.contains("name"), "{error}");
}

#[test]
fn numbers_that_are_none_are_refused_with_line_and_field() {
    for (from, to, field) in [
        (
            "depth: Blind(12.5)",
            "depth: Blind(NaN)",
            "side_bores[0].drill.depth",
        ),
        (
            "depth: Blind(12.5)",
            "depth: Blind(inf)",
            "side_bores[0].drill.depth",
        ),
        (
            "depth: Blind(12.5)",
            "depth: Blind(-12.5)",
            "side_bores[0].drill.depth",
        ),
        (
            "diameter: 26.0",
            "diameter: -26.0",
            "door_bores[1].bores[0].drill.diameter",
        ),
        (
            "strongest: 3.31",
            "strongest: NaN",
            "sizes[0] \"1\".lift.table[5].strongest",
        ),
        (
            "end_degrees: 98.0",
            "end_degrees: -inf",
            "linkage.end_degrees",
        ),
    ] {
        let text = changed(from, to);
        let error = refused(&text);
        let line = line_with(&text, to);
        assert!(
            error.starts_with(&format!("line {line}: ")),
            "{to}: {error}"
        );
        assert!(error.contains(field), "{to}: {error}");
        assert!(error.contains("must be between"), "{to}: {error}");
    }
}

#[test]
fn a_value_of_the_wrong_kind_is_refused_with_line_and_field() {
    let text = changed("turns: 9.0", "turns: \"nine\"");
    let error = refused(&text);
    let line = line_with(&text, "nine");
    assert!(
        error.starts_with(&format!("line {line}, column")),
        "{error}"
    );
    assert!(error.contains("sizes[0].lift"), "{error}");
}

#[test]
fn five_thousand_sizes_are_refused() {
    let from = WREN.find("sizes: [").unwrap() + "sizes: [".len();
    let to = WREN.find("    ],\n    example").unwrap();
    let one = "(name:\"N\",carries:Mass(min:1,max:2),lift:Spring(table:[],turns:1,friction:0),\
               door_height:(min:1,max:2),door_width:(min:1,max:2),least_inner_depth:1,\
               least_inner_height:1),";
    let many: String = (0..5000)
        .map(|i| one.replacen('N', &format!("s{i}"), 1))
        .collect();
    let text = format!("{}{many}{}", &WREN[..from], &WREN[to..]);
    assert!(
        text.len() < LARGEST_CARD,
        "the count is to refuse it, not the size"
    );
    let error = refused(&text);
    assert!(
        error.contains("sizes: has more than 200 entries"),
        "{error}"
    );
    assert!(
        error.starts_with(&format!("line {}", line_with(&text, "sizes: ["))),
        "{error}"
    );
}

#[test]
fn endless_names_are_refused() {
    let text = changed(
        "name: \"Wren\"",
        &format!("name: \"{}\"", "W".repeat(900_000)),
    );
    let error = refused(&text);
    assert!(error.contains("has 900000 characters"), "{error}");
}

/// A job that holds a card can always be read again.
fn job_stays_readable(card: Card) {
    let job = Job::empty(Vec::new(), vec![card]);
    let text = write_job(&job);
    let back = read_job(&text);
    assert!(back.as_ref() == Ok(&job), "{:?}\n{text}", back.err());
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 400, failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn any_bytes_get_an_answer(bytes in proptest::collection::vec(any::<u8>(), 0..400)) {
        let text = String::from_utf8_lossy(&bytes);
        drop(read_card(&text));
        drop(CardRecord::read(&text));
        if let Ok(draft) = CardDraft::read(&text) {
            drop(draft.resolve());
        }
    }

    #[test]
    fn a_damaged_card_is_refused_or_leaves_a_job_readable(
        at in 0..WREN.len(),
        with in "[ -~\n]{0,6}",
        drop_bytes in 0_usize..12,
    ) {
        let mut bytes = WREN.as_bytes().to_vec();
        let end = (at + drop_bytes).min(bytes.len());
        bytes.splice(at..end, with.bytes());
        if let Ok(card) = read_card(&String::from_utf8_lossy(&bytes)) {
            job_stays_readable(card.clone());
            let draft = CardDraft::of_card(&card);
            prop_assert_eq!(draft.resolve(), Ok(card));
        }
    }

    #[test]
    fn any_texts_on_a_card_leave_a_job_readable(name in "\\PC{1,20}", notes in any::<String>()) {
        let mut card = read_card(WREN).unwrap();
        card.name = format!("a{name}");
        card.notes = notes;
        job_stays_readable(card);
    }
}
