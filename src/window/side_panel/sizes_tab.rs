//! What each size of each card says to the shown door.

use egui::{Label, ScrollArea, Ui};
use flapwright_model::length::Unit;
use flapwright_model::measure::Measure;
use flapwright_motion::gravity::Level;
use flapwright_motion::sizes::Verdict;

use super::AboutDoor;
use super::size_chart::chart_ui;
use super::verdict_card::{Shown, verdict_ui};
use crate::window::command::Command;
use crate::window::tokens::{toggle, tokens};

/// Height of the size chart, with its words.
const CHART: f32 = 250.0;
/// In a lower room the chart goes under the list instead of staying in sight.
const ROOM_FOR_BOTH: f32 = 440.0;

/// Shows the tab.
pub(super) fn sizes_ui(
    ui: &mut Ui,
    about: AboutDoor<'_>,
    other: &mut bool,
    queue: &mut Vec<Command>,
) {
    let found = &about.known.found;
    ui.add(Label::new(&about.known.advice).wrap());
    ui.add_space(2.0);
    door_ui(ui, about);
    pieces_ui(ui, about, other);
    let list: &[Verdict] = if *other {
        &found.other_count
    } else {
        &found.verdicts
    };
    let room = ui.available_height();
    let pinned = room >= ROOM_FOR_BOTH;
    // In a high window the chart grows too.
    let chart = (room * 0.42).clamp(CHART, 400.0);
    let height = if pinned { room - chart - 6.0 } else { room };
    ScrollArea::vertical()
        .auto_shrink(false)
        .max_height(height)
        .show(ui, |ui| {
            for verdict in list {
                let chosen = about.choice == Some((&verdict.card, &verdict.size));
                let shown = Shown {
                    verdict,
                    chosen: chosen && !*other,
                    can_take: !chosen && !*other,
                    unit: about.unit,
                };
                verdict_ui(ui, shown, queue);
                ui.add_space(3.0);
            }
            if !pinned {
                chart_ui(ui, about, chart);
            }
        });
    if pinned {
        chart_ui(ui, about, chart);
    }
}

/// Mass and lift moment of the door.
fn door_ui(ui: &mut Ui, about: AboutDoor<'_>) {
    let unit = about.unit;
    let mass = about.door.mass;
    let mass = [mass.low, mass.likely, mass.high];
    let both = |measure: Measure, values: [f64; 3]| {
        [Unit::Millimetre, Unit::Inch]
            .map(|unit| measure.range(values, unit))
            .join("\n")
    };
    let typed = about
        .door
        .weighed
        .as_ref()
        .and_then(|weighed| weighed.typed.map(|_| weighed.built));
    let mut tooltip = format!(
        "Likely (lightest to heaviest):\n{}",
        both(Measure::Mass, mass)
    );
    let mut text = format!("Door {}", Measure::Mass.range(mass, unit));
    if let Some(built) = typed {
        text.push_str(", typed");
        tooltip.push_str(&format!(
            "\nThe build-up gives {}.",
            Measure::Mass.range([built.low, built.likely, built.high], unit)
        ));
    }
    ui.add(Label::new(text).wrap()).on_hover_text(tooltip);
    if let Some(largest) = &about.known.largest {
        let moment = Level::ALL.map(|level| largest.moment.at(level));
        let text = format!(
            "Lift moment at most {}, at {:.0}°",
            Measure::Moment.range(moment, unit),
            largest.degrees
        );
        ui.add(Label::new(text).wrap()).on_hover_text(format!(
            "Of the likely door (lightest to heaviest), about the fitting's axis:\n{}",
            both(Measure::Moment, moment)
        ));
    }
}

/// As many pieces as the card has, or the other number for comparison.
fn pieces_ui(ui: &mut Ui, about: AboutDoor<'_>, other: &mut bool) {
    let own = about.known.found.verdicts.first().map_or(2, |it| it.pieces);
    ui.horizontal_wrapped(|ui| {
        ui.label("Carried by");
        for (pieces, words) in [(1, "one piece"), (2, "a pair")] {
            let is_other = pieces != own;
            if toggle(ui, *other == is_other, words).clicked() {
                *other = is_other;
            }
        }
        if *other {
            let told = "for comparison: the card is fitted as it says";
            ui.label(
                egui::RichText::new(told)
                    .small()
                    .color(tokens(ui).text_soft),
            );
        }
    });
}
