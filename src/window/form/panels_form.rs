//! The panels of the box: thickness, material, bands; how the back is let in.

use egui::{CollapsingHeader, Ui};
use flapwright_model::change::{BackKind, set_back};
use flapwright_model::field::{BoxField, FieldRef, HorizontalField, PanelField};
use flapwright_model::part::{Part, PartId};

use super::Form;
use super::record_form::record_ui;
use crate::window::fields::choice::buttons_under;
use crate::window::tokens::EDGE_WORD;

/// Sides, top and bottom.
pub(crate) fn panels_ui(ui: &mut Ui, form: &mut Form<'_>) {
    use HorizontalField as H;
    for (part, name) in [
        (Part::LeftSide, "left side"),
        (Part::RightSide, "right side"),
        (Part::Top, "top"),
        (Part::Bottom, "bottom"),
    ] {
        CollapsingHeader::new(name).id_salt(name).show(ui, |ui| {
            panel_ui(ui, form, part);
            horizontal_ui(ui, form, part, &[H::SetBack, H::Housing, H::SetIn]);
            record_ui(ui, form, part, name);
        });
    }
}

/// One panel of the shown box.
pub(crate) fn panel_ui(ui: &mut Ui, form: &mut Form<'_>, part: Part) {
    use PanelField as P;
    let Some(id) = form.part(part) else { return };
    let of = |field| FieldRef::Panel(id, field);
    form.fields(ui, [P::Thickness, P::Material].map(of));
    let [front, back, first, last] = P::BANDS;
    for pair in [[front, back], [first, last]] {
        let words = pair.map(|field| (field.word_at(part), EDGE_WORD));
        form.pair(ui, pair.map(of), words);
    }
    form.field(ui, of(P::Drilled));
}

/// How a top, bottom or shelf sits between the sides; nothing for other panels.
pub(crate) fn horizontal_ui(
    ui: &mut Ui,
    form: &mut Form<'_>,
    part: Part,
    fields: &[HorizontalField],
) {
    let Some(id) = form.part(part) else { return };
    form.fields(ui, fields.iter().map(|it| FieldRef::Horizontal(id, *it)));
}

/// The back.
pub(crate) fn back_ui(ui: &mut Ui, form: &mut Form<'_>) {
    let Some(shown) = form.wall_box() else { return };
    let (id, kind) = (shown.id, BackKind::of(&shown.back));
    let all = [
        (BackKind::Open, "none"),
        (BackKind::Grooved, "grooved"),
        (BackKind::Rebated, "rebated"),
        (BackKind::LaidOn, "laid on"),
    ];
    if let Some(kind) = buttons_under(ui, "back", kind, &all) {
        form.press("back", set_back(form.job, id, kind));
    }
    let back = PartId {
        box_id: id,
        part: Part::Back,
    };
    let panel = [PanelField::Thickness, PanelField::Material];
    form.fields(ui, panel.map(|it| FieldRef::Panel(back, it)));
    let let_in = [BoxField::BackInset, BoxField::BackGroove, BoxField::BackLap];
    form.fields(ui, let_in.map(|it| FieldRef::Box(id, it)));
}
