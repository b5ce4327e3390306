//! The one place where commands on cards are done.

use std::path::{Path, PathBuf};

use egui::Context;
use flapwright_files::library::{Library, read_record};
use flapwright_files::{read_limited, safe_file_name, write_atomic};
use flapwright_model::card::Card;
use flapwright_model::card_draft::{CardDraft, LARGEST_DRAFT};
use flapwright_model::card_record::{LARGEST_RECORD, Signature};
use flapwright_model::file::write_card;

use flapwright_session::action::Action;
use flapwright_session::outcome::Outcome;

use super::{CardCommand, CardDiffers, CardList, Page};
use crate::window::app::{App, Purpose, release_keyboard};
use crate::window::dialogs::file_dialogs::Ask;
use crate::window::dialogs::{Dialog, Next};
use crate::window::status_line::Status;
use crate::window::today::today;

/// How much of a file is looked at to tell whether it is a card, bytes.
const TELLING: usize = 64 * 1024;

impl App {
    /// Does one thing with cards.
    pub(in crate::window) fn apply_card(&mut self, ctx: &Context, command: CardCommand) {
        match command {
            CardCommand::List => {
                release_keyboard(ctx);
                self.act(ctx, Action::StopDoor);
                self.cards().page = Some(Page::List);
                self.cards().look_at_library();
            }
            CardCommand::Close => {
                release_keyboard(ctx);
                let page = self.card_list().page;
                self.cards().page = match page {
                    Some(Page::Editor(_)) => Some(Page::List),
                    Some(Page::List) | None => None,
                };
            }
            CardCommand::New(kind) => self.open_card(CardDraft::blank(kind)),
            CardCommand::Edit(id) => {
                if let Some(card) = self.job().card_by_id(id) {
                    let draft = CardDraft::of_card(card);
                    self.open_card(draft);
                }
            }
            CardCommand::Resume(index) => {
                if let Some(editor) = self.cards().editors.get_mut(index) {
                    editor.first = true;
                    self.cards().page = Some(Page::Editor(index));
                }
            }
            CardCommand::Drop(index) => self.drop_card(ctx, index),
            CardCommand::DropNow(index) => {
                self.close_dialog();
                if index < self.cards().editors.len() {
                    self.cards().editors.remove(index);
                    self.cards().page = Some(Page::List);
                }
            }
            CardCommand::LoseAll => {
                self.close_dialog();
                self.cards().editors.clear();
                self.cards().page = None;
                self.go_on(ctx, Next::Close);
            }
            CardCommand::Undo | CardCommand::Redo => {
                if let Some(editor) = self.cards().editor() {
                    editor.step_back(command == CardCommand::Redo);
                }
            }
            CardCommand::UseInJob => self.use_typed_card(ctx),
            CardCommand::SaveFile => self.save_typed_card(ctx),
            CardCommand::IntoLibrary => {
                if let Some(card) = self
                    .cards()
                    .editor()
                    .and_then(|editor| editor.card())
                    .cloned()
                {
                    self.put_in_library(ctx, &card);
                }
            }
            CardCommand::Import => self.ask_path(ctx, Purpose::ImportCard, Ask::OpenCard),
            CardCommand::ImportPath(path) => self.import_card(ctx, &path),
            CardCommand::Export(id) => {
                if let Some(card) = self.job().card_by_id(id) {
                    let (text, name) = (write_card(card), card.name.clone());
                    self.ask_card_file(ctx, text, &name);
                }
            }
            CardCommand::JobCardIntoLibrary(id) => {
                if let Some(card) = self.job().card_by_id(id).cloned() {
                    self.put_in_library(ctx, &card);
                }
            }
            CardCommand::FromLibrary(index) => {
                if let Some(card) = self.library_card(index) {
                    self.take_card(ctx, card, "the library");
                }
            }
            CardCommand::EditFromLibrary(index) => {
                if let Some(card) = self.library_card(index) {
                    self.open_card(CardDraft::of_card(&card));
                }
            }
            CardCommand::Compare(id) => {
                let card = self.job().card_by_id(id);
                let other = card.and_then(|card| self.card_list().shelf.named(&card.name).next());
                if let (Some(card), Some(other)) = (card, other) {
                    let differs = CardDiffers::new(card, other.card(), "the library");
                    self.open_dialog(ctx, Dialog::CardDiffers(Box::new(differs)));
                }
            }
            CardCommand::Adopt(card) => {
                self.close_dialog();
                self.put_card(ctx, *card);
            }
            CardCommand::ShareFolder => self.ask_path(ctx, Purpose::ShareCards, Ask::CardFolder),
        }
    }

    fn open_card(&mut self, draft: CardDraft) {
        let materials = self.job().materials.clone();
        self.cards().open(draft, &materials);
    }

    fn library_card(&self, index: usize) -> Option<Card> {
        self.card_list()
            .shelf
            .entries
            .get(index)
            .map(|entry| entry.card().clone())
    }

    /// Throws a half typed card away, after a question where something would be lost.
    fn drop_card(&mut self, ctx: &Context, index: usize) {
        let Some(editor) = self.card_list().editors.get(index) else {
            return;
        };
        if editor.unsaved() {
            let title = editor.title();
            self.open_dialog(ctx, Dialog::DropCard { index, title });
        } else {
            self.apply_card(ctx, CardCommand::DropNow(index));
        }
    }

    /// Puts the open card into the job; a card of the same name gives way to it.
    fn use_typed_card(&mut self, ctx: &Context) {
        let Some(editor) = self.cards().editor() else {
            return;
        };
        let Some(card) = editor.card().cloned() else {
            self.say(Status::failed(
                "Not used: numbers of the card are missing or wrong; F8 shows them",
            ));
            return;
        };
        let draft = editor.draft.clone();
        if self.put_card(ctx, card)
            && let Some(editor) = self.cards().editor()
        {
            editor.kept = draft;
        }
    }

    /// Puts a card into the job as one step; whether the job took it.
    fn put_card(&mut self, ctx: &Context, card: Card) -> bool {
        let outcome = self.session_does(Action::PutCard(Box::new(card)));
        if let Outcome::Refused { problems, .. } = &outcome {
            let lines: Vec<String> = problems
                .iter()
                .map(|it| format!("{} {}; {}", it.field, it.what, it.remedy))
                .collect();
            let text = format!(
                "The job does not go with this card, and is as it was.\n\n{}",
                lines.join("\n")
            );
            self.tell(ctx, "Card not used", text);
            return false;
        }
        self.forget_typing();
        self.tell_outcome(ctx, outcome);
        true
    }

    /// Takes a card from elsewhere into the job; asks where the job has another one of its name.
    fn take_card(&mut self, ctx: &Context, card: Card, from: &str) {
        let mine = self.job().card_named(&card.name);
        let mine = mine.map(|used| &used.card);
        match mine {
            Some(mine) if *mine != card => {
                let differs = CardDiffers::new(mine, &card, from);
                self.open_dialog(ctx, Dialog::CardDiffers(Box::new(differs)));
            }
            Some(_) | None => {
                self.put_card(ctx, card);
            }
        }
    }

    fn put_in_library(&mut self, ctx: &Context, card: &Card) {
        self.cards().look_at_library();
        let Some(library) = self.card_list().library.clone() else {
            let why = self.card_list().no_library.clone().unwrap_or_default();
            self.tell(ctx, "Not put in the library", why);
            return;
        };
        let name = card.name.clone();
        let by = Signature {
            who: self.job().title_block.creator.clone(),
            when: today(),
            note: String::new(),
        };
        let own = self
            .cards()
            .shelf
            .named(&name)
            .find(|entry| !entry.shared)
            .cloned();
        let done = match own {
            Some(entry) => library.revise(&entry, card.clone(), by).map(|changed| {
                if changed {
                    format!("{name} is in the library with a new revision")
                } else {
                    format!("The library has {name} as it is already")
                }
            }),
            None => library
                .add(card.clone(), by)
                .map(|path| format!("{name} is in the library: {}", path.display())),
        };
        match done {
            Ok(told) => {
                self.say(Status::done(told));
                if let Some(editor) = self
                    .cards()
                    .editor()
                    .filter(|editor| editor.card() == Some(card))
                {
                    editor.kept = editor.draft.clone();
                }
                self.cards().look_at_library();
            }
            Err(error) => self.tell(ctx, "Not put in the library", error.to_string()),
        }
    }

    fn save_typed_card(&mut self, ctx: &Context) {
        let Some(editor) = self.cards().editor() else {
            return;
        };
        let text = editor
            .card()
            .map_or_else(|| editor.draft.write(), write_card);
        let name = editor.title();
        self.ask_card_file(ctx, text, &name);
    }

    fn ask_card_file(&mut self, ctx: &Context, text: String, name: &str) {
        self.cards().saving = Some(text);
        let name = format!("{}.ron", safe_file_name(&name.to_lowercase()));
        self.ask_path(ctx, Purpose::SaveCard, Ask::SaveCard { name });
    }

    /// Writes what waits for the name of its file.
    pub(in crate::window) fn save_card_to(&mut self, ctx: &Context, path: &Path) {
        let Some(text) = self.cards().saving.take() else {
            return;
        };
        match write_atomic(path, text.as_bytes()) {
            Ok(()) => {
                self.say(Status::done(format!("Card saved to {}", path.display())));
                if let Some(editor) = self.cards().editor() {
                    let now = editor
                        .card()
                        .map_or_else(|| editor.draft.write(), write_card);
                    if now == text {
                        editor.kept = editor.draft.clone();
                    }
                }
            }
            Err(error) => self.tell(ctx, "Card not saved", error.to_string()),
        }
    }

    /// Reads a card's file into the job, or a half typed one into the form. A file that is neither
    /// changes nothing.
    pub(in crate::window) fn import_card(&mut self, ctx: &Context, path: &Path) {
        match read_record(path) {
            Ok(record) => {
                let name = path
                    .file_name()
                    .unwrap_or(path.as_os_str())
                    .to_string_lossy()
                    .into_owned();
                self.take_card(ctx, record.current.card, &name);
            }
            Err(error) => match half_typed(path) {
                Some(draft) => {
                    self.open_card(draft);
                    self.say(Status::done(format!("Going on with {}", path.display())));
                }
                None => {
                    let text = format!("{error}\n\nNothing was changed.");
                    self.tell(ctx, "Card not imported", text);
                }
            },
        }
    }

    /// Adds a folder of others to the library.
    pub(in crate::window) fn share_cards(&mut self, folder: PathBuf) {
        if !self.card_list().shared.contains(&folder) {
            self.cards().shared.push(folder);
        }
        if let Some(library) = self.cards().library.take() {
            let shared = self.card_list().shared.clone();
            self.cards().library = Some(Library::new(library.own().to_owned(), shared));
        }
        self.cards().look_at_library();
    }

    /// Uses these folders as the library in place of the system's.
    pub fn set_library(&mut self, library: Library) {
        self.cards().library = Some(library);
        self.cards().look_at_library();
    }

    /// The text of the card that is being typed; for tests and recordings.
    #[must_use]
    pub fn typed_card(&self) -> Option<&CardDraft> {
        match self.card_list().page? {
            Page::Editor(index) => {
                let editor = self.card_list().editors.get(index);
                editor.map(|editor| &editor.draft)
            }
            Page::List => None,
        }
    }

    /// Whether the cards stand over the job.
    #[must_use]
    pub const fn cards_shown(&self) -> bool {
        self.card_list().page.is_some()
    }
}

impl CardList {
    /// Whether a question for a file of a card was given up.
    pub(in crate::window) fn give_up_saving(&mut self) {
        self.saving = None;
    }
}

/// A half typed card, if a file holds one.
fn half_typed(path: &Path) -> Option<CardDraft> {
    let text = read_limited(path, LARGEST_DRAFT).ok()?;
    // Every field of a draft may be left out; one of a draft alone must be there.
    let telling = text
        .lines()
        .any(|line| line.trim_start().starts_with("paper:"));
    telling.then(|| CardDraft::read(&text).ok()).flatten()
}

/// Whether a file dropped on the window is a card's and no job's.
pub(crate) fn looks_like_card(path: &Path) -> bool {
    let Ok(text) = read_limited(path, LARGEST_RECORD) else {
        return false;
    };
    let start = &text[..text.floor_char_boundary(TELLING)];
    let begins = |name: &str| {
        start.lines().any(|line| {
            let field = line.trim_start();
            line.len() - field.len() <= 4
                && field
                    .strip_prefix(name)
                    .is_some_and(|it| it.starts_with(':'))
        })
    };
    let job = ["title_block", "settings", "boxes", "materials"];
    let card = ["sides", "side_bores", "kind", "current"];
    !job.into_iter().any(begins) && card.into_iter().any(begins)
}
