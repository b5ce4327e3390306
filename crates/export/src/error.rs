//! What can go wrong in an export, said so that the reader knows what to do.

use std::io;
use std::ops::RangeInclusive;
use std::path::PathBuf;

/// Why an export or the writing of a file failed. Each message names the sheet, file or folder,
/// the cause and the remedy; causes are part of the message and not repeated as a source.
#[derive(Debug, thiserror::Error)]
#[non_exhaustive]
pub enum ExportError {
    /// There is nothing to print.
    #[error("there is no sheet to export; choose at least one sheet")]
    NoSheets,
    /// The paper has no usable size.
    #[error(
        "sheet `{sheet}`: paper of {width} by {height} mm cannot be exported; \
         each side must be above 0 and at most {limit} mm"
    )]
    PaperSize {
        /// The sheet's slug.
        sheet: String,
        /// Width, mm.
        width: f64,
        /// Height, mm.
        height: f64,
        /// Greatest side, mm.
        limit: f64,
    },
    /// A coordinate, size or angle is infinite or not a number.
    #[error(
        "sheet `{sheet}`: item {item} on layer `{layer}` has no finite position; \
         the sheet cannot be exported, please report this"
    )]
    NotFinite {
        /// The sheet's slug.
        sheet: String,
        /// Index in the display list.
        item: usize,
        /// Name of the item's layer.
        layer: &'static str,
    },
    /// The resolution is out of bounds.
    #[error("{dpi} dpi is out of bounds; choose from {} to {} dpi", limits.start(), limits.end())]
    Resolution {
        /// What was asked for, dots per inch.
        dpi: u32,
        /// What is possible, dots per inch.
        limits: RangeInclusive<u32>,
    },
    /// The page could not be made into a PDF or a picture.
    #[error("sheet `{sheet}` cannot be exported, please report this: {cause}")]
    Page {
        /// The sheet's slug.
        sheet: String,
        /// Message of the library that gave up.
        cause: String,
    },
    /// The PDF could not be put together.
    #[error("the PDF cannot be put together, please report this: {cause}")]
    Pdf {
        /// Message of the library that gave up.
        cause: String,
    },
    /// An archive file carries a date, and there is none.
    #[error("an archive PDF carries the date of issue, and there is none; fill it in first")]
    NoDate,
    /// The sheets cannot be put into an archive file.
    #[error("these sheets cannot be written as an archive PDF: {cause}; write a plain PDF instead")]
    Archive {
        /// What its format does not allow.
        cause: String,
    },
    /// A bore has no place.
    #[error(
        "{panel}: bore {number} has no finite place; it cannot be exported, please report this"
    )]
    BoreNowhere {
        /// Box and panel.
        panel: String,
        /// Number in the hole table.
        number: usize,
    },
    /// A bore list or a machine file could not be put together.
    #[error("the {format} file cannot be put together, please report this: {cause}")]
    List {
        /// Which kind of file.
        format: &'static str,
        /// Message of the library that gave up.
        cause: String,
    },
    /// There is no such folder.
    #[error("folder `{}` does not exist; create it or choose another folder", folder.display())]
    FolderMissing {
        /// The folder.
        folder: PathBuf,
    },
    /// The path leads to a file.
    #[error("`{}` is a file, not a folder; choose a folder", folder.display())]
    NotAFolder {
        /// The path.
        folder: PathBuf,
    },
    /// No file can be made in the folder.
    #[error(
        "folder `{}` cannot be written to; choose another folder or ask for the right to write \
         there: {cause}",
        folder.display()
    )]
    FolderClosed {
        /// The folder.
        folder: PathBuf,
        /// What the system said.
        cause: io::Error,
    },
    /// The name is no plain file name, or is given twice.
    #[error("`{name}` cannot be used as a file name: {reason}; choose another name")]
    FileName {
        /// The name.
        name: String,
        /// Why not.
        reason: &'static str,
    },
    /// The file is there already and marked as read-only.
    #[error(
        "file `{}` is write-protected; choose another name or lift the protection",
        file.display()
    )]
    WriteProtected {
        /// The file.
        file: PathBuf,
    },
    /// The file could not be written; what was there before is untouched.
    #[error(
        "file `{}` cannot be written and was left as it was; make sure that the disk has room and \
         that no other program holds the file: {cause}",
        file.display()
    )]
    Write {
        /// The file.
        file: PathBuf,
        /// What the system said.
        cause: io::Error,
    },
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn messages_name_the_thing_the_cause_and_the_remedy() {
        let closed = ExportError::FolderClosed {
            folder: PathBuf::from("/srv/plans"),
            cause: io::Error::other("no permission"),
        };
        assert_eq!(
            closed.to_string(),
            "folder `/srv/plans` cannot be written to; choose another folder or ask for the right \
             to write there: no permission"
        );
        let coarse = ExportError::Resolution {
            dpi: 72,
            limits: 150..=600,
        };
        assert_eq!(
            coarse.to_string(),
            "72 dpi is out of bounds; choose from 150 to 600 dpi"
        );
    }
}
