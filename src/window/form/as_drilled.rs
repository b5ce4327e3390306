//! The table of bores that an existing door has already.

use egui::{RichText, Ui};
use flapwright_model::change::{add_bore, remove_bore};
use flapwright_model::door::DrilledBore;
use flapwright_model::field::{BoreField, FieldRef};
use flapwright_model::id::{BoxId, DoorId};
use flapwright_model::length::show_length;

use super::Form;
use crate::window::tokens::tokens;

/// The bores, each with its distances.
pub(crate) fn bores_ui(
    ui: &mut Ui,
    form: &mut Form<'_>,
    (box_id, door): (BoxId, DoorId),
    bores: &[DrilledBore],
) {
    if bores.is_empty() {
        ui.label(RichText::new("No bore yet.").color(tokens(ui).text_soft));
    }
    for (at, bore) in (0_u32..).zip(bores) {
        let unit = form.job.unit;
        let title = format!(
            "{}: {} {}, {} {}",
            at + 1,
            bore.from_side.edge().word(),
            show_length(bore.across, unit),
            bore.from_end.edge().word(),
            show_length(bore.along, unit),
        );
        egui::CollapsingHeader::new(title)
            .id_salt(("as drilled", door, at))
            .show(ui, |ui| bore_ui(ui, form, (box_id, door), at));
    }
    let add = ui.button("Add bore");
    if add
        .on_hover_text("One more bore that the door has.")
        .clicked()
    {
        form.press("add bore", add_bore(form.job, box_id, door));
    }
}

fn bore_ui(ui: &mut Ui, form: &mut Form<'_>, (box_id, door): (BoxId, DoorId), at: u32) {
    use BoreField as F;
    let of = |field| FieldRef::Bore(box_id, door, at, field);
    if form.folds() {
        form.field(ui, of(F::Leaf));
    }
    let rest = [
        F::FromSide,
        F::FromEnd,
        F::Across,
        F::Along,
        F::Diameter,
        F::Depth,
        F::Purpose,
    ];
    form.fields(ui, rest.map(of));
    let name = format!("bore {}", at + 1);
    let remove = ui
        .small_button("Remove")
        .accessible_name(format!("Remove {name}"));
    if remove.clicked() {
        let edit = remove_bore(form.job, box_id, door, at as usize);
        form.press(&format!("remove {name}"), edit);
    }
}
