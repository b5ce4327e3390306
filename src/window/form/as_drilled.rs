//! The table of bores that an existing door has already.

use egui::{RichText, Ui};
use flapwright_model::door::{BoreReference, DrilledBore, End, Side};
use flapwright_model::part::LeafId;

use super::{Form, names};
use crate::window::fields::Change;
use crate::window::fields::choice::buttons;
use crate::window::fields::text::text;
use crate::window::tokens::tokens;

/// The bores, each with its distances.
pub(crate) fn bores_ui(ui: &mut Ui, form: &mut Form<'_>, bores: &[DrilledBore]) {
    let soft = tokens(ui).text_soft;
    if bores.is_empty() {
        ui.label(RichText::new("No bore yet.").color(soft));
    }
    for (index, bore) in bores.iter().enumerate() {
        let title = format!(
            "{}: {} {}, {} {}",
            index + 1,
            bore.from_side.edge().word(),
            form.length().show(bore.across),
            bore.from_end.edge().word(),
            form.length().show(bore.along),
        );
        let id = form.door_path(&format!("as_drilled[{index}]"));
        egui::CollapsingHeader::new(title)
            .id_salt(id)
            .show(ui, |ui| {
                bore_ui(ui, form, index, bore);
            });
    }
    if ui
        .button("Add bore")
        .on_hover_text("One more bore that the door has.")
        .clicked()
    {
        let leaf = if form.folds() {
            LeafId::Upper
        } else {
            LeafId::Only
        };
        let bore = bores.last().cloned().unwrap_or_else(|| DrilledBore {
            leaf,
            from_side: Side::Left,
            across: 20.0,
            from_end: End::Top,
            along: 60.0,
            diameter: 5.0,
            depth: 11.0,
            purpose: "fitting screw".to_owned(),
        });
        form.press_drilled("add bore", move |list| list.push(bore));
    }
}

fn bore_ui(ui: &mut Ui, form: &mut Form<'_>, index: usize, bore: &DrilledBore) {
    let path = form.door_path(&format!("as_drilled[{index}]"));
    let name = format!("bore {}", index + 1);
    if form.folds() {
        let all = [(LeafId::Upper, "upper"), (LeafId::Lower, "lower")];
        let change = buttons(ui, &format!("{path}.leaf"), "leaf", &bore.leaf, &all);
        form.edit_drilled(&format!("{name} leaf"), index, change, |b, v| b.leaf = v);
    }
    let all = [(Side::Left, "left edge"), (Side::Right, "right edge")];
    let change = buttons(
        ui,
        &format!("{path}.from_side"),
        "across from",
        &bore.from_side,
        &all,
    );
    form.edit_drilled(&format!("{name} side edge"), index, change, |b, v| {
        b.from_side = v;
    });
    let all = [(End::Top, "top edge"), (End::Bottom, "bottom edge")];
    let change = buttons(
        ui,
        &format!("{path}.from_end"),
        "along from",
        &bore.from_end,
        &all,
    );
    form.edit_drilled(&format!("{name} end edge"), index, change, |b, v| {
        b.from_end = v;
    });
    type Set = fn(&mut DrilledBore, f64);
    let all: [(&str, &str, f64, Set); 4] = [
        (
            "across",
            "To that edge, as seen from the front.",
            bore.across,
            |b, v| b.across = v,
        ),
        ("along", "To that edge.", bore.along, |b, v| b.along = v),
        ("diameter", "Of the bore.", bore.diameter, |b, v| {
            b.diameter = v;
        }),
        ("depth", "To the full diameter.", bore.depth, |b, v| {
            b.depth = v;
        }),
    ];
    let length = form.length();
    for (word, meaning, value, set) in all {
        let full = format!("{name} {word}");
        let words = names(&full, word, meaning);
        let change = form.row(ui, &format!("{path}.{word}"), words, length, value);
        form.edit_drilled(&full, index, change, set);
    }
    let full = format!("{name} purpose");
    let change = text(
        ui,
        form.fields,
        &format!("{path}.purpose"),
        &full,
        "purpose",
        &bore.purpose,
    );
    form.edit_drilled(&full, index, change, |b, v| b.purpose = v);
    if ui
        .small_button("Remove")
        .accessible_name(format!("Remove {name}"))
        .clicked()
    {
        form.press_drilled(&format!("remove {name}"), move |list| {
            if index < list.len() {
                list.remove(index);
            }
        });
    }
}

impl Form<'_> {
    fn edit_drilled<T>(
        &mut self,
        what: &str,
        index: usize,
        change: Option<Change<T>>,
        set: impl FnOnce(&mut DrilledBore, T),
    ) {
        self.edit_door(what, change, |door, value| {
            if let BoreReference::AsDrilled(list) = &mut door.bores_hang_on
                && let Some(bore) = list.get_mut(index)
            {
                set(bore, value);
            }
        });
    }

    fn press_drilled(&mut self, what: &str, set: impl FnOnce(&mut Vec<DrilledBore>)) {
        let opening = self.opening;
        self.press_box(what, |b| {
            let door = b.openings.get_mut(opening).and_then(|o| o.door.as_mut());
            if let Some(BoreReference::AsDrilled(list)) = door.map(|door| &mut door.bores_hang_on) {
                set(list);
            }
        });
    }
}
