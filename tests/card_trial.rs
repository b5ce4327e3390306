//! A paper typed into a proved card with the keyboard alone, key by key as recorded in
//! `tests/card_trials`; the strokes are counted.

#![expect(clippy::unwrap_used, reason = "helpers of tests")]

mod window_support;

use std::path::Path;

use egui::{Key, Modifiers};
use flapwright_model::card::Card;
use flapwright_model::card_difference::differences;
use flapwright_model::file::read_card;
use flapwright_rules::proof::proof;
use window_support::{Window, plain_window};

/// Strokes a second of somebody who types with care and looks at the paper in between.
const STROKES_A_SECOND: f64 = 2.0;

/// One stroke.
#[derive(Debug, Clone, Copy, PartialEq)]
enum Stroke {
    /// A sign of a text.
    Sign(char),
    /// A key with what is held beside it.
    Key(Modifiers, Key),
}

/// The strokes of a recording. Lines that begin with `#` are for the reader.
fn strokes(text: &str) -> Vec<Stroke> {
    let mut strokes = Vec::new();
    for line in text.lines().filter(|line| !line.starts_with('#')) {
        let mut rest = line.trim_start();
        while !rest.is_empty() {
            if let Some(after) = rest.strip_prefix('"') {
                let (typed, after) = after.split_once('"').unwrap();
                strokes.extend(typed.chars().map(Stroke::Sign));
                rest = after.trim_start();
                continue;
            }
            let (word, after) = rest.split_once(' ').unwrap_or((rest, ""));
            let (name, times) = word.split_once('*').unwrap_or((word, "1"));
            let stroke = key(name);
            strokes.extend(std::iter::repeat_n(stroke, times.parse().unwrap()));
            rest = after.trim_start();
        }
    }
    strokes
}

fn key(name: &str) -> Stroke {
    let mut modifiers = Modifiers::NONE;
    let mut last = name;
    while let Some((held, after)) = last.split_once('+') {
        modifiers |= match held {
            "Ctrl" => Modifiers::COMMAND | Modifiers::CTRL,
            "Shift" => Modifiers::SHIFT,
            other => panic!("{other} in {name}"),
        };
        last = after;
    }
    Stroke::Key(
        modifiers,
        Key::from_name(last).unwrap_or_else(|| panic!("{name}")),
    )
}

fn press(window: &mut Window, stroke: Stroke) {
    match stroke {
        Stroke::Sign(sign) => window.event(egui::Event::Text(sign.to_string())),
        Stroke::Key(modifiers, key) => window.key_press_modifiers(modifiers, key),
    }
    window.step();
    window.step();
}

/// Types a recording and gives back the card and the number of strokes.
fn typed(name: &str, card: &str) -> (Card, usize) {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("tests/card_trials");
    let text = std::fs::read_to_string(folder.join(format!("{name}.keys"))).unwrap();
    let strokes = strokes(&text);
    let job = flapwright_session::shipped::demo_job().unwrap();
    let before = job.cards.len();
    let mut window = plain_window(job, [1280.0, 800.0], egui::Theme::Light);
    for stroke in &strokes {
        press(&mut window, *stroke);
    }
    let app = window.state();
    let told = app.typed_card().map(|draft| draft.resolve().err());
    let cards = &app.job().cards;
    assert_eq!(cards.len(), before + 1, "{}; {told:#?}", app.status());
    assert_eq!(app.undo_steps(), 1);
    let card = &app.job().card_named(card).unwrap().card;
    let proof = proof(card);
    assert!(proof.is_proved() && card.invented, "{proof:?}");
    let minutes = strokes.len() as f64 / STROKES_A_SECOND / 60.0;
    println!(
        "{name}: {} strokes; {minutes:.1} minutes at {STROKES_A_SECOND} a second",
        strokes.len()
    );
    assert!(
        minutes < 5.0,
        "{} strokes take {minutes:.1} minutes",
        strokes.len()
    );
    (card.clone(), strokes.len())
}

#[test]
fn one_page_becomes_a_proved_card_with_the_keyboard_alone() {
    let (card, _) = typed("stilt", "Stilt");
    assert_eq!((card.sizes.len(), card.side_bores.len()), (2, 3));
}

/// The papers that come with the demo; the cards beside them were typed by other hands.
#[test]
fn each_paper_of_the_demo_becomes_the_card_that_lies_beside_it() {
    for (name, title) in [
        ("kestrel", "Kestrel"),
        ("mesange", "Mésange"),
        ("milan", "Milan"),
    ] {
        let (card, _) = typed(name, title);
        let root = Path::new(env!("CARGO_MANIFEST_DIR")).join("assets/demo/papers");
        let text = std::fs::read_to_string(root.join(format!("{name}.ron"))).unwrap();
        let kept = read_card(&text).unwrap();
        let only_words: Vec<String> = differences(&kept, &card)
            .into_iter()
            .filter(|it| it.by.is_none_or(|by| by.abs() > 1e-9))
            .map(|it| format!("{}: {:?} {:?}", it.field, it.was, it.now))
            .filter(|it| {
                !["maker_text", "notes", "purpose"]
                    .iter()
                    .any(|word| it.contains(word))
            })
            .collect();
        assert!(only_words.is_empty(), "{name}: {only_words:#?}");
    }
}
