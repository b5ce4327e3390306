//! Menu, undo and redo, units, and the name of the job.

use egui::containers::menu::{MenuBar, MenuButton};
use egui::{Button, RichText, Ui};
use flapwright_model::length::Unit;

use super::command::{Command, UiCommand};
use super::document::Document;
use super::tokens::{bold, toggle, tokens};

/// Whether a command can be run now, and how its words go on.
#[derive(Debug, Clone)]
pub(crate) struct Availability {
    /// Whether it can be run.
    pub(crate) enabled: bool,
    /// What stands behind its words, e.g. the step that undo takes back.
    pub(crate) more: Option<String>,
}

/// The menus.
const MENUS: [(&str, &[&[UiCommand]]); 5] = [
    (
        "File",
        &[
            &[UiCommand::New, UiCommand::Open],
            &[UiCommand::Save, UiCommand::SaveAs],
            &[UiCommand::ExportSheets],
            &[UiCommand::Close],
        ],
    ),
    (
        "Edit",
        &[
            &[UiCommand::Undo, UiCommand::Redo],
            &[
                UiCommand::AddBox,
                UiCommand::DuplicateBox,
                UiCommand::RemoveBox,
            ],
            &[
                UiCommand::ApplySafe,
                UiCommand::AcceptFinding,
                UiCommand::PlaceStrut,
            ],
        ],
    ),
    (
        "View",
        &[
            &[
                UiCommand::FitViews,
                UiCommand::ZoomIn,
                UiCommand::ZoomOut,
                UiCommand::ShowDimensions,
                UiCommand::PlayDoor,
            ],
            &[
                UiCommand::ShowFindings,
                UiCommand::ShowSizes,
                UiCommand::ShowForces,
            ],
            &[
                UiCommand::NextFinding,
                UiCommand::PreviousFinding,
                UiCommand::ExplainFinding,
            ],
            &[
                UiCommand::LightTheme,
                UiCommand::DarkTheme,
                UiCommand::SystemTheme,
            ],
        ],
    ),
    ("Cards", &[&[UiCommand::ShowCards, UiCommand::ImportCard]]),
    ("Help", &[&[UiCommand::ShowShortcuts, UiCommand::ShowAbout]]),
];

/// The bar at the top.
pub(crate) fn top_bar_ui(
    ui: &mut Ui,
    document: &Document,
    available: &dyn Fn(UiCommand) -> Availability,
    queue: &mut Vec<Command>,
) {
    MenuBar::new().ui(ui, |ui| {
        for (title, groups) in MENUS {
            MenuButton::new(title).ui(ui, |ui| {
                ui.set_min_width(210.0);
                for (i, group) in groups.iter().enumerate() {
                    if i > 0 {
                        ui.separator();
                    }
                    for command in *group {
                        menu_row(ui, *command, &available(*command), queue);
                    }
                }
            });
        }
        ui.separator();
        for command in [UiCommand::Undo, UiCommand::Redo, UiCommand::FitViews] {
            let state = available(command);
            let text = if command == UiCommand::FitViews {
                "Fit"
            } else {
                command.label()
            };
            let tip = state
                .more
                .clone()
                .unwrap_or_else(|| command.tooltip().to_owned());
            let name = format!("{text} button");
            let button = ui
                .add_enabled(state.enabled, Button::new(text))
                .accessible_name(name);
            if button.on_hover_text(tip).clicked() {
                queue.push(Command::Ui(command));
            }
        }
        ui.separator();
        for (command, unit) in [
            (UiCommand::UseMillimetres, Unit::Millimetre),
            (UiCommand::UseInches, Unit::Inch),
        ] {
            let chosen = document.job().unit == unit;
            let button = toggle(ui, chosen, command.label());
            if button.on_hover_text(command.tooltip()).clicked() && !chosen {
                queue.push(Command::Ui(command));
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

fn menu_row(ui: &mut Ui, command: UiCommand, state: &Availability, queue: &mut Vec<Command>) {
    let text = match &state.more {
        Some(more) => format!("{}: {more}", command.label()),
        None => command.label().to_owned(),
    };
    let mut button = Button::new(text);
    if let Some(keys) = command.shortcuts().first() {
        button = button.shortcut_text(ui.ctx().format_shortcut(keys));
    }
    let response = ui
        .add_enabled(state.enabled, button)
        .accessible_name(command.label());
    if response.on_hover_text(command.tooltip()).clicked() {
        queue.push(Command::Ui(command));
        ui.close();
    }
}
