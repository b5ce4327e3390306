//! The window as a whole: what it keeps, and what one frame does. Nobody else has its parts in hand:
//! what is shown borrows what it shows and queues commands.

mod apply;
mod files;
mod inspect;

use std::path::PathBuf;
use std::sync::mpsc::Receiver;

use egui::{CentralPanel, Context, Frame, Id, Margin, Panel, Ui, ViewportCommand};
use flapwright_model::job::Job;

use super::card_editor::{CardCommand, CardList, cards_ui, looks_like_card};
use super::command::Command;
use super::dialogs::file_dialogs::{Answer, Ask, FileDialogs};
use super::dialogs::{Dialog, Next, dialog_ui};
use super::drawings::drawings_ui;
use super::form::{Form, form_ui};
use super::keys::shortcut;
use super::side_panel::side_ui;
use super::status_line::{Busy, Status, status_ui};
use super::tokens::{SIDE_WIDTH, SIDE_WIDTHS};
use super::top_bar::top_bar_ui;
use super::view_state::ViewState;
use flapwright_session::action::Action;
use flapwright_session::action_table::{ACTIONS, ActionId};
use flapwright_session::export::ExportChoice;
use flapwright_session::outcome::Outcome;
use flapwright_session::{Availability, Session};

/// The window: the open job, what is looked at, what stands over it.
pub struct App {
    session: Session,
    view: ViewState,
    dialog: Option<Dialog>,
    files: Box<dyn FileDialogs>,
    pending: Option<Pending>,
    /// The field that is dragged or typed in as one gesture.
    dragged: Option<Id>,
    /// What to go on with once the job is saved.
    after_save: Option<Next>,
    status: Status,
    /// Fitting cards at hand and those that are typed.
    cards: CardList,
    /// Unsaved changes were asked about: the window may close.
    leaving: bool,
    /// What waits until a field has given up its text.
    deferred: Vec<Command>,
    title: String,
}

/// A question to the system that is not answered yet.
struct Pending {
    purpose: Purpose,
    ask: Ask,
    receiver: Receiver<Answer>,
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
            session: Session::new(job, path),
            view: ViewState::default(),
            dialog: None,
            files,
            pending: None,
            dragged: None,
            after_save: None,
            status: Status::default(),
            cards: CardList::default(),
            leaving: false,
            deferred: Vec::new(),
            title: String::new(),
        }
    }

    /// The fitting cards at hand.
    pub(super) const fn cards(&mut self) -> &mut CardList {
        &mut self.cards
    }

    /// The same, to look at.
    pub(super) const fn card_list(&self) -> &CardList {
        &self.cards
    }

    /// Has the session do something; what came of it is for the caller to show.
    pub(super) fn session_does(&mut self, action: Action) -> Outcome {
        self.session.apply(action)
    }

    /// Says something in the bottom line.
    pub(super) fn say(&mut self, status: Status) {
        self.status = status;
    }

    /// Closes what stands over the window.
    pub(super) fn close_dialog(&mut self) {
        self.dialog = None;
    }

    /// Fields forget what is typed and not taken.
    pub(super) fn forget_typing(&mut self) {
        self.view.fields.clear();
    }

    /// Shows one frame and then does what it asked for.
    pub fn frame(&mut self, ui: &mut Ui) {
        let ctx = ui.ctx().clone();
        let mut queue = std::mem::take(&mut self.deferred);
        let settled = queue.len();
        self.hear(&ctx);
        self.close_request(&ctx);
        if self.dialog.is_none() {
            if !self.cards_shown() {
                self.keys(&ctx, &mut queue);
            }
            dropped(&ctx, &mut queue);
        }
        self.view.fields.begin();
        let revision = self.session.document().revision();
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
        let busy = self.busy();
        let asking = self.pending.is_some();
        let Self {
            session,
            view,
            dialog,
            status,
            ..
        } = self;
        let (document, selection) = (session.document(), session.selection());
        let bar = Frame::side_top_panel(ui.style()).inner_margin(Margin::symmetric(8, 4));
        Panel::top("top bar")
            .frame(bar)
            .show(ui, |ui| top_bar_ui(ui, session, asking, queue));
        let door = session
            .shown_report()
            .zip(session.shown_door())
            .and_then(|(report, door)| report.door(door));
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
                    box_id: selection.box_id,
                    opening: selection.opening,
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
            .show(ui, |ui| side_ui(ui, session, view, queue));
        CentralPanel::default()
            .frame(Frame::central_panel(ui.style()).inner_margin(Margin::same(6)))
            .show(ui, |ui| drawings_ui(ui, session, view, queue));
        if let Some(dialog) = dialog {
            let progress = session.search_progress();
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
        match (&self.pending, self.session.export_progress()) {
            (Some(_), _) => Some(Busy {
                words: "waiting for a file",
                progress: None,
            }),
            (None, Some(progress)) => Some(Busy {
                words: "writing sheets",
                progress: Some(progress),
            }),
            (None, None) => None,
        }
    }

    /// The cards in the place of the job.
    fn show_cards(&mut self, ui: &mut Ui, queue: &mut Vec<Command>) {
        let job = self.session.job();
        let bar = Frame::side_top_panel(ui.style()).inner_margin(Margin::symmetric(8, 4));
        let busy = self.busy();
        Panel::bottom("status line").frame(bar).show(ui, |ui| {
            status_ui(ui, &self.status, busy, None, job.unit, queue);
        });
        cards_ui(ui, &mut self.cards, job, self.dialog.is_some(), queue);
        if let Some(dialog) = &mut self.dialog {
            let asked = (&mut self.view.fields, None);
            dialog_ui(ui.ctx(), dialog, self.session.document(), asked, queue);
        }
    }

    /// Keys of commands, most modifiers first.
    fn keys(&self, ctx: &Context, queue: &mut Vec<Command>) {
        let editing = ctx.text_edit_focused();
        let mut keys: Vec<_> = ACTIONS
            .iter()
            .flat_map(|info| info.keys.iter().map(move |keys| (info.id, *keys)))
            .collect();
        keys.sort_by_key(|(_, keys)| std::cmp::Reverse(keys.held()));
        for (id, keys) in keys {
            let own_undo =
                self.view.fields.typing() && matches!(id, ActionId::Undo | ActionId::Redo);
            if own_undo || (editing && keys.types_text()) || !self.available(id).enabled {
                continue;
            }
            if ctx.input_mut(|input| input.consume_shortcut(&shortcut(keys))) {
                queue.push(Command::Choose(id));
            }
        }
    }

    /// Lets a field take what is typed in it before anything else is done.
    fn wait_for_typing(&mut self, ctx: &Context, queue: &mut Vec<Command>) {
        if !self.view.fields.typing() {
            return;
        }
        let waits = queue.extract_if(.., |command| command.waits_for_typing());
        self.deferred.extend(waits);
        if !self.deferred.is_empty() {
            release_keyboard(ctx);
            ctx.request_repaint();
        }
    }

    /// Ends gestures, lets a door run on, names the window.
    fn finish(&mut self, ctx: &Context) {
        if let Some(field) = self.dragged {
            let held = ctx.input(|input| input.pointer.any_down());
            let focused = ctx.memory(|memory| memory.has_focus(field));
            if !held && !focused {
                self.dragged = None;
                self.act(ctx, Action::EndGesture);
            }
        }
        if self.session.selection().running.is_some() {
            let seconds = ctx.input(|input| input.stable_dt).min(0.1);
            self.act(ctx, Action::RunOn(f64::from(seconds)));
            ctx.request_repaint();
        }
        let document = self.session.document();
        let mark = if document.unsaved() { "* " } else { "" };
        let title = format!("{mark}{} - Flapwright", document.job().name);
        if title != self.title {
            ctx.send_viewport_cmd(ViewportCommand::Title(title.clone()));
            self.title = title;
        }
    }

    /// Whether something can be chosen now.
    pub(super) fn available(&self, id: ActionId) -> Availability<'_> {
        available(&self.session, self.pending.is_some(), id)
    }
}

/// Whether something can be chosen now; `asking`: while the system is asked for a file.
pub(super) fn available(session: &Session, asking: bool, id: ActionId) -> Availability<'_> {
    let state = session.available(id);
    Availability {
        enabled: state.enabled && !(asking && id.info().asks_for_file),
        ..state
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
