//! Asking for a file without holding up the window.

use std::path::PathBuf;
use std::sync::mpsc::Sender;

/// What is asked for.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Ask {
    /// A job file that is there.
    OpenJob,
    /// A place for the job.
    SaveJob {
        /// A file name to begin with.
        name: String,
    },
    /// A folder for sheets.
    ExportFolder,
    /// A fitting card's file that is there.
    OpenCard,
    /// A place for a fitting card.
    SaveCard {
        /// A file name to begin with.
        name: String,
    },
    /// A folder with cards of others.
    CardFolder,
}

/// What came of it.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Answer {
    /// A path was chosen.
    Chosen(PathBuf),
    /// The user gave up.
    Cancelled,
    /// The system shows no file window.
    Unavailable,
}

/// Where an answer goes; it also wakes the window.
#[derive(Debug, Clone)]
pub struct Reply {
    sender: Sender<Answer>,
    context: egui::Context,
}

impl Reply {
    /// To a window.
    pub(crate) const fn new(sender: Sender<Answer>, context: egui::Context) -> Self {
        Self { sender, context }
    }

    /// Gives the answer.
    pub fn give(&self, answer: Answer) {
        // A window that is gone needs no answer.
        if self.sender.send(answer).is_ok() {
            self.context.request_repaint();
        }
    }
}

/// The file windows of the system, or what stands in for them.
pub trait FileDialogs {
    /// Asks for a path and gives the answer now or later. Called on the main thread; must not
    /// wait.
    fn ask(&mut self, ask: &Ask, reply: Reply);
}
