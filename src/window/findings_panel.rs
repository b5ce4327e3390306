//! The findings, worst first, each with what can be done about it.

use egui::{CollapsingHeader, Frame, Label, RichText, Sense, Stroke, Ui};
use flapwright_rules::finding::{Finding, Severity};
use flapwright_rules::inspection::Inspection;

use super::command::Command;
use super::tokens::{bold, tokens};

/// The list of findings.
pub(crate) fn findings_ui(
    ui: &mut Ui,
    inspection: &Inspection,
    chosen: Option<usize>,
    scroll_to_chosen: bool,
    queue: &mut Vec<Command>,
) {
    ui.horizontal_wrapped(|ui| {
        ui.label(bold("Findings"));
        for severity in [Severity::Stop, Severity::Caution, Severity::Note] {
            let count = inspection
                .findings
                .iter()
                .filter(|f| f.severity == severity)
                .count();
            let colour = if count == 0 {
                tokens(ui).text_soft
            } else {
                tokens(ui).severity(severity)
            };
            let plural = if count == 1 { "" } else { "s" };
            ui.label(RichText::new(format!("{count} {}{plural}", severity.word())).color(colour));
        }
    });
    ui.separator();
    egui::ScrollArea::vertical()
        .auto_shrink(false)
        .show(ui, |ui| {
            if inspection.findings.is_empty() {
                ui.label("Nothing found: every check holds.");
            }
            for (index, finding) in inspection.findings.iter().enumerate() {
                ui.push_id(("finding", index), |ui| {
                    let place = inspection
                        .boxes
                        .get(
                            finding
                                .subjects
                                .first()
                                .map_or(0, |subject| subject.box_index()),
                        )
                        .map_or("", |report| report.name.as_str());
                    let is_chosen = chosen == Some(index);
                    let response = finding_ui(ui, index, finding, place, is_chosen, queue);
                    if is_chosen && scroll_to_chosen {
                        response.scroll_to_me(None);
                    }
                });
                ui.add_space(4.0);
            }
            ui.add_space(16.0);
        });
}

fn finding_ui(
    ui: &mut Ui,
    index: usize,
    finding: &Finding,
    place: &str,
    chosen: bool,
    queue: &mut Vec<Command>,
) -> egui::Response {
    let tokens = tokens(ui);
    let colour = tokens.severity(finding.severity);
    let edge = if chosen {
        Stroke::new(2.0, colour)
    } else {
        Stroke::new(1.0, tokens.line)
    };
    let frame = Frame::new()
        .fill(tokens.card)
        .stroke(edge)
        .corner_radius(4.0)
        .inner_margin(8.0);
    frame
        .show(ui, |ui| {
            ui.set_width(ui.available_width());
            ui.horizontal_wrapped(|ui| {
                badge(ui, finding.severity);
                ui.label(RichText::new(place).strong());
                ui.label(RichText::new(finding.check).small().color(tokens.text_soft));
            });
            // The sentence itself is the button that lights the places.
            let message = Label::new(&finding.message)
                .wrap()
                .selectable(false)
                .sense(Sense::CLICK | Sense::FOCUSABLE);
            let response = ui
                .add(message)
                .on_hover_cursor(egui::CursorIcon::PointingHand)
                .on_hover_text("Light the places in the drawings.");
            if response.clicked() {
                queue.push(Command::SelectFinding((!chosen).then_some(index)));
            }
            if response.has_focus() {
                let stroke = Stroke::new(1.0, tokens.accent);
                let around = response.rect.expand(2.0);
                ui.painter()
                    .rect_stroke(around, 2.0, stroke, egui::StrokeKind::Outside);
            }
            if !finding.details.is_empty() {
                CollapsingHeader::new(RichText::new("Details").small()).show(ui, |ui| {
                    for line in &finding.details {
                        ui.add(Label::new(RichText::new(line).small()).wrap());
                    }
                });
            }
            for (remedy_index, remedy) in finding.remedies.iter().enumerate() {
                ui.add_space(2.0);
                let button = egui::Button::new(&remedy.title).wrap();
                if ui.add(button).on_hover_text(&remedy.effect).clicked() {
                    queue.push(Command::ApplyRemedy {
                        finding: index,
                        remedy: remedy_index,
                    });
                }
                let effect = RichText::new(&remedy.effect)
                    .small()
                    .color(tokens.text_soft);
                ui.add(Label::new(effect).wrap());
            }
            response
        })
        .inner
}

/// The severity as a word on its colour.
fn badge(ui: &mut Ui, severity: Severity) {
    let tokens = tokens(ui);
    Frame::new()
        .fill(tokens.severity(severity))
        .corner_radius(3.0)
        .inner_margin(egui::Margin::symmetric(5, 1))
        .show(ui, |ui| {
            ui.label(bold(severity.word()).small().color(tokens.on_severity));
        });
}
