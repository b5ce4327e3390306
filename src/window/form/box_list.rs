//! The boxes of the job, and what can be done to the list.

use egui::{Id, Rect, ScrollArea, Ui, vec2};
use flapwright_model::cabinet::WallBox;
use flapwright_model::id::BoxId;
use flapwright_session::action::Action;
use flapwright_session::action_table::ActionId;

use super::Form;
use crate::window::command::Command;
use crate::window::tokens::toggle;

/// So many boxes stand side by side; more become a list that scrolls, so that the form stays in
/// sight and only the boxes in sight cost anything.
const SIDE_BY_SIDE: usize = 24;
/// How many boxes of such a list are in sight.
const ROWS: f32 = 7.0;

/// Shows the boxes and the buttons beneath them.
pub(super) fn box_list_ui(ui: &mut Ui, form: &mut Form<'_>) {
    if form.job.boxes.len() > SIDE_BY_SIDE {
        scrolling(ui, form);
    } else {
        ui.horizontal_wrapped(|ui| {
            for wall_box in &form.job.boxes {
                tab(ui, form, wall_box);
            }
        });
    }
    ui.horizontal(|ui| {
        let some = form.wall_box().is_some();
        for (id, text, enabled) in [
            (ActionId::AddBox, "Add", true),
            (ActionId::DuplicateBox, "Duplicate", some),
            (ActionId::RemoveBox, "Remove", some),
        ] {
            let button = ui.add_enabled(enabled, egui::Button::new(text).small());
            if button
                .accessible_name(id.title())
                .on_hover_text(id.tooltip())
                .clicked()
            {
                form.queue.push(Command::Choose(id));
            }
        }
    });
}

/// Many boxes, one below the other. A box that is newly shown comes into sight.
fn scrolling(ui: &mut Ui, form: &mut Form<'_>) {
    let boxes = &form.job.boxes;
    let last_shown = Id::unique("last shown box");
    let before = ui.data(|data| data.get_temp::<Option<BoxId>>(last_shown));
    let newly = before != Some(form.box_id);
    ui.data_mut(|data| data.insert_temp(last_shown, form.box_id));
    let row = ui.spacing().interact_size.y;
    let pitch = row + ui.spacing().item_spacing.y;
    ScrollArea::vertical()
        .id_salt("boxes")
        .max_height(pitch * ROWS)
        .auto_shrink([false, true])
        .show_rows(ui, row, boxes.len(), |ui, rows| {
            let shown = boxes.iter().position(|it| Some(it.id) == form.box_id);
            if let Some(index) = shown.filter(|_| newly) {
                let below = (index as f32 - rows.start as f32) * pitch;
                let top = ui.min_rect().left_top() + vec2(0.0, below);
                ui.scroll_to_rect(Rect::from_min_size(top, vec2(1.0, row)), None);
            }
            for wall_box in boxes.get(rows).unwrap_or_default() {
                tab(ui, form, wall_box);
            }
        });
}

fn tab(ui: &mut Ui, form: &mut Form<'_>, wall_box: &WallBox) {
    let chosen = form.box_id == Some(wall_box.id);
    let text = if wall_box.quantity == 1 {
        wall_box.name.clone()
    } else {
        format!("{} ×{}", wall_box.name, wall_box.quantity)
    };
    let tab = toggle(ui, chosen, text);
    if tab
        .accessible_name(format!("Box {}", wall_box.name))
        .clicked()
    {
        form.queue.push(Command::Do(Action::ShowBox(wall_box.id)));
    }
}
