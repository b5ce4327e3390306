//! The window as a whole: what it keeps, and what one frame does.

use std::path::PathBuf;
use std::sync::mpsc::Receiver;

use egui::{CentralPanel, Context, Frame, Margin, Panel, Ui, ViewportCommand};
use flapwright_model::job::Job;
use flapwright_model::length::Unit;

use super::card_editor::{CardCommand, CardList, cards_ui, looks_like_card};
use super::command::{Command, UiCommand};
use super::dialogs::file_dialogs::{Answer, Ask, FileDialogs};
use super::dialogs::{Dialog, Next, dialog_ui};
use super::document::Document;
use super::drawings::drawings_ui;
use super::export_job::{ExportChoice, Exporting};
use super::findings::{has_safe, open_count};
use super::form::{Form, form_ui};
use super::side_panel::{StrutSearch, side_ui};
use super::status_line::{Busy, Status, status_ui};
use super::tokens::{SIDE_WIDTH, SIDE_WIDTHS};
use super::top_bar::{Availability, top_bar_ui};
use super::view_state::ViewState;

/// The window: the open job, what is looked at, what stands over it.
pub struct App {
    pub(super) document: Document,
    pub(super) view: ViewState,
    pub(super) dialog: Option<Dialog>,
    pub(super) files: Box<dyn FileDialogs>,
    pub(super) pending: Option<Pending>,
    pub(super) exporting: Option<Exporting>,
    /// The search for anchors that is running.
    pub(super) strut_search: Option<StrutSearch>,
    /// What to go on with once the job is saved.
    pub(super) after_save: Option<Next>,
    pub(super) status: Status,
    /// Fitting cards at hand and those that are typed.
    pub(super) cards: CardList,
    /// Unsaved changes were asked about: the window may close.
    pub(super) leaving: bool,
    /// What waits until a field has given up its text.
    deferred: Vec<Command>,
    title: String,
}

/// A question to the system that is not answered yet.
pub(super) struct Pending {
    pub(super) purpose: Purpose,
    pub(super) ask: Ask,
    pub(super) receiver: Receiver<Answer>,
}

/// What a path is for.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(super) enum Purpose {
    Open,
    Save,
    Export(Box<ExportChoice>),
    ImportCard,
    SaveCard,
    ShareCards,
}

impl App {
    /// A window with a job in it. The context that shows it must have been given to
    /// [`prepare`](super::prepare).
    #[must_use]
    pub fn new(job: Job, path: Option<PathBuf>, files: Box<dyn FileDialogs>) -> Self {
        Self {
            document: Document::new(job, path),
            view: ViewState::default(),
            dialog: None,
            files,
            pending: None,
            exporting: None,
            strut_search: None,
            after_save: None,
            status: Status::default(),
            cards: CardList::default(),
            leaving: false,
            deferred: Vec::new(),
            title: String::new(),
        }
    }

    /// Shows one frame and then does what it asked for.
    pub fn frame(&mut self, ui: &mut Ui) {
        let ctx = ui.ctx().clone();
        let mut queue = std::mem::take(&mut self.deferred);
        let settled = queue.len();
        self.hear(&ctx);
        self.hear_search();
        self.close_request(&ctx);
        if self.dialog.is_none() {
            if !self.cards_shown() {
                self.keys(&ctx, &mut queue);
            }
            dropped(&ctx, &mut queue);
        }
        self.view.fields.begin();
        let revision = self.document.revision();
        self.view.findings.preview.begin(revision);
        let mut asked = Vec::new();
        self.show(ui, &mut asked);
        // What a field gives up goes before what waited for it.
        queue.splice(
            0..0,
            asked.extract_if(.., |command| matches!(command, Command::Edit(_))),
        );
        queue.append(&mut asked);
        if settled == 0 {
            self.wait_for_typing(&ctx, &mut queue);
        }
        for command in queue {
            self.apply(&ctx, command);
        }
        self.finish(&ctx);
    }

    /// Does one thing, as if the window had asked for it.
    pub fn run_command(&mut self, ctx: &Context, command: Command) {
        self.apply(ctx, command);
        ctx.request_repaint();
    }

    fn show(&mut self, ui: &mut Ui, queue: &mut Vec<Command>) {
        if self.cards_shown() {
            self.show_cards(ui, queue);
            return;
        }
        let table: Vec<(UiCommand, Availability)> = UiCommand::ALL
            .into_iter()
            .map(|command| (command, self.available(command)))
            .collect();
        let available = |command: UiCommand| {
            table.iter().find(|(c, _)| *c == command).map_or(
                Availability {
                    enabled: false,
                    more: None,
                },
                |(_, availability)| availability.clone(),
            )
        };
        let busy = self.busy();
        let Self {
            document,
            view,
            dialog,
            status,
            strut_search,
            ..
        } = self;
        let bar = Frame::side_top_panel(ui.style()).inner_margin(Margin::symmetric(8, 4));
        Panel::top("top bar")
            .frame(bar)
            .show(ui, |ui| top_bar_ui(ui, document, &available, queue));
        let door = document
            .inspection()
            .boxes
            .get(view.box_index)
            .and_then(|report| report.openings.get(view.opening)?.door.as_ref());
        Panel::bottom("status line").frame(bar).show(ui, |ui| {
            status_ui(ui, status, busy, door, document.job().unit, queue);
        });
        let side = Frame::side_top_panel(ui.style()).inner_margin(Margin::same(8));
        Panel::left("form")
            .resizable(true)
            .default_size(344.0)
            .size_range(SIDE_WIDTHS)
            .frame(side)
            .show(ui, |ui| {
                let form = Form {
                    job: document.job(),
                    inspection: document.inspection(),
                    box_index: view.box_index,
                    opening: view.opening,
                    fields: &mut view.fields,
                    queue,
                };
                form_ui(ui, form);
            });
        Panel::right("findings")
            .resizable(true)
            .default_size(SIDE_WIDTH)
            .size_range(SIDE_WIDTHS)
            .frame(side)
            .show(ui, |ui| side_ui(ui, document, view, queue));
        CentralPanel::default()
            .frame(Frame::central_panel(ui.style()).inner_margin(Margin::same(6)))
            .show(ui, |ui| drawings_ui(ui, document, view, queue));
        if let Some(dialog) = dialog {
            let progress = strut_search.as_ref().map(StrutSearch::progress);
            dialog_ui(
                ui.ctx(),
                dialog,
                document,
                (&mut view.fields, progress),
                queue,
            );
        }
    }

    /// What is going on beside the window.
    fn busy(&self) -> Option<Busy> {
        match (&self.pending, &self.exporting) {
            (Some(_), _) => Some(Busy {
                words: "waiting for a file",
                progress: None,
            }),
            (None, Some(exporting)) => Some(Busy {
                words: "writing sheets",
                progress: Some(exporting.progress()),
            }),
            (None, None) => None,
        }
    }

    /// The cards in the place of the job.
    fn show_cards(&mut self, ui: &mut Ui, queue: &mut Vec<Command>) {
        let job = self.document.job();
        let bar = Frame::side_top_panel(ui.style()).inner_margin(Margin::symmetric(8, 4));
        let busy = self.busy();
        Panel::bottom("status line").frame(bar).show(ui, |ui| {
            status_ui(ui, &self.status, busy, None, job.unit, queue);
        });
        cards_ui(ui, &mut self.cards, job, self.dialog.is_some(), queue);
        if let Some(dialog) = &mut self.dialog {
            let asked = (&mut self.view.fields, None);
            dialog_ui(ui.ctx(), dialog, &self.document, asked, queue);
        }
    }

    /// Keys of commands, most modifiers first.
    fn keys(&self, ctx: &Context, queue: &mut Vec<Command>) {
        let editing = ctx.text_edit_focused();
        let mut keys: Vec<_> = UiCommand::ALL
            .into_iter()
            .flat_map(|command| command.shortcuts().iter().map(move |keys| (command, *keys)))
            .collect();
        keys.sort_by_key(|(_, keys)| {
            std::cmp::Reverse(u8::from(keys.modifiers.shift) + u8::from(keys.modifiers.command))
        });
        for (command, keys) in keys {
            let own_undo =
                self.view.fields.typing() && matches!(command, UiCommand::Undo | UiCommand::Redo);
            if own_undo || (editing && command.types_text()) || !self.available(command).enabled {
                continue;
            }
            if ctx.input_mut(|input| input.consume_shortcut(&keys)) {
                queue.push(Command::Ui(command));
            }
        }
    }

    /// Lets a field take what is typed in it before anything else is done.
    fn wait_for_typing(&mut self, ctx: &Context, queue: &mut Vec<Command>) {
        if !self.view.fields.typing() {
            return;
        }
        let waits = |command: &mut Command| match command {
            Command::Edit(_)
            | Command::SetOpen(_)
            | Command::Move { .. }
            | Command::Zoom { .. }
            | Command::Fit(_) => false,
            Command::Ui(_)
            | Command::ApplyRemedy { .. }
            | Command::KeepPreview { .. }
            | Command::AskAccept(_)
            | Command::Accept { .. }
            | Command::TakeBack(_)
            | Command::ShowPage(_)
            | Command::SelectBox(_)
            | Command::SelectOpening(_)
            | Command::SelectFinding(_)
            | Command::OpenPath(_)
            | Command::Unsaved(_)
            | Command::TypedPath(_)
            | Command::Export(_)
            | Command::StopExport
            | Command::OpenFolder(_)
            | Command::TakeSize { .. }
            | Command::SearchStruts
            | Command::StopSearch
            | Command::UseMounts(_)
            | Command::Card(_)
            | Command::CloseDialog => true,
        };
        self.deferred.extend(queue.extract_if(.., waits));
        if !self.deferred.is_empty() {
            release_keyboard(ctx);
            ctx.request_repaint();
        }
    }

    /// Ends gestures, lets a door run on, names the window.
    fn finish(&mut self, ctx: &Context) {
        if let Some(field) = self.document.history().open_gesture() {
            let held = ctx.input(|input| input.pointer.any_down());
            let focused = ctx.memory(|memory| memory.has_focus(field));
            if !held && !focused {
                self.document.seal();
            }
        }
        if self.view.playing.is_some() {
            let seconds = ctx.input(|input| input.stable_dt).min(0.1);
            self.view.run(f64::from(seconds));
            ctx.request_repaint();
        }
        let mark = if self.document.unsaved() { "* " } else { "" };
        let title = format!("{mark}{} - Flapwright", self.document.job().name);
        if title != self.title {
            ctx.send_viewport_cmd(ViewportCommand::Title(title.clone()));
            self.title = title;
        }
    }

    /// Whether a command can be run now.
    pub(super) fn available(&self, command: UiCommand) -> Availability {
        let free = self.pending.is_none();
        let history = self.document.history();
        let some_box = !self.document.job().boxes.is_empty();
        let inspection = self.document.inspection();
        let (enabled, more) = match command {
            UiCommand::New
            | UiCommand::Open
            | UiCommand::Save
            | UiCommand::SaveAs
            | UiCommand::Close => (free, None),
            UiCommand::ImportCard => (free, None),
            UiCommand::ExportSheets => (free && self.exporting.is_none() && some_box, None),
            UiCommand::Undo => (history.undo_label().is_some(), history.undo_label()),
            UiCommand::Redo => (history.redo_label().is_some(), history.redo_label()),
            UiCommand::DuplicateBox | UiCommand::RemoveBox => (some_box, None),
            UiCommand::FitViews
            | UiCommand::ZoomIn
            | UiCommand::ZoomOut
            | UiCommand::ShowDimensions
            | UiCommand::PlayDoor => (some_box, None),
            UiCommand::PlaceStrut => (self.has_strut(), None),
            UiCommand::NextFinding | UiCommand::PreviousFinding => {
                (open_count(inspection) > 0, None)
            }
            UiCommand::ApplySafe => (has_safe(inspection), None),
            UiCommand::AcceptFinding => (self.lit(true).is_some(), None),
            UiCommand::ExplainFinding => (self.lit(false).is_some(), None),
            UiCommand::UseMillimetres => (self.document.job().unit != Unit::Millimetre, None),
            UiCommand::UseInches => (self.document.job().unit != Unit::Inch, None),
            UiCommand::AddBox
            | UiCommand::ShowFindings
            | UiCommand::ShowSizes
            | UiCommand::ShowForces
            | UiCommand::LightTheme
            | UiCommand::DarkTheme
            | UiCommand::SystemTheme
            | UiCommand::ShowCards
            | UiCommand::ShowShortcuts
            | UiCommand::ShowAbout => (true, None),
        };
        Availability {
            enabled,
            more: more.map(str::to_owned),
        }
    }
}

/// What is to be done with files that were dropped on the window.
fn dropped(ctx: &Context, queue: &mut Vec<Command>) {
    for file in ctx.input(|input| input.raw.dropped_files.clone()) {
        let path = file.path().to_owned();
        if path.as_os_str().is_empty() {
            continue;
        }
        queue.push(if looks_like_card(&path) {
            Command::Card(CardCommand::ImportPath(path))
        } else {
            Command::OpenPath(path)
        });
    }
}

/// Takes the keyboard from the field that has it, so that it gives up its text.
pub(super) fn release_keyboard(ctx: &Context) {
    ctx.memory_mut(|memory| {
        if let Some(field) = memory.focused() {
            memory.surrender_focus(field);
        }
    });
}
