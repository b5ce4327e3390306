//! One of a few: a list that drops down, a row of buttons, a box to tick.

use egui::{ComboBox, Id, Ui};

use super::Change;
use super::text::row_word;
use crate::window::tokens::toggle;

/// A choice that was made in one go.
const fn made<T>(field: Id, value: T) -> Change<T> {
    Change {
        value,
        field,
        typed: None,
        running: false,
    }
}

/// What a choice is called.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Called<'a> {
    /// The control.
    pub(crate) id: Id,
    /// Its full name, as a screen reader says it.
    pub(crate) name: &'a str,
    /// The word before it.
    pub(crate) word: &'a str,
    /// What it means, shown on hover.
    pub(crate) meaning: &'a str,
}

/// A list that drops down.
pub(crate) fn pick<T: Clone + PartialEq>(
    ui: &mut Ui,
    called: Called<'_>,
    now: &T,
    all: &[(T, String)],
) -> Option<Change<T>> {
    let mut chosen = None;
    ui.horizontal(|ui| {
        row_word(ui, called.word, called.meaning);
        let shown = all
            .iter()
            .find(|(value, _)| value == now)
            .map_or("", |(_, text)| text);
        ComboBox::from_id_salt(called.id)
            .selected_text(shown)
            .width((ui.available_width() - 8.0).max(80.0))
            .truncate()
            .show_ui(ui, |ui| {
                for (value, text) in all {
                    if ui.selectable_label(value == now, text).clicked() && value != now {
                        chosen = Some(value.clone());
                    }
                }
            })
            .response
            .accessible_name(called.name);
    });
    chosen.map(|value| made(called.id, value))
}

/// A row of buttons, one of them down; `name: words` is what a screen reader says of each.
pub(crate) fn buttons<T: Copy + PartialEq>(
    ui: &mut Ui,
    called: Called<'_>,
    now: T,
    all: &[(T, &str)],
) -> Option<Change<T>> {
    let chosen = ui.horizontal_wrapped(|ui| {
        row_word(ui, called.word, called.meaning);
        row_of(ui, called.name, now, all)
    });
    chosen.inner.map(|value| made(called.id, value))
}

/// A row of buttons under a heading that says what they are for.
pub(crate) fn buttons_under<T: Copy + PartialEq>(
    ui: &mut Ui,
    heading: &str,
    now: T,
    all: &[(T, &str)],
) -> Option<T> {
    let row = ui.horizontal_wrapped(|ui| row_of(ui, heading, now, all));
    row.inner
}

fn row_of<T: Copy + PartialEq>(ui: &mut Ui, name: &str, now: T, all: &[(T, &str)]) -> Option<T> {
    let mut chosen = None;
    for (value, text) in all {
        let button = toggle(ui, *value == now, *text);
        if button.accessible_name(format!("{name}: {text}")).clicked() && *value != now {
            chosen = Some(*value);
        }
    }
    chosen
}

/// A box to tick; what it is now, if that was changed.
pub(crate) fn tick(ui: &mut Ui, text: &str, now: bool) -> Option<bool> {
    let mut ticked = now;
    let clicked = ui.checkbox(&mut ticked, text).changed();
    (clicked && ticked != now).then_some(ticked)
}
