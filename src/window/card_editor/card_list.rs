//! The cards at hand: blanks, half typed ones, those of the job, the library.

use egui::{Button, CentralPanel, Frame, Key, Label, Margin, Panel, RichText, ScrollArea, Ui};
use flapwright_model::card::{Card, OpeningKind};
use flapwright_model::card_difference::differences;
use flapwright_model::job::{Job, UsedCard};
use flapwright_rules::proof::proof;
use flapwright_words::Speaker;

use super::{CardCommand, CardList, library_ui};
use crate::window::command::Command;
use crate::window::tokens::{bold, tokens};

/// Shows the desk. Escape goes back to the job.
pub(super) fn card_list_ui(
    ui: &mut Ui,
    desk: &mut CardList,
    job: &Job,
    asked: bool,
    queue: &mut Vec<Command>,
) {
    let nothing = ui.memory(|memory| memory.focused().is_none());
    if !asked && nothing && ui.input(|input| input.key_pressed(Key::Escape)) {
        queue.push(Command::Card(CardCommand::Close));
    }
    let bar = Frame::side_top_panel(ui.style()).inner_margin(Margin::symmetric(8, 6));
    Panel::top("desk bar").frame(bar).show(ui, |ui| {
        ui.horizontal(|ui| {
            if ui.button("Back to the job").clicked() {
                queue.push(Command::Card(CardCommand::Close));
            }
            ui.label(bold("Fitting cards").size(15.0));
            ui.label(
                RichText::new("Esc goes back")
                    .small()
                    .color(tokens(ui).text_soft),
            );
        });
    });
    let side = Frame::side_top_panel(ui.style()).inner_margin(Margin::same(10));
    let half = (ui.available_width() * 0.5).max(360.0);
    Panel::left("desk cards")
        .exact_size(half)
        .resizable(false)
        .frame(side)
        .show(ui, |ui| {
            ScrollArea::vertical()
                .auto_shrink([false, false])
                .show(ui, |ui| {
                    blanks_ui(ui, queue);
                    half_typed_ui(ui, desk, queue);
                    job_ui(ui, desk, job, queue);
                });
        });
    CentralPanel::default()
        .frame(Frame::central_panel(ui.style()).inner_margin(Margin::same(10)))
        .show(ui, |ui| library_ui::library_ui(ui, desk, job, queue));
}

fn blanks_ui(ui: &mut Ui, queue: &mut Vec<Command>) {
    ui.label(bold("New card from a blank"));
    let told = "Everything that belongs to the kind but the numbers.";
    ui.label(RichText::new(told).small().color(tokens(ui).text_soft));
    ui.horizontal_wrapped(|ui| {
        for (number, kind) in OpeningKind::ALL.into_iter().enumerate() {
            let button = ui.button(kind.words());
            if number == 0 && ui.memory(|memory| memory.focused().is_none()) {
                button.request_focus();
            }
            if button.clicked() {
                queue.push(Command::Card(CardCommand::New(kind)));
            }
        }
    });
    ui.add_space(4.0);
    if ui
        .button("Import a card's file…")
        .on_hover_text("Or drop the file on the window.")
        .clicked()
    {
        queue.push(Command::Card(CardCommand::Import));
    }
    ui.add_space(10.0);
}

fn half_typed_ui(ui: &mut Ui, desk: &CardList, queue: &mut Vec<Command>) {
    if desk.editors.is_empty() {
        return;
    }
    ui.label(bold("Being typed"));
    for (index, editor) in desk.editors.iter().enumerate() {
        ui.horizontal(|ui| {
            let title = editor.title();
            if ui.button(format!("Go on with {title}")).clicked() {
                queue.push(Command::Card(CardCommand::Resume(index)));
            }
            let (missing, wrong) = editor.live.problems.counts();
            let told = match (editor.card(), editor.unsaved()) {
                (Some(_), false) => "complete, kept".to_owned(),
                (Some(_), true) => "complete, not kept yet".to_owned(),
                (None, _) => format!("{missing} missing, {wrong} wrong"),
            };
            ui.label(RichText::new(told).color(tokens(ui).text_soft));
            let words = if editor.unsaved() {
                "Throw away…"
            } else {
                "Close"
            };
            if ui
                .small_button(words)
                .on_hover_text(format!("Takes {title} off the desk."))
                .clicked()
            {
                queue.push(Command::Card(CardCommand::Drop(index)));
            }
        });
    }
    ui.add_space(10.0);
}

fn job_ui(ui: &mut Ui, desk: &CardList, job: &Job, queue: &mut Vec<Command>) {
    ui.label(bold("Cards of this job"));
    if job.cards.is_empty() {
        ui.label(RichText::new("None yet.").color(tokens(ui).text_soft));
    }
    for UsedCard { id, card } in &job.cards {
        Frame::group(ui.style())
            .fill(tokens(ui).card)
            .show(ui, |ui| {
                ui.set_min_width(ui.available_width());
                ui.horizontal(|ui| {
                    ui.label(bold(&card.name));
                    ui.label(RichText::new(card.kind.words()).color(tokens(ui).text_soft));
                    proved_ui(ui, card, job);
                });
                let mut press = |ui: &mut Ui, words: &str, command: CardCommand| {
                    let button = ui.add(Button::new(words).small());
                    if button
                        .accessible_name(format!("{words} {}", card.name))
                        .clicked()
                    {
                        queue.push(Command::Card(command));
                    }
                };
                ui.horizontal_wrapped(|ui| {
                    press(ui, "Edit", CardCommand::Edit(*id));
                    press(ui, "Export…", CardCommand::Export(*id));
                    let other = desk.shelf.named(&card.name).next();
                    match other {
                        None => press(ui, "Put in library", CardCommand::JobCardIntoLibrary(*id)),
                        Some(other) => {
                            let moved = differences(card, other.card()).len();
                            let soft = tokens(ui).text_soft;
                            if moved == 0 {
                                ui.label(RichText::new("as in the library").small().color(soft));
                            } else {
                                let told = format!("the library's differs in {moved}");
                                ui.label(RichText::new(told).small().color(tokens(ui).caution));
                                press(ui, "What moved…", CardCommand::Compare(*id));
                                if !other.shared {
                                    press(
                                        ui,
                                        "Put in library",
                                        CardCommand::JobCardIntoLibrary(*id),
                                    );
                                }
                            }
                        }
                    }
                });
            });
    }
}

/// Whether a card is proved, in a word.
pub(super) fn proved_ui(ui: &mut Ui, card: &Card, job: &Job) {
    let proof = proof(card);
    let (word, ink) = if proof.is_proved() {
        ("proved", tokens(ui).good)
    } else {
        ("not proved", tokens(ui).caution)
    };
    ui.add(Label::new(RichText::new(word).color(ink)).selectable(false))
        .on_hover_text(Speaker::without_names(job.unit).say(&proof.message()));
}
