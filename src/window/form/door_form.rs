//! The door of the shown opening.

use egui::{CollapsingHeader, RichText, Ui};
use flapwright_model::change::{
    FitKind, FollowKind, add_door, remove_door, set_bores_follow, set_fit,
};
use flapwright_model::door::{BoreReference, Door, Leaves};
use flapwright_model::field::{DoorField, FieldRef};
use flapwright_model::id::BoxId;
use flapwright_model::part::{LeafId, Part};
use flapwright_rules::placement::taken_over::bores_now;

use super::record_form::record_ui;
use super::{Form, as_drilled, group, handle_and_mass, leaf_form, note};
use crate::window::fields::choice::{Called, buttons, buttons_under};
use crate::window::fields::field_id;
use crate::window::tokens::{toggle, tokens};

/// The section *Door*.
pub(crate) fn door_ui(ui: &mut Ui, form: &mut Form<'_>) {
    which_opening(ui, form);
    let (Some(id), Some(opening)) = (form.wall_box().map(|it| it.id), form.opening_id()) else {
        return;
    };
    let Some(door) = form.door() else {
        ui.label("This opening has no door.");
        if ui.button("Add door").clicked() {
            form.press("add door", add_door(form.job, id, opening));
        }
        return;
    };
    fit_ui(ui, form, id, door);
    form.edges(ui, |edge| {
        FieldRef::Door(id, door.id, DoorField::Tweak(edge))
    });
    for (leaf, _) in door.leaves.iter() {
        let name = match leaf {
            LeafId::Only => "door",
            LeafId::Upper => "upper leaf",
            LeafId::Lower => "lower leaf",
        };
        let part = Part::Leaf {
            door: door.id,
            leaf,
        };
        record_ui(ui, form, part, name);
    }
    bores_follow_ui(ui, form, id, door);
    leaf_form::leaves_ui(ui, form, door);
    for (title, body) in [
        (
            "Handle",
            handle_and_mass::handle_ui as fn(&mut Ui, &mut Form<'_>, &Door),
        ),
        ("Mass", handle_and_mass::mass_ui),
    ] {
        CollapsingHeader::new(title)
            .id_salt(title)
            .show(ui, |ui| body(ui, form, door));
    }
    ui.add_space(4.0);
    if ui
        .button("Remove door")
        .on_hover_text("Leaves the opening open.")
        .clicked()
    {
        form.press("remove door", remove_door(form.job, id, opening));
    }
}

/// Which opening the section shows, where there are several.
pub(crate) fn which_opening(ui: &mut Ui, form: &mut Form<'_>) {
    let openings = form.wall_box().map_or_else(Vec::new, |it| it.openings());
    if openings.len() < 2 {
        return;
    }
    ui.horizontal_wrapped(|ui| {
        ui.label(RichText::new("opening").color(tokens(ui).text_soft));
        for (index, opening) in openings.into_iter().enumerate() {
            let text = match index {
                0 => "1 (top)".to_owned(),
                _ => format!("{}", index + 1),
            };
            let name = format!("Show opening {}", index + 1);
            let button = toggle(ui, form.shows(opening.id), text).accessible_name(name);
            if button.clicked() {
                form.show_opening(opening.id);
            }
        }
    });
}

fn fit_ui(ui: &mut Ui, form: &mut Form<'_>, id: BoxId, door: &Door) {
    let called = Called {
        id: field_id(("fit", door.id)),
        name: "door",
        word: "door",
        meaning: "An overlay door lies before the edges of the panels, an inset one between them.",
    };
    let all = [(FitKind::Overlay, "overlay"), (FitKind::Inset, "inset")];
    if let Some(change) = buttons(ui, called, FitKind::of(&door.fit), &all) {
        let edit = set_fit(form.job, id, door.id, change.value);
        form.press("door overlay or inset", edit);
    }
    let of = |field| FieldRef::Door(id, door.id, field);
    form.edges(ui, |edge| of(DoorField::Reveal(edge)));
    form.edges(ui, |edge| of(DoorField::Gap(edge)));
    form.field(ui, of(DoorField::SetBack));
}

fn bores_follow_ui(ui: &mut Ui, form: &mut Form<'_>, id: BoxId, door: &Door) {
    group(ui, "Bores in the back follow");
    let kind = FollowKind::of(&door.bores_follow);
    let all = [
        (FollowKind::Fitting, "the fitting"),
        (FollowKind::Edges, "the door's edges"),
        (FollowKind::AsDrilled, "as drilled"),
    ];
    let now = form.inspection.report(id);
    let now = now.map_or_else(Vec::new, |report| bores_now(report, door.id));
    let mut chosen = buttons_under(ui, "bores follow", kind, &all);
    if kind != FollowKind::AsDrilled && !now.is_empty() {
        let button = ui.button("Take over the bores as they are now");
        let told = "Makes them facts of an existing door: distances from its edges stay.";
        if button.on_hover_text(told).clicked() {
            chosen = Some(FollowKind::AsDrilled);
        }
    }
    if let Some(kind) = chosen {
        let edit = set_bores_follow(form.job, id, door.id, kind, now);
        form.press("what the bores follow", edit);
    }
    match &door.bores_follow {
        BoreReference::Fitting => {
            note(
                ui,
                "Neither a reveal nor an edge tweak moves them in the box.",
            );
        }
        BoreReference::Edges { .. } => {
            form.field(ui, FieldRef::Door(id, door.id, DoorField::TiedTo));
            note(
                ui,
                "An edge tweak carries along the bores that are tied to that edge.",
            );
        }
        BoreReference::AsDrilled(bores) => {
            as_drilled::bores_ui(ui, form, (id, door.id), bores);
        }
    }
}

impl Form<'_> {
    /// Whether the shown door has two leaves.
    pub(crate) fn folds(&self) -> bool {
        self.door()
            .is_some_and(|door| matches!(door.leaves, Leaves::Two { .. }))
    }
}
