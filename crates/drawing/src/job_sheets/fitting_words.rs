//! What the page of fittings says of one door, line by line.

use flapwright_model::card::{Adjustment, AdjustmentRange, Card, OpeningKind};
use flapwright_model::door::FittingChoice;
use flapwright_model::job::Job;
use flapwright_model::length::Unit;
use flapwright_model::lift::Lift;
use flapwright_model::measure::{Measure, length};
use flapwright_motion::gravity::Level;
use flapwright_motion::sizes::Verdict;
use flapwright_motion::statics::Direction;
use flapwright_rules::inspection::DoorReport;
use flapwright_rules::mechanics::{Mechanics, Working};
use flapwright_words::Speaker;

/// A line with its label.
pub(super) type Line = (&'static str, String);

/// Door, fitting, setting and verdict.
pub(super) fn lines(
    job: &Job,
    choice: &FittingChoice,
    door: &DoorReport,
    found: Option<&Mechanics>,
) -> Vec<Line> {
    let unit = job.unit;
    let mass = [door.mass.low, door.mass.likely, door.mass.high];
    let (width, height) = (
        door.edges.right - door.edges.left,
        door.edges.top - door.edges.bottom,
    );
    let mut lines = vec![
        (
            "door",
            format!(
                "{}, {} × {}, mass {}",
                door.kind.map_or("", OpeningKind::words),
                length(width, unit),
                length(height, unit),
                Measure::Mass.range(mass, unit)
            ),
        ),
        ("fitting", door.fitting.clone()),
    ];
    if choice.packing != 0.0 {
        lines.push(("packing", length(choice.packing, unit)));
    }
    let Some(card) = job.card_by_id(choice.card) else {
        return lines;
    };
    if let Some(found) = found {
        lines.extend(verdict_lines(card, choice, found, unit));
        lines.extend(setting_line(job, card, choice, found));
        if let Ok(working) = &found.working {
            lines.extend(hand_lines(working, unit));
        }
    } else {
        let words = "not reckoned: the door has no mass or the fitting no motion; see the findings";
        lines.push(("verdict", words.to_owned()));
    }
    lines.push(("adjusts", adjustment(&card.adjustment, unit)));
    if !card.notes.trim().is_empty() {
        lines.push(("card says", card.notes.trim().to_owned()));
    }
    if !card.maker_text.trim().is_empty() {
        lines.push(("card from", card.maker_text.trim().to_owned()));
    }
    lines
}

/// The verdict on the size that is chosen.
pub(super) fn chosen<'a>(
    card: &Card,
    choice: &FittingChoice,
    found: &'a Mechanics,
) -> Option<&'a Verdict> {
    found
        .verdicts
        .iter()
        .find(|it| it.card == card.name && it.size == choice.size)
}

fn verdict_lines(card: &Card, choice: &FittingChoice, found: &Mechanics, unit: Unit) -> Vec<Line> {
    let Some(verdict) = chosen(card, choice, found) else {
        return Vec::new();
    };
    let pieces = if verdict.pieces == 1 {
        "one piece"
    } else {
        "a pair"
    };
    let mut lines = vec![(
        "verdict",
        format!("{} ({pieces})", verdict.grade.words().to_uppercase()),
    )];
    let speaker = Speaker::without_names(unit);
    lines.extend(verdict.reasons.iter().map(|it| ("", speaker.say(it))));
    lines
}

fn setting_line(job: &Job, card: &Card, choice: &FittingChoice, found: &Mechanics) -> Option<Line> {
    let unit = job.unit;
    let size = card.size(&choice.size)?;
    let words = match &size.lift {
        Lift::Spring { turns, .. } => {
            let setting = chosen(card, choice, found)?.setting?;
            let at = |level| setting.share_for(level) * turns;
            format!(
                "start at {:.1} of {turns:.0} turns from the weakest ({:.1} for the lightest, \
                 {:.1} for the heaviest door), then trim by the fitting's own instructions",
                at(Level::Likely),
                at(Level::Low),
                at(Level::High)
            )
        }
        Lift::Strut(strut) => format!(
            "gas strut {}, stroke {}, {} extended. Box anchor: {} below the panel above, {} \
             behind the front datum. Door anchor, closed: {} below the same panel, {}. Judged \
             from {:.0} to {:.0} °C.",
            Measure::Force.text(strut.force, unit),
            length(strut.stroke, unit),
            length(strut.extended, unit),
            length(strut.box_down, unit),
            length(strut.box_back, unit),
            length(strut.door_down, unit),
            behind(strut.door_back, unit),
            job.settings.coldest,
            job.settings.hottest
        ),
    };
    Some(("setting", words))
}

fn behind(distance: f64, unit: Unit) -> String {
    if distance < 0.0 {
        format!("{} before the door's back", length(-distance, unit))
    } else {
        format!("{} behind the door's back", length(distance, unit))
    }
}

fn hand_lines(working: &Working, unit: Unit) -> Vec<Line> {
    let force = |value| Measure::Force.text(value, unit);
    [
        ("hand, opening", Direction::Opening),
        ("hand, closing", Direction::Closing),
    ]
    .into_iter()
    .filter_map(|(label, way)| {
        let hand = working.curves.hand(way, Level::Likely);
        let (largest, s) = hand.largest?;
        let closed = hand.closed.map_or_else(|| "no leverage".to_owned(), force);
        let at = format!("{} at {:.0} % of the way", force(largest), 100.0 * s);
        Some((
            label,
            format!("closed {closed}; largest {at} (+ lifts, - pulls shut)"),
        ))
    })
    .collect()
}

fn adjustment(adjustment: &Adjustment, unit: Unit) -> String {
    let travel = |word: &str, travel: AdjustmentRange| {
        let signed = |value: f64| {
            let sign = if value > 0.0 { "+" } else { "" };
            format!("{sign}{}", length(value, unit))
        };
        format!("{word} {} to {}", signed(travel.min), signed(travel.max))
    };
    let all = [
        ("sideways", adjustment.sideways),
        ("up and down", adjustment.upward),
        ("in depth", adjustment.depth),
    ];
    let some: Vec<String> = all
        .into_iter()
        .filter(|(_, it)| it.min != 0.0 || it.max != 0.0)
        .map(|(word, it)| travel(word, it))
        .collect();
    if some.is_empty() {
        "nothing".to_owned()
    } else {
        some.join(", ")
    }
}
