//! The window: forms, drawings, findings, sizes and forces, files, fitting cards.
//!
//! [`App`] owns the state. What is shown borrows it and queues [`Command`]s; after the frame they
//! are done in one place (`apply`). The job changes only by [`Edit`](flapwright_model::edit::Edit)s
//! that go through the history. Nothing here does joinery arithmetic: sizes, bores, motion and
//! findings are read from [`flapwright_rules::inspect`], pictures from `flapwright_drawing`.
//!
//! | how do I… | |
//! | --- | --- |
//! | open the window | [`run`] |
//! | drive it in a test | [`App::new`], [`prepare`], [`App::frame`] |
//! | do what a menu does | [`App::run_command`] |
//! | answer for the system's file windows | [`FileDialogs`] |

mod app;
mod apply;
mod canvas;
mod card_editor;
mod command;
mod dialogs;
mod document;
mod drawings;
mod export_job;
mod fields;
mod files;
mod findings;
mod form;
mod history;
mod inspect_app;
mod records;
mod sheets_dialog;
mod shell;
mod side_panel;
mod status_line;
mod today;
mod tokens;
mod top_bar;
mod view_state;

pub use self::app::App;
pub use self::card_editor::CardCommand;
pub use self::command::{Command, JobEdit, UiCommand, UnsavedAnswer, View};
pub use self::dialogs::file_dialogs::{Answer, Ask, FileDialogs, Reply};
pub use self::export_job::ExportChoice;
pub use self::shell::{WindowError, prepare, run};
pub use self::side_panel::SideTab;
