//! Card, size and packing, and the card's numbers to read.

use egui::{CollapsingHeader, Grid, RichText, Ui};
use flapwright_model::card::{Card, Depth, FittedSides, PerSize};
use flapwright_model::change::set_fitting;
use flapwright_model::door::{Door, FittingChoice};
use flapwright_model::field::{DoorField, FieldRef, Value};
use flapwright_model::id::BoxId;
use flapwright_model::lift::{Carries, PieceCount};

use super::{Form, door_form, note};
use crate::window::fields::choice::{Called, pick};
use crate::window::fields::field_id;
use crate::window::fields::quantity::Quantity;
use crate::window::tokens::tokens;

/// The section *Fitting and size*.
pub(crate) fn fitting_ui(ui: &mut Ui, form: &mut Form<'_>) {
    door_form::which_opening(ui, form);
    let (Some(id), Some(door)) = (form.wall_box().map(|it| it.id), form.door()) else {
        ui.label("A fitting goes with a door: this opening has none.");
        return;
    };
    card_pick(ui, form, id, door);
    let Some(choice) = &door.fitting else { return };
    let Some(card) = form.job.card_by_id(choice.card) else {
        return;
    };
    size_pick(
        ui,
        form,
        FieldRef::Door(id, door.id, DoorField::Size),
        card,
        choice,
    );
    if let Some(size) = card.size(&choice.size) {
        note(
            ui,
            &format!("Size {} carries {}.", size.name, carries(&size.carries)),
        );
    }
    form.field(ui, FieldRef::Door(id, door.id, DoorField::Packing));
    about_card(ui, card);
    let length = Quantity::Length(form.job.unit);
    CollapsingHeader::new("Numbers of the card")
        .id_salt("card numbers")
        .show(ui, |ui| {
            card_tables(ui, card, &choice.size, length);
        });
}

fn card_pick(ui: &mut Ui, form: &mut Form<'_>, id: BoxId, door: &Door) {
    let now = door.fitting.as_ref().map(|choice| choice.card);
    let mut all = vec![(None, "none".to_owned())];
    all.extend(form.job.cards.iter().map(|used| {
        let card = &used.card;
        let words = format!("{} ({})", card.name, card.kind.words());
        (Some(used.id), words)
    }));
    let called = Called {
        id: field_id(("card", door.id)),
        name: "Fitting card",
        word: "card",
        meaning: "The card of the fitting that carries the door.",
    };
    if let Some(change) = pick(ui, called, &now, &all) {
        let edit = set_fitting(form.job, id, door.id, change.value);
        form.press("fitting card", edit);
    }
}

fn size_pick(
    ui: &mut Ui,
    form: &mut Form<'_>,
    field: FieldRef,
    card: &Card,
    choice: &FittingChoice,
) {
    let sizes = card.sizes.iter().map(|size| {
        let words = format!("{}: {}", size.name, carries(&size.carries));
        (size.name.clone(), words)
    });
    let info = field.info();
    let called = Called {
        id: field_id(field),
        name: info.name,
        word: info.label,
        meaning: info.meaning,
    };
    let sizes: Vec<(String, String)> = sizes.collect();
    if let Some(change) = pick(ui, called, &choice.size, &sizes) {
        form.put(field, Value::Text(change.value.into()));
    }
}

fn about_card(ui: &mut Ui, card: &Card) {
    let soft = tokens(ui).text_soft;
    let sides = match card.sides {
        FittedSides::Both => "at both sides",
        FittedSides::LeftOnly => "at the left side only",
        FittedSides::RightOnly => "at the right side only",
    };
    let per = match card.per {
        PieceCount::PerPair => "loads are per pair",
        PieceCount::PerPiece => "loads are per piece",
    };
    let mut lines = vec![format!("{}, {sides}; {per}.", card.kind.words())];
    if card.invented {
        lines.push("Invented demo numbers.".to_owned());
    }
    if !card.maker_text.is_empty() {
        lines.push(card.maker_text.clone());
    }
    if !card.notes.is_empty() {
        lines.push(card.notes.clone());
    }
    for line in lines {
        ui.add(egui::Label::new(RichText::new(line).small().color(soft)).wrap());
    }
}

/// The numbers of a card, to read.
fn card_tables(ui: &mut Ui, card: &Card, size: &str, length: Quantity) {
    let show = |value: &PerSize| value.of(size).map_or("?".to_owned(), |mm| length.show(mm));
    ui.label(RichText::new("Side bores").strong());
    table(
        ui,
        "side bores",
        &["down", "back", "Ø", "depth", "for"],
        |ui| {
            for bore in &card.side_bores {
                ui.label(show(&bore.down.by));
                ui.label(show(&bore.back.by));
                drill(ui, &bore.drill, length);
            }
        },
    );
    if card.top_bores.iter().any(|group| !group.bores.is_empty()) {
        ui.label(RichText::new("Bores in the underside above").strong());
        table(
            ui,
            "top bores",
            &["across", "back", "Ø", "depth", "for"],
            |ui| {
                for bore in card.top_bores.iter().flat_map(|group| &group.bores) {
                    ui.label(show(&bore.across.by));
                    ui.label(show(&bore.back.by));
                    drill(ui, &bore.drill, length);
                }
            },
        );
    }
    ui.label(RichText::new("Door bores").strong());
    table(
        ui,
        "door bores",
        &["across", "down", "Ø", "depth", "for"],
        |ui| {
            for bore in card.door_bores.iter().flat_map(|group| &group.bores) {
                ui.label(show(&bore.across.by));
                ui.label(show(&bore.down.by));
                drill(ui, &bore.drill, length);
            }
        },
    );
    ui.label(RichText::new("Adjustment of the door").strong());
    table(ui, "adjustment", &["", "least", "most"], |ui| {
        let a = &card.adjustment;
        for (name, travel) in [
            ("sideways", a.sideways),
            ("up", a.upward),
            ("in depth", a.depth),
        ] {
            ui.label(name);
            ui.label(length.show(travel.min));
            ui.label(length.show(travel.max));
            ui.end_row();
        }
    });
    ui.label(RichText::new("Sizes").strong());
    table(
        ui,
        "sizes",
        &["size", "carries", "clear height", "clear depth"],
        |ui| {
            for size in &card.sizes {
                ui.label(&size.name);
                ui.label(carries(&size.carries));
                ui.label(length.show(size.least_inner_height));
                ui.label(length.show(size.least_inner_depth));
                ui.end_row();
            }
        },
    );
}

fn table(ui: &mut Ui, id: &str, heads: &[&str], rows: impl FnOnce(&mut Ui)) {
    egui::ScrollArea::horizontal()
        .id_salt(("scroll", id))
        .show(ui, |ui| {
            Grid::new(id)
                .striped(true)
                .spacing([10.0, 3.0])
                .show(ui, |ui| {
                    for head in heads {
                        ui.label(RichText::new(*head).small().color(tokens(ui).text_soft));
                    }
                    ui.end_row();
                    rows(ui);
                });
        });
}

fn drill(ui: &mut Ui, drill: &flapwright_model::card::Drill, length: Quantity) {
    ui.label(length.show(drill.diameter));
    ui.label(match drill.depth {
        Depth::Blind(depth) => length.show(depth),
        Depth::Through => "through".to_owned(),
    });
    ui.label(&drill.purpose);
    ui.end_row();
}

/// What a size carries, in a few words.
pub(crate) fn carries(carries: &Carries) -> String {
    match carries {
        Carries::Mass { min, max } => format!("{min} to {max} kg"),
        Carries::Moment {
            min,
            max,
            at_degrees,
        } => {
            format!("{min} to {max} N·m at {at_degrees}°")
        }
        Carries::MassByDoorHeight(rows) => by_height(rows, "by door height"),
        Carries::MassByBoxHeight(rows) => by_height(rows, "by box height"),
    }
}

fn by_height(rows: &[flapwright_model::lift::MassRow], by: &str) -> String {
    let least = rows.iter().map(|row| row.min).fold(f64::INFINITY, f64::min);
    let most = rows.iter().map(|row| row.max).fold(0.0, f64::max);
    if rows.is_empty() {
        by.to_owned()
    } else {
        format!("{least} to {most} kg {by}")
    }
}
