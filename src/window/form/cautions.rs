//! Short cautions: what can hurt people or parts.

use egui::{Label, RichText, Ui};
use flapwright_model::card::OpeningKind;

use super::Form;
use crate::window::tokens::tokens;

const ALWAYS: [&str; 4] = [
    "Lift fittings are under spring or gas pressure: an arm without its door can strike up hard.",
    "Hang the door before you tension the fitting; slacken the fitting before you take it off.",
    "Drill a trial piece first and check the depth: bores from inside must not come through.",
    "Measure the card's worked example with your own rule before you trust the card.",
];

/// The section *Cautions*.
pub(crate) fn cautions_ui(ui: &mut Ui, form: &Form<'_>) {
    let kind = form
        .door()
        .and_then(|door| door.fitting.as_ref())
        .and_then(|choice| form.job.card(&choice.card))
        .map(|card| card.kind);
    for text in ALWAYS.into_iter().chain(kind.map(of_kind)) {
        caution(ui, text);
    }
    if form.job.invented {
        caution(
            ui,
            "The numbers of this job are invented: build nothing from them.",
        );
    }
}

const fn of_kind(kind: OpeningKind) -> &'static str {
    match kind {
        OpeningKind::TopHingedFlap => {
            "An open flap stands out at head height: mind who works beneath it."
        }
        OpeningKind::ParallelRisingDoor => {
            "Arms close like scissors: keep fingers away from the gap between arm and side."
        }
        OpeningKind::FoldingPair => {
            "The joint between the leaves can pinch fingers while the pair folds."
        }
        OpeningKind::OverTheTopDoor => {
            "The door passes over the box: nothing may stand or hang there."
        }
    }
}

fn caution(ui: &mut Ui, text: &str) {
    ui.horizontal_top(|ui| {
        ui.label(RichText::new("!").strong().color(tokens(ui).caution));
        ui.add(Label::new(text).wrap());
    });
}
