//! Pages on the screen: small ones in a row, one of them large.

use egui::{Align, Color32, Key, Modifiers, Rect, ScrollArea, Sense, Stroke, Theme, Ui, Vec2};
use flapwright_drawing::sheet::Sheet;

use crate::window::canvas::camera::ToScreen;
use crate::window::canvas::paint;
use crate::window::tokens::{Tokens, bold, tokens};

/// Width of a thumbnail, screen points.
const SMALL: f32 = 92.0;
/// Least and greatest size of the large page, times the size that fits.
const ZOOMS: std::ops::RangeInclusive<f32> = 1.0..=8.0;

/// The small pages; a click chooses one.
pub(super) fn thumbnails_ui(ui: &mut Ui, sheets: &[Sheet], page: &mut usize) {
    ScrollArea::vertical()
        .id_salt("thumbnails")
        .auto_shrink(false)
        .show(ui, |ui| {
            for (index, sheet) in sheets.iter().enumerate() {
                let size = paper(sheet) * (SMALL / paper(sheet).x);
                let (room, response) =
                    ui.allocate_exact_size(size, Sense::click() | Sense::FOCUSABLE);
                let name = format!("Page {}: {}", index + 1, sheet.title);
                response.widget_info(|| {
                    egui::WidgetInfo::selected(
                        egui::Role::ListBoxOption,
                        true,
                        index == *page,
                        &name,
                    )
                });
                if response.clicked() {
                    *page = index;
                }
                if ui.is_rect_visible(room) {
                    draw(ui, room, sheet);
                    if index == *page || response.has_focus() {
                        let stroke = Stroke::new(2.0, tokens(ui).accent);
                        ui.painter()
                            .rect_stroke(room, 0.0, stroke, egui::StrokeKind::Outside);
                    }
                }
                let words = egui::RichText::new(format!("{}  {}", index + 1, sheet.title)).small();
                ui.add(egui::Label::new(words).truncate());
                response.on_hover_text(name);
                ui.add_space(6.0);
            }
        });
}

/// One page as large as it fits, or larger.
pub(super) fn page_ui(ui: &mut Ui, sheets: &[Sheet], page: &mut usize, zoom: &mut f32) {
    let Some(sheet) = sheets.get(*page) else {
        ui.label("There is no such page: no panel is drilled, or no kind of page is chosen.");
        return;
    };
    ui.horizontal(|ui| {
        let last = sheets.len() - 1;
        let turned = |ui: &mut Ui, key| {
            ui.memory(|memory| memory.focused().is_none())
                && ui.input_mut(|input| input.consume_key(Modifiers::NONE, key))
        };
        let back = ui.add_enabled(*page > 0, egui::Button::new("Page before"));
        if (back.clicked() || turned(ui, Key::PageUp)) && *page > 0 {
            *page -= 1;
        }
        let on = ui.add_enabled(*page < last, egui::Button::new("Next page"));
        if (on.clicked() || turned(ui, Key::PageDown)) && *page < last {
            *page += 1;
        }
        ui.label(bold(format!("{} of {}", *page + 1, sheets.len())));
        ui.label(sheet.title.as_str());
        ui.with_layout(egui::Layout::right_to_left(Align::Center), |ui| {
            ui.add(
                egui::Slider::new(zoom, ZOOMS)
                    .logarithmic(true)
                    .show_value(false)
                    .text("larger"),
            );
        });
    });
    let room = ui.available_size();
    let paper = paper(sheet);
    let fit = (room.x / paper.x).min(room.y / paper.y);
    ScrollArea::both()
        .id_salt(("page", *page))
        .auto_shrink(false)
        .show(ui, |ui| {
            let (place, _) = ui.allocate_exact_size(paper * fit * *zoom * 0.98, Sense::hover());
            draw(ui, place, sheet);
        });
}

/// Width and height of the paper, mm.
#[expect(clippy::cast_possible_truncation, reason = "screen points")]
fn paper(sheet: &Sheet) -> Vec2 {
    Vec2::new(sheet.paper.width as f32, sheet.paper.height as f32)
}

/// Paints a page into a place of its own proportions: always dark ink on white, as it is printed.
fn draw(ui: &Ui, place: Rect, sheet: &Sheet) {
    let painter = ui.painter_at(place.intersect(ui.clip_rect()));
    painter.rect_filled(place, 0.0, Color32::WHITE);
    let points_per_mm = place.width() / paper(sheet).x;
    let to = ToScreen::at(place.left_bottom(), points_per_mm);
    paint::paint(&painter, &sheet.list, to, Tokens::of(Theme::Light));
}
