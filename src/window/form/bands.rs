//! Edge bands and the order of drilling and banding.

use egui::Ui;
use flapwright_model::cabinet::{Drilled, PanelBands};

use super::Form;
use crate::window::fields::Change;
use crate::window::fields::choice::buttons;
use crate::window::fields::field_id;
use crate::window::fields::number::{Number, cell, problem, word};
use crate::window::tokens::EDGE_WORD;

/// An edge's name, its band and how to set it.
type BandOf = (&'static str, f64, fn(&mut PanelBands, f64));

const BAND: &str = "Thickness of the edge band, 0 for none. Sizes are finished sizes.";

/// Which ends a panel has: those of a side, or those of a top, bottom or shelf.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum Ends {
    /// Top and bottom end.
    Upright,
    /// Left and right end.
    Level,
}

/// The four bands of a panel of the box.
pub(crate) fn bands_ui(
    ui: &mut Ui,
    form: &mut Form<'_>,
    path: &str,
    name: &str,
    ends: Ends,
    bands: PanelBands,
) -> Option<Change<PanelBands>> {
    let (first, last) = match ends {
        Ends::Upright => ("top", "bottom"),
        Ends::Level => ("left", "right"),
    };
    let mut changed = None;
    let rows: [[BandOf; 2]; 2] = [
        [
            ("front", bands.front, |b, v| b.front = v),
            ("back", bands.back, |b, v| b.back = v),
        ],
        [
            (first, bands.top_or_left, |b, v| b.top_or_left = v),
            (last, bands.bottom_or_right, |b, v| b.bottom_or_right = v),
        ],
    ];
    for row in rows {
        let paths = row.map(|(edge, ..)| format!("{path}.bands.{edge}"));
        ui.horizontal(|ui| {
            for ((edge, value, set), path) in row.iter().zip(&paths) {
                let full = format!("{name} band {edge}");
                let this = Number {
                    path,
                    name: &full,
                    word: edge,
                    meaning: BAND,
                    quantity: form.length(),
                    word_width: EDGE_WORD,
                };
                let dragged = word(ui, form.fields, this, *value);
                let change = dragged.or(cell(ui, form.fields, this, *value));
                changed = changed.take().or_else(|| {
                    change.map(|change| {
                        change.map(|value| {
                            let mut after = bands;
                            set(&mut after, value);
                            after
                        })
                    })
                });
            }
        });
        for path in &paths {
            problem(ui, form.fields, field_id(path));
        }
    }
    changed
}

/// Drilled before or after banding.
pub(crate) fn drilled_ui(ui: &mut Ui, path: &str, now: Drilled) -> Option<Change<Drilled>> {
    let all = [
        (Drilled::AfterBanding, "after"),
        (Drilled::BeforeBanding, "before"),
    ];
    buttons(
        ui,
        &format!("{path}.drilled"),
        "banding: drilled",
        &now,
        &all,
    )
}
