//! What is advised where a size does not suit: which other one, and why.

use crate::findings::said;
use flapwright_model::material::MassRange;
use flapwright_motion::gravity::ByMass;
use flapwright_motion::load::{Load, LoadKind};
use flapwright_motion::reason::Reason;
use flapwright_motion::setting::Setting;
use flapwright_motion::sizes::{Grade, Verdict};
use flapwright_rules::advice::{advice, turns};
use flapwright_rules::message::Advice;

fn verdict(card: &str, size: &str, grade: Grade, reasons: Vec<Reason>) -> Verdict {
    Verdict {
        card: card.to_owned(),
        size: size.to_owned(),
        pieces: 2,
        grade,
        centred: 0.3,
        load: None,
        setting: None,
        reasons,
    }
}

fn shallow() -> Vec<Reason> {
    vec![Reason::TooLittle {
        what: flapwright_model::message::Word("inner-depth"),
        value: 200.0,
        least: 240.0,
    }]
}

fn falls() -> Vec<Reason> {
    vec![Reason::FallsFromOpen {
        balance: 1.0,
        friction: 0.5,
        celsius: 5.0,
    }]
}

const SHALLOW: &str =
    "why (reason.too-little: what inner-depth, value 200 mm, by 40 mm, least 240 mm)";
const FALLS: &str = "why (reason.falls-from-open: celsius 5 °C, closing 1.0 N·m, friction 0.5 N·m)";

/// A size of the card.
fn size(name: &str) -> String {
    format!("fitting (fitting-name.size: card \"Plover\", size \"{name}\")")
}

#[test]
fn advice_names_the_nearest_size_where_none_fits_fully() {
    let list = [
        verdict("Plover", "2", Grade::Marginal, falls()),
        verdict("Plover", "3", Grade::No, shallow()),
    ];
    let say = |chosen: Option<(&str, &str)>| said_all(&advice(&list, chosen));
    assert_eq!(
        say(Some(("Plover", "3"))),
        format!(
            "advice.unsuitable: {}, {SHALLOW}; advice.nearest: {}, {FALLS}",
            size("3"),
            size("2")
        )
    );
    assert_eq!(
        say(Some(("Plover", "2"))),
        format!("advice.at-limit: {}, {FALLS}; advice.no-better", size("2"))
    );
    let none = format!("advice.none-fully; advice.at-limit: {}, {FALLS}", size("2"));
    assert_eq!(say(None), none);
    // A size of that name on another card is another size.
    assert_eq!(say(Some(("Dunlin", "3"))), none);
    assert_eq!(say(Some(("Plover", "4"))), none);
}

#[test]
fn advice_of_a_size_that_fits_tells_how_well_it_lies_and_its_turns() {
    let load = Load {
        kind: LoadKind::Moment { at_degrees: 90.0 },
        load: MassRange {
            low: 4.0,
            likely: 5.0,
            high: 6.0,
        },
        min: 1.0,
        max: 9.0,
    };
    let by_mass = |value: f64| ByMass {
        low: 0.4,
        likely: value,
        high: 0.9,
    };
    let mut fits = verdict("Plover", "2", Grade::Fits, Vec::new());
    fits.load = Some(load);
    fits.setting = Some(Setting {
        share: by_mass(0.611_11),
        turns: by_mass(5.5),
        range: 9.0,
    });
    // 0.61111 of 9 turns.
    let (turns_of_it, of) = turns(&fits).expect("a spring has a setting");
    assert_eq!(
        (format!("{:.1}", turns_of_it.0), of.0),
        ("5.5".to_owned(), 9.0)
    );
    let well = format!(
        "advice.suits-well: {}, what lift-moment; advice.turns: turns 5.5, of 9",
        size("2")
    );
    let list = [
        fits.clone(),
        verdict("Plover", "3", Grade::Marginal, falls()),
        verdict("Plover", "1", Grade::No, shallow()),
    ];
    let say = |chosen: Option<(&str, &str)>| said_all(&advice(&list, chosen));
    assert_eq!(say(None), well);
    assert_eq!(say(Some(("Plover", "2"))), well);
    assert_eq!(
        say(Some(("Plover", "3"))),
        format!("advice.at-limit: {}, {FALLS}; {well}", size("3"))
    );
    assert_eq!(
        say(Some(("Plover", "1"))),
        format!("advice.unsuitable: {}, {SHALLOW}; {well}", size("1"))
    );
    fits.centred = 0.29;
    fits.load = None;
    fits.setting = None;
    assert_eq!(turns(&fits), None);
    assert_eq!(
        said_all(&advice(&[fits], None)),
        "advice.suits-near: fitting (fitting-name.size: card \"Plover\", size \"2\"), what mass"
    );
}

/// All that is said, as data.
fn said_all(advice: &[Advice]) -> String {
    let words: Vec<String> = advice.iter().map(|it| said(it)).collect();
    words.join("; ")
}
