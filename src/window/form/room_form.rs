//! The room: its ceiling, and what stands in the way of doors.

use egui::Ui;
use flapwright_model::change::{add_obstacle, remove_obstacle};
use flapwright_model::field::{FieldRef, HeadField, ObstacleField};
use flapwright_model::id::ObstacleId;

use super::{Form, group, note};
use crate::window::tokens::{bold, tokens};

/// Room for the word before an extent, and for the word between its ends.
const EXTENT_WORDS: [f32; 2] = [84.0, 14.0];

/// The section *Room*.
pub(crate) fn room_ui(ui: &mut Ui, form: &mut Form<'_>) {
    form.field(ui, FieldRef::Head(HeadField::Ceiling));
    group(ui, "Obstacles");
    note(
        ui,
        "Beams, cornices, lamps, pipes, walls at the side: blocks that no door may meet. Their places \
         count from the start of the wall, from the floor and from the wall.",
    );
    let ids: Vec<ObstacleId> = form.job.room.obstacles.iter().map(|it| it.id).collect();
    for (index, id) in ids.into_iter().enumerate() {
        obstacle_ui(ui, form, &format!("obstacle {}", index + 1), id);
    }
    let button = ui.button("Add obstacle");
    if button.on_hover_text("Above the shown box.").clicked() {
        let shown = form.wall_box().map(|it| it.id);
        form.press_job("add obstacle", Some(add_obstacle(form.job, shown)));
    }
}

fn obstacle_ui(ui: &mut Ui, form: &mut Form<'_>, name: &str, id: ObstacleId) {
    let of = |field| FieldRef::Obstacle(id, field);
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
                        let edit = remove_obstacle(form.job, id);
                        form.press_job(&format!("remove {name}"), edit);
                    }
                });
            });
            form.field(ui, of(ObstacleField::Name));
            for extent in ObstacleField::EXTENTS {
                let [first, last] = extent.map(|it| it.info().label);
                let words = [(first, EXTENT_WORDS[0]), (last, EXTENT_WORDS[1])];
                form.pair(ui, extent.map(of), words);
            }
        });
}
