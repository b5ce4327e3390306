//! The job's own data: names, limits of practice, severity of checks, conventions of the drawings.

use egui::Ui;
use flapwright_model::field::{FieldRef, HeadField, Value};
use flapwright_model::job::OpeningMark;

use super::limits_form::limits_ui;
use super::severity_form::severities_ui;
use super::{Form, group, note};
use crate::window::today::today;

/// The section *Settings*.
pub(crate) fn head_ui(ui: &mut Ui, form: &mut Form<'_>) {
    form.field(ui, FieldRef::Head(HeadField::Name));
    form.field(ui, FieldRef::Head(HeadField::Unit));
    limits_ui(ui, form);
    severities_ui(ui, form);
    group(ui, "Drawings and sheets");
    form.field(ui, FieldRef::Head(HeadField::OpeningMark));
    let practice = match form.job.settings.opening_mark {
        OpeningMark::ApexAtOpeningSide => {
            "Base at the hinge, continuous lines: Austrian, German and Hungarian practice."
        }
        OpeningMark::ApexAtHinge => "Dashed lines: practice in the USA.",
    };
    note(ui, practice);
    form.field(ui, FieldRef::Head(HeadField::Paper));
    form.field(ui, FieldRef::Head(HeadField::InchesOnSheets));
    group(ui, "Title block");
    form.fields(ui, HeadField::TITLE_BLOCK.map(FieldRef::Head));
    let button = ui.button("Fill in today's date");
    if button
        .on_hover_text("The date of today as date of issue; undo takes it back.")
        .clicked()
    {
        let date = Value::Text(today().into());
        form.put(FieldRef::Head(HeadField::DateOfIssue), date);
    }
}
