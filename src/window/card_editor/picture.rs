//! The live picture beside the form.

use egui::{Id, Label, Rect, RichText, Role, Sense, Slider, Ui, Vec2, WidgetInfo};
use flapwright_drawing::card_picture::{door_face, side_face};
use flapwright_drawing::list::DisplayList;
use flapwright_drawing::views::{self, ViewOptions};
use flapwright_model::length::Unit;
use flapwright_model::lift::{Carries, Lift};
use flapwright_model::measure::{self, Measure};

use super::live::Sketch;
use super::step::Step;
use crate::window::canvas::camera::{Placement, ToScreen, fit};
use crate::window::canvas::paint;
use crate::window::tokens::{POINTS_PER_MM, bold, toggle, tokens};

/// What the picture shows.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub(crate) enum Shown {
    /// The side with its bores.
    #[default]
    Side,
    /// The back of the door with its bores.
    Door,
    /// The section, the door moved by a slider.
    Motion,
    /// The sizes in words.
    Sizes,
}

impl Shown {
    const ALL: [(Self, &'static str); 4] = [
        (Self::Side, "Side"),
        (Self::Door, "Door back"),
        (Self::Motion, "Motion"),
        (Self::Sizes, "Sizes"),
    ];

    /// What suits a step best; `None` where any does.
    pub(crate) const fn of_step(step: Step) -> Option<Self> {
        match step {
            Step::Side => Some(Self::Side),
            Step::Body | Step::Motion | Step::Top => Some(Self::Motion),
            Step::Door => Some(Self::Door),
            Step::Sizes => Some(Self::Sizes),
            Step::Paper | Step::Example | Step::Proof => None,
        }
    }
}

/// What the picture remembers.
#[derive(Debug, Clone, Default)]
pub(crate) struct PictureState {
    /// What it shows.
    pub(crate) shown: Shown,
    /// How far the door is open.
    pub(crate) s: f64,
    fitted: Option<(FitKey, Placement)>,
}

/// State of the draft, size of the room.
type FitKey = (u64, [u32; 2]);

/// Shows the picture; `revision` names the state of the draft.
pub(super) fn picture_ui(
    ui: &mut Ui,
    state: &mut PictureState,
    sketch: Option<&Sketch>,
    revision: u64,
    unit: Unit,
) {
    ui.horizontal(|ui| {
        for (shown, words) in Shown::ALL {
            if toggle(ui, state.shown == shown, words).clicked() {
                state.shown = shown;
            }
        }
        if let Some(sketch) = sketch {
            let told = format!("size {}", sketch.size);
            ui.label(RichText::new(told).color(tokens(ui).text_soft));
        }
    });
    let Some(sketch) = sketch else {
        ui.label("No picture: the numbers make no box that can be drawn.");
        return;
    };
    if !sketch.without.is_empty() {
        let told = format!("Not in the picture yet: {}.", sketch.without.join(", "));
        ui.add(Label::new(RichText::new(told).small().color(tokens(ui).text_soft)).wrap());
    }
    match state.shown {
        Shown::Side | Shown::Door => face_ui(ui, state.shown, sketch, unit),
        Shown::Motion if sketch.without.contains(&"motion") => {
            ui.label("The motion is shown once its numbers are typed.");
        }
        Shown::Sizes if sketch.without.contains(&"sizes") => {
            ui.label("The sizes are shown once their rows are complete.");
        }
        Shown::Motion => {
            let strip = 34.0;
            let room = ui.available_rect_before_wrap();
            let drawing = room.with_max_y(room.max.y - strip);
            section_ui(ui, state, sketch, (revision, unit), drawing);
            ui.advance_cursor_after_rect(drawing);
            slider_ui(ui, state);
        }
        Shown::Sizes => sizes_ui(ui, sketch, unit),
    }
}

/// A face with its bores, at the size of print.
fn face_ui(ui: &mut Ui, shown: Shown, sketch: &Sketch, unit: Unit) {
    let room = ui.available_rect_before_wrap();
    ui.advance_cursor_after_rect(room);
    let tokens = tokens(ui);
    let painter = ui.painter_at(room);
    painter.rect_filled(room, 0.0, tokens.paper);
    let stroke = egui::Stroke::new(1.0, tokens.line);
    painter.rect_stroke(room, 0.0, stroke, egui::StrokeKind::Inside);
    let name = if shown == Shown::Side {
        "Side"
    } else {
        "Door back"
    };
    let response = ui.interact(room, Id::unique(("card face", name)), Sense::hover());
    let said = format!("{name} of {}", sketch.card.name);
    response.widget_info(|| WidgetInfo::labeled(Role::Canvas, true, said.as_str()));
    let Some(report) = sketch.inspection.boxes.first() else {
        return;
    };
    // A fifth is left for the list of bores under the picture.
    let mm =
        [room.width(), room.height() * 0.8].map(|points| f64::from(points / POINTS_PER_MM) - 6.0);
    let face = if shown == Shown::Side {
        side_face
    } else {
        door_face
    };
    let list = face(report, mm.map(|length| length.max(40.0)), unit);
    let Some(bounds) = list.bounds() else { return };
    #[expect(clippy::cast_possible_truncation, reason = "screen points")]
    let point = |x: f64, y: f64| Vec2::new(x as f32, y as f32) * POINTS_PER_MM;
    let size = point(bounds.width(), bounds.height());
    let beside = (room.width() - size.x).max(0.0) / 2.0;
    let placement = Placement {
        zoom: f64::from(POINTS_PER_MM),
        origin: Vec2::new(beside, 14.0) + point(-bounds.min_x(), bounds.max_y()),
    };
    paint::paint(&painter, &list, ToScreen::new(placement, room), tokens);
}

fn section_ui(
    ui: &mut Ui,
    state: &mut PictureState,
    sketch: &Sketch,
    (revision, unit): (u64, Unit),
    room: Rect,
) {
    let s = state.s;
    // The room also holds the open door, so that nothing jumps while it moves.
    let layout = |scale: f64, s: f64| {
        sketch.inspection.boxes.first().map(|report| {
            let options = ViewOptions {
                scale,
                s,
                unit,
                ..ViewOptions::default()
            };
            views::section(report, &options)
        })
    };
    let name = format!("Section of {}", sketch.card.name);
    drawing_ui(ui, state, revision, room, (&name, s), &layout);
}

/// Paints a drawing as large as its room allows.
fn drawing_ui(
    ui: &Ui,
    state: &mut PictureState,
    revision: u64,
    room: Rect,
    (name, s): (&str, f64),
    layout: &dyn Fn(f64, f64) -> Option<DisplayList>,
) {
    let response = ui.interact(room, Id::unique("card section"), Sense::hover());
    response.widget_info(|| WidgetInfo::labeled(Role::Canvas, true, name));
    let tokens = tokens(ui);
    let key = (revision, [room.width().to_bits(), room.height().to_bits()]);
    let placement = match state.fitted {
        Some((known, placement)) if known == key => placement,
        _ => {
            let union = |scale: f64| {
                let poses = [0.0, 0.25, 0.5, 0.75, 1.0];
                let bounds = poses.iter().filter_map(|s| layout(scale, *s)?.bounds());
                bounds.reduce(|a, b| a.union(&b))
            };
            let placement = fit(room.size(), union);
            state.fitted = Some((key, placement));
            placement
        }
    };
    let painter = ui.painter_at(room);
    painter.rect_filled(room, 0.0, tokens.paper);
    if let Some(list) = layout(placement.scale(), s) {
        paint::paint(&painter, &list, ToScreen::new(placement, room), tokens);
    }
    let stroke = egui::Stroke::new(1.0, tokens.line);
    painter.rect_stroke(room, 0.0, stroke, egui::StrokeKind::Inside);
}

fn slider_ui(ui: &mut Ui, state: &mut PictureState) {
    ui.horizontal(|ui| {
        ui.label("closed");
        let mut percent = (state.s * 100.0).round();
        ui.spacing_mut().slider_width = (ui.available_width() - 96.0).max(60.0);
        let slider = Slider::new(&mut percent, 0.0..=100.0)
            .show_value(false)
            .step_by(1.0);
        let response = ui.add(slider).accessible_name("Door of the card open");
        if response.changed() {
            state.s = percent / 100.0;
        }
        ui.label(format!("open  {:.0} %", state.s * 100.0));
    });
}

/// The sizes in a table of words.
fn sizes_ui(ui: &mut Ui, sketch: &Sketch, unit: Unit) {
    egui::ScrollArea::both()
        .auto_shrink([false, false])
        .show(ui, |ui| {
            egui::Grid::new("sizes in words")
                .striped(true)
                .spacing(Vec2::new(14.0, 4.0))
                .show(ui, |ui| {
                    for head in ["size", "carries", "door height", "door width", "lifted by"] {
                        ui.label(bold(head));
                    }
                    ui.end_row();
                    for size in &sketch.card.sizes {
                        ui.label(&size.name);
                        ui.label(carries(&size.carries, unit));
                        for span in [size.door_height, size.door_width] {
                            ui.label(format!(
                                "{} to {}",
                                measure::length(span.min, unit),
                                measure::length(span.max, unit)
                            ));
                        }
                        ui.label(match &size.lift {
                            Lift::Spring { table, .. } => {
                                let most =
                                    table.iter().map(|row| row.strongest).fold(0.0, f64::max);
                                format!("spring, up to {}", Measure::Moment.text(most, unit))
                            }
                            Lift::Strut(strut) => {
                                format!("strut of {}", Measure::Force.text(strut.force, unit))
                            }
                        });
                        ui.end_row();
                    }
                });
        });
}

fn carries(carries: &Carries, unit: Unit) -> String {
    let span = |measure: Measure, min: f64, max: f64| {
        format!("{} to {}", measure.text(min, unit), measure.text(max, unit))
    };
    match carries {
        Carries::Mass { min, max } => span(Measure::Mass, *min, *max),
        Carries::Moment {
            min,
            max,
            at_degrees,
        } => {
            format!("{} at {at_degrees:.0}°", span(Measure::Moment, *min, *max))
        }
        Carries::MassByDoorHeight(rows) | Carries::MassByBoxHeight(rows) => {
            let lines: Vec<String> = rows
                .iter()
                .map(|row| {
                    let height = measure::length(row.height, unit);
                    format!("{} at {height}", span(Measure::Mass, row.min, row.max))
                })
                .collect();
            lines.join("\n")
        }
    }
}
