//! The door of the shown opening.

use egui::{CollapsingHeader, RichText, Ui};
use flapwright_model::door::{BoreReference, Door, DoorFit, End, Leaves};
use flapwright_model::edges::Edges;
use flapwright_model::part::{LeafId, Part};

use super::record_form::record_ui;
use super::{Form, as_drilled, group, handle_and_mass, leaf_form, names};
use crate::window::command::Command;
use crate::window::fields::choice::{buttons, buttons_under};
use crate::window::fields::{Change, field_id};
use crate::window::tokens::{toggle, tokens};
use flapwright_rules::placement::taken_over::bores_now;
use flapwright_session::action::Action;

/// The section *Door*.
pub(crate) fn door_ui(ui: &mut Ui, form: &mut Form<'_>) {
    which_opening(ui, form);
    let Some(door) = form.door().cloned() else {
        ui.label("This opening has no door.");
        if ui.button("Add door").clicked() {
            let opening = form.opening;
            let door = flapwright_session::starter::plain_door(
                &flapwright_session::starter::usual_material(form.job),
            );
            form.press_box("add door", |b| {
                if let Some(opening) = b.openings.get_mut(opening) {
                    opening.door = Some(door);
                }
            });
        }
        return;
    };
    fit_ui(ui, form, &door);
    let words = names(
        "edge tweak",
        "Edge tweaks",
        "By-hand moves of this door's edges after its reveals are set; + is outward.",
    );
    let path = form.door_path("tweaks");
    if let Some((edge, change)) = form.edges(ui, &path, words, door.tweaks) {
        let what = format!("{} edge tweak", edge.word());
        form.edit_door(&what, Some(change), |d, v| *d.tweaks.at_mut(edge) = v);
    }
    for (leaf, _) in door.leaves.iter() {
        let opening = form.opening;
        let name = match leaf {
            LeafId::Only => "door",
            LeafId::Upper => "upper leaf",
            LeafId::Lower => "lower leaf",
        };
        record_ui(ui, form, Part::Leaf { opening, leaf }, name);
    }
    hang_on_ui(ui, form, &door);
    leaf_form::leaves_ui(ui, form, &door);
    CollapsingHeader::new("Handle")
        .id_salt("handle")
        .show(ui, |ui| handle_and_mass::handle_ui(ui, form, &door));
    CollapsingHeader::new("Mass")
        .id_salt("mass")
        .show(ui, |ui| handle_and_mass::mass_ui(ui, form, &door));
    ui.add_space(4.0);
    if ui
        .button("Remove door")
        .on_hover_text("Leaves the opening open.")
        .clicked()
    {
        let opening = form.opening;
        form.press_box("remove door", |b| {
            if let Some(opening) = b.openings.get_mut(opening) {
                opening.door = None;
            }
        });
    }
}

/// Which opening the section shows, where there are several.
pub(crate) fn which_opening(ui: &mut Ui, form: &mut Form<'_>) {
    let count = form.wall_box().map_or(0, |b| b.openings.len());
    if count < 2 {
        return;
    }
    ui.horizontal_wrapped(|ui| {
        ui.label(RichText::new("opening").color(tokens(ui).text_soft));
        for index in 0..count {
            let text = match index {
                0 => "1 (top)".to_owned(),
                _ => format!("{}", index + 1),
            };
            let name = format!("Show opening {}", index + 1);
            let button = toggle(ui, index == form.opening, text).accessible_name(name);
            if button.clicked() {
                form.queue.push(Command::Do(Action::ShowOpening(index)));
            }
        }
    });
}

fn fit_ui(ui: &mut Ui, form: &mut Form<'_>, door: &Door) {
    let path = form.door_path("fit");
    let inset = matches!(door.fit, DoorFit::Inset { .. });
    let change = buttons(
        ui,
        &path,
        "door",
        &inset,
        &[(false, "overlay"), (true, "inset")],
    );
    form.edit_door("overlay or inset", change, |d, inset| {
        d.fit = if inset {
            DoorFit::Inset {
                gaps: Edges::all(2.0),
                set_back: 0.0,
            }
        } else {
            DoorFit::Overlay {
                reveals: Edges::all(2.0),
            }
        };
    });
    match &door.fit {
        DoorFit::Overlay { reveals } => {
            let words = names(
                "reveal",
                "Reveals",
                "What stays uncovered of each panel's edge. At a fixed shelf between two doors its \
                 gap and split stand in place of the reveal.",
            );
            if let Some((edge, change)) = form.edges(ui, &path, words, *reveals) {
                let what = format!("{} reveal", edge.word());
                form.edit_door(&what, Some(change), |d, v| {
                    if let DoorFit::Overlay { reveals } = &mut d.fit {
                        *reveals.at_mut(edge) = v;
                    }
                });
            }
        }
        DoorFit::Inset { gaps, set_back } => {
            let words = names(
                "door gap",
                "Gaps",
                "Clear distance to the panel at each edge.",
            );
            if let Some((edge, change)) = form.edges(ui, &path, words, *gaps) {
                let what = format!("{} gap", edge.word());
                form.edit_door(&what, Some(change), |d, v| {
                    if let DoorFit::Inset { gaps, .. } = &mut d.fit {
                        *gaps.at_mut(edge) = v;
                    }
                });
            }
            let words = names(
                "door set back",
                "set back",
                "Face of the door behind the front edges.",
            );
            let length = form.length();
            let change = form.row(ui, &format!("{path}.set_back"), words, length, *set_back);
            form.edit_door("set back", change, |d, v| {
                if let DoorFit::Inset { set_back, .. } = &mut d.fit {
                    *set_back = v;
                }
            });
        }
    }
}

/// The three things that bores can hang on, without their data.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum HangKind {
    Fitting,
    Edges,
    AsDrilled,
}

fn hang_on_ui(ui: &mut Ui, form: &mut Form<'_>, door: &Door) {
    group(ui, "Bores in the back hang on");
    let path = form.door_path("bores_hang_on");
    let kind = match &door.bores_hang_on {
        BoreReference::Fitting => HangKind::Fitting,
        BoreReference::Edges { .. } => HangKind::Edges,
        BoreReference::AsDrilled(_) => HangKind::AsDrilled,
    };
    let all = [
        (HangKind::Fitting, "the fitting"),
        (HangKind::Edges, "own edges"),
        (HangKind::AsDrilled, "as drilled"),
    ];
    let change = buttons_under(ui, &path, "bores hang on", &kind, &all);
    let now = form
        .inspection
        .boxes
        .get(form.box_index)
        .map(|report| bores_now(report, form.opening))
        .unwrap_or_default();
    let taken = now.clone();
    form.edit_door("bores hang on", change, |d, kind| {
        d.bores_hang_on = match kind {
            HangKind::Fitting => BoreReference::Fitting,
            HangKind::Edges => BoreReference::Edges { vertical: End::Top },
            HangKind::AsDrilled => BoreReference::AsDrilled(now),
        };
    });
    if kind != HangKind::AsDrilled && !taken.is_empty() {
        let button = ui.button("Take over the bores as they are now");
        let told = "Makes them facts of an existing door: distances from its edges stay.";
        if button.on_hover_text(told).clicked() {
            let path = format!("{path}.taken");
            let change = Change {
                value: (),
                field: field_id(&path),
                typed: None,
                running: false,
            };
            form.edit_door("bores as drilled", Some(change), |d, ()| {
                d.bores_hang_on = BoreReference::AsDrilled(taken);
            });
        }
    }
    match &door.bores_hang_on {
        BoreReference::Fitting => {
            note(
                ui,
                "Neither a reveal nor an edge tweak moves them in the box.",
            );
        }
        BoreReference::Edges { vertical } => {
            let all = [(End::Top, "top edge"), (End::Bottom, "bottom edge")];
            let change = buttons(
                ui,
                &format!("{path}.vertical"),
                "tied to the",
                vertical,
                &all,
            );
            form.edit_door("bores tied to", change, |d, vertical| {
                d.bores_hang_on = BoreReference::Edges { vertical };
            });
            note(
                ui,
                "An edge tweak carries along the bores that are tied to that edge.",
            );
        }
        BoreReference::AsDrilled(bores) => as_drilled::bores_ui(ui, form, bores),
    }
}

fn note(ui: &mut Ui, text: &str) {
    ui.add(egui::Label::new(RichText::new(text).small().color(tokens(ui).text_soft)).wrap());
}

impl Form<'_> {
    /// Whether the shown door has two leaves.
    pub(crate) fn folds(&self) -> bool {
        self.door()
            .is_some_and(|door| matches!(door.leaves, Leaves::Two { .. }))
    }
}
