//! The form at the left: what the shown box and its door are.

mod as_drilled;
mod bands;
mod box_form;
mod cautions;
mod door_form;
mod fitting_form;
mod frame_form;
mod handle_and_mass;
mod head_form;
mod leaf_form;
mod limits_form;
mod openings_form;
mod panels_form;
mod record_form;
mod room_form;
mod shelf_edit;
mod weights_form;

use egui::{CollapsingHeader, RichText, Ui};
use flapwright_model::cabinet::WallBox;
use flapwright_model::door::Door;
use flapwright_model::edges::{Edge, Edges};
use flapwright_model::edit::{Edit, JobHead};
use flapwright_model::job::Job;
use flapwright_rules::inspection::Inspection;

use super::command::{Command, JobEdit};
use super::fields::number::{Number, cell, number, problem, word};
use super::fields::quantity::Quantity;
use super::fields::{Change, Fields, field_id};
use super::tokens::{EDGE_WORD, LABEL_WIDTH, bold, toggle, tokens};
use flapwright_session::action::Action;
use flapwright_session::action_table::ActionId;

/// What the form shows and where its changes go.
pub(crate) struct Form<'a> {
    /// The job.
    pub(crate) job: &'a Job,
    /// What is true of it.
    pub(crate) inspection: &'a Inspection,
    /// The shown box.
    pub(crate) box_index: usize,
    /// The shown opening of it.
    pub(crate) opening: usize,
    /// What is typed but not taken.
    pub(crate) fields: &'a mut Fields,
    /// What is to be done after the frame.
    pub(crate) queue: &'a mut Vec<Command>,
}

/// Shows the whole form.
pub(crate) fn form_ui(ui: &mut Ui, mut form: Form<'_>) {
    box_list(ui, &mut form);
    ui.separator();
    egui::ScrollArea::vertical()
        .auto_shrink(false)
        .show(ui, |ui| {
            if form.wall_box().is_some() {
                section(ui, "Box", true, |ui| box_form::box_ui(ui, &mut form));
                section(ui, "Openings and shelves", false, |ui| {
                    openings_form::openings_ui(ui, &mut form);
                });
                section(ui, "Door", true, |ui| door_form::door_ui(ui, &mut form));
                section(ui, "Fitting and size", true, |ui| {
                    fitting_form::fitting_ui(ui, &mut form);
                });
            } else {
                ui.label("This job has no box yet.");
            }
            section(ui, "Room", false, |ui| room_form::room_ui(ui, &mut form));
            section(ui, "Cautions", false, |ui| cautions::cautions_ui(ui, &form));
            section(ui, "Settings", false, |ui| {
                head_form::head_ui(ui, &mut form);
            });
            ui.add_space(24.0);
        });
}

fn section(ui: &mut Ui, title: &str, open: bool, body: impl FnOnce(&mut Ui)) {
    CollapsingHeader::new(bold(title))
        .id_salt(("section", title))
        .default_open(open)
        .show(ui, |ui| body(ui));
}

/// The boxes of the job, with what can be done to the list.
fn box_list(ui: &mut Ui, form: &mut Form<'_>) {
    ui.horizontal_wrapped(|ui| {
        for (index, wall_box) in form.job.boxes.iter().enumerate() {
            let chosen = index == form.box_index;
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
                form.queue.push(Command::Do(Action::ShowBox(index)));
            }
        }
    });
    ui.horizontal(|ui| {
        let some = form.wall_box().is_some();
        for (command, text, enabled) in [
            (ActionId::AddBox, "Add", true),
            (ActionId::DuplicateBox, "Duplicate", some),
            (ActionId::RemoveBox, "Remove", some),
        ] {
            let button = ui.add_enabled(enabled, egui::Button::new(text).small());
            if button
                .accessible_name(command.title())
                .on_hover_text(command.tooltip())
                .clicked()
            {
                form.queue.push(Command::Choose(command));
            }
        }
    });
}

impl Form<'_> {
    /// The shown box.
    pub(crate) fn wall_box(&self) -> Option<&WallBox> {
        self.job.boxes.get(self.box_index)
    }

    /// The door of the shown opening.
    pub(crate) fn door(&self) -> Option<&Door> {
        self.wall_box()?.openings.get(self.opening)?.door.as_ref()
    }

    /// The path of a field of the shown box.
    pub(crate) fn box_path(&self, rest: &str) -> String {
        format!("boxes[{}].{rest}", self.box_index)
    }

    /// The path of a field of the shown door.
    pub(crate) fn door_path(&self, rest: &str) -> String {
        format!(
            "boxes[{}].openings[{}].door.{rest}",
            self.box_index, self.opening
        )
    }

    /// A length in the job's unit.
    pub(crate) const fn length(&self) -> Quantity {
        Quantity::Length(self.job.unit)
    }

    /// A row with one number.
    pub(crate) fn row(
        &mut self,
        ui: &mut Ui,
        path: &str,
        names: Names<'_>,
        quantity: Quantity,
        value: f64,
    ) -> Option<Change<f64>> {
        let this = Number {
            path,
            name: names.full,
            word: names.word,
            meaning: names.meaning,
            quantity,
            word_width: LABEL_WIDTH,
        };
        number(ui, self.fields, this, value)
    }

    /// Two rows of two lengths: left and right, top and bottom.
    pub(crate) fn edges(
        &mut self,
        ui: &mut Ui,
        path: &str,
        names: Names<'_>,
        values: Edges<f64>,
    ) -> Option<(Edge, Change<f64>)> {
        let mut changed = None;
        if !names.word.is_empty() {
            ui.label(RichText::new(names.word).color(tokens(ui).text_soft))
                .on_hover_text(names.meaning);
        }
        let quantity = self.length();
        for pair in [[Edge::Left, Edge::Right], [Edge::Top, Edge::Bottom]] {
            ui.horizontal(|ui| {
                for edge in pair {
                    let path = format!("{path}.{}", edge.word());
                    let full = format!("{} {}", names.full, edge.word());
                    let this = Number {
                        path: &path,
                        name: &full,
                        word: edge.word(),
                        meaning: names.meaning,
                        quantity,
                        word_width: EDGE_WORD,
                    };
                    let value = values.at(edge);
                    let dragged = word(ui, self.fields, this, value);
                    let typed = cell(ui, self.fields, this, value);
                    if let Some(change) = dragged.or(typed) {
                        changed = Some((edge, change));
                    }
                }
            });
            for edge in pair {
                problem(
                    ui,
                    self.fields,
                    field_id(&format!("{path}.{}", edge.word())),
                );
            }
        }
        changed
    }

    /// A material of the job's table.
    pub(crate) fn material(
        &self,
        ui: &mut Ui,
        path: &str,
        name: &str,
        now: &str,
    ) -> Option<Change<String>> {
        let all: Vec<(String, String)> = self
            .job
            .materials
            .iter()
            .map(|m| (m.name.clone(), m.name.clone()))
            .collect();
        super::fields::choice::pick(ui, path, name, "material", &now.to_owned(), &all)
    }

    /// Queues a change of the shown box.
    pub(crate) fn edit_box<T>(
        &mut self,
        what: &str,
        change: Option<Change<T>>,
        set: impl FnOnce(&mut WallBox, T),
    ) {
        let (Some(change), Some(before)) = (change, self.wall_box()) else {
            return;
        };
        let mut after = before.clone();
        set(&mut after, change.value);
        if after == *before {
            self.fields.accept(change.field);
            return;
        }
        let label = format!("{}: {what}", before.name);
        let edit = Edit::ReplaceBox {
            index: self.box_index,
            with: Box::new(after),
        };
        self.queue.push(Command::Edit(JobEdit {
            label,
            edit,
            field: Some(change.field),
            typed: change.typed,
            running: change.running,
        }));
    }

    /// Queues a change of the shown box that a button makes.
    pub(crate) fn press_box(&mut self, what: &str, set: impl FnOnce(&mut WallBox)) {
        let field = field_id(&self.box_path(what));
        let change = Change {
            value: (),
            field,
            typed: None,
            running: false,
        };
        self.edit_box(what, Some(change), |wall_box, ()| set(wall_box));
    }

    /// Queues a change of the shown door.
    pub(crate) fn edit_door<T>(
        &mut self,
        what: &str,
        change: Option<Change<T>>,
        set: impl FnOnce(&mut Door, T),
    ) {
        let opening = self.opening;
        let what = self.of_opening(&format!("door {what}"));
        self.edit_box(&what, change, |wall_box, value| {
            if let Some(door) = wall_box
                .openings
                .get_mut(opening)
                .and_then(|o| o.door.as_mut())
            {
                set(door, value);
            }
        });
    }

    /// Queues a change of the job's own data.
    pub(crate) fn edit_head<T>(
        &mut self,
        what: &str,
        change: Option<Change<T>>,
        set: impl FnOnce(&mut JobHead, T),
    ) {
        let Some(change) = change else { return };
        let before = JobHead::of(self.job);
        let mut after = before.clone();
        set(&mut after, change.value);
        if after == before {
            self.fields.accept(change.field);
            return;
        }
        self.queue.push(Command::Edit(JobEdit {
            label: format!("job: {what}"),
            edit: Edit::ReplaceHead(Box::new(after)),
            field: Some(change.field),
            typed: change.typed,
            running: change.running,
        }));
    }

    /// The same words, with the number of the opening where there are several.
    fn of_opening(&self, what: &str) -> String {
        match self.wall_box() {
            Some(wall_box) if wall_box.openings.len() > 1 => {
                format!("opening {}: {what}", self.opening + 1)
            }
            Some(_) | None => what.to_owned(),
        }
    }
}

/// The names of a field.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Names<'a> {
    /// As a screen reader says it.
    pub(crate) full: &'a str,
    /// Before the field.
    pub(crate) word: &'a str,
    /// On hover.
    pub(crate) meaning: &'a str,
}

/// Names of a field.
pub(crate) const fn names<'a>(full: &'a str, word: &'a str, meaning: &'a str) -> Names<'a> {
    Names {
        full,
        word,
        meaning,
    }
}

/// A heading inside a section.
pub(crate) fn group(ui: &mut Ui, title: &str) {
    ui.add_space(super::tokens::GROUP_GAP);
    ui.label(bold(title).color(tokens(ui).text_soft).size(12.5));
}
