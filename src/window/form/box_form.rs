//! The box itself: name, number, outer size, place, how it is put together.

use egui::{CollapsingHeader, Ui};
use flapwright_model::cabinet::CornerJoint;

use super::{Form, frame_form, group, names, panels_form};
use crate::window::fields::choice::buttons_under;
use crate::window::fields::quantity::Quantity;
use crate::window::fields::text::text;

/// The section *Box*.
pub(crate) fn box_ui(ui: &mut Ui, form: &mut Form<'_>) {
    let Some(shown) = form.wall_box().cloned() else {
        return;
    };
    let path = form.box_path("name");
    let change = text(ui, form.fields, &path, "Box name", "name", &shown.name);
    form.edit_box("name", change, |b, name| b.name = name);

    let path = form.box_path("quantity");
    let words = names(
        "Box quantity",
        "quantity",
        "How many boxes are built like this.",
    );
    let change = form.row(
        ui,
        &path,
        words,
        Quantity::Pieces,
        f64::from(shown.quantity),
    );
    #[expect(
        clippy::cast_possible_truncation,
        clippy::cast_sign_loss,
        reason = "1 to 9999"
    )]
    form.edit_box("quantity", change, |b, count| {
        b.quantity = count.clamp(1.0, 9999.0) as u32;
    });

    group(ui, "Outer size");
    let length = form.length();
    let path = form.box_path("width");
    let words = names("Box width", "width", "Over both sides.");
    let change = form.row(ui, &path, words, length, shown.width);
    form.edit_box("width", change, |b, v| b.width = v);

    let path = form.box_path("height");
    let words = names("Box height", "height", "Over all.");
    let change = form.row(ui, &path, words, length, shown.height);
    form.edit_box("height", change, |b, v| b.height = v);

    let path = form.box_path("depth");
    let words = names(
        "Box depth",
        "depth",
        "Front edges of the sides to the rear, without door and frame.",
    );
    let change = form.row(ui, &path, words, length, shown.depth);
    form.edit_box("depth", change, |b, v| b.depth = v);

    group(ui, "Place");
    let path = form.box_path("place.along_wall");
    let words = names(
        "Place along the wall",
        "along the wall",
        "Start of the wall to the box.",
    );
    let change = form.row(ui, &path, words, length, shown.place.along_wall);
    form.edit_box("place along the wall", change, |b, v| {
        b.place.along_wall = v;
    });

    let path = form.box_path("place.above_floor");
    let words = names(
        "Place above the floor",
        "above the floor",
        "Floor to underside of the box.",
    );
    let change = form.row(ui, &path, words, length, shown.place.above_floor);
    form.edit_box("place above the floor", change, |b, v| {
        b.place.above_floor = v;
    });

    group(ui, "Top and bottom stand");
    let path = form.box_path("joint");
    let all = [
        (CornerJoint::BetweenSides, "between the sides"),
        (CornerJoint::OverSides, "over the sides"),
    ];
    let change = buttons_under(ui, &path, "top and bottom", &shown.joint, &all);
    form.edit_box("corner joint", change, |b, joint| b.joint = joint);

    ui.add_space(4.0);
    CollapsingHeader::new("Panels")
        .id_salt("panels")
        .show(ui, |ui| {
            panels_form::panels_ui(ui, form, &shown);
        });
    CollapsingHeader::new("Back")
        .id_salt("back")
        .show(ui, |ui| {
            panels_form::back_ui(ui, form, &shown);
        });
    CollapsingHeader::new("Face frame")
        .id_salt("face frame")
        .show(ui, |ui| {
            frame_form::frame_ui(ui, form, &shown);
        });
}
