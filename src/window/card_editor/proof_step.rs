//! The last step: what is still missing, what looks like a slip, whether the example comes out.

use egui::{Label, RichText, Ui};
use flapwright_model::length::Unit;
use flapwright_rules::plausibility::slips;
use flapwright_rules::proof::proof;
use flapwright_words::Speaker;

use super::live::Live;
use crate::window::tokens::{bold, tokens};

/// Shows the proof; gives back the field that is to be shown.
pub(super) fn proof_ui(ui: &mut Ui, live: &Live, unit: Unit) -> Option<String> {
    let tokens = tokens(ui);
    let mut wanted = None;
    let Some(card) = &live.card else {
        let (missing, wrong) = live.problems.counts();
        ui.label(bold("The card is not complete"));
        ui.label(format!(
            "{missing} numbers are still missing, {wrong} are wrong. F8 leads from one to the next."
        ));
        return None;
    };
    let proof = proof(card);
    let speaker = Speaker::without_names(unit);
    let (ink, word) = if proof.is_proved() {
        (tokens.good, "Proved")
    } else {
        (tokens.caution, "Not proved")
    };
    ui.label(bold(word).color(ink).size(15.0));
    ui.add(Label::new(speaker.say(&proof.message())).wrap());
    if let flapwright_rules::proof::Proof::Fails(moved) = &proof {
        for one in moved {
            ui.add(Label::new(RichText::new(speaker.say(&one.message)).color(tokens.stop)).wrap());
        }
    }
    ui.add_space(8.0);
    let slips = slips(card);
    ui.label(bold(match slips.len() {
        0 => "Nothing looks like a slip of typing".to_owned(),
        1 => "One number looks like a slip".to_owned(),
        count => format!("{count} numbers look like slips"),
    }));
    for slip in slips {
        ui.add_space(2.0);
        ui.add(Label::new(RichText::new(speaker.say(&slip.message)).color(tokens.caution)).wrap());
        ui.horizontal_wrapped(|ui| {
            ui.label(
                RichText::new(speaker.say(&slip.remedy))
                    .small()
                    .color(tokens.text_soft),
            );
            if ui.small_button("Show the field").clicked() {
                wanted = Some(slip.field.clone());
            }
        });
    }
    wanted
}
