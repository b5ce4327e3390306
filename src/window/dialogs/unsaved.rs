//! Unsaved changes are never lost without asking.

use egui::Context;

use super::{Next, answers, entered, modal};
use crate::window::command::{Command, UnsavedAnswer};
use crate::window::tokens::bold;

/// Save, discard or cancel. Enter saves, Escape cancels.
pub(super) fn unsaved_ui(ctx: &Context, job: &str, next: &Next, queue: &mut Vec<Command>) {
    let before = match next {
        Next::Close => "closing the window",
        Next::New => "starting a new job",
        Next::Open | Next::OpenPath(_) => "opening another job",
    };
    let (answer, gone) = modal(ctx, "unsaved", |ui| {
        ui.label(bold("Unsaved changes").size(15.0));
        ui.add_space(4.0);
        ui.label(format!("Save the changes of \"{job}\" before {before}?"));
        let pressed = answers(ui, &["Save", "Discard", "Cancel"]);
        pressed.or_else(|| entered(ui).then_some(0))
    });
    let answer = match answer {
        Some(0) => Some(UnsavedAnswer::Save),
        Some(1) => Some(UnsavedAnswer::Discard),
        Some(_) => Some(UnsavedAnswer::Cancel),
        None => gone.then_some(UnsavedAnswer::Cancel),
    };
    queue.extend(answer.map(Command::Unsaved));
}
