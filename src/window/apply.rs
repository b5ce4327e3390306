//! The one place where commands are done.

use egui::{Context, ThemePreference};
use flapwright_model::edit::{Edit, JobHead};
use flapwright_model::length::Unit;
use flapwright_model::part::{Part, Subject};

use super::app::{App, Purpose};
use super::canvas::ZOOM_STEP;
use super::canvas::camera::Camera;
use super::card_editor::CardCommand;
use super::command::{Command, JobEdit, UiCommand, View};
use super::dialogs::file_dialogs::Ask;
use super::dialogs::{Dialog, Next};
use super::findings::open_count;
use super::form::starter;
use super::side_panel::SideTab;
use super::status_line::Status;

impl App {
    /// Does one thing.
    pub(super) fn apply(&mut self, ctx: &Context, command: Command) {
        match command {
            Command::Ui(command) => {
                if self.available(command).enabled {
                    self.apply_ui(ctx, command);
                }
            }
            Command::Edit(edit) => self.edit(edit),
            Command::ApplyRemedy { finding, remedy } => self.remedy(finding, remedy),
            Command::KeepPreview { finding, remedy } => self.keep_preview(finding, remedy),
            Command::AskAccept(index) => self.ask_accept(ctx, index),
            Command::Accept { finding, reason } => self.accept_finding(finding, &reason),
            Command::TakeBack(index) => self.take_back_acceptance(index),
            Command::ShowPage(check) => self.show_page(ctx, &check),
            Command::SelectBox(index) => self.view.show_box(index),
            Command::SelectOpening(index) => {
                if self.view.opening != index {
                    self.view.opening = index;
                    self.view.fields.clear();
                }
            }
            Command::SelectFinding(index) => self.select_finding(index),
            Command::SetOpen(s) => {
                self.view.playing = None;
                self.view.s = s.clamp(0.0, 1.0);
            }
            Command::Move { view, by } => self.canvas(view).shift(by),
            Command::Zoom { view, factor, at } => self.canvas(view).zoom(factor, Some(at)),
            Command::Fit(view) => self.canvas(view).camera = Camera::Fitted,
            Command::OpenPath(path) => self.ask_then(ctx, Next::OpenPath(path)),
            Command::Unsaved(answer) => self.answer_unsaved(ctx, answer),
            Command::TypedPath(path) => self.typed_path(ctx, path),
            Command::Export(choice) => {
                self.dialog = None;
                self.ask_path(ctx, Purpose::Export(choice), Ask::ExportFolder);
            }
            Command::StopExport => {
                if let Some(exporting) = &self.exporting {
                    exporting.stop();
                }
            }
            Command::OpenFolder(folder) => self.open_folder(ctx, &folder),
            Command::TakeSize { card, size } => self.take_size(&card, &size),
            Command::SearchStruts => self.search_struts(ctx),
            Command::StopSearch => self.strut_search = None,
            Command::UseMounts(row) => self.use_anchors(row),
            Command::Card(command) => self.apply_card(ctx, command),
            Command::CloseDialog => {
                self.dialog = None;
                self.strut_search = None;
            }
        }
        let job = self.document.job();
        let openings: Vec<usize> = job.boxes.iter().map(|b| b.openings.len()).collect();
        let findings = self.document.inspection().findings.len();
        self.view.stay_within(&openings, findings);
    }

    fn apply_ui(&mut self, ctx: &Context, command: UiCommand) {
        match command {
            UiCommand::New => self.ask_then(ctx, Next::New),
            UiCommand::Open => self.ask_then(ctx, Next::Open),
            UiCommand::Save => self.save(ctx),
            UiCommand::SaveAs => self.save_as(ctx),
            UiCommand::ExportSheets => {
                self.open_dialog(ctx, Dialog::Sheets(Box::default()));
            }
            UiCommand::Close => self.ask_then(ctx, Next::Close),
            UiCommand::Undo => {
                let done = self.keeping_finding(|app| app.document.undo());
                if let Some(label) = done {
                    self.view.fields.clear();
                    self.status = Status::done(format!("Taken back: {label}"));
                }
            }
            UiCommand::Redo => {
                let done = self.keeping_finding(|app| app.document.redo());
                if let Some(label) = done {
                    self.view.fields.clear();
                    self.status = Status::done(format!("Done again: {label}"));
                }
            }
            UiCommand::AddBox => self.add_box(),
            UiCommand::DuplicateBox => self.duplicate_box(),
            UiCommand::RemoveBox => self.remove_box(),
            UiCommand::FitViews => {
                self.view.elevation.camera = Camera::Fitted;
                self.view.section.camera = Camera::Fitted;
            }
            UiCommand::ZoomIn | UiCommand::ZoomOut => {
                let factor = if command == UiCommand::ZoomIn {
                    ZOOM_STEP
                } else {
                    ZOOM_STEP.recip()
                };
                self.view.elevation.zoom(factor, None);
                self.view.section.zoom(factor, None);
            }
            UiCommand::ShowDimensions => self.view.plain = !self.view.plain,
            UiCommand::PlayDoor => self.view.play_or_stop(),
            UiCommand::UseMillimetres => self.use_unit(Unit::Millimetre),
            UiCommand::UseInches => self.use_unit(Unit::Inch),
            UiCommand::NextFinding => self.step_finding(1),
            UiCommand::PreviousFinding => self.step_finding(-1),
            UiCommand::ApplySafe => self.apply_safe(ctx),
            UiCommand::AcceptFinding => {
                if let Some((index, _)) = self.lit(true) {
                    self.ask_accept(ctx, index);
                }
            }
            UiCommand::ExplainFinding => {
                if let Some((_, finding)) = self.lit(false) {
                    self.show_page(ctx, finding.check);
                }
            }
            UiCommand::ShowFindings => self.view.tab = SideTab::Findings,
            UiCommand::ShowSizes => self.view.tab = SideTab::Sizes,
            UiCommand::ShowForces => self.view.tab = SideTab::Forces,
            UiCommand::PlaceStrut => self.place_strut(ctx),
            UiCommand::LightTheme => ctx.set_theme(ThemePreference::Light),
            UiCommand::DarkTheme => ctx.set_theme(ThemePreference::Dark),
            UiCommand::SystemTheme => ctx.set_theme(ThemePreference::System),
            UiCommand::ShowCards => self.apply_card(ctx, CardCommand::List),
            UiCommand::ImportCard => self.apply_card(ctx, CardCommand::Import),
            UiCommand::ShowShortcuts => self.open_dialog(ctx, Dialog::Shortcuts),
            UiCommand::ShowAbout => self.open_dialog(ctx, Dialog::About),
        }
    }

    const fn canvas(&mut self, view: View) -> &mut super::canvas::CanvasState {
        match view {
            View::Elevation => &mut self.view.elevation,
            View::Section => &mut self.view.section,
        }
    }

    fn edit(&mut self, edit: JobEdit) {
        let JobEdit {
            label,
            edit,
            field,
            typed,
            running,
        } = edit;
        let gesture = field.filter(|_| running);
        let told = label.clone();
        match self.keeping_finding(|app| app.document.change(label, edit, gesture)) {
            Ok(()) => {
                if let Some(field) = field {
                    self.view.fields.accept(field);
                }
                self.status = Status::done(told);
            }
            Err(problems) => {
                let text: Vec<String> = problems
                    .iter()
                    .map(|p| format!("{}; {}", p.what, p.remedy))
                    .collect();
                let text = text.join("\n");
                self.status = Status::failed(format!("Not changed: {told} {text}"));
                if let Some(field) = field {
                    self.view.fields.refuse(field, typed, text);
                }
            }
        }
    }

    pub(super) fn whole_edit(&mut self, label: String, edit: Edit) {
        self.edit(JobEdit {
            label,
            edit,
            field: None,
            typed: None,
            running: false,
        });
    }

    fn remedy(&mut self, finding: usize, remedy: usize) {
        let found = self.document.inspection().findings.get(finding);
        let Some(remedy) = found.and_then(|finding| finding.remedies.get(remedy)) else {
            return;
        };
        let (label, edit) = (remedy.title.clone(), remedy.edit.clone());
        self.whole_edit(label, edit);
    }

    /// Changes the job and keeps the same finding lit, if it is still there.
    fn keeping_finding<T>(&mut self, change: impl FnOnce(&mut Self) -> T) -> T {
        let findings = &self.document.inspection().findings;
        let lit = self
            .view
            .finding
            .and_then(|index| findings.get(index))
            .map(|finding| (finding.check, finding.subjects.first().copied()));
        let outcome = change(self);
        self.view.finding = lit.and_then(|(check, subject)| {
            let findings = &self.document.inspection().findings;
            findings
                .iter()
                .position(|f| f.check == check && f.subjects.first().copied() == subject)
        });
        outcome
    }

    pub(super) fn select_finding(&mut self, index: Option<usize>) {
        self.view.finding = index;
        let found = index.and_then(|index| self.document.inspection().findings.get(index));
        let Some(subject) = found.and_then(|finding| finding.subjects.first().copied()) else {
            return;
        };
        self.view.show_box(subject.box_index());
        let opening = match subject {
            Subject::Opening { opening, .. } => Some(opening),
            Subject::Part(part) => opening_of(part.part),
            Subject::Bore(bore) => opening_of(bore.part.part),
            Subject::Box(_) => None,
        };
        if let Some(opening) = opening {
            self.view.opening = opening;
        }
        self.view.tab = SideTab::Findings;
        self.view.scroll_to_finding = true;
    }

    fn step_finding(&mut self, by: isize) {
        // The open ones come first in the list; the accepted ones are left out.
        let count = open_count(self.document.inspection());
        let lit = self.view.finding.filter(|index| *index < count);
        let index = match (lit, by > 0) {
            (None, true) => 0,
            (None, false) => count.saturating_sub(1),
            (Some(index), true) => (index + 1) % count.max(1),
            (Some(index), false) => (index + count.max(1) - 1) % count.max(1),
        };
        self.select_finding((index < count).then_some(index));
    }

    fn use_unit(&mut self, unit: Unit) {
        let head = JobHead {
            unit,
            ..JobHead::of(self.document.job())
        };
        let label = match unit {
            Unit::Millimetre => "job: lengths in millimetres",
            Unit::Inch => "job: lengths in inches",
        };
        self.whole_edit(label.to_owned(), Edit::ReplaceHead(Box::new(head)));
        self.view.fields.clear();
    }

    fn add_box(&mut self) {
        let job = self.document.job();
        let name = starter::free_name(job, "box 1");
        let mut with = starter::plain_box(&name, &starter::usual_material(job));
        with.place.along_wall = starter::free_place(job);
        self.insert_box(format!("add box {name}"), Box::new(with));
    }

    fn duplicate_box(&mut self) {
        let job = self.document.job();
        let Some(shown) = job.boxes.get(self.view.box_index) else {
            return;
        };
        let mut copy = shown.clone();
        copy.name = starter::free_name(job, &shown.name);
        copy.place.along_wall = starter::free_place(job);
        self.insert_box(format!("duplicate box {}", shown.name), Box::new(copy));
    }

    fn insert_box(&mut self, label: String, with: Box<flapwright_model::cabinet::WallBox>) {
        let count = self.document.job().boxes.len();
        let index = (self.view.box_index + 1).min(count);
        self.whole_edit(label, Edit::InsertBox { index, with });
        if self.document.job().boxes.len() > count {
            self.view.show_box(index);
        }
    }

    fn remove_box(&mut self) {
        let index = self.view.box_index;
        let Some(shown) = self.document.job().boxes.get(index) else {
            return;
        };
        let label = format!("remove box {}", shown.name);
        self.whole_edit(label, Edit::RemoveBox { index });
        self.view.fields.clear();
    }
}

const fn opening_of(part: Part) -> Option<usize> {
    match part {
        Part::Leaf { opening, .. } => Some(opening),
        Part::LeftSide
        | Part::RightSide
        | Part::Top
        | Part::Bottom
        | Part::Back
        | Part::Shelf(_)
        | Part::Frame => None,
    }
}
