//! Files that are whole or not there.
//!
//! A file is first brought to the disk beside its place and then renamed, so that neither a full
//! disk nor a crash leaves half a file or destroys the old one.

use std::collections::BTreeSet;
use std::fs;
use std::io::{self, Write as _};
use std::path::{Path, PathBuf};

use crate::error::FileError;
use crate::names::{folded, is_plain};
use crate::staging::Staging;

/// Writes `bytes` to `path`, replacing what was there in one step. Rights of a file that was there
/// are kept. A link is not followed.
///
/// # Errors
/// When the folder does not exist or cannot be written to, the file is write-protected, the path
/// leads to a link or anything else that is no file, or the disk is full; what was at `path` before
/// is then untouched.
pub fn write_atomic(path: &Path, bytes: &[u8]) -> Result<(), FileError> {
    let folder = match path.parent() {
        Some(parent) if parent != Path::new("") => parent,
        _ => Path::new("."),
    };
    let mut staging = staging_in(folder)?;
    staging.add(path.to_owned(), |file| file.write_all(bytes))?;
    staging.commit()?;
    sync_folder(folder)
}

/// Writes a set of files (name and content) into `folder` and returns their paths in order. All
/// are brought to the disk first and get their names only when every one is there, so a full disk
/// changes nothing at all. The files are taken one by one: a set may be larger than the memory.
///
/// # Errors
/// When the folder does not exist or cannot be written to; when a name is no plain file name or is
/// given twice (capitals not counted), see [`crate::safe_file_name`] and [`crate::unique_names`];
/// and as for [`write_atomic`].
pub fn write_files<N, B>(
    folder: &Path,
    files: impl IntoIterator<Item = (N, B)>,
) -> Result<Vec<PathBuf>, FileError>
where
    N: AsRef<str>,
    B: AsRef<[u8]>,
{
    let mut staging = staging_in(folder)?;
    let mut names = BTreeSet::new();
    for (name, bytes) in files {
        let name = name.as_ref();
        let refused = |reason| FileError::FileName {
            name: name.to_owned(),
            reason,
        };
        if !is_plain(name) {
            return Err(refused("it is no plain name"));
        }
        if !names.insert(folded(name)) {
            return Err(refused("another file of the same set has it"));
        }
        staging.add(folder.join(name), |file| file.write_all(bytes.as_ref()))?;
    }
    let paths = staging.commit()?;
    sync_folder(folder)?;
    Ok(paths)
}

fn staging_in(folder: &Path) -> Result<Staging, FileError> {
    let closed = |cause| FileError::FolderClosed {
        folder: folder.to_owned(),
        cause,
    };
    match fs::metadata(folder) {
        Ok(data) if data.is_dir() => Staging::new(folder).map_err(closed),
        Ok(_) => Err(FileError::NotAFolder {
            folder: folder.to_owned(),
        }),
        Err(cause) if cause.kind() == io::ErrorKind::NotFound => Err(FileError::FolderMissing {
            folder: folder.to_owned(),
        }),
        Err(cause) => Err(closed(cause)),
    }
}

/// Brings the new names to the disk as well. File systems that cannot do that are left alone.
#[cfg(unix)]
fn sync_folder(folder: &Path) -> Result<(), FileError> {
    match fs::File::open(folder).and_then(|folder| folder.sync_all()) {
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
        Err(cause) => Err(FileError::FolderClosed {
            folder: folder.to_owned(),
            cause,
        }),
    }
}

#[cfg(not(unix))]
fn sync_folder(_folder: &Path) -> Result<(), FileError> {
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
    fn a_bad_name_in_a_set_leaves_the_folder_as_it_was() {
        let folder = tempfile::tempdir().expect("folder");
        let long = "x".repeat(256);
        let bad = [
            "../out.svg",
            "sub/a.svg",
            "",
            ".",
            "..",
            "a\\b",
            "A.SVG",
            "a.",
            "a ",
            "con.svg",
            "tab\there",
            "bell\u{7}",
            "\u{202E}gvs.a",
            "zero\u{200B}width",
            "what?",
            &long,
        ];
        for bad in bad {
            let error = write_files(folder.path(), [("a.svg", "1"), (bad, "2")]).expect_err(bad);
            assert!(
                matches!(error, FileError::FileName { .. }),
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
            message.contains("is a folder and was left as it is"),
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
        assert!(matches!(error, FileError::WriteProtected { .. }), "{error}");
        assert_eq!(fs::read(&path).expect("read"), b"signed");
        assert_eq!(names(folder.path()), ["approved.pdf"]);
    }

    /// There were once only a thousand names to wait under.
    #[test]
    fn a_set_may_have_more_than_a_thousand_files() {
        let folder = tempfile::tempdir().expect("folder");
        let files = (0..1100).map(|number| (format!("{number}.svg"), number.to_string()));
        let paths = write_files(folder.path(), files).expect("written");
        assert_eq!(paths.len(), 1100);
        assert_eq!(names(folder.path()).len(), 1100);
        assert_eq!(fs::read_to_string(&paths[1099]).expect("read"), "1099");
    }

    #[cfg(unix)]
    #[test]
    fn rights_and_owner_are_kept() {
        use std::os::unix::fs::{MetadataExt as _, PermissionsExt as _, chown};
        let folder = tempfile::tempdir().expect("folder");
        let path = folder.path().join("job.ron");
        fs::write(&path, "old").expect("written");
        fs::set_permissions(&path, fs::Permissions::from_mode(0o640)).expect("set");
        // Only an administrator can give a file to another one.
        drop(chown(&path, Some(4711), Some(4712)));
        let owner = |path: &Path| {
            let data = fs::metadata(path).expect("data");
            (data.uid(), data.gid(), data.mode() & 0o777)
        };
        let before = owner(&path);
        write_atomic(&path, b"new").expect("written");
        assert_eq!(fs::read(&path).expect("read"), b"new");
        assert_eq!(owner(&path), before);
        assert_eq!(before.2, 0o640);
    }

    /// A new file has the rights that any other program would give it.
    #[cfg(unix)]
    #[test]
    fn a_new_file_is_no_more_private_than_others() {
        use std::os::unix::fs::PermissionsExt as _;
        let folder = tempfile::tempdir().expect("folder");
        let (ours, plain) = (folder.path().join("ours"), folder.path().join("plain"));
        write_atomic(&ours, b"1").expect("written");
        fs::write(&plain, "1").expect("written");
        let mode = |path| fs::metadata(path).expect("data").permissions().mode();
        assert_eq!(mode(ours), mode(plain));
    }

    #[cfg(unix)]
    #[test]
    fn nothing_is_written_through_a_link_or_over_a_pipe() {
        use std::os::unix::fs::{FileTypeExt as _, symlink};
        let folder = tempfile::tempdir().expect("folder");
        let victim = folder.path().join("victim.txt");
        fs::write(&victim, "keep me").expect("written");
        let out = folder.path().join("out");
        fs::create_dir(&out).expect("made");
        symlink("../victim.txt", out.join("01-mugs-top.dxf")).expect("linked");
        symlink("../nothing", out.join("dangling.dxf")).expect("linked");
        let pipe = out.join("pipe.dxf");
        let made = std::process::Command::new("mkfifo").arg(&pipe).status();
        assert!(made.expect("mkfifo").success());
        let before = names(&out);
        for name in ["01-mugs-top.dxf", "dangling.dxf", "pipe.dxf"] {
            let set = write_files(&out, [("new.dxf", "1"), (name, "2")]).expect_err(name);
            let one = write_atomic(&out.join(name), b"2").expect_err(name);
            for error in [set, one] {
                assert!(matches!(error, FileError::Occupied { .. }), "{error}");
            }
            assert_eq!(names(&out), before);
        }
        assert_eq!(fs::read_to_string(&victim).expect("read"), "keep me");
        assert!(!folder.path().join("nothing").exists());
        let kind = fs::symlink_metadata(&pipe).expect("data").file_type();
        assert!(kind.is_fifo());
    }
}
