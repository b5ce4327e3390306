//! What is advised where a size does not suit: which other one, and why.

use flapwright_model::length::Unit;
use flapwright_model::material::MassRange;
use flapwright_motion::gravity::ByMass;
use flapwright_motion::load::{Load, LoadKind};
use flapwright_motion::reason::Reason;
use flapwright_motion::setting::Setting;
use flapwright_motion::sizes::{Grade, Verdict};
use flapwright_rules::advice::{advice, turns};

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
        what: "inner depth",
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

const SHALLOW: &str = "inner depth is 200 mm and must be 240 mm: 40 mm too little";
const FALLS: &str = "the heaviest door falls from open at 5 °C: 1.0 N·m pull it shut against 0.5 \
                     N·m of friction";

#[test]
fn advice_names_the_nearest_size_where_none_fits_fully() {
    let list = [
        verdict("Plover", "2", Grade::Marginal, falls()),
        verdict("Plover", "3", Grade::No, shallow()),
    ];
    let say = |chosen: Option<(&str, &str)>| advice(&list, chosen, Unit::Millimetre);
    assert_eq!(
        say(Some(("Plover", "3"))),
        format!(
            "Plover, size 3 does not suit this door: {SHALLOW}. Nearest is Plover, size 2: {FALLS}."
        )
    );
    assert_eq!(
        say(Some(("Plover", "2"))),
        format!("Plover, size 2 is at its limit: {FALLS}. No other size does better.")
    );
    let none = format!("No size fits fully. Plover, size 2 is at its limit: {FALLS}.");
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
    assert_eq!(turns(&fits).as_deref(), Some("5.5 of 9 turns"));
    let well = "Plover, size 2 suits this door: its whole lift moment range lies well inside what \
                it carries, 5.5 of 9 turns.";
    let list = [
        fits.clone(),
        verdict("Plover", "3", Grade::Marginal, falls()),
        verdict("Plover", "1", Grade::No, shallow()),
    ];
    let say = |chosen: Option<(&str, &str)>| advice(&list, chosen, Unit::Millimetre);
    assert_eq!(say(None), well);
    assert_eq!(say(Some(("Plover", "2"))), well);
    assert_eq!(
        say(Some(("Plover", "3"))),
        format!("Plover, size 3 is at its limit: {FALLS}. {well}")
    );
    assert_eq!(
        say(Some(("Plover", "1"))),
        format!("Plover, size 1 does not suit this door: {SHALLOW}. {well}")
    );
    fits.centred = 0.29;
    fits.load = None;
    fits.setting = None;
    assert_eq!(turns(&fits), None);
    assert_eq!(
        advice(&[fits], None, Unit::Millimetre),
        "Plover, size 2 suits this door: its whole mass range lies inside what it carries, near a \
         limit."
    );
}
