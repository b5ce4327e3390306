//! The box itself: name, number, outer size, place, how it is put together.

use egui::{CollapsingHeader, Ui};
use flapwright_model::field::{BoxField, FieldRef};

use super::{Form, frame_form, group, panels_form};

/// The section *Box*.
pub(crate) fn box_ui(ui: &mut Ui, form: &mut Form<'_>) {
    use BoxField as F;
    let Some(id) = form.wall_box().map(|it| it.id) else {
        return;
    };
    let of = |field| FieldRef::Box(id, field);
    form.fields(ui, [F::Name, F::Quantity].map(of));
    group(ui, "Outer size");
    form.fields(ui, [F::Width, F::Height, F::Depth].map(of));
    group(ui, "Place");
    form.fields(ui, [F::AlongWall, F::AboveFloor].map(of));
    group(ui, "Corner joint");
    form.field(ui, of(F::Joint));
    ui.add_space(4.0);
    for (title, body) in [
        (
            "Panels",
            panels_form::panels_ui as fn(&mut Ui, &mut Form<'_>),
        ),
        ("Back", panels_form::back_ui),
        ("Face frame", frame_form::frame_ui),
    ] {
        CollapsingHeader::new(title)
            .id_salt(title)
            .show(ui, |ui| body(ui, form));
    }
}
