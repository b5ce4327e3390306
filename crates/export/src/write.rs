//! Files that are whole or not there.
//!
//! A file is first written beside its place under a temporary name, brought to the disk and then
//! renamed, so that neither a full disk nor a crash leaves half a file or destroys the old one.

use std::collections::BTreeSet;
use std::fs::{self, File, OpenOptions};
use std::io::{self, Write as _};
use std::path::{Path, PathBuf};

use crate::error::ExportError;
use crate::names::folded;

/// How many temporary names are tried before giving up.
const TEMPORARY_NAMES: u32 = 1000;

/// Writes `bytes` to `path`, replacing what was there in one step. Rights of a file that was there
/// are kept, and a link is followed.
///
/// # Errors
/// When the folder does not exist or cannot be written to, the file is write-protected or the disk
/// is full; what was at `path` before is then untouched.
pub fn write_atomic(path: &Path, bytes: &[u8]) -> Result<(), ExportError> {
    let path = followed(path)?;
    let folder = match path.parent() {
        Some(parent) if parent != Path::new("") => parent,
        _ => Path::new("."),
    };
    require_folder(folder)?;
    Staged::new(folder, &path, |file| file.write_all(bytes))?.commit()?;
    sync_folder(folder)
}

/// Writes a set of files (name and content) into `folder` and returns their paths in order. All
/// are written beside their places first and renamed only when every one is on the disk, so a full
/// disk changes nothing at all.
///
/// # Errors
/// When the folder does not exist or cannot be written to; when a name is no plain file name or is
/// given twice (capitals not counted), see [`crate::safe_file_name`] and [`crate::unique_names`];
/// and as for [`write_atomic`].
pub fn write_files<N, B>(
    folder: &Path,
    files: impl IntoIterator<Item = (N, B)>,
) -> Result<Vec<PathBuf>, ExportError>
where
    N: AsRef<str>,
    B: AsRef<[u8]>,
{
    require_folder(folder)?;
    let mut names = BTreeSet::new();
    let mut staged = Vec::new();
    for (name, bytes) in files {
        let name = name.as_ref();
        require_plain(name)?;
        if !names.insert(folded(name)) {
            let reason = "another file of the same set has it";
            return Err(ExportError::FileName {
                name: name.to_owned(),
                reason,
            });
        }
        let target = followed(&folder.join(name))?;
        let beside = target.parent().unwrap_or(folder).to_owned();
        staged.push(Staged::new(&beside, &target, |file| {
            file.write_all(bytes.as_ref())
        })?);
    }
    let paths = staged
        .into_iter()
        .map(Staged::commit)
        .collect::<Result<_, _>>()?;
    sync_folder(folder)?;
    Ok(paths)
}

/// Where a link leads; the path itself when it is none.
fn followed(path: &Path) -> Result<PathBuf, ExportError> {
    let is_link = fs::symlink_metadata(path).is_ok_and(|data| data.file_type().is_symlink());
    if !is_link {
        return Ok(path.to_owned());
    }
    fs::canonicalize(path).map_err(|cause| ExportError::Write {
        file: path.to_owned(),
        cause,
    })
}

fn require_folder(folder: &Path) -> Result<(), ExportError> {
    let path = || folder.to_owned();
    match fs::metadata(folder) {
        Ok(data) if data.is_dir() => Ok(()),
        Ok(_) => Err(ExportError::NotAFolder { folder: path() }),
        Err(cause) if cause.kind() == io::ErrorKind::NotFound => {
            Err(ExportError::FolderMissing { folder: path() })
        }
        Err(cause) => Err(ExportError::FolderClosed {
            folder: path(),
            cause,
        }),
    }
}

/// A name must name a file right in the folder, on every system.
fn require_plain(name: &str) -> Result<(), ExportError> {
    let plain = Path::new(name).file_name().is_some_and(|last| last == name)
        && !name.contains(['/', '\\', ':', '\0']);
    if plain {
        return Ok(());
    }
    let reason = "it is no plain name";
    Err(ExportError::FileName {
        name: name.to_owned(),
        reason,
    })
}

/// A file under its temporary name; unless it gets its place by [`Staged::commit`], it is removed.
struct Staged {
    /// `None` once the file is in its place: the name may then belong to another one already.
    temporary: Option<PathBuf>,
    target: PathBuf,
}

impl Staged {
    fn new(
        folder: &Path,
        target: &Path,
        fill: impl FnOnce(&mut File) -> io::Result<()>,
    ) -> Result<Self, ExportError> {
        let failed = |cause| ExportError::Write {
            file: target.to_owned(),
            cause,
        };
        let before = fs::metadata(target).ok();
        if before.as_ref().is_some_and(fs::Metadata::is_dir) {
            return Err(failed(io::Error::other("there is a folder of that name")));
        }
        if before
            .as_ref()
            .is_some_and(|data| data.permissions().readonly())
        {
            return Err(ExportError::WriteProtected {
                file: target.to_owned(),
            });
        }
        let (temporary, mut file) =
            create_beside(folder).map_err(|cause| ExportError::FolderClosed {
                folder: folder.to_owned(),
                cause,
            })?;
        let staged = Self {
            temporary: Some(temporary),
            target: target.to_owned(),
        };
        fill(&mut file).map_err(failed)?;
        if let Some(data) = before {
            file.set_permissions(data.permissions()).map_err(failed)?;
        }
        file.sync_all().map_err(failed)?;
        Ok(staged)
    }

    /// Puts the file in its place and returns its path.
    fn commit(mut self) -> Result<PathBuf, ExportError> {
        let target = self.target.clone();
        if let Some(temporary) = &self.temporary {
            let failed = |cause| ExportError::Write {
                file: target.clone(),
                cause,
            };
            fs::rename(temporary, &target).map_err(failed)?;
        }
        self.temporary = None;
        Ok(target)
    }
}

impl Drop for Staged {
    fn drop(&mut self) {
        if let Some(temporary) = &self.temporary {
            // An error is being reported already, and a second one would not help.
            drop(fs::remove_file(temporary));
        }
    }
}

/// Opens a new file in `folder` that no other process uses.
fn create_beside(folder: &Path) -> io::Result<(PathBuf, File)> {
    let process = std::process::id();
    let mut last = io::Error::other("all temporary names are taken");
    for number in 0..TEMPORARY_NAMES {
        let path = folder.join(format!(".flapwright-{process}-{number}.part"));
        match OpenOptions::new().write(true).create_new(true).open(&path) {
            Ok(file) => return Ok((path, file)),
            Err(cause) if cause.kind() == io::ErrorKind::AlreadyExists => last = cause,
            Err(cause) => return Err(cause),
        }
    }
    Err(last)
}

/// Brings the new names to the disk as well. File systems that cannot do that are left alone.
#[cfg(unix)]
fn sync_folder(folder: &Path) -> Result<(), ExportError> {
    match File::open(folder).and_then(|folder| folder.sync_all()) {
        Ok(()) => Ok(()),
        Err(cause)
            if matches!(
                cause.kind(),
                io::ErrorKind::InvalidInput
                    | io::ErrorKind::Unsupported
                    | io::ErrorKind::PermissionDenied
            ) =>
        {
            Ok(())
        }
        Err(cause) => Err(ExportError::FolderClosed {
            folder: folder.to_owned(),
            cause,
        }),
    }
}

#[cfg(not(unix))]
fn sync_folder(_folder: &Path) -> Result<(), ExportError> {
    Ok(())
}

#[cfg(test)]
mod tests {
    use super::*;

    fn names(folder: &Path) -> Vec<String> {
        let mut names: Vec<_> = fs::read_dir(folder)
            .expect("folder")
            .map(|entry| {
                entry
                    .expect("entry")
                    .file_name()
                    .into_string()
                    .expect("plain name")
            })
            .collect();
        names.sort();
        names
    }

    #[test]
    fn a_file_is_replaced_as_a_whole() {
        let folder = tempfile::tempdir().expect("folder");
        let path = folder.path().join("job.json");
        for content in ["first, and rather long", "second"] {
            write_atomic(&path, content.as_bytes()).expect("written");
            assert_eq!(fs::read_to_string(&path).expect("read"), content);
        }
        assert_eq!(names(folder.path()), ["job.json"]);
    }

    #[test]
    fn a_set_of_files_is_written_in_order() {
        let folder = tempfile::tempdir().expect("folder");
        let paths = write_files(folder.path(), [("b.svg", "1"), ("a.svg", "2")]).expect("written");
        assert_eq!(
            paths,
            [folder.path().join("b.svg"), folder.path().join("a.svg")]
        );
        assert_eq!(names(folder.path()), ["a.svg", "b.svg"]);
    }

    #[test]
    fn a_disk_that_fills_up_leaves_the_old_file_and_no_other() {
        let folder = tempfile::tempdir().expect("folder");
        let path = folder.path().join("job.json");
        write_atomic(&path, b"old").expect("written");
        let full = |file: &mut File| {
            file.write_all(b"hal")?;
            Err(io::Error::from(io::ErrorKind::StorageFull))
        };
        let error = Staged::new(folder.path(), &path, full)
            .err()
            .expect("disk full");
        let message = error.to_string();
        assert!(
            message.contains("job.json") && message.contains("disk has room"),
            "{message}"
        );
        assert_eq!(names(folder.path()), ["job.json"]);
        assert_eq!(fs::read(&path).expect("read"), b"old");
    }

    #[test]
    fn a_bad_name_in_a_set_leaves_the_folder_as_it_was() {
        let folder = tempfile::tempdir().expect("folder");
        for bad in ["../out.svg", "sub/a.svg", "", ".", "..", "a\\b", "A.SVG"] {
            let error = write_files(folder.path(), [("a.svg", "1"), (bad, "2")]).expect_err(bad);
            assert!(
                matches!(error, ExportError::FileName { .. }),
                "{bad}: {error}"
            );
            assert_eq!(names(folder.path()), Vec::<String>::new(), "{bad}");
        }
    }

    #[test]
    fn folders_that_cannot_take_files_are_refused_by_name() {
        let folder = tempfile::tempdir().expect("folder");
        let missing = folder.path().join("plans");
        let message = write_files(&missing, [("a", "1")])
            .expect_err("missing")
            .to_string();
        assert!(
            message.contains("plans` does not exist; create it"),
            "{message}"
        );
        let message = write_atomic(&missing.join("a"), b"1")
            .expect_err("missing")
            .to_string();
        assert!(
            message.contains("plans` does not exist; create it"),
            "{message}"
        );

        let file = folder.path().join("file");
        fs::write(&file, "1").expect("written");
        let message = write_files(&file, [("a", "1")])
            .expect_err("a file")
            .to_string();
        assert!(
            message.contains("file` is a file, not a folder"),
            "{message}"
        );
        let message = write_atomic(folder.path(), b"1")
            .expect_err("a folder")
            .to_string();
        assert!(
            message.contains("there is a folder of that name"),
            "{message}"
        );
    }

    /// `/proc` takes no new files, not even from an administrator.
    #[cfg(target_os = "linux")]
    #[test]
    fn a_closed_folder_is_refused_by_name() {
        let message = write_files(Path::new("/proc"), [("a", "1")])
            .expect_err("closed")
            .to_string();
        assert!(
            message.starts_with("folder `/proc` cannot be written to; choose"),
            "{message}"
        );
    }

    #[test]
    fn a_write_protected_file_is_not_replaced() {
        let folder = tempfile::tempdir().expect("folder");
        let path = folder.path().join("approved.pdf");
        fs::write(&path, "signed").expect("written");
        let mut rights = fs::metadata(&path).expect("data").permissions();
        rights.set_readonly(true);
        fs::set_permissions(&path, rights).expect("set");
        let error = write_atomic(&path, b"new").expect_err("protected");
        assert!(
            matches!(error, ExportError::WriteProtected { .. }),
            "{error}"
        );
        assert_eq!(fs::read(&path).expect("read"), b"signed");
        assert_eq!(names(folder.path()), ["approved.pdf"]);
    }

    #[cfg(unix)]
    #[test]
    fn rights_are_kept_and_links_followed() {
        use std::os::unix::fs::{PermissionsExt as _, symlink};
        let folder = tempfile::tempdir().expect("folder");
        let (real, link) = (folder.path().join("real"), folder.path().join("link"));
        fs::write(&real, "old").expect("written");
        fs::set_permissions(&real, fs::Permissions::from_mode(0o640)).expect("set");
        symlink(&real, &link).expect("linked");
        write_atomic(&link, b"new").expect("written");
        assert_eq!(fs::read(&real).expect("read"), b"new");
        assert!(
            fs::symlink_metadata(&link)
                .expect("data")
                .file_type()
                .is_symlink()
        );
        assert_eq!(
            fs::metadata(&real).expect("data").permissions().mode() & 0o777,
            0o640
        );
    }
}
