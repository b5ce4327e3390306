//! The panels of the box: thickness, material, bands; how the back is let in.

use egui::{CollapsingHeader, Ui};
use flapwright_model::cabinet::{Back, HorizontalPanel, Panel, WallBox};
use flapwright_model::part::Part;

use super::bands::{Ends, bands_ui, drilled_ui};
use super::record_form::record_ui;
use super::{Form, names};
use crate::window::fields::choice::buttons_under;

type PanelOf = fn(&mut WallBox) -> &mut Panel;
type PieceOf = fn(&mut WallBox) -> &mut HorizontalPanel;

/// Sides, top and bottom.
pub(crate) fn panels_ui(ui: &mut Ui, form: &mut Form<'_>, shown: &WallBox) {
    let sides: [(&str, Part, &Panel, PanelOf); 2] = [
        ("left side", Part::LeftSide, &shown.left, |b| &mut b.left),
        ("right side", Part::RightSide, &shown.right, |b| {
            &mut b.right
        }),
    ];
    for (name, part, panel, of) in sides {
        CollapsingHeader::new(name).id_salt(name).show(ui, |ui| {
            panel_ui(ui, form, name, panel, Ends::Upright, of);
            record_ui(ui, form, part, name);
        });
    }
    let pieces: [(&str, Part, &HorizontalPanel, PieceOf, PanelOf); 2] = [
        (
            "top",
            Part::Top,
            &shown.top,
            |b| &mut b.top,
            |b| &mut b.top.panel,
        ),
        (
            "bottom",
            Part::Bottom,
            &shown.bottom,
            |b| &mut b.bottom,
            |b| &mut b.bottom.panel,
        ),
    ];
    for (name, part, piece, of, panel_of) in pieces {
        CollapsingHeader::new(name).id_salt(name).show(ui, |ui| {
            panel_ui(ui, form, name, &piece.panel, Ends::Level, panel_of);
            piece_ui(ui, form, name, piece, true, of);
            record_ui(ui, form, part, name);
        });
    }
}

/// One panel.
pub(crate) fn panel_ui(
    ui: &mut Ui,
    form: &mut Form<'_>,
    name: &str,
    panel: &Panel,
    ends: Ends,
    of: impl Fn(&mut WallBox) -> &mut Panel,
) {
    let path = form.box_path(name);
    let full = format!("{name} thickness");
    let words = names(&full, "thickness", "Finished thickness.");
    let length = form.length();
    let change = form.row(
        ui,
        &format!("{path}.thickness"),
        words,
        length,
        panel.thickness,
    );
    form.edit_box(&full, change, |b, v| of(b).thickness = v);

    let full = format!("{name} material");
    let change = form.material(ui, &format!("{path}.material"), &full, &panel.material);
    form.edit_box(&full, change, |b, v| of(b).material = v);

    let change = bands_ui(ui, form, &path, name, ends, panel.bands);
    form.edit_box(&format!("{name} edge bands"), change, |b, v| {
        of(b).bands = v;
    });

    let change = drilled_ui(ui, &path, panel.drilled);
    form.edit_box(&format!("{name} drilled"), change, |b, v| of(b).drilled = v);
}

/// How a top, bottom or shelf sits between the sides.
pub(crate) fn piece_ui(
    ui: &mut Ui,
    form: &mut Form<'_>,
    name: &str,
    piece: &HorizontalPanel,
    with_set_in: bool,
    of: impl Fn(&mut WallBox) -> &mut HorizontalPanel,
) {
    let path = form.box_path(name);
    let length = form.length();
    let full = format!("{name} set back");
    let words = names(
        &full,
        "set back",
        "Front edge behind the sides' front edges.",
    );
    let change = form.row(
        ui,
        &format!("{path}.set_back"),
        words,
        length,
        piece.set_back,
    );
    form.edit_box(&full, change, |b, v| of(b).set_back = v);

    let full = format!("{name} housing");
    let words = names(&full, "housed", "How far each end is let into the side.");
    let change = form.row(ui, &format!("{path}.housing"), words, length, piece.housing);
    form.edit_box(&full, change, |b, v| of(b).housing = v);

    if with_set_in {
        let full = format!("{name} set in");
        let words = names(
            &full,
            "set in",
            "From the ends of the sides inwards; 0 is flush.",
        );
        let change = form.row(ui, &format!("{path}.set_in"), words, length, piece.set_in);
        form.edit_box(&full, change, |b, v| of(b).set_in = v);
    }
}

/// The four ways of a back, without their numbers.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum BackKind {
    Open,
    Grooved,
    Rebated,
    LaidOn,
}

/// The back.
pub(crate) fn back_ui(ui: &mut Ui, form: &mut Form<'_>, shown: &WallBox) {
    let kind = match &shown.back {
        Back::Open => BackKind::Open,
        Back::Grooved { .. } => BackKind::Grooved,
        Back::Rebated { .. } => BackKind::Rebated,
        Back::LaidOn { .. } => BackKind::LaidOn,
    };
    let all = [
        (BackKind::Open, "none"),
        (BackKind::Grooved, "grooved"),
        (BackKind::Rebated, "rebated"),
        (BackKind::LaidOn, "laid on"),
    ];
    let path = form.box_path("back");
    let change = buttons_under(ui, &path, "back", &kind, &all);
    let plain = Panel {
        thickness: 6.0,
        ..shown.left.clone()
    };
    form.edit_box("back", change, |b, kind| {
        let mut panel = b.back.panel().cloned().unwrap_or(plain);
        panel.bands = flapwright_model::cabinet::PanelBands::default();
        b.back = match kind {
            BackKind::Open => Back::Open,
            BackKind::Grooved => Back::Grooved {
                panel,
                inset: 10.0,
                groove: 6.0,
            },
            BackKind::Rebated => Back::Rebated { panel, lap: 8.0 },
            BackKind::LaidOn => Back::LaidOn { panel },
        };
    });
    let Some(panel) = shown.back.panel() else {
        return;
    };
    let length = form.length();
    let words = names("back thickness", "thickness", "Thickness of the back.");
    let change = form.row(
        ui,
        &format!("{path}.thickness"),
        words,
        length,
        panel.thickness,
    );
    form.edit_box("back thickness", change, |b, v| {
        if let Some(panel) = b.back.panel_mut() {
            panel.thickness = v;
        }
    });
    let change = form.material(
        ui,
        &format!("{path}.material"),
        "back material",
        &panel.material,
    );
    form.edit_box("back material", change, |b, v| {
        if let Some(panel) = b.back.panel_mut() {
            panel.material = v;
        }
    });
    match &shown.back {
        Back::Grooved { inset, groove, .. } => {
            let words = names(
                "back inset",
                "inset",
                "Rear edges of the sides to its rear face.",
            );
            let change = form.row(ui, &format!("{path}.inset"), words, length, *inset);
            form.edit_box("back inset", change, |b, v| {
                if let Back::Grooved { inset, .. } = &mut b.back {
                    *inset = v;
                }
            });
            let words = names("back groove depth", "groove", "Depth of the groove.");
            let change = form.row(ui, &format!("{path}.groove"), words, length, *groove);
            form.edit_box("back groove depth", change, |b, v| {
                if let Back::Grooved { groove, .. } = &mut b.back {
                    *groove = v;
                }
            });
        }
        Back::Rebated { lap, .. } => {
            let words = names(
                "back lap",
                "lap",
                "How far it laps onto sides, top and bottom.",
            );
            let change = form.row(ui, &format!("{path}.lap"), words, length, *lap);
            form.edit_box("back lap", change, |b, v| {
                if let Back::Rebated { lap, .. } = &mut b.back {
                    *lap = v;
                }
            });
        }
        Back::Open | Back::LaidOn { .. } => {}
    }
}
