//! Shelves, what they divide, and the rows of bores for their pins.

use egui::{RichText, Ui};
use flapwright_model::cabinet::{HorizontalPanel, WallBox};
use flapwright_model::change::{
    add_fixed_shelf, add_loose_shelf, make_shelf_fixed, make_shelf_loose, remove_shelf,
    set_system_rows,
};
use flapwright_model::field::{
    BoxField, FieldRef, FixedShelfField, HorizontalField, LooseShelfField, Value,
};
use flapwright_model::id::ShelfId;
use flapwright_model::length::show_length;
use flapwright_model::part::Part;

use super::panels_form::{horizontal_ui, panel_ui};
use super::record_form::record_ui;
use super::{Form, group};
use crate::window::fields::choice::{Called, buttons, tick};
use crate::window::fields::field_id;
use crate::window::tokens::{bold, tokens};

/// The section *Openings and shelves*.
pub(crate) fn openings_ui(ui: &mut Ui, form: &mut Form<'_>) {
    let Some(shown) = form.wall_box() else { return };
    opening_list(ui, form, shown);
    group(ui, "Shelves");
    let shelves = shown.shelves();
    if shelves.is_empty() {
        ui.label(RichText::new("No shelf.").color(tokens(ui).text_soft));
    }
    for (index, shelf) in shelves.into_iter().enumerate() {
        let name = format!("shelf {}", index + 1);
        shelf_ui(ui, form, &name, shelf.id());
    }
    ui.horizontal_wrapped(|ui| {
        let middle = shown.height / 2.0;
        let piece = || HorizontalPanel {
            set_in: 0.0,
            ..shown.bottom.clone()
        };
        if ui
            .button("Add fixed shelf")
            .on_hover_text("Divides the opening; the door stays with the upper part.")
            .clicked()
        {
            let edit = add_fixed_shelf(form.job, shown.id, middle, piece());
            form.press("add fixed shelf", edit);
        }
        if ui
            .button("Add adjustable shelf")
            .on_hover_text("Lies on pins.")
            .clicked()
        {
            let edit = add_loose_shelf(form.job, shown.id, middle, piece());
            form.press("add adjustable shelf", edit);
        }
    });
    group(ui, "Rows of shelf bores");
    if let Some(with) = tick(ui, "rows at a 32 mm pitch", shown.system_rows.is_some()) {
        let edit = set_system_rows(form.job, shown.id, with);
        form.press("rows of shelf bores", edit);
    }
    form.fields(
        ui,
        BoxField::SYSTEM_ROWS.map(|it| FieldRef::Box(shown.id, it)),
    );
}

/// The openings in reading order; one of them is shown in *Door* and *Fitting and size*.
fn opening_list(ui: &mut Ui, form: &mut Form<'_>, shown: &WallBox) {
    let report = form.inspection.report(shown.id);
    for (index, opening) in shown.openings().into_iter().enumerate() {
        let clear = report.and_then(|r| r.opening(opening.id)).map(|o| {
            let size = o.clear.size();
            let unit = form.job.unit;
            format!(
                "{} × {}",
                show_length(size.width, unit),
                show_length(size.height, unit)
            )
        });
        let door = if opening.door.is_some() {
            "with a door"
        } else {
            "open"
        };
        let text = format!("{}: clear {}, {door}", index + 1, clear.unwrap_or_default());
        let row = ui.selectable_label(form.shows(opening.id), text);
        if row
            .accessible_name(format!("Opening {}", index + 1))
            .clicked()
        {
            form.show_opening(opening.id);
        }
    }
}

fn shelf_ui(ui: &mut Ui, form: &mut Form<'_>, name: &str, shelf: ShelfId) {
    let Some(id) = form.wall_box().map(|it| it.id) else {
        return;
    };
    egui::Frame::group(ui.style())
        .fill(tokens(ui).card)
        .show(ui, |ui| {
            ui.set_width(ui.available_width());
            ui.horizontal(|ui| {
                ui.label(bold(name));
                ui.with_layout(egui::Layout::right_to_left(egui::Align::Center), |ui| {
                    let remove = ui
                        .small_button("Remove")
                        .accessible_name(format!("Remove {name}"));
                    if remove.clicked() {
                        let edit = remove_shelf(form.job, id, shelf);
                        form.press(&format!("remove {name}"), edit);
                    }
                });
            });
            held_ui(ui, form, name, shelf);
            let fixed = |field| FieldRef::FixedShelf(id, shelf, field);
            form.field(ui, fixed(FixedShelfField::Up));
            form.field(ui, FieldRef::LooseShelf(id, shelf, LooseShelfField::Up));
            form.field(ui, fixed(FixedShelfField::Gap));
            split_ui(ui, form, fixed(FixedShelfField::UpperOverlay));
            egui::CollapsingHeader::new("panel and ends")
                .id_salt(("panel and ends", shelf))
                .show(ui, |ui| {
                    let part = Part::Shelf(shelf);
                    panel_ui(ui, form, part);
                    let ends = [HorizontalField::SetBack, HorizontalField::Housing];
                    horizontal_ui(ui, form, part, &ends);
                    record_ui(ui, form, part, name);
                });
        });
}

/// Whether a shelf is fixed or lies on pins.
fn held_ui(ui: &mut Ui, form: &mut Form<'_>, name: &str, shelf: ShelfId) {
    let Some(wall_box) = form.wall_box() else {
        return;
    };
    let fixed = wall_box.fixed_shelf(shelf).is_some();
    let called = Called {
        id: field_id(("held", shelf)),
        name,
        word: name,
        meaning: "A fixed shelf divides the opening; an adjustable one lies on pins.",
    };
    let all = [(true, "fixed"), (false, "adjustable")];
    let Some(change) = buttons(ui, called, fixed, &all) else {
        return;
    };
    let edit = if change.value {
        make_shelf_fixed(form.job, wall_box.id, shelf)
    } else {
        make_shelf_loose(form.job, wall_box.id, shelf)
    };
    form.press(&format!("{name} fixed"), edit);
}

/// How the doors above and below a fixed shelf share its edge.
fn split_ui(ui: &mut Ui, form: &mut Form<'_>, overlay: FieldRef) {
    let alike = match overlay.get(form.job) {
        Some(value) => value == Value::Unset,
        None => return,
    };
    if let Some(alike) = tick(ui, "both doors lap alike", alike) {
        let value = if alike {
            Value::Unset
        } else {
            Value::Number(0.0)
        };
        form.put(overlay, value);
    }
    form.field(ui, overlay);
}
