//! Shelves, what they divide, and the rows of bores for their pins.

use egui::{RichText, Ui};
use flapwright_model::cabinet::{HorizontalPanel, Shelf, ShelfKind, SystemRows, WallBox};
use flapwright_model::length::show_length;
use flapwright_model::part::Part;

use super::bands::Ends;
use super::record_form::record_ui;
use super::{Form, group, names, panels_form, shelf_edit};
use crate::window::command::Command;
use crate::window::fields::choice::{buttons, tick};
use crate::window::tokens::tokens;
use flapwright_session::action::Action;

/// The section *Openings and shelves*.
pub(crate) fn openings_ui(ui: &mut Ui, form: &mut Form<'_>) {
    let Some(shown) = form.wall_box().cloned() else {
        return;
    };
    opening_list(ui, form, &shown);
    group(ui, "Shelves");
    if shown.shelves.is_empty() {
        ui.label(RichText::new("No shelf.").color(tokens(ui).text_soft));
    }
    for index in 0..shown.shelves.len() {
        shelf_ui(ui, form, &shown, index);
    }
    ui.horizontal_wrapped(|ui| {
        let middle = shown.height / 2.0;
        if ui
            .button("Add fixed shelf")
            .on_hover_text("Divides the opening; the door stays with the upper part.")
            .clicked()
        {
            let shelf = new_shelf(&shown, middle, shelf_edit::fixed_kind());
            form.press_box("add fixed shelf", |b| shelf_edit::add(b, shelf));
        }
        if ui
            .button("Add adjustable shelf")
            .on_hover_text("Lies on pins.")
            .clicked()
        {
            let shelf = new_shelf(&shown, middle, ShelfKind::Adjustable);
            form.press_box("add adjustable shelf", |b| shelf_edit::add(b, shelf));
        }
    });
    group(ui, "Rows of shelf bores");
    system_rows_ui(ui, form, &shown);
}

/// The openings from the top down; one of them is shown in *Door* and *Fitting and size*.
fn opening_list(ui: &mut Ui, form: &mut Form<'_>, shown: &WallBox) {
    let report = form.inspection.boxes.get(form.box_index);
    for (index, opening) in shown.openings.iter().enumerate() {
        let clear = report.and_then(|r| r.openings.get(index)).map(|o| {
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
        let row = ui.selectable_label(index == form.opening, text);
        if row
            .accessible_name(format!("Opening {}", index + 1))
            .clicked()
        {
            form.queue.push(Command::Do(Action::ShowOpening(index)));
        }
    }
}

fn new_shelf(shown: &WallBox, up: f64, kind: ShelfKind) -> Shelf {
    let piece = HorizontalPanel {
        set_in: 0.0,
        ..shown.bottom.clone()
    };
    Shelf { kind, up, piece }
}

fn shelf_ui(ui: &mut Ui, form: &mut Form<'_>, shown: &WallBox, index: usize) {
    let Some(shelf) = shown.shelves.get(index) else {
        return;
    };
    let name = format!("shelf {}", index + 1);
    let path = form.box_path(&name);
    egui::Frame::group(ui.style())
        .fill(tokens(ui).card)
        .show(ui, |ui| {
            ui.set_width(ui.available_width());
            ui.horizontal(|ui| {
                ui.label(super::bold(name.as_str()));
                ui.with_layout(egui::Layout::right_to_left(egui::Align::Center), |ui| {
                    let remove = ui
                        .small_button("Remove")
                        .accessible_name(format!("Remove {name}"));
                    if remove.clicked() {
                        form.press_box(&format!("remove {name}"), |b| shelf_edit::remove(b, index));
                    }
                });
            });
            let all = [(true, "fixed"), (false, "adjustable")];
            let change = buttons(ui, &path, &name, &shelf.is_fixed(), &all);
            form.edit_box(&format!("{name} fixed"), change, |b, fixed| {
                shelf_edit::set_fixed(b, index, fixed);
            });
            let length = form.length();
            let full = format!("{name} height");
            let words = names(
                &full,
                "underside at",
                "From the underside of the box upwards.",
            );
            let change = form.row(ui, &format!("{path}.up"), words, length, shelf.up);
            form.edit_box(&full, change, |b, v| b.shelves[index].up = v);
            if let ShelfKind::Fixed { gap, upper_overlay } = shelf.kind {
                split_ui(ui, form, index, gap, upper_overlay);
            }
            egui::CollapsingHeader::new("panel and ends")
                .id_salt(&path)
                .show(ui, |ui| {
                    let panel = &shelf.piece.panel;
                    panels_form::panel_ui(ui, form, &name, panel, Ends::Level, |b| {
                        &mut b.shelves[index].piece.panel
                    });
                    panels_form::piece_ui(ui, form, &name, &shelf.piece, false, |b| {
                        &mut b.shelves[index].piece
                    });
                    record_ui(ui, form, Part::Shelf(index), &name);
                });
        });
}

/// Gap between the doors above and below a fixed shelf, and how they share its edge.
fn split_ui(ui: &mut Ui, form: &mut Form<'_>, index: usize, gap: f64, upper_overlay: Option<f64>) {
    let name = format!("shelf {}", index + 1);
    let path = form.box_path(&name);
    let length = form.length();
    let full = format!("{name} gap");
    let words = names(
        &full,
        "gap",
        "Clear distance between the overlay doors above and below.",
    );
    let change = form.row(ui, &format!("{path}.gap"), words, length, gap);
    form.edit_box(&format!("{name} gap between doors"), change, |b, v| {
        if let ShelfKind::Fixed { gap, .. } = &mut b.shelves[index].kind {
            *gap = v;
        }
    });
    let change = tick(
        ui,
        &format!("{path}.split"),
        "both doors lap alike",
        upper_overlay.is_none(),
    );
    form.edit_box(&format!("{name} split"), change, |b, alike| {
        if let ShelfKind::Fixed { upper_overlay, .. } = &mut b.shelves[index].kind {
            *upper_overlay = (!alike).then_some(0.0);
        }
    });
    if let Some(overlay) = upper_overlay {
        let full = format!("{name} upper overlay");
        let words = names(
            &full,
            "upper overlay",
            "How far the door above laps over the shelf.",
        );
        let change = form.row(ui, &format!("{path}.upper_overlay"), words, length, overlay);
        form.edit_box(&full, change, |b, v| {
            if let ShelfKind::Fixed { upper_overlay, .. } = &mut b.shelves[index].kind {
                *upper_overlay = Some(v);
            }
        });
    }
}

fn system_rows_ui(ui: &mut Ui, form: &mut Form<'_>, shown: &WallBox) {
    let path = form.box_path("system_rows");
    let change = tick(
        ui,
        &path,
        "rows at a 32 mm pitch",
        shown.system_rows.is_some(),
    );
    form.edit_box("rows of shelf bores", change, |b, with| {
        b.system_rows = with.then_some(SystemRows {
            front: 37.0,
            rear: 37.0,
            first: 64.0,
            last: 64.0,
            diameter: 5.0,
            depth: 13.0,
        });
    });
    let Some(rows) = &shown.system_rows else {
        return;
    };
    type Set = fn(&mut SystemRows, f64);
    let all: [(&str, &str, f64, Set); 6] = [
        (
            "front row",
            "Behind the front edge of the side.",
            rows.front,
            |r, v| r.front = v,
        ),
        (
            "rear row",
            "Before the rear edge of the side.",
            rows.rear,
            |r, v| r.rear = v,
        ),
        (
            "first bore",
            "Below the top end of the side.",
            rows.first,
            |r, v| r.first = v,
        ),
        (
            "last bore",
            "At least above the bottom end.",
            rows.last,
            |r, v| r.last = v,
        ),
        ("diameter", "Of the bores.", rows.diameter, |r, v| {
            r.diameter = v;
        }),
        ("bore depth", "To the full diameter.", rows.depth, |r, v| {
            r.depth = v;
        }),
    ];
    let length = form.length();
    for (word, meaning, value, set) in all {
        let full = format!("shelf bores {word}");
        let words = names(&full, word, meaning);
        let change = form.row(ui, &format!("{path}.{word}"), words, length, value);
        form.edit_box(&full, change, |b, v| {
            if let Some(rows) = &mut b.system_rows {
                set(rows, v);
            }
        });
    }
}
