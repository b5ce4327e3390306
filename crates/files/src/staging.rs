//! Files on their way into a folder: each is whole and on the disk before the first gets its name.
//!
//! They wait in a folder of their own inside the one that they go to, so that a name is given by
//! one rename and any number of files can wait. That folder has a lock in it which the system
//! gives back when the program ends in whatever way: a folder whose lock is free was left behind
//! by a crash, and the next writer removes it.

use std::error::Error as _;
use std::fs::{self, File, Metadata, TryLockError};
use std::io;
use std::path::{Path, PathBuf};

use tempfile::TempDir;

use crate::error::FileError;

const PREFIX: &str = ".flapwright-";
const SUFFIX: &str = ".part";
const LOCK: &str = "lock";

/// How often a folder to wait in is made anew when another writer took it for one left behind.
const TRIES: usize = 16;

/// A set of files that wait for their names. Dropping it removes them.
pub(crate) struct Staging {
    /// Stands before the folder: some systems remove no file that is held open.
    _lock: File,
    waiting: TempDir,
    /// Where the files go, in order; the number of a target is the name of what waits for it.
    targets: Vec<PathBuf>,
}

impl Staging {
    /// Makes room inside `folder`, and removes what crashes left there.
    pub(crate) fn new(folder: &Path) -> io::Result<Self> {
        sweep(folder);
        for _ in 0..TRIES {
            let waiting = tempfile::Builder::new()
                .prefix(PREFIX)
                .suffix(SUFFIX)
                .tempdir_in(folder)
                .map_err(without_path)?;
            if let Some(lock) = locked(waiting.path())? {
                return Ok(Self {
                    _lock: lock,
                    waiting,
                    targets: Vec::new(),
                });
            }
        }
        Err(io::Error::other("another program removes what is written"))
    }

    /// Brings a file to the disk that is to replace `target`. Rights of a file that is there are
    /// kept, and its owner where the system allows that.
    pub(crate) fn add(
        &mut self,
        target: PathBuf,
        fill: impl FnOnce(&mut File) -> io::Result<()>,
    ) -> Result<(), FileError> {
        let before = replaceable(&target)?;
        let path = self.waiting.path().join(self.targets.len().to_string());
        let write = || {
            let mut file = File::create_new(path)?;
            fill(&mut file)?;
            if let Some(before) = before {
                keep_owner(&file, &before);
                file.set_permissions(before.permissions())?;
            }
            file.sync_all()
        };
        match write() {
            Ok(()) => {
                self.targets.push(target);
                Ok(())
            }
            Err(cause) => Err(FileError::Write {
                file: target,
                cause,
            }),
        }
    }

    /// Gives the files their names and returns their paths in order. A link that has come to a
    /// path meanwhile is replaced itself, not what it leads to.
    pub(crate) fn commit(self) -> Result<Vec<PathBuf>, FileError> {
        for (number, target) in self.targets.iter().enumerate() {
            let path = self.waiting.path().join(number.to_string());
            fs::rename(path, target).map_err(|cause| FileError::Write {
                file: target.clone(),
                cause,
            })?;
        }
        Ok(self.targets)
    }
}

/// What is at a path and may be replaced: an ordinary file that is not write-protected, or nothing.
fn replaceable(target: &Path) -> Result<Option<Metadata>, FileError> {
    let Ok(before) = fs::symlink_metadata(target) else {
        // What hinders a look hinders the writing too and is told then.
        return Ok(None);
    };
    let kind = before.file_type();
    let file = target.to_owned();
    if !kind.is_file() {
        let what = match () {
            () if kind.is_symlink() => "a link",
            () if kind.is_dir() => "a folder",
            () => "a pipe or a device",
        };
        return Err(FileError::Occupied { file, what });
    }
    if before.permissions().readonly() {
        return Err(FileError::WriteProtected { file });
    }
    Ok(Some(before))
}

/// Only an administrator gives a file away, and nobody must: what matters are its rights.
#[cfg(unix)]
fn keep_owner(file: &File, before: &Metadata) {
    use std::os::unix::fs::{MetadataExt as _, fchown};
    drop(fchown(file, Some(before.uid()), Some(before.gid())));
}

#[cfg(not(unix))]
fn keep_owner(_file: &File, _before: &Metadata) {}

/// The lock of a new folder to wait in; `None` when another writer was quicker and removes it.
fn locked(waiting: &Path) -> io::Result<Option<File>> {
    let path = waiting.join(LOCK);
    let lock = match File::create_new(&path) {
        Ok(lock) => lock,
        Err(cause) if cause.kind() == io::ErrorKind::NotFound => return Ok(None),
        Err(cause) => return Err(cause),
    };
    // Where a file system knows no locks, nobody sweeps either.
    let taken = matches!(lock.try_lock(), Err(TryLockError::WouldBlock));
    Ok((!taken && path.exists()).then_some(lock))
}

/// Removes what a crash left behind. That this fails is no reason not to write.
fn sweep(folder: &Path) {
    for entry in fs::read_dir(folder).into_iter().flatten().flatten() {
        let name = entry.file_name();
        let ours = name
            .to_str()
            .is_some_and(|name| name.starts_with(PREFIX) && name.ends_with(SUFFIX));
        let path = entry.path();
        match entry.file_type() {
            Ok(kind) if ours && kind.is_dir() => sweep_waiting(&path),
            // Earlier versions let single files wait, under names of this form.
            Ok(kind) if ours && kind.is_file() => drop(fs::remove_file(path)),
            _ => {}
        }
    }
}

fn sweep_waiting(waiting: &Path) {
    let lock = waiting.join(LOCK);
    // A pipe of that name would hold the opening up.
    if fs::symlink_metadata(&lock).is_ok_and(|data| !data.is_file()) {
        return;
    }
    match File::open(lock) {
        Ok(lock) if lock.try_lock().is_ok() => drop(fs::remove_dir_all(waiting)),
        // It ended before it had a lock, or has just begun; the latter makes a new folder.
        Err(cause) if cause.kind() == io::ErrorKind::NotFound => drop(fs::remove_dir(waiting)),
        _ => {}
    }
}

/// What the system said, without the random name that it said it of.
fn without_path(cause: io::Error) -> io::Error {
    let said = cause.source().map(ToString::to_string);
    said.map_or(cause, io::Error::other)
}

#[cfg(test)]
mod tests {
    use std::io::Write as _;

    use super::*;

    /// Names in a folder, sorted.
    fn names(folder: &Path) -> Vec<String> {
        let entries = fs::read_dir(folder).expect("folder");
        let mut names: Vec<_> = entries
            .map(|entry| entry.expect("entry").file_name())
            .map(|name| name.into_string().expect("plain name"))
            .collect();
        names.sort();
        names
    }

    #[test]
    fn a_disk_that_fills_up_leaves_the_old_file_and_no_other() {
        let folder = tempfile::tempdir().expect("folder");
        let path = folder.path().join("job.json");
        fs::write(&path, b"old").expect("written");
        let mut staging = Staging::new(folder.path()).expect("room");
        let full = |file: &mut File| {
            file.write_all(b"hal")?;
            Err(io::Error::from(io::ErrorKind::StorageFull))
        };
        let message = staging
            .add(path.clone(), full)
            .expect_err("disk full")
            .to_string();
        drop(staging);
        assert!(
            message.contains("job.json") && message.contains("disk has room"),
            "{message}"
        );
        assert_eq!(names(folder.path()), ["job.json"]);
        assert_eq!(fs::read(&path).expect("read"), b"old");
    }

    #[test]
    fn what_a_crash_left_is_removed_and_what_is_being_written_is_not() {
        let folder = tempfile::tempdir().expect("folder");
        let at = |name: &str| folder.path().join(name);
        for waiting in [".flapwright-a.part", ".flapwright-b.part"] {
            fs::create_dir(at(waiting)).expect("made");
        }
        for (file, text) in [
            (".flapwright-a.part/lock", ""),
            (".flapwright-a.part/0", "half"),
            (".flapwright-4711-0.part", "half, from an earlier version"),
            (".flapwright-mine", "a user's own"),
        ] {
            fs::write(at(file), text).expect("written");
        }
        let mut running = Staging::new(folder.path()).expect("room");
        running
            .add(at("first"), |file| file.write_all(b"1"))
            .expect("staged");
        let other = Staging::new(folder.path()).expect("room");
        assert_eq!(names(folder.path()).len(), 3, "two writers and one file");
        drop(other);
        running.commit().expect("in place");
        assert_eq!(names(folder.path()), [".flapwright-mine", "first"]);
    }

    #[test]
    fn writers_of_one_folder_do_not_sweep_each_other() {
        let folder = tempfile::tempdir().expect("folder");
        let write = |writer: usize| {
            for round in 0..50 {
                let target = folder.path().join(format!("{writer}-{round}"));
                let mut staging = Staging::new(folder.path()).expect("room");
                staging
                    .add(target, |file| file.write_all(b"1"))
                    .expect("staged");
                staging.commit().expect("in place");
            }
        };
        std::thread::scope(|scope| {
            for writer in 0..4 {
                scope.spawn(move || write(writer));
            }
        });
        assert_eq!(names(folder.path()).len(), 200);
    }
}
