//! Why a finding is accepted.

use egui::{Context, Key, Label, TextEdit};

use super::{answers, close, modal};
use crate::window::command::Command;
use crate::window::tokens::{bold, tokens};
use flapwright_session::action::Action;
use flapwright_session::finding_key::FindingKey;

/// The question.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(crate) struct AcceptDialog {
    /// The finding.
    pub(crate) finding: FindingKey,
    /// What it says.
    pub(crate) message: String,
    /// What is typed.
    pub(crate) reason: String,
    /// Whether it was to be accepted without a reason.
    pub(crate) missing: bool,
}

/// Asks for the reason. Enter accepts, Escape gives up.
pub(super) fn accept_ui(ctx: &Context, dialog: &mut AcceptDialog, queue: &mut Vec<Command>) {
    let (answer, gone) = modal(ctx, "accept", |ui| {
        ui.label(bold("Accept this finding").size(15.0));
        ui.add_space(4.0);
        ui.add(Label::new(dialog.message.as_str()).wrap());
        ui.add_space(6.0);
        ui.label("Why may it stay as it is? The reason is kept in the job and printed.");
        let response = ui
            .add(
                TextEdit::singleline(&mut dialog.reason)
                    .desired_width(440.0)
                    .char_limit(300),
            )
            .accessible_name("Reason");
        dialog.missing &= !response.changed();
        let entered = response.lost_focus() && ui.input(|input| input.key_pressed(Key::Enter));
        if !response.has_focus() && !entered && ui.memory(|memory| memory.focused().is_none()) {
            response.request_focus();
        }
        if dialog.missing {
            ui.colored_label(tokens(ui).stop, "Give a reason first.");
        }
        let told = "It comes back by itself when its numbers get worse.";
        ui.label(
            egui::RichText::new(told)
                .small()
                .color(tokens(ui).text_soft),
        );
        let pressed = answers(ui, &["Accept", "Cancel"]);
        if entered { Some(0) } else { pressed }
    });
    match answer {
        Some(0) if dialog.reason.trim().is_empty() => dialog.missing = true,
        Some(0) => queue.push(Command::Do(Action::Accept {
            finding: dialog.finding.clone(),
            reason: dialog.reason.clone(),
        })),
        Some(_) => queue.push(close()),
        None if gone => queue.push(close()),
        None => {}
    }
}
