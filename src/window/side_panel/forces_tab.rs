//! What the hand feels, and what the door does by itself.

use egui::{Button, ScrollArea, Ui};

use super::AboutDoor;
use super::force_plot::{force_ui, notes_ui};
use super::moment_plot::moment_ui;
use super::summary::{hand_ui, let_go_ui};
use super::zones_bar::zones_ui;
use crate::window::command::Command;
use crate::window::tokens::tokens;
use flapwright_session::action_table::ActionId;
use flapwright_words::Speaker;

/// What is needed beside the plots, so that plots and bar are seen at once.
const BESIDE: f32 = 330.0;

/// Shows the tab.
pub(super) fn forces_ui(ui: &mut Ui, about: AboutDoor<'_>, queue: &mut Vec<Command>) {
    let plot = ((ui.available_height() - BESIDE) / 2.0).clamp(140.0, 300.0);
    ScrollArea::vertical().auto_shrink(false).show(ui, |ui| {
        let working = match &about.known.found.working {
            Ok(working) => working,
            Err(error) => {
                let text = egui::RichText::new(super::sentence(
                    &Speaker::without_names(about.unit).say(error),
                ));
                ui.add(egui::Label::new(text.color(tokens(ui).stop)).wrap());
                strut_button(ui, about, queue);
                return;
            }
        };
        let Some(lines) = &about.known.lines else {
            return;
        };
        hand_ui(ui, about, working);
        ui.add_space(4.0);
        let both = (lines, &working.curves);
        let across = force_ui(ui, about, both, plot, queue);
        ui.add_space(2.0);
        moment_ui(ui, about, both, plot + 16.0, queue);
        zones_ui(ui, about, lines, across, queue);
        ui.add_space(6.0);
        let_go_ui(ui, &working.let_go);
        strut_button(ui, about, queue);
        ui.add_space(4.0);
        notes_ui(ui, lines);
        ui.add_space(16.0);
    });
}

fn strut_button(ui: &mut Ui, about: AboutDoor<'_>, queue: &mut Vec<Command>) {
    if !about.known.has_strut {
        return;
    }
    ui.add_space(4.0);
    let command = ActionId::PlaceStrut;
    let button = ui.add(Button::new(command.title()));
    if button.on_hover_text(command.tooltip()).clicked() {
        queue.push(Command::Choose(command));
    }
}
