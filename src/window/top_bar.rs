//! Menu, undo and redo, units, and the name of the job.

use egui::containers::menu::{MenuBar, MenuButton};
use egui::{Button, RichText, Ui};
use flapwright_model::length::Unit;

use super::app::available;
use super::command::Command;
use super::keys;
use super::tokens::{bold, toggle, tokens};
use flapwright_session::Session;
use flapwright_session::action_table::{ActionId, ActionInfo, MENUS};
use flapwright_session::document::Document;

/// The bar at the top.
pub(crate) fn top_bar_ui(ui: &mut Ui, session: &Session, asking: bool, queue: &mut Vec<Command>) {
    let document = session.document();
    MenuBar::new().ui(ui, |ui| {
        for (title, groups) in MENUS {
            MenuButton::new(title).ui(ui, |ui| {
                ui.set_min_width(210.0);
                for (i, group) in groups.iter().enumerate() {
                    if i > 0 {
                        ui.separator();
                    }
                    for info in group.actions() {
                        menu_row(ui, info, (session, asking), queue);
                    }
                }
            });
        }
        ui.separator();
        for command in [ActionId::Undo, ActionId::Redo, ActionId::FitViews] {
            let state = available(session, asking, command);
            let text = if command == ActionId::FitViews {
                "Fit"
            } else {
                command.title()
            };
            let tip = state.more.unwrap_or(command.tooltip());
            let name = format!("{text} button");
            let button = ui
                .add_enabled(state.enabled, Button::new(text))
                .accessible_name(name);
            if button.on_hover_text(tip).clicked() {
                queue.push(Command::Choose(command));
            }
        }
        ui.separator();
        for (command, unit) in [
            (ActionId::UseMillimetres, Unit::Millimetre),
            (ActionId::UseInches, Unit::Inch),
        ] {
            let chosen = document.job().unit == unit;
            let button = toggle(ui, chosen, command.title());
            if button.on_hover_text(command.tooltip()).clicked() && !chosen {
                queue.push(Command::Choose(command));
            }
        }
        ui.separator();
        name_ui(ui, document);
    });
}

/// Name of the job, whether it is saved, where it is kept.
fn name_ui(ui: &mut Ui, document: &Document) {
    let soft = tokens(ui).text_soft;
    let file = document.path().map_or_else(
        || "no file yet".to_owned(),
        |path| {
            path.file_name()
                .unwrap_or(path.as_os_str())
                .to_string_lossy()
                .into_owned()
        },
    );
    let label = ui.label(bold(&document.job().name));
    if let Some(path) = document.path() {
        label.on_hover_text(path.display().to_string());
    }
    ui.label(RichText::new(file).color(soft));
    if document.unsaved() {
        ui.label(RichText::new("unsaved changes").color(tokens(ui).caution));
    }
    if document.job().invented {
        ui.label(RichText::new("invented demo data").color(soft));
    }
}

fn menu_row(
    ui: &mut Ui,
    info: &ActionInfo,
    (session, asking): (&Session, bool),
    queue: &mut Vec<Command>,
) {
    let state = available(session, asking, info.id);
    let text = match state.more {
        Some(more) => format!("{}: {more}", info.title),
        None => info.title.to_owned(),
    };
    let mut button = Button::new(text);
    let keys = keys::words(ui.ctx(), info.id);
    if !keys.is_empty() {
        button = button.shortcut_text(keys);
    }
    let response = ui
        .add_enabled(state.enabled, button)
        .accessible_name(info.title);
    if response.on_hover_text(info.tooltip).clicked() {
        queue.push(Command::Choose(info.id));
        ui.close();
    }
}
