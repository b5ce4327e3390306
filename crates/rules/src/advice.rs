//! What a good colleague says about the sizes.

use flapwright_model::message::{Times, Whole, Word};
use flapwright_motion::gravity::Level;
use flapwright_motion::load::{Load, LoadKind};
use flapwright_motion::reason::Reason;
use flapwright_motion::sizes::{Grade, Verdict};

use crate::message::{Advice, FittingName};

/// What to do about the chosen size (names of its card and of itself), from verdicts that stand best
/// first; a sentence each.
#[must_use]
pub fn advice(verdicts: &[Verdict], chosen: Option<(&str, &str)>) -> Vec<Advice> {
    let Some(best) = verdicts.first() else {
        return vec![Advice::NoCard];
    };
    let chosen = chosen.and_then(|(card, size)| {
        verdicts
            .iter()
            .find(|it| it.card == card && it.size == size)
    });
    match (chosen, best.grade) {
        (Some(chosen), _) if chosen.grade == Grade::Fits => suits(chosen),
        (Some(chosen), Grade::Fits) => {
            let mut said = against(chosen);
            said.extend(suits(best));
            said
        }
        (None, Grade::Fits) => suits(best),
        (Some(chosen), Grade::Marginal) if chosen.grade == Grade::Marginal => {
            let mut said = against(chosen);
            said.push(Advice::NoBetter);
            said
        }
        (Some(chosen), Grade::Marginal) => {
            let mut said = against(chosen);
            said.extend(nearest(best));
            said
        }
        (None, Grade::Marginal) => {
            let mut said = vec![Advice::NoneFully];
            said.extend(against(best));
            said
        }
        (_, Grade::No) => {
            let mut said = vec![Advice::None];
            said.extend(nearest(best));
            said
        }
    }
}

/// A card and its size.
#[must_use]
pub fn name(verdict: &Verdict) -> FittingName {
    FittingName::new(&verdict.card, &verdict.size)
}

/// The setting that balances the likely door, in turns, and how many there are; `None` for a strut.
#[must_use]
pub fn turns(verdict: &Verdict) -> Option<(Times, Whole)> {
    let setting = verdict.setting?;
    let turns = setting.share_for(Level::Likely) * setting.range;
    Some((Times(turns), Whole(setting.range)))
}

fn suits(verdict: &Verdict) -> Vec<Advice> {
    let fitting = name(verdict);
    let moment = |load: &Load| matches!(load.kind, LoadKind::Moment { .. });
    let what = if verdict.load.as_ref().is_some_and(moment) {
        Word("lift-moment")
    } else {
        Word("mass")
    };
    let mut said = vec![if verdict.centred >= 0.3 {
        Advice::SuitsWell { fitting, what }
    } else {
        Advice::SuitsNear { fitting, what }
    }];
    said.extend(turns(verdict).map(|(turns, of)| Advice::Turns { turns, of }));
    said
}

/// What speaks against a size.
fn against(verdict: &Verdict) -> Vec<Advice> {
    let (fitting, why) = (name(verdict), worst(verdict));
    vec![match verdict.grade {
        Grade::Fits | Grade::Marginal => Advice::AtLimit { fitting, why },
        Grade::No => Advice::Unsuitable { fitting, why },
    }]
}

fn nearest(verdict: &Verdict) -> Option<Advice> {
    let (fitting, why) = (name(verdict), worst(verdict));
    Some(Advice::Nearest { fitting, why })
}

/// The gravest reason.
fn worst(verdict: &Verdict) -> Option<Reason> {
    verdict.reasons.first().cloned()
}

#[cfg(test)]
mod tests {
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
                what: flapwright_model::message::Word("inner-depth"),
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
        let well = Advice::SuitsWell {
            fitting: name(&list[0]),
            what: Word("mass"),
        };
        assert_eq!(advice(&list, Some(("Plover", "2"))), [well]);
    }

    #[test]
    fn a_wrong_size_is_named_with_its_reason_and_the_better_one() {
        let list = [verdict("2", Grade::Fits, 0.1), verdict("3", Grade::No, 0.0)];
        let wrong = Advice::Unsuitable {
            fitting: name(&list[1]),
            why: list[1].reasons.first().cloned(),
        };
        let better = Advice::SuitsNear {
            fitting: name(&list[0]),
            what: Word("mass"),
        };
        assert_eq!(advice(&list, Some(("Plover", "3"))), [wrong, better]);
    }

    #[test]
    fn nothing_that_suits_is_said_plainly() {
        let no = [verdict("1", Grade::No, 0.0)];
        let said = advice(&no, Some(("Plover", "1")));
        assert_eq!(said.first(), Some(&Advice::None));
        assert!(matches!(said[1], Advice::Nearest { .. }), "{said:?}");
        assert_eq!(advice(&[], None), [Advice::NoCard]);
        let edge = [verdict("1", Grade::Marginal, 0.0)];
        let said = advice(&edge, Some(("Plover", "1")));
        assert!(matches!(said[0], Advice::AtLimit { .. }), "{said:?}");
        assert_eq!(said.last(), Some(&Advice::NoBetter));
    }
}
