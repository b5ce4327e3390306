//! How bad each check's findings are in this job, and which checks are not run.

use egui::{CollapsingHeader, ComboBox, Label, RichText, Ui};
use flapwright_model::edit::{Edit, JobHead};
use flapwright_model::severity::SeveritySetting;
use flapwright_rules::checks::{CHECKS, Check};

use super::Form;
use crate::window::command::Command;
use crate::window::tokens::{GROUP_GAP, bold, tokens};

const ALL: [Option<SeveritySetting>; 5] = [
    None,
    Some(SeveritySetting::Off),
    Some(SeveritySetting::Note),
    Some(SeveritySetting::Caution),
    Some(SeveritySetting::Stop),
];

const fn word(severity: Option<SeveritySetting>) -> &'static str {
    match severity {
        None => "default",
        Some(SeveritySetting::Off) => "off",
        Some(SeveritySetting::Note) => "note",
        Some(SeveritySetting::Caution) => "caution",
        Some(SeveritySetting::Stop) => "stop",
    }
}

/// All checks with their severities.
pub(crate) fn severities_ui(ui: &mut Ui, form: &mut Form<'_>) {
    ui.add_space(GROUP_GAP);
    let changed = form.job.settings.weights.len();
    let title = match changed {
        0 => "Severity of the checks".to_owned(),
        _ => format!("Severity of the checks ({changed} set)"),
    };
    let title = bold(title).color(tokens(ui).text_soft).size(12.5);
    CollapsingHeader::new(title)
        .id_salt("severities")
        .show(ui, |ui| {
            for check in CHECKS {
                severity_ui(ui, form, check);
            }
        });
}

fn severity_ui(ui: &mut Ui, form: &mut Form<'_>, check: &Check) {
    let now = form.job.settings.weights.get(check.name).copied();
    let mut chosen = now;
    ui.horizontal(|ui| {
        ComboBox::from_id_salt(("severity", check.name))
            .selected_text(word(now))
            .width(84.0)
            .show_ui(ui, |ui| {
                for severity in ALL {
                    ui.selectable_value(&mut chosen, severity, word(severity));
                }
            })
            .response
            .accessible_name(format!("severity of {}", check.name));
        let page = ui
            .add(egui::Button::new(check.name).frame(false).truncate())
            .accessible_name(format!("page of {}", check.name))
            .on_hover_text("Show the page of this check.");
        if page.clicked() {
            form.queue.push(Command::ShowPage(check.name.to_owned()));
        }
    });
    let summary = RichText::new(check.summary())
        .small()
        .color(tokens(ui).text_soft);
    ui.add(Label::new(summary).wrap());
    if chosen == now {
        return;
    }
    let mut head = JobHead::of(form.job);
    let weights = &mut head.settings.weights;
    match chosen {
        Some(severity) => weights.insert(check.name.to_owned(), severity),
        None => weights.remove(check.name),
    };
    let edit = Edit::ReplaceHead(Box::new(head));
    form.press_job(&format!("severity of {}", check.name), Some(edit));
}
