//! The two drawings: the box from the front, and cut from front to back.

pub(crate) mod camera;
mod describe;
pub(crate) mod paint;
mod polygon;

use std::rc::Rc;
use std::sync::Arc;

use egui::{CursorIcon, EventFilter, Key, Rect, Role, Sense, Ui, Vec2, WidgetInfo};
use flapwright_drawing::list::DisplayList;
use flapwright_drawing::views::{self, Around, ViewOptions};
use flapwright_model::id::BoxId;
use flapwright_model::job::Job;
use flapwright_model::part::Subject;
use flapwright_rules::finding::Severity;
use flapwright_rules::inspection::{BoxReport, Inspection};

use self::camera::{Camera, Placement, ToScreen, fit};
use super::command::{Command, View};
use super::tokens::{POINTS_PER_MM, tokens};

/// How near the pointer must be to count as on a thing, screen points.
const NEAR: f32 = 4.0;
/// Dimensions that leave the box less than this share of the size it could have are left out.
const LEAST_SHARE: f64 = 0.4;
/// Height that the name of a drawing takes.
const TITLE: f32 = 20.0;
/// Points that an arrow key moves a drawing by.
const STEP: f32 = 40.0;
/// What one key of zooming does.
pub(crate) const ZOOM_STEP: f64 = 1.25;

/// What both drawings show.
pub(crate) struct Shown<'a> {
    /// The job.
    pub(crate) job: &'a Job,
    /// What is true of it.
    pub(crate) inspection: &'a Inspection,
    /// The box.
    pub(crate) report: &'a BoxReport,
    /// How far the doors are open.
    pub(crate) s: f64,
    /// Whether dimensions are drawn.
    pub(crate) dimensions: bool,
    /// What a finding lights.
    pub(crate) lit: Vec<(Subject, Severity)>,
    /// Names this state of the job.
    pub(crate) revision: u64,
    /// The box as a remedy would make it, over the box as it is.
    pub(crate) ghost: Option<Arc<BoxReport>>,
    /// The title of that remedy.
    pub(crate) preview: Option<String>,
}

/// What a drawing remembers.
#[derive(Debug, Default)]
pub(crate) struct CanvasState {
    /// Where it lies.
    pub(crate) camera: Camera,
    fitted: Option<(FitKey, Fitted)>,
    /// What it showed last.
    kept: Option<(Laid, Rc<DisplayList>)>,
    /// How often it was laid out.
    layouts: u64,
    /// Where it lay in the last frame: what moves and zooms start from.
    last: Option<(Placement, Vec2)>,
}

/// Where a drawing lies, and whether its dimensions fit there.
#[derive(Debug, Clone, Copy)]
struct Fitted {
    placement: Placement,
    dimensions: bool,
}

type FitKey = (u64, BoxId, [u32; 2], [bool; 2]);

impl CanvasState {
    /// Moves the drawing by screen points.
    pub(crate) fn shift(&mut self, by: Vec2) {
        if let Some((placement, _)) = self.last {
            self.camera = Camera::Placed(self.placed(placement).moved(by));
        }
    }

    /// Makes the drawing larger about a point of its room, or about its middle.
    pub(crate) fn zoom(&mut self, factor: f64, at: Option<Vec2>) {
        if let Some((placement, room)) = self.last {
            let at = at.unwrap_or(room / 2.0);
            self.camera = Camera::Placed(self.placed(placement).zoomed(factor, at));
        }
    }

    /// How often the drawing was laid out.
    pub(crate) const fn layouts(&self) -> u64 {
        self.layouts
    }

    /// Screen points for one millimetre of the job, as last shown.
    pub(crate) fn size(&self) -> Option<f64> {
        self.last.map(|(placement, _)| self.placed(placement).zoom)
    }

    const fn placed(&self, last: Placement) -> Placement {
        match self.camera {
            Camera::Fitted => last,
            Camera::Placed(placement) => placement,
        }
    }
}

/// Shows one drawing in the room that is left.
pub(crate) fn canvas_ui(
    ui: &mut Ui,
    view: View,
    state: &mut CanvasState,
    shown: &Shown<'_>,
    queue: &mut Vec<Command>,
) {
    let (title, name) = match view {
        View::Elevation => ("Front", "Elevation"),
        View::Section => ("Section", "Section"),
    };
    let room = ui.available_rect_before_wrap();
    let response = ui.allocate_rect(room, Sense::click_and_drag());
    let tokens = tokens(ui);
    let Fitted {
        placement,
        dimensions,
    } = fitted(view, state, shown, room);
    state.last = Some((placement, room.size()));
    let list = kept(view, state, shown, (placement.scale(), dimensions));
    let to = ToScreen::new(placement, room);
    let painter = ui.painter_at(room);
    painter.rect_filled(room, 0.0, tokens.paper);
    paint::paint(&painter, &list, to, tokens);
    let edge = if response.has_focus() {
        tokens.accent
    } else {
        tokens.line
    };
    let stroke = egui::Stroke::new(1.0, edge);
    painter.rect_stroke(room, 0.0, stroke, egui::StrokeKind::Inside);
    let font = super::tokens::sheet_font(flapwright_drawing::list::Weight::Bold, 12.0);
    let corner = room.min + Vec2::new(8.0, 6.0);
    let named = painter.text(
        corner,
        egui::Align2::LEFT_TOP,
        title,
        font.clone(),
        tokens.text_soft,
    );
    if let Some(preview) = &shown.preview {
        let text = format!("Preview: {preview}");
        let ink = tokens.ink(flapwright_drawing::pen::Ink::Ghost);
        let beside = named.right_top() + Vec2::new(12.0, 0.0);
        painter.text(beside, egui::Align2::LEFT_TOP, text, font, ink);
    }

    let under = response
        .hover_pos()
        .and_then(|at| views::hit(&list, to.back(at), f64::from(NEAR / POINTS_PER_MM)));
    let told = under.and_then(|subject| describe::describe(subject, shown));
    let said = format!("{name} of {}", shown.report.name);
    response.widget_info(|| WidgetInfo::labeled(Role::Canvas, true, said.as_str()));
    pointer(ui, view, &response, queue, room);
    if response.has_focus() {
        keys(ui, view, &response, queue);
    }
    if let Some(told) = told
        && !response.dragged()
    {
        response.on_hover_text_at_pointer(told);
    }
}

fn pointer(ui: &Ui, view: View, response: &egui::Response, queue: &mut Vec<Command>, room: Rect) {
    if response.double_clicked() {
        queue.push(Command::Fit(view));
    } else if response.clicked() {
        response.request_focus();
    }
    if response.dragged() {
        ui.ctx().set_cursor_icon(CursorIcon::Grabbing);
        let by = response.drag_delta();
        if by != Vec2::ZERO {
            queue.push(Command::Move { view, by });
        }
    }
    if let Some(at) = response.hover_pos() {
        let (wheel, pinch) = ui.input(|i| (i.smooth_scroll_delta.y, i.zoom_delta()));
        let factor = f64::from(pinch) * (f64::from(wheel) / 200.0).exp();
        if (factor - 1.0).abs() > 1e-6 {
            queue.push(Command::Zoom {
                view,
                factor,
                at: at - room.min,
            });
        }
    }
}

/// With the keyboard on a drawing the arrow keys move it.
fn keys(ui: &Ui, view: View, response: &egui::Response, queue: &mut Vec<Command>) {
    let filter = EventFilter {
        horizontal_arrows: true,
        vertical_arrows: true,
        ..Default::default()
    };
    ui.memory_mut(|memory| memory.set_focus_lock_filter(response.id, filter));
    for (key, by) in [
        (Key::ArrowLeft, Vec2::new(STEP, 0.0)),
        (Key::ArrowRight, Vec2::new(-STEP, 0.0)),
        (Key::ArrowUp, Vec2::new(0.0, STEP)),
        (Key::ArrowDown, Vec2::new(0.0, -STEP)),
    ] {
        if ui.input(|input| input.key_pressed(key)) {
            queue.push(Command::Move { view, by });
        }
    }
}

fn fitted(view: View, state: &mut CanvasState, shown: &Shown<'_>, room: Rect) -> Fitted {
    if let Camera::Placed(placement) = state.camera {
        return Fitted {
            placement,
            dimensions: shown.dimensions,
        };
    }
    let size = [room.width().to_bits(), room.height().to_bits()];
    let extra = [!shown.lit.is_empty(), shown.dimensions];
    let key = (shown.revision, shown.report.id, size, extra);
    if let Some((known, fitted)) = state.fitted
        && known == key
    {
        return fitted;
    }
    // The room of the section also holds the open door, so that nothing jumps while it moves.
    let poses: &[f64] = match view {
        View::Elevation => &[0.0],
        View::Section => &[0.0, 0.25, 0.5, 0.75, 1.0],
    };
    let below_title = room.size() - Vec2::new(0.0, TITLE);
    let fit_with = |dimensions: bool| {
        fit(below_title, |scale| {
            poses
                .iter()
                .filter_map(|s| layout(view, shown, (scale, *s, dimensions), None).bounds())
                .reduce(|a, b| a.union(&b))
        })
    };
    let bare = fit_with(false);
    let dimensioned = if shown.dimensions {
        fit_with(true)
    } else {
        bare
    };
    // Long figures in a small room would leave no room for the box itself.
    let cramped = dimensioned.zoom < LEAST_SHARE * bare.zoom;
    let placement = if cramped { bare } else { dimensioned };
    let placement = placement.moved(Vec2::new(0.0, TITLE));
    let fitted = Fitted {
        placement,
        dimensions: shown.dimensions && !cramped,
    };
    state.fitted = Some((key, fitted));
    fitted
}

/// What a drawing shows. Where all of it is as it was, nothing is laid out anew.
#[derive(Debug, Clone)]
struct Laid {
    revision: u64,
    box_id: BoxId,
    scale: f64,
    s: f64,
    dimensions: bool,
    lit: Vec<(Subject, Severity)>,
    ghost: Option<Arc<BoxReport>>,
}

impl PartialEq for Laid {
    fn eq(&self, other: &Self) -> bool {
        let ghost = match (&self.ghost, &other.ghost) {
            (Some(one), Some(other)) => Arc::ptr_eq(one, other),
            (one, other) => one.is_none() && other.is_none(),
        };
        ghost
            && self.revision == other.revision
            && self.box_id == other.box_id
            && self.scale.to_bits() == other.scale.to_bits()
            && self.s.to_bits() == other.s.to_bits()
            && self.dimensions == other.dimensions
            && self.lit == other.lit
    }
}

/// The drawing at a scale, laid out anew only when what it shows has changed.
fn kept(
    view: View,
    state: &mut CanvasState,
    shown: &Shown<'_>,
    (scale, dimensions): (f64, bool),
) -> Rc<DisplayList> {
    let now = Laid {
        revision: shown.revision,
        box_id: shown.report.id,
        scale,
        s: shown.s,
        dimensions,
        lit: shown.lit.clone(),
        ghost: shown.ghost.clone(),
    };
    if let Some((laid, list)) = &state.kept
        && *laid == now
    {
        return Rc::clone(list);
    }
    let list = layout(view, shown, (scale, shown.s, dimensions), now.ghost.clone());
    let list = Rc::new(list);
    state.layouts += 1;
    state.kept = Some((now, Rc::clone(&list)));
    list
}

/// A drawing at a scale, with the door that far open, with or without dimensions.
fn layout(
    view: View,
    shown: &Shown<'_>,
    (scale, s, dimensions): (f64, f64, bool),
    ghost: Option<Arc<BoxReport>>,
) -> DisplayList {
    let around = shown.job.box_by_id(shown.report.id).map(|it| Around {
        room: shown.job.room.clone(),
        place: it.place,
    });
    let options = ViewOptions {
        scale,
        s,
        unit: shown.job.unit,
        mark: shown.job.settings.opening_mark,
        lit: shown.lit.clone(),
        show_dimensions: dimensions,
        ghost,
        around,
        ..ViewOptions::default()
    };
    match view {
        View::Elevation => views::elevation(shown.report, &options),
        View::Section => views::section(shown.report, &options),
    }
}
