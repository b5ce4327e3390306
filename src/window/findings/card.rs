//! One finding: what, where, what can be done.

use egui::{Button, CollapsingHeader, Frame, Label, Response, RichText, Sense, Stroke, Ui};
use flapwright_model::part::Subject;
use flapwright_rules::finding::{Finding, Remedy, Severity};
use flapwright_words::{Speaker, effect, headline, headline_in_box, place, places, reasons};

use crate::window::command::Command;
use crate::window::tokens::{bold, tokens};
use flapwright_session::action::Action;
use flapwright_session::document::Document;
use flapwright_session::finding_key::FindingKey;
use flapwright_session::preview::{Preview, RemedyAt};

/// What every finding of the list is shown with.
pub(super) struct FindingCard<'a> {
    pub(super) document: &'a Document,
    /// Says what they are and where.
    pub(super) speaker: Speaker<'a>,
    /// The selected finding.
    pub(super) chosen: Option<&'a FindingKey>,
    /// Whether it must come into sight.
    pub(super) scroll: bool,
    pub(super) preview: &'a mut Preview,
    pub(super) queue: &'a mut Vec<Command>,
}

impl FindingCard<'_> {
    /// Whether a finding is the selected one.
    pub(super) fn is_chosen(&self, finding: &Finding) -> bool {
        self.chosen.is_some_and(|key| key.names(finding))
    }
}

/// An open finding with its remedies.
pub(super) fn finding_ui(ui: &mut Ui, card: &mut FindingCard<'_>, finding: &Finding) {
    framed(ui, card, finding, |ui, card| {
        reasons_ui(ui, card, finding);
        for (remedy_index, remedy) in finding.remedies.iter().enumerate() {
            let at = RemedyAt {
                revision: card.document.revision(),
                finding: FindingKey::of(finding),
                remedy: remedy_index,
            };
            ui.add_space(2.0);
            remedy_ui(ui, card, &at, (finding, remedy));
        }
        ui.horizontal_wrapped(|ui| {
            let button = small_button(ui, card, ("Accept…", "Accept"), finding)
                .on_hover_text("Keep it as it is, with a reason that is printed on the sheets.");
            if button.clicked() {
                card.queue.push(Command::AskAccept(FindingKey::of(finding)));
            }
            what_ui(ui, card, finding);
        });
    });
}

/// An accepted finding with the reason.
pub(super) fn accepted_ui(ui: &mut Ui, card: &mut FindingCard<'_>, finding: &Finding) {
    framed(ui, card, finding, |ui, card| {
        let reason = finding.accepted.as_deref().unwrap_or_default();
        ui.add(Label::new(format!("Accepted: {reason}")).wrap());
        reasons_ui(ui, card, finding);
        ui.horizontal_wrapped(|ui| {
            let button = small_button(
                ui,
                card,
                ("Take back", "Take back the acceptance of"),
                finding,
            )
            .on_hover_text("The finding is open again.");
            if button.clicked() {
                card.queue
                    .push(Command::Do(Action::TakeBack(FindingKey::of(finding))));
            }
            what_ui(ui, card, finding);
        });
    });
}

/// A small button whose name for a screen reader says which finding it is about.
fn small_button(
    ui: &mut Ui,
    card: &FindingCard<'_>,
    (text, verb): (&str, &str),
    finding: &Finding,
) -> Response {
    let place = place(finding, &card.speaker);
    ui.add(Button::new(text).small())
        .accessible_name(format!("{verb} {}, {place}", finding.check))
}

fn what_ui(ui: &mut Ui, card: &mut FindingCard<'_>, finding: &Finding) {
    let button = small_button(ui, card, ("What is this?", "What is"), finding)
        .on_hover_text("What the check looks at, why it matters, what can be done.");
    if button.clicked() {
        card.queue.push(Command::ShowPage(finding.check.to_owned()));
    }
}

fn framed(
    ui: &mut Ui,
    card: &mut FindingCard<'_>,
    finding: &Finding,
    body: impl FnOnce(&mut Ui, &mut FindingCard<'_>),
) {
    let tokens = tokens(ui);
    let chosen = card.is_chosen(finding);
    let edge = if chosen {
        Stroke::new(2.0, tokens.severity(finding.severity))
    } else {
        Stroke::new(1.0, tokens.line)
    };
    let frame = Frame::new()
        .fill(tokens.card)
        .stroke(edge)
        .corner_radius(4.0)
        .inner_margin(8.0);
    frame.show(ui, |ui| {
        ui.set_width(ui.available_width());
        let message = message_ui(ui, card, finding);
        if chosen && card.scroll {
            message.scroll_to_me(None);
        }
        body(ui, card);
    });
}

/// Severity, place, check, and the sentence, which is the button that shows the places.
fn message_ui(ui: &mut Ui, card: &mut FindingCard<'_>, finding: &Finding) -> Response {
    let tokens = tokens(ui);
    let first = finding.subjects.first();
    let name = first.and_then(|subject| subject.box_id());
    let name = name.map_or_else(String::new, |id| places(&[Subject::Box(id)], &card.speaker));
    ui.horizontal_wrapped(|ui| {
        badge(ui, finding.severity);
        ui.label(RichText::new(name).strong())
            .on_hover_text(place(finding, &card.speaker));
        ui.label(RichText::new(finding.check).small().color(tokens.text_soft));
    });
    let message = Label::new(sentence_of(finding, &card.speaker))
        .wrap()
        .selectable(false)
        .sense(Sense::CLICK | Sense::FOCUSABLE);
    let response = ui
        .add(message)
        .on_hover_cursor(egui::CursorIcon::PointingHand)
        .on_hover_text("Show the places in the drawings.");
    if response.clicked() {
        let chosen = card.is_chosen(finding);
        card.queue.push(Command::Do(Action::SelectFinding(
            (!chosen).then(|| FindingKey::of(finding)),
        )));
    }
    if response.has_focus() {
        let stroke = Stroke::new(1.0, tokens.accent);
        let around = response.rect.expand(2.0);
        ui.painter()
            .rect_stroke(around, 2.0, stroke, egui::StrokeKind::Outside);
    }
    response
}

/// The headline; the name of its box stands above it already.
fn sentence_of(finding: &Finding, speaker: &Speaker<'_>) -> String {
    let its_box = finding.subjects.first().and_then(|it| it.box_id());
    match its_box {
        Some(id) => headline_in_box(finding, id, speaker),
        None => headline(finding, speaker),
    }
}

fn reasons_ui(ui: &mut Ui, card: &FindingCard<'_>, finding: &Finding) {
    if finding.reasons.is_empty() {
        return;
    }
    CollapsingHeader::new(RichText::new("Details").small()).show(ui, |ui| {
        for line in reasons(finding, &card.speaker) {
            ui.add(Label::new(RichText::new(line).small()).wrap());
        }
    });
}

/// A remedy: its button previews it under the pointer and with the keyboard on it.
fn remedy_ui(
    ui: &mut Ui,
    card: &mut FindingCard<'_>,
    at: &RemedyAt,
    (finding, remedy): (&Finding, &Remedy),
) {
    let title = flapwright_words::remedy(remedy, &card.speaker);
    let effect = effect(remedy, &card.speaker);
    let button = ui.add(Button::new(&title).wrap()).on_hover_text(&effect);
    if button.hovered() || button.has_focus() {
        card.preview.point_at(at.clone());
    }
    if button.clicked() {
        card.queue.push(Command::Do(Action::ApplyRemedy {
            finding: at.finding.clone(),
            remedy: at.remedy,
        }));
    }
    ui.horizontal_top(|ui| {
        let kept = card.preview.keeps(at);
        let switch = Button::selectable(kept, RichText::new("Preview").small())
            .small()
            .frame_when_inactive(true);
        let button = ui
            .add(switch)
            .accessible_name(format!("Preview: {title}"))
            .on_hover_text("Keep the drawings showing what this remedy would make.");
        if button.clicked() {
            card.queue.push(Command::KeepPreview {
                finding: at.finding.clone(),
                remedy: at.remedy,
            });
        }
        let tokens = tokens(ui);
        if card.document.is_safe(finding, at.remedy) {
            ui.label(bold("safe").small().color(tokens.good))
                .on_hover_text("Clears its finding and adds no stop; may be applied unseen.");
        }
        let effect = RichText::new(effect).small().color(tokens.text_soft);
        ui.add(Label::new(effect).wrap());
    });
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
