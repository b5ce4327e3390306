//! The one place where commands are done.

use egui::{Context, ThemePreference};
use flapwright_answer::AppliedRemedy;
use flapwright_rules::checks::check;
use flapwright_rules::finding::Severity;
use flapwright_rules::plural::count;
use flapwright_session::action::Action;
use flapwright_session::action_table::ActionId;
use flapwright_session::finding_key::FindingKey;
use flapwright_session::history::Gesture;
use flapwright_session::outcome::Outcome;
use flapwright_session::preview::RemedyAt;
use flapwright_words::{Names, headline, places};

use super::{App, Purpose};
use crate::window::canvas::camera::Camera;
use crate::window::canvas::{CanvasState, ZOOM_STEP};
use crate::window::card_editor::CardCommand;
use crate::window::command::{Command, JobEdit, View};
use crate::window::dialogs::accept_dialog::AcceptDialog;
use crate::window::dialogs::file_dialogs::Ask;
use crate::window::dialogs::{Dialog, Next};
use crate::window::side_panel::StrutDialog;
use crate::window::status_line::Status;

impl App {
    /// Does one thing.
    pub(in crate::window) fn apply(&mut self, ctx: &Context, command: Command) {
        match command {
            Command::Choose(id) => {
                if self.available(id).enabled {
                    self.choose(ctx, id);
                }
            }
            Command::Do(action) => self.act(ctx, action),
            Command::Edit(edit) => self.edit(ctx, edit),
            Command::KeepPreview { finding, remedy } => self.keep_preview(ctx, finding, remedy),
            Command::AskAccept(finding) => self.ask_accept(ctx, &finding),
            Command::ShowPage(check) => self.show_page(ctx, &check),
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
            Command::OpenFolder(folder) => self.open_folder(ctx, &folder),
            Command::Card(command) => self.apply_card(ctx, command),
            Command::CloseDialog => {
                self.dialog = None;
                self.act(ctx, Action::StopSearch);
            }
        }
    }

    /// Does what was chosen, or asks for what it needs.
    fn choose(&mut self, ctx: &Context, id: ActionId) {
        if let Some(action) = id.action() {
            return self.act(ctx, action);
        }
        match id {
            ActionId::New => self.ask_then(ctx, Next::New),
            ActionId::Open => self.ask_then(ctx, Next::Open),
            ActionId::Save => self.save(ctx),
            ActionId::SaveAs => self.save_as(ctx),
            ActionId::ExportSheets => self.open_dialog(ctx, Dialog::Sheets(Box::default())),
            ActionId::Close => self.ask_then(ctx, Next::Close),
            ActionId::FitViews => {
                self.view.elevation.camera = Camera::Fitted;
                self.view.section.camera = Camera::Fitted;
            }
            ActionId::ZoomIn => self.zoom_both(ZOOM_STEP),
            ActionId::ZoomOut => self.zoom_both(ZOOM_STEP.recip()),
            ActionId::AcceptFinding => {
                if let Some(key) = self.session.selection().finding.clone() {
                    self.ask_accept(ctx, &key);
                }
            }
            ActionId::ExplainFinding => {
                if let Some(finding) = self.session.selected_finding() {
                    self.show_page(ctx, finding.check);
                }
            }
            ActionId::PlaceStrut => {
                if let Some(places) = self.session.strut_places() {
                    let dialog = StrutDialog::new(places, self.session.job());
                    self.open_dialog(ctx, Dialog::PlaceStrut(Box::new(dialog)));
                }
            }
            ActionId::LightTheme => ctx.set_theme(ThemePreference::Light),
            ActionId::DarkTheme => ctx.set_theme(ThemePreference::Dark),
            ActionId::SystemTheme => ctx.set_theme(ThemePreference::System),
            ActionId::ShowCards => self.apply_card(ctx, CardCommand::List),
            ActionId::ImportCard => self.apply_card(ctx, CardCommand::Import),
            ActionId::ShowShortcuts => self.open_dialog(ctx, Dialog::Shortcuts),
            ActionId::ShowAbout => self.open_dialog(ctx, Dialog::About),
            // The rest are actions of the session, done above.
            _ => {}
        }
    }

    fn zoom_both(&mut self, factor: f64) {
        self.view.elevation.zoom(factor, None);
        self.view.section.zoom(factor, None);
    }

    const fn canvas(&mut self, view: View) -> &mut CanvasState {
        match view {
            View::Elevation => &mut self.view.elevation,
            View::Section => &mut self.view.section,
        }
    }

    /// Has the session do something, and shows what came of it.
    pub(in crate::window) fn act(&mut self, ctx: &Context, action: Action) {
        let before = self.shown();
        let effect = Effect::of(&action);
        let outcome = self.session.apply(action);
        let done = outcome.is_done();
        self.tell_outcome(ctx, outcome);
        if (done && effect.forgets_typing) || self.shown() != before {
            self.view.fields.clear();
        }
        if done && effect.closes_dialog {
            self.dialog = None;
        }
        if effect.scrolls && self.session.selection().finding.is_some() {
            self.view.scroll_to_finding = true;
        }
    }

    pub(in crate::window) fn tell_outcome(&mut self, ctx: &Context, outcome: Outcome) {
        match outcome {
            Outcome::Nothing | Outcome::Shown | Outcome::NeedsPath => {}
            Outcome::Done(told) => self.status = Status::done(told),
            Outcome::Refused { label, problems } => {
                let why = super::files::in_lines(&problems);
                self.status = Status::failed(format!("Not changed: {label} {why}"));
            }
            Outcome::Failed { title, why } => self.tell(ctx, title, why),
            Outcome::Remedied(applied) => self.tell_remedied(ctx, &applied),
        }
    }

    /// A change that a field asks for: the field shows why it was refused.
    fn edit(&mut self, ctx: &Context, edit: JobEdit) {
        let JobEdit {
            label,
            edit,
            field,
            typed,
            running,
        } = edit;
        let gesture = field.filter(|_| running);
        self.dragged = gesture;
        let outcome = self.session.apply(Action::Edit {
            label,
            edit,
            gesture: gesture.map(|field| Gesture(field.value())),
        });
        match (&outcome, field) {
            (Outcome::Done(_), Some(field)) => self.view.fields.accept(field),
            (Outcome::Refused { problems, .. }, Some(field)) => {
                let why = super::files::in_lines(problems);
                self.view.fields.refuse(field, typed, why);
            }
            _ => {}
        }
        self.tell_outcome(ctx, outcome);
    }

    /// Says what was remedied all at once.
    fn tell_remedied(&mut self, ctx: &Context, applied: &[AppliedRemedy]) {
        let mut text = String::from("One step; undo takes all of it back.\n");
        let names = Names::of(self.session.job());
        let speaker = names.speaker();
        for it in applied {
            let (place, title) = (places(&it.subjects, &speaker), speaker.say(&it.kind));
            text.push_str(&format!("\n• {place}: {title} ({})", it.check));
        }
        let document = self.session.document();
        let open = |severity: Severity| count(document.open(severity), severity.word());
        text.push_str(&format!(
            "\n\nOpen now: {}, {}, {}.",
            open(Severity::Stop),
            open(Severity::Caution),
            open(Severity::Note)
        ));
        let done = match applied.len() {
            1 => "1 safe remedy".to_owned(),
            many => format!("{many} safe remedies"),
        };
        self.status = Status::done(format!("apply {done}"));
        let title = format!("Applied {done}");
        self.open_dialog(ctx, Dialog::Message { title, text });
    }

    /// Asks why a finding is accepted.
    fn ask_accept(&mut self, ctx: &Context, key: &FindingKey) {
        let finding = self.session.document().finding(key);
        let Some(finding) = finding.filter(|it| it.accepted.is_none()) else {
            return;
        };
        // One that came back keeps the reason that it had.
        let reason = self.session.reason_before(finding).unwrap_or_default();
        let dialog = AcceptDialog {
            finding: key.clone(),
            message: headline(finding, &Names::of(self.session.job()).speaker()),
            reason: reason.to_owned(),
            missing: false,
        };
        self.open_dialog(ctx, Dialog::Accept(dialog));
    }

    /// Shows the page of a check.
    fn show_page(&mut self, ctx: &Context, name: &str) {
        if let Some(check) = check(name) {
            self.open_dialog(ctx, Dialog::Page(check.name));
        }
    }

    /// Keeps the preview of a remedy on, or switches it off.
    fn keep_preview(&mut self, ctx: &Context, finding: FindingKey, remedy: usize) {
        let at = RemedyAt {
            revision: self.session.document().revision(),
            finding: finding.clone(),
            remedy,
        };
        if self.view.findings.preview.keep_or_drop(at) {
            self.act(ctx, Action::SelectFinding(Some(finding)));
        }
    }
}

/// What the window does when an action is done.
#[derive(Debug, Clone, Copy, Default)]
struct Effect {
    /// Fields forget what is typed and not taken: the job is another, or says its lengths
    /// differently.
    forgets_typing: bool,
    /// The question that it answers is closed.
    closes_dialog: bool,
    /// The list of findings brings the selected one into sight.
    scrolls: bool,
}

impl Effect {
    fn of(action: &Action) -> Self {
        Self {
            forgets_typing: matches!(
                action,
                Action::Undo
                    | Action::Redo
                    | Action::RemoveBox
                    | Action::UseUnit(_)
                    | Action::PutCard(_)
                    | Action::TakeSize { .. }
            ),
            closes_dialog: matches!(action, Action::Accept { .. } | Action::UseMounts { .. }),
            scrolls: matches!(
                action,
                Action::SelectFinding(_) | Action::NextFinding | Action::PreviousFinding
            ),
        }
    }
}
