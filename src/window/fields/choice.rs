//! One of a few: a list that drops down, a row of buttons, a box to tick.

use egui::{ComboBox, Ui};

use super::text::row_word;
use super::{Change, field_id};
use crate::window::tokens::toggle;

/// A choice that was made in one go.
fn made<T>(path: &str, value: T) -> Change<T> {
    Change {
        value,
        field: field_id(path),
        typed: None,
        running: false,
    }
}

/// A list that drops down.
pub(crate) fn pick<T: Clone + PartialEq>(
    ui: &mut Ui,
    path: &str,
    name: &str,
    word: &str,
    now: &T,
    all: &[(T, String)],
) -> Option<Change<T>> {
    let mut chosen = None;
    ui.horizontal(|ui| {
        row_word(ui, word);
        let shown = all
            .iter()
            .find(|(value, _)| value == now)
            .map_or("", |(_, text)| text);
        ComboBox::from_id_salt(path)
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
            .accessible_name(name);
    });
    chosen.map(|value| made(path, value))
}

/// A row of buttons, one of them down.
pub(crate) fn buttons<T: Clone + PartialEq>(
    ui: &mut Ui,
    path: &str,
    word: &str,
    now: &T,
    all: &[(T, &str)],
) -> Option<Change<T>> {
    let chosen = ui.horizontal_wrapped(|ui| {
        row_word(ui, word);
        row_of(ui, word, now, all)
    });
    chosen.inner.map(|value| made(path, value))
}

/// A row of buttons under a heading that says what they are for.
pub(crate) fn buttons_under<T: Clone + PartialEq>(
    ui: &mut Ui,
    path: &str,
    heading: &str,
    now: &T,
    all: &[(T, &str)],
) -> Option<Change<T>> {
    let chosen = ui
        .horizontal_wrapped(|ui| row_of(ui, heading, now, all))
        .inner;
    chosen.map(|value| made(path, value))
}

fn row_of<T: Clone + PartialEq>(ui: &mut Ui, word: &str, now: &T, all: &[(T, &str)]) -> Option<T> {
    let mut chosen = None;
    for (value, text) in all {
        let button = toggle(ui, value == now, *text);
        if button.accessible_name(format!("{word}: {text}")).clicked() && value != now {
            chosen = Some(value.clone());
        }
    }
    chosen
}

/// A box to tick.
pub(crate) fn tick(ui: &mut Ui, path: &str, text: &str, now: bool) -> Option<Change<bool>> {
    let mut ticked = now;
    let clicked = ui.checkbox(&mut ticked, text).changed();
    (clicked && ticked != now).then(|| made(path, ticked))
}
