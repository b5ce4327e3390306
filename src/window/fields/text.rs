//! A line of text; every key changes the job, and the run of keys is one step.

use egui::{RichText, TextEdit, Ui};

use super::{Change, Fields};
use crate::window::tokens::{LABEL_WIDTH, tokens};

/// Shows word and field in a row, and why the text is not taken.
pub(crate) fn text(
    ui: &mut Ui,
    fields: &Fields,
    field: egui::Id,
    name: &str,
    word: &str,
    meaning: &str,
    value: &str,
) -> Option<Change<String>> {
    let mut typed = fields
        .drafts
        .get(&field)
        .map_or_else(|| value.to_owned(), |d| d.text.clone());
    let change = ui
        .horizontal(|ui| {
            row_word(ui, word, meaning);
            let refused = fields.problem(field).map(|_| tokens(ui).stop);
            let response = ui
                .add(
                    TextEdit::singleline(&mut typed)
                        .id(field)
                        .char_limit(200)
                        .text_color_opt(refused)
                        .desired_width((ui.available_width() - 10.0).max(60.0)),
                )
                .accessible_name(name);
            response.changed().then(|| Change {
                value: typed.clone(),
                field,
                typed: Some(typed.clone()),
                running: true,
            })
        })
        .inner;
    super::number::problem(ui, fields, field);
    change
}

/// The word before a field, in its own column.
pub(crate) fn row_word(ui: &mut Ui, word: &str, meaning: &str) {
    let size = egui::vec2(LABEL_WIDTH, ui.spacing().interact_size.y);
    let layout = egui::Layout::left_to_right(egui::Align::Center);
    ui.allocate_ui_with_layout(size, layout, |ui| {
        ui.set_min_width(LABEL_WIDTH);
        let label = egui::Label::new(RichText::new(word))
            .selectable(false)
            .truncate();
        let label = ui.add(label);
        if !meaning.is_empty() {
            label.on_hover_text(meaning);
        }
    });
}
