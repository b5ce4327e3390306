//! What a door carries and weighs: handle and mass.

use egui::Ui;
use flapwright_model::door::{Door, Handle, HandleScrews, TypedMass};

use super::{Form, names};
use crate::window::fields::choice::tick;
use crate::window::fields::quantity::Quantity;

/// The handle, if there is one.
pub(crate) fn handle_ui(ui: &mut Ui, form: &mut Form<'_>, door: &Door) {
    let path = form.door_path("handle");
    let change = tick(ui, &path, "with a handle", door.handle.is_some());
    form.edit_door("handle", change, |d, with| {
        d.handle = with.then_some(Handle {
            mass: 0.1,
            up: 40.0,
            right_of_middle: 0.0,
            projection: 30.0,
            length: 140.0,
            screws: None,
        });
    });
    let Some(handle) = &door.handle else { return };
    let length = form.length();
    type Set = fn(&mut Handle, f64);
    let all: [(&str, &str, Quantity, f64, Set); 5] = [
        (
            "handle mass",
            "",
            Quantity::Kilograms,
            handle.mass,
            |h, v| h.mass = v,
        ),
        (
            "above bottom edge",
            "Its middle.",
            length,
            handle.up,
            |h, v| h.up = v,
        ),
        (
            "right of middle",
            "Its middle from the door's own, as seen from the front.",
            length,
            handle.right_of_middle,
            |h, v| h.right_of_middle = v,
        ),
        (
            "projection",
            "From the face of the door.",
            length,
            handle.projection,
            |h, v| {
                h.projection = v;
            },
        ),
        (
            "handle length",
            "Left to right.",
            length,
            handle.length,
            |h, v| h.length = v,
        ),
    ];
    for (word, meaning, quantity, value, set) in all {
        let full = format!("handle: {word}");
        let words = names(&full, word, meaning);
        let change = form.row(ui, &format!("{path}.{word}"), words, quantity, value);
        form.edit_door(&full, change, |d, v| {
            if let Some(handle) = &mut d.handle {
                set(handle, v);
            }
        });
    }
    let change = tick(
        ui,
        &format!("{path}.screws"),
        "screwed through",
        handle.screws.is_some(),
    );
    form.edit_door("handle screws", change, |d, with| {
        if let Some(handle) = &mut d.handle {
            handle.screws = with.then_some(HandleScrews {
                spacing: 128.0,
                diameter: 5.0,
            });
        }
    });
    let Some(screws) = handle.screws else { return };
    type SetScrews = fn(&mut HandleScrews, f64);
    let all: [(&str, &str, f64, SetScrews); 2] = [
        (
            "screw spacing",
            "Centre to centre; 0 for one screw.",
            screws.spacing,
            |s, v| {
                s.spacing = v;
            },
        ),
        ("screw bore", "Diameter.", screws.diameter, |s, v| {
            s.diameter = v;
        }),
    ];
    for (word, meaning, value, set) in all {
        let full = format!("handle: {word}");
        let words = names(&full, word, meaning);
        let change = form.row(ui, &format!("{path}.{word}"), words, length, value);
        form.edit_door(&full, change, |d, v| {
            if let Some(screws) = d.handle.as_mut().and_then(|h| h.screws.as_mut()) {
                set(screws, v);
            }
        });
    }
}

/// Mass by build-up, and as weighed or told.
pub(crate) fn mass_ui(ui: &mut Ui, form: &mut Form<'_>, door: &Door) {
    if let Some(report) = form
        .inspection
        .boxes
        .get(form.box_index)
        .and_then(|b| b.openings.get(form.opening))
        .and_then(|o| o.door.as_ref())
    {
        let built = &report.built_mass;
        let text = format!(
            "By its build-up: {:.2} kg ({:.2} to {:.2} kg)",
            built.likely, built.low, built.high
        );
        ui.label(text);
    }
    let path = form.door_path("typed_mass");
    let change = tick(ui, &path, "weighed or told", door.typed_mass.is_some());
    form.edit_door("typed mass", change, |d, with| {
        d.typed_mass = with.then_some(TypedMass {
            kilograms: 3.0,
            plus_minus: 0.1,
        });
    });
    let Some(mass) = door.typed_mass else { return };
    let words = names(
        "door mass",
        "door mass",
        "Stands over what the build-up gives.",
    );
    let kilograms = Quantity::Kilograms;
    let change = form.row(
        ui,
        &format!("{path}.kilograms"),
        words,
        kilograms,
        mass.kilograms,
    );
    form.edit_door("mass", change, |d, v| {
        if let Some(mass) = &mut d.typed_mass {
            mass.kilograms = v;
        }
    });
    let words = names(
        "door mass plus or minus",
        "±",
        "Half the width of its range.",
    );
    let change = form.row(
        ui,
        &format!("{path}.plus_minus"),
        words,
        kilograms,
        mass.plus_minus,
    );
    form.edit_door("mass ±", change, |d, v| {
        if let Some(mass) = &mut d.typed_mass {
            mass.plus_minus = v;
        }
    });
}
