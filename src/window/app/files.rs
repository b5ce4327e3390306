//! Opening, saving, exporting and leaving; nothing unsaved is lost without asking.

use std::path::{Path, PathBuf};
use std::sync::mpsc::{TryRecvError, channel};

use egui::{Context, ViewportCommand};
use flapwright_model::validate::Problem;
use flapwright_rules::plural::count;
use flapwright_session::action::Action;
use flapwright_session::outcome::{ExportEnd, News, Outcome, Written};

use super::{App, Pending, Purpose, release_keyboard};
use crate::window::command::UnsavedAnswer;
use crate::window::dialogs::file_dialogs::{Answer, Ask, Reply};
use crate::window::dialogs::{Dialog, Next};
use crate::window::status_line::Status;
use crate::window::view_state::ViewState;

impl App {
    /// Hears what the system and the writing thread have to say.
    pub(in crate::window) fn hear(&mut self, ctx: &Context) {
        if let Some(pending) = self.pending.take() {
            match pending.receiver.try_recv() {
                Ok(answer) => self.answered(ctx, pending.purpose, pending.ask, answer),
                Err(TryRecvError::Empty) => self.pending = Some(pending),
                Err(TryRecvError::Disconnected) => {
                    self.answered(ctx, pending.purpose, pending.ask, Answer::Unavailable);
                }
            }
        }
        for news in self.session.hear() {
            match news {
                News::Export(end) => self.exported(ctx, end),
                News::Mounts(found) => {
                    if let Some(Dialog::PlaceStrut(dialog)) = &mut self.dialog {
                        dialog.found = Some(found);
                    }
                }
            }
        }
    }

    /// Says how an export ended.
    fn exported(&mut self, ctx: &Context, end: ExportEnd) {
        match end {
            ExportEnd::Written(Written { files, .. }) => {
                let folder = files.first().and_then(|file| file.parent());
                let words = folder.map_or_else(String::new, |f| f.display().to_string());
                self.status = Status {
                    folder: folder.map(Path::to_owned),
                    ..Status::done(format!("Wrote {} into {words}", count(files.len(), "file")))
                };
            }
            ExportEnd::Stopped(told) => self.status = Status::done(told),
            ExportEnd::Failed(why) => self.tell(ctx, "Sheets not written", why),
        }
    }

    /// Shows a folder with the system's own program.
    pub(in crate::window) fn open_folder(&mut self, ctx: &Context, folder: &Path) {
        if let Err(problem) = open::that_detached(folder) {
            let text = format!(
                "{problem}\n\nThe files are in {}; open it with your file manager.",
                folder.display()
            );
            self.tell(ctx, "Folder not opened", text);
        }
    }

    /// Holds a window that wants to close while something is unsaved.
    pub(in crate::window) fn close_request(&mut self, ctx: &Context) {
        if !ctx.input(|input| input.viewport().close_requested()) || self.leaving {
            return;
        }
        if self.session.document().unsaved() || !self.cards.unsaved().is_empty() {
            ctx.send_viewport_cmd(ViewportCommand::CancelClose);
            self.ask_then(ctx, Next::Close);
        }
    }

    /// Goes on, after a question when something is unsaved.
    pub(in crate::window) fn ask_then(&mut self, ctx: &Context, next: Next) {
        if self.session.document().unsaved() {
            self.open_dialog(ctx, Dialog::Unsaved(next));
        } else {
            self.go_on(ctx, next);
        }
    }

    /// Does what the question about unsaved changes was answered with.
    pub(in crate::window) fn answer_unsaved(&mut self, ctx: &Context, answer: UnsavedAnswer) {
        let Some(Dialog::Unsaved(next)) = self.dialog.take() else {
            return;
        };
        match answer {
            UnsavedAnswer::Save => {
                self.after_save = Some(next);
                self.save_and_go_on(ctx);
            }
            UnsavedAnswer::Discard => self.go_on(ctx, next),
            UnsavedAnswer::Cancel => self.status = Status::done("Nothing was closed or lost"),
        }
    }

    pub(in crate::window) fn go_on(&mut self, ctx: &Context, next: Next) {
        match next {
            Next::Close if !self.cards.unsaved().is_empty() => {
                let cards = self.cards.unsaved();
                self.open_dialog(ctx, Dialog::LoseCards(cards));
            }
            Next::Close => {
                self.leaving = true;
                ctx.send_viewport_cmd(ViewportCommand::Close);
            }
            Next::New => self.replace_job(ctx, Action::New),
            Next::Open => self.ask_path(ctx, Purpose::Open, Ask::OpenJob),
            Next::OpenPath(path) => self.replace_job(ctx, Action::Open(path)),
        }
    }

    /// Saves into the job's own file, or asks for one.
    pub(in crate::window) fn save(&mut self, ctx: &Context) {
        self.after_save = None;
        self.save_and_go_on(ctx);
    }

    /// Asks for a file and saves there.
    pub(in crate::window) fn save_as(&mut self, ctx: &Context) {
        self.after_save = None;
        self.ask_save(ctx);
    }

    fn save_and_go_on(&mut self, ctx: &Context) {
        let outcome = self.session.apply(Action::Save);
        self.saved(ctx, outcome);
    }

    fn ask_save(&mut self, ctx: &Context) {
        let name = self.session.file_name();
        self.ask_path(ctx, Purpose::Save, Ask::SaveJob { name });
    }

    /// Goes on once the job is saved.
    fn saved(&mut self, ctx: &Context, outcome: Outcome) {
        match outcome {
            Outcome::NeedsPath => self.ask_save(ctx),
            Outcome::Done(told) => {
                self.status = Status::done(told);
                if let Some(next) = self.after_save.take() {
                    self.go_on(ctx, next);
                }
            }
            Outcome::Failed { title, why } => {
                self.after_save = None;
                self.tell(ctx, title, why);
            }
            Outcome::Nothing | Outcome::Shown | Outcome::Refused { .. } | Outcome::Remedied(_) => {}
        }
    }

    /// Puts another job in the place of this one.
    fn replace_job(&mut self, ctx: &Context, action: Action) {
        let outcome = self.session.apply(action);
        if outcome.is_done() {
            self.view = ViewState::default();
            self.dialog = None;
        }
        self.tell_outcome(ctx, outcome);
    }

    /// Asks the system for a path.
    pub(in crate::window) fn ask_path(&mut self, ctx: &Context, purpose: Purpose, ask: Ask) {
        let (sender, receiver) = channel();
        self.files.ask(&ask, Reply::new(sender, ctx.clone()));
        self.pending = Some(Pending {
            purpose,
            ask,
            receiver,
        });
        ctx.request_repaint();
    }

    fn answered(&mut self, ctx: &Context, purpose: Purpose, ask: Ask, answer: Answer) {
        match answer {
            Answer::Chosen(path) => self.use_path(ctx, purpose, path),
            Answer::Cancelled => {
                self.after_save = None;
                self.cards.give_up_saving();
                self.status = Status::done("No file chosen");
            }
            Answer::Unavailable => {
                let here = std::env::current_dir().unwrap_or_default();
                let text = match &ask {
                    Ask::OpenJob | Ask::ExportFolder | Ask::OpenCard | Ask::CardFolder => {
                        here.join("")
                    }
                    Ask::SaveJob { name } | Ask::SaveCard { name } => here.join(name),
                };
                let text = text.display().to_string();
                self.open_dialog(
                    ctx,
                    Dialog::TypePath {
                        purpose,
                        ask,
                        text,
                        problem: None,
                    },
                );
            }
        }
    }

    fn use_path(&mut self, ctx: &Context, purpose: Purpose, mut path: PathBuf) {
        match purpose {
            Purpose::Open => self.replace_job(ctx, Action::Open(path)),
            Purpose::ImportCard => self.import_card(ctx, &path),
            Purpose::ShareCards => self.share_cards(path),
            Purpose::SaveCard => {
                if path.extension().is_none() {
                    path.set_extension("ron");
                }
                self.save_card_to(ctx, &path);
            }
            Purpose::Save => {
                if path.extension().is_none() {
                    path.set_extension("ron");
                }
                let outcome = self.session.apply(Action::SaveAs(path));
                self.saved(ctx, outcome);
            }
            Purpose::Export(choice) => {
                let folder = path;
                self.act(ctx, Action::Export { choice, folder });
            }
        }
    }

    /// Uses a path that was typed, or gives up.
    pub(in crate::window) fn typed_path(&mut self, ctx: &Context, path: Option<PathBuf>) {
        let Some(Dialog::TypePath { purpose, ask, .. }) = self.dialog.take() else {
            return;
        };
        let Some(path) = path else {
            self.after_save = None;
            self.cards.give_up_saving();
            self.status = Status::done("No file chosen");
            return;
        };
        let problem = match purpose {
            Purpose::Open | Purpose::ImportCard if !path.is_file() => {
                Some("There is no such file.")
            }
            Purpose::Export(_) | Purpose::ShareCards if !path.is_dir() => {
                Some("There is no such folder.")
            }
            Purpose::Save | Purpose::SaveCard if path.is_dir() => {
                Some("That is a folder: add a file name.")
            }
            Purpose::Save if path.exists() && self.session.document().path() != Some(&path) => {
                Some("That file is there already: type another name.")
            }
            Purpose::SaveCard if path.exists() => {
                Some("That file is there already: type another name.")
            }
            Purpose::Open
            | Purpose::Save
            | Purpose::Export(_)
            | Purpose::ImportCard
            | Purpose::SaveCard
            | Purpose::ShareCards => None,
        };
        match problem {
            Some(problem) => {
                let text = path.display().to_string();
                let problem = Some(problem.to_owned());
                self.dialog = Some(Dialog::TypePath {
                    purpose,
                    ask,
                    text,
                    problem,
                });
            }
            None => self.use_path(ctx, purpose, path),
        }
    }

    /// Puts something over the window.
    pub(in crate::window) fn open_dialog(&mut self, ctx: &Context, dialog: Dialog) {
        release_keyboard(ctx);
        self.act(ctx, Action::StopDoor);
        self.dialog = Some(dialog);
        ctx.request_repaint();
    }

    pub(in crate::window) fn tell(&mut self, ctx: &Context, title: &str, text: impl Into<String>) {
        let text = text.into();
        let line = text
            .lines()
            .find(|line| !line.is_empty())
            .unwrap_or_default();
        self.status = Status::failed(format!("{title}: {line}"));
        self.open_dialog(
            ctx,
            Dialog::Message {
                title: title.to_owned(),
                text,
            },
        );
    }
}

/// Why a change was refused, a line for each problem.
pub(super) fn in_lines(problems: &[Problem]) -> String {
    let lines: Vec<String> = problems
        .iter()
        .map(|it| format!("{}; {}", it.what, it.remedy))
        .collect();
    lines.join("\n")
}
