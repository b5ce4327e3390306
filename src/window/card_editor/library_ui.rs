//! The library on the desk: what is there, searched by words, kind, load and height.

use egui::{Button, ComboBox, Frame, Label, RichText, ScrollArea, TextEdit, Ui};
use flapwright_files::library::{Entry, Query};
use flapwright_model::card::OpeningKind;
use flapwright_model::job::Job;
use flapwright_model::length::parse_length;
use flapwright_model::measure::Measure;

use super::card_list::proved_ui;
use super::{CardCommand, CardList};
use crate::window::command::Command;
use crate::window::tokens::{bold, tokens};

/// What is typed to search with.
#[derive(Debug, Clone, Default)]
pub(super) struct Search {
    words: String,
    kind: Option<OpeningKind>,
    mass: String,
    height: String,
}

impl Search {
    /// The query, and what cannot be read of it.
    fn query(&self, job: &Job) -> (Query, Option<String>) {
        let mut query = Query {
            text: self.words.clone(),
            kind: self.kind,
            ..Query::default()
        };
        let mut wrong = None;
        if !self.mass.trim().is_empty() {
            match self.mass.trim().replace(',', ".").parse::<f64>() {
                Ok(mass) => query.mass = Some(Measure::Mass.value(mass, job.unit)),
                Err(_) => wrong = Some("The door mass must be a number such as 4.5.".to_owned()),
            }
        }
        if !self.height.trim().is_empty() {
            match parse_length(&self.height, job.unit) {
                Ok(height) => query.height = Some(height),
                Err(error) => wrong = Some(format!("The door height is no length: {error}.")),
            }
        }
        (query, wrong)
    }
}

/// Shows the library.
pub(super) fn library_ui(ui: &mut Ui, desk: &mut CardList, job: &Job, queue: &mut Vec<Command>) {
    ui.horizontal(|ui| {
        ui.label(bold("Library"));
        if let Some(library) = &desk.library {
            let told = library.own().display().to_string();
            ui.add(Label::new(RichText::new(told).small().color(tokens(ui).text_soft)).truncate());
        }
    });
    if let Some(why) = &desk.no_library {
        ui.add(Label::new(RichText::new(why).color(tokens(ui).caution)).wrap());
    }
    search_ui(ui, &mut desk.search, job);
    let (query, wrong) = desk.search.query(job);
    if let Some(wrong) = wrong {
        ui.add(Label::new(RichText::new(wrong).small().color(tokens(ui).stop)).wrap());
    }
    let found: Vec<(usize, &Entry)> = desk
        .shelf
        .entries
        .iter()
        .enumerate()
        .filter(|(_, entry)| entry.answers(&query))
        .collect();
    let told = format!("{} of {} cards", found.len(), desk.shelf.entries.len());
    ui.label(RichText::new(told).small().color(tokens(ui).text_soft));
    ScrollArea::vertical()
        .auto_shrink([false, false])
        .show(ui, |ui| {
            for (index, entry) in found {
                entry_ui(ui, (index, entry), job, queue);
            }
            for broken in &desk.shelf.broken {
                let told = format!("Not usable: {}", broken.error);
                ui.add(Label::new(RichText::new(told).small().color(tokens(ui).caution)).wrap());
            }
            ui.add_space(6.0);
            let hint = "Its cards can be used and copied; nothing is written there.";
            if ui
                .button("Add a shared folder…")
                .on_hover_text(hint)
                .clicked()
            {
                queue.push(Command::Card(CardCommand::ShareFolder));
            }
        });
}

fn search_ui(ui: &mut Ui, search: &mut Search, job: &Job) {
    ui.horizontal_wrapped(|ui| {
        let field = |text: &mut String, hint: &str, width: f32, ui: &mut Ui, name: &str| {
            let field = TextEdit::singleline(text)
                .char_limit(200)
                .hint_text(hint.to_owned())
                .desired_width(width);
            ui.add(field).accessible_name(name);
        };
        field(&mut search.words, "words", 140.0, ui, "Search for words");
        let shown = search.kind.map_or("any kind", OpeningKind::words);
        ComboBox::from_id_salt("search kind")
            .selected_text(shown)
            .width(150.0)
            .show_ui(ui, |ui| {
                ui.selectable_value(&mut search.kind, None, "any kind");
                for kind in OpeningKind::ALL {
                    ui.selectable_value(&mut search.kind, Some(kind), kind.words());
                }
            })
            .response
            .accessible_name("Opening kind to search for");
        let mass = format!("mass, {}", Measure::Mass.symbol(job.unit));
        field(&mut search.mass, &mass, 84.0, ui, "Door mass to search for");
        let height = format!("height, {}", job.unit.symbol());
        field(
            &mut search.height,
            &height,
            100.0,
            ui,
            "Door height to search for",
        );
    });
}

fn entry_ui(ui: &mut Ui, (index, entry): (usize, &Entry), job: &Job, queue: &mut Vec<Command>) {
    let card = entry.card();
    Frame::group(ui.style())
        .fill(tokens(ui).card)
        .show(ui, |ui| {
            ui.set_min_width(ui.available_width());
            ui.horizontal(|ui| {
                ui.label(bold(&card.name));
                ui.label(RichText::new(card.kind.words()).color(tokens(ui).text_soft));
                proved_ui(ui, card, job);
                if entry.shared {
                    ui.label(RichText::new("shared").small().color(tokens(ui).text_soft));
                }
            });
            let now = &entry.record.current;
            let mut told = format!("revision {}", now.number);
            for part in [&now.who, &now.when, &now.note] {
                if !part.trim().is_empty() {
                    told.push_str(", ");
                    told.push_str(part);
                }
            }
            ui.add(Label::new(RichText::new(told).small().color(tokens(ui).text_soft)).wrap());
            let mut press = |ui: &mut Ui, words: &str, command: CardCommand| {
                let button = ui.add(Button::new(words).small());
                if button
                    .accessible_name(format!("{words}: {}", card.name))
                    .clicked()
                {
                    queue.push(Command::Card(command));
                }
            };
            ui.horizontal(|ui| {
                press(ui, "Use in this job", CardCommand::FromLibrary(index));
                press(ui, "Edit a copy", CardCommand::EditFromLibrary(index));
            });
            if !entry.record.older.is_empty() {
                ui.collapsing("Older revisions", |ui| {
                    for older in &entry.record.older {
                        ui.label(format!(
                            "{}: {} {} {}",
                            older.number, older.when, older.who, older.note
                        ));
                    }
                });
            }
        });
}
