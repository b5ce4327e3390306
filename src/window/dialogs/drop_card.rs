//! A half typed card is never lost without asking.

use egui::Context;

use super::{answers, close, modal};
use crate::window::card_editor::CardCommand;
use crate::window::command::Command;
use crate::window::tokens::bold;

/// Keep or throw away. Escape keeps.
pub(super) fn drop_ui(ctx: &Context, index: usize, title: &str, queue: &mut Vec<Command>) {
    let (answer, gone) = modal(ctx, "drop card", |ui| {
        ui.label(bold("Throw the card away?").size(15.0));
        ui.add_space(4.0);
        ui.label(format!(
            "What is typed of \"{title}\" is kept nowhere else. There is no way back."
        ));
        answers(ui, &["Keep", "Throw away"])
    });
    match answer {
        Some(0) => queue.push(close()),
        Some(_) => queue.push(Command::Card(CardCommand::DropNow(index))),
        None if gone => queue.push(close()),
        None => {}
    }
}

/// Go back or close the window on them. Escape goes back.
pub(super) fn lose_ui(ctx: &Context, cards: &[String], queue: &mut Vec<Command>) {
    let (answer, gone) = modal(ctx, "lose cards", |ui| {
        ui.label(bold("Cards that are kept nowhere").size(15.0));
        ui.add_space(4.0);
        ui.label(format!(
            "These cards are being typed and are neither in the job nor in a file: {}.",
            cards.join(", ")
        ));
        answers(ui, &["Back to the cards", "Close without them"])
    });
    match answer {
        Some(0) => queue.extend([close(), Command::Card(CardCommand::List)]),
        Some(_) => queue.push(Command::Card(CardCommand::LoseAll)),
        None if gone => queue.push(close()),
        None => {}
    }
}
