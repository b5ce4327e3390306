//! The file windows of the desktop.

use std::time::{Duration, Instant};

use rfd::{AsyncFileDialog, FileHandle};

use super::file_dialogs::{Answer, Ask, FileDialogs, Reply};

/// Nobody gives up a file window faster than this: an empty answer that comes sooner means that
/// the system showed none.
const NO_WINDOW: Duration = Duration::from_millis(400);

/// The file windows of the desktop.
#[derive(Debug, Default)]
pub(crate) struct SystemDialogs;

impl FileDialogs for SystemDialogs {
    fn ask(&mut self, ask: &Ask, reply: Reply) {
        let dialog = AsyncFileDialog::new();
        let job = |dialog: AsyncFileDialog| dialog.add_filter("Flapwright job", &["ron"]);
        let card = |dialog: AsyncFileDialog| dialog.add_filter("Fitting card", &["ron"]);
        match ask {
            Ask::OpenJob => wait(job(dialog).set_title("Open a job").pick_file(), reply),
            Ask::SaveJob { name } => {
                let dialog = job(dialog).set_title("Save the job as").set_file_name(name);
                wait(dialog.save_file(), reply);
            }
            Ask::OpenCard => wait(card(dialog).set_title("Import a card").pick_file(), reply),
            Ask::SaveCard { name } => {
                let dialog = card(dialog)
                    .set_title("Save the card as")
                    .set_file_name(name);
                wait(dialog.save_file(), reply);
            }
            Ask::CardFolder => {
                wait(dialog.set_title("Folder with cards").pick_folder(), reply);
            }
            Ask::ExportFolder => {
                wait(
                    dialog.set_title("Folder for the sheets").pick_folder(),
                    reply,
                );
            }
        }
    }
}

/// Waits for the answer on a thread of its own.
fn wait(chosen: impl Future<Output = Option<FileHandle>> + Send + 'static, reply: Reply) {
    let asked = Instant::now();
    let other = reply.clone();
    let thread = std::thread::Builder::new().name("file window".to_owned());
    let started = thread.spawn(move || {
        reply.give(match pollster::block_on(chosen) {
            Some(file) => Answer::Chosen(file.path().to_owned()),
            None if asked.elapsed() < NO_WINDOW => Answer::Unavailable,
            None => Answer::Cancelled,
        });
    });
    if started.is_err() {
        other.give(Answer::Unavailable);
    }
}
