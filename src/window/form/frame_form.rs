//! The face frame.

use egui::Ui;
use flapwright_model::cabinet::{FaceFrame, WallBox};
use flapwright_model::edges::Edges;

use super::{Form, names};
use crate::window::fields::choice::tick;

/// The face frame, if there is one.
pub(crate) fn frame_ui(ui: &mut Ui, form: &mut Form<'_>, shown: &WallBox) {
    let path = form.box_path("frame");
    let change = tick(ui, &path, "with a face frame", shown.frame.is_some());
    let material = shown.left.material.clone();
    form.edit_box("face frame", change, |b, with| {
        b.frame = with.then(|| FaceFrame {
            thickness: 20.0,
            material,
            members: Edges::all(40.0),
            overhang: Edges::all(0.0),
            shelf_rail: 40.0,
        });
    });
    let Some(frame) = &shown.frame else { return };
    let length = form.length();
    let words = names("frame thickness", "thickness", "Front to back.");
    let change = form.row(
        ui,
        &format!("{path}.thickness"),
        words,
        length,
        frame.thickness,
    );
    form.edit_frame("thickness", change, |f, v| f.thickness = v);

    let change = form.material(
        ui,
        &format!("{path}.material"),
        "frame material",
        &frame.material,
    );
    form.edit_frame("material", change, |f, v| f.material = v);

    let words = names(
        "frame member",
        "Widths of stiles and rails",
        "Width of each member.",
    );
    let change = form.edges(ui, &format!("{path}.members"), words, frame.members);
    if let Some((edge, change)) = change {
        form.edit_frame("member width", Some(change), |f, v| {
            *f.members.at_mut(edge) = v;
        });
    }
    let words = names(
        "frame overhang",
        "Inner edges inward of the panel's inner face",
        "0 is flush with the inner face behind it; negative is outward.",
    );
    let change = form.edges(ui, &format!("{path}.overhang"), words, frame.overhang);
    if let Some((edge, change)) = change {
        form.edit_frame("overhang", Some(change), |f, v| {
            *f.overhang.at_mut(edge) = v;
        });
    }
    let words = names(
        "shelf rail width",
        "shelf rail",
        "Rail before each fixed shelf.",
    );
    let change = form.row(
        ui,
        &format!("{path}.shelf_rail"),
        words,
        length,
        frame.shelf_rail,
    );
    form.edit_frame("shelf rail", change, |f, v| f.shelf_rail = v);
}

impl Form<'_> {
    fn edit_frame<T>(
        &mut self,
        what: &str,
        change: Option<crate::window::fields::Change<T>>,
        set: impl FnOnce(&mut FaceFrame, T),
    ) {
        self.edit_box(&format!("face frame {what}"), change, |b, value| {
            if let Some(frame) = &mut b.frame {
                set(frame, value);
            }
        });
    }
}
