//! Questions, messages and lists that stand over the window; and the system's file windows.

mod about;
pub(crate) mod accept_dialog;
mod check_page;
mod drop_card;
pub(crate) mod file_dialogs;
mod message;
mod path_dialog;
mod rfd_dialogs;
mod unsaved;

use std::path::PathBuf;

use egui::{Context, Id, Ui};

use self::accept_dialog::AcceptDialog;
use self::file_dialogs::Ask;
pub(crate) use self::rfd_dialogs::SystemDialogs;
use super::app::Purpose;
use super::card_editor::{CardDiffers, differs_ui};
use super::command::Command;
use super::fields::Fields;
use super::sheets_dialog::{SheetsDialog, sheets_ui};
use super::side_panel::{StrutDialog, strut_ui};
use flapwright_session::action_table::{ACTIONS, ActionInfo};
use flapwright_session::document::Document;

/// What to go on with once unsaved changes are dealt with.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(crate) enum Next {
    /// Close the window.
    Close,
    /// A new job.
    New,
    /// Ask for a file and open it.
    Open,
    /// Open this file.
    OpenPath(PathBuf),
}

/// The one thing that stands over the window.
#[derive(Debug, Clone, PartialEq)]
pub(crate) enum Dialog {
    /// What is to become of unsaved changes before going on.
    Unsaved(Next),
    /// Something to read.
    Message {
        /// Heading.
        title: String,
        /// Text, as long as it is.
        text: String,
    },
    /// Asks for a path where the system has no file window.
    TypePath {
        /// What is to be done with it.
        purpose: Purpose,
        /// What for.
        ask: Ask,
        /// What is typed.
        text: String,
        /// Why the last one was not taken.
        problem: Option<String>,
    },
    /// How to write the sheets.
    Sheets(Box<SheetsDialog>),
    /// What differs between a card of the job and another one of its name.
    CardDiffers(Box<CardDiffers>),
    /// Whether to throw a half typed card away.
    DropCard {
        /// Its place on the desk.
        index: usize,
        /// Its name.
        title: String,
    },
    /// Whether to close the window on these half typed cards.
    LoseCards(Vec<String>),
    /// Where the anchors of a strut may be, and where they are best.
    PlaceStrut(Box<StrutDialog>),
    /// Why a finding is accepted.
    Accept(AcceptDialog),
    /// The page of the check of that name.
    Page(&'static str),
    /// All keys.
    Shortcuts,
    /// What this program is.
    About,
}

/// Shows what stands over the window. `progress` is that of a running search for anchors.
pub(crate) fn dialog_ui(
    ctx: &Context,
    dialog: &mut Dialog,
    document: &Document,
    (fields, progress): (&mut Fields, Option<f32>),
    queue: &mut Vec<Command>,
) {
    let job = document.job();
    match dialog {
        Dialog::Unsaved(next) => unsaved::unsaved_ui(ctx, &job.name, next, queue),
        Dialog::Message { title, text } => message::message_ui(ctx, title, text, queue),
        Dialog::TypePath {
            ask, text, problem, ..
        } => {
            path_dialog::path_ui(ctx, ask, text, problem.as_deref(), queue);
        }
        Dialog::Sheets(sheets) => sheets_ui(ctx, sheets, document, queue),
        Dialog::CardDiffers(differs) => differs_ui(ctx, differs, queue),
        Dialog::DropCard { index, title } => drop_card::drop_ui(ctx, *index, title, queue),
        Dialog::LoseCards(cards) => drop_card::lose_ui(ctx, cards, queue),
        Dialog::PlaceStrut(strut) => {
            strut_ui(ctx, strut, job.unit, (fields, progress), queue);
        }
        Dialog::Accept(accept) => accept_dialog::accept_ui(ctx, accept, queue),
        Dialog::Page(name) => check_page::page_ui(ctx, name, queue),
        Dialog::Shortcuts => about::shortcuts_ui(ctx, queue),
        Dialog::About => about::about_ui(ctx, queue),
    }
}

/// A box over the darkened window; gives back whether Escape or a click beside it wants it gone.
fn modal<T>(ctx: &Context, name: &str, add: impl FnOnce(&mut Ui) -> T) -> (T, bool) {
    modal_of(ctx, name, 460.0, add)
}

/// The same of another width.
pub(crate) fn modal_of<T>(
    ctx: &Context,
    name: &str,
    width: f32,
    add: impl FnOnce(&mut Ui) -> T,
) -> (T, bool) {
    let response = egui::Modal::new(Id::unique(("dialog", name))).show(ctx, |ui| {
        ui.set_max_width(width);
        add(ui)
    });
    let gone = response.should_close();
    (response.inner, gone)
}

/// Whether Enter was pressed while no button has the keyboard.
fn entered(ui: &Ui) -> bool {
    let nothing = ui.memory(|memory| memory.focused().is_none());
    nothing && ui.input(|input| input.key_pressed(egui::Key::Enter))
}

/// A row of buttons at the right; gives back the index of the one that was pressed.
pub(crate) fn answers(ui: &mut Ui, words: &[&str]) -> Option<usize> {
    let mut pressed = None;
    ui.add_space(8.0);
    ui.horizontal(|ui| {
        for (index, word) in words.iter().enumerate() {
            let text = if index == 0 {
                super::tokens::bold(*word)
            } else {
                (*word).into()
            };
            if ui
                .add(egui::Button::new(text).min_size(egui::vec2(84.0, 26.0)))
                .clicked()
            {
                pressed = Some(index);
            }
        }
    });
    pressed
}

/// A command that closes what is shown.
pub(super) const fn close() -> Command {
    Command::CloseDialog
}

/// All actions with a key, for the list of keys.
fn keyed() -> impl Iterator<Item = &'static ActionInfo> {
    ACTIONS.iter().filter(|info| !info.keys.is_empty())
}
