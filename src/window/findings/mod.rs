//! The findings, worst first, each with what can be done about it; the accepted ones apart.

mod card;
mod filter;
mod long_list;

use egui::{CollapsingHeader, RichText, Ui};
use flapwright_rules::finding::{Finding, Severity};
use flapwright_rules::plural::count;
use flapwright_words::Names;

use self::card::{FindingCard, accepted_ui, finding_ui};
use self::filter::{Filter, filter_ui};
use self::long_list::Heights;
use super::command::Command;
use super::tokens::{bold, tokens};
use super::view_state::ViewState;
use flapwright_session::Session;
use flapwright_session::action_table::ActionId;
use flapwright_session::document::Document;
use flapwright_session::preview::Preview;

/// What the list of findings remembers.
#[derive(Debug, Default)]
pub(crate) struct FindingsView {
    filter: Filter,
    heights: Heights,
    /// The remedy that is shown before it is applied.
    pub(crate) preview: Preview,
}

/// The list of findings.
pub(crate) fn findings_ui(
    ui: &mut Ui,
    session: &Session,
    view: &mut ViewState,
    queue: &mut Vec<Command>,
) {
    let document = session.document();
    let inspection = document.inspection();
    let chosen = session.selection().finding.as_ref();
    let scroll = std::mem::take(&mut view.scroll_to_finding);
    head_ui(ui, document, queue);
    let state = &mut view.findings;
    filter_ui(ui, inspection, &mut state.filter);
    ui.separator();
    let names = Names::of(document.job());
    let mut card = FindingCard {
        document,
        speaker: names.speaker(),
        chosen,
        scroll,
        preview: &mut state.preview,
        queue,
    };
    let filter = state.filter.within(inspection);
    let is_chosen = |finding: &Finding| chosen.is_some_and(|key| key.names(finding));
    let (shown, left_out): (Vec<&Finding>, Vec<&Finding>) = inspection
        .findings
        .iter()
        .map(|it| &**it)
        .partition(|it| filter.shows(it) || is_chosen(it));
    let (open, accepted): (Vec<&Finding>, Vec<&Finding>) =
        shown.into_iter().partition(|it| it.accepted.is_none());
    let mut still_to_scroll = false;
    egui::ScrollArea::vertical()
        .auto_shrink(false)
        .show(ui, |ui| {
            if document.open_count() == 0 {
                ui.label("Nothing found: all checks pass.");
            }
            long_list::long_list(ui, &mut state.heights, &open, |ui, finding, in_sight| {
                if !in_sight {
                    let comes = card.scroll && is_chosen(finding);
                    still_to_scroll |= comes;
                    return comes;
                }
                finding_ui(ui, &mut card, finding);
                ui.add_space(4.0);
                false
            });
            if !accepted.is_empty() {
                accepted_list(ui, &mut card, &accepted);
            }
            if !left_out.is_empty() {
                let text = format!(
                    "{} not shown by this choice.",
                    count(left_out.len(), "finding")
                );
                ui.label(RichText::new(text).color(tokens(ui).text_soft));
            }
            ui.add_space(16.0);
        });
    view.scroll_to_finding = still_to_scroll;
}

/// How many are open, and what can be done about all of them.
fn head_ui(ui: &mut Ui, document: &Document, queue: &mut Vec<Command>) {
    ui.horizontal_wrapped(|ui| {
        ui.label(bold("Findings"));
        for severity in [Severity::Stop, Severity::Caution, Severity::Note] {
            let open = document.open(severity);
            let colour = if open == 0 {
                tokens(ui).text_soft
            } else {
                tokens(ui).severity(severity)
            };
            ui.label(RichText::new(count(open, severity.word())).color(colour));
        }
        let accepted = document.accepted_count();
        if accepted > 0 {
            let text = format!("{accepted} accepted");
            ui.label(RichText::new(text).color(tokens(ui).text_soft));
        }
    });
    if document.claims_safe_remedy() {
        let command = ActionId::ApplySafe;
        let button = ui.button(command.title());
        if button.on_hover_text(command.tooltip()).clicked() {
            queue.push(Command::Choose(command));
        }
    }
}

fn accepted_list(ui: &mut Ui, card: &mut FindingCard<'_>, accepted: &[&Finding]) {
    let chosen = accepted.iter().any(|finding| card.is_chosen(finding));
    let title = bold(format!("Accepted ({})", accepted.len()));
    CollapsingHeader::new(title)
        .id_salt("accepted findings")
        .open((chosen && card.scroll).then_some(true))
        .show(ui, |ui| {
            for finding in accepted {
                ui.push_id(("accepted", finding.check, &finding.about), |ui| {
                    accepted_ui(ui, card, finding);
                });
                ui.add_space(4.0);
            }
        });
}
