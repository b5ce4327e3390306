//! What a door carries and weighs: handle and mass.

use egui::Ui;
use flapwright_model::change::{set_handle, set_handle_screws, set_typed_mass};
use flapwright_model::door::Door;
use flapwright_model::field::{DoorField, FieldRef};

use super::Form;
use crate::window::fields::choice::tick;

/// The handle, if there is one.
pub(crate) fn handle_ui(ui: &mut Ui, form: &mut Form<'_>, door: &Door) {
    let Some(id) = form.wall_box().map(|it| it.id) else {
        return;
    };
    let of = |field| FieldRef::Door(id, door.id, field);
    if let Some(with) = tick(ui, "with a handle", door.handle.is_some()) {
        form.press("handle", set_handle(form.job, id, door.id, with));
    }
    let Some(handle) = &door.handle else { return };
    form.fields(ui, DoorField::HANDLE.map(of));
    if let Some(with) = tick(ui, "screwed through", handle.screws.is_some()) {
        let edit = set_handle_screws(form.job, id, door.id, with);
        form.press("handle screws", edit);
    }
    form.fields(
        ui,
        [DoorField::ScrewSpacing, DoorField::ScrewDiameter].map(of),
    );
}

/// Mass by build-up, and as measured.
pub(crate) fn mass_ui(ui: &mut Ui, form: &mut Form<'_>, door: &Door) {
    let Some(id) = form.wall_box().map(|it| it.id) else {
        return;
    };
    if let Some(report) = form.inspection.door(door.id) {
        let built = &report.built_mass;
        let text = format!(
            "By its build-up: {:.2} kg ({:.2} to {:.2} kg)",
            built.likely, built.low, built.high
        );
        ui.label(text);
    }
    if let Some(with) = tick(ui, "measured mass", door.typed_mass.is_some()) {
        form.press("measured mass", set_typed_mass(form.job, id, door.id, with));
    }
    let mass = [DoorField::Mass, DoorField::MassRange];
    form.fields(ui, mass.map(|it| FieldRef::Door(id, door.id, it)));
}
