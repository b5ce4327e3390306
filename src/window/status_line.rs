//! The line at the bottom: what was done last, and the door's facts.

use std::path::PathBuf;

use egui::{Layout, RichText, Ui};
use flapwright_model::length::Unit;
use flapwright_model::measure::Measure;
use flapwright_rules::inspection::DoorReport;

use super::command::Command;
use super::tokens::tokens;
use flapwright_session::action::Action;

/// What the line says.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub(crate) struct Status {
    /// The message.
    pub(crate) text: String,
    /// Whether it tells of a failure.
    pub(crate) bad: bool,
    /// A folder that files were written to.
    pub(crate) folder: Option<PathBuf>,
}

/// What is going on beside the window.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Busy {
    /// What it is.
    pub(crate) words: &'static str,
    /// How much is done, 0 to 1, of what can be stopped.
    pub(crate) progress: Option<f32>,
}

impl Status {
    /// Something was done.
    pub(crate) fn done(text: impl Into<String>) -> Self {
        Self {
            text: text.into(),
            bad: false,
            folder: None,
        }
    }

    /// Something failed.
    pub(crate) fn failed(text: impl Into<String>) -> Self {
        Self {
            text: text.into(),
            bad: true,
            folder: None,
        }
    }
}

/// The bottom line.
pub(crate) fn status_ui(
    ui: &mut Ui,
    status: &Status,
    busy: Option<Busy>,
    door: Option<&DoorReport>,
    unit: Unit,
    queue: &mut Vec<Command>,
) {
    let tokens = tokens(ui);
    ui.horizontal(|ui| {
        if let Some(busy) = busy {
            ui.spinner();
            ui.label(busy.words);
            if let Some(progress) = busy.progress {
                ui.add(egui::ProgressBar::new(progress).desired_width(90.0));
                if ui.button("Stop").clicked() {
                    queue.push(Command::Do(Action::StopExport));
                }
            }
        }
        if let Some(folder) = &status.folder
            && ui.button("Open folder").clicked()
        {
            queue.push(Command::OpenFolder(folder.clone()));
        }
        let room = ui.available_width() * 0.55;
        let colour = if status.bad { tokens.stop } else { tokens.text };
        ui.allocate_ui_with_layout(
            egui::vec2(room, ui.spacing().interact_size.y),
            Layout::left_to_right(egui::Align::Center),
            |ui| {
                let text = RichText::new(&status.text).color(colour);
                ui.add(egui::Label::new(text).truncate())
                    .on_hover_text(&status.text);
            },
        );
        ui.with_layout(Layout::right_to_left(egui::Align::Center), |ui| {
            if let Some(door) = door {
                ui.add(egui::Label::new(facts(door, unit)).truncate());
            }
        });
    });
}

/// Opening kind, fitting and mass of a door.
fn facts(door: &DoorReport, unit: Unit) -> String {
    let mass = &door.mass;
    let kind = door
        .kind
        .map_or("no fitting", flapwright_model::card::OpeningKind::words);
    let fitting = if door.fitting.is_empty() {
        String::new()
    } else {
        format!(", {}", door.fitting)
    };
    let mass = Measure::Mass.range([mass.low, mass.likely, mass.high], unit);
    format!("{kind}{fitting}; door {mass}")
}
