//! A number that is typed, stepped with the arrow keys or dragged by its name.

use egui::text::{CCursor, CCursorRange};
use egui::{CursorIcon, Key, Label, RichText, Sense, TextEdit, Ui};

use super::quantity::{Quantity, StepSize};
use super::{Change, Draft, Drag, Fields};
use crate::window::tokens::{LENGTH_WIDTH, tokens};

/// Points of a drag for one step.
const POINTS_PER_STEP: f32 = 4.0;

/// What a number field is.
#[derive(Clone, Copy)]
pub(crate) struct Number<'a> {
    /// The field's own name for the program.
    pub(crate) id: egui::Id,
    /// Its full name, as a screen reader says it.
    pub(crate) name: &'a str,
    /// The word before it.
    pub(crate) word: &'a str,
    /// Says what it means; asked on hover.
    pub(crate) meaning: &'a dyn Fn() -> String,
    /// What it stands for.
    pub(crate) quantity: Quantity,
    /// Room for the word before it.
    pub(crate) word_width: f32,
}

/// Shows word, field and unit in a row, and why the text is not taken.
///
/// Gives back another value once it is typed (Enter, or another field), stepped or dragged.
pub(crate) fn number(
    ui: &mut Ui,
    fields: &mut Fields,
    this: Number<'_>,
    value: f64,
) -> Option<Change<f64>> {
    let field = this.id;
    let change = ui
        .horizontal(|ui| {
            let dragged = word(ui, fields, this, value);
            let typed = cell(ui, fields, this, value);
            ui.label(RichText::new(this.quantity.suffix()).color(tokens(ui).text_soft));
            dragged.or(typed)
        })
        .inner;
    problem(ui, fields, field);
    change
}

/// Why the text of a field is not taken, underneath it.
pub(crate) fn problem(ui: &mut Ui, fields: &Fields, field: egui::Id) {
    if let Some(problem) = fields.problem(field) {
        ui.add(Label::new(RichText::new(problem).color(tokens(ui).stop).small()).wrap());
    }
}

/// The word before the field; dragging it changes the value.
pub(crate) fn word(
    ui: &mut Ui,
    fields: &mut Fields,
    this: Number<'_>,
    value: f64,
) -> Option<Change<f64>> {
    let field = this.id;
    let size = egui::vec2(this.word_width, ui.spacing().interact_size.y);
    let layout = egui::Layout::left_to_right(egui::Align::Center);
    let label = Label::new(this.word).selectable(false).truncate();
    let response = ui
        .allocate_ui_with_layout(size, layout, |ui| {
            ui.set_min_width(this.word_width);
            // Sensed, but left out of the order of the Tab key: the field itself is in it.
            ui.add(label.sense(Sense::DRAG | Sense::CLICK))
        })
        .inner
        .on_hover_cursor(CursorIcon::ResizeHorizontal)
        .on_hover_ui(|ui| {
            ui.label((this.meaning)());
        });
    if response.clicked() {
        ui.memory_mut(|memory| memory.request_focus(field));
    }
    if response.drag_started() {
        fields.drag = Some(Drag {
            field,
            start: value,
        });
    }
    let drag = fields.drag.filter(|drag| drag.field == field)?;
    if response.drag_stopped() {
        fields.drag = None;
    }
    let size = ui.input(|input| StepSize::of(input.modifiers));
    let steps = (response.total_drag_delta()?.x / POINTS_PER_STEP).round();
    let moved = drag.start + f64::from(steps) * this.quantity.step(size);
    let moved = this.quantity.tidy(moved);
    (moved != value).then_some(Change {
        value: moved,
        field,
        typed: None,
        running: true,
    })
}

/// The field alone.
pub(crate) fn cell(
    ui: &mut Ui,
    fields: &mut Fields,
    this: Number<'_>,
    value: f64,
) -> Option<Change<f64>> {
    let field = this.id;
    let shown = this.quantity.show(value);
    let has_focus = ui.memory(|memory| memory.has_focus(field));
    if !has_focus
        && fields
            .drafts
            .get(&field)
            .is_some_and(|draft| stale(draft, &shown))
    {
        fields.drafts.remove(&field);
    }
    let stepped = if has_focus && ui.is_enabled() {
        stepped(ui, this.quantity)
    } else {
        0.0
    };
    let draft = fields.drafts.get(&field);
    let mut text = draft.map_or_else(|| shown.clone(), |draft| draft.text.clone());
    let refused = draft.is_some_and(|draft| draft.problem.is_some());
    let colour = refused.then(|| tokens(ui).stop);
    let mut output = TextEdit::singleline(&mut text)
        .id(field)
        .desired_width(LENGTH_WIDTH - 10.0)
        .text_color_opt(colour)
        .align(egui::Align2::RIGHT_CENTER)
        .show(ui);
    let response = output.response.response;
    if response.gained_focus() {
        let all = CCursorRange::two(CCursor::new(0), CCursor::new(text.chars().count()));
        output.state.cursor.set_char_range(Some(all));
        output.state.store(ui.ctx(), field);
    }
    let response = response.accessible_name(this.name).on_hover_ui(|ui| {
        ui.label((this.meaning)());
    });
    if response.changed() {
        let problem = fields.drafts.remove(&field).and_then(|draft| draft.problem);
        fields.drafts.insert(
            field,
            Draft {
                text: text.clone(),
                shown: shown.clone(),
                problem,
            },
        );
    }
    if stepped != 0.0 {
        fields.drafts.remove(&field);
        let value = this.quantity.tidy(value + stepped);
        return Some(Change {
            value,
            field,
            typed: None,
            running: true,
        });
    }
    fields.typing |= response.has_focus() && text != shown;
    if response.lost_focus() {
        let escaped = ui.input(|input| input.key_pressed(Key::Escape));
        return taken(fields, this, field, value, escaped);
    }
    None
}

/// Whether the value was changed elsewhere since typing began.
fn stale(draft: &Draft, shown: &str) -> bool {
    !draft.shown.is_empty() && draft.shown != shown
}

/// What the finished text of a field asks for.
fn taken(
    fields: &mut Fields,
    this: Number<'_>,
    field: egui::Id,
    value: f64,
    escaped: bool,
) -> Option<Change<f64>> {
    if escaped {
        fields.drafts.remove(&field);
        return None;
    }
    let draft = fields.drafts.get_mut(&field)?;
    if draft.text == draft.shown {
        fields.drafts.remove(&field);
        return None;
    }
    match this.quantity.read(&draft.text) {
        Ok(read) if read == value => {
            fields.drafts.remove(&field);
            None
        }
        Ok(read) => {
            let typed = Some(draft.text.clone());
            Some(Change {
                value: read,
                field,
                typed,
                running: false,
            })
        }
        Err(wanted) => {
            draft.problem = Some(wanted);
            None
        }
    }
}

/// What the arrow keys of this frame add to the value.
fn stepped(ui: &Ui, quantity: Quantity) -> f64 {
    ui.input_mut(|input| {
        let mut sum = 0.0;
        input.events.retain(|event| match event {
            egui::Event::Key {
                key,
                pressed: true,
                modifiers,
                ..
            } => {
                let sign = match key {
                    Key::ArrowUp => 1.0,
                    Key::ArrowDown => -1.0,
                    _ => return true,
                };
                sum += sign * quantity.step(StepSize::of(*modifiers));
                false
            }
            _ => true,
        });
        sum
    })
}
