//! The window: forms, drawings, findings, sizes and forces, files, fitting cards.
//!
//! [`App`] shows a [`Session`](flapwright_session::Session), which has the open job and does
//! everything that can be done with it. What is shown borrows both and queues [`Command`]s; after the
//! frame they are done in one place (`apply`). Nothing here does joinery arithmetic: sizes, bores, motion and
//! findings are read from [`flapwright_answer::inspect`], pictures from `flapwright_drawing`.
//!
//! | how do I… | |
//! | --- | --- |
//! | open the window | [`run`] |
//! | drive it in a test | [`App::new`], [`prepare`], [`App::frame`] |
//! | do what a menu does | [`App::run_command`] |
//! | answer for the system's file windows | [`FileDialogs`] |

mod app;
mod canvas;
mod card_editor;
mod command;
mod dialogs;
mod drawings;
mod fields;
mod findings;
mod form;
mod keys;
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
pub use self::command::{Command, JobEdit, UnsavedAnswer, View};
pub use self::dialogs::file_dialogs::{Answer, Ask, FileDialogs, Reply};
pub use self::keys::shortcut;
pub use self::shell::{WindowError, prepare, run};
