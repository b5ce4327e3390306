//! The limits of practice that the checks go by; hovering one tells its source.

use egui::Ui;
use flapwright_model::field::{FieldRef, HeadField};

use super::{Form, group};

/// The limits, by what they are about.
pub(crate) fn limits_ui(ui: &mut Ui, form: &mut Form<'_>) {
    for (title, fields) in HeadField::LIMITS {
        group(ui, title);
        form.fields(ui, fields.iter().copied().map(FieldRef::Head));
    }
}
