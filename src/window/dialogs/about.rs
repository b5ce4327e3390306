//! The list of keys, and what this program is.

use egui::{Context, Grid, RichText};

use super::{answers, close, entered, keyed, modal};
use crate::window::command::Command;
use crate::window::keys::shortcut;
use crate::window::tokens::{bold, tokens};

/// Keys that fields and drawings know beside the commands.
const MORE: [(&str, &str); 7] = [
    ("Tab", "next field or button"),
    ("Enter", "take the typed value"),
    (
        "Escape",
        "leave the field with its old value; close a question",
    ),
    (
        "Up, Down",
        "1 mm or 1/16 in more or less in a field; with Shift 10 times, with Ctrl a tenth",
    ),
    ("Arrow keys", "move a drawing that has the keyboard"),
    (
        "Wheel",
        "zoom at the pointer; drag moves, double click fits",
    ),
    ("Drag on a name", "change the number behind it"),
];

/// All keys.
pub(super) fn shortcuts_ui(ctx: &Context, queue: &mut Vec<Command>) {
    let (done, gone) = modal(ctx, "keys", |ui| {
        ui.label(bold("Keys").size(15.0));
        ui.add_space(4.0);
        egui::ScrollArea::vertical()
            .max_height(600.0)
            .show(ui, |ui| {
                Grid::new("keys")
                    .num_columns(2)
                    .spacing([18.0, 4.0])
                    .show(ui, |ui| {
                        for command in keyed() {
                            let keys: Vec<String> = command
                                .keys
                                .iter()
                                .map(|keys| ui.ctx().format_shortcut(&shortcut(*keys)))
                                .collect();
                            ui.label(bold(keys.join(", ")));
                            ui.label(command.title).on_hover_text(command.tooltip);
                            ui.end_row();
                        }
                        for (keys, what) in MORE.into_iter().chain(crate::window::card_editor::KEYS)
                        {
                            ui.label(bold(keys));
                            ui.add(egui::Label::new(what).wrap());
                            ui.end_row();
                        }
                    });
            });
        answers(ui, &["Close"]).is_some() || entered(ui)
    });
    if done || gone {
        queue.push(close());
    }
}

/// What this program is.
pub(super) fn about_ui(ctx: &Context, queue: &mut Vec<Command>) {
    let (done, gone) = modal(ctx, "about", |ui| {
        ui.label(bold("Flapwright").size(15.0));
        ui.label(format!("Version {}", env!("CARGO_PKG_VERSION")));
        ui.add_space(4.0);
        ui.label(
            "Turns a wall cabinet with a lift-up door into drilled parts that fit the first time. \
             Everything that is drilled hangs on the fitting; reveals only say where the door's \
             edges fall around it.",
        );
        ui.add_space(4.0);
        let licence = "Licence: MIT or Apache-2.0. Font: Noto Sans, SIL Open Font License 1.1.";
        ui.label(RichText::new(licence).small().color(tokens(ui).text_soft));
        answers(ui, &["Close"]).is_some() || entered(ui)
    });
    if done || gone {
        queue.push(close());
    }
}
