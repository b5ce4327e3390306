//! The line that both plots, the bar and the slider of the section share.

use egui::{CursorIcon, EventFilter, Key, Rangef, RichText, Ui};
use egui_plot::{AxisHints, GridInput, GridMark, Plot, PlotResponse, PlotUi, VLine};

use crate::window::command::Command;
use crate::window::tokens::tokens;
use flapwright_session::action::Action;

/// Room for the numbers at the left of both plots, so that they stand one under the other.
pub(super) const AXIS_WIDTH: f32 = 44.0;
/// Room for half of the last number under a plot.
pub(super) const LAST_LABEL: f32 = 16.0;
/// What an arrow key moves the line by, as a share of the way.
const STEP: f64 = 0.01;

/// A plot over the way of the door that can be neither moved nor zoomed: dragging in it opens the
/// door. `across` stands under it.
pub(super) fn way_plot<'a>(
    ui: &Ui,
    name: &str,
    height: f32,
    (symbol, across): (&'a str, &'a str),
) -> Plot<'a> {
    let x_axis = AxisHints::new_x()
        .label(small(across))
        .label_spacing(Rangef::new(20.0, 30.0))
        .formatter(|mark, _| format!("{:.0} %", mark.value));
    still(ui, Plot::new(name.to_owned()))
        .height(height)
        .default_x_bounds(0.0, 100.0)
        .include_y(0.0)
        .set_margin_fraction(egui::vec2(0.0, 0.06))
        .x_grid_spacer(|_| {
            let marks = (0_u8..=5).map(|step| GridMark {
                value: 20.0 * f64::from(step),
                step_size: 20.0,
            });
            marks.collect()
        })
        .y_grid_spacer(|input| even_marks(&input, 6.0))
        .custom_x_axes(vec![x_axis])
        .custom_y_axes(vec![y_axis(symbol)])
}

/// Lines at steps of 1, 2 or 5 times a power of ten, no more than about `most` of them.
pub(super) fn even_marks(input: &GridInput, most: f64) -> Vec<GridMark> {
    let (low, high) = input.bounds;
    let span = high - low;
    if !(span.is_finite() && span > 0.0) {
        return Vec::new();
    }
    let ten = 10.0_f64.powf((span / most).log10().floor());
    let step_size = [1.0, 2.0, 5.0, 10.0]
        .map(|times| times * ten)
        .into_iter()
        .find(|step| span / step <= most)
        .unwrap_or(span);
    let first = (low / step_size).ceil();
    (0_u8..20)
        .map(|count| (first + f64::from(count)) * step_size)
        .take_while(|value| *value <= high)
        .map(|value| GridMark { value, step_size })
        .collect()
}

/// A plot that stays as it is.
pub(super) fn still<'a>(ui: &Ui, plot: Plot<'a>) -> Plot<'a> {
    plot.grid_color(tokens(ui).line)
        .allow_drag(false)
        .allow_zoom(false)
        .allow_scroll(false)
        .allow_boxed_zoom(false)
        .allow_axis_zoom_drag(false)
        .allow_double_click_reset(false)
        .show_crosshair(false)
}

/// Numbers and unit at the left, with a number for each line that has room for it.
pub(super) fn y_axis(label: &str) -> AxisHints<'_> {
    AxisHints::new_y()
        .label(small(label))
        .min_thickness(AXIS_WIDTH)
        .label_spacing(Rangef::new(11.0, 16.0))
}

/// Words at an axis.
pub(super) fn small(words: &str) -> RichText {
    RichText::new(words).small()
}

/// Draws the line at s.
pub(super) fn line_at(plot: &mut PlotUi<'_>, s: f64, colour: egui::Color32) {
    plot.vline(
        VLine::new("door", s * 100.0)
            .color(colour)
            .width(1.5)
            .allow_hover(false),
    );
}

/// Opens the door where the plot is pressed or dragged, or by arrow keys while it has the
/// keyboard.
pub(super) fn follow<T>(
    ui: &Ui,
    shown: &PlotResponse<T>,
    name: &str,
    s: f64,
    queue: &mut Vec<Command>,
) {
    let response = shown
        .response
        .clone()
        .accessible_name(name)
        .on_hover_cursor(CursorIcon::ResizeHorizontal);
    if response.clicked() {
        response.request_focus();
    }
    if (response.dragged() || response.clicked())
        && let Some(at) = response.interact_pointer_pos()
    {
        let percent = shown.transform.value_from_position(at).x;
        queue.push(Command::Do(Action::OpenDoor(percent.round() / 100.0)));
    }
    if !response.has_focus() {
        return;
    }
    let filter = EventFilter {
        horizontal_arrows: true,
        ..Default::default()
    };
    ui.memory_mut(|memory| memory.set_focus_lock_filter(response.id, filter));
    for (key, by) in [(Key::ArrowLeft, -STEP), (Key::ArrowRight, STEP)] {
        if ui.input(|input| input.key_pressed(key)) {
            queue.push(Command::Do(Action::OpenDoor(s + by)));
        }
    }
    let ring = egui::Stroke::new(1.5, tokens(ui).accent);
    ui.painter()
        .rect_stroke(response.rect, 2.0, ring, egui::StrokeKind::Inside);
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn lines_stand_at_round_numbers_and_are_few() {
        let at = |low, high| {
            let input = GridInput {
                bounds: (low, high),
                base_step_size: 1.0,
            };
            let marks = even_marks(&input, 6.0);
            marks.iter().map(|mark| mark.value).collect::<Vec<_>>()
        };
        assert_eq!(at(-1.3, 6.2), [0.0, 2.0, 4.0, 6.0]);
        assert_eq!(at(-10.5, 30.0), [-10.0, 0.0, 10.0, 20.0, 30.0]);
        assert_eq!(at(0.0, 0.0), [0.0; 0]);
    }
}
