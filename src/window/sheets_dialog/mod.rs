//! The pages before they are written: which, on what paper, how each of them looks.

mod choices;
mod pages;

use egui::{Context, Ui};
use flapwright_drawing::job_sheets::{PageOptions, job_sheets};
use flapwright_drawing::sheet::Sheet;

use super::command::Command;
use super::dialogs::{answers, close, modal_of};
use flapwright_session::document::Document;
use flapwright_session::export::ExportChoice;

/// Width that the thumbnails take, screen points.
const THUMBNAILS: f32 = 132.0;
/// Width that the choices take, screen points.
const CHOICES: f32 = 236.0;
/// Room that the window around the dialog keeps, screen points.
const AROUND: egui::Vec2 = egui::vec2(60.0, 120.0);

/// What is to be written, and the pages as they will be.
#[derive(Debug, Clone, PartialEq, Default)]
pub(crate) struct SheetsDialog {
    /// What is to be written.
    pub(crate) choice: ExportChoice,
    /// The pages, and what they were made from.
    made: Option<(u64, PageOptions, Vec<Sheet>)>,
    /// The page that is shown large.
    page: usize,
    /// How large: 1 fits the page.
    zoom: Zoom,
}

/// How large a page is shown.
#[derive(Debug, Clone, Copy, PartialEq)]
struct Zoom(f32);

impl Default for Zoom {
    fn default() -> Self {
        Self(1.0)
    }
}

impl SheetsDialog {
    /// The pages, made anew only when the job or what is wanted has changed.
    fn sheets(&mut self, document: &Document) -> &[Sheet] {
        let current = self.made.as_ref().is_some_and(|(revision, options, _)| {
            *revision == document.revision() && *options == self.choice.pages
        });
        if !current {
            let sheets = job_sheets(document.job(), document.inspection(), &self.choice.pages);
            self.made = Some((document.revision(), self.choice.pages.clone(), sheets));
        }
        self.made.as_ref().map_or(&[], |(_, _, sheets)| sheets)
    }
}

/// Choices at the left, thumbnails, one page large; then a folder is asked for.
pub(crate) fn sheets_ui(
    ctx: &Context,
    dialog: &mut SheetsDialog,
    document: &Document,
    queue: &mut Vec<Command>,
) {
    let size = ctx.content_rect().size() - AROUND;
    let (answer, gone) = modal_of(ctx, "sheets", size.x, |ui| {
        ui.set_min_width(size.x);
        let room = size.y - 44.0;
        let across = egui::Layout::left_to_right(egui::Align::Min);
        ui.allocate_ui_with_layout(egui::vec2(size.x, room), across, |ui| {
            ui.set_max_height(room);
            column(ui, CHOICES, room, |ui| {
                egui::ScrollArea::vertical()
                    .id_salt("choices")
                    .auto_shrink(false)
                    .show(ui, |ui| choices::choices_ui(ui, &mut dialog.choice));
            });
            ui.separator();
            let count = dialog.sheets(document).len();
            dialog.page = dialog.page.min(count.saturating_sub(1));
            let (mut page, mut zoom) = (dialog.page, dialog.zoom.0);
            let sheets = dialog.sheets(document);
            column(ui, THUMBNAILS, room, |ui| {
                pages::thumbnails_ui(ui, sheets, &mut page);
            });
            ui.separator();
            let left = ui.available_width();
            column(ui, left, room, |ui| {
                pages::page_ui(ui, sheets, &mut page, &mut zoom);
            });
            (dialog.page, dialog.zoom.0) = (page, zoom);
        });
        let some = dialog.choice.writes_something() && !dialog.sheets(document).is_empty();
        answers(ui, &["Choose folder", "Cancel"]).filter(|index| *index != 0 || some)
    });
    match answer {
        Some(0) => queue.push(Command::Export(Box::new(dialog.choice.clone()))),
        Some(_) => queue.push(close()),
        None if gone => queue.push(close()),
        None => {}
    }
}

fn column(ui: &mut Ui, width: f32, height: f32, add: impl FnOnce(&mut Ui)) {
    ui.allocate_ui_with_layout(
        egui::vec2(width, height),
        egui::Layout::top_down(egui::Align::Min),
        |ui| {
            ui.set_width(width);
            ui.set_height(height);
            add(ui);
        },
    );
}
