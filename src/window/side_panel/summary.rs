//! The forces in words.

use egui::{Label, RichText, Ui};
use flapwright_model::measure::Measure;
use flapwright_motion::dynamics::{Ending, LONGEST_TIME, Release};
use flapwright_motion::gravity::Level;
use flapwright_motion::statics::{Direction, HandSummary};
use flapwright_rules::mechanics::Working;

use super::AboutDoor;
use crate::window::tokens::tokens;

/// What the sign of a force says.
const SIGNS: &str = "Above 0 the hand lifts, below 0 it pulls the door shut.";

/// Force at closed, the largest, and where; the setting.
pub(super) fn hand_ui(ui: &mut Ui, about: AboutDoor<'_>, working: &Working) {
    let unit = about.unit;
    let opening = working.curves.hand(Direction::Opening, Level::Likely);
    let closing = working.curves.hand(Direction::Closing, Level::Likely);
    for (word, hand) in [("Opening", opening), ("Closing", closing)] {
        ui.add(Label::new(hand_words(word, &hand, unit)).wrap());
    }
    let setting = match &working.balance {
        Some(balance) => format!(
            "Drawn at {:.1} of {:.0} turns, which balances the likely door best. {SIGNS}",
            working.setting * balance.range,
            balance.range
        ),
        None => format!("Drawn at 20 °C; this fitting has no setting. {SIGNS}"),
    };
    let soft = tokens(ui).text_soft;
    ui.add(Label::new(RichText::new(setting).small().color(soft)).wrap());
}

fn hand_words(word: &str, hand: &HandSummary, unit: flapwright_model::length::Unit) -> String {
    let text = |force| Measure::Force.text(force, unit);
    match (hand.closed, hand.largest) {
        (Some(closed), Some((_, 0.0))) => {
            format!("{word}: {} at closed, the largest.", text(closed))
        }
        (Some(closed), Some((largest, s))) => format!(
            "{word}: {} at closed, largest {} at {:.0} %.",
            text(closed),
            text(largest),
            s * 100.0
        ),
        (None, Some((largest, s))) => format!(
            "{word}: no leverage at closed, largest {} at {:.0} %.",
            text(largest),
            s * 100.0
        ),
        (_, None) => format!("{word}: the handle has no leverage."),
    }
}

/// What the heaviest door does when it is let go half open.
pub(super) fn let_go_ui(ui: &mut Ui, release: &Release) {
    let tokens = tokens(ui);
    ui.add(Label::new(let_go_words(release)).wrap());
    if release.ending == Ending::Closes {
        let caution = "Caution: a falling door. Keep hands out of its way until it is set, or take a \
                       stronger size or setting.";
        ui.add(Label::new(RichText::new(caution).color(tokens.caution)).wrap());
    }
}

fn let_go_words(release: &Release) -> String {
    let start = "The heaviest door, let go half open,";
    let last = release.last();
    let time = last.map_or(0.0, |moment| moment.time);
    let speed = last.map_or(0.0, |moment| moment.speed.abs());
    match release.ending {
        Ending::Holds => format!("{start} stays there."),
        Ending::Closes => {
            format!("{start} falls shut in {time:.1} s; its edge arrives at {speed:.2} m/s.")
        }
        Ending::Opens => {
            format!("{start} goes on to open in {time:.1} s; its edge arrives at {speed:.2} m/s.")
        }
        Ending::Stops => {
            let place = last.map_or(0.0, |moment| moment.s * 100.0);
            format!("{start} comes to rest at {place:.0} % after {time:.1} s.")
        }
        Ending::Creeps => format!("{start} still creeps after {LONGEST_TIME:.0} s."),
    }
}
