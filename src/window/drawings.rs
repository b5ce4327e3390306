//! The middle of the window: both drawings and the slider that opens the door.

use egui::{Rect, Slider, Ui, UiBuilder, Vec2};
use flapwright_model::part::Subject;
use flapwright_rules::finding::Severity;

use super::canvas::{Shown, canvas_ui};
use super::command::{Command, View};
use super::tokens::STACK_BELOW;
use super::view_state::ViewState;
use flapwright_session::Session;
use flapwright_session::action::Action;
use flapwright_session::action_table::ActionId;

/// Height of the strip with the slider.
const STRIP: f32 = 30.0;
const GAP: f32 = 6.0;

/// Shows both drawings, side by side or one above the other.
pub(crate) fn drawings_ui(
    ui: &mut Ui,
    session: &Session,
    view: &mut ViewState,
    queue: &mut Vec<Command>,
) {
    let (document, selection) = (session.document(), session.selection());
    let inspection = document.inspection();
    let Some(report) = session.shown_report() else {
        ui.centered_and_justified(|ui| ui.label("No box yet. Add one at the left."));
        return;
    };
    let lit: Vec<(Subject, Severity)> = session
        .selected_finding()
        .map(|finding| {
            finding
                .subjects
                .iter()
                .map(|s| (*s, finding.severity))
                .collect()
        })
        .unwrap_or_default();
    let preview = view.findings.preview.ghost(document, report.id);
    let (ghost, preview) = preview.unzip();
    let shown = Shown {
        job: document.job(),
        inspection,
        report,
        s: selection.s,
        dimensions: !selection.plain,
        lit,
        revision: document.revision(),
        ghost,
        preview,
    };
    let whole = ui.available_rect_before_wrap();
    let (front, section) = rooms(whole);
    let drawing = section.with_max_y(section.max.y - STRIP - GAP);
    let strip = section.with_min_y(section.max.y - STRIP);
    let inside = |ui: &mut Ui, room: Rect, add: &mut dyn FnMut(&mut Ui)| {
        ui.scope_builder(UiBuilder::new().max_rect(room), |ui| add(ui));
    };
    inside(ui, front, &mut |ui| {
        canvas_ui(ui, View::Elevation, &mut view.elevation, &shown, queue);
    });
    inside(ui, drawing, &mut |ui| {
        canvas_ui(ui, View::Section, &mut view.section, &shown, queue);
    });
    let moves = report.openings.iter().any(|opening| {
        opening
            .door
            .as_ref()
            .is_some_and(|door| door.working_motion().is_some())
    });
    let playing = selection.running.is_some();
    let s = selection.s;
    inside(ui, strip, &mut |ui| slider_ui(ui, s, playing, moves, queue));
    ui.advance_cursor_after_rect(whole);
}

/// Where the front and the section go.
fn rooms(whole: Rect) -> (Rect, Rect) {
    if whole.width() < STACK_BELOW {
        let middle = whole.min.y + (whole.height() - STRIP) * 0.5;
        (whole.with_max_y(middle), whole.with_min_y(middle + GAP))
    } else {
        let middle = whole.min.x + whole.width() * 0.55;
        let front = whole.with_max_x(middle);
        (
            front.with_max_y(front.max.y - STRIP - GAP),
            whole.with_min_x(middle + GAP),
        )
    }
}

fn slider_ui(ui: &mut Ui, s: f64, playing: bool, moves: bool, queue: &mut Vec<Command>) {
    ui.add_enabled_ui(moves, |ui| {
        ui.horizontal_centered(|ui| {
            ui.add_space(4.0);
            let word = if playing { "Stop" } else { "Play" };
            let button = egui::Button::new(word).min_size(Vec2::new(52.0, 0.0));
            let button = ui.add(button).on_hover_text(ActionId::PlayDoor.tooltip());
            if button.clicked() {
                queue.push(Command::Choose(ActionId::PlayDoor));
            }
            ui.label("closed");
            // The slider steps whole percents and would take a running door for moved by hand.
            let shown = (s * 100.0).round();
            let mut percent = shown;
            ui.spacing_mut().slider_width = (ui.available_width() - 104.0).max(60.0);
            let slider = Slider::new(&mut percent, 0.0..=100.0)
                .show_value(false)
                .step_by(1.0);
            let response = ui.add(slider).accessible_name("Door open");
            if response.changed() && percent != shown {
                queue.push(Command::Do(Action::OpenDoor(percent / 100.0)));
            }
            ui.label(format!("open  {:.0} %", s * 100.0));
        })
        .response
    })
    .response
    .on_disabled_hover_text("No door of this box has a fitting that can move it.");
}
