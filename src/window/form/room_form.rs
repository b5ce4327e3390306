//! The room: its ceiling, and what stands in the way of doors.

use egui::{RichText, Ui};
use flapwright_model::cabinet::WallBox;
use flapwright_model::edit::JobHead;
use flapwright_model::room::{Extent, Obstacle};

use super::{Form, group, names};
use crate::window::fields::number::{Number, cell, problem, word};
use crate::window::fields::text::text;
use crate::window::fields::{Change, field_id};
use crate::window::tokens::{bold, tokens};

/// Room for the word before an extent.
const EXTENT_WORD: f32 = 84.0;
/// A new obstacle is this high and stands this far above the box, mm.
const NEW: f64 = 50.0;
/// And this far out from the wall, mm.
const NEW_OUT: f64 = 100.0;

type ExtentOf = fn(&mut Obstacle) -> &mut Extent;

/// The section *Room*.
pub(crate) fn room_ui(ui: &mut Ui, form: &mut Form<'_>) {
    let words = names(
        "room ceiling",
        "ceiling",
        "Height of the ceiling above the floor.",
    );
    let length = form.length();
    let change = form.row(ui, "room.ceiling", words, length, form.job.room.ceiling);
    form.edit_head("ceiling", change, |head, v| head.room.ceiling = v);
    group(ui, "Obstacles");
    let soft = tokens(ui).text_soft;
    let told = "Beams, cornices, lamps, pipes, walls at the side: blocks that no door may meet. \
                Their places count from the start of the wall, from the floor and from the wall.";
    ui.add(egui::Label::new(RichText::new(told).small().color(soft)).wrap());
    for index in 0..form.job.room.obstacles.len() {
        obstacle_ui(ui, form, index);
    }
    let button = ui.button("Add obstacle");
    if button.on_hover_text("Above the shown box.").clicked() {
        let new = new_obstacle(form);
        press(form, "add obstacle", |head| head.room.obstacles.push(new));
    }
}

/// A change of the room that a button makes.
fn press(form: &mut Form<'_>, what: &str, set: impl FnOnce(&mut JobHead)) {
    let change = Change {
        value: (),
        field: field_id(&format!("room.{what}")),
        typed: None,
        running: false,
    };
    form.edit_head(what, Some(change), |head, ()| set(head));
}

fn new_obstacle(form: &Form<'_>) -> Obstacle {
    let (left, right, top) = form.wall_box().map_or((0.0, NEW_OUT, NEW), beside);
    let count = form.job.room.obstacles.len();
    Obstacle {
        name: format!("obstacle {}", count + 1),
        along_wall: Extent {
            from: left,
            to: right,
        },
        above_floor: Extent {
            from: top + NEW,
            to: top + 2.0 * NEW,
        },
        from_wall: Extent {
            from: 0.0,
            to: NEW_OUT,
        },
    }
}

/// Left and right of a box along the wall, and its upper face above the floor.
fn beside(wall_box: &WallBox) -> (f64, f64, f64) {
    let place = wall_box.place;
    (
        place.along_wall,
        place.along_wall + wall_box.width,
        place.above_floor + wall_box.height,
    )
}

fn obstacle_ui(ui: &mut Ui, form: &mut Form<'_>, index: usize) {
    let Some(obstacle) = form.job.room.obstacles.get(index).cloned() else {
        return;
    };
    let name = format!("obstacle {}", index + 1);
    let path = format!("room.obstacles[{index}]");
    egui::Frame::group(ui.style())
        .fill(tokens(ui).card)
        .show(ui, |ui| {
            ui.set_width(ui.available_width());
            ui.horizontal(|ui| {
                ui.label(bold(name.as_str()));
                ui.with_layout(egui::Layout::right_to_left(egui::Align::Center), |ui| {
                    let remove = ui
                        .small_button("Remove")
                        .accessible_name(format!("Remove {name}"));
                    if remove.clicked() {
                        press(form, &format!("remove {name}"), |head| {
                            head.room.obstacles.remove(index);
                        });
                    }
                });
            });
            let full = format!("{name} name");
            let at = format!("{path}.name");
            let change = text(ui, form.fields, &at, &full, "name", &obstacle.name);
            form.edit_head(&full, change, |head, v| {
                head.room.obstacles[index].name = v;
            });
            let all: [(&str, &str, Extent, ExtentOf); 3] = [
                (
                    "along wall",
                    "From the start of the wall.",
                    obstacle.along_wall,
                    |o| &mut o.along_wall,
                ),
                (
                    "above floor",
                    "Its underside and its upper face above the floor.",
                    obstacle.above_floor,
                    |o| &mut o.above_floor,
                ),
                ("from wall", "Out into the room.", obstacle.from_wall, |o| {
                    &mut o.from_wall
                }),
            ];
            for (words, meaning, extent, of) in all {
                extent_ui(ui, form, (index, words, meaning), extent, of);
            }
        });
}

/// A row with both ends of an extent.
fn extent_ui(
    ui: &mut Ui,
    form: &mut Form<'_>,
    (index, words, meaning): (usize, &str, &str),
    extent: Extent,
    of: ExtentOf,
) {
    let quantity = form.length();
    let path = |end: &str| format!("room.obstacles[{index}].{words}.{end}");
    let full = |end: &str| format!("obstacle {} {words} {end}", index + 1);
    let mut changed: Option<(bool, Change<f64>)> = None;
    ui.horizontal(|ui| {
        for (is_from, end, value) in [(true, "from", extent.from), (false, "to", extent.to)] {
            let this = Number {
                path: &path(end),
                name: &full(end),
                word: if is_from { words } else { "to" },
                meaning,
                quantity,
                word_width: if is_from { EXTENT_WORD } else { 14.0 },
            };
            let dragged = word(ui, form.fields, this, value);
            let typed = cell(ui, form.fields, this, value);
            if let Some(change) = dragged.or(typed) {
                changed = Some((is_from, change));
            }
        }
    });
    for end in ["from", "to"] {
        problem(ui, form.fields, field_id(&path(end)));
    }
    if let Some((is_from, change)) = changed {
        let what = full(if is_from { "from" } else { "to" });
        form.edit_head(&what, Some(change), |head, v| {
            let extent = of(&mut head.room.obstacles[index]);
            if is_from {
                extent.from = v;
            } else {
                extent.to = v;
            }
        });
    }
}
