//! Something to read in full, e.g. why a file was refused.

use egui::Context;

use super::{answers, close, entered, modal};
use crate::window::command::Command;
use crate::window::tokens::bold;

/// Heading and text; the text can be marked and copied.
pub(super) fn message_ui(ctx: &Context, title: &str, text: &str, queue: &mut Vec<Command>) {
    let (done, gone) = modal(ctx, "message", |ui| {
        ui.label(bold(title).size(15.0));
        ui.add_space(4.0);
        egui::ScrollArea::vertical()
            .max_height(360.0)
            .show(ui, |ui| {
                ui.add(egui::Label::new(text).wrap().selectable(true));
            });
        answers(ui, &["Close"]).is_some() || entered(ui)
    });
    if done || gone {
        queue.push(close());
    }
}
