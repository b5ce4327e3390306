//! The few kinds of field that all forms are made of.
//!
//! A field shows a value of the job and gives back a [`Change`] when another one was typed,
//! dragged or chosen. What is typed but not taken stays in [`Fields`], with the reason beside it.

pub(crate) mod choice;
pub(crate) mod number;
pub(crate) mod quantity;
pub(crate) mod text;

use std::collections::HashMap;

use egui::Id;

/// Another value for a field.
#[derive(Debug, Clone, PartialEq)]
pub(crate) struct Change<T> {
    /// The new value.
    pub(crate) value: T,
    /// The field.
    pub(crate) field: Id,
    /// The text that was typed, where there was one.
    pub(crate) typed: Option<String>,
    /// Whether more of the same is to come: a drag, or a run of keys.
    pub(crate) running: bool,
}

/// What is typed but not taken.
#[derive(Debug, Clone)]
struct Draft {
    text: String,
    /// What the field showed when typing began.
    shown: String,
    problem: Option<String>,
}

/// A drag on the name of a field.
#[derive(Debug, Clone, Copy)]
struct Drag {
    field: Id,
    start: f64,
}

/// What the fields remember between frames.
#[derive(Debug, Default)]
pub(crate) struct Fields {
    drafts: HashMap<Id, Draft>,
    drag: Option<Drag>,
    typing: bool,
    /// What fields are searched for; nothing typed shows the whole form.
    pub(crate) search: String,
}

impl Fields {
    /// Whether some field holds text that is not taken yet and has the keyboard: then undo is its
    /// own.
    pub(crate) const fn typing(&self) -> bool {
        self.typing
    }

    /// A text of the form's own, such as the search, is typed in.
    pub(crate) const fn types(&mut self, typing: bool) {
        self.typing |= typing;
    }

    /// Begins a frame.
    pub(crate) const fn begin(&mut self) {
        self.typing = false;
    }

    /// The change that a field asked for was made.
    pub(crate) fn accept(&mut self, field: Id) {
        self.drafts.remove(&field);
    }

    /// The change that a field asked for was refused: its text stays, with the reason.
    pub(crate) fn refuse(&mut self, field: Id, typed: Option<String>, problem: String) {
        let draft = self.drafts.entry(field).or_insert_with(|| Draft {
            text: typed.clone().unwrap_or_default(),
            shown: String::new(),
            problem: None,
        });
        if let Some(typed) = typed {
            draft.text = typed;
        }
        draft.problem = Some(problem);
    }

    /// Forgets everything that is typed but not taken.
    pub(crate) fn clear(&mut self) {
        *self = Self {
            search: std::mem::take(&mut self.search),
            ..Self::default()
        };
    }

    /// Why the text of a field is not taken.
    pub(crate) fn problem(&self, field: Id) -> Option<&str> {
        self.drafts.get(&field)?.problem.as_deref()
    }
}

/// The control of a field, or of what has another name of its own; the same in every frame.
pub(crate) fn field_id(name: impl std::hash::Hash + std::fmt::Debug) -> Id {
    Id::unique(("field", name))
}
