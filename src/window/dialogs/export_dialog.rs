//! How the sheets are to be written.

use egui::{Context, Slider};
use flapwright_export::DPI_LIMITS;

use super::{answers, close, entered, modal};
use crate::window::command::Command;
use crate::window::export_job::ExportChoice;
use crate::window::tokens::{bold, tokens};

/// PDF, PNG and its resolution; then a folder is asked for.
pub(super) fn export_ui(ctx: &Context, choice: &mut ExportChoice, queue: &mut Vec<Command>) {
    let (answer, gone) = modal(ctx, "export", |ui| {
        ui.label(bold("Export drilling sheets").size(15.0));
        ui.label("One page for each drilled panel.");
        ui.add_space(4.0);
        ui.checkbox(&mut choice.pdf, "PDF: all pages in one file");
        ui.checkbox(&mut choice.png, "PNG: one picture for each page");
        ui.add_enabled_ui(choice.png, |ui| {
            ui.add(
                Slider::new(&mut choice.dpi, DPI_LIMITS)
                    .step_by(50.0)
                    .text("dots per inch"),
            );
        });
        ui.add_space(4.0);
        ui.checkbox(&mut choice.remember, "Remember these sheets in the job")
            .on_hover_text("The checks then tell when a bore moves on a sheet that is out.");
        ui.add_enabled_ui(choice.remember, |ui| {
            ui.checkbox(&mut choice.drilled, "These panels get drilled now")
                .on_hover_text("Their bores are facts from now on.");
        });
        let some = choice.pdf || choice.png;
        if !some {
            ui.colored_label(tokens(ui).stop, "Choose PDF, PNG or both.");
        }
        let pressed = answers(ui, &["Choose folder", "Cancel"]);
        pressed
            .or_else(|| entered(ui).then_some(0))
            .filter(|index| *index != 0 || some)
    });
    match answer {
        Some(0) => queue.push(Command::Export(*choice)),
        Some(_) => queue.push(close()),
        None if gone => queue.push(close()),
        None => {}
    }
}
