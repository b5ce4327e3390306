//! What a door is built of: one leaf or two, plain or framed.

use egui::{CollapsingHeader, Ui};
use flapwright_model::change::set_framed;
use flapwright_model::door::{BuildUp, Door};
use flapwright_model::field::{DoorField, FieldRef, LeafField};
use flapwright_model::part::LeafId;

use super::Form;
use crate::window::fields::choice::{Called, buttons};
use crate::window::fields::field_id;

/// The leaves of the door and the joint between them.
pub(crate) fn leaves_ui(ui: &mut Ui, form: &mut Form<'_>, door: &Door) {
    let Some(box_id) = form.wall_box().map(|it| it.id) else {
        return;
    };
    let joint = [DoorField::JointDown, DoorField::JointGap];
    form.fields(ui, joint.map(|it| FieldRef::Door(box_id, door.id, it)));
    for (leaf, shown) in door.leaves.iter() {
        let title = match leaf {
            LeafId::Only => "Build-up",
            LeafId::Upper => "Upper leaf",
            LeafId::Lower => "Lower leaf",
        };
        let framed = matches!(shown.build, BuildUp::Framed { .. });
        CollapsingHeader::new(title).id_salt(title).show(ui, |ui| {
            framed_ui(ui, form, door, leaf, framed);
            leaf_ui(ui, form, |field| {
                FieldRef::Leaf(box_id, door.id, leaf, field)
            });
        });
    }
}

/// Whether a leaf is a plain panel or a frame.
fn framed_ui(ui: &mut Ui, form: &mut Form<'_>, door: &Door, leaf: LeafId, framed: bool) {
    let name = match leaf {
        LeafId::Only => "leaf",
        LeafId::Upper => "upper leaf",
        LeafId::Lower => "lower leaf",
    };
    let called = Called {
        id: field_id(("framed", door.id, leaf)),
        name,
        word: name,
        meaning: "A frame holds a panel or a pane.",
    };
    let all = [(false, "plain panel"), (true, "frame")];
    if let Some(change) = buttons(ui, called, framed, &all)
        && let Some(id) = form.wall_box().map(|it| it.id)
    {
        let edit = set_framed(form.job, id, door.id, leaf, change.value);
        form.press(&format!("{name} build-up"), edit);
    }
}

fn leaf_ui(ui: &mut Ui, form: &mut Form<'_>, of: impl Fn(LeafField) -> FieldRef) {
    use LeafField as F;
    form.fields(ui, [F::Thickness, F::Material].map(&of));
    form.edges(ui, |edge| of(F::Member(edge)));
    form.field(ui, of(F::InfillMaterial));
    form.fields(ui, F::INFILL.map(&of));
    form.edges(ui, |edge| of(F::Band(edge)));
    form.fields(ui, [F::Drilled, F::Grain].map(&of));
}
