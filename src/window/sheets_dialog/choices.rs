//! Which pages, on what paper, in which formats.

use egui::{ComboBox, Response, Slider, Ui};
use flapwright_drawing::job_sheets::{Orientation, PageKind};
use flapwright_drawing::scale::Scale;
use flapwright_export::DPI_LIMITS;
use flapwright_model::job::PaperChoice;

use crate::window::tokens::{bold, tokens};
use flapwright_session::export::ExportChoice;

const PAPERS: [(Option<PaperChoice>, &str); 5] = [
    (None, "the job's paper"),
    (Some(PaperChoice::A4), "A4"),
    (Some(PaperChoice::A3), "A3"),
    (Some(PaperChoice::Letter), "Letter"),
    (Some(PaperChoice::Tabloid), "Tabloid"),
];

const WAYS: [(Orientation, &str); 3] = [
    (Orientation::Best, "whichever is larger"),
    (Orientation::Upright, "upright"),
    (Orientation::Lying, "lying"),
];

pub(super) fn choices_ui(ui: &mut Ui, choice: &mut ExportChoice) {
    ui.label(bold("Export sheets").size(15.0));
    ui.add_space(4.0);
    ui.label(bold("Pages"));
    for kind in PageKind::ALL {
        let mut wanted = choice.pages.kinds.contains(&kind);
        if ui.checkbox(&mut wanted, kind.words()).changed() {
            if wanted {
                choice.pages.kinds.insert(kind);
            } else {
                choice.pages.kinds.remove(&kind);
            }
        }
    }
    ui.add_space(4.0);
    pick(ui, "Paper", &PAPERS, &mut choice.pages.paper);
    pick(ui, "Way up", &WAYS, &mut choice.pages.orientation);
    pick(ui, "Scale", &scales(), &mut choice.pages.largest_scale)
        .on_hover_text("Full-size templates stay full size whatever is chosen here.");
    ui.add_space(6.0);
    ui.label(bold("Sheets as"));
    ui.checkbox(&mut choice.pdf, "PDF: all pages in one file");
    ui.add_enabled_ui(choice.pdf, |ui| {
        ui.indent("archive", |ui| {
            ui.checkbox(&mut choice.archive, "as PDF/A-1b, for keeping")
                .on_hover_text(
                    "Tried with Apache PDFBox Preflight. It carries the job's date of issue.",
                );
        });
    });
    ui.checkbox(&mut choice.svg, "SVG: one file for each page");
    ui.checkbox(&mut choice.png, "PNG: one picture for each page");
    ui.add_enabled_ui(choice.png, |ui| {
        ui.add(
            Slider::new(&mut choice.dpi, DPI_LIMITS)
                .step_by(50.0)
                .text("dots per inch"),
        );
    });
    ui.add_space(6.0);
    ui.label(bold("Bores as"));
    ui.checkbox(&mut choice.dxf, "DXF: one file for each drilled panel");
    ui.checkbox(&mut choice.csv, "CSV: one list");
    ui.checkbox(&mut choice.json, "JSON: one list");
    ui.add_space(6.0);
    ui.checkbox(&mut choice.remember, "Remember these sheets in the job")
        .on_hover_text("The checks then tell when a bore moves on a sheet that is out.");
    ui.add_enabled_ui(choice.remember, |ui| {
        ui.checkbox(&mut choice.drilled, "These panels get drilled now")
            .on_hover_text("Their bores are facts from now on.");
    });
    if !choice.writes_something() {
        ui.colored_label(tokens(ui).stop, "Choose at least one kind of file.");
    }
}

fn scales() -> Vec<(Scale, String)> {
    let words = |scale: Scale| match scale {
        Scale::FULL => "largest that fits".to_owned(),
        smaller => format!("{} at most", smaller.words()),
    };
    Scale::limits().map(|scale| (scale, words(scale))).collect()
}

fn pick<T: Copy + PartialEq, W: AsRef<str>>(
    ui: &mut Ui,
    label: &str,
    all: &[(T, W)],
    value: &mut T,
) -> Response {
    let words = all
        .iter()
        .find(|(it, _)| it == value)
        .map_or("", |(_, words)| words.as_ref());
    ui.horizontal(|ui| {
        let label = ui.label(label);
        ComboBox::from_id_salt(label.id)
            .selected_text(words)
            .show_ui(ui, |ui| {
                for (it, words) in all {
                    ui.selectable_value(value, *it, words.as_ref());
                }
            })
            .response
            .labelled_by(label.id)
    })
    .inner
}
