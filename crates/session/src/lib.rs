//! An open job without a window: what a person can do with it, and what comes of it.
//!
//! A [`Session`] owns the open [`Document`](document::Document), what of it is
//! [selected](selection::Selection), and the work that goes on beside: an export, a search for the
//! mounts of a gas strut. Everything that can be done is an [`Action`](action::Action), data only;
//! [`Session::apply`] does it and says what came of it. Window and command line are its clients:
//! dialogs, drawings and printed lines are theirs. This crate knows no window library.
//!
//! ```
//! use flapwright_session::action::Action;
//! use flapwright_session::outcome::Outcome;
//! use flapwright_session::{Session, shipped};
//!
//! let mut session = Session::new(shipped::demo_job()?, None);
//! let boxes = session.job().boxes.len();
//! assert!(matches!(session.apply(Action::AddBox), Outcome::Done(_)));
//! assert_eq!(session.job().boxes.len(), boxes + 1);
//! session.apply(Action::Undo);
//! assert_eq!(session.job().boxes.len(), boxes);
//! assert!(!session.document().unsaved());
//! # Ok::<(), flapwright_model::file::ReadError>(())
//! ```
//!
//! | how do I… | |
//! | --- | --- |
//! | open a job | [`Session::open`], [`Session::new`] |
//! | do something | [`Session::apply`] |
//! | list what menus, keys and buttons can do | [`action_table::ACTIONS`] |
//! | ask whether it can be done now | [`Session::available`] |
//! | wait for an export or search | [`Session::hear`], [`Session::wait`] |

pub mod action;
pub mod action_table;
pub mod bore_files;
pub mod document;
pub mod export;
pub mod finding_key;
pub mod history;
pub mod job_file;
pub mod keys;
pub mod outcome;
pub mod preview;
mod records;
pub mod selection;
mod session;
pub mod sheet_files;
pub mod shipped;
mod strut_search;
mod worker;

pub use crate::session::{Availability, Session};
