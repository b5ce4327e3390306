//! The form at the left: what the shown box and its door are.

mod as_drilled;
mod box_form;
mod box_list;
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
mod rows;
mod search;
mod severity_form;

use egui::{CollapsingHeader, RichText, Ui};
use flapwright_model::cabinet::WallBox;
use flapwright_model::door::Door;
use flapwright_model::edit::Edit;
use flapwright_model::id::{BoxId, OpeningId};
use flapwright_model::job::Job;
use flapwright_model::part::{Part, PartId};
use flapwright_rules::inspection::Inspection;

use flapwright_session::action::Action;

use super::command::{Command, JobEdit};
use super::fields::Fields;
use super::tokens::{bold, tokens};

/// What the form shows and where its changes go.
pub(crate) struct Form<'a> {
    /// The job.
    pub(crate) job: &'a Job,
    /// What is true of it.
    pub(crate) inspection: &'a Inspection,
    /// The shown box.
    pub(crate) box_id: Option<BoxId>,
    /// The shown opening of it.
    pub(crate) opening: Option<OpeningId>,
    /// What is typed but not taken.
    pub(crate) fields: &'a mut Fields,
    /// What is to be done after the frame.
    pub(crate) queue: &'a mut Vec<Command>,
}

/// Shows the whole form.
pub(crate) fn form_ui(ui: &mut Ui, mut form: Form<'_>) {
    box_list::box_list_ui(ui, &mut form);
    ui.separator();
    egui::ScrollArea::vertical()
        .auto_shrink(false)
        .show(ui, |ui| {
            if search::search_ui(ui, &mut form) {
                return;
            }
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

impl<'a> Form<'a> {
    /// The shown box.
    pub(crate) fn wall_box(&self) -> Option<&'a WallBox> {
        self.job.box_by_id(self.box_id?)
    }

    /// The shown opening.
    pub(crate) const fn opening_id(&self) -> Option<OpeningId> {
        self.opening
    }

    /// Whether an opening is the shown one.
    pub(crate) fn shows(&self, opening: OpeningId) -> bool {
        self.opening == Some(opening)
    }

    /// Shows another opening of the box.
    pub(crate) fn show_opening(&mut self, opening: OpeningId) {
        self.queue.push(Command::Do(Action::ShowOpening(opening)));
    }

    /// The door of the shown opening.
    pub(crate) fn door(&self) -> Option<&'a Door> {
        self.wall_box()?.opening(self.opening?)?.door.as_ref()
    }

    /// A part of the shown box.
    pub(crate) fn part(&self, part: Part) -> Option<PartId> {
        let box_id = self.box_id?;
        Some(PartId { box_id, part })
    }

    /// Queues a change of the shown box that a button makes; nothing where there is none.
    pub(crate) fn press(&mut self, what: &str, edit: Option<Edit>) {
        let of = self.wall_box().map_or("", |it| it.name.as_str());
        self.press_edit(format!("{of}: {what}"), edit);
    }

    /// The same of the job as a whole.
    pub(crate) fn press_job(&mut self, what: &str, edit: Option<Edit>) {
        self.press_edit(format!("job: {what}"), edit);
    }

    fn press_edit(&mut self, label: String, edit: Option<Edit>) {
        if let Some(edit) = edit {
            self.queue.push(Command::Edit(JobEdit {
                label,
                edit,
                field: None,
                typed: None,
                running: false,
            }));
        }
    }
}

/// A sentence that explains what stands above it.
pub(crate) fn note(ui: &mut Ui, text: &str) {
    let text = RichText::new(text).small().color(tokens(ui).text_soft);
    ui.add(egui::Label::new(text).wrap());
}

/// A heading inside a section.
pub(crate) fn group(ui: &mut Ui, title: &str) {
    ui.add_space(super::tokens::GROUP_GAP);
    ui.label(bold(title).color(tokens(ui).text_soft).size(12.5));
}
