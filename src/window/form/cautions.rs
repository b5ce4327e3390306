//! Short cautions: what can hurt people or parts.

use egui::{Label, RichText, Ui};
use flapwright_drawing::cautions::{Context, INVENTED, cautions};
use flapwright_model::card::OpeningKind;

use super::Form;
use crate::window::tokens::tokens;

/// What the sheets of a door's leaf and box say, glass and through bores counted in.
const AS_ON_SHEETS: Context = Context {
    leaf: true,
    carries_fitting: true,
    glass_panel: false,
    glass_pane: true,
    through: true,
    blind: true,
    setting: true,
    cutting: false,
    hung: true,
    assembly: false,
    template: false,
};

/// The section *Cautions*.
pub(crate) fn cautions_ui(ui: &mut Ui, form: &Form<'_>) {
    let kind = form
        .door()
        .and_then(|door| door.fitting.as_ref())
        .and_then(|choice| form.job.card_by_id(choice.card))
        .map(|card| card.kind);
    for text in cautions(AS_ON_SHEETS).into_iter().chain(kind.map(of_kind)) {
        caution(ui, text);
    }
    if form.job.invented {
        caution(ui, INVENTED);
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
