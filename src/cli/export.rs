//! What `flapwright sheets` and `flapwright bores` have in common: a job's files into a folder.

use std::path::Path;

use anyhow::{Context, Result, bail};
use flapwright_session::Session;
use flapwright_session::action::Action;
use flapwright_session::export::ExportChoice;
use flapwright_session::outcome::{ExportEnd, News, Outcome, Written};

use super::say;

/// Writes the files of a job into a folder, all or none, and prints their paths. The folder is made
/// if only its last part is missing. Gives back the panels that must not be drilled yet, in words.
pub(super) fn run(job: &Path, folder: &Path, choice: ExportChoice) -> Result<Vec<String>> {
    let mut session = Session::open(job.to_owned())?;
    let made = make(folder)?;
    let written = export(&mut session, folder, choice);
    if written.is_err() && made {
        // An empty folder that only this run made is not left behind; one with something in it
        // is not empty and stays.
        drop(std::fs::remove_dir(folder));
    }
    let written = written?;
    for path in written.files {
        say(&path.display().to_string())?;
    }
    Ok(written.stopped)
}

fn export(session: &mut Session, folder: &Path, choice: ExportChoice) -> Result<Written> {
    let export = Action::Export {
        choice: Box::new(choice),
        folder: folder.to_owned(),
    };
    if let Outcome::Failed { why, .. } = session.apply(export) {
        bail!(why);
    }
    for news in session.wait() {
        match news {
            News::Export(ExportEnd::Written(written)) => return Ok(written),
            News::Export(ExportEnd::Stopped(why) | ExportEnd::Failed(why)) => bail!(why),
            News::Mounts(_) => {}
        }
    }
    bail!("nothing was written")
}

/// Makes the folder if only its last part is missing; whether it did.
fn make(folder: &Path) -> Result<bool> {
    if folder.is_dir() {
        return Ok(false);
    }
    if folder.exists() {
        bail!(
            "{} is not a folder; name another one with --out",
            folder.display()
        );
    }
    std::fs::create_dir(folder).with_context(|| {
        format!(
            "cannot make the folder {}; name one whose parent exists and can be written to",
            folder.display()
        )
    })?;
    Ok(true)
}
