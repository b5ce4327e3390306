//! What a door is built of: one leaf or two, plain or framed.

use egui::{CollapsingHeader, Ui};
use flapwright_model::door::{BuildUp, Door, Grain, Infill, Leaf, Leaves};
use flapwright_model::edges::Edges;
use flapwright_model::part::LeafId;

use super::bands::drilled_ui;
use super::{Form, names};
use crate::window::fields::Change;
use crate::window::fields::choice::buttons;

/// The leaves of the door and the joint between them.
pub(crate) fn leaves_ui(ui: &mut Ui, form: &mut Form<'_>, door: &Door) {
    if let Leaves::Two {
        joint_down,
        joint_gap,
        ..
    } = &door.leaves
    {
        let length = form.length();
        let path = form.door_path("leaves");
        let words = names(
            "joint between the leaves",
            "joint at",
            "From the underside of the panel above the opening down to the middle of the joint.",
        );
        let change = form.row(
            ui,
            &format!("{path}.joint_down"),
            words,
            length,
            *joint_down,
        );
        form.edit_door("joint", change, |d, v| {
            if let Leaves::Two { joint_down, .. } = &mut d.leaves {
                *joint_down = v;
            }
        });
        let words = names("gap between the leaves", "gap of the joint", "Clear gap.");
        let change = form.row(ui, &format!("{path}.joint_gap"), words, length, *joint_gap);
        form.edit_door("joint gap", change, |d, v| {
            if let Leaves::Two { joint_gap, .. } = &mut d.leaves {
                *joint_gap = v;
            }
        });
    }
    for (id, leaf) in door.leaves.iter() {
        let title = match id {
            LeafId::Only => "Build-up",
            LeafId::Upper => "Upper leaf",
            LeafId::Lower => "Lower leaf",
        };
        CollapsingHeader::new(title).id_salt(title).show(ui, |ui| {
            leaf_ui(ui, form, id, leaf);
        });
    }
}

fn leaf_ui(ui: &mut Ui, form: &mut Form<'_>, id: LeafId, leaf: &Leaf) {
    let path = form.door_path(name_of(id));
    let framed = matches!(leaf.build, BuildUp::Framed { .. });
    let all = [(false, "plain panel"), (true, "frame")];
    let change = buttons(ui, &path, name_of(id), &framed, &all);
    form.edit_leaf(id, "build-up", change, |leaf, framed| {
        let (thickness, material) = (leaf.build.thickness(), leaf.build.material().to_owned());
        leaf.build = if framed {
            let infill = Infill {
                thickness: 6.0,
                material: material.clone(),
                tongue: 8.0,
                behind: 6.0,
            };
            BuildUp::Framed {
                thickness,
                material,
                members: Edges::all(60.0),
                infill,
            }
        } else {
            BuildUp::Plain {
                thickness,
                material,
            }
        };
    });
    let length = form.length();
    let full = format!("{} thickness", name_of(id));
    let words = names(&full, "thickness", "Thickness of the leaf.");
    let thick = leaf.build.thickness();
    let change = form.row(ui, &format!("{path}.thickness"), words, length, thick);
    form.edit_leaf(id, "thickness", change, |leaf, v| match &mut leaf.build {
        BuildUp::Plain { thickness, .. } | BuildUp::Framed { thickness, .. } => *thickness = v,
    });
    let full = format!("{} material", name_of(id));
    let change = form.material(
        ui,
        &format!("{path}.material"),
        &full,
        leaf.build.material(),
    );
    form.edit_leaf(id, "material", change, |leaf, v| match &mut leaf.build {
        BuildUp::Plain { material, .. } | BuildUp::Framed { material, .. } => *material = v,
    });
    if let BuildUp::Framed {
        members, infill, ..
    } = &leaf.build
    {
        framed_ui(ui, form, id, *members, infill);
    }
    let full = format!("{} band", name_of(id));
    let words = names(
        &full,
        "Edge bands",
        "Thickness of the band at each edge, 0 for none.",
    );
    if let Some((edge, change)) = form.edges(ui, &format!("{path}.bands"), words, leaf.bands) {
        form.edit_leaf(id, "edge band", Some(change), |leaf, v| {
            *leaf.bands.at_mut(edge) = v;
        });
    }
    let change = drilled_ui(ui, &path, leaf.drilled);
    form.edit_leaf(id, "drilled", change, |leaf, v| leaf.drilled = v);
    let all = [
        (Grain::None, "none"),
        (Grain::Upright, "upright"),
        (Grain::Across, "across"),
    ];
    let change = buttons(ui, &format!("{path}.grain"), "grain", &leaf.grain, &all);
    form.edit_leaf(id, "grain", change, |leaf, v| leaf.grain = v);
}

fn framed_ui(ui: &mut Ui, form: &mut Form<'_>, id: LeafId, widths: Edges<f64>, infill: &Infill) {
    let path = form.door_path(name_of(id));
    let full = format!("{} frame member", name_of(id));
    let words = names(&full, "Widths of stiles and rails", "Width of each member.");
    if let Some((edge, change)) = form.edges(ui, &format!("{path}.members"), words, widths) {
        form.edit_leaf(id, "frame member", Some(change), |leaf, v| {
            if let BuildUp::Framed { members, .. } = &mut leaf.build {
                *members.at_mut(edge) = v;
            }
        });
    }
    let full = format!("{} infill material", name_of(id));
    let change = form.material(
        ui,
        &format!("{path}.infill.material"),
        &full,
        &infill.material,
    );
    form.edit_infill(id, "material", change, |infill, v| infill.material = v);
    type Set = fn(&mut Infill, f64);
    let all: [(&str, &str, f64, Set); 3] = [
        (
            "infill thickness",
            "Of the panel or pane.",
            infill.thickness,
            |i, v| i.thickness = v,
        ),
        (
            "infill tongue",
            "How far it reaches into the frame.",
            infill.tongue,
            |i, v| {
                i.tongue = v;
            },
        ),
        (
            "infill behind",
            "Back of the leaf to the back of the infill.",
            infill.behind,
            |i, v| {
                i.behind = v;
            },
        ),
    ];
    let length = form.length();
    for (word, meaning, value, set) in all {
        let full = format!("{} {word}", name_of(id));
        let words = names(&full, word, meaning);
        let change = form.row(ui, &format!("{path}.{word}"), words, length, value);
        form.edit_infill(id, word, change, set);
    }
}

const fn name_of(id: LeafId) -> &'static str {
    match id {
        LeafId::Only => "leaf",
        LeafId::Upper => "upper leaf",
        LeafId::Lower => "lower leaf",
    }
}

fn leaf_mut(door: &mut Door, id: LeafId) -> Option<&mut Leaf> {
    match (&mut door.leaves, id) {
        (Leaves::One(leaf), LeafId::Only)
        | (Leaves::Two { upper: leaf, .. }, LeafId::Upper)
        | (Leaves::Two { lower: leaf, .. }, LeafId::Lower) => Some(leaf),
        (Leaves::One(_), LeafId::Upper | LeafId::Lower) | (Leaves::Two { .. }, LeafId::Only) => {
            None
        }
    }
}

impl Form<'_> {
    fn edit_leaf<T>(
        &mut self,
        id: LeafId,
        what: &str,
        change: Option<Change<T>>,
        set: impl FnOnce(&mut Leaf, T),
    ) {
        self.edit_door(&format!("{} {what}", name_of(id)), change, |door, value| {
            if let Some(leaf) = leaf_mut(door, id) {
                set(leaf, value);
            }
        });
    }

    fn edit_infill<T>(
        &mut self,
        id: LeafId,
        what: &str,
        change: Option<Change<T>>,
        set: impl FnOnce(&mut Infill, T),
    ) {
        self.edit_leaf(id, &format!("infill {what}"), change, |leaf, value| {
            if let BuildUp::Framed { infill, .. } = &mut leaf.build {
                set(infill, value);
            }
        });
    }
}
