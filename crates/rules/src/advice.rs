//! What a good colleague says about the sizes, in a sentence or two.

use flapwright_model::length::Unit;
use flapwright_motion::gravity::Level;
use flapwright_motion::load::{Load, LoadKind};
use flapwright_motion::sizes::{Grade, Verdict};

/// What to do about the chosen size (names of its card and of itself), from verdicts that stand best
/// first; numbers in the measures that go with `unit`.
#[must_use]
pub fn advice(verdicts: &[Verdict], chosen: Option<(&str, &str)>, unit: Unit) -> String {
    let Some(best) = verdicts.first() else {
        return "No card of this job is for this opening kind.".to_owned();
    };
    let chosen = chosen.and_then(|(card, size)| {
        verdicts
            .iter()
            .find(|it| it.card == card && it.size == size)
    });
    match (chosen, best.grade) {
        (Some(chosen), _) if chosen.grade == Grade::Fits => suits(chosen),
        (Some(chosen), Grade::Fits) => format!("{} {}", against(chosen, unit), suits(best)),
        (None, Grade::Fits) => suits(best),
        (Some(chosen), Grade::Marginal) if chosen.grade == Grade::Marginal => {
            format!("{} No other size does better.", against(chosen, unit))
        }
        (Some(chosen), Grade::Marginal) => format!(
            "{} Nearest is {}: {}.",
            against(chosen, unit),
            name(best),
            worst(best, unit)
        ),
        (None, Grade::Marginal) => {
            format!("No size fits fully. {}", against(best, unit))
        }
        (_, Grade::No) => format!(
            "No size of any card suits this door. Nearest is {}: {}.",
            name(best),
            worst(best, unit)
        ),
    }
}

/// Card and size in words.
#[must_use]
pub fn name(verdict: &Verdict) -> String {
    format!("{}, size {}", verdict.card, verdict.size)
}

/// The setting in a few words: `5.5 of 9 turns`; `None` for a strut.
#[must_use]
pub fn turns(verdict: &Verdict) -> Option<String> {
    let setting = verdict.setting?;
    Some(format!(
        "{:.1} of {:.0} turns",
        setting.share_for(Level::Likely) * setting.range,
        setting.range
    ))
}

fn suits(verdict: &Verdict) -> String {
    let inside = if verdict.centred >= 0.3 {
        "lies well inside what it carries"
    } else {
        "lies inside what it carries, near a limit"
    };
    let moment = |load: &Load| matches!(load.kind, LoadKind::Moment { .. });
    let what = if verdict.load.as_ref().is_some_and(moment) {
        "lift moment"
    } else {
        "mass"
    };
    let setting = turns(verdict).map_or(String::new(), |turns| format!(", {turns}"));
    format!(
        "{} suits this door: its whole {what} range {inside}{setting}.",
        name(verdict)
    )
}

fn against(verdict: &Verdict, unit: Unit) -> String {
    let word = match verdict.grade {
        Grade::Fits | Grade::Marginal => "is at its limit",
        Grade::No => "does not suit this door",
    };
    format!("{} {word}: {}.", name(verdict), worst(verdict, unit))
}

/// The gravest reason.
fn worst(verdict: &Verdict, unit: Unit) -> String {
    verdict.reasons.first().map_or_else(
        || "nothing is known of it".to_owned(),
        |reason| reason.text(unit),
    )
}

#[cfg(test)]
mod tests {
    use flapwright_motion::reason::Reason;

    use super::*;

    fn verdict(size: &str, grade: Grade, centred: f64) -> Verdict {
        let reasons = match grade {
            Grade::Fits => Vec::new(),
            Grade::Marginal => vec![Reason::FallsFromOpen {
                balance: 1.0,
                friction: 0.5,
                celsius: 5.0,
            }],
            Grade::No => vec![Reason::TooLittle {
                what: "inner depth",
                value: 200.0,
                least: 240.0,
            }],
        };
        Verdict {
            card: "Plover".to_owned(),
            size: size.to_owned(),
            pieces: 2,
            grade,
            centred,
            load: None,
            setting: None,
            reasons,
        }
    }

    #[test]
    fn a_size_that_suits_is_said_to_suit() {
        let list = [verdict("2", Grade::Fits, 0.6), verdict("3", Grade::No, 0.0)];
        let said = advice(&list, Some(("Plover", "2")), Unit::Millimetre);
        assert_eq!(
            said,
            "Plover, size 2 suits this door: its whole mass range lies well inside what it carries."
        );
    }

    #[test]
    fn a_wrong_size_is_named_with_its_reason_and_the_better_one() {
        let list = [verdict("2", Grade::Fits, 0.1), verdict("3", Grade::No, 0.0)];
        let said = advice(&list, Some(("Plover", "3")), Unit::Millimetre);
        assert!(
            said.starts_with("Plover, size 3 does not suit this door: inner depth"),
            "{said}"
        );
        assert!(said.contains("Plover, size 2 suits"), "{said}");
        assert!(said.contains("near a limit"), "{said}");
    }

    #[test]
    fn nothing_that_suits_is_said_plainly() {
        let no = [verdict("1", Grade::No, 0.0)];
        assert!(
            advice(&no, Some(("Plover", "1")), Unit::Millimetre)
                .starts_with("No size of any card suits")
        );
        assert!(advice(&[], None, Unit::Millimetre).starts_with("No card"));
        let edge = [verdict("1", Grade::Marginal, 0.0)];
        let said = advice(&edge, Some(("Plover", "1")), Unit::Millimetre);
        assert!(said.contains("is at its limit") && said.ends_with("No other size does better."));
    }
}
