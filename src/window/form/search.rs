//! The search for fields: what is typed shows the rows that are called so, in place of the form.

use egui::{RichText, TextEdit, Ui};
use flapwright_model::field::{FieldRef, find_among};

use super::Form;
use crate::window::tokens::tokens;

/// At most so many rows are shown; more words find fewer.
const MOST: usize = 40;

/// Shows the search; whether its rows stand in place of the form.
pub(crate) fn search_ui(ui: &mut Ui, form: &mut Form<'_>) -> bool {
    let field = TextEdit::singleline(&mut form.fields.search)
        .hint_text("find a field")
        .desired_width(f32::INFINITY);
    let field = ui
        .add(field)
        .accessible_name("Find a field")
        .on_hover_text("By words of its name or of what it means: reveal, drill point, packing.");
    form.fields.types(field.has_focus());
    if form.fields.search.trim().is_empty() {
        return false;
    }
    let mut fields = form.wall_box().map(FieldRef::of_box).unwrap_or_default();
    fields.extend(FieldRef::of_job_itself(form.job));
    let found = find_among(&form.fields.search, fields);
    let soft = tokens(ui).text_soft;
    for field in found.iter().take(MOST) {
        let title = field.title(form.job);
        ui.label(RichText::new(title).small().color(soft));
        form.field(ui, *field);
    }
    let told = match found.len() {
        0 => "No field of this box or of the job is called so.".to_owned(),
        count if count > MOST => format!("and {} more", count - MOST),
        _ => return true,
    };
    ui.label(RichText::new(told).color(soft));
    true
}
