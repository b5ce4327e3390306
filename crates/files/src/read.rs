//! Reading a text file that anyone may have made.

use std::fs::{self, File, FileType};
use std::io::Read as _;
use std::path::Path;

use crate::error::FileError;

/// The text of a file of at most `most` bytes, without the mark that some editors put before
/// UTF-8. Links are followed: it is the user who names the file.
///
/// Only ordinary files are opened: a pipe would wait for its writer for ever, and some devices do
/// something when they are opened. What the handle gives is read no further than the limit,
/// whatever size the folder tells.
///
/// # Errors
/// [`FileError::Read`] when there is no such file or no right to read it, [`FileError::NotAFile`],
/// [`FileError::TooLarge`] and [`FileError::NotText`].
pub fn read_limited(path: &Path, most: usize) -> Result<String, FileError> {
    let failed = |cause| FileError::Read {
        path: path.to_owned(),
        cause,
    };
    require_ordinary(path, fs::metadata(path).map_err(failed)?.file_type())?;
    let file = File::open(path).map_err(failed)?;
    let opened = file.metadata().map_err(failed)?;
    // The name may lead elsewhere by now.
    require_ordinary(path, opened.file_type())?;
    let too_large = || FileError::TooLarge {
        path: path.to_owned(),
        most,
    };
    if opened.len() > most as u64 {
        return Err(too_large());
    }
    let mut bytes = Vec::new();
    file.take(most as u64 + 1)
        .read_to_end(&mut bytes)
        .map_err(failed)?;
    if bytes.len() > most {
        return Err(too_large());
    }
    match String::from_utf8(bytes) {
        Ok(text) => Ok(text
            .strip_prefix('\u{FEFF}')
            .map(str::to_owned)
            .unwrap_or(text)),
        Err(_not_utf8) => Err(FileError::NotText {
            path: path.to_owned(),
        }),
    }
}

fn require_ordinary(path: &Path, kind: FileType) -> Result<(), FileError> {
    if kind.is_file() {
        return Ok(());
    }
    let what = if kind.is_dir() {
        "a folder"
    } else {
        "a pipe or a device"
    };
    Err(FileError::NotAFile {
        path: path.to_owned(),
        what,
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_text_is_read_to_its_limit_and_no_further() {
        let folder = tempfile::tempdir().expect("folder");
        let path = folder.path().join("job.ron");
        fs::write(&path, "12345").expect("written");
        assert_eq!(read_limited(&path, 5).expect("read"), "12345");
        let error = read_limited(&path, 4).expect_err("too large");
        assert!(
            matches!(error, FileError::TooLarge { most: 4, .. }),
            "{error}"
        );
    }

    #[test]
    fn a_mark_before_the_text_is_no_part_of_it() {
        let folder = tempfile::tempdir().expect("folder");
        let path = folder.path().join("job.ron");
        fs::write(&path, "\u{FEFF}(version: 1)").expect("written");
        assert_eq!(read_limited(&path, 100).expect("read"), "(version: 1)");
    }

    #[test]
    fn what_is_no_text_and_what_is_not_there_is_refused_by_name() {
        let folder = tempfile::tempdir().expect("folder");
        let path = folder.path().join("picture.ron");
        fs::write(&path, [0xFF, 0x00]).expect("written");
        let error = read_limited(&path, 100).expect_err("no text");
        assert!(matches!(error, FileError::NotText { .. }), "{error}");
        let message = read_limited(&folder.path().join("gone"), 100)
            .expect_err("missing")
            .to_string();
        assert!(message.contains("gone: "), "{message}");
    }

    #[test]
    fn a_folder_is_refused() {
        let folder = tempfile::tempdir().expect("folder");
        let message = read_limited(folder.path(), 100)
            .expect_err("a folder")
            .to_string();
        assert!(message.contains("is a folder, not a file"), "{message}");
    }

    /// What is read of a path, if that ends within ten seconds.
    #[cfg(unix)]
    fn told_in_time(path: std::path::PathBuf, most: usize) -> Result<String, FileError> {
        let (sender, receiver) = std::sync::mpsc::channel();
        std::thread::spawn(move || sender.send(read_limited(&path, most)));
        receiver
            .recv_timeout(std::time::Duration::from_secs(10))
            .expect("an answer")
    }

    #[cfg(unix)]
    #[test]
    fn a_pipe_is_refused_at_once() {
        let folder = tempfile::tempdir().expect("folder");
        let pipe = folder.path().join("pipe.ron");
        let made = std::process::Command::new("mkfifo").arg(&pipe).status();
        assert!(made.expect("mkfifo").success());
        let link = folder.path().join("link.ron");
        std::os::unix::fs::symlink(&pipe, &link).expect("linked");
        for path in [pipe, link] {
            let error = told_in_time(path, 100).expect_err("a pipe");
            assert!(matches!(error, FileError::NotAFile { .. }), "{error}");
        }
    }

    #[cfg(target_os = "linux")]
    #[test]
    fn an_endless_file_is_refused_whatever_size_it_claims() {
        let zeros = told_in_time("/dev/zero".into(), 100).expect_err("a device");
        assert!(matches!(zeros, FileError::NotAFile { .. }), "{zeros}");
        // An ordinary file that says it has no bytes, and has some.
        let claims_none = Path::new("/proc/self/status");
        assert_eq!(fs::metadata(claims_none).expect("data").len(), 0);
        let error = told_in_time(claims_none.to_owned(), 100).expect_err("too large");
        assert!(matches!(error, FileError::TooLarge { .. }), "{error}");
    }
}
