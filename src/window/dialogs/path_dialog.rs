//! A path to type, where the system has no file window.

use std::path::PathBuf;

use egui::{Context, Key, TextEdit};

use super::file_dialogs::Ask;
use super::{answers, modal};
use crate::window::command::Command;
use crate::window::tokens::{bold, tokens};

/// Asks for a path. Enter takes it, Escape gives up.
pub(super) fn path_ui(
    ctx: &Context,
    ask: &Ask,
    text: &mut String,
    problem: Option<&str>,
    queue: &mut Vec<Command>,
) {
    let (title, word) = match ask {
        Ask::OpenJob => ("Open a job file", "Open"),
        Ask::SaveJob { .. } => ("Save the job as", "Save"),
        Ask::ExportFolder => ("Folder for the sheets", "Export"),
        Ask::OpenCard => ("Import a card's file", "Import"),
        Ask::SaveCard { .. } => ("Save the card as", "Save"),
        Ask::CardFolder => ("Folder with cards of others", "Add"),
    };
    let (answer, gone) = modal(ctx, "path", |ui| {
        ui.label(bold(title).size(15.0));
        let told = "This system shows no file window: type the path here.";
        ui.label(
            egui::RichText::new(told)
                .small()
                .color(tokens(ui).text_soft),
        );
        ui.add_space(4.0);
        let response = ui
            .add(
                TextEdit::singleline(text)
                    .desired_width(440.0)
                    .cursor_at_end(true),
            )
            .accessible_name("Path");
        let entered = response.lost_focus() && ui.input(|input| input.key_pressed(Key::Enter));
        if !response.has_focus() && !entered && ui.memory(|memory| memory.focused().is_none()) {
            response.request_focus();
        }
        if let Some(problem) = problem {
            ui.add(egui::Label::new(egui::RichText::new(problem).color(tokens(ui).stop)).wrap());
        }
        let pressed = answers(ui, &[word, "Cancel"]);
        if entered { Some(0) } else { pressed }
    });
    let path = text.trim();
    match answer {
        Some(0) if !path.is_empty() => queue.push(Command::TypedPath(Some(PathBuf::from(path)))),
        Some(0) => {}
        Some(_) => queue.push(Command::TypedPath(None)),
        None if gone => queue.push(Command::TypedPath(None)),
        None => {}
    }
}
