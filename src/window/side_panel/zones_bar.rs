//! Where the door falls, holds and is pushed up, for the light, likely and heavy door.

use egui::{Align2, Color32, FontId, Rangef, Rect, Sense, Stroke, Ui, Vec2};
use flapwright_drawing::pen::Ink;
use flapwright_motion::statics::{Behaviour, Zone};

use super::AboutDoor;
use super::cache::Lines;
use super::legend::{Mark, legend_ui};
use crate::window::command::Command;
use crate::window::tokens::{Tokens, bold, tokens};
use flapwright_session::action::Action;

/// Height of one row.
const ROW: f32 = 17.0;

/// Shows the three rows under the plots, between the same two edges.
pub(super) fn zones_ui(
    ui: &mut Ui,
    about: AboutDoor<'_>,
    lines: &Lines,
    across: Rangef,
    queue: &mut Vec<Command>,
) {
    let tokens = tokens(ui);
    let marks = [Behaviour::Falls, Behaviour::Holds, Behaviour::Rises]
        .map(|behaviour| (Mark::Patch(colour(tokens, behaviour)), behaviour.words()));
    ui.horizontal(|ui| {
        ui.label(bold("Let go, it"));
        legend_ui(ui, &marks);
    });
    let size = Vec2::new(ui.available_width(), 3.0 * ROW);
    let (whole, response) = ui.allocate_exact_size(size, Sense::CLICK | Sense::DRAG);
    let at = |s: f64| across.min + across.span() * (s as f32);
    let font = FontId::proportional(11.5);
    for (row, (word, zones)) in ["light", "likely", "heavy"]
        .iter()
        .zip(&lines.zones)
        .enumerate()
    {
        let top = whole.min.y + ROW * (row as f32);
        let line = Rangef::new(top + 1.0, top + ROW - 1.0);
        let middle = egui::pos2(across.min - 5.0, line.center());
        ui.painter().text(
            middle,
            Align2::RIGHT_CENTER,
            word,
            font.clone(),
            tokens.text_soft,
        );
        for zone in zones {
            zone_ui(
                ui,
                tokens,
                zone,
                Rect::from_x_y_ranges(Rangef::new(at(zone.from), at(zone.to)), line),
            );
        }
    }
    let stroke = Stroke::new(1.5, tokens.text);
    ui.painter().vline(at(about.s), whole.y_range(), stroke);
    if let Some(pressed) = response.interact_pointer_pos()
        && (response.dragged() || response.clicked())
    {
        let share = f64::from((pressed.x - across.min) / across.span());
        queue.push(Command::Do(Action::OpenDoor(
            (share * 100.0).round() / 100.0,
        )));
    }
    let said = ["light", "likely", "heavy"]
        .iter()
        .zip(&lines.zones)
        .map(|(word, zones)| format!("{word} door: {}", spoken(zones)))
        .collect::<Vec<_>>()
        .join("\n");
    response.accessible_name(&said).on_hover_text(said);
}

fn zone_ui(ui: &Ui, tokens: &Tokens, zone: &Zone, rect: Rect) {
    let colour = colour(tokens, zone.behaviour);
    let rect = rect.shrink2(Vec2::new(0.5, 0.0));
    ui.painter().rect_filled(rect, 2.0, colour);
    let text = ui.painter().layout_no_wrap(
        zone.behaviour.words().to_owned(),
        FontId::proportional(11.5),
        tokens.on_severity,
    );
    if text.size().x + 6.0 <= rect.width() {
        let corner = rect.center() - text.size() / 2.0;
        ui.painter().galley(corner, text, tokens.on_severity);
    }
}

/// The colour of what a door does.
pub(super) const fn colour(tokens: &Tokens, behaviour: Behaviour) -> Color32 {
    match behaviour {
        Behaviour::Falls => tokens.caution,
        Behaviour::Holds => tokens.ink(Ink::Fitting),
        Behaviour::Rises => tokens.note,
    }
}

/// The zones as words: `falls to 12 %, holds to 100 %`.
fn spoken(zones: &[Zone]) -> String {
    zones
        .iter()
        .map(|zone| format!("{} to {:.0} %", zone.behaviour.words(), zone.to * 100.0))
        .collect::<Vec<_>>()
        .join(", ")
}
