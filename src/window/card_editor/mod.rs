//! Fitting cards in the window: the desk with the cards at hand, and the form in which one is typed.
//!
//! A card is typed step by step beside a live picture. What is typed is a [`CardDraft`], so that
//! nothing is lost however wrong or incomplete it is; it becomes a card of the job only when it
//! resolves to one. The form has an undo of its own.

mod apply;
mod board;
mod bores;
mod card_list;
mod command;
mod differs;
mod editor_ui;
mod form;
mod library_ui;
mod live;
mod load_forms;
mod measured;
mod picture;
mod proof_step;
mod rows;
mod sizes;
mod step;
mod table;
mod table_keys;
mod undo;

use std::collections::HashMap;
use std::path::PathBuf;

use egui::{Id, Ui};
use flapwright_files::library::{Library, Shelf, own_folder};
use flapwright_model::card::Card;
use flapwright_model::card_draft::CardDraft;
use flapwright_model::job::Job;
use flapwright_model::material::Material;

pub(crate) use self::apply::looks_like_card;
pub use self::command::CardCommand;
pub(crate) use self::differs::{CardDiffers, differs_ui};
use self::library_ui::Search;
use self::live::Live;
use self::measured::Measured;
use self::picture::PictureState;
use self::sizes::SizesState;
use self::step::Step;
use self::table::TableState;
use self::undo::Undo;
use super::command::Command;

/// Keys of the card form, for the list of keys.
pub(crate) const KEYS: [(&str, &str); 9] = [
    (
        "Ctrl+PageDown, Ctrl+PageUp",
        "card form: next step, step before",
    ),
    ("Ctrl+1 to Ctrl+9", "card form: that step"),
    (
        "Enter, Shift+Enter",
        "card form: next field, field before; in a table down and up",
    ),
    (
        "Ctrl+Enter, Ctrl+Backspace",
        "card form: add or remove a row of a table",
    ),
    (
        "F4, Shift+F4",
        "card form: next datum of a distance, next choice",
    ),
    ("Ctrl+D", "card form: as in the row above"),
    (
        "F8, Shift+F8",
        "card form: next field that is empty or wrong, the one before",
    ),
    (
        "Ctrl+S, Ctrl+Shift+S",
        "card form: use the card in this job, save it as a file",
    ),
    ("Ctrl+L", "card form: put the card in the library"),
];

/// What stands over the job: nothing, the desk, or a card that is typed.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum Page {
    /// The cards at hand.
    List,
    /// The card of that index.
    Editor(usize),
}

/// The cards at hand and those that are being typed.
#[derive(Default)]
pub(crate) struct CardList {
    /// What stands over the job.
    pub(crate) page: Option<Page>,
    /// Cards that are being typed.
    editors: Vec<CardEditor>,
    /// Grows with every card that is opened.
    salt: u64,
    /// The library, once it was looked for.
    library: Option<Library>,
    /// Folders of others that are only read.
    pub(crate) shared: Vec<PathBuf>,
    /// What the library held when it was last looked at.
    shelf: Shelf,
    /// Why there is no library.
    no_library: Option<String>,
    /// What the library is searched for.
    search: Search,
    /// Text that waits for the name of its file.
    saving: Option<String>,
}

/// One card that is being typed.
pub(crate) struct CardEditor {
    /// Tells its fields from those of others.
    salt: u64,
    /// What is typed.
    draft: CardDraft,
    /// The draft as it was last put somewhere safe.
    kept: CardDraft,
    undo: Undo,
    step: Step,
    sheets: HashMap<Id, TableState>,
    /// The controls of the last frame that the keyboard can be sent to.
    owned: Vec<Id>,
    sizes: SizesState,
    measured: Option<Measured>,
    picture: PictureState,
    /// What is known of the draft, and of which state and row of it.
    live: Live,
    live_row: usize,
    /// Grows with every change of the draft.
    revision: u64,
    /// The row of the sizes that the picture shows.
    row: usize,
    /// A field that the keyboard is to be sent to.
    wanted: Option<String>,
    /// Whether the first field of the step is to get the keyboard.
    first: bool,
    /// Whether something had the keyboard in the last frame.
    had_focus: bool,
    /// Which problem F8 showed last.
    problem: Option<usize>,
}

impl CardEditor {
    fn new(salt: u64, draft: CardDraft, materials: &[Material]) -> Self {
        let mut draft = draft;
        draft.sizes.tidy();
        Self {
            salt,
            kept: draft.clone(),
            undo: Undo::new(draft.clone()),
            live: Live::of(&draft, materials, 0),
            draft,
            step: Step::default(),
            sheets: HashMap::new(),
            owned: Vec::new(),
            sizes: SizesState::default(),
            measured: None,
            picture: PictureState::default(),
            live_row: 0,
            revision: 0,
            row: 0,
            wanted: None,
            first: true,
            had_focus: false,
            problem: None,
        }
    }

    /// Whether something would be lost with it.
    fn unsaved(&self) -> bool {
        self.draft != self.kept
    }

    /// Its name in lists.
    fn title(&self) -> String {
        let name = self.draft.name.trim();
        if name.is_empty() {
            format!("new {}", self.draft.kind.words())
        } else {
            name.to_owned()
        }
    }

    /// The card, once it is complete.
    const fn card(&self) -> Option<&Card> {
        self.live.card.as_ref()
    }

    /// Notes what changed in the draft; `field` is the text field that has the keyboard.
    fn look_again(&mut self, materials: &[Material], field: Option<Id>) {
        let changed = self.undo.note(&self.draft, field);
        if changed || self.live_row != self.row {
            self.live = Live::of(&self.draft, materials, self.row);
            self.live_row = self.row;
            self.revision += 1;
        }
    }

    fn step_back(&mut self, redo: bool) {
        let state = if redo {
            self.undo.redo()
        } else {
            self.undo.undo()
        };
        if let Some(draft) = state {
            self.draft = draft;
            // Not told by `note`, which already knows this state.
            self.live_row = usize::MAX;
        }
    }
}

impl CardList {
    /// The open card.
    fn editor(&mut self) -> Option<&mut CardEditor> {
        match self.page? {
            Page::Editor(index) => self.editors.get_mut(index),
            Page::List => None,
        }
    }

    /// Names of the cards that are typed and kept nowhere else.
    pub(crate) fn unsaved(&self) -> Vec<String> {
        self.editors
            .iter()
            .filter(|editor| editor.unsaved())
            .map(CardEditor::title)
            .collect()
    }

    /// Opens a card for typing.
    fn open(&mut self, draft: CardDraft, materials: &[Material]) {
        self.salt += 1;
        self.editors
            .push(CardEditor::new(self.salt, draft, materials));
        self.page = Some(Page::Editor(self.editors.len() - 1));
    }

    /// Looks at the folders of the library again.
    fn look_at_library(&mut self) {
        if self.library.is_none() {
            match own_folder() {
                Ok(own) => self.library = Some(Library::new(own, self.shared.clone())),
                Err(error) => self.no_library = Some(error.to_string()),
            }
        }
        if let Some(library) = &self.library {
            self.shelf = library.shelf();
        }
    }
}

/// Shows the desk or the open card in the whole window; `asked` says that a question stands over it.
pub(crate) fn cards_ui(
    ui: &mut Ui,
    desk: &mut CardList,
    job: &Job,
    asked: bool,
    queue: &mut Vec<Command>,
) {
    match desk.page {
        None => {}
        Some(Page::List) => card_list::card_list_ui(ui, desk, job, asked, queue),
        Some(Page::Editor(_)) => {
            if let Some(editor) = desk.editor() {
                editor_ui::editor_ui(ui, editor, job, asked, queue);
            }
        }
    }
}
