//! The face frame.

use egui::Ui;
use flapwright_model::change::set_frame;
use flapwright_model::field::{BoxField, FieldRef};

use super::Form;
use crate::window::fields::choice::tick;

/// The face frame, if there is one.
pub(crate) fn frame_ui(ui: &mut Ui, form: &mut Form<'_>) {
    let Some(shown) = form.wall_box() else { return };
    let (id, has) = (shown.id, shown.frame.is_some());
    if let Some(with) = tick(ui, "with a face frame", has) {
        form.press("face frame", set_frame(form.job, id, with));
    }
    let of = |field| FieldRef::Box(id, field);
    form.fields(
        ui,
        [BoxField::FrameThickness, BoxField::FrameMaterial].map(of),
    );
    form.edges(ui, |edge| of(BoxField::FrameMember(edge)));
    form.edges(ui, |edge| of(BoxField::FrameOverhang(edge)));
    form.field(ui, of(BoxField::ShelfRail));
}
