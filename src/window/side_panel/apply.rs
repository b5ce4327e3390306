//! The commands of the tabs on the fitting.

use egui::Context;
use flapwright_model::cabinet::WallBox;
use flapwright_model::part::Subject;
use flapwright_rules::inspection::BoxReport;
use flapwright_rules::mechanics::pick_named;
use flapwright_rules::strut_places::{StrutPlaces, has_strut, strut_places, use_anchors};

use super::{StrutDialog, StrutSearch};
use crate::window::app::App;
use crate::window::dialogs::Dialog;
use crate::window::status_line::Status;

impl App {
    /// The shown opening.
    const fn subject(&self) -> Subject {
        Subject::Opening {
            box_index: self.view.box_index,
            opening: self.view.opening,
        }
    }

    fn box_name(&self) -> String {
        let shown = self.document.job().boxes.get(self.view.box_index);
        shown.map_or_else(String::new, |shown| shown.name.clone())
    }

    /// Gives the shown door another size.
    pub(in crate::window) fn take_size(&mut self, card: &str, size: &str) {
        let Some(edit) = pick_named(self.document.job(), self.subject(), card, size) else {
            self.status = Status::failed("This opening has no door with a fitting.");
            return;
        };
        let label = format!("{}: take {card}, size {size}", self.box_name());
        self.view.fields.clear();
        self.whole_edit(label, edit);
    }

    /// What a search for anchors needs to know of the shown door.
    fn strut_places(&self) -> Option<StrutPlaces> {
        let (wall_box, report) = self.shown_box()?;
        strut_places(self.document.job(), wall_box, report, self.view.opening)
    }

    /// Whether there is something to search for.
    pub(in crate::window) fn has_strut(&self) -> bool {
        let job = self.document.job();
        self.shown_box()
            .is_some_and(|(it, report)| has_strut(job, it, report, self.view.opening))
    }

    fn shown_box(&self) -> Option<(&WallBox, &BoxReport)> {
        let index = self.view.box_index;
        let wall_box = self.document.job().boxes.get(index)?;
        Some((wall_box, self.document.inspection().boxes.get(index)?))
    }

    /// Asks where the anchors may be.
    pub(in crate::window) fn place_strut(&mut self, ctx: &Context) {
        if let Some(places) = self.strut_places() {
            self.open_dialog(ctx, Dialog::PlaceStrut(Box::new(StrutDialog::new(places))));
        }
    }

    /// Begins the search that the open question asks for.
    pub(in crate::window) fn search_struts(&mut self, ctx: &Context) {
        let Some(places) = self.strut_places() else {
            return;
        };
        let Some(Dialog::PlaceStrut(dialog)) = &mut self.dialog else {
            return;
        };
        dialog.found = None;
        match StrutSearch::start(places, dialog.limits, ctx.clone()) {
            Ok(running) => self.strut_search = Some(running),
            Err(problem) => self.status = Status::failed(problem),
        }
    }

    /// Hears what a running search has found.
    pub(in crate::window) fn hear_search(&mut self) {
        let found = self.strut_search.as_ref().and_then(StrutSearch::poll);
        let Some(found) = found else { return };
        self.strut_search = None;
        if let Some(Dialog::PlaceStrut(dialog)) = &mut self.dialog {
            dialog.found = Some(found);
        }
    }

    /// Takes over the anchors of a row of the answers.
    pub(in crate::window) fn use_anchors(&mut self, row: usize) {
        let Some(Dialog::PlaceStrut(dialog)) = &self.dialog else {
            return;
        };
        let Some(answer) = dialog.answer(row) else {
            return;
        };
        let (card, size) = (dialog.card.clone(), answer.name.clone());
        let edit = use_anchors(self.document.job(), self.subject(), &card, answer);
        let Some(edit) = edit else { return };
        let label = format!("{}: anchors of {card}, size {size}", self.box_name());
        self.dialog = None;
        self.whole_edit(label, edit);
    }
}
