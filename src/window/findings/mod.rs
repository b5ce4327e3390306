//! The findings, worst first, each with what can be done about it; the accepted ones apart.

mod apply;
mod card;
mod filter;
mod preview;

use egui::{CollapsingHeader, RichText, Ui};
use flapwright_rules::finding::{Finding, Severity};
use flapwright_rules::inspection::Inspection;
use flapwright_rules::plural::count;

use self::card::{FindingCard, accepted_ui, finding_ui};
use self::filter::{Filter, filter_ui};
pub(crate) use self::preview::{Preview, RemedyAt};
use super::command::{Command, UiCommand};
use super::document::Document;
use super::tokens::{bold, tokens};
use super::view_state::ViewState;

/// What the list of findings remembers.
#[derive(Debug, Default)]
pub(crate) struct FindingsView {
    filter: Filter,
    /// The remedy that is shown before it is applied.
    pub(crate) preview: Preview,
}

/// The list of findings.
pub(crate) fn findings_ui(
    ui: &mut Ui,
    document: &Document,
    view: &mut ViewState,
    queue: &mut Vec<Command>,
) {
    let inspection = document.inspection();
    let scroll = std::mem::take(&mut view.scroll_to_finding);
    head_ui(ui, inspection, queue);
    let state = &mut view.findings;
    filter_ui(ui, inspection, &mut state.filter);
    ui.separator();
    let mut card = FindingCard {
        document,
        chosen: view.finding,
        scroll,
        preview: &mut state.preview,
        queue,
    };
    let filter = state.filter;
    let shown = |index: usize, finding: &Finding| {
        filter.shows(finding, inspection) || view.finding == Some(index)
    };
    egui::ScrollArea::vertical()
        .auto_shrink(false)
        .show(ui, |ui| {
            if inspection.findings.iter().all(|it| it.accepted.is_some()) {
                ui.label("Nothing found: every check holds.");
            }
            let (mut left_out, mut accepted) = (0, Vec::new());
            for (index, finding) in inspection.findings.iter().enumerate() {
                if !shown(index, finding) {
                    left_out += 1;
                } else if finding.accepted.is_some() {
                    accepted.push((index, finding));
                } else {
                    ui.push_id(("finding", index), |ui| {
                        finding_ui(ui, &mut card, index, finding);
                    });
                    ui.add_space(4.0);
                }
            }
            if !accepted.is_empty() {
                accepted_list(ui, &mut card, &accepted);
            }
            if left_out > 0 {
                let text = format!("{} not shown by this choice.", count(left_out, "finding"));
                ui.label(RichText::new(text).color(tokens(ui).text_soft));
            }
            ui.add_space(16.0);
        });
}

/// How many are open, and what can be done about all of them.
fn head_ui(ui: &mut Ui, inspection: &Inspection, queue: &mut Vec<Command>) {
    ui.horizontal_wrapped(|ui| {
        ui.label(bold("Findings"));
        for severity in [Severity::Stop, Severity::Caution, Severity::Note] {
            let open = inspection.open(severity);
            let colour = if open == 0 {
                tokens(ui).text_soft
            } else {
                tokens(ui).severity(severity)
            };
            ui.label(RichText::new(count(open, severity.word())).color(colour));
        }
        let accepted = accepted_count(inspection);
        if accepted > 0 {
            let text = format!("{accepted} accepted");
            ui.label(RichText::new(text).color(tokens(ui).text_soft));
        }
    });
    if has_safe(inspection) {
        let command = UiCommand::ApplySafe;
        let button = ui.button(command.label());
        if button.on_hover_text(command.tooltip()).clicked() {
            queue.push(Command::Ui(command));
        }
    }
}

fn accepted_list(ui: &mut Ui, card: &mut FindingCard<'_>, accepted: &[(usize, &Finding)]) {
    let chosen = accepted
        .iter()
        .any(|(index, _)| card.chosen == Some(*index));
    let title = bold(format!("Accepted ({})", accepted.len()));
    CollapsingHeader::new(title)
        .id_salt("accepted findings")
        .open((chosen && card.scroll).then_some(true))
        .show(ui, |ui| {
            for (index, finding) in accepted {
                ui.push_id(("accepted", index), |ui| {
                    accepted_ui(ui, card, *index, finding);
                });
                ui.add_space(4.0);
            }
        });
}

/// Whether a finding that is not accepted has a safe remedy.
pub(crate) fn has_safe(inspection: &Inspection) -> bool {
    inspection
        .findings
        .iter()
        .any(|it| it.accepted.is_none() && it.remedies.iter().any(|remedy| remedy.safe))
}

/// How many findings are open. The list has them before the accepted ones.
pub(crate) fn open_count(inspection: &Inspection) -> usize {
    inspection.findings.len() - accepted_count(inspection)
}

fn accepted_count(inspection: &Inspection) -> usize {
    let accepted = inspection
        .findings
        .iter()
        .filter(|it| it.accepted.is_some());
    accepted.count()
}
